//! Seasonal movement across the grain.

use super::{Cut, Wood};
use crate::quantity::{Measure, Millimetres, MoistureContent, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use serde::{Deserialize, Serialize};

/// Coefficients of dimensional change (FPL-GTR-190, table 13-5), valid for 6 to 14 % moisture content.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Movement {
    /// Radial coefficient, per per cent.
    pub radial: f64,
    /// Tangential coefficient, per per cent.
    pub tangential: f64,
}

/// Fibre saturation: above it wood does not move (FPL-GTR-190 ch. 13).
pub const SATURATION: f64 = 30.0;
/// Moisture contents between which the coefficients hold (FPL-GTR-190 table 13-5).
const VALID_FROM: f64 = 6.0;
const VALID_TO: f64 = 14.0;
/// Moisture content at which the coefficients take the dimension, in per cent.
const COEFFICIENT_AT: f64 = 10.0;

/// Change of a width when the wood goes from one moisture content to another, in mm: growth is positive.
///
/// Between 6 and 14 %: width × coefficient × change (FPL-GTR-190 equation 13-2), tangential for flat-sawn width, radial
/// for quarter-sawn. Outside: the green-to-dry shrinkage that the coefficient stands for, C = 1/(3000/S - 20), spread
/// evenly from 30 % down (form of equation 13-3, unconfirmed).
///
/// # Errors
/// [`CannotJudge`] naming the coefficient where none is published for the wood (never a neighbour's), or a moisture
/// content over fibre saturation.
pub fn movement(
    wood: &Wood,
    cut: Cut,
    width: Millimetres,
    from: MoistureContent,
    to: MoistureContent,
) -> Judged<Measure> {
    let coefficients = wood.movement.ok_or_else(|| CannotJudge::without("coefficient"))?;
    let coefficient = match cut {
        Cut::Flat => coefficients.tangential,
        Cut::Quarter => coefficients.radial,
    };
    for (key, content) in [("from_mc", from), ("to_mc", to)] {
        if content.get() > SATURATION {
            return Err(CannotJudge::without(key));
        }
    }
    let valid = |content: MoistureContent| (VALID_FROM..=VALID_TO).contains(&content.get());
    let rise = to.get() - from.get();
    let (rule, formula, change) = if valid(from) && valid(to) {
        ("wood.movement", "width × C × change of moisture", width.get() * coefficient * rise)
    } else {
        let at_start = 1.0 / coefficient - COEFFICIENT_AT + from.get();
        ("wood.movement-green-to-dry", "width × change / (1/C - 10 + start)", width.get() * rise / at_start)
    };
    let change = Measure::new(change, Unit::Millimetre, 2);
    Ok(Ruling::by(rule, change)
        .step("coefficient", "published, per % of moisture", Measure::new(coefficient, Unit::Ratio, 5))
        .step("moisture-change", "later - earlier", Measure::new(rise, Unit::Percent, 1))
        .given(&[
            ("later", Measure::new(to.get(), Unit::Percent, 1)),
            ("earlier", Measure::new(from.get(), Unit::Percent, 1)),
        ])
        .step("movement", formula, change)
        .given(&[
            ("width", Measure::new(width.get(), Unit::Millimetre, 0)),
            ("C", Measure::new(coefficient, Unit::Ratio, 5)),
            ("change", Measure::new(rise, Unit::Percent, 1)),
        ]))
}
