//! What a shaded edge is to look like: the film by the distance from the edge, and its colour by Beer-Lambert over the wood
//! ([`crate::rules::optics::layer`]).

use crate::content::ShadedEdge;
use crate::quantity::Millimetres;
use crate::rules::optics::layer::under;
use crate::rules::spray::fade::{Fade, depth};
use crate::spraying::setup::Setup;

/// Lightness of a film of transparent colour over wood, 0 to 100: film in µm wet as laid.
#[must_use]
pub fn lightness(film: f64, setup: &Setup, shade: ShadedEdge) -> f64 {
    under(shade.wood_reflectance, shade.coat_absorbance.get() * film / setup.coat()).lightness
}

/// Film that is wanted at a distance from the edge, µm wet as laid.
#[must_use]
pub fn wanted(from_edge: f64, setup: &Setup, shade: ShadedEdge) -> f64 {
    let fan = 2.0 * setup.held(setup.middle_distance(), 0.0).half_fan;
    let fade = Fade {
        width: shade.width_mm,
        coats: shade.coats,
        fan: Millimetres::saturating(fan),
        section: setup.section(),
    };
    shade.depth * setup.coat() * depth(fade, Millimetres::saturating(from_edge)).get()
}

/// How far from the edge the target reaches, mm: the last coat ends half a fan past its line.
#[must_use]
pub fn reach(setup: &Setup, shade: ShadedEdge) -> f64 {
    let soft = setup.held(setup.middle_distance(), 0.0).half_fan;
    shade.width_mm.get() * (1.0 - 1.0 / f64::from(shade.coats.max(1))) + soft
}
