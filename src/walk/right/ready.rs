//! What comes before an operation: waits, working hours, fit air, what is worn and seen to.

use super::super::acts::shut;
use super::super::at_hand::asked;
use super::super::clock::{day, midnight};
use super::super::decision::{Decision, RoomAct, Wait, Worn};
use super::super::lapse::Lapse;
use super::super::room::{AIR_READING_HOLDS_H, sprays};
use super::super::story::Walk;
use super::super::wait::WAIT_MOST;
use crate::content::Content;
use crate::process::act::Act;
use crate::quantity::{DUST, Hours, MINUTES_AN_HOUR};
use crate::rules::air::{Thinner, may_spray, spray_gate};
use crate::rules::contamination::Suit;
use crate::rules::hazard::mask_kind::Protection;
use crate::rules::sequence::operation::Operation;
use crate::rules::sheet::Setting;

/// Dressed for the gun.
pub const FOR_THE_GUN: Worn =
    Worn { respirator: Some(Protection::Both), sealed: true, suit: Suit::Closed, gloves: true, eyes: true };
/// Dressed for the bench: dust, solvent and cloths.
pub const FOR_THE_BENCH: Worn = Worn { suit: Suit::Sanding, ..FOR_THE_GUN };

/// When something can be begun that cannot be begun now: its wait is over, and the shop open long enough.
pub(super) fn waits(walk: &Walk, content: &Content, operation: Operation, parts: &[usize]) -> Option<f64> {
    let start = walk.start();
    let opens = start.day.opens().get();
    let mut act = Act::of(operation);
    act.step.part = parts.first().copied();
    act.also = parts.to_vec();
    let over = walk.run().waiting(&act).map_or(f64::NEG_INFINITY, |waiting| waiting.over + opens);
    let takes = asked(content, &start.sheet, operation).takes;
    let wipe = if operation == Operation::Fill {
        start.sheet.get(Setting::FillerWipeTo) / MINUTES_AN_HOUR
    } else {
        0.0
    };
    let begin = start.day.begin(over.max(walk.clock()), Hours::saturating(takes.get() + wipe));
    (begin > walk.clock() + DUST).then_some(begin)
}

/// Whether the air is fit for the gun.
pub(super) enum Air {
    Fit(Thinner),
    From(f64),
    Never,
}

pub(super) fn air(walk: &Walk) -> Air {
    let (start, now) = (walk.start(), walk.run().now().get());
    let Some(climate) = start.air.at(now) else { return Air::Fit(Thinner::Fast) };
    let gate = spray_gate(climate.air, climate.humidity, climate.work, &start.sheet);
    let fit = [Thinner::Fast, Thinner::Retarded].into_iter().find(|mix| may_spray(&gate, *mix).answer);
    let change = start.air.next_change(now).map(|change| change + start.day.opens().get());
    fit.map(Air::Fit).or_else(|| change.map(Air::From)).unwrap_or(Air::Never)
}

/// Waits until a moment; the gun is cleaned before the night.
pub(super) fn leave(walk: &Walk, until: f64) -> Decision {
    let night = day(until) > day(walk.clock());
    if night && walk.room().gun_dirty() {
        return see_to(walk, RoomAct::GunCleaned);
    }
    wait_until(walk, until)
}

/// A duty, as soon as the shop is open for it.
pub(super) fn see_to(walk: &Walk, duty: RoomAct) -> Decision {
    shut(walk.start(), walk.clock()).map_or(Decision::Room(vec![duty]), |opens| wait_until(walk, opens))
}

fn wait_until(walk: &Walk, until: f64) -> Decision {
    let night = day(until) > day(walk.clock());
    let morning = midnight(day(walk.clock()) + 1) + walk.start().day.opens().get();
    if night && until <= morning + DUST {
        Decision::Wait(Wait::Morning)
    } else {
        // A thick film may dry for longer than one goes away at a time.
        Decision::Wait(Wait::Hours(Hours::saturating((until - walk.clock()).min(WAIT_MOST.get()))))
    }
}

/// What has to be put on and seen to before an operation.
pub(super) fn make_ready(walk: &Walk, operation: Operation) -> Option<Decision> {
    let room = walk.room();
    let wanted = if sprays(operation) { FOR_THE_GUN } else { FOR_THE_BENCH };
    let bare = |lapse: &Lapse| !matches!(lapse, Lapse::WheelUnchecked);
    let asked = sprays(operation) || room.before_work(operation, &[]).iter().any(bare);
    if asked && room.worn != wanted {
        return Some(Decision::Wear(wanted));
    }
    let mut duties = Vec::new();
    if sprays(operation) {
        let fresh = room.air_read.is_some_and(|read| walk.clock() - read < AIR_READING_HOLDS_H);
        duties.extend((!room.fan).then_some(RoomAct::FanOn));
        duties.extend((!room.gauge_read).then_some(RoomAct::GaugeRead));
        duties.extend(room.filters_loaded().then_some(RoomAct::FiltersChanged));
        duties.extend((!room.sources_out).then_some(RoomAct::SourcesOut));
        duties.extend((!fresh).then_some(RoomAct::AirRead));
    }
    duties.extend((operation == Operation::Buff && !room.wheel_checked).then_some(RoomAct::WheelChecked));
    (!duties.is_empty()).then_some(Decision::Room(duties))
}
