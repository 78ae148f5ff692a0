//! The evidence of one person for one competency, worked out from the journal.

use super::account::Account;
use super::families::Families;
use super::round::Round;
use super::{Asked, Counted, Evidence, Hazard, Taken, Uncounted};
use crate::learn::mastery::{Call, Guess};
use crate::record::{Attempts, Event, LocalDate, Placed, Standing, Step, Stray, Voids, WalkStep, Walked};
use std::collections::{BTreeMap, BTreeSet};

/// The evidence that events give, oldest first: those of one journal, or of several merged ones.
#[must_use]
pub fn evidence<'a>(events: impl IntoIterator<Item = &'a Event>, asked: &Asked<'_>) -> Evidence {
    evidence_among(&Placed::of(events), asked)
}

/// The same of events whose attempts are found already.
#[must_use]
pub fn evidence_among(events: &Placed<'_>, asked: &Asked<'_>) -> Evidence {
    let families = Families::of(asked.content, asked.competency);
    let voids = Voids::of(events.events().map(|(event, _)| event));
    let (attempts, made) = (events.attempts(), Made::default());
    let mut proof = Proof { asked, families: &families, voids, attempts, made };
    for (event, place) in events.events() {
        if event.stamp().person == asked.person && families.concerns(event) {
            proof.take(event, place);
            proof.look(event.stamp().day());
        }
    }
    proof.told()
}

/// What has been made of the events so far.
#[derive(Default)]
struct Made<'a> {
    account: Account<'a>,
    /// Places of the attempts at the competency that are open; the later opened come later.
    open: BTreeSet<usize>,
    /// The attempt at the competency that was begun last, with its place: it alone takes answers and may suffice.
    latest: Option<(usize, Round<'a>)>,
    /// Places of those that were begun before.
    superseded: BTreeSet<usize>,
    /// What they had come to, in the order in which they were begun.
    earlier: Vec<Call>,
    /// How many were begun since the evidence last sufficed.
    begun: u32,
    hazards: BTreeMap<String, Hazard>,
    uncounted: BTreeMap<Uncounted, u32>,
    /// What was taken so far, so that each is told from all others.
    taken: u64,
}

impl Made<'_> {
    fn is_superseded(&self, place: usize) -> bool {
        self.superseded.contains(&place)
    }

    fn is_decided(&self, place: usize) -> bool {
        self.latest.as_ref().is_some_and(|(latest, round)| *latest == place && round.is_decided())
    }
}

struct Proof<'a, 'b> {
    asked: &'b Asked<'b>,
    families: &'b Families<'b>,
    voids: Voids<'a>,
    attempts: &'b Attempts<'a>,
    made: Made<'a>,
}

