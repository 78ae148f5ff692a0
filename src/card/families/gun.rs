//! The gun in hand: its distance, a sandy film, the ends of a stroke, a gun that stands, held askew, or heavy on a side.

use crate::bench::Facts;
use crate::bench::spray::told_speed;
use crate::card::question::{After, Ask, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Seconds, Unit};
use crate::rules::air::Thinner;
use crate::rules::shading::DistanceCall;
use crate::rules::spray::angle::{Held, Shape, shape};
use crate::rules::spray::distance::{Gun, band, judge};
use crate::rules::spray::dry_spray::{DryCall, sandy};
use crate::rules::spray::pattern::{CapTurned, GunFix, TestPattern, heavy_side};
use crate::rules::spray::trigger::{End, dwell, end};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] =
    &[&GUN_DISTANCE, &SANDY_FILM, &STROKE_ENDS, &GUN_STOOD, &STROKE_HELD, &HEAVY_SIDE];

/// Is this distance right for the gun? Misconceptions: one distance for every gun; air or pace for distance.
const GUN_DISTANCE: Question = Question {
    id: "gun-distance",
    settle: clear_distance,
    ask: Ask::One { answer: distance, tempt: distance_tempts },
    after: After::is("run"),
};

/// A distance that lies clear of every limit of both guns, so that no tape measure is needed to tell.
fn clear_distance(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const NEAREST_MM: f64 = 60.0;
    const FARTHEST_MM: f64 = 360.0;
    const GRID_MM: f64 = 5.0;
    const CLEAR_OF_LIMIT_MM: f64 = 10.0;
    const TRIES: u32 = 32;
    let limits: Vec<f64> = Gun::ALL
        .iter()
        .map(|gun| band(world.sheet, *gun))
        .flat_map(|(from, to)| [from.get(), to.get()])
        .collect();
    for _ in 0..TRIES {
        let held = dice.on_grid(NEAREST_MM, FARTHEST_MM, GRID_MM);
        facts.set("gun_mm", held);
        if limits.iter().all(|limit| (held - limit).abs() >= CLEAR_OF_LIMIT_MM) {
            return;
        }
    }
}

fn told_gun(facts: &Facts) -> Option<Gun> {
    facts.maybe_slug("gun").and_then(Gun::from_slug)
}

fn distance(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let ruling = judge(world.sheet, told_gun(facts), facts.millimetres("gun_mm")?)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn distance_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(DistanceCall::Keep.slug(), "one-distance-for-every-gun", ""),
        Tempt::term(DistanceCall::GoBack.slug(), "far-is-always-safer", "rough-clear"),
        Tempt::term(DistanceCall::ComeNearer.slug(), "near-is-always-wetter", ""),
        Tempt::term("keep-more-air", "air-for-distance", "rough-clear"),
        Tempt::term("keep-move-slower", "pace-for-distance", ""),
    ]
}

/// What is changed about a sandy film? Misconceptions: more air, rubbing it smooth, slower thinner for every cause.
const SANDY_FILM: Question = Question {
    id: "sandy-film",
    settle: clear_distance,
    ask: Ask::One { answer: sandy_film, tempt: sandy_tempts },
    after: After::is("rough-clear"),
};

fn sandy_film(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let thinner = facts.maybe_slug("thinner").and_then(Thinner::from_slug);
    let ruling = sandy(world.sheet, told_gun(facts), facts.millimetres("gun_mm")?, thinner)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn sandy_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(DryCall::Nearer.slug(), "near-cures-everything", "run"),
        Tempt::term(DryCall::Slower.slug(), "retarder-cures-everything", "slow-film"),
        Tempt::term(DryCall::Wetter.slug(), "wet-cures-everything", "run"),
        Tempt::term("more-air-pressure", "air-makes-it-fine", ""),
        Tempt::term("next-coat-melts-it", "coat-over-sand", ""),
    ]
}

/// How does the end of a stroke lie? Misconceptions: open on the edge is enough; a stop does not matter.
const STROKE_ENDS: Question = Question {
    id: "stroke-ends",
    settle: one_kind_of_end,
    ask: Ask::One { answer: stroke_end, tempt: end_tempts },
    after: After::is("thin-edge"),
};

/// Thin, full and heavy ends in equal share, clear of the reach.
fn one_kind_of_end(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    const GRID_MM: f64 = 5.0;
    const LONGEST_LEAD_MM: f64 = 90.0;
    const STOOD_S: (f64, f64, f64) = (0.2, 0.8, 0.1);
    const KINDS: u32 = 3;
    let Ok(reach) = facts.number("reach_mm") else { return };
    let kind = dice.below(KINDS);
    let lead = if kind == 0 {
        dice.on_grid(0.0, reach - GRID_MM, GRID_MM)
    } else {
        dice.on_grid(reach + GRID_MM, LONGEST_LEAD_MM, GRID_MM)
    };
    facts.set("lead_mm", lead);
    let (least, most, step) = STOOD_S;
    facts.set("stood_s", if kind == 1 { dice.on_grid(least, most, step) } else { 0.0 });
}

