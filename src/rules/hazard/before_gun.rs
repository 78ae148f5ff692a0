//! What comes before the gun: breathing protection and filters.

use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// The filter gauge.
    Gauge {
        /// Under the mark.
        UnderMark = "under-mark",
        /// Past the mark.
        PastMark = "past-mark",
    }
    /// What the sprayer wears.
    Mask {
        /// Nothing.
        None = "no-mask",
        /// A dust mask.
        Dust = "dust-mask",
        /// A respirator without fit test or medical clearance.
        Unfitted = "borrowed-respirator",
        /// The programme's respirator, fit-tested, by a medically cleared wearer.
        Fitted = "fitted-respirator",
    }
    /// How the cartridges stand.
    Cartridge {
        /// Within the change plan.
        InPlan = "within-plan",
        /// Past the change plan, no smell yet.
        Overdue = "past-plan",
        /// Solvent is smelt through the mask.
        Smell = "smell-through",
    }
    /// What comes before the gun.
    GunMove {
        /// Spraying may begin.
        Start = "start",
        /// Breathing protection first.
        MaskFirst = "mask-first",
        /// Filters first.
        FiltersFirst = "filters-first",
        /// Both first.
        BothFirst = "mask-and-filters",
    }
}

/// What comes before the gun. Good draw never stands in for breathing protection: face velocity was set against fire
/// (OSHA STD 01-05-010), so it is not asked for here. A respirator counts only fit-tested, by a cleared wearer, with
/// cartridges within the change plan; smell is no change plan (29 CFR 1910.134(d)(3)(iii)(B)).
#[must_use]
pub fn before_gun(gauge: Gauge, mask: Mask, cartridge: Cartridge) -> Ruling<GunMove> {
    let breathing = mask == Mask::Fitted && cartridge == Cartridge::InPlan;
    let answer = match (breathing, gauge) {
        (true, Gauge::UnderMark) => GunMove::Start,
        (true, Gauge::PastMark) => GunMove::FiltersFirst,
        (false, Gauge::UnderMark) => GunMove::MaskFirst,
        (false, Gauge::PastMark) => GunMove::BothFirst,
    };
    Ruling::by("hazard.draw-is-no-respirator", answer)
        .and("hazard.respirator-programme")
        .and("hazard.filter-gauge")
}
