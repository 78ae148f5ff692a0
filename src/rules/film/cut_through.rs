//! Cutting through: what is left at the thinnest place once levelling and buffing are done.

use super::um;
use crate::quantity::{Fraction, Measure, Micrometres, Unit};
use crate::rules::abrasive::{Grade, scratch_allowance};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Where the film is rubbed.
    Place {
        /// On the flat face.
        Face = "place-face",
        /// On an edge: the film draws back from it, and the block bears harder there.
        Edge = "place-edge",
    }
    /// How near rubbing comes to the colour.
    CutRisk {
        /// The shop's reserve stays.
        Safe = "margin-safe",
        /// Clear stays, but less than the reserve.
        Thin = "margin-thin",
        /// The colour is cut.
        Through = "margin-through",
    }
}

/// A film that is to be levelled and buffed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToRub {
    /// Mean dry film of clear over the colour.
    pub build: Micrometres,
    /// Thinnest place over the mean, as the gun laid it.
    pub evenness: Fraction,
    /// Height of the texture that levelling takes off, peak to valley.
    pub texture: Micrometres,
    /// Where it is rubbed.
    pub place: Place,
}

/// What is left over the colour, and how near that is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutThrough {
    /// Clear left at the thinnest place; 0 when it is cut.
    pub left: Micrometres,
    /// What came off.
    pub taken: Micrometres,
    /// How near.
    pub risk: CutRisk,
}

/// Margin before cutting through: `build × evenness - (texture + scratches of the ladder + buffing)`, at an edge only the
/// sheet's share of it. The balance is arithmetic; depth of scratches, buffing and the edge's share are shop sheet.
#[must_use]
pub fn cut_through(film: ToRub, ladder: &[&Grade], sheet: &Sheet) -> Ruling<CutThrough> {
    let thinnest = film.build.get() * film.evenness.get();
    let scratches = scratch_allowance(ladder, sheet);
    let buffing = sheet.get(Setting::BuffTakeOff);
    let taken = film.texture.get() + scratches.answer.get() + buffing;
    let share = match film.place {
        Place::Face => 1.0,
        Place::Edge => sheet.get(Setting::EdgeMargin),
    };
    let left = Micrometres::saturating((thinnest - taken) * share);
    let reserve = sheet.micrometres(Setting::FilmReserve);
    let (rule, risk) = if left.get() <= 0.0 {
        ("film.cut-through", CutRisk::Through)
    } else if left < reserve {
        ("film.reserve-over-colour", CutRisk::Thin)
    } else {
        ("film.level-leaves-reserve", CutRisk::Safe)
    };
    let fine = |value: f64| Measure::new(value, Unit::Micrometre, 1);
    let mut ruling = Ruling::by(rule, CutThrough { left, taken: Micrometres::saturating(taken), risk })
        .and("film.margin-at-thinnest")
        .step("thinnest-place", "build × evenness", fine(thinnest))
        .given(&[
            ("build", um(film.build.get())),
            ("evenness", Measure::new(film.evenness.get(), Unit::Ratio, 2)),
        ])
        .step("texture", "", fine(film.texture.get()))
        .step("buffing-takes", "", fine(buffing))
        .step("rubbing-takes", "", fine(taken))
        .given(&[
            ("texture", fine(film.texture.get())),
            ("scratches", fine(scratches.answer.get())),
            ("buffing-takes", fine(buffing)),
        ])
        .step("margin", "", fine(left.get()))
        .given(&[
            ("thinnest-place", fine(thinnest)),
            ("rubbing-takes", fine(taken)),
            ("share at the edge", Measure::new(share, Unit::Ratio, 2)),
        ])
        .step("reserve", "", um(reserve.get()))
        .resting_on(&scratches);
    if film.place == Place::Edge {
        ruling = ruling.and("film.edge-is-thinner");
    }
    ruling
}
