//! The walk itself: decisions carried out one by one, replayed, taken up again from any turn.

use super::acts::{acts, opened, parts};
use super::clock::{day, midnight};
use super::decision::{Decision, RoomAct, Wait};
use super::impossible::{Impossible, Why};
use super::lapse::Lapse;
use super::room::Room;
use super::saved::{Mode, Saved};
use super::start::Start;
use super::state::{Line, State};
use super::surface::Shown;
use super::turn::{Read, Turn};
use crate::content::Content;
use crate::process::act::Act;
use crate::process::lying::Lying;
use crate::process::run::Run;
use crate::quantity::{DUST, Hours};
use crate::rules::drying::waits::DryTest;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::Climate;

/// Hours in which a part is stripped to the wood: our estimate, common practice, no source.
pub const STRIP_H: Hours = Hours::saturating(4.0);
/// Time after the shop closes in which the room is still seen to: our own choice, no source.
const TIDY_H: Hours = Hours::saturating(1.0);
/// Longest wait in one go: sixty days. Our own limit.
pub const WAIT_MOST: Hours = Hours::saturating(1_440.0);
/// The day by which the clock of a walk stops: hours are told for a year.
const LAST_DAY: u32 = 360;
/// Shares of the wait before levelling after which a film no longer smells and no longer takes a dent; powder comes with
/// the whole of it. Our own estimate, common practice, no source: only all three say that it is hard.
const SMELLS_UNTIL: f64 = 0.5;
const DENTS_UNTIL: f64 = 0.75;

/// A job that is being walked.
#[derive(Debug, Clone, PartialEq)]
pub struct Walk {
    start: Start,
    mode: Mode,
    seed: u32,
    state: State,
    turns: Vec<Turn>,
}

impl Walk {
    /// A walk not begun; its clock stands where the first day opens.
    #[must_use]
    pub fn begin(start: Start, mode: Mode, seed: u32) -> Self {
        let state = State::new(&start);
        Self { start, mode, seed, state, turns: Vec::new() }
    }

    /// Carries a decision out.
    ///
    /// # Errors
    /// [`Impossible`], and nothing is changed.
    pub fn decide(&mut self, decision: Decision, content: &Content) -> Result<&Turn, Box<Impossible>> {
        let (state, turn) = self.tried(decision, content)?;
        self.state = state;
        self.turns.push(turn);
        // It was pushed just above.
        self.turns.last().ok_or_else(|| Box::new(Impossible::new(&Decision::HandOver, Why::Over)))
    }

    /// The state and the turn that a decision would lead to.
    pub(super) fn tried(
        &self,
        decision: Decision,
        content: &Content,
    ) -> Result<(State, Turn), Box<Impossible>> {
        let mut next = self.state.clone();
        let nth = self.turns.len();
        let begun = self.clock();
        let from = self.state.lines.len();
        if self.state.over {
            return Err(Box::new(Impossible::new(&decision, Why::Over)));
        }
        let Done { lapses, read, mut mended } = self.carry_out(&mut next, &decision, nth, content)?;
        mended.extend(next.mend(from, nth, content));
        let shown = next.uncover(&self.start, nth);
        let ended = next.clock(&self.start);
        let turn = Turn {
            decision,
            begun,
            ended,
            air: self.start.air.at(ended - self.start.day.opens().get()),
            lines: (from, next.lines.len()),
            shown,
            mended,
            lapses,
            read,
        };
        Ok((next, turn))
    }

