//! Air that is not fit for the gun, over days or for good: measure first, hold if outside (TM 43-0139). The damp air is that
//! of the practitioner case of milky spots on a rainy, cool day (common practice, no source).

use crate::steps::{begin, does, go, rest};
use crate::support::content;
use stepboard::content::{Content, RoomAir};
use stepboard::quantity::{Celsius, RelativeHumidity};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::Walk;
use stepboard::walk::decision::{Decision, RoomAct};
use stepboard::walk::report::report;
use stepboard::walk::saved::Mode;
use stepboard::walk::start::Start;

/// Milky spots were met at 16 °C in the rain.
const DAMP: (f64, f64) = (16.0, 85.0);
/// The day on which it clears up.
const CLEARS_UP: u32 = 4;

/// The air from the midnight of a day on.
pub(crate) fn air(day: u32, celsius: f64, rh: f64) -> RoomAir {
    let celsius = Celsius::new(celsius).expect("in range");
    let rh = RelativeHumidity::new(rh).expect("in range");
    RoomAir { day, hour: 0.0, air_c: celsius, work_c: celsius, rh }
}

/// The plain plate in a room of that air, not begun.
pub(crate) fn in_air(content: &Content, readings: Vec<RoomAir>) -> Walk {
    let mut info = content.walk("plain-plate").expect("it ships").clone();
    info.air = readings;
    let sheet = content.sheet(&info.ticket.sheet).expect("it ships");
    Walk::begin(Start::of(&info, sheet, content).expect("a wood"), Mode::Own, 1)
}

fn clears_up(content: &Content) -> Walk {
    in_air(content, vec![air(1, DAMP.0, DAMP.1), air(CLEARS_UP, 21.0, 45.0)])
}

#[test]
fn the_gun_waits_until_it_clears_up_and_so_does_the_shortest_schedule() {
    let content = content();
    let mut walk = clears_up(&content);
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    let told = report(&walk, &content);
    assert!(told.found.is_empty() && told.lapses.is_empty(), "{:?}", told.found);
    let first = walk.lines().iter().find(|line| line.operation == Op::Seal).expect("a seal coat");
    let opens = f64::from(CLEARS_UP - 1) * 24.0;
    assert!(first.begun >= opens, "sprayed at {}", first.begun);
    let shortest = told.shortest.expect("it clears up");
    assert!(shortest.day >= CLEARS_UP && shortest.total_h <= told.spent.total_h + 1e-6, "{shortest:?}");
    let dry = report(&begin(&content, "plain-plate"), &content).shortest.expect("a fit room");
    assert!(shortest.total_h > dry.total_h + 24.0);
}

#[test]
fn a_room_that_is_never_fit_has_no_right_way_and_the_order_cannot_be_met() {
    let content = content();
    let mut walk = in_air(&content, vec![air(1, DAMP.0, DAMP.1)]);
    assert!(stepboard::walk::right::rest(&walk, &content).is_none());
    let promise = report(&walk, &content).promise;
    assert!(promise.earliest.is_none() && !promise.can_be_met() && !promise.holds());
    does(&mut walk, &content, Op::Prefit);
    go(&mut walk, [Decision::Room(vec![RoomAct::AirRead]), Decision::HandOver], &content);
    assert!(walk.is_over(), "it does not dead-end");
}
