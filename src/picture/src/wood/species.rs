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
    /// Width of a year.
    pub ring: f32,
    /// Distance of the face from the middle of the log: small on a flat-sawn board.
    pub depth: f32,
    /// How far the middle of the log runs out of the face for each mm along it.
    pub taper: f32,
    /// Distance of the line nearest to the middle of the log from the edge of the panel: far outside on a quartered one.
    pub pith: f32,
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
    /// Short dashes across the growth: ray ends, gum.
    #[serde(default)]
    pub flecks: Vec<Flecks>,
    /// Broad rays on a quartered face.
    #[serde(default)]
    pub rays: Option<Rays>,
    /// Darker clouds or streaks.
    #[serde(default)]
    pub clouds: Option<Clouds>,
    /// Strength of the ribbon that interlocked grain makes.
    #[serde(default)]
    pub ribbon: f32,
    /// Strength of the curl that waved grain makes.
    #[serde(default)]
    pub curl: f32,
}

/// How a year is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
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

/// Short dashes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Flecks {
    /// On a square centimetre.
    pub count: f32,
    /// Median length.
    pub length: f32,
    /// Width.
    pub width: f32,
    /// Colour.
    pub colour: Screen,
    /// Share of the wood below that they cover.
    pub cover: f32,
}

/// Broad rays, cut along: ribbons across the grain.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rays {
    /// On a square centimetre.
    pub count: f32,
    /// Median length.
    pub length: f32,
    /// Width.
    pub width: f32,
    /// Colour.
    pub colour: Screen,
}

/// Darker clouds or lines that follow the growth loosely.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clouds {
    /// Colour.
    pub colour: Screen,
    /// Share of the face that they take, about 0 to 1.
    pub share: f32,
    /// Whether they are thin dark lines.
    #[serde(default)]
    pub lines: bool,
}
