//! The mask after work: cleaned, dried, kept closed, or tagged and taken away.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// How a mask is found after work.
    MaskFound {
        /// Clean and dry.
        CleanDry = "mask-clean-dry",
        /// Washed and still wet.
        CleanWet = "mask-clean-wet",
        /// With sweat and overspray on it.
        Dirty = "mask-dirty",
    }
    /// How its parts are.
    MaskParts {
        /// Straps, valves and sealing edge whole.
        Whole = "parts-whole",
        /// A valve that curls, a strap without stretch, a crack in the edge.
        Damaged = "part-damaged",
    }
    /// What happens with it.
    CareMove {
        /// Into its own closed bag or box, away from sun and vapour.
        Store = "into-closed-bag",
        /// Dried first.
        Dry = "dry-then-bag",
        /// Cleaned and dried first.
        Clean = "clean-dry-then-bag",
        /// Tagged, out of use, reported.
        TagOut = "tag-and-report",
    }
}

/// What happens with a mask after work. A damaged one is tagged and taken away, however clean; the others go clean and
/// dry into their closed bag or box: an open mask goes on taking up vapour.
///
/// # Errors
/// [`CannotJudge`] when it is not known how its parts are, or how it was found.
pub fn care_move(found: Option<MaskFound>, parts: Option<MaskParts>) -> Judged<CareMove> {
    let answer = match (parts.ok_or_else(|| CannotJudge::without("mask_parts"))?, found) {
        (MaskParts::Damaged, _) => CareMove::TagOut,
        (MaskParts::Whole, Some(MaskFound::CleanDry)) => CareMove::Store,
        (MaskParts::Whole, Some(MaskFound::CleanWet)) => CareMove::Dry,
        (MaskParts::Whole, Some(MaskFound::Dirty)) => CareMove::Clean,
        (MaskParts::Whole, None) => return Err(CannotJudge::without("mask_found")),
    };
    Ok(Ruling::by("hazard.mask-kept-closed", answer).and("hazard.damaged-mask-tagged"))
}
