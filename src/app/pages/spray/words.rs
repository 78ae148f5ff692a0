//! What a task asks and what was measured, in words and units.

use crate::app::state::Shop;
use crate::content::SprayTask;
use crate::quantity::{Measure, PERCENT_A_WHOLE, Unit};
use crate::rules::term::Term;
use crate::spraying::Setup;
use crate::spraying::better::Told;
use crate::spraying::grade::Counted;
use yew::prelude::*;

/// Square millimetres in a square metre.
const MM2_A_M2: f64 = 1e6;

fn measure(shop: &Shop, value: f64, unit: Unit, decimals: u8) -> String {
    shop.voice().measure(Measure::new(value, unit, decimals))
}

pub(super) fn film(shop: &Shop, um: f64) -> String {
    measure(shop, um, Unit::Micrometre, 0)
}

pub(super) fn length(shop: &Shop, mm: f64) -> String {
    measure(shop, mm, Unit::Millimetre, 0)
}

pub(super) fn area(shop: &Shop, mm2: f64) -> String {
    measure(shop, mm2 / MM2_A_M2, Unit::SquareMetre, 4)
}

pub(super) fn speed(shop: &Shop, m_s: f64) -> String {
    measure(shop, m_s, Unit::MetrePerSecond, 2)
}

pub(super) fn seconds(shop: &Shop, s: f64) -> String {
    measure(shop, s, Unit::Second, 1)
}

/// A time that is set, in whole seconds.
pub(super) fn whole_seconds(shop: &Shop, s: f64) -> String {
    measure(shop, s, Unit::Second, 0)
}

pub(super) fn volume(shop: &Shop, ml: f64) -> String {
    measure(shop, ml, Unit::Millilitre, 1)
}

pub(super) fn degrees(shop: &Shop, degrees: f64) -> String {
    measure(shop, degrees, Unit::Degree, 0)
}

pub(super) fn share(shop: &Shop, share: f64) -> String {
    measure(shop, share * PERCENT_A_WHOLE, Unit::Percent, 0)
}

/// A colour difference.
pub(super) fn colour(shop: &Shop, difference: f64) -> String {
    shop.figure(difference, 1)
}

/// A lightness L*.
pub(super) fn lightness(lightness: f64) -> String {
    Measure::new(lightness, Unit::Ratio, 0).figure()
}

pub(super) fn counted(shop: &Shop, counted: Counted, value: f64) -> String {
    match counted {
        Counted::Film => film(shop, value),
        Counted::Share => share(shop, value),
        Counted::Places => Measure::count(value).figure(),
        Counted::Colour => colour(shop, value),
        Counted::Angle => degrees(shop, value),
    }
}

pub(super) fn told(shop: &Shop, told: Told, value: f64) -> String {
    match told {
        Told::Seconds => seconds(shop, value),
        Told::Millimetres => length(shop, value),
        Told::Speed => speed(shop, value),
        Told::Degrees => degrees(shop, value),
        Told::Share => share(shop, value),
    }
}

pub(super) fn name(shop: &Shop, task: &SprayTask) -> AttrValue {
    shop.text(&format!("spray.task.{}", task.slug))
}

/// What a task asks, in one line.
pub(super) fn asks(shop: &Shop, setup: &Setup) -> AttrValue {
    let task = &setup.task;
    let (near, far) = setup.distances();
    let mut named = vec![
        ("near", length(shop, near)),
        ("far", length(shop, far)),
        ("sheet", shop.sheet_name(&setup.sheet.slug).to_string()),
        ("stands", shop.say(&format!("spray.facing.{}", task.facing.slug())).to_string()),
    ];
    if let (Some(film_asked), Some((from, to))) = (task.film, setup.window()) {
        named.push(("from", film(shop, from)));
        named.push(("to", film(shop, to)));
        named.push(("n", film_asked.layers.to_string()));
        if let Some(repair) = task.repair {
            named.push(("width", length(shop, repair.fades_mm.get())));
            named.push(("past", share(shop, repair.past.get())));
        }
        let key = match task.repair {
            Some(_) => "spray.asks.repair",
            None if film_asked.crossing => "spray.asks.crossing",
            None => "spray.asks.even",
        };
        return shop.say_with(key, &named);
    }
    let width = task.shade.map_or(0.0, |shade| shade.width_mm.get());
    named.push(("width", length(shop, width)));
    shop.say_with("spray.asks.shade", &named)
}

/// The gun of a task, in one line.
pub(super) fn gun(shop: &Shop, setup: &Setup) -> AttrValue {
    let gun = &setup.task.gun;
    let named = [
        ("kind", shop.text(&format!("term.{}", gun.kind.slug())).to_string()),
        ("flow", measure(shop, gun.flow_ml_min.get(), Unit::MillilitrePerMinute, 0)),
        ("fan", length(shop, gun.fan_mm.get())),
        ("at", length(shop, gun.at_mm.get())),
    ];
    shop.say_with("spray.gun", &named)
}
