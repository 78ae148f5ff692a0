//! A good run of a task as the model would do it: shown beside one's own, and graded like it.

use super::edge::{Side, along};
use super::outline::{Outline, Place, sides};
use super::program::Passes;
use super::setup::{AS_SET, Setup};
use crate::content::{EvenFilm, ShadedEdge};
use crate::quantity::{DUST, GunSpeed, MM_A_METRE, Micrometres, Millimetres, Overlap, Seconds};
use crate::rules::spray::fan::seen_width;
use crate::rules::spray::overlap::evenness;
use crate::rules::spray::pass_film::{Spray, speed_for};
use crate::rules::spray::trigger::{lead_for, passes_across};
use crate::rules::term::Term;
use crate::rules::verdict::Judged;

/// Half an overlap: aim at the edge of the last stripe (an air-board refinish tip sheet; TM 1-1500-344-23-2, A-8.3).
pub const TAUGHT_OVERLAP: f64 = 0.5;
/// Least speed of a shading pass, m/s: hands move at about 1 ft/s (a refinishing textbook, 2022, p. 687).
const SHADING_SPEED: f64 = 0.3;
/// Waited between layers in times of the flash-off: next to nothing is wet then (e⁻³ is a twentieth).
const FLASHES: f64 = 3.0;
/// What edges and ends of passes add at the most to [`unevenness`], as a standard deviation over the mean: measured on the good
/// runs of the cards that are dealt on the sheets that ship, and rounded up to five thousandths (`tests/spray_cards.rs`
/// measures it again).
pub const EDGES_ADD: f64 = 0.045;

/// The good run; none where the task's numbers leave no speed for a gun.
#[must_use]
pub fn run(setup: &Setup) -> Option<Vec<Passes>> {
    match (setup.task.film, setup.task.shade) {
        (Some(film), _) => even(setup, film),
        (None, Some(shade)) => shaded(setup, shade),
        (None, None) => None,
    }
}

/// Speeds of the passes of a good run, m/s: layers that cross are laid at speeds of their own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Speeds {
    /// The least.
    pub least: f64,
    /// The mean over the way that they go.
    pub mean: f64,
    /// The greatest.
    pub most: f64,
}

/// The speeds of the good run; none where there is no good run.
#[must_use]
pub fn speeds(setup: &Setup) -> Option<Speeds> {
    let passes = run(setup)?;
    let way = |pass: &Passes| -> f64 { sides(&pass.line).sum() };
    let whole: f64 = passes.iter().map(way).sum();
    let least = passes.iter().map(|pass| pass.speed).min_by(f64::total_cmp)?;
    let most = passes.iter().map(|pass| pass.speed).max_by(f64::total_cmp)?;
    let mean = passes.iter().map(|pass| pass.speed * way(pass)).sum::<f64>() / whole;
    (whole > 0.0).then_some(Speeds { least, mean, most })
}

/// What leaves the gun in the middle of its distances.
fn spray(setup: &Setup) -> Spray {
    Spray {
        flow: setup.task.gun.flow_ml_min,
        solids: crate::quantity::Fraction::saturating(1.0),
        landing: setup.landing(),
    }
}

/// The speed that lays a wet film at a pitch.
///
/// # Errors
/// [`CannotJudge`] where it would be none that a gun is moved at.
///
/// [`CannotJudge`]: crate::rules::verdict::CannotJudge
pub fn speed_at(setup: &Setup, pitch: Millimetres, wet: Micrometres) -> Judged<GunSpeed> {
    speed_for(spray(setup), pitch, wet)
}

/// The same for a film in µm at a pitch in mm; none where no gun is moved so.
fn speed(setup: &Setup, pitch: f64, wet: f64) -> Option<f64> {
    let speed = speed_at(setup, Millimetres::saturating(pitch), Micrometres::saturating(wet));
    speed.ok().map(|ruling| ruling.answer.get())
}

/// How far before the edge the trigger has to be pulled at a speed, m/s, mm.
pub(super) fn lead(setup: &Setup, half_thin: f64, speed: f64) -> f64 {
    let valve = Seconds::saturating(setup.task.gun.opens_s.get());
    lead_for(Millimetres::saturating(half_thin), GunSpeed::saturating(speed), valve).answer.get()
}

/// Gaps between the passes that share a length evenly, at half an overlap or more.
fn gaps(length: f64, full: f64) -> Option<f64> {
    let passes = passes_across(
        Millimetres::saturating(length),
        Millimetres::saturating(full),
        Overlap::saturating(TAUGHT_OVERLAP),
    );
    passes.ok().map(|ruling| ruling.answer - 1.0)
}

/// The overlap of passes that share the face evenly: the greater one of both directions.
pub(super) fn fitted(setup: &Setup) -> f64 {
    let full = 2.0 * setup.held(setup.middle_distance(), 0.0).half_fan;
    let (least, most) = setup.outline.bounds();
    let overlap = |length: f64| gaps(length, full).map_or(TAUGHT_OVERLAP, |gaps| 1.0 - length / gaps / full);
    overlap(most.0 - least.0).max(overlap(most.1 - least.1))
}

