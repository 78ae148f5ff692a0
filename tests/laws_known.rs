//! What is known of a person's answers, followed through a journal that grows, is what the whole journal tells: whoever is asked
//! about, with checks open and closed, with events erased, and with events of another window that came between.

mod support;

use proptest::prelude::*;
use serde_json::json;
use std::collections::BTreeMap;
use stepboard::card::Mark;
use stepboard::content::Content;
use stepboard::learn::check::{Now, Sealed, Taken};
use stepboard::learn::memory::{Answered, Remembered};
use stepboard::learn::{Followed, Front, Known, Latest, Past};
use stepboard::record::{Certainty, Erased, Event, Journal, Step, Taking, Within};
use support::any::{hold, term};
use support::log::{Log, date, families};

const PEOPLE: [&str; 3] = ["a-07", "a-08", ""];
const COMPETENCY: &str = "pores-filled";
/// The set of all checks, and its cards where it is taken as a scenario set.
const SET: &str = "a-set";
const CARDS: u32 = 3;
/// Journals in `make test`; each is asked about dozens of times.
const JOURNALS: u32 = 150;

/// What happens next.
#[derive(Debug, Clone)]
enum Next {
    /// Somebody answers, within the check that is open for them or in practice.
    Answers { who: usize, family: usize, right: bool, certainty: Certainty, check: bool },
    /// Somebody opens a check; of a scenario set where it says whether each answer is told at once.
    Opens { who: usize, set: Option<bool> },
    /// Somebody closes the check that is open for them.
    Closes(usize),
    /// Days go by.
    Days(u32),
    /// All that a person did is erased.
    Erases(usize),
    /// The latest event gets another number, since another window took its own.
    ComesBetween(usize),
}

fn next() -> impl Strategy<Value = Next> {
    let who = || 0..PEOPLE.len();
    let answers = (who(), 0_usize..4, any::<bool>(), term::<Certainty>(), any::<bool>()).prop_map(
        |(who, family, right, certainty, check)| Next::Answers { who, family, right, certainty, check },
    );
    prop_oneof![
        12 => answers,
        2 => (who(), any::<Option<bool>>()).prop_map(|(who, set)| Next::Opens { who, set }),
        1 => who().prop_map(Next::Closes),
        2 => (0_u32..4).prop_map(Next::Days),
        1 => who().prop_map(Next::Erases),
        1 => who().prop_map(Next::ComesBetween),
    ]
}

/// A tablet at work.
struct Tablet {
    content: Content,
    families: Vec<String>,
    log: Log,
    journal: Journal,
    /// The check that is open for each.
    open: [Option<Open>; 3],
    /// How far each is with the scenario set.
    taken: [Option<Taken>; 3],
}

/// A check that is open.
#[derive(Debug, Clone)]
struct Open {
    attempt: String,
    /// Whether it is the scenario set that is taken.
    of_set: bool,
}

impl Tablet {
    fn new(content: Content, families: Vec<String>) -> Self {
        let (log, journal) = (Log::new("t", ""), Journal::default());
        Self { content, families, log, journal, open: [const { None }; 3], taken: [None; 3] }
    }

    /// What `write` puts into a log as the next event of somebody.
    fn event(&mut self, who: usize, write: impl FnOnce(&mut Log)) -> Event {
        PEOPLE[who].clone_into(&mut self.log.person);
        write(&mut self.log);
        let mut event = self.log.events.pop().expect("it was written");
        event.stamp_mut().sequence = self.journal.next_sequence();
        event
    }

    fn add(&mut self, who: usize, write: impl FnOnce(&mut Log)) {
        let event = self.event(who, write);
        self.journal = self.journal.clone().with(event);
    }

    fn go_on(&mut self, next: &Next) {
        match *next {
            Next::Answers { who, family, right, certainty, check } => {
                let open = self.open[who].clone().filter(|_| check);
                let took = self.taken[who].as_mut().filter(|_| open.as_ref().is_some_and(|open| open.of_set));
                if let Some(taken) = took {
                    taken.answers += 1;
                    taken.left = taken.left.saturating_sub(1);
                }
                let within = open.map_or(Within::Practice, |Open { attempt, .. }| Within::Check {
                    attempt,
                    set: SET.to_owned(),
                });
                let family = self.families[family % self.families.len()].clone();
                self.add(who, |log| {
                    (log.certainty, log.within) = (certainty, within);
                    log.answer(&family, right);
                });
            }
            Next::Opens { who, set } => {
                let attempt = format!("check-{}", self.journal.next_sequence());
                let taking = set.map(|at_once| Taking { cards: CARDS, at_once });
                let competencies = vec![COMPETENCY.to_owned()];
                self.add(who, |log| {
                    log.step(&attempt, Step::Opened { set: SET.to_owned(), competencies, taking });
                });
                if set.is_some() {
                    self.taken[who] = Some(Taken { answers: 0, left: CARDS, closed: false });
                }
                self.open[who] = Some(Open { attempt, of_set: set.is_some() });
            }
            Next::Closes(who) => {
                if let Some(Open { attempt, of_set }) = self.open[who].take() {
                    self.add(who, |log| {
                        log.step(&attempt, Step::Closed);
                    });
                    if let Some(taken) = self.taken[who].as_mut().filter(|_| of_set) {
                        taken.closed = true;
                    }
                }
            }
            Next::Days(days) => {
                let day = self.log.day + days;
                self.log.on(day);
            }
            Next::Erases(who) => {
                let theirs = self
                    .journal
                    .events()
                    .iter()
                    .map(Event::stamp)
                    .filter(|stamp| stamp.person == PEOPLE[who]);
                let numbers: Vec<u64> = theirs.map(|stamp| stamp.sequence).collect();
                let mut stamp = self.event(who, |log| {
                    log.taught(COMPETENCY);
                });
                stamp.stamp_mut().person = String::new();
                self.journal = self.journal.clone().after(Erased {
                    stamp: stamp.stamp().clone(),
                    numbers,
                    earlier: BTreeMap::new(),
                });
                (self.open[who], self.taken[who]) = (None, None);
            }
            Next::ComesBetween(who) => {
                let Some(mut last) = self.journal.events().last().cloned() else { return };
                let mut other = self.event(who, |log| {
                    log.within = Within::Practice;
                    log.answer("dew-point", true);
                });
                std::mem::swap(&mut last.stamp_mut().sequence, &mut other.stamp_mut().sequence);
                let mut events = self.journal.events().to_vec();
                events.pop();
                self.journal = Journal::new(events.into_iter().chain([other, last]).collect());
            }
        }
    }

