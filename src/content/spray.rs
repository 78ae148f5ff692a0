//! Spray tasks: a face, the gun and its mix, and what is to lie on it in the end.

use crate::quantity::{Absorbance, Fraction, LiquidFlow, Millimetres, Seconds};
use crate::rules::film::Facing;
use crate::rules::shading::Pass;
use crate::rules::spray::distance::Gun;
use crate::rules::term::Stage;
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// What is sprayed: which wet film of the shop sheet counts.
    Coat {
        /// Sanding sealer or wash: goes by the sheet's clear coat.
        Sealer = "sealer-coat",
        /// Colour.
        Colour = "colour-coat",
        /// Clear.
        Clear = "clear-coat",
    }
}

/// A spray task, one file each under `content/sprays/`. Text: `spray.task.<slug>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SprayTask {
    /// Slug of the task.
    pub slug: String,
    /// How hard it is: 1 to [`SprayTask::HARDEST`].
    pub difficulty: u32,
    /// Where it belongs on the step board.
    pub stage: Stage,
    /// Slug of its shop sheet.
    pub sheet: String,
    /// What is sprayed.
    pub coat: Coat,
    /// By which distances of the sheet the gun is held.
    pub pass: Pass,
    /// How the face stands.
    pub facing: Facing,
    /// The gun.
    pub gun: SprayGun,
    /// Time in which the wet film falls to 1/e of itself.
    pub flash_s: Seconds,
    /// An even film, where that is asked for.
    #[serde(default)]
    pub film: Option<EvenFilm>,
    /// A shaded edge, where that is asked for.
    #[serde(default)]
    pub shade: Option<ShadedEdge>,
    /// That the work is a repaired place of a larger face, where it is one.
    #[serde(default)]
    pub repair: Option<RepairedPlace>,
    /// The face, or the place of it that is repaired.
    pub work: WorkOutline,
    /// What passes.
    pub limits: SprayLimits,
}

/// How the gun is set.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SprayGun {
    /// Kind of gun.
    pub kind: Gun,
    /// Fluid with the trigger fully pulled.
    pub flow_ml_min: LiquidFlow,
    /// Full width of the spot along the fan at `at_mm`.
    pub fan_mm: Millimetres,
    /// The same with the knob of the fan fully opened, where the task does not open it so far. Closed it makes a round spot.
    #[serde(default)]
    pub widest_mm: Option<Millimetres>,
    /// Full width of the spot across the fan at `at_mm`.
    pub thin_mm: Millimetres,
    /// Distance at which the spot is so wide; it grows with the distance.
    pub at_mm: Millimetres,
    /// Share that lands from near (transfer efficiency).
    pub landing: Fraction,
    /// Time in which the flow follows the trigger from nothing to all.
    pub opens_s: Seconds,
}

/// An even film in layers; each is to lie between two shares of the sheet's wet coat.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct EvenFilm {
    /// Layers, each over the whole face.
    pub layers: u32,
    /// Whether each layer goes across the one before.
    pub crossing: bool,
    /// Thinnest layer, in wet coats of the sheet.
    pub from: f64,
    /// Thickest layer, in wet coats of the sheet.
    pub to: f64,
}

/// A transparent colour that is deep at the edge and fades to none.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShadedEdge {
    /// Width over which the colour falls.
    pub width_mm: Millimetres,
    /// Coats of falling width that the fade is made of.
    pub coats: u32,
    /// Wet coats of the sheet that lie at the edge in the end.
    pub depth: f64,
    /// Light that the bare wood gives back.
    pub wood_reflectance: Fraction,
    /// Absorbance of a wet coat of the sheet, once through.
    pub coat_absorbance: Absorbance,
}

/// A repaired place of a face whose film around it is sound.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RepairedPlace {
    /// How far around the place the new film may fade out.
    pub fades_mm: Millimetres,
    /// Greatest share of what lands that may lie farther out.
    pub past: Fraction,
}

/// The outline of a face: an outline of our own, in mm to the right of its axis and downwards from its top.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WorkOutline {
    /// Points along it, one after another.
    pub points_mm: Vec<[f64; 2]>,
    /// Whether the points are one side, to be mirrored at the axis.
    #[serde(default)]
    pub mirrored: bool,
    /// Whether it runs smoothly through its points; else straight from one to the next.
    #[serde(default)]
    pub curved: bool,
}

/// What passes. Each limit is common practice, no source, unless the file names one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SprayLimits {
    /// Least share of an even film that lies within its window.
    pub in_window: Fraction,
    /// Greatest share of what lies on the work that landed dry.
    pub dry: Fraction,
}

impl SprayTask {
    /// The hardest there is.
    pub const HARDEST: u32 = 3;
    /// Most layers of an even film, and coats of a fade.
    pub const LAYERS_MOST: u32 = 6;
    /// Most wet coats that a layer or an edge may ask for.
    pub const COATS_MOST: f64 = 8.0;
    /// Points of an outline, fewest and most.
    pub const POINTS: (usize, usize) = (2, 200);
    /// Farthest that an outline goes from its origin, mm: larger than any instrument's face.
    pub const REACH_MM: f64 = 1_000.0;
    /// Narrowest and widest fan of a gun, over that of the task: wide enough for every gun.
    pub const FANS: (f64, f64) = (0.05, 20.0);
    /// Least size of a spot and nearest distance of its gun, mm.
    pub const SPOT_LEAST_MM: f64 = 5.0;
}