    fn carry_out(
        &self,
        next: &mut State,
        decision: &Decision,
        nth: usize,
        content: &Content,
    ) -> Result<Done, Box<Impossible>> {
        let start = &self.start;
        let mut done = Done::default();
        match decision {
            Decision::Work(work) => {
                let acts = acts(next, start, content, decision, work).map_err(Box::new)?;
                if acts.last().is_some_and(|last| day(last.ended) > LAST_DAY) {
                    return Err(Box::new(Impossible::new(decision, Why::YearOver)));
                }
                for (coat, timed) in acts.into_iter().enumerate() {
                    done.lapses.extend(next.act(start, timed, nth, coat == 0));
                }
            }
            Decision::Strip(named) => {
                let named = parts(start, decision, &named.parts).map_err(Box::new)?;
                let bare = |part: &&usize| next.run.lying(**part).is_none_or(|lying| lying.done.is_empty());
                if let Some(part) = named.iter().find(bare) {
                    return Err(Box::new(Impossible::new(decision, Why::NothingToStrip).on(*part)));
                }
                let begun = opened(start, decision, next.clock(start), STRIP_H).map_err(Box::new)?;
                let ended = start.day.end(begun, STRIP_H);
                done.mended = next.strip(start, &named, nth, ended);
                done.lapses = next.room.pass(begun, ended, &start.sheet);
            }
            Decision::Wait(wait) => {
                let until = self.until(decision, *wait).map_err(Box::new)?;
                done.lapses = next.wait(start, until);
                if let Wait::Until(test) = wait {
                    done.read.push(Read::Test(*test));
                }
            }
            Decision::Wear(worn) => next.room.worn = *worn,
            Decision::Room(duties) => {
                if duties.is_empty() {
                    return Err(Box::new(Impossible::new(decision, Why::NoDuty)));
                }
                let tidying = (next.clock(start) - TIDY_H.get()).max(0.0);
                let open = |clock: f64| start.day.begin(clock, Hours::saturating(0.0)) <= clock + DUST;
                if !open(tidying) {
                    opened(start, decision, next.clock(start), Hours::saturating(0.0)).map_err(Box::new)?;
                }
                for duty in duties {
                    self.duty(next, decision, *duty, nth, &mut done).map_err(Box::new)?;
                }
            }
            Decision::Offer(offer) => {
                let (asked, last) = (start.info.ticket.days, LAST_DAY);
                if offer.day <= asked || offer.day > last {
                    let refused = Impossible::new(decision, Why::DaySpan);
                    return Err(Box::new(refused.within(f64::from(asked + 1), f64::from(last))));
                }
                next.offered = Some(offer.day);
            }
            Decision::HandOver => {
                if next.lines.is_empty() && next.offered.is_none() {
                    return Err(Box::new(Impossible::new(decision, Why::NothingDone)));
                }
                if !next.lines.is_empty() {
                    next.run.hand_over();
                }
                next.over = true;
            }
        }
        Ok(done)
    }

    fn duty(
        &self,
        next: &mut State,
        decision: &Decision,
        duty: RoomAct,
        nth: usize,
        done: &mut Done,
    ) -> Result<(), Impossible> {
        let clock = next.clock(&self.start);
        match duty {
            RoomAct::FanOn => next.room.fan = true,
            RoomAct::FanOff => {
                done.lapses.extend(self.is_wet(next).then_some(Lapse::FanOff).filter(|_| next.room.fan));
                next.room.fan = false;
            }
            RoomAct::GaugeRead if !next.room.fan => return Err(Impossible::new(decision, Why::FanStill)),
            RoomAct::GaugeRead => {
                next.room.gauge_read = true;
                done.read.push(Read::Gauge { past: next.room.filters_loaded() });
            }
            RoomAct::FiltersChanged => next.room.coats_on_filters = 0,
            RoomAct::AirRead => {
                next.room.air_read = Some(clock);
                done.read.extend(self.start.air.at(next.run.now().get()).map(Read::Air));
            }
            RoomAct::SourcesOut => next.room.sources_out = true,
            RoomAct::RagsAway if !next.room.rags_about() => {
                return Err(Impossible::new(decision, Why::NoRags));
            }
            RoomAct::RagsAway => {
                next.room.rags.clear();
                let timed = super::acts::Timed {
                    act: Act::of(Operation::RagsAway),
                    begun: clock,
                    ended: clock,
                    wet: None,
                };
                done.lapses.extend(next.act(&self.start, timed, nth, true));
            }
            RoomAct::GunCleaned if !next.room.gun_dirty() => {
                return Err(Impossible::new(decision, Why::GunClean));
            }
            RoomAct::GunCleaned => {
                let bare = !(next.room.worn.gloves && next.room.worn.eyes);
                done.lapses.extend(bare.then_some(Lapse::Uncovered));
                next.room.gun = None;
            }
            RoomAct::WheelChecked => next.room.wheel_checked = true,
        }
        Ok(())
    }

    /// Whether a coat still gives off vapour: its wait is not over.
    fn is_wet(&self, state: &State) -> bool {
        let next_coat = Act::of(Operation::Clear);
        let over = state.run.waiting(&next_coat).map(|waiting| waiting.over);
        let coated = (0..self.start.parts())
            .any(|part| state.run.lying(part).is_some_and(|lying| lying.film().is_some()));
        coated && over.is_some_and(|over| over > state.run.now().get() + DUST)
    }

    /// When a wait is over, in hours after the first midnight.
    fn until(&self, decision: &Decision, wait: Wait) -> Result<f64, Impossible> {
        let clock = self.clock();
        let until = match wait {
            Wait::Hours(hours) if hours.get() <= 0.0 || hours > WAIT_MOST => {
                let refused = Impossible::new(decision, Why::WaitSpan);
                return Err(refused.within(0.0, WAIT_MOST.get()));
            }
            Wait::Hours(hours) => clock + hours.get(),
            Wait::Morning => midnight(day(clock) + 1) + self.start.day.opens().get(),
            Wait::Until(test) => self.passes(decision, test)?,
        };
        if day(until) > LAST_DAY { Err(Impossible::new(decision, Why::YearOver)) } else { Ok(until) }
    }