fn told_stood(facts: &Facts) -> Result<Seconds, CannotJudge> {
    Seconds::new(facts.number("stood_s")?).map_err(|_| CannotJudge::without("stood_s"))
}

fn stroke_end(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let (lead, reach) = (facts.millimetres("lead_mm").ok(), facts.millimetres("reach_mm").ok());
    Ok(end(lead, reach, told_stood(facts).ok())?.map(|end| Answer::term(end.slug())))
}

fn end_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(End::Full.slug(), "open-on-the-edge", ""),
        Tempt::term(End::Thin.slug(), "lead-is-never-enough", "material-lost"),
        Tempt::term(End::Heavy.slug(), "ends-are-always-heavy", "material-lost"),
        Tempt::term("end-sandy", "end-dries-in-flight", ""),
        Tempt::term("end-second-ridge", "lead-makes-ridge", ""),
    ]
}

/// How many passes' worth lies where the gun stood? Misconceptions: an even spot; the spot's whole length.
const GUN_STOOD: Question = Question {
    id: "gun-stood",
    settle: keep,
    ask: Ask::Number { answer: stood_passes, tempt: stood_tempts, unit: Unit::Ratio },
    after: After::is("run").above("time-lost"),
};

fn stood_passes(facts: &Facts, _: &World<'_>) -> Judged<Measure> {
    let passes = dwell(told_speed(facts)?, told_stood(facts)?, facts.millimetres("reach_mm")?)?;
    Ok(passes.map(|passes| Measure::new(passes, Unit::Ratio, 2)))
}

fn stood_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    /// An even spot lays half of v τ / b, a spot all in its middle the whole: against 3/4.
    const EVEN_SPOT: f64 = 2.0 / 3.0;
    const POINT: f64 = 4.0 / 3.0;
    let Ok(passes) = stood_passes(facts, world) else { return Vec::new() };
    let ratio = |number: f64| Measure::new(number, Unit::Ratio, 2);
    vec![
        Tempt::number(ratio(passes.answer.value * EVEN_SPOT), "spot-is-even"),
        Tempt::number(ratio(passes.answer.value * POINT), "spot-is-a-point"),
    ]
}

/// What does the film look like? Misconceptions: an arc loads the ends; a slant thins everything alike.
const STROKE_HELD: Question = Question {
    id: "stroke-held",
    settle: keep,
    ask: Ask::One { answer: held_shape, tempt: shape_tempts },
    after: After::is("stripes"),
};

fn held_shape(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    Ok(shape(facts.term::<Held>("held")?).map(|shape| Answer::term(shape.slug())))
}

fn shape_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(Shape::Even.slug(), "slant-evens-out", ""),
        Tempt::term(Shape::OneSided.slug(), "heel-for-arc", ""),
        Tempt::term(Shape::MiddleHeavy.slug(), "arc-for-heel", ""),
        Tempt::term("shape-ends-heavy", "arc-loads-ends", ""),
        Tempt::term("shape-thinner-all-over", "slant-thins-alike", ""),
    ]
}

/// Where is a heavy side put right? Misconceptions: always the hand, always the tip, a wider fan hides it.
const HEAVY_SIDE: Question = Question {
    id: "heavy-side",
    settle: even_needs_no_turn,
    ask: Ask::One { answer: gun_fix, tempt: fix_tempts },
    after: After::is("stripes"),
};

/// Nobody turns the cap of an even pattern; a heavy one was mostly tried.
fn even_needs_no_turn(facts: &mut Facts, _: &World<'_>, dice: &mut Dice) {
    const EVEN_ONE_IN: u32 = 3;
    if dice.one_in(EVEN_ONE_IN) {
        facts.set_term("test_pattern", TestPattern::Even.slug());
        facts.set_term("cap_turned", CapTurned::NotTurned.slug());
    } else {
        facts.set_term("test_pattern", TestPattern::OneSided.slug());
    }
}

fn gun_fix(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let pattern = facts.maybe_slug("test_pattern").and_then(TestPattern::from_slug);
    let cap = facts.maybe_slug("cap_turned").and_then(CapTurned::from_slug);
    Ok(heavy_side(pattern, cap)?.map(|fix| Answer::term(fix.slug())))
}

fn fix_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(GunFix::CleanCap.slug(), "cap-blamed", "lost-hour"),
        Tempt::term(GunFix::CleanTip.slug(), "tip-blamed", "lost-hour"),
        Tempt::term(GunFix::HoldSquare.slug(), "hand-blamed", ""),
        Tempt::term("wider-fan-hides-it", "fan-for-cleaning", ""),
        Tempt::term("more-air-clears-it", "air-for-cleaning", ""),
    ]
}
