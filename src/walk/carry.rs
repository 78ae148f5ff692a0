//! A decision carried out: what it changes, or why it cannot be done.

use super::acts::{Timed, acts, opened, parts, shut};
use super::clock::day;
use super::decision::{Decision, Offer, Parts, RoomAct, Wait, Work};
use super::impossible::{Impossible, Why};
use super::lapse::Lapse;
use super::start::Start;
use super::state::State;
use super::turn::Read;
use super::wait::{LAST_DAY, until};
use crate::content::Content;
use crate::process::act::Act;
use crate::quantity::DUST;
use crate::rules::fault::STRIP_H;
use crate::rules::sequence::operation::Operation;
use crate::rules::term::Term;

/// What a decision came to beside the work.
#[derive(Default)]
pub(super) struct Done {
    pub(super) lapses: Vec<Lapse>,
    pub(super) read: Vec<Read>,
    pub(super) mended: Vec<usize>,
}

/// A decision that is being carried out.
pub(super) struct Carried<'a> {
    pub(super) start: &'a Start,
    pub(super) content: &'a Content,
    pub(super) what: &'a Decision,
    /// Its place among the turns.
    pub(super) turn: usize,
}

type Carry<T> = Result<T, Box<Impossible>>;

impl Carried<'_> {
    /// Changes the state.
    pub(super) fn out(&self, state: &mut State) -> Carry<Done> {
        match self.what {
            Decision::Work(work) => self.work(state, work),
            Decision::Strip(named) => self.strip(state, named),
            Decision::Wait(wait) => self.wait(state, *wait),
            Decision::Wear(worn) => {
                state.room.worn = *worn;
                Ok(Done::default())
            }
            Decision::Room(duties) => self.duties(state, duties),
            Decision::Offer(offer) => self.offer(state, *offer),
            Decision::HandOver => self.hand_over(state),
        }
    }

    fn refused(&self, why: Why) -> Box<Impossible> {
        Impossible::new(self.what, why)
    }

    fn work(&self, state: &mut State, work: &Work) -> Carry<Done> {
        let acts = acts(state, self.start, self.content, self.what, work)?;
        if acts.last().is_some_and(|last| day(last.ended) > LAST_DAY) {
            return Err(self.refused(Why::YearOver));
        }
        let mut done = Done::default();
        for (coat, timed) in acts.into_iter().enumerate() {
            done.lapses.extend(state.act(self.start, timed, self.turn, coat == 0));
        }
        Ok(done)
    }

    fn strip(&self, state: &mut State, named: &Parts) -> Carry<Done> {
        let named = parts(self.start, self.what, &named.parts)?;
        let bare = |part: &&usize| state.run.lying(**part).is_none_or(|lying| lying.done.is_empty());
        if let Some(part) = named.iter().find(bare) {
            return Err(Impossible::new(self.what, Why::NothingToStrip).on(*part));
        }
        let begun = opened(self.start, self.what, state.clock(self.start), STRIP_H)?;
        let ended = self.start.day.end(begun, STRIP_H);
        let mended = state.strip(self.start, &named, self.turn, ended);
        let lapses = state.room.pass(begun, ended, &self.start.sheet);
        Ok(Done { lapses, mended, ..Done::default() })
    }

    fn wait(&self, state: &mut State, wait: Wait) -> Carry<Done> {
        let until = until(state, self.start, self.what, wait)?;
        let lapses = state.wait(self.start, until);
        let read = match wait {
            Wait::Until(test) => vec![Read::Test(test)],
            _ => Vec::new(),
        };
        Ok(Done { lapses, read, ..Done::default() })
    }

    fn offer(&self, state: &mut State, offer: Offer) -> Carry<Done> {
        let asked = self.start.info.ticket.days;
        if offer.day <= asked || offer.day > LAST_DAY {
            let refused = Impossible::new(self.what, Why::DaySpan);
            return Err(refused.within(f64::from(asked + 1), f64::from(LAST_DAY)));
        }
        state.offered = Some(offer.day);
        Ok(Done::default())
    }

    fn hand_over(&self, state: &mut State) -> Carry<Done> {
        if state.lines.is_empty() && state.offered.is_none() {
            return Err(self.refused(Why::NothingDone));
        }
        if !state.lines.is_empty() {
            state.run.hand_over();
        }
        state.over = true;
        Ok(Done::default())
    }

    fn duties(&self, state: &mut State, duties: &[RoomAct]) -> Carry<Done> {
        if duties.is_empty() {
            return Err(self.refused(Why::NoDuty));
        }
        let clock = state.clock(self.start);
        if let Some(opens) = shut(self.start, clock) {
            return Err(Impossible::new(self.what, Why::Closed).from(opens));
        }
        let mut done = Done::default();
        for duty in duties {
            self.duty(state, *duty, &mut done)?;
        }
        Ok(done)
    }

    fn duty(&self, state: &mut State, duty: RoomAct, done: &mut Done) -> Carry<()> {
        let clock = state.clock(self.start);
        match duty {
            RoomAct::FanOn => state.room.fan = true,
            RoomAct::FanOff => {
                done.lapses.extend((state.room.fan && is_wet(state, self.start)).then_some(Lapse::FanOff));
                state.room.fan = false;
            }
            RoomAct::GaugeRead if !state.room.fan => return Err(self.refused(Why::FanStill).at(duty.slug())),
            RoomAct::GaugeRead => {
                state.room.gauge_read = true;
                done.read.push(Read::Gauge { past: state.room.filters_loaded() });
            }
            RoomAct::FiltersChanged => state.room.coats_on_filters = 0,
            RoomAct::AirRead => {
                state.room.air_read = Some(clock);
                done.read.extend(self.start.air.at(state.run.now().get()).map(Read::Air));
            }
            RoomAct::MeterRead => done.read.extend(
                (0..self.start.parts()).map(|part| Read::Meter { part, moisture: self.start.moisture(part) }),
            ),
            RoomAct::SourcesOut => state.room.sources_out = true,
            RoomAct::RagsAway if !state.room.rags_about() => {
                return Err(self.refused(Why::NoRags).at(duty.slug()));
            }
            RoomAct::RagsAway => {
                state.room.rags.clear();
                let act = Act::of(Operation::RagsAway);
                let timed = Timed { act, begun: clock, ended: clock, wet: None };
                done.lapses.extend(state.act(self.start, timed, self.turn, true));
            }
            RoomAct::GunCleaned if !state.room.gun_dirty() => {
                return Err(self.refused(Why::GunClean).at(duty.slug()));
            }
            RoomAct::GunCleaned => {
                done.lapses.extend((!state.room.covered()).then_some(Lapse::Uncovered));
                state.room.gun = None;
            }
            RoomAct::WheelChecked => state.room.wheel_checked = true,
        }
        Ok(())
    }
}

/// Whether a coat still gives off vapour: its wait is not over.
fn is_wet(state: &State, start: &Start) -> bool {
    let coated = |part| state.run.lying(part).is_some_and(|lying| lying.film().is_some());
    let over = state.run.waiting(&Act::of(Operation::Clear)).map(|waiting| waiting.over);
    (0..start.parts()).any(coated) && over.is_some_and(|over| over > state.run.now().get() + DUST)
}
