//! The numbers of a set of programmed passes as they are typed, read with what is allowed.

use crate::app::state::Shop;
use crate::quantity::{PERCENT_A_WHOLE, read_number};
use crate::rules::term::Term;
use crate::spraying::edge::{Side, along};
use crate::spraying::point::{FAN_SHARE, Point};
use crate::spraying::program::{LIMITS, Passes};
use crate::spraying::setup::AS_SET;
use crate::spraying::{Setup, good};
use std::collections::BTreeMap;

/// What stands there before anything is typed, and is no good run: a speed in m/s and an overlap in per cent.
const SPEED: f64 = 0.5;
const OVERLAP: f64 = 30.0;
/// How far inwards from the edge a set may lie, to either side of it, mm, and how often it may go along it (limits of this
/// screen).
const INWARD_MOST: f64 = 200.0;
const TIMES_MOST: f64 = 50.0;

/// What a set of passes goes along.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Along {
    /// A straight line, to and fro beside it.
    Line,
    /// The edge from its axis at the bottom to its axis at the top: on one side, or on both.
    Edge(Option<Side>),
}

/// A number that is typed: the key of its name, its least, its greatest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    pub(super) key: &'static str,
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Number {
    /// Whether it counts something.
    pub(super) fn is_whole(&self) -> bool {
        self.key == TIMES
    }
}

/// The ends of the first pass.
const ENDS: [&str; 4] = ["from_x_mm", "from_y_mm", "to_x_mm", "to_y_mm"];
/// The names in [`LIMITS`] of what straight passes alone have, and of the overlap among them.
const WIDE: &str = "wide_mm";
const SHARE: &str = "overlap";
/// The names of what passes along the edge alone have.
const INWARD: &str = "inward_mm";
const TIMES: &str = "times";

/// What of a number that is typed makes a whole.
fn whole(key: &str) -> f64 {
    if key == SHARE || key == FAN_SHARE { PERCENT_A_WHOLE } else { 1.0 }
}

/// The numbers that are typed, in their order.
pub(super) fn numbers(along: Along, setup: &Setup) -> Vec<Number> {
    let straight = |key: &str| key == WIDE || key == SHARE;
    let (narrowest, widest) = setup.fans();
    let limits = LIMITS.into_iter().map(|(key, least, most)| {
        let times = whole(key);
        let (least, most) = if key == FAN_SHARE { (narrowest, widest) } else { (least, most) };
        Number { key, least: least * times, most: most * times }
    });
    let place = |key: &'static str| Number { key, least: -Point::PLACE_MOST, most: Point::PLACE_MOST };
    match along {
        Along::Line => ENDS.into_iter().map(place).chain(limits).collect(),
        Along::Edge(_) => {
            let inward = Number { key: INWARD, least: -INWARD_MOST, most: INWARD_MOST };
            let times = Number { key: TIMES, least: 1.0, most: TIMES_MOST };
            [inward, times].into_iter().chain(limits.filter(|one| !straight(one.key))).collect()
        }
    }
}

const TENTHS: f64 = 10.0;

/// What is typed of each number, in the language of whoever types.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Typed(BTreeMap<&'static str, String>);

impl Typed {
    /// What stands there before anything is changed: passes over the whole face from its upper left corner, once along its
    /// edge.
    pub(super) fn first(setup: &Setup, shop: &Shop) -> Self {
        let (least, most) = setup.outline.bounds();
        let place = |mm: f64| (mm * TENTHS).round() / TENTHS;
        let ends = ENDS.into_iter().zip([least.0, least.1, most.0, least.1].map(place));
        let others = [
            (WIDE, place(most.1 - least.1)),
            ("distance_mm", setup.task.gun.at_mm.get()),
            ("speed_m_s", SPEED),
            (SHARE, OVERLAP),
            (FAN_SHARE, AS_SET * PERCENT_A_WHOLE),
            (TIMES, 1.0),
        ];
        // To a tenth, where it is not whole.
        let figure = |value: f64| shop.figure(value, u8::from(place(value).fract() != 0.0));
        Self(ends.chain(others).map(|(key, value)| (key, figure(value))).collect())
    }

    pub(super) fn text(&self, key: &str) -> &str {
        self.0.get(key).map_or("0", String::as_str)
    }

    pub(super) fn with(&self, key: &'static str, text: String) -> Self {
        let mut typed = self.clone();
        typed.0.insert(key, text);
        typed
    }

    /// A number that is typed and allowed; how often is a whole one.
    fn read(&self, one: &Number, shop: &Shop) -> Option<f64> {
        let value = read_number(&shop.texts().typed(self.text(one.key)));
        let value = value.filter(|value| (one.least..=one.most).contains(value))?;
        (!one.is_whole() || value.fract() == 0.0).then_some(value)
    }

    /// Which of the numbers are none that is allowed.
    pub(super) fn wrong(&self, along: Along, setup: &Setup, shop: &Shop) -> Vec<&'static str> {
        numbers(along, setup).iter().filter(|one| self.read(one, shop).is_none()).map(|one| one.key).collect()
    }

    /// The passes that are typed; none where a number is not allowed.
    pub(super) fn passes(&self, goes: Along, setup: &Setup, shop: &Shop) -> Option<Vec<Passes>> {
        let all = numbers(goes, setup);
        let read: Option<BTreeMap<&str, f64>> =
            all.iter().map(|one| Some((one.key, self.read(one, shop)?))).collect();
        let read = read?;
        let value = |key: &str| read.get(key).copied();
        let limits = LIMITS.map(|(key, ..)| match key {
            SHARE => value(key).map_or(good::TAUGHT_OVERLAP, |share| share / whole(key)),
            _ => value(key).unwrap_or_default() / whole(key),
        });
        let place = |x: &str, y: &str| value(x).zip(value(y));
        match goes {
            Along::Line => {
                let [ax, ay, bx, by] = ENDS;
                Some(vec![Passes::of(vec![place(ax, ay)?, place(bx, by)?], limits)])
            }
            Along::Edge(side) => {
                let sides = side.as_ref().map_or(Side::ALL, core::slice::from_ref);
                let once: Vec<Passes> = sides
                    .iter()
                    .map(|side| {
                        Passes::of(along(&setup.outline, value(INWARD).unwrap_or_default(), *side), limits)
                    })
                    .collect();
                let mut passes = Vec::new();
                let mut gone = 0.0;
                while gone < value(TIMES)? {
                    passes.extend(once.iter().cloned().map(|one| Passes { wait: 0.0, ..one }));
                    gone += 1.0;
                }
                // It is waited once, before the first of them.
                if let Some((first, once)) = passes.first_mut().zip(once.first()) {
                    first.wait = once.wait;
                }
                Some(passes)
            }
        }
    }
}
