//! What a wood's trouble demands before the first coat.

use super::{Wood, WoodTrouble};
use crate::rules::sorted::sorted;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What goes on first.
    FirstCoat {
        /// Oil stain wiped on and off.
        WipedStain = "wiped-stain",
        /// A material that cures through its oil: oil-based filler or varnish.
        OilCured = "oil-cured",
        /// Lacquer, solvent-borne or water-borne.
        Lacquer = "lacquer-coat",
    }
    /// What a wood demands before it.
    Demand {
        /// A wipe with a fast solvent, just before coating.
        SolventWipe = "solvent-wipe",
        /// A thin barrier coat of dewaxed shellac.
        BarrierCoat = "barrier-coat",
        /// A washcoat that evens the take of stain.
        Washcoat = "washcoat-first",
    }
}

/// What the wood demands before the first coat; nothing for a wood without trouble.
///
/// Oily woods: oil-cured materials may never cure on them and lacquer may not bond, so wipe with a fast solvent and seal
/// at once with dewaxed shellac; a stain needs the clean surface only (three published articles on oily exotics).
/// Blotching woods take a washcoat before a wiped stain (published articles on blotching). Resinous woods are wiped and
/// sealed, woods with bleeding extractives sealed before lacquer, whose solvents draw the colour out (both common
/// practice, no source).
#[must_use]
pub fn demands(wood: &Wood, first: FirstCoat) -> Ruling<Vec<Demand>> {
    let mut ruling = Ruling { answer: Vec::new(), rules: Vec::new(), working: Vec::new() };
    let mut found = Vec::new();
    for trouble in &wood.trouble {
        let (rule, wanted) = one(*trouble, first);
        if !wanted.is_empty() {
            ruling = ruling.and(rule);
            found.extend_from_slice(wanted);
        }
    }
    if found.is_empty() {
        ruling = ruling.and("wood.no-demand");
    }
    found = sorted(found, Ord::cmp);
    found.dedup();
    ruling.map(|_: Vec<Demand>| found)
}

const fn one(trouble: WoodTrouble, first: FirstCoat) -> (&'static str, &'static [Demand]) {
    const WIPE: &[Demand] = &[Demand::SolventWipe];
    const WIPE_AND_SEAL: &[Demand] = &[Demand::SolventWipe, Demand::BarrierCoat];
    match (trouble, first) {
        (WoodTrouble::Oily, FirstCoat::WipedStain) => ("wood.oily", WIPE),
        (WoodTrouble::Oily, _) => ("wood.oily", WIPE_AND_SEAL),
        (WoodTrouble::Resinous, FirstCoat::WipedStain) => ("wood.resinous", WIPE),
        (WoodTrouble::Resinous, _) => ("wood.resinous", WIPE_AND_SEAL),
        (WoodTrouble::Blotching, FirstCoat::WipedStain) => ("wood.blotching", &[Demand::Washcoat]),
        (WoodTrouble::Bleeding, FirstCoat::Lacquer) => ("wood.bleeding", &[Demand::BarrierCoat]),
        (WoodTrouble::Blotching, _) => ("wood.blotching", &[]),
        (WoodTrouble::Bleeding, _) => ("wood.bleeding", &[]),
    }
}
