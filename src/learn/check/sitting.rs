//! A check as it stands now: the cards that are left today, and what was given.

use super::course::{Course, Given};
use super::{Check, Goal, next_card, order};
use crate::card::Card;
use crate::content::{Competency, Content, World};
use crate::learn::MINUTE_SECONDS;
use crate::learn::evidence::{Asked, Evidence, evidence_among};
use crate::learn::mastery::Guess;
use crate::record::{Attempt, Attempts, Entry, Event, LocalDate, Moment, Placed, Standing};
use std::collections::BTreeSet;

/// The clock of the device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Now {
    /// The local day; none where the clock tells none.
    pub day: Option<LocalDate>,
    /// The instant.
    pub at: Option<Moment>,
}

/// A check that is not closed, as it stands today.
#[derive(Debug, Clone, PartialEq)]
pub struct Sitting<'a> {
    /// The attempt.
    pub attempt: Attempt<'a>,
    /// How each of its competencies stands.
    pub courses: Vec<Course<'a>>,
    /// Cards answered today.
    pub today: u32,
    /// Seconds in which they were looked at.
    pub seconds: u32,
    /// Families asked so far and their seeds, oldest first.
    pub cards: Vec<(&'a str, u32)>,
    /// Whether the last card of its scenario set was answered today: then today wants no more.
    set_today: bool,
    /// Families with an error about safety that may be passed again now.
    again: Vec<String>,
}

/// What is left today.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ahead {
    /// Cards, if all are answered right.
    pub cards: u32,
    /// Minutes that they take, rounded up. Nobody is held to it.
    pub minutes: u32,
}

/// The checks of a person that are not closed, on whatever device, oldest first.
#[must_use]
pub fn open_of<'a>(events: &'a [Event], person: &str) -> Vec<Attempt<'a>> {
    let (attempts, _) = Attempts::of(events);
    let open = |one: &&Attempt<'a>| one.person == person && one.standing != Standing::Closed;
    attempts.all().iter().filter(open).cloned().collect()
}

impl<'a> Sitting<'a> {
    /// The check of that name on that device; `None` where there is none, or it is closed.
    #[must_use]
    pub fn of(content: &'a Content, events: &'a [Event], device: &str, name: &str, now: Now) -> Option<Self> {
        Self::among(content, &Placed::of(events), device, name, now)
    }

    /// The same of events whose attempts are found already.
    #[must_use]
    pub fn among(
        content: &'a Content,
        events: &Placed<'a>,
        device: &str,
        name: &str,
        now: Now,
    ) -> Option<Self> {
        let place = events.attempts().find(name, device)?;
        let attempt = events.attempts().all().get(place).filter(|one| one.standing != Standing::Closed)?;
        let (attempt, answers) = (attempt.clone(), events.answers(name, device));
        let of_today: Vec<&Entry> =
            answers.iter().copied().filter(|entry| entry.stamp.day() == now.day).collect();
        let mut again = BTreeSet::new();
        let mut courses = Vec::new();
        for competency in attempt.competencies.iter().filter_map(|slug| content.competency(slug)) {
            let found = evidence_among(events, &Asked::usual(content, attempt.person, competency));
            again.extend(to_pass_again(&found, now));
            let bears = |entry: &&&Entry| bears_on(content, entry, &competency.slug);
            let given = Given {
                ever: count(answers.iter().filter(bears)),
                today: count(of_today.iter().filter(bears)),
            };
            let own = found.taken.as_ref().is_some_and(|one| one.attempt == name && one.device == device);
            courses.push(Course::of(competency, found, own, given, now.day));
        }
        let set_cards = attempt.taking.map_or(0, |taking| taking.cards);
        let last_of_set = usize::try_from(set_cards).ok().and_then(|cards| cards.checked_sub(1));
        let ended = last_of_set.and_then(|last| answers.get(last)).map(|entry| entry.stamp.day());
        Some(Self {
            attempt,
            courses,
            set_today: ended.is_some_and(|day| day == now.day),
            today: count(of_today.iter()),
            seconds: of_today.iter().filter_map(|entry| entry.active_seconds).sum(),
            again: again.into_iter().collect(),
            cards: answers.iter().map(|entry| (entry.family.as_str(), entry.seed)).collect(),
        })
    }

