//! What is to be finished, as far as order and timing ask.

use super::plan::Told;
use crate::quantity::MoistureContent;
use crate::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};
use crate::rules::wood::{FillerNeed, PoreSize, Wood, WoodTrouble};
use serde::{Deserialize, Serialize};

/// One part of the work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// Size of its pores.
    pub pores: PoreSize,
    /// Filler for a level gloss.
    pub filler: FillerNeed,
    /// Trouble that its wood brings.
    pub trouble: Vec<WoodTrouble>,
    /// Whether its figure is to be brought out: curl, bird's eye, quilt.
    pub figured: bool,
    /// What the meter reads; `Kept` when it lies in the sheet's band.
    pub moisture: Told<MoistureContent>,
}

impl Part {
    /// A part of that wood, its moisture in the band.
    #[must_use]
    pub fn of(wood: &Wood) -> Self {
        Self {
            pores: wood.pores,
            filler: wood.filler,
            trouble: wood.trouble.clone(),
            figured: false,
            moisture: Told::Kept,
        }
    }

    /// Whether its wood brings that trouble.
    #[must_use]
    pub fn has(&self, trouble: WoodTrouble) -> bool {
        self.trouble.contains(&trouble)
    }

    /// Whether oil or resin in the wood works against the coat.
    #[must_use]
    pub fn is_oily(&self) -> bool {
        self.has(WoodTrouble::Oily) || self.has(WoodTrouble::Resinous)
    }
}

/// A job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// Its parts. Steps name them by place.
    pub parts: Vec<Part>,
    /// Look ordered.
    pub look: Look,
    /// Class of work.
    pub class: WorkClass,
    /// Where the colour goes.
    pub colour: ColourPlan,
    /// Whether the edge is shaded.
    pub shaded: bool,
    /// Binding.
    pub binding: Binding,
    /// Kind of filler used.
    pub filler: Filler,
    /// What the film is made of.
    pub coating: Coating,
    /// Whether coats melt into each other: lacquer and shellac do, cured films do not.
    pub melts: bool,
}

impl Job {
    /// Whether coats of that material melt into each other.
    #[must_use]
    pub const fn melting(coating: Coating) -> bool {
        matches!(coating, Coating::Nitrocellulose | Coating::Shellac)
    }

    /// Whether colour lies in the film.
    #[must_use]
    pub const fn colours_film(&self) -> bool {
        matches!(self.colour, ColourPlan::Solid | ColourPlan::Transparent) || self.shaded
    }

    /// Whether there is binding.
    #[must_use]
    pub fn is_bound(&self) -> bool {
        self.binding != Binding::None
    }

    /// Whether a part wants pore filler: open pores under a level gloss (FPL-GTR-190 ch. 16, Fillers).
    #[must_use]
    pub fn wants_filler(&self, part: &Part) -> bool {
        self.look == Look::LevelGloss && part.filler == FillerNeed::Yes
    }
}
