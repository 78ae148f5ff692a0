//! What the eye and the glossmeter see of a film: gloss, transparent and opaque colour, differences of colour.
//!
//! Reflectances are shares, 0 to 1; lightness and the two colour axes are those of CIELAB.

pub mod difference;
pub mod gloss;
pub mod lab;
pub mod layer;
pub mod opaque;
pub mod roughness;
pub mod surface;
