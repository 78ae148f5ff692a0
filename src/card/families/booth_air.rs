//! Booth and air: dew point, the gap of the work surface, spray, retarder or stop.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Celsius, Measure, PERCENT_A_WHOLE, Pascals, RelativeHumidity, Unit};
use crate::rules::air::{self, Action, Gate, Limit, SprayVerdict, Thinner};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

pub(super) const ALL: &[&Question] =
    &[&DEW_POINT, &SURFACE_GAP, &SPRAY_DECISION, &WHAT_STOPS, &WARM_ENOUGH, &PIECES, &HOURS];

/// A reading this near a limit is drawn again: no shop meter tells the two sides apart.
const TOO_NEAR_K: f64 = 0.3;
/// Step by which a reading is moved away from a limit, °C or % RH.
const NUDGE: f64 = 1.0;
/// Steps before a reading is left where it is.
const NUDGES: u32 = 4;

fn temperature(value: f64) -> Measure {
    Measure::new(value, Unit::Celsius, 1)
}

fn kelvin(value: f64) -> Measure {
    Measure::new(value, Unit::Kelvin, 1)
}

fn gate(facts: &Facts, world: &World<'_>, work: &str) -> Judged<Gate> {
    let (air_c, rh) = (facts.celsius("air_c")?, facts.humidity("rh")?);
    Ok(air::spray_gate(air_c, rh, facts.celsius(work)?, world.sheet))
}

/// Whether the gap lies too near one of its limits to be told from it.
fn too_near(gate: &Gate) -> bool {
    gate.gap_margin.abs() < TOO_NEAR_K || gate.retarder_margin.abs() < TOO_NEAR_K
}

/// Work is never warmer than the room it stands in, and its gap is clear of the limits.
fn settle_work(facts: &mut Facts, world: &World<'_>, key: &str) {
    if let (Some(room), Some(work)) = (facts.maybe_number("air_c"), facts.maybe_number(key)) {
        facts.set(key, work.min(room));
    }
    for _ in 0..NUDGES {
        let near = gate(facts, world, key).is_ok_and(|ruling| too_near(&ruling.answer));
        if let (true, Some(work)) = (near, facts.maybe_number(key)) {
            facts.set(key, work - NUDGE);
        }
    }
}

/// What is the dew point? Misconceptions: the wet bulb is the dew point; humidity is a share of the temperature.
const DEW_POINT: Question = Question {
    id: "dew-point",
    settle: keep,
    ask: Ask::Number { answer: dew_point, tempt: dew_point_tempts, unit: Unit::Celsius },
    after: After::is("blushed-film").above("time-lost"),
};

fn dew_point(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let ruling = air::dew_point(facts.celsius("air_c")?, facts.humidity("rh")?);
    Ok(ruling.map(|dew| temperature(dew.get())))
}

fn wet_bulb(facts: &Facts) -> Result<Celsius, CannotJudge> {
    let sea = Pascals::new(air::SEA_LEVEL_PA).map_err(|_| CannotJudge::without("pressure_pa"))?;
    Ok(air::wet_bulb(facts.celsius("air_c")?, facts.humidity("rh")?, sea)?.answer)
}

/// The temperature that someone gets who takes humidity for a share of the temperature.
fn as_share(facts: &Facts) -> Result<f64, CannotJudge> {
    Ok(facts.number("air_c")? * facts.number("rh")? / PERCENT_A_WHOLE)
}

fn dew_point_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let mut tempts = Vec::new();
    if let Ok(wet) = wet_bulb(facts) {
        tempts.push(Tempt::number(temperature(wet.get()), "wet-bulb-for-dew-point"));
    }
    if let Ok(share) = as_share(facts) {
        tempts.push(Tempt::number(temperature(share), "humidity-as-share"));
    }
    tempts
}

/// How far is the work surface above the dew point? Misconceptions: the air is measured, not the work; the wet bulb.
const SURFACE_GAP: Question = Question {
    id: "surface-gap",
    settle: colder_work,
    ask: Ask::Number { answer: surface_gap, tempt: surface_gap_tempts, unit: Unit::Kelvin },
    after: After::is("blushed-film").below("time-lost"),
};

fn colder_work(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    settle_work(facts, world, "work_c");
}

fn surface_gap(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let (room, rh) = (facts.celsius("air_c")?, facts.humidity("rh")?);
    Ok(air::surface_gap(room, rh, facts.celsius("work_c")?).map(kelvin))
}

