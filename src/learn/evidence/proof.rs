//! The evidence of one person for one competency, worked out from the journal.

use super::account::Account;
use super::families::Families;
use super::round::Round;
use super::{Asked, Counted, Evidence, Hazard, Uncounted};
use crate::learn::mastery::Guess;
use crate::record::{Attempts, Event, LocalDate, Standing, Step, Stray};
use std::collections::BTreeMap;

/// Options of a card that nobody has seen yet, for telling how many answers are missing: four, and "not enough is told".
const USUAL_OPTIONS: u32 = 5;

/// The evidence that events give, oldest first: those of one journal, or of several merged ones.
#[must_use]
pub fn evidence(events: &[Event], asked: &Asked<'_>) -> Evidence {
    let families = Families::of(asked.content, asked.competency);
    let mut proof =
        Proof { asked, families: &families, attempts: Attempts::default(), made: Made::default() };
    for (nth, event) in (0..).zip(events) {
        // Attempts of all people are followed: what is stray can only be told so.
        let place = proof.attempts.take(event);
        if event.stamp().person == asked.person && families.concerns(event) {
            proof.take(event, place, nth);
            proof.look(event.stamp().day());
        }
    }
    proof.told()
}

/// What has been made of the events so far.
#[derive(Default)]
struct Made<'a> {
    account: Account<'a>,
    /// Attempts at the competency that are open, by their places, in the order in which they were opened.
    open: Vec<usize>,
    /// Attempts at the competency that were answered in, by their places.
    rounds: BTreeMap<usize, Round<'a>>,
    /// The place of the one begun last.
    latest: Option<usize>,
    /// How many were begun since the evidence last sufficed.
    begun: u32,
    hazards: BTreeMap<String, Hazard>,
    uncounted: BTreeMap<Uncounted, u32>,
}

struct Proof<'a, 'b> {
    asked: &'b Asked<'b>,
    families: &'b Families<'b>,
    attempts: Attempts<'a>,
    made: Made<'a>,
}

impl<'a> Proof<'a, '_> {
    fn take(&mut self, event: &'a Event, place: Result<Option<usize>, Stray>, nth: u64) {
        let made = &mut self.made;
        match event {
            Event::Answered(entry) => match made.account.take(entry, place, self.asked.unsure_counts) {
                Ok(counted) => self.answer(&counted, nth),
                Err(why) => self.leave_out(why),
            },
            Event::Taught(taught) => {
                if let Some(hazard) = made.hazards.get_mut(&taught.family) {
                    hazard.taught(&taught.stamp);
                }
            }
            Event::Attempt(turn) => match (&turn.step, place) {
                (Step::Opened { competencies, .. }, Ok(Some(place))) => {
                    let at_it = competencies.iter().any(|slug| slug == self.asked.competency);
                    made.open.extend(at_it.then_some(place));
                }
                (Step::Closed, Ok(Some(place))) => made.open.retain(|open| *open != place),
                _ => {}
            },
        }
    }

    fn leave_out(&mut self, why: Uncounted) {
        *self.made.uncounted.entry(why).or_insert(0) += 1;
    }

    fn answer(&mut self, answer: &Counted<'a>, nth: u64) {
        let family = answer.entry.family.as_str();
        if self.families.safety.contains(family) {
            match self.made.hazards.get_mut(family) {
                Some(hazard) => hazard.answer(answer),
                None if !answer.right => {
                    self.made.hazards.insert(family.to_owned(), Hazard::new(answer));
                }
                None => {}
            }
        }
        let taken = match self.place(answer) {
            Some(place) => self.round(place).answer(answer, nth),
            None => Err(Uncounted::NoAttempt),
        };
        if let Err(why) = taken {
            self.leave_out(why);
        }
    }

    /// The attempt at this competency that an answer counts for: its own; on a walk the one opened last on that device and
    /// not decided.
    fn place(&self, answer: &Counted<'_>) -> Option<usize> {
        let made = &self.made;
        if let Some(own) = answer.attempt {
            return made.open.iter().copied().find(|place| *place == own);
        }
        let here = |place: &usize| {
            let attempt = self.attempts.all().get(*place);
            attempt.is_some_and(|one| one.device == answer.entry.stamp.device)
        };
        let decided = |place: &usize| made.rounds.get(place).is_some_and(Round::is_decided);
        made.open.iter().rev().copied().find(|place| here(place) && !decided(place))
    }

    /// The test of an attempt, begun with its first answer.
    fn round(&mut self, place: usize) -> &mut Round<'a> {
        let (made, standard) = (&mut self.made, self.asked.standard);
        made.rounds.entry(place).or_insert_with(|| {
            made.begun = made.begun.saturating_add(1);
            made.latest = Some(place);
            Round::new(standard, made.begun, usual_luck())
        })
    }

    fn errors(&self) -> u32 {
        u32::try_from(self.made.hazards.len()).unwrap_or(u32::MAX)
    }

    /// Lifts what is passed again, and sees whether an attempt suffices.
    fn look(&mut self, day: Option<LocalDate>) {
        self.made.hazards.retain(|_, hazard| !hazard.is_lifted());
        let open = self.errors();
        for round in self.made.rounds.values_mut() {
            if round.look(self.families, open, day) {
                self.made.begun = 0;
            }
        }
    }

    fn told(mut self) -> Evidence {
        let open = self.errors();
        let latest = self.made.latest.and_then(|place| Some((place, self.made.rounds.remove(&place)?)));
        let (place, round) = match latest {
            Some((place, round)) => (Some(place), round),
            None => (None, Round::new(self.asked.standard, 0, usual_luck())),
        };
        let attempt = place.and_then(|place| self.attempts.all().get(place));
        Evidence {
            attempt: round.number,
            closed: attempt.is_some_and(|one| one.standing == Standing::Closed),
            state: round.state(self.families, open),
            sufficient_since: round.sufficient.flatten(),
            earlier: self.made.rounds.values().map(|round| round.state(self.families, 0).call).collect(),
            hazards: self.made.hazards.into_values().collect(),
            uncounted: self.made.uncounted,
        }
    }
}

fn usual_luck() -> Guess {
    Guess::options(USUAL_OPTIONS).unwrap_or(Guess::NUMBER)
}