    /// When a test of the last coats first passes, tried while the shop is open.
    fn passes(&self, decision: &Decision, test: DryTest) -> Result<f64, Impossible> {
        let run = &self.state.run;
        let youngest = (0..self.start.parts())
            .filter_map(|part| run.lying(part)?.film().map(|film| film.age.get()))
            .reduce(f64::min);
        let Some(age) = youngest else { return Err(Impossible::new(decision, Why::NothingToTest)) };
        let over = run.waiting(&Act::of(Operation::Level)).map_or(run.now().get(), |waiting| waiting.over);
        let laid = run.now().get() - age;
        let share = match test {
            DryTest::Smell => SMELLS_UNTIL,
            DryTest::Thumbnail => DENTS_UNTIL,
            DryTest::Powder => 1.0,
        };
        let ready = laid + (over - laid) * share;
        if !ready.is_finite() {
            return Err(Impossible::new(decision, Why::NeverReady));
        }
        let at = (ready + self.start.day.opens().get()).max(self.clock());
        Ok(self.start.day.begin(at, Hours::saturating(0.0)))
    }

    /// The same walk after its first turns; all of them where it had no more.
    #[must_use]
    pub fn at(&self, turns: usize, content: &Content) -> Self {
        let mut walk = Self::begin(self.start.clone(), self.mode, self.seed);
        for turn in self.turns.iter().take(turns) {
            // What was possible once is possible again: nothing but the decisions changes the walk.
            let _ = walk.decide(turn.decision.clone(), content);
        }
        walk
    }

    /// The walk taken up again before a turn, as another try.
    #[must_use]
    pub fn again_from(&self, turn: usize, content: &Content) -> Self {
        self.at(turn, content)
    }

    /// What it takes to walk it again.
    #[must_use]
    pub fn saved(&self) -> Saved {
        Saved::of(self)
    }

    /// What it began with.
    #[must_use]
    pub const fn start(&self) -> &Start {
        &self.start
    }

    /// How it is walked.
    #[must_use]
    pub const fn mode(&self) -> Mode {
        self.mode
    }

    /// The number that chance came from, where there was some.
    #[must_use]
    pub const fn seed(&self) -> u32 {
        self.seed
    }

    /// The turns, in order.
    #[must_use]
    pub fn turns(&self) -> &[Turn] {
        &self.turns
    }

    /// The lines of the ticket.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.state.lines
    }

    /// What came to light so far.
    #[must_use]
    pub fn shown(&self) -> &[Shown] {
        &self.state.shown
    }

    /// The room.
    #[must_use]
    pub const fn room(&self) -> &Room {
        &self.state.room
    }

    /// A part as it lies there.
    #[must_use]
    pub fn part(&self, part: usize) -> Option<Lying> {
        self.state.run.lying(part)
    }

    /// The work below: films, waits, defects whether they show or not.
    #[must_use]
    pub const fn run(&self) -> &Run {
        &self.state.run
    }

    /// The clock, in hours after the first midnight.
    #[must_use]
    pub fn clock(&self) -> f64 {
        self.state.clock(&self.start)
    }

    /// The air of the room now.
    #[must_use]
    pub fn air(&self) -> Option<Climate> {
        self.start.air.at(self.state.run.now().get())
    }

    /// Whether it was handed over.
    #[must_use]
    pub const fn is_over(&self) -> bool {
        self.state.over
    }

    /// Hours at the benches so far.
    #[must_use]
    pub const fn bench_hours(&self) -> f64 {
        self.state.bench_h
    }

    /// The day that was offered instead of the one asked for.
    #[must_use]
    pub const fn offered(&self) -> Option<u32> {
        self.state.offered
    }

    /// Parts that were stripped, each with the turn.
    #[must_use]
    pub fn stripped(&self) -> &[(usize, usize)] {
        &self.state.stripped
    }

    pub(super) fn taken(&self, state: State, turn: Turn) -> Self {
        let turns = self.turns.iter().cloned().chain([turn]).collect();
        Self { start: self.start.clone(), mode: self.mode, seed: self.seed, state, turns }
    }
}

/// What a decision came to beside the work.
#[derive(Default)]
struct Done {
    lapses: Vec<Lapse>,
    read: Vec<Read>,
    mended: Vec<usize>,
}