fn surface_gap_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let mut tempts = Vec::new();
    let (Ok(room), Ok(work), Ok(rh)) =
        (facts.celsius("air_c"), facts.celsius("work_c"), facts.humidity("rh"))
    else {
        return tempts;
    };
    let dew = air::dew_point(room, rh).answer.get();
    tempts.push(Tempt::number(kelvin(room.get() - dew), "room-for-surface"));
    if let Ok(wet) = wet_bulb(facts) {
        tempts.push(Tempt::number(kelvin(work.get() - wet.get()), "wet-bulb-for-dew-point"));
    }
    tempts
}

/// What is done next at the booth? Misconceptions: humidity alone decides; retarder cures everything; a faster thinner
/// or thinner coats get round the dew point; warm work is enough in wet air.
const SPRAY_DECISION: Question = Question {
    id: "spray-decision",
    settle: plain_decision,
    ask: Ask::One { answer: decide, tempt: decide_tempts },
    after: After::is("blushed-film"),
};

/// Where warming the work would spare the retarder both answers hold, so the work is at room temperature there.
fn plain_decision(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    settle_work(facts, world, "work_c");
    let retarder = |facts: &Facts, key| {
        gate(facts, world, key).is_ok_and(|ruling| ruling.answer.verdict == SprayVerdict::Retarder)
    };
    if let (true, Some(room)) = (retarder(facts, "work_c"), facts.maybe_number("air_c")) {
        facts.set("work_c", room);
        settle_work(facts, world, "work_c");
    }
}

fn decide(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let action = match (facts.celsius("air_c"), facts.humidity("rh"), facts.celsius("work_c")) {
        (Ok(room), Ok(rh), Ok(work)) => air::next_action(room, rh, work, world.sheet),
        (room, rh, work) => {
            let alone = air::settled_by_one_reading(room.clone().ok(), rh.clone().ok(), world.sheet);
            let missing = [room.err(), rh.err(), work.err()].into_iter().flatten().next();
            match (alone, missing) {
                (Some(ruling), _) => ruling,
                (None, missing) => return Err(missing.unwrap_or_else(|| CannotJudge::without("rh"))),
            }
        }
    };
    Ok(action.map(|action| Answer::term(action.slug())))
}

fn decide_tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let colder = facts.maybe_number("work_c") < facts.maybe_number("air_c");
    let as_mixed = if colder { "room-for-surface" } else { "humidity-alone" };
    vec![
        Tempt::term(Action::SprayAsMixed.slug(), as_mixed, "blushed-film"),
        Tempt::term(Action::AddRetarder.slug(), "retarder-cures-all", "blushed-film"),
        Tempt::term(Action::WarmWork.slug(), "work-for-air", "waited-for-nothing"),
        Tempt::term(Action::ChangeAir.slug(), "air-for-work", "waited-for-nothing"),
        Tempt::term("faster-thinner", "faster-is-drier", "blushed-film"),
        Tempt::term("mist-coats", "mist-gets-round", "blushed-film"),
    ]
}

/// Which readings stop the spraying? Misconceptions: the estimate of the wet film decides; only one limit counts.
const WHAT_STOPS: Question = Question {
    id: "what-stops",
    settle: colder_work,
    ask: Ask::All { items: limits, holds: stops },
    after: After::is("blushed-film"),
};

/// The estimate that is shown and never decides.
const FILM_ESTIMATE: &str = "film-estimate";

fn limits(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |limit| match limit {
        Limit::Gap => "gap-overlooked",
        Limit::Humidity => "humidity-overlooked",
        Limit::ColdAir => "cold-overlooked",
        Limit::ColdWork => "room-for-surface",
    };
    let mut items: Vec<Item> = Limit::ALL.iter().map(|limit| Item::new(limit.slug(), slip(*limit))).collect();
    items.push(Item::new(FILM_ESTIMATE, "estimate-decides"));
    items
}

fn stops(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let stopping = air::stopping_limits(&gate(facts, world, "work_c")?);
    Ok(stopping.map(|found| found.iter().any(|limit| limit.slug() == slug)))
}

/// From which surface temperature may it be sprayed? Misconceptions: the other mix's gap; only the cold limit counts;
/// above the dew point is enough.
const WARM_ENOUGH: Question = Question {
    id: "warm-enough",
    settle: keep,
    ask: Ask::Number { answer: warm_enough, tempt: warm_enough_tempts, unit: Unit::Celsius },
    after: After::is("blushed-film").above("time-lost"),
};

