//! Colour as CIELAB: lightness and two axes.

use crate::quantity::{Fraction, OutOfRange, within};

/// A measured colour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lab {
    lightness: f64,
    red_green: f64,
    yellow_blue: f64,
}

impl Lab {
    /// Greatest lightness: a perfect white.
    pub const LIGHTEST: f64 = 100.0;
    /// Greatest distance from grey on either axis: beyond every colour of a surface.
    pub const AXIS: f64 = 200.0;

    /// A colour from L* (0 to 100), a* and b* (-200 to 200).
    ///
    /// # Errors
    /// [`OutOfRange`] naming the value that lies outside.
    pub fn new(lightness: f64, red_green: f64, yellow_blue: f64) -> Result<Self, OutOfRange> {
        Ok(Self {
            lightness: within("lightness", "", 0.0, Self::LIGHTEST, lightness)?,
            red_green: within("a*", "", -Self::AXIS, Self::AXIS, red_green)?,
            yellow_blue: within("b*", "", -Self::AXIS, Self::AXIS, yellow_blue)?,
        })
    }

    /// L*, 0 to 100.
    #[must_use]
    pub const fn l(self) -> f64 {
        self.lightness
    }

    /// a*: red against green.
    #[must_use]
    pub const fn a(self) -> f64 {
        self.red_green
    }

    /// b*: yellow against blue.
    #[must_use]
    pub const fn b(self) -> f64 {
        self.yellow_blue
    }
}

/// Lightness L* of a grey that reflects a share of the light (Y over that of white): 116 f(Y) - 16, f the cube root and
/// near black a straight line (ISO/CIE 11664-4).
#[must_use]
pub fn lightness(reflectance: Fraction) -> f64 {
    /// Share under which the straight line holds: (6/29)³.
    const DARK: f64 = 216.0 / 24_389.0;
    /// Slope of the straight line: (29/3)³.
    const SLOPE: f64 = 24_389.0 / 27.0;
    const SCALE: f64 = 116.0;
    const OFFSET: f64 = 16.0;
    let share = reflectance.get();
    if share > DARK { SCALE * libm::cbrt(share) - OFFSET } else { SLOPE * share }
}
