//! Reading the wood: pores, what a wood demands, its moisture and its movement.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, MoistureContent, Unit};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};
use crate::rules::wood::{self, Cut, Demand, MoistureAction, PoreClass};

pub(super) const ALL: &[&Question] =
    &[&PORES, &FIRST_COAT, &MOISTURE_FIT, &METER, &ROOM_FOR_WOOD, &SEASONAL_MOVEMENT];

fn percent(value: f64) -> Measure {
    Measure::new(value, Unit::Percent, 1)
}

fn moisture(facts: &Facts, key: &str) -> Result<MoistureContent, CannotJudge> {
    MoistureContent::new(facts.number(key)?).map_err(|_| CannotJudge::without(key))
}

/// How do the pores of this wood read? Misconceptions: diffuse-porous means small-pored; a soft wood has no pores.
const PORES: Question = Question {
    id: "pores-read",
    settle: keep,
    ask: Ask::One { answer: pores, tempt: pores_tempts },
    after: After::is("wrong-preparation"),
};

fn pores(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let class = wood::pore_class(world.wood(facts.slug("wood")?)?)?;
    Ok(class.map(|class| Answer::term(class.slug())))
}

fn large(class: PoreClass) -> bool {
    matches!(class, PoreClass::RingLarge | PoreClass::SemiRingLarge | PoreClass::DiffuseLarge)
}

fn pores_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let wood = facts.slug("wood").and_then(|slug| world.wood(slug));
    let Ok(right) = wood.and_then(wood::pore_class) else { return Vec::new() };
    let right = right.answer;
    let slip = |class: PoreClass| match (right, class) {
        (PoreClass::NoPores, _) => "conifer-has-pores",
        (_, PoreClass::NoPores) => "hardwood-without-pores",
        (PoreClass::DiffuseLarge, PoreClass::DiffuseSmall) => "diffuse-means-small",
        (right, class) if large(right) == large(class) => "spread-misread",
        _ => "pore-size-misread",
    };
    let after = |class: PoreClass| match (large(right), large(class)) {
        (true, false) => "grain-sink",
        (false, true) => "filled-for-nothing",
        _ => "time-lost",
    };
    PoreClass::ALL.iter().map(|class| Tempt::term(class.slug(), slip(*class), after(*class))).collect()
}

/// What does this wood demand before its first coat? Misconceptions: oil dries out by itself; one cure for every wood.
const FIRST_COAT: Question = Question {
    id: "first-coat-demand",
    settle: keep,
    ask: Ask::All { items: preparations, holds: demanded },
    after: After::is("wrong-preparation"),
};

/// The answer for a wood without trouble.
const NOTHING_MORE: &str = "nothing-more";

fn preparations(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let slip = |demand| match demand {
        Demand::SolventWipe => "oil-left-on",
        Demand::BarrierCoat => "barrier-misjudged",
        Demand::Washcoat => "washcoat-misjudged",
    };
    let missed = |demand| match demand {
        Demand::SolventWipe => "peels",
        Demand::BarrierCoat => "soft-film",
        Demand::Washcoat => "stain-blotch",
    };
    let mut items: Vec<Item> = Demand::ALL
        .iter()
        .map(|one| Item::new(one.slug(), slip(*one)).costing("lost-hour", missed(*one)))
        .collect();
    items.push(Item::new("week-of-drying", "oil-dries-out").costing("time-lost", ""));
    items.push(Item::new("oil-rub", "oil-under-everything").costing("peels", ""));
    items.push(Item::new(NOTHING_MORE, "trouble-overlooked").costing("", "lost-hour"));
    items
}

fn demanded(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let wood = world.wood(facts.slug("wood")?)?;
    let ruling = wood::demands(wood, facts.term("first_coat")?);
    Ok(ruling.map(|found| match slug {
        NOTHING_MORE => found.is_empty(),
        slug => found.iter().any(|one| one.slug() == slug),
    }))
}

/// What is done with wood of that moisture? Misconceptions: finish stops the moisture; too dry is always good.
const MOISTURE_FIT: Question = Question {
    id: "moisture-fit",
    settle: keep,
    ask: Ask::One { answer: moisture_fit, tempt: moisture_fit_tempts },
    after: After::is("moved-after-finish"),
};

fn moisture_fit(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let action = wood::moisture_action(moisture(facts, "mc")?, world.sheet);
    Ok(action.map(|action| Answer::term(action.slug())))
}

fn moisture_fit_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let dry = facts.maybe_number("mc") < Some(world.sheet.get(Setting::MoistureFrom));
    let finish = if dry { "dry-is-always-good" } else { "band-overlooked" };
    vec![
        Tempt::term(MoistureAction::FinishIt.slug(), finish, "moved-after-finish"),
        Tempt::term(MoistureAction::HoldToDry.slug(), "band-overlooked", "waited-for-nothing"),
        Tempt::term(MoistureAction::HoldToGain.slug(), "band-overlooked", "waited-for-nothing"),
        Tempt::term(MoistureAction::SendBack.slug(), "refused-too-soon", "waited-for-nothing"),
        Tempt::term("extra-sealer", "finish-stops-moisture", "moved-after-finish"),
        Tempt::term("heater-overnight", "surface-dried-only", "moved-after-finish"),
    ]
}

/// What is the moisture behind this reading? Misconceptions: the reading is taken as it is; the correction goes the
/// wrong way.
const METER: Question = Question {
    id: "meter-reading",
    settle: cold_or_warm,
    ask: Ask::Number { answer: meter, tempt: meter_tempts, unit: Unit::Percent },
    after: After::is("moved-after-finish").above("time-lost"),
};