    fn sealed(&self) -> Sealed {
        Sealed::of(&self.content, self.journal.events(), Now { day: Some(date(self.log.day)), at: None })
    }
}

/// What is known, worked out from all answers that may be told.
fn anew(journal: &Journal, person: &str, sealed: &Sealed) -> Known {
    let told = || sealed.told_of(journal.events(), person);
    let mut latest = Latest::default();
    told().for_each(|entry| latest.take(&entry.family, Past::of(entry)));
    let history: Vec<Answered> = told().filter_map(Answered::of).collect();
    Known { latest, remembered: Remembered::of(&history) }
}

#[test]
fn what_is_followed_is_what_the_whole_journal_tells() {
    let steps = proptest::collection::vec((next(), 0..PEOPLE.len()), 1..60);
    let content = support::content();
    let families = families(&content, COMPETENCY);
    let hidden = std::cell::Cell::new(0);
    hold(support::inputs(JOURNALS), &steps, |steps| {
        let mut tablet = Tablet::new(content.clone(), families.clone());
        let mut followed = Followed::default();
        for (step, asked) in &steps {
            tablet.go_on(step);
            let (sealed, person) = (tablet.sealed(), PEOPLE[*asked]);
            followed = followed.on(tablet.journal.events(), person, &sealed);
            let whole = anew(&tablet.journal, person, &sealed);
            assert_eq!(json!(**followed.known()), json!(whole), "{person} after {step:?}");
            assert_eq!(followed.answers() as usize, tablet.journal.of(person).count(), "{step:?}");
            let told = sealed.told_of(tablet.journal.events(), person).count();
            hidden.set(hidden.get() + u32::from(told < tablet.journal.of(person).count()));
        }
    });
    assert!(hidden.get() > 100, "answers were kept back {} times", hidden.get());
}

/// A first screen is kept where it stays true on every day, and tells no other journal.
#[test]
fn a_kept_first_screen_is_what_the_journal_tells_on_any_day() {
    let steps = proptest::collection::vec((next(), 0..PEOPLE.len()), 1..60);
    let content = support::content();
    let families = families(&content, COMPETENCY);
    let [kept, left, taken, asked_again] = [const { std::cell::Cell::new(0) }; 4];
    hold(support::inputs(JOURNALS), &steps, |steps| {
        let mut tablet = Tablet::new(content.clone(), families.clone());
        for (step, asked) in &steps {
            let before = tablet.journal.next_sequence();
            tablet.go_on(step);
            let (journal, person) = (&tablet.journal, PEOPLE[*asked]);
            let known = anew(journal, person, &tablet.sealed());
            let front = Front::of(journal, person, "t", &known);
            assert!(tablet.open[*asked].is_none() || front.is_none(), "a check is open after {step:?}");
            let Some(front) = front else {
                left.set(left.get() + 1);
                continue;
            };
            kept.set(kept.get() + 1);
            let text = serde_json::to_string(&front).expect("written");
            let read: Front = serde_json::from_str(&text).expect("read again");
            assert!(read.fits(Some(journal.next_sequence())) && read.is_of(person));
            assert!(!read.fits(Some(before)) || before == journal.next_sequence(), "after {step:?}");
            assert!(!read.fits(None) && PEOPLE.iter().all(|other| *other == person || !read.is_of(other)));
            assert_eq!(json!(read.known), json!(known), "{person} after {step:?}");
            assert_eq!(read.takings.at(SET), tablet.taken[*asked], "{person} after {step:?}");
            let practised = journal.of(person).rfind(|entry| entry.within == Within::Practice);
            let again =
                practised.filter(|last| last.mark != Mark::Right && last.certainty == Certainty::OnTheJob);
            assert_eq!(read.again, again.map(|last| last.stamp.sequence), "{person} after {step:?}");
            asked_again.set(asked_again.get() + u32::from(again.is_some()));
            taken.set(taken.get() + u32::from(tablet.taken[*asked].is_some()));
            for later in [0, 1, 30] {
                let now = Now { day: Some(date(tablet.log.day + later)), at: None };
                let sealed = Sealed::of(&tablet.content, journal.events(), now);
                assert_eq!(json!(anew(journal, person, &sealed)), json!(read.known), "{later} days after");
                for family in &tablet.families {
                    assert_eq!(read.known.remembered.memory(family), known.remembered.memory(family));
                }
            }
        }
    });
    assert!(kept.get() > 500 && left.get() > 500, "kept {} times and not {}", kept.get(), left.get());
    assert!(taken.get() > 100, "a set was taken {} times", taken.get());
    assert!(asked_again.get() > 100, "a card was to be worked once more {} times", asked_again.get());
}
