//! What a wood looks like: the geometry of its rings, its colours, its pores, rays and figure.

use serde::{Deserialize, Serialize};

/// A colour of the screen, sRGB bytes.
pub type Screen = [u8; 3];

/// The look of one wood. Lengths in mm, counts for each square centimetre of face.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Species {
    /// Colour of the wood between its marks.
    pub base: Screen,
    /// Colour of the wood that grows first in the year.
    pub early: Screen,
    /// Colour of the line at the end of the year, where there is one.
    #[serde(default)]
    pub late: Option<Screen>,
    /// Colour of the pores, as they look in raw wood.
    pub pore: Screen,
    /// How the year is built.
    pub growth: Growth,
    /// The face that boards of it usually show.
    pub face: Face,
    /// Width of a year.
    pub ring: f32,
    /// How fat and lean years differ, 0 to 1.
    pub uneven: f32,
    /// Distance of a flat-sawn face from the middle of the log.
    pub depth: f32,
    /// How far the middle of the log runs out of a flat-sawn face for each mm along it.
    pub taper: f32,
    /// Share of the year that is earlywood.
    pub early_share: f32,
    /// How strongly earlywood and latewood differ, 0 to 1.
    pub contrast: f32,
    /// Strength of streaks along the grain.
    pub streak: f32,
    /// Strength of single fibres.
    pub fine: f32,
    /// How far the log is from straight: 1 as logs grow, less for wood that is split straight.
    pub wander: f32,
    /// Kinds of pores, the large ones first.
    #[serde(default)]
    pub pores: Vec<Pores>,
    /// Whether pores lie visibly under a film.
    #[serde(default)]
    pub telegraphs: bool,
    /// Rays that are seen without a glass.
    #[serde(default)]
    pub rays: Option<Rays>,
    /// Bands of another colour.
    #[serde(default)]
    pub bands: Vec<Bands>,
    /// Short dashes of gum.
    #[serde(default)]
    pub gum: Option<Gum>,
    /// Strength of the ribbon that interlocked grain makes.
    #[serde(default)]
    pub ribbon: f32,
    /// Strength of the curl that waved grain makes.
    #[serde(default)]
    pub curl: f32,
    /// Strength of the cross silk that fine rays make on a quartered face.
    #[serde(default)]
    pub silk: f32,
}

impl Species {
    /// A pale, even wood without a mark of its own: what is seen on it is not the wood.
    #[must_use]
    pub const fn plain() -> Self {
        const PALE: Screen = [222, 190, 150];
        const GRAIN: f32 = 0.02;
        Self {
            base: PALE,
            early: PALE,
            late: None,
            pore: PALE,
            growth: Growth::Diffuse,
            face: Face::Quartered,
            ring: 5.0,
            uneven: 0.3,
            depth: 60.0,
            taper: 0.0,
            early_share: 0.5,
            contrast: 0.0,
            streak: GRAIN,
            fine: 0.5 * GRAIN,
            wander: 1.0,
            pores: Vec::new(),
            telegraphs: false,
            rays: None,
            bands: Vec::new(),
            gum: None,
            ribbon: 0.0,
            curl: 0.0,
            silk: 0.0,
        }
    }
}

/// How a year is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Growth {
    /// Large pores stand in the first wood of the year.
    Ring,
    /// Pores grow smaller through the year.
    SemiRing,
    /// Pores are spread evenly.
    Diffuse,
    /// No pores: the wood darkens through the year to a line.
    Conifer,
}

/// How a face lies in the log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Face {
    /// Along a tangent of the rings: arches.
    Flat,
    /// About half way between the two: straight lines.
    Rift,
    /// Square to the rings: straight close lines, and the rays lengthwise.
    Quartered,
    /// Across the log: rings as arcs, pores as holes.
    End,
}

/// Pores as they are cut open: dashes along the grain.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pores {
    /// Dashes on a square centimetre.
    pub count: f32,
    /// Where they stand.
    pub stand: Growth,
    /// Median length.
    pub length: f32,
    /// Spread of the length, the standard deviation of its logarithm.
    pub length_spread: f32,
    /// Mean diameter of the vessel.
    pub width: f32,
    /// Its standard deviation.
    pub width_spread: f32,
}

/// Rays: sheets that stand on the rings, high along the log, thin along the ring.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rays {
    /// From one to the next along the ring.
    pub spacing: f32,
    /// Thickness.
    pub width: f32,
    /// Height along the grain.
    pub height: f32,
    /// Colour where they are cut lengthwise.
    pub colour: Screen,
    /// Colour where they are cut across.
    pub ends: Screen,
    /// Share of the wood below that they cover.
    pub cover: f32,
}

/// Bands of another colour that follow the growth loosely.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bands {
    /// Colour.
    pub colour: Screen,
    /// Places for a band in one year.
    pub count: f32,
    /// Share of the places that have one.
    pub share: f32,
    /// Width of a band against the distance of the places.
    pub width: f32,
    /// Share of its width in which a band comes and goes: small for a line, 1 for a cloud.
    pub soft: f32,
    /// Share of the wood below that it covers.
    pub cover: f32,
}

/// Short dashes of gum.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gum {
    /// On a square centimetre.
    pub count: f32,
    /// Median length.
    pub length: f32,
    /// Width.
    pub width: f32,
    /// Colour.
    pub colour: Screen,
}