/// The wood is so far from the meter's temperature that the correction shows.
fn cold_or_warm(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    /// Least difference in K, and the differences drawn where it is less.
    const LEAST: f64 = 9.0;
    const MOST: f64 = 18.0;
    let (Some(wood), Some(meter)) = (facts.maybe_number("wood_c"), facts.maybe_number("meter_c")) else {
        return;
    };
    if (meter - wood).abs() < LEAST {
        facts.set("wood_c", meter - dice.on_grid(LEAST, MOST, 1.0));
    }
}

fn meter(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let reading = moisture(facts, "meter_mc")?;
    let ruling = wood::corrected_reading(reading, facts.celsius("wood_c")?, facts.celsius("meter_c")?);
    Ok(ruling.map(|content| percent(content.get())))
}

fn meter_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(reading), Ok(right)) = (facts.number("meter_mc"), meter(facts, world)) else { return Vec::new() };
    let wrong_way = reading + reading - right.answer.value;
    vec![
        Tempt::number(percent(reading), "reading-uncorrected"),
        Tempt::number(percent(wrong_way), "correction-wrong-way"),
    ]
}

/// Which humidity holds the wood? Misconceptions: the spraying limit is fit for storing; humidity equals moisture.
const ROOM_FOR_WOOD: Question = Question {
    id: "room-for-wood",
    settle: inside_the_band,
    ask: Ask::One { answer: room, tempt: room_tempts },
    after: After::is("moved-after-finish"),
};

/// Asks only for a moisture at which this shop finishes wood.
fn inside_the_band(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    if let Some(content) = facts.maybe_number("mc") {
        let (from, to) = (world.sheet.get(Setting::MoistureFrom), world.sheet.get(Setting::MoistureTo));
        facts.set("mc", content.max(from).min(to));
    }
}

fn room_for(facts: &Facts, content: MoistureContent) -> Judged<Measure> {
    let ruling = wood::humidity_for(facts.celsius("air_c")?, content)?;
    Ok(ruling.map(|rh| Measure::new(libm::round(rh.get()), Unit::Percent, 0)))
}

fn room(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(room_for(facts, moisture(facts, "mc")?)?.map(Answer::Number))
}

fn room_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    /// How far off a badly read table is, per cent of moisture.
    const ASTRAY: [f64; 6] = [-4.5, -3.0, -1.5, 1.5, 3.0, 4.5];
    let Ok(content) = moisture(facts, "mc") else { return Vec::new() };
    let whole = |value| Measure::new(value, Unit::Percent, 0);
    let mut tempts = vec![
        Tempt::number(whole(world.sheet.get(Setting::HumidityLimit)), "spray-limit-for-storing"),
        Tempt::number(whole(libm::round(content.get())), "humidity-is-moisture"),
    ];
    for astray in ASTRAY {
        let room =
            MoistureContent::new(content.get() + astray).ok().and_then(|other| room_for(facts, other).ok());
        if let Some(room) = room {
            tempts.push(Tempt::number(room.answer, "moisture-table-misread"));
        }
    }
    tempts
}

/// How much wider does it get? Misconceptions: the other cut's coefficient; the change taken the wrong way round; the
/// new moisture taken for the change.
const SEASONAL_MOVEMENT: Question = Question {
    id: "seasonal-movement",
    settle: tell_coefficients,
    ask: Ask::Number { answer: movement, tempt: movement_tempts, unit: Unit::Millimetre },
    after: After::is("moved-after-finish").above("time-lost"),
};

/// The published coefficients of the wood are told, and the moisture changes enough to be measured.
fn tell_coefficients(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    /// Least change of moisture, per cent, and the bounds between which the coefficients hold.
    const LEAST: f64 = 2.0;
    const MOST: f64 = 5.0;
    const MIDDLE: f64 = 9.0;
    if let Some(known) =
        facts.slug("wood").and_then(|slug| world.wood(slug)).ok().and_then(|wood| wood.movement)
    {
        facts.set("coefficient_flat", known.tangential);
        facts.set("coefficient_quarter", known.radial);
    }
    let (Some(from), Some(to)) = (facts.maybe_number("from_mc"), facts.maybe_number("to_mc")) else { return };
    if (to - from).abs() < LEAST {
        let change = dice.on_grid(LEAST, MOST, 0.5);
        facts.set("to_mc", if from < MIDDLE { from + change } else { from - change.min(LEAST) });
    }
}

fn moved(
    facts: &Facts,
    world: &World<'_>,
    cut: Cut,
    from: MoistureContent,
    to: MoistureContent,
) -> Judged<Measure> {
    let wood = world.wood(facts.slug("wood")?)?;
    wood::movement(wood, cut, facts.millimetres("width_mm")?, from, to)
}

fn movement(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    moved(facts, world, facts.term("cut")?, moisture(facts, "from_mc")?, moisture(facts, "to_mc")?)
}

fn movement_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(cut), Ok(from), Ok(to)) =
        (facts.term::<Cut>("cut"), moisture(facts, "from_mc"), moisture(facts, "to_mc"))
    else {
        return Vec::new();
    };
    let other = if cut == Cut::Flat { Cut::Quarter } else { Cut::Flat };
    let wrong = [
        (moved(facts, world, other, from, to), "other-cut"),
        (moved(facts, world, cut, to, from), "moved-the-other-way"),
    ];
    let told = |(ruling, slip): (Judged<Measure>, _)| Some(Tempt::number(ruling.ok()?.answer, slip));
    wrong.into_iter().filter_map(told).collect()
}