impl<'a> Proof<'a, '_> {
    fn take(&mut self, event: &'a Event, place: Result<Option<usize>, Stray>) {
        let made = &mut self.made;
        match event {
            Event::Answered(entry) => {
                match made.account.take(entry, place, self.asked.unsure_counts, &self.voids) {
                    Ok(counted) => self.answer(&counted),
                    Err(why) => self.leave_out(why),
                }
            }
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
                (Step::Closed, Ok(Some(place))) => {
                    made.open.remove(&place);
                }
                _ => {}
            },
            Event::Walked(walked) => self.walked(walked),
            // What was watched is no knowledge evidence.
            Event::Observed(_) | Event::Filed(_) | Event::Struck(_) | Event::Erased(_) | Event::Voided(_) => {
            }
        }
    }

    fn leave_out(&mut self, why: Uncounted) {
        *self.made.uncounted.entry(why).or_insert(0) += 1;
    }

    fn walked(&mut self, walked: &'a Walked) {
        let decided = match &walked.step {
            WalkStep::Decided(decided) => decided,
            WalkStep::Inspected(_) => return self.made.account.inspected(walked),
            WalkStep::LetGo => return,
        };
        if !self.made.account.is_new(walked, decided) {
            return;
        }
        let families = self.families;
        for one in decided.exercised.iter().filter(|one| families.all.contains(one.family.as_str())) {
            match self.made.account.decided((walked, decided, one), &self.voids) {
                Ok(counted) => self.answer(&counted),
                Err(why) => self.leave_out(why),
            }
        }
    }

    fn answer(&mut self, answer: &Counted<'a>) {
        let family = answer.family;
        if self.families.safety.contains(family) {
            match self.made.hazards.get_mut(family) {
                Some(hazard) => hazard.answer(answer),
                None if !answer.right => {
                    self.made.hazards.insert(family.to_owned(), Hazard::new(answer));
                }
                None => {}
            }
        }
        self.made.taken += 1;
        let nth = self.made.taken;
        let taken = match self.place(answer) {
            // What was done before on the same job begins no attempt.
            _ if answer.left_out == Some(Uncounted::Repeat) => Err(Uncounted::Repeat),
            Some(place) if self.made.is_superseded(place) => Err(Uncounted::Superseded),
            Some(place) => self.round(place).answer(answer, nth),
            None => Err(Uncounted::NoAttempt),
        };
        if let Err(why) = taken {
            self.leave_out(why);
        }
    }

    /// The attempt at this competency that an answer counts for: its own; on a walk the one opened last on that device and
    /// neither decided nor superseded.
    fn place(&self, answer: &Counted<'_>) -> Option<usize> {
        let made = &self.made;
        if let Some(own) = answer.attempt {
            return made.open.contains(&own).then_some(own);
        }
        let here = |place: &usize| {
            let attempt = self.attempts.all().get(*place);
            attempt.is_some_and(|one| one.device == answer.stamp.device)
        };
        let over = |place: &usize| made.is_decided(*place) || made.is_superseded(*place);
        made.open.iter().rev().copied().find(|place| here(place) && !over(place))
    }

    /// The test of an attempt, begun with its first answer. It supersedes the one before, whose call is kept: what is met
    /// afterwards is too late for it, or an attempt that had failed to suffice would give alpha back.
    fn round(&mut self, place: usize) -> &mut Round<'a> {
        let (open, standard) = (self.errors(), self.asked.standard);
        let made = &mut self.made;
        if let Some((before, round)) = made.latest.take_if(|(latest, _)| *latest != place) {
            made.superseded.insert(before);
            made.earlier.push(round.came_to(self.families, open));
        }
        let begun = &mut made.begun;
        let (_, round) = made.latest.get_or_insert_with(|| {
            *begun = begun.saturating_add(1);
            (place, Round::new(standard, *begun, Guess::USUAL))
        });
        round
    }

    fn errors(&self) -> u32 {
        u32::try_from(self.made.hazards.len()).unwrap_or(u32::MAX)
    }

    /// Lifts what is passed again, and sees whether the latest attempt suffices.
    fn look(&mut self, day: Option<LocalDate>) {
        self.made.hazards.retain(|_, hazard| !hazard.is_lifted());
        let open = self.errors();
        let latest = self.made.latest.as_mut();
        if latest.is_some_and(|(_, round)| round.look(self.families, open, day)) {
            self.made.begun = 0;
        }
    }

    fn told(self) -> Evidence {
        let open = self.errors();
        let (place, round) = match self.made.latest {
            Some((place, round)) => (Some(place), round),
            None => (None, Round::new(self.asked.standard, 0, Guess::USUAL)),
        };
        let attempt = place.and_then(|place| self.attempts.all().get(place));
        let taken = attempt.map(|one| Taken { device: one.device.to_owned(), attempt: one.id.to_owned() });
        Evidence {
            taken,
            attempt: round.number,
            closed: attempt.is_some_and(|one| one.standing == Standing::Closed),
            supervised: attempt.and_then(|one| one.supervised).cloned(),
            state: round.state(self.families, open),
            sufficient_since: round.sufficient.flatten(),
            earlier: self.made.earlier,
            hazards: self.made.hazards.into_values().collect(),
            uncounted: self.made.uncounted,
            unreadable: self.asked.unreadable,
        }
    }
}