fn least_work(facts: &Facts, world: &World<'_>, thinner: Thinner) -> Judged<Measure> {
    let (room, rh) = (facts.celsius("air_c")?, facts.humidity("rh")?);
    Ok(air::warm_enough(room, rh, thinner, world.sheet).map(|least| temperature(least.get())))
}

fn warm_enough(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    least_work(facts, world, facts.term("thinner")?)
}

fn warm_enough_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let mut tempts = Vec::new();
    for thinner in Thinner::ALL {
        if let Ok(other) = least_work(facts, world, *thinner) {
            tempts.push(Tempt::number(other.answer, "gap-of-other-mix"));
        }
    }
    if let Ok(dew) = dew_point(facts, world) {
        tempts.push(Tempt::number(dew.answer, "dew-point-is-enough"));
    }
    tempts.push(Tempt::number(temperature(world.sheet.get(Setting::ColdStop)), "cold-limit-alone"));
    tempts
}

/// Whether the mix may be sprayed, with one line of working for the place or hour under its own label.
fn mix_may(gate: &Ruling<Gate>, facts: &Facts, world: &World<'_>, label: &'static str) -> Judged<bool> {
    let thinner = facts.term("thinner")?;
    let wanted = match thinner {
        Thinner::Fast => Setting::GapSpray,
        Thinner::Retarded => Setting::GapRetarder,
    };
    let mut ruling = air::may_spray(gate, thinner);
    ruling.working.clear();
    Ok(ruling.step("gap-wanted", "", kelvin(world.sheet.get(wanted))).step(
        label,
        "",
        kelvin(gate.answer.gap),
    ))
}

/// Which pieces may be sprayed now? Misconception: the room is measured, not the piece.
const PIECES: Question = Question {
    id: "pieces-fit-to-spray",
    settle: settle_pieces,
    ask: Ask::All { items: pieces, holds: piece_may },
    after: After::is("blushed-film"),
};

/// The pieces: slug, fact that tells its surface, label of its gap.
const PIECE_FACTS: [(&str, &str, &str); 4] = [
    ("body", "body_c", "gap-body"),
    ("neck", "neck_c", "gap-neck"),
    ("top", "top_c", "gap-top"),
    ("sides", "sides_c", "gap-sides"),
];

fn settle_pieces(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    for (_, key, _) in PIECE_FACTS {
        settle_work(facts, world, key);
    }
}

fn pieces(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    PIECE_FACTS.iter().map(|(slug, ..)| Item::new(slug, "room-for-surface")).collect()
}

fn piece_may(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let (_, key, label) = listed(&PIECE_FACTS, slug)?;
    mix_may(&gate(facts, world, key)?, facts, world, label)
}

/// The row of a list that a slug names.
fn listed(
    list: &[(&'static str, &'static str, &'static str)],
    slug: &str,
) -> Result<(&'static str, &'static str, &'static str), CannotJudge> {
    list.iter().find(|(one, ..)| *one == slug).copied().ok_or_else(|| CannotJudge::without(slug))
}

/// At which hours may it be sprayed? Misconception: the humidity limit alone decides.
const HOURS: Question = Question {
    id: "hours-fit-to-spray",
    settle: settle_hours,
    ask: Ask::All { items: hours, holds: hour_may },
    after: After::is("blushed-film"),
};

/// Hours of the day at which the log was read: slug, fact that tells the humidity, label of the gap.
const HOUR_FACTS: [(&str, &str, &str); 4] = [
    ("at-8", "rh_8", "gap-at-8"),
    ("at-11", "rh_11", "gap-at-11"),
    ("at-14", "rh_14", "gap-at-14"),
    ("at-17", "rh_17", "gap-at-17"),
];

fn hour_gate(room: Celsius, rh: RelativeHumidity, world: &World<'_>) -> Ruling<Gate> {
    air::spray_gate(room, rh, room, world.sheet)
}

fn settle_hours(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    for (_, key, _) in HOUR_FACTS {
        for _ in 0..NUDGES {
            let (Ok(room), Ok(rh)) = (facts.celsius("air_c"), facts.humidity(key)) else { continue };
            if too_near(&hour_gate(room, rh, world).answer) {
                facts.set(key, rh.get() - NUDGE);
            }
        }
    }
}

fn hours(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    HOUR_FACTS.iter().map(|(slug, ..)| Item::new(slug, "humidity-alone")).collect()
}

fn hour_may(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let (_, key, label) = listed(&HOUR_FACTS, slug)?;
    let gate = hour_gate(facts.celsius("air_c")?, facts.humidity(key)?, world);
    mix_may(&gate, facts, world, label)
}
