//! Straining: how fine, and when.

use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// When a mix was strained.
    Strained {
        /// Not yet: thinned and stirred, the strainer is next.
        Next = "strained-next",
        /// Before thinner went in.
        BeforeThinning = "strained-before-thinning",
    }
    /// What a strainer is good for.
    StrainerMove {
        /// It serves.
        Serves = "strainer-serves",
        /// Too coarse: take a finer one.
        Finer = "strainer-finer",
        /// Fine enough but used too soon: strain once more.
        Again = "strain-again",
    }
}

/// Whether a strainer of that mesh does for a mix: no coarser than the sheet's, and after thinning and stirring.
#[must_use]
pub fn strainer(mesh: Micrometres, strained: Strained, sheet: &Sheet) -> Ruling<StrainerMove> {
    let most = sheet.micrometres(Setting::StrainerMesh);
    let answer = if mesh > most {
        StrainerMove::Finer
    } else if strained == Strained::BeforeThinning {
        StrainerMove::Again
    } else {
        StrainerMove::Serves
    };
    Ruling::by("mixing.strainer-mesh", answer).and("mixing.strain-last").step(
        "strainer-mesh",
        "",
        Measure::new(most.get(), Unit::Micrometre, 0),
    )
}