    /// The next card; `None` where today's are done, none can be dealt on that sheet, or the next one is of the scenario
    /// set, which deals it.
    #[must_use]
    pub fn next(&self, world: &World<'_>) -> Option<Card> {
        if self.attempt.set_left() > 0 || self.set_today {
            return None;
        }
        let Attempt { set, person, id: attempt, .. } = self.attempt;
        next_card(world, &Check { set, person, attempt }, &self.goals(), &self.again(), &self.asked())
    }

    /// Whether nothing is wanted any more today: then what was answered may be told.
    #[must_use]
    pub fn is_done(&self) -> bool {
        let nothing_wanted = self.again.is_empty() && self.courses.iter().all(|course| course.wanted == 0);
        self.attempt.set_left() == 0 && (self.set_today || nothing_wanted)
    }

    /// Whether no day will want anything any more, so that it is best closed. An error about safety that is open is passed
    /// again in the next check.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.attempt.set_left() == 0 && self.courses.iter().all(|course| course.over)
    }

    /// What is left today, if all is answered right.
    #[must_use]
    pub fn ahead(&self, content: &Content) -> Ahead {
        Ahead::of(content, self.goals(), self.again(), self.asked())
    }

    fn goals(&self) -> Vec<Goal<'_>> {
        self.courses.iter().map(Course::goal).collect()
    }

    fn asked(&self) -> Vec<&str> {
        self.cards.iter().map(|(family, _)| *family).collect()
    }

    fn again(&self) -> Vec<&str> {
        self.again.iter().map(String::as_str).collect()
    }
}

impl Ahead {
    /// What a check of these competencies would ask today, if it was begun now.
    #[must_use]
    pub fn of_new(content: &Content, chosen: &[(&Competency, &Evidence)], now: Now) -> Self {
        let course = |(competency, found): &(&Competency, &Evidence)| {
            let course = Course::of(competency, (*found).clone(), false, Given::default(), now.day);
            (competency.slug.clone(), course.wanted)
        };
        let wanted: Vec<(String, u32)> = chosen.iter().map(course).collect();
        let goals = wanted.iter().map(|(competency, wanted)| Goal { competency, wanted: *wanted });
        Self::of(content, goals.collect(), Vec::new(), Vec::new())
    }

    fn of<'a>(
        content: &'a Content,
        mut goals: Vec<Goal<'a>>,
        mut again: Vec<&'a str>,
        mut asked: Vec<&'a str>,
    ) -> Self {
        let (mut cards, mut seconds) = (0_u32, 0_u32);
        // Each card lowers a goal or is the last of its family to be passed again.
        while let Some(family) = order(content, &goals, &again, &asked).first() {
            again.retain(|one| *one != family.id);
            for goal in &mut goals {
                let serves = family.competencies.iter().any(|slug| slug == goal.competency);
                goal.wanted = goal.wanted.saturating_sub(u32::from(serves));
            }
            asked.push(&family.id);
            (cards, seconds) = (cards + 1, seconds + family.seconds);
        }
        Self { cards, minutes: seconds.div_ceil(MINUTE_SECONDS) }
    }
}

/// Families with an error about safety on which an answer helps now.
fn to_pass_again(found: &Evidence, now: Now) -> Vec<String> {
    let Some((at, today)) = now.at.zip(now.day) else { return Vec::new() };
    let wants = found.hazards.iter().filter(|hazard| hazard.wants_answer(at, today, Guess::USUAL));
    wants.map(|hazard| hazard.family.clone()).collect()
}

fn bears_on(content: &Content, entry: &Entry, competency: &str) -> bool {
    let family = content.family(&entry.family);
    family.is_some_and(|family| family.competencies.iter().any(|slug| slug == competency))
}

fn count<T>(of: impl Iterator<Item = T>) -> u32 {
    u32::try_from(of.count()).unwrap_or(u32::MAX)
}
