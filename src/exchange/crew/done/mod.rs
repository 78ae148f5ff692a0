//! Scenario sets that a person did: what each came to by its own rule, or why that is not said.

mod sat;
mod who;

pub use who::{DidSet, did_set};

use crate::card::Mark;
use crate::content::Content;
use crate::exchange::set::{Set, Validity, Withdrawal, outcome};
use crate::record::{Entry, Event, LocalDate, Moment, Voids};
use crate::terms;
use sat::{Sat, sat};

terms! {
    /// How a set was done. Text: `app.crew.done.way.<slug>`.
    Way {
        /// To practise: each answer was told at once.
        Practise = "practise",
        /// As a check: answers were told at the end.
        Check = "check",
        /// On paper, typed in afterwards.
        Paper = "paper",
    }
    /// What came of it. Text: `app.crew.done.<slug>`.
    Came {
        /// Passed by the rule of the set.
        Passed = "passed",
        /// Not passed by it.
        NotPassed = "not-passed",
        /// All cards are answered; the set has no rule.
        Done = "done",
        /// Cards are left.
        UnderWay = "under-way",
        /// It was closed with cards left.
        Closed = "closed",
        /// It was begun before its first day.
        TooEarly = "too-early",
        /// It was begun after its last day.
        TooLate = "too-late",
        /// It was begun after it was withdrawn.
        Withdrawn = "withdrawn",
        /// The set was found wrong since.
        SetWrong = "set-wrong",
        /// Cards of it were found wrong since, and what is left does not say whether it is passed.
        CardsWrong = "cards-wrong",
        /// The set is not on this tablet, so its rule is not known.
        NotHere = "not-here",
    }
}

/// A set that is here.
#[derive(Debug, Clone, Copy)]
pub struct KnownSet<'a> {
    /// The set.
    pub set: &'a Set,
    /// Its withdrawal by who made it.
    pub withdrawn: Option<&'a Withdrawal>,
}

/// A set done once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SetDone {
    /// Id of the set.
    pub set: String,
    /// The attempt, or the code of the worksheet.
    pub name: String,
    /// The day of its last answer, or on which it was begun where there is none.
    pub day: Option<LocalDate>,
    /// How.
    pub way: Way,
    /// Right answers, but for those that were found void.
    pub right: u32,
    /// Cards that are answered.
    pub answered: u32,
    /// All its cards.
    pub of: u32,
    /// Answers that no longer count.
    pub void: u32,
    /// Families of the answers about safety that were wrong and would have been done on the job, but for those that were found
    /// void; none where the set is not here.
    pub dangerous: Vec<String>,
    /// What came of it.
    pub came: Came,
}

/// What a person did of scenario sets, the latest first; `events` are theirs, oldest first and under one name, and those that
/// void something. `known` finds a set by its id.
#[must_use]
pub fn sets_done<'a>(
    content: &Content,
    events: &[&'a Event],
    known: impl Fn(&str) -> Option<KnownSet<'a>>,
) -> Vec<SetDone> {
    let voids = Voids::of(events.iter().copied());
    sat(events).iter().map(|one| done(content, one, known(one.set), &voids)).collect()
}

fn done(content: &Content, one: &Sat<'_>, known: Option<KnownSet<'_>>, voids: &Voids<'_>) -> SetDone {
    let counted: Vec<&Entry> =
        one.answers.iter().copied().filter(|entry| voids.touches(entry).is_none()).collect();
    let answered = count(one.answers.len());
    let void = answered - count(counted.len());
    let found = known.map(|KnownSet { set, .. }| (set, outcome(set, content, &counted)));
    let judged = || {
        let Some((set, found)) = &found else { return Came::NotHere };
        // Right answers that it would have had, had those been right which no longer count.
        let at_most = found.right + void;
        let open = set.task.pass.is_some_and(|rule| {
            void > 0 && at_most >= rule.right && (!rule.safety || found.dangerous.is_empty())
        });
        match found.passed {
            None => Came::Done,
            Some(true) => Came::Passed,
            Some(false) if open => Came::CardsWrong,
            Some(false) => Came::NotPassed,
        }
    };
    let wrong = voids.of_set(one.set).map(|_| Came::SetWrong);
    SetDone {
        set: one.set.to_owned(),
        name: one.name.to_owned(),
        day: one.day,
        way: one.way,
        right: count(counted.iter().filter(|entry| entry.mark == Mark::Right).count()),
        answered,
        // A worksheet does not tell how many cards it has.
        of: one.cards.or(known.map(|known| known.set.count())).unwrap_or(answered),
        void,
        dangerous: found
            .iter()
            .flat_map(|(_, found)| found.dangerous.iter().map(|&family| family.to_owned()))
            .collect(),
        came: wrong
            .or(one.left)
            .or_else(|| known.and_then(|known| barred(one, known)))
            .unwrap_or_else(judged),
    }
}

/// Why it was not to be begun any more, or not yet; nobody knows when a worksheet was.
fn barred(one: &Sat<'_>, known: KnownSet<'_>) -> Option<Came> {
    let (at, day) = one.begun?;
    let withdrawn = known.withdrawn.and_then(|withdrawal| Moment::of(&withdrawal.at));
    let withdrawn = withdrawn.zip(Moment::of(at)).is_some_and(|(withdrawn, begun)| withdrawn <= begun);
    match Validity::of(known.set, withdrawn, day) {
        Validity::Open => None,
        Validity::NotYet => Some(Came::TooEarly),
        Validity::Over => Some(Came::TooLate),
        Validity::Withdrawn => Some(Came::Withdrawn),
    }
}

fn count(of: usize) -> u32 {
    u32::try_from(of).unwrap_or(u32::MAX)
}
