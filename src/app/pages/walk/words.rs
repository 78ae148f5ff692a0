//! How moments, hours, parts and decisions of a walk are said.

pub(super) use super::called::{fault, fault_of, marked, place};

use crate::app::state::Shop;
use crate::content::WalkInfo;
use crate::quantity::{MINUTES_AN_HOUR, Measure, Unit};
use crate::rules::term::Term;
use crate::walk::air_then::air_then;
use crate::walk::clock::moment;
use crate::walk::names::{Climate, DryTest, Operation};
use crate::walk::{Decision, Read, Start, Wait, Walk};
use yew::prelude::*;

/// An hour of the day as a clock shows it.
pub(super) fn time(hour: f64) -> String {
    let minutes = (hour * MINUTES_AN_HOUR).round();
    let hours = (minutes / MINUTES_AN_HOUR).floor();
    format!("{hours:02.0}:{:02.0}", minutes - hours * MINUTES_AN_HOUR)
}

/// A moment: day and clock.
pub(super) fn at(shop: &Shop, clock: f64) -> AttrValue {
    let moment = moment(clock);
    shop.say_with("walk.at", &[("day", moment.day.to_string()), ("time", time(moment.hour))])
}

/// Hours from which on tenths say nothing.
const MANY_HOURS: f64 = 100.0;

pub(super) fn hours(shop: &Shop, hours: f64) -> String {
    let decimals = u8::from(hours < MANY_HOURS);
    shop.voice().measure(Measure::new(hours, Unit::Hour, decimals))
}

/// The same; nothing where it takes no time that would be counted.
pub(super) fn takes(shop: &Shop, time: f64) -> String {
    if time > 0.0 { hours(shop, time) } else { String::new() }
}

pub(super) fn micrometres(shop: &Shop, um: f64) -> String {
    shop.voice().measure(Measure::new(um, Unit::Micrometre, 0))
}

pub(super) fn percent(shop: &Shop, value: f64) -> String {
    shop.voice().measure(Measure::new(value, Unit::Percent, 1))
}

pub(super) fn climate(shop: &Shop, climate: Climate) -> AttrValue {
    let voice = shop.voice();
    let degrees = |value: f64| voice.measure(Measure::new(value, Unit::Celsius, 0));
    let named = [
        ("air", degrees(climate.air.get())),
        ("work", degrees(climate.work.get())),
        ("rh", voice.measure(Measure::new(climate.humidity.get(), Unit::Percent, 0))),
    ];
    shop.say_with("walk.air", &named)
}

pub(super) fn operation(shop: &Shop, operation: Operation) -> AttrValue {
    shop.text(&format!("term.{}", operation.slug()))
}

/// What mends: an operation, or stripping.
pub(super) fn step(shop: &Shop, step: Option<Operation>) -> AttrValue {
    step.map_or_else(|| shop.say("walk.strip"), |one| operation(shop, one))
}

pub(super) fn part(shop: &Shop, info: &WalkInfo, part: usize) -> AttrValue {
    let slug = info.ticket.parts.get(part).map_or("", |part| part.slug.as_str());
    shop.text(&format!("part.{slug}"))
}

/// A wood by its everyday name.
pub(super) fn wood(shop: &Shop, slug: &str) -> String {
    let everyday = shop.texts().find(&format!("wood.{slug}.inline"));
    everyday.map_or_else(|| shop.voice().term("", slug), str::to_owned)
}

/// Parts in words; all of them where there are several and none is left out.
pub(super) fn parts(shop: &Shop, start: &Start, parts: &[usize]) -> String {
    if parts.len() > 1 && parts.len() == start.parts() {
        return shop.say("walk.all-parts").to_string();
    }
    let names: Vec<String> = parts.iter().map(|one| part(shop, &start.info, *one).to_string()).collect();
    names.join(", ")
}

