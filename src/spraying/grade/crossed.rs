//! Whether layers cross.

use super::{Counted, Fault, Finding};
use crate::rules::verdict::RuleId;
use crate::spraying::strokes::Stroke;

/// Two layers cross when their strokes differ by this much, degrees (an assumption, no source: square across is taught).
const CROSSES: f64 = 60.0;
/// Layers cross when what is sprayed across others comes to half a layer or more: a single pass across is none.
pub(super) fn judge(strokes: &[Stroke], layers: u32, found: &mut Vec<Finding>) {
    let angle = widest(strokes, 1.0 / (2.0 * f64::from(layers)));
    if angle < CROSSES {
        found.push(Finding {
            fault: Fault::NotCrossed,
            rule: RuleId("spraying.layers-cross"),
            counted: Counted::Angle,
            found: angle,
            limit: CROSSES,
        });
    }
}

/// The angle between strokes, degrees, once a share of the sprayed area is left out that lies most along the longest one, and
/// the same share that lies most across it.
fn widest(strokes: &[Stroke], left_out: f64) -> f64 {
    /// A square angle, degrees.
    const SQUARE: f64 = 90.0;
    let Some(longest) = strokes.iter().max_by(|one, other| one.length.total_cmp(&other.length)) else {
        return 0.0;
    };
    let off = |stroke: &Stroke| {
        let turn = (stroke.direction() - longest.direction()).abs();
        if turn > SQUARE { 2.0 * SQUARE - turn } else { turn }
    };
    // The fan is as wide as the gun is far, and as it is opened.
    let mut areas: Vec<(f64, f64)> =
        strokes.iter().map(|stroke| (off(stroke), stroke.length * stroke.distance * stroke.wide)).collect();
    areas.sort_by(|one, other| one.0.total_cmp(&other.0));
    let whole: f64 = areas.iter().map(|(_, area)| area).sum();
    let least = left_out * whole;
    reached(areas.iter().rev(), least) - reached(areas.iter(), least)
}

/// The angle at which angles with their areas have come to an area.
fn reached<'a>(mut areas: impl Iterator<Item = &'a (f64, f64)>, least: f64) -> f64 {
    let mut gone = 0.0;
    let reached = areas.find(|(_, area)| {
        gone += area;
        gone >= least
    });
    reached.map_or(0.0, |(angle, _)| *angle)
}