/// How uneven the passes lie that share the face evenly: standard deviation over mean of an endless set of them, the greater
/// one of both directions where layers cross; 0 for a shade.
#[must_use]
pub fn unevenness(setup: &Setup) -> f64 {
    let Some(film) = setup.task.film else { return 0.0 };
    let full = 2.0 * setup.held(setup.middle_distance(), 0.0).half_fan;
    let (least, most) = setup.outline.bounds();
    let across = film.crossing.then_some(most.0 - least.0);
    let cv = |length: f64| {
        let overlap = gaps(length, full).map_or(TAUGHT_OVERLAP, |gaps| 1.0 - length / gaps / full);
        evenness(setup.section(), Overlap::saturating(overlap)).answer.cv
    };
    [Some(most.1 - least.1), across].into_iter().flatten().map(cv).fold(0.0, f64::max)
}

fn even(setup: &Setup, film: EvenFilm) -> Option<Vec<Passes>> {
    let distance = setup.middle_distance();
    let held = setup.held(distance, 0.0);
    let wet = f64::midpoint(film.from, film.to) * setup.coat();
    let mut sets = Vec::new();
    for layer in 0..film.layers {
        let upright = film.crossing && layer % 2 == 1;
        let turned = |(x, y): Place| if upright { (y, x) } else { (x, y) };
        let (least, most) = setup.outline.bounds();
        let (from, to) = (turned(least).1, turned(most).1);
        let gaps = gaps(to - from, 2.0 * held.half_fan)?;
        let pitch = (to - from) / gaps;
        let speed = speed(setup, pitch, wet)?;
        let reach = seen_width(setup.section()) * held.half_fan;
        let mut nth = 0.0;
        let mut back = false;
        let mut wait = if layer > 0 { FLASHES * setup.task.flash_s.get() } else { 0.0 };
        while nth <= gaps {
            let beside = from + nth * pitch;
            nth += 1.0;
            let Some((begin, end)) = extent(&setup.outline, turned, beside - reach, beside + reach) else {
                continue;
            };
            let mut line = vec![turned((begin, beside)), turned((end, beside))];
            if back {
                line.reverse();
            }
            back = !back;
            sets.push(Passes {
                line,
                wide: 0.0,
                distance,
                speed,
                overlap: TAUGHT_OVERLAP,
                lead: lead(setup, held.half_thin, speed),
                lag: held.half_thin,
                wait,
                fan: AS_SET,
            });
            wait = 0.0;
        }
    }
    Some(sets)
}

/// How far the outline reaches along a pass, within a band across it; `turned` swaps both directions for upright passes.
fn extent(outline: &Outline, turned: impl Fn(Place) -> Place, from: f64, to: f64) -> Option<(f64, f64)> {
    let mut found: Option<(f64, f64)> = None;
    for (a, b) in outline.sides() {
        let ((ax, ay), (bx, by)) = (turned(a), turned(b));
        let cut = |limit: f64| {
            let share = if by == ay { 0.0 } else { ((limit - ay) / (by - ay)).clamp(0.0, 1.0) };
            (ax + (bx - ax) * share, ay + (by - ay) * share)
        };
        for (x, y) in [cut(from), cut(to), (ax, ay)] {
            // What is cut at a limit lies on it but for the last bits.
            if (from - DUST..=to + DUST).contains(&y) {
                found = Some(found.map_or((x, x), |(least, most)| (least.min(x), most.max(x))));
            }
        }
    }
    found
}

/// Along the edge, both ways from the bottom to the top: both begin where the other does, so that each
/// lays half there. Coats end one after another, as the fade asks; what lies outside of where one ends is filled by passes
/// at half an overlap.
fn shaded(setup: &Setup, shade: ShadedEdge) -> Option<Vec<Passes>> {
    let distance = setup.middle_distance();
    let held = setup.held(distance, 0.0);
    let each = shade.depth * setup.coat() / f64::from(shade.coats.max(1));
    let once = speed(setup, 2.0 * held.half_fan * setup.section().mean(), each)?;
    let rounds = (SHADING_SPEED / once).ceil().max(1.0);
    let speed = once * rounds;
    // The flow follows the trigger: half of it is there after half of the time.
    let late = speed * MM_A_METRE * setup.task.gun.opens_s.get() / 2.0;
    let mut sets = Vec::new();
    let mut round = 0.0;
    while round < rounds {
        for coat in 0..shade.coats {
            let mut inward = shade.width_mm.get() * f64::from(coat) / f64::from(shade.coats);
            while inward > -held.half_fan {
                for side in Side::ALL {
                    sets.push(Passes {
                        line: along(&setup.outline, inward, *side),
                        wide: 0.0,
                        distance,
                        speed,
                        overlap: TAUGHT_OVERLAP,
                        lead: late,
                        lag: -late,
                        wait: 0.0,
                        fan: AS_SET,
                    });
                }
                inward -= held.half_fan;
            }
        }
        round += 1.0;
    }
    Some(sets)
}
