//! A cut through the film of a part, as layers with a thickness: data to be drawn, not pixels.

use super::blank::PartWood;
use super::look::{Paint, PartLook};
use super::states::Filled;
use crate::dye::{passed, stained};
use crate::light::{Colour, LIGHT, screen};
use crate::named::named;
use crate::wood::Screen;

/// How deep a stain goes, micrometres (by eye).
const STAIN_UM: f32 = 60.0;
/// A plane opens a vessel by half on the mean; micrometres in a mm.
const OPENED: f32 = 0.5;
const MICRO: f32 = 1.0e3;
/// Films without dye as they are drawn on paper: a little yellow, and clear.
const SEAL: Screen = [236, 220, 176];
const CLEAR: Screen = [250, 248, 241];
/// White below a film of colour.
const WHITE: Colour = [0.92, 0.91, 0.88];

named! {
    /// What a layer of a cut is.
    StratumKind {
        /// Wood without anything in it, below all.
        Wood = "wood",
        /// Wood with stain in it.
        Stain = "stain",
        /// Filler in the pores, beside the wood and not over it.
        Filler = "filler",
        /// Washcoat and seal coats.
        Seal = "seal",
        /// Colour in the film.
        Colour = "colour",
        /// Clear coats.
        Clear = "clear",
    }
}

/// A layer of a cut.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stratum {
    /// What it is.
    pub kind: StratumKind,
    /// Its thickness, micrometres; how deep it goes where it lies in the wood. `None` of the wood itself, which goes on.
    pub um: Option<f32>,
    /// Its colour on the screen.
    pub colour: Screen,
}

impl PartLook {
    /// The layers of its film from the wood up, without those that are not there.
    #[must_use]
    pub fn strata(&self, wood: &PartWood) -> Vec<Stratum> {
        let base = screen(wood.species.base);
        let widest = wood.species.pores.iter().map(|pores| pores.width).fold(0.0, f32::max);
        let stain = self.stain.map(|stain| {
            (StratumKind::Stain, STAIN_UM, shown(stained(&LIGHT, base, stain.dye.in_wood(), stain.build)))
        });
        let filler = self.filler.filter(|filler| widest > 0.0 || filler.state != Filled::Wiped);
        let filler = filler.map(|filler| (StratumKind::Filler, OPENED * widest * MICRO, filler.colour));
        let colour = self.colour.map(|colour| {
            let seen = match colour.paint {
                Paint::Solid(paint) => paint,
                Paint::Clear(dye) => {
                    let passed = passed(&LIGHT, dye.in_film(), colour.build);
                    shown([0, 1, 2].map(|part: usize| {
                        let of = |colour: Colour| colour.get(part).copied().unwrap_or(0.0);
                        of(WHITE) * of(passed)
                    }))
                }
            };
            (StratumKind::Colour, colour.um, seen)
        });
        let seal = (StratumKind::Seal, self.seal_um, SEAL);
        let clear = (StratumKind::Clear, self.clear_um, CLEAR);
        let laid = [stain, filler, Some(seal), colour, Some(clear)];
        let there = laid.into_iter().flatten().filter(|(_, um, _)| *um > 0.0);
        let wood = Stratum { kind: StratumKind::Wood, um: None, colour: wood.species.base };
        core::iter::once(wood)
            .chain(there.map(|(kind, um, colour)| Stratum { kind, um: Some(um), colour }))
            .collect()
    }
}

fn shown(colour: Colour) -> Screen {
    colour.map(|part| LIGHT.byte(part.max(0.0)))
}
