//! What a task puts into the air, and so what a respirator has to stop.

use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// A task of the finish room.
    AirTask {
        /// Dry sanding of wood or of a dry film.
        DrySanding = "task-dry-sanding",
        /// Spraying lacquer or shellac in solvent.
        SprayLacquer = "task-spray-lacquer",
        /// Pouring and thinning, nothing atomised.
        PourThinner = "task-pour-thinner",
        /// Wiping down with solvent.
        WipeSolvent = "task-wipe-solvent",
        /// Spraying a two-part finish with isocyanate hardener.
        SprayIsocyanate = "task-spray-isocyanate",
        /// Going into a tank or pit in which there may be too little oxygen.
        LowOxygen = "task-low-oxygen",
    }
    /// What the respirator has to stop.
    Protection {
        /// Particles.
        Particles = "stops-particles",
        /// Vapour.
        Vapour = "stops-vapour",
        /// Particles and vapour together.
        Both = "stops-both",
        /// Neither filter nor cartridge will do: supplied air under a programme, or the task is refused.
        SuppliedAir = "supplied-air-or-refuse",
    }
}

impl Protection {
    /// Whether it stops all that another stops: supplied air stops everything.
    #[must_use]
    pub fn covers(self, other: Self) -> bool {
        self == other || self == Self::SuppliedAir || (self == Self::Both && other != Self::SuppliedAir)
    }
}

/// What a respirator has to stop at a task, by what goes into the air. The programme selects the respirator; the wearer
/// never does. Mist and vapour come together: a particle filter stops no vapour, a vapour cartridge no mist. A filter
/// makes no oxygen, and what is listed for work with the hardener HDI is supplied air or self-contained (NIOSH Pocket Guide).
#[must_use]
pub fn protection_for(task: AirTask) -> Ruling<Protection> {
    match task {
        AirTask::DrySanding => Ruling::by("hazard.filter-by-what-is-breathed", Protection::Particles),
        AirTask::PourThinner | AirTask::WipeSolvent => {
            Ruling::by("hazard.filter-by-what-is-breathed", Protection::Vapour)
        }
        AirTask::SprayLacquer => Ruling::by("hazard.filter-by-what-is-breathed", Protection::Both),
        AirTask::SprayIsocyanate | AirTask::LowOxygen => {
            Ruling::by("hazard.supplied-air", Protection::SuppliedAir)
        }
    }
}
