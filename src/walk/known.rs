//! What could be known of a walk when something was decided: the clock, what was read that day, what is worn and ready, what
//! was last done to the parts, what showed.

use super::clock::moment;
use super::decision::{Decision, RoomAct};
use super::line::Line;
use super::story::Walk;
use super::turn::{Read, Turn};
use crate::record::{AirKnown, Known, Ready};
use crate::rules::contamination::Suit;
use crate::rules::sequence::operation::Operation;
use crate::rules::term::Term;
use std::collections::{BTreeMap, BTreeSet};

/// What was known on a walk, before a decision.
pub(super) fn known(walk: &Walk, decision: &Decision) -> Known {
    let at = moment(walk.clock());
    let room = walk.room();
    let mut shown: Vec<String> = Vec::new();
    for one in walk.shown().iter().filter(|one| one.mended.is_none()) {
        let rule = one.defect.rule().0;
        if !shown.iter().any(|known| known == rule) {
            shown.push(rule.to_owned());
        }
    }
    Known {
        day: at.day,
        hour: at.hour,
        air: room.air_read.and_then(|read| air(walk, read)),
        filters_past: room.gauge_read.then(|| last(walk, gauge)).flatten().map(|past| past && !changed(walk)),
        respirator: room.worn.respirator.map(|worn| worn.slug().to_owned()),
        ready: ready(walk),
        parts: parts(walk, decision),
        shown,
        offered: walk.offered(),
    }
}

/// What the latest turn read that reads it.
fn last<T>(walk: &Walk, of: fn(&Read) -> Option<T>) -> Option<T> {
    walk.turns().iter().rev().flat_map(|turn: &Turn| turn.read.iter().rev()).find_map(of)
}

const fn gauge(read: &Read) -> Option<bool> {
    if let Read::Gauge { past } = read { Some(*past) } else { None }
}

/// Whether the filters were changed in the turn in which the gauge was last read, or since.
fn changed(walk: &Walk) -> bool {
    let read = walk.turns().iter().rposition(|turn| turn.read.iter().any(|read| gauge(read).is_some()));
    let since = walk.turns().iter().skip(read.unwrap_or(0));
    since.map(|turn| &turn.decision).any(
        |decision| matches!(decision, Decision::Room(duties) if duties.contains(&RoomAct::FiltersChanged)),
    )
}

fn air(walk: &Walk, read: f64) -> Option<AirKnown> {
    let measured = last(walk, |read| if let Read::Air(air) = read { Some(*air) } else { None })?;
    Some(AirKnown {
        air_c: measured.air.get(),
        rh: measured.humidity.get(),
        work_c: measured.work.get(),
        hours_ago: (walk.clock() - read).max(0.0),
    })
}

fn ready(walk: &Walk) -> BTreeSet<Ready> {
    let room = walk.room();
    let all = [
        (room.worn.respirator.is_some() && room.worn.sealed, Ready::SealChecked),
        (room.worn.suit == Suit::Closed, Ready::CleanSuit),
        (room.worn.gloves, Ready::Gloves),
        (room.worn.eyes, Ready::Eyes),
        (room.fan, Ready::Fan),
        (room.gauge_read, Ready::GaugeRead),
        (room.sources_out, Ready::SourcesOut),
        (room.wheel_checked, Ready::WheelChecked),
        (room.gun_dirty(), Ready::GunDirty),
        (room.rags_about(), Ready::RagsAbout),
    ];
    all.into_iter().filter(|(stands, _)| *stands).map(|(_, ready)| ready).collect()
}

/// What was last done to the parts of a decision; all of them where it names none.
fn parts(walk: &Walk, decision: &Decision) -> BTreeMap<u32, String> {
    let named: Vec<usize> = match decision {
        Decision::Work(work) => work.parts.clone(),
        Decision::Strip(named) => named.parts.clone(),
        _ => (0..walk.start().parts()).collect(),
    };
    let stripped =
        |part: usize, turn: usize| walk.stripped().iter().any(|one| *one > (part, turn) && one.0 == part);
    let one = |part: usize| {
        // The can is for the whole room.
        let on = |line: &&Line| line.touches(part) && line.operation != Operation::RagsAway;
        let line = walk.lines().iter().rev().find(on)?;
        let operation = line.operation.slug().to_owned();
        (!stripped(part, line.turn)).then_some((u32::try_from(part).ok()?, operation))
    };
    named.into_iter().filter_map(one).collect()
}
