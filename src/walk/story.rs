//! The walk itself: decisions carried out one by one, replayed, taken up again from any turn.

use super::carry::{Carried, Done};
use super::decision::Decision;
use super::impossible::{Impossible, Why};
use super::line::Line;
use super::room::Room;
use super::saved::{Mode, Saved};
use super::start::Start;
use super::state::State;
use super::surface::Shown;
use super::turn::Turn;
use crate::content::Content;
use crate::process::lying::Lying;
use crate::process::run::Run;
use crate::rules::sequence::plan::Climate;

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
        self.turns.last().ok_or_else(|| Impossible::new(&Decision::HandOver, Why::Over))
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
            return Err(Impossible::new(&decision, Why::Over));
        }
        let carried = Carried { start: &self.start, content, what: &decision, turn: nth };
        let Done { lapses, read, mut mended } = carried.out(&mut next)?;
        mended.extend(next.mend(from, nth, &self.start, content));
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

    /// The same walk after its first turns, all of them where it had no more: to look back, or as another try.
    #[must_use]
    pub fn at(&self, turns: usize, content: &Content) -> Self {
        let mut walk = Self::begin(self.start.clone(), self.mode, self.seed);
        for turn in self.turns.iter().take(turns) {
            // What was possible once is possible again: nothing but the decisions changes the walk.
            let _ = walk.decide(turn.decision.clone(), content);
        }
        walk
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