/// A part within a sentence.
pub(super) fn inline_part(shop: &Shop, info: &WalkInfo, place: usize) -> String {
    let name = part(shop, info, place);
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

/// Where something is, or is done: on some parts, or on all.
pub(super) fn on(shop: &Shop, start: &Start, parts: &[usize]) -> AttrValue {
    if parts.len() > 1 && parts.len() == start.parts() {
        return shop.say("walk.on-all");
    }
    let names: Vec<String> = parts.iter().map(|one| inline_part(shop, &start.info, *one)).collect();
    shop.say_with("walk.on", &[("parts", names.join(", "))])
}

/// The air when something was sprayed, beside the limits of the sheet.
pub(super) fn air_at(shop: &Shop, walk: &Walk, moment: f64) -> String {
    let Some(then) = air_then(walk, moment) else { return String::new() };
    let voice = shop.voice();
    let kelvin = |value: f64| voice.measure(Measure::new(value, Unit::Kelvin, 1));
    let named = [
        ("dew", voice.measure(Measure::new(then.dew_point.get(), Unit::Celsius, 1))),
        ("gap", kelvin(then.gap_k)),
        ("least", kelvin(then.gap_spray_k)),
        ("retarded", kelvin(then.gap_retarder_k)),
        ("limit", voice.measure(Measure::new(then.humidity_limit.get(), Unit::Percent, 0))),
        ("cold", voice.measure(Measure::new(then.cold_stop.get(), Unit::Celsius, 0))),
    ];
    format!("{} {}", climate(shop, then.climate), shop.say_with("walk.against-limits", &named))
}

/// A wait until a test says so.
pub(super) fn until(shop: &Shop, test: DryTest) -> AttrValue {
    let test = shop.say(&format!("walk.test.{}", test.slug())).to_string();
    shop.say_with("walk.wait.until", &[("test", test)])
}

pub(super) fn wait(shop: &Shop, wait: Wait) -> AttrValue {
    match wait {
        Wait::Hours(time) => shop.say_with("walk.wait.for", &[("hours", hours(shop, time.get()))]),
        Wait::Morning => shop.say("walk.wait.morning"),
        Wait::Until(test) => until(shop, test),
    }
}

/// What was read or tried.
pub(super) fn read(shop: &Shop, info: &WalkInfo, read: &Read) -> AttrValue {
    match read {
        Read::Air(air) => climate(shop, *air),
        Read::Gauge { past } => shop.say(if *past { "walk.gauge.past" } else { "walk.gauge.under" }),
        Read::Meter { part: nth, moisture } => {
            let reads = moisture.map(|moisture| percent(shop, moisture.get()));
            let key = if reads.is_some() { "walk.meter.reads" } else { "walk.meter.band" };
            let name = part(shop, info, *nth).to_string();
            shop.say_with(key, &[("part", name), ("moisture", reads.unwrap_or_default())])
        }
        Read::Test(test) => shop.say(&format!("walk.test.{}.done", test.slug())),
    }
}

/// What was decided in a turn, with its place on the time line.
pub(super) fn step_of(shop: &Shop, walk: &Walk, turn: usize) -> AttrValue {
    let took = walk.turns().get(turn).map(|turn| decision(shop, walk.start(), &turn.decision));
    shop.say_with("walk.step", &[("n", (turn + 1).to_string()), ("what", took.unwrap_or_default())])
}

/// A decision in one line; of work in one part that part is not named.
pub(super) fn decision(shop: &Shop, start: &Start, decision: &Decision) -> String {
    let one = start.parts() == 1;
    let on = |what: AttrValue, on: &[usize]| {
        if one { what.to_string() } else { format!("{what}, {}", parts(shop, start, on)) }
    };
    match decision {
        Decision::Work(work) => on(operation(shop, work.operation), &work.parts),
        Decision::Strip(named) => on(shop.say("walk.strip"), &named.parts),
        Decision::Wait(time) => wait(shop, *time).to_string(),
        Decision::Wear(_) => shop.say("walk.dressed").to_string(),
        Decision::Room(duties) => {
            let names =
                duties.iter().map(|duty| shop.text(&format!("walk.room.{}", duty.slug())).to_string());
            names.collect::<Vec<_>>().join(". ")
        }
        Decision::Offer(offer) => {
            shop.say_with("walk.offer-day", &[("day", offer.day.to_string())]).to_string()
        }
        Decision::HandOver => shop.say("walk.hand-over").to_string(),
    }
}
