//! The shaded edge: gun distance, width of the pattern, masking, an edge that is too dark.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{Measure, Unit};
use crate::rules::shading::{self, DistanceCall, Pass, ShadeCall, ShadeFace, ShadeUnder, Trim};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&SHADE_DISTANCE, &SHADE_PATTERN, &SHADE_TOO_DARK, &SHADE_MASK];

/// Is this distance right for the pass? Misconceptions: one distance for all, pressure or pace instead of distance.
const SHADE_DISTANCE: Question = Question {
    id: "shade-distance",
    settle: clear_distance,
    ask: Ask::One { answer: distance, tempt: distance_tempts },
    after: After::is("hard-shade"),
};

/// A distance that lies clear of every limit on the sheet, so that no tape measure is needed to tell.
fn clear_distance(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    const NEAREST_MM: f64 = 100.0;
    const FARTHEST_MM: f64 = 620.0;
    const GRID_MM: f64 = 5.0;
    const CLEAR_OF_LIMIT_MM: f64 = 15.0;
    const TRIES: u32 = 32;
    let limits: Vec<f64> = Pass::ALL
        .iter()
        .map(|pass| shading::distance(world.sheet, *pass))
        .flat_map(|(from, to)| [from.get(), to.get()])
        .collect();
    for _ in 0..TRIES {
        let held = dice.on_grid(NEAREST_MM, FARTHEST_MM, GRID_MM);
        if limits.iter().all(|limit| (held - limit).abs() >= CLEAR_OF_LIMIT_MM) {
            facts.set("gun_mm", held);
            return;
        }
    }
}

fn distance(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let pass = facts.maybe_slug("pass").and_then(Pass::from_slug);
    let ruling = shading::judge_distance(world.sheet, pass, facts.millimetres("gun_mm")?)?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn distance_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(DistanceCall::Keep.slug(), "one-distance-for-all", ""),
        Tempt::term(DistanceCall::GoBack.slug(), "far-is-always-softer", "sandy-pass"),
        Tempt::term(DistanceCall::ComeNearer.slug(), "near-is-always-wetter", ""),
        Tempt::term("keep-and-open-fluid", "fluid-for-distance", ""),
        Tempt::term("keep-and-swing-wrist", "arc-fades-edge", ""),
    ]
}

/// How wide is the pattern from the nearest shading distance? Misconceptions: same width, narrower, distance added.
const SHADE_PATTERN: Question = Question {
    id: "shade-pattern",
    settle: keep,
    ask: Ask::Number { answer: pattern, tempt: pattern_tempts, unit: Unit::Millimetre },
    after: After::is("hard-shade"),
};

fn pattern(facts: &Facts, world: &World<'_>) -> Judged<Measure> {
    let (nearest, _) = shading::distance(world.sheet, Pass::Shading);
    let (wide, held) = (facts.millimetres("pattern_mm")?, facts.millimetres("gun_mm")?);
    let ruling = shading::pattern_at(wide, held, nearest)?;
    Ok(ruling.map(|wide| Measure::new(wide.get(), Unit::Millimetre, 0)))
}

fn pattern_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let new = world.sheet.get(Setting::ShadeDistanceFrom);
    let told = facts.maybe_number("pattern_mm").zip(facts.maybe_number("gun_mm"));
    let Some((wide, held)) = told.filter(|(_, held)| *held > 0.0) else { return Vec::new() };
    let mm = |number: f64| Measure::new(number, Unit::Millimetre, 0);
    let farthest = world.sheet.get(Setting::ShadeDistanceTo);
    vec![
        Tempt::number(mm(wide), "pattern-stays"),
        Tempt::number(mm(wide * held / new), "pattern-turned-over"),
        Tempt::number(mm(wide + new - held), "distance-added"),
        Tempt::number(mm(wide * farthest / held), "farthest-taken"),
    ]
}

/// The edge is too dark: what can be done? Misconceptions: shade always wipes off, scuffing or clear makes it paler.
const SHADE_TOO_DARK: Question = Question {
    id: "shade-too-dark",
    settle: keep,
    ask: Ask::One { answer: too_dark, tempt: too_dark_tempts },
    after: After::is("patchy-edge"),
};

fn too_dark(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let ruling = shading::too_dark(facts.term::<ShadeUnder>("shade_under")?, facts.yes("shade_lifts").ok())?;
    Ok(ruling.map(|call| Answer::term(call.slug())))
}

fn too_dark_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(ShadeCall::WipeBack.slug(), "shade-always-wipes", ""),
        Tempt::term(ShadeCall::WidenToSeal.slug(), "shade-never-wipes", "lost-hour"),
        Tempt::term(ShadeCall::WidenToWood.slug(), "shade-never-wipes", "lost-hour"),
        Tempt::term("scuff-edge-paler", "shade-scuffed-paler", ""),
        Tempt::term("clear-makes-paler", "clear-lightens", "too-dark"),
    ]
}

/// What is masked before shading? Misconceptions: every binding, no binding, bare seats left open, faces covered.
const SHADE_MASK: Question = Question {
    id: "shade-mask",
    settle: keep,
    ask: Ask::All { items: parts, holds: is_masked },
    after: After::is("colour-on-trim"),
};

const PARTS: [(&str, ShadeFace, &str); 8] = [
    ("binding", ShadeFace::Binding, "binding-judged-by-habit"),
    ("fingerboard-face", ShadeFace::Bare, "bare-seat-open"),
    ("bridge-seat", ShadeFace::Bare, "bare-seat-open"),
    ("cavities", ShadeFace::Bare, "bare-seat-open"),
    ("peg-holes", ShadeFace::Bare, "bare-seat-open"),
    ("top-edge", ShadeFace::Sprayed, "finished-face-covered"),
    ("sides", ShadeFace::Sprayed, "finished-face-covered"),
    ("middle-of-top", ShadeFace::Sprayed, "fade-needs-open-field"),
];

fn parts(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    PARTS.iter().map(|(slug, _, slip)| Item::new(slug, slip)).collect()
}

fn is_masked(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let found = PARTS.iter().find(|(name, ..)| *name == slug);
    let (_, face, _) = found.ok_or_else(|| CannotJudge::without("face"))?;
    let trim = facts.maybe_slug("trim").and_then(Trim::from_slug);
    shading::is_masked(*face, trim, facts.yes("trim_sealed").ok())
}
