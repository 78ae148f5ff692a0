//! Everything that a decision changes.

use super::acts::Timed;
use super::clock::day;
use super::lapse::Lapse;
use super::line::Line;
use super::mend;
use super::room::{Room, sprays};
use super::start::Start;
use super::surface::{Shown, When, at_the_end, is_open};
use crate::content::Content;
use crate::process::run::Run;
use crate::quantity::Hours;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;
use crate::rules::term::Filler;

/// The state of a walk.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct State {
    pub(super) run: Run,
    pub(super) room: Room,
    pub(super) lines: Vec<Line>,
    pub(super) shown: Vec<Shown>,
    /// Defects that were stripped off before they showed, by place in the run.
    gone: Vec<usize>,
    /// Hours at the benches.
    pub(super) bench_h: f64,
    /// Parts that were stripped, with the turn.
    pub(super) stripped: Vec<(usize, usize)>,
    /// The day that was offered.
    pub(super) offered: Option<u32>,
    pub(super) over: bool,
}

impl State {
    pub(super) fn new(start: &Start) -> Self {
        Self {
            run: Run::start(start.job.clone(), start.sheet.clone(), start.air.clone()),
            room: Room::new(),
            lines: Vec::new(),
            shown: Vec::new(),
            gone: Vec::new(),
            bench_h: 0.0,
            stripped: Vec::new(),
            offered: None,
            over: false,
        }
    }

    /// The clock, in hours after the first midnight; waiting is added by what waits.
    pub(super) fn clock(&self, start: &Start) -> f64 {
        self.run.now().get() + start.day.opens().get()
    }

    /// Time goes by with nothing done.
    pub(super) fn wait(&mut self, start: &Start, until: f64) -> Vec<Lapse> {
        let from = self.clock(start);
        self.run.wait(Hours::saturating(until - from));
        self.room.pass(from, until, &start.sheet)
    }

    /// Does an act: the room first, then the work; gives the duties left undone. `first` is the first of its coats: what
    /// was read and put on before it is taken as read and put on before each of them, and the gun as cleaned for the night
    /// between two.
    pub(super) fn act(&mut self, start: &Start, timed: Timed, turn: usize, first: bool) -> Vec<Lapse> {
        let ready = self.room.clone();
        if !first && day(timed.begun) > day(self.clock(start)) {
            self.room.gun = None;
        }
        let mut lapses = self.wait(start, timed.begun);
        if !first {
            self.room.made_ready_as(&ready);
        }
        let Timed { mut act, begun, ended, wet } = timed;
        let operation = act.step.operation;
        if sprays(operation) && first {
            lapses.extend(self.room.before_coat(begun));
        } else if !sprays(operation) {
            lapses.extend(self.room.before_work(operation, &act.step.manners));
        }
        let parts = match act.step.part {
            None => (0..start.parts()).collect(),
            Some(part) => std::iter::once(part).chain(act.also.iter().copied()).collect(),
        };
        let rags = rags_of(operation, &act.step.manners, start);
        act.step = act.step.after(Hours::saturating(0.0));
        // Everything is told: the values were filled in.
        let _ = self.run.act(act);
        self.lines.push(Line { operation, parts, turn, begun, ended, wet });
        self.bench_h += ended - begun;
        lapses.extend(self.room.pass(begun, ended, &start.sheet));
        if sprays(operation) {
            self.room.coats_on_filters = self.room.coats_on_filters.saturating_add(1);
            self.room.gun = self.room.gun.or(Some(begun));
        }
        if operation == Operation::WipeFiller {
            self.room.rags.clear();
        }
        if let Some(lapse) = rags {
            self.room.drop_rags(ended, lapse);
        }
        lapses
    }

    /// A part was stripped.
    pub(super) fn strip(&mut self, start: &Start, parts: &[usize], turn: usize, ended: f64) -> Vec<usize> {
        let begun = self.clock(start);
        let mut mended = Vec::new();
        for (nth, part) in parts.iter().enumerate() {
            let took = if nth == 0 { ended - begun } else { 0.0 };
            self.run.strip(*part, Hours::saturating(took));
            self.stripped.push((*part, turn));
            for (at, defect) in self.run.defects().iter().enumerate() {
                let alone = self.lines.get(defect.made).is_none_or(|line| line.parts == [*part]);
                if defect.part == *part && alone && !self.gone.contains(&at) {
                    self.gone.push(at);
                }
            }
            for (at, shown) in self.shown.iter_mut().enumerate() {
                if mend::strip(shown, *part) {
                    shown.mended = Some(turn);
                    mended.push(at);
                }
            }
        }
        self.bench_h += ended - begun;
        mended
    }

    /// What came to light with the last lines; gives their places among all that showed.
    pub(super) fn uncover(&mut self, start: &Start, turn: usize) -> Vec<usize> {
        let operations = self.run.operations();
        let mut found = Vec::new();
        for (at, defect) in self.run.defects().iter().enumerate() {
            let known = self.shown.iter().any(|shown| shown.defect == *defect) || self.gone.contains(&at);
            let when = match (known, self.over) {
                (false, true) => at_the_end(defect, &operations),
                (false, false) if is_open(defect, &self.lines) => When::AtWork,
                _ => continue,
            };
            let on = self.lines.get(defect.made);
            let steps = (0..start.parts()).map(|part| on.filter(|line| line.touches(part)).map(|_| 0));
            found.push(self.shown.len());
            self.shown.push(Shown { defect: *defect, turn, when, mended: None, steps: steps.collect() });
        }
        found
    }

    /// Notes lines from a place on for the mending of what showed before; gives what was mended.
    pub(super) fn mend(&mut self, from: usize, turn: usize, start: &Start, content: &Content) -> Vec<usize> {
        let mut mended = Vec::new();
        for line in self.lines.iter().skip(from) {
            for (at, shown) in self.shown.iter_mut().enumerate() {
                if mend::note(shown, line, &self.lines, start, content) {
                    shown.mended = Some(turn);
                    mended.push(at);
                }
            }
        }
        mended
    }
}

/// The lapse that the cloths of an operation become when they are left lying.
fn rags_of(operation: Operation, manners: &[Manner], start: &Start) -> Option<Lapse> {
    let oily = match operation {
        Operation::Stain => manners.contains(&Manner::OilStain),
        Operation::Fill | Operation::WipeFiller => start.job.filler == Filler::OilPaste,
        _ => false,
    };
    if oily {
        Some(Lapse::RagsLeft)
    } else {
        (operation == Operation::SolventWipe).then_some(Lapse::ClothsLeft)
    }
}
