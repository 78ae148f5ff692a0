//! Unlike coatings in one booth: what is cleared before the next one is sprayed.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Coatings as a booth's residue knows them.
    Sprayed {
        /// Nitrocellulose lacquer.
        Nitrocellulose = "nitrocellulose",
        /// Oil varnish or alkyd.
        OilVarnish = "oil-varnish",
        /// Water-borne lacquer.
        WaterBorne = "water-borne",
        /// Shellac.
        Shellac = "shellac",
        /// Two-part finish with a peroxide or acid catalyst.
        Catalysed = "catalysed",
    }
    /// What was cleared since the last coating.
    BoothState {
        /// Nothing.
        AsLeft = "as-left",
        /// New filters only.
        NewFilters = "new-filters",
        /// Booth scraped; duct as it was.
        BoothScraped = "booth-scraped",
        /// Booth, duct and filters.
        AllCleared = "all-cleared",
    }
    /// Whether the next coating may be sprayed in a booth.
    BoothMove {
        /// It may.
        Spray = "spray-on",
        /// Booth, duct and filters are cleared first.
        ClearAll = "clear-all-first",
    }
}

/// Whether a coating may be sprayed where another was: the same one may; an unlike one only after booth, duct and
/// filters are clear (29 CFR 1910.107(g)(6)).
///
/// # Errors
/// [`CannotJudge`] when what was sprayed before, or what was cleared since, decides and is not known.
pub fn booth_change(before: Option<Sprayed>, state: Option<BoothState>, next: Sprayed) -> Judged<BoothMove> {
    let ruled = |answer| Ok(Ruling::by("hazard.one-booth-one-chemistry", answer));
    match (before, state) {
        (_, Some(BoothState::AllCleared)) => ruled(BoothMove::Spray),
        (Some(before), _) if before == next => ruled(BoothMove::Spray),
        (Some(_), Some(_)) => ruled(BoothMove::ClearAll),
        (None, _) => Err(CannotJudge::without("sprayed_before")),
        (Some(_), None) => Err(CannotJudge::without("booth_state")),
    }
}
