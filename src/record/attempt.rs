//! Attempts as the journal tells them. An attempt belongs to the device that opened it, until it is closed; what another
//! device wrote under its name is told as stray and never joined to it.

use super::{AssessorName, Event, Step, Taking, Turn};
use crate::terms;
use std::collections::BTreeMap;

/// One attempt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attempt<'a> {
    /// Its name, which means something together with the device.
    pub id: &'a str,
    /// The device that opened it.
    pub device: &'a str,
    /// Whose it is.
    pub person: &'a str,
    /// The set that is taken.
    pub set: &'a str,
    /// When it was opened, as ISO 8601 text in universal time.
    pub at: &'a str,
    /// Slugs of the competencies that it is evidence for.
    pub competencies: &'a [String],
    /// The scenario set whose cards come first; none where there is none.
    pub taking: Option<Taking>,
    /// Who sat beside from the first answer on; none where nobody did.
    pub supervised: Option<&'a AssessorName>,
    /// Answers handed in so far.
    pub answers: u32,
    /// How it stands.
    pub standing: Standing,
    /// Number of the latest step that it went, among the events of its device.
    pub step: u64,
}

impl Attempt<'_> {
    /// Cards of its scenario set that are not answered yet.
    #[must_use]
    pub fn set_left(&self) -> u32 {
        self.taking.map_or(0, |taking| taking.cards.saturating_sub(self.answers))
    }
}

terms! {
    /// How an attempt stands.
    Standing {
        /// It is being taken.
        Open = "open",
        /// It was left and can be taken up again.
        Left = "left",
        /// It is over.
        Closed = "closed",
    }
    /// Why an event is no part of the attempt that it names.
    Stray {
        /// No such attempt was opened.
        NotOpened = "not-opened",
        /// It was opened on another device.
        OtherDevice = "other-device",
        /// It was closed before.
        Closed = "closed",
        /// It is somebody else's.
        OtherPerson = "other-person",
        /// It was opened before.
        OpenedBefore = "opened-before",
    }
}

/// The attempts of a journal, or of several merged ones, taken event by event.
#[derive(Debug, Clone, Default)]
pub struct Attempts<'a> {
    all: Vec<Attempt<'a>>,
    /// Where each stands, by its name and device.
    places: BTreeMap<(&'a str, &'a str), usize>,
}

impl<'a> Attempts<'a> {
    /// The attempts that these events tell, oldest first, and the events that are stray.
    #[must_use]
    pub fn of(events: &'a [Event]) -> (Self, Vec<(&'a Event, Stray)>) {
        let (mut attempts, mut strays) = (Self::default(), Vec::new());
        for event in events {
            if let Err(stray) = attempts.take(event) {
                strays.push((event, stray));
            }
        }
        (attempts, strays)
    }

    /// All so far, in the order in which they were opened.
    #[must_use]
    pub fn all(&self) -> &[Attempt<'a>] {
        &self.all
    }

    /// Takes the next event; the place of the attempt that it belongs to, none where it names none.
    ///
    /// # Errors
    /// [`Stray`] where it is no part of the attempt that it names.
    pub fn take(&mut self, event: &'a Event) -> Result<Option<usize>, Stray> {
        match event {
            Event::Attempt(turn) => self.turn(turn).map(Some),
            Event::Answered(entry) => match entry.within.attempt() {
                Some((attempt, _)) => {
                    let stamp = &entry.stamp;
                    let at = self.open(attempt, &stamp.device, &stamp.person)?;
                    if let Some(attempt) = self.all.get_mut(at) {
                        attempt.answers += 1;
                        // Who answers has taken it up again, though nothing said so.
                        attempt.standing = Standing::Open;
                    }
                    Ok(Some(at))
                }
                None => Ok(None),
            },
            Event::Taught(_)
            | Event::Observed(_)
            | Event::Filed(_)
            | Event::Struck(_)
            | Event::Erased(_)
            | Event::Voided(_)
            | Event::Walked(_) => Ok(None),
        }
    }

    fn turn(&mut self, turn: &'a Turn) -> Result<usize, Stray> {
        let (device, person) = (turn.stamp.device.as_str(), turn.stamp.person.as_str());
        let standing = match &turn.step {
            Step::Opened { set, competencies, taking } => {
                if self.find(&turn.attempt, device).is_some() {
                    return Err(Stray::OpenedBefore);
                }
                let id = turn.attempt.as_str();
                let (standing, step) = (Standing::Open, turn.stamp.sequence);
                let at = turn.stamp.at.as_str();
                self.places.insert((id, device), self.all.len());
                self.all.push(Attempt {
                    id,
                    device,
                    person,
                    set,
                    at,
                    competencies,
                    taking: *taking,
                    supervised: None,
                    answers: 0,
                    standing,
                    step,
                });
                return Ok(self.all.len() - 1);
            }
            Step::Supervised { .. } => Standing::Open,
            Step::Left => Standing::Left,
            Step::Resumed => Standing::Open,
            Step::Closed => Standing::Closed,
        };
        let at = self.open(&turn.attempt, device, person)?;
        if let Some(attempt) = self.all.get_mut(at) {
            attempt.standing = standing;
            if let (Step::Supervised { by }, 0) = (&turn.step, attempt.answers) {
                attempt.supervised = Some(by);
            }
            attempt.step = turn.stamp.sequence;
        }
        Ok(at)
    }

    /// The place among [`Self::all`] of that name on that device.
    #[must_use]
    pub fn find(&self, id: &str, device: &str) -> Option<usize> {
        // What was opened last is mostly what is gone on with.
        let last = self.all.last().filter(|one| one.id == id && one.device == device);
        last.map(|_| self.all.len() - 1).or_else(|| self.places.get(&(id, device)).copied())
    }

    /// The place of an attempt of that person on that device that is not closed.
    fn open(&self, id: &str, device: &str, person: &str) -> Result<usize, Stray> {
        let Some(at) = self.find(id, device) else {
            let elsewhere = self.places.range((id, "")..).next().is_some_and(|((other, _), _)| *other == id);
            return Err(if elsewhere { Stray::OtherDevice } else { Stray::NotOpened });
        };
        match self.all.get(at) {
            Some(one) if one.person != person => Err(Stray::OtherPerson),
            Some(one) if one.standing == Standing::Closed => Err(Stray::Closed),
            _ => Ok(at),
        }
    }
}
