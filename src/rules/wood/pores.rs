//! A species as the finisher meets it: pores, filler, trouble, movement.

use super::Movement;
use crate::quantity::{Measure, Unit};
use crate::rules::term::{Look, Provenance};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// How vessels are arranged in the growth ring (IAWA features 3, 4, 5).
    Porosity {
        /// Ring-porous.
        Ring = "ring",
        /// Semi-ring-porous.
        SemiRing = "semi-ring",
        /// Diffuse-porous.
        Diffuse = "diffuse",
        /// A conifer: no vessels.
        None = "none",
    }
    /// Size of the pores to the finisher.
    PoreSize {
        /// Open-grained: the pores show as hollows.
        Large = "large",
        /// Close-grained.
        Small = "small",
        /// No pores.
        None = "none",
    }
    /// Whether a level gloss asks for pore filler.
    FillerNeed {
        /// Fill.
        Yes = "yes",
        /// No filler.
        No = "no",
        /// Filling with filler and filling with finish are both accepted.
        Optional = "optional",
    }
    /// Arrangement and size of the pores together: two questions, one answer.
    PoreClass {
        /// Ring-porous, large.
        RingLarge = "ring-large",
        /// Semi-ring-porous, large.
        SemiRingLarge = "semi-ring-large",
        /// Diffuse-porous, large.
        DiffuseLarge = "diffuse-large",
        /// Ring-porous, small.
        RingSmall = "ring-small",
        /// Semi-ring-porous, small.
        SemiRingSmall = "semi-ring-small",
        /// Diffuse-porous, small.
        DiffuseSmall = "diffuse-small",
        /// A conifer.
        NoPores = "no-pores",
    }
    /// How a board was cut.
    Cut {
        /// Flat-sawn: width moves by the tangential coefficient.
        Flat = "flat",
        /// Quarter-sawn: width moves by the radial coefficient.
        Quarter = "quarter",
    }
    /// Trouble that a species brings to the finish room.
    WoodTrouble {
        /// Oily extractives: oil-cured coats stay soft, bond needs a clean and a barrier coat.
        Oily = "oily",
        /// Pitch that bleeds unless it was set.
        Resinous = "resinous",
        /// Takes stain unevenly.
        Blotching = "blotching",
        /// Coloured extractives creep into neighbours.
        Bleeding = "bleeding",
    }
}

/// A species as the finisher meets it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wood {
    /// Slug of the wood.
    pub slug: String,
    /// Common name in English; other languages use the text `wood.<slug>`.
    pub name: String,
    /// Botanical name.
    pub botanical: String,
    /// Whether it is a hardwood by anatomy.
    pub hardwood: bool,
    /// Vessel arrangement.
    pub porosity: Porosity,
    /// Arrangement that another source gives.
    #[serde(default)]
    pub porosity_alt: Option<Porosity>,
    /// Pore size.
    pub pores: PoreSize,
    /// Mean vessel diameter in micrometres, where one was found.
    #[serde(default)]
    pub vessel_um: Option<f64>,
    /// Filler for a level gloss.
    pub filler: FillerNeed,
    /// Where the filler answer comes from.
    pub filler_provenance: Provenance,
    /// Trouble it brings.
    #[serde(default)]
    pub trouble: Vec<WoodTrouble>,
    /// Radial and tangential coefficient of dimensional change per per cent of moisture, where published.
    #[serde(default)]
    pub movement: Option<Movement>,
    /// Codes of the sources.
    pub source: String,
}

/// Whether a wood wants pore filler for the look ordered.
///
/// Filler is only ever for a level gloss: an open-pore look leaves the pores open (variant sv-10 of the published order
/// errors). Large-pored woods are filled, small-pored ones and conifers are not (FPL-GTR-190 ch. 16, Fillers); the
/// answer of each wood and its source stand in `content/woods.toml`.
#[must_use]
pub fn filler(wood: &Wood, look: Look) -> Ruling<FillerNeed> {
    let ruling = match look {
        Look::OpenPore => return Ruling::by("wood.open-pore-look", FillerNeed::No),
        Look::LevelGloss if wood.filler == FillerNeed::No => {
            Ruling::by("wood.close-grain-no-filler", FillerNeed::No)
        }
        Look::LevelGloss => Ruling::by("wood.open-grain-filler", wood.filler),
    };
    with_vessels(ruling, wood)
}

/// Adds the mean width of a wood's vessels, where one is published.
fn with_vessels<T>(ruling: Ruling<T>, wood: &Wood) -> Ruling<T> {
    match wood.vessel_um {
        Some(mean) => ruling.step("vessel", "published mean", Measure::new(mean, Unit::Micrometre, 0)),
        None => ruling,
    }
}

/// Arrangement and size of a wood's pores (IAWA features 3 to 5 and 40 to 43; source of each wood in
/// `content/woods.toml`).
///
/// # Errors
/// [`CannotJudge`] naming the arrangement where the sources split on it.
pub fn pore_class(wood: &Wood) -> Judged<PoreClass> {
    if wood.porosity_alt.is_some() {
        return Err(CannotJudge::without("porosity"));
    }
    let class = match (wood.porosity, wood.pores) {
        (Porosity::None, _) | (_, PoreSize::None) => PoreClass::NoPores,
        (Porosity::Ring, PoreSize::Large) => PoreClass::RingLarge,
        (Porosity::SemiRing, PoreSize::Large) => PoreClass::SemiRingLarge,
        (Porosity::Diffuse, PoreSize::Large) => PoreClass::DiffuseLarge,
        (Porosity::Ring, PoreSize::Small) => PoreClass::RingSmall,
        (Porosity::SemiRing, PoreSize::Small) => PoreClass::SemiRingSmall,
        (Porosity::Diffuse, PoreSize::Small) => PoreClass::DiffuseSmall,
    };
    Ok(with_vessels(Ruling::by("wood.pores", class), wood))
}
