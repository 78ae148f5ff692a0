//! Rags, dust, filters and scrapings: where each goes, at once.

use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// What a rag, a filter or a scraping carries.
    Residue {
        /// Oil stain.
        OilStain = "oil-stain-rag",
        /// Oil-based paste filler.
        OilFiller = "oil-filler-rag",
        /// Oil or oil varnish finish.
        OilFinish = "oil-finish-rag",
        /// Naphtha or spirits from wiping the work.
        SolventWipe = "naphtha-cloth",
        /// Lacquer thinner from cleaning the gun.
        ThinnerWipe = "thinner-cloth",
        /// Nitrocellulose sanding dust or scrapings.
        NitroDust = "nitro-dust",
        /// Loaded filters from spraying nitrocellulose.
        NitroFilter = "nitro-filter",
    }
    /// Where a residue goes.
    Place {
        /// Into the closed metal can at once, the can emptied daily.
        MetalCan = "closed-metal-can",
        /// Kept wet in its own closed container, apart from every other residue, out daily.
        WetApart = "wet-apart",
    }
}

/// Where a rag, filter or scraping goes, at once and not at the end of the day.
///
/// Oil-wet rags heat up by themselves: closed metal can, emptied daily (29 CFR 1910.107(g)(3)). A flammable wipe goes
/// the same way. Nitrocellulose dust and filters are kept wet and apart from all other residues (1910.107(g)(3), (g)(6)
/// and a nitrocellulose safety page): next to something that heats up by itself they burn fastest.
#[must_use]
pub fn place_for(residue: Residue) -> Ruling<Place> {
    match residue {
        Residue::OilStain | Residue::OilFiller | Residue::OilFinish => {
            Ruling::by("hazard.oily-rag", Place::MetalCan)
        }
        Residue::SolventWipe | Residue::ThinnerWipe => Ruling::by("hazard.flammable-wipe", Place::MetalCan),
        Residue::NitroDust | Residue::NitroFilter => Ruling::by("hazard.nitro-residue", Place::WetApart),
    }
}
