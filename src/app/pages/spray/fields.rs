//! The numbers of a set of programmed passes as they are typed, read with what is allowed.

use crate::quantity::read_number;
use crate::spraying::point::Point;
use crate::spraying::program::{LIMITS, Passes};
use crate::spraying::{Setup, outline::Place};

/// Per cent in a whole: overlap is typed so.
const HUNDRED: f64 = 100.0;
/// What stands there before anything is typed, and is no good run: a speed in m/s and an overlap in per cent.
const SPEED: f64 = 0.5;
const OVERLAP: f64 = 30.0;

/// A number that is typed: the key of its name, its least, its greatest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Typed {
    pub(super) key: &'static str,
    pub(super) least: f64,
    pub(super) most: f64,
}

/// The ends of the first pass.
const ENDS: [&str; 4] = ["from_x_mm", "from_y_mm", "to_x_mm", "to_y_mm"];
/// How many numbers a set has.
pub(super) const COUNT: usize = 11;
/// The name of the overlap in [`LIMITS`].
const SHARE: &str = "overlap";

/// All of them in the order in which they are typed: where the passes begin and end, then the numbers of [`LIMITS`].
pub(super) fn all() -> [Typed; COUNT] {
    let most = Point::PLACE_MOST;
    let mut typed = [Typed { key: "", least: -most, most }; COUNT];
    let ends = ENDS.into_iter().map(|key| Typed { key, least: -most, most });
    let numbers = LIMITS.into_iter().map(|(key, least, most)| {
        let times = if key == SHARE { HUNDRED } else { 1.0 };
        Typed { key, least: least * times, most: most * times }
    });
    for (slot, one) in typed.iter_mut().zip(ends.chain(numbers)) {
        *slot = one;
    }
    typed
}

/// What is typed in before anything is changed: passes over the whole face from its upper left corner.
pub(super) fn first(setup: &Setup) -> [String; COUNT] {
    let (least, most) = setup.outline.bounds();
    let start =
        [least.0, least.1, most.0, least.1, most.1 - least.1, setup.task.gun.at_mm.get(), SPEED, OVERLAP];
    let mut typed: [String; COUNT] = core::array::from_fn(|_| "0".to_owned());
    for (slot, value) in typed.iter_mut().zip(start) {
        *slot = value.to_string();
    }
    typed
}

/// Which of the numbers are none that is allowed.
pub(super) fn wrong(typed: &[String; COUNT]) -> Vec<&'static str> {
    let read = all().into_iter().zip(typed);
    read.filter(|(one, text)| !read_number(text).is_some_and(|value| (one.least..=one.most).contains(&value)))
        .map(|(one, _)| one.key)
        .collect()
}

/// The set that is typed; none where a number is not allowed.
pub(super) fn set(typed: &[String; COUNT]) -> Option<Passes> {
    if !wrong(typed).is_empty() {
        return None;
    }
    let values: Vec<f64> = typed.iter().filter_map(|text| read_number(text)).collect();
    let [x0, y0, x1, y1, numbers @ ..] = values.as_slice() else { return None };
    let mut numbers: [f64; LIMITS.len()] = numbers.try_into().ok()?;
    for (value, (key, ..)) in numbers.iter_mut().zip(LIMITS) {
        if key == SHARE {
            *value /= HUNDRED;
        }
    }
    let line: Vec<Place> = vec![(*x0, *y0), (*x1, *y1)];
    Some(Passes::of(line, numbers))
}
