//! What is to be finished, as far as order and timing ask.

use super::plan::Told;
use crate::quantity::MoistureContent;
use crate::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};
use crate::rules::wood::{FillerNeed, PoreSize, Wood, WoodTrouble};
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// What lies on a part before the work begins, or is to come over it, and asks for something before the coat. Text:
    /// `walk.condition.<slug>`.
    Condition {
        /// Silicone of a polish: craters in the next coat unless it is washed off (`faults.csv`, fish-eye).
        Silicone = "silicone-on-it",
        /// An old oil finish: a coat lets go of it unless it is washed off (`faults.csv`, peeling, first cause).
        OldOil = "old-oil-on-it",
        /// White or very light colour comes over it: the colour of a bleeding wood rises through it unless a barrier lies
        /// between (`faults.csv`, extractive-bleed).
        LightColour = "light-colour-over-it",
    }
}

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
    /// What lies on it or is to come over it.
    #[serde(default)]
    pub conditions: Vec<Condition>,
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
            conditions: Vec::new(),
        }
    }

    /// Whether its wood brings that trouble.
    #[must_use]
    pub fn has(&self, trouble: WoodTrouble) -> bool {
        self.trouble.contains(&trouble)
    }

    /// Whether that is so of it.
    #[must_use]
    pub fn lies(&self, condition: Condition) -> bool {
        self.conditions.contains(&condition)
    }

    /// Whether it is wiped with a fast solvent before its first coat.
    #[must_use]
    pub fn wants_wipe(&self) -> bool {
        self.is_oily() || self.lies(Condition::Silicone) || self.lies(Condition::OldOil)
    }

    /// Whether light colour over it wants a barrier below.
    #[must_use]
    pub fn wants_barrier(&self) -> bool {
        self.lies(Condition::LightColour) && self.has(WoodTrouble::Bleeding)
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
    /// Whether the dye that is ordered is carried in water: it raises the grain.
    #[serde(default)]
    pub water_dye: bool,
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
