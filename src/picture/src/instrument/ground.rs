//! The wood of a pixel with what is in it: as it was prepared, stained, its pores open or filled.

use super::blank::{Blank, Cell, of};
use super::dyes::{HAZE, WEATHERED};
use super::look::PartLook;
use super::part::Grain;
use super::states::{Filled, Prepared};
use crate::dye::{passed, stained};
use crate::light::{Colour, Light, screen};
use crate::noise::{cloud, soft};
use crate::panel::DRY_PORE;
use crate::soak;
use crate::wood::{blend, layer};

/// Rough wood: share of the grey that air and saw left, the pitch of the marks across it and how far they bow, mm, and how
/// deep they are.
const GREY: f32 = 0.42;
const PITCH: f32 = 5.0;
const REGULAR: f32 = 90.0;
const BOWED: f32 = 0.0016;
const MARKS: f32 = 0.11;
/// Damped wood: share that is wet, and raised fibres: how bright, how long and how wide, mm.
const WET: f32 = 0.85;
const RAISED: f32 = 0.09;
const FIBRE: (f32, f32) = (7.0, 1.6);
/// Dye gathers in open pores: so many times as much as in the wood.
const PORES_TAKE: f32 = 2.2;
/// Filler that was not wiped: share of the flats under it, how that varies, and the size of its smears across the grain, mm.
const PASTE: (f32, f32) = (0.80, 0.10);
const SMEAR: (f32, f32) = (26.0, 5.0);
/// Dried haze: the same, and how far it is paler than the filler.
const HAZED: (f32, f32) = (0.36, 0.13);
const HAZE_SIZE: f32 = 34.0;
const PALER: f32 = 0.62;
/// How much smears show in a haze.
const SMEARED: f32 = 0.3;

/// The wood of a part in a look.
pub(super) struct Ground<'a> {
    light: &'static Light,
    blank: &'a Blank,
    look: &'a PartLook,
    pore: Colour,
    filler: Option<(Colour, Colour, Filled)>,
    weathered: Colour,
    seed: u32,
}

impl<'a> Ground<'a> {
    pub(super) fn new(light: &'static Light, blank: &'a Blank, look: &'a PartLook) -> Self {
        let dried = screen(HAZE);
        let pore = screen(blank.grown.species.pore);
        Self {
            light,
            blank,
            look,
            pore: look.stain.map_or(pore, |stain| {
                let dye = passed(light, stain.dye.in_film(), PORES_TAKE * stain.build);
                [pore[0] * dye[0], pore[1] * dye[1], pore[2] * dye[2]]
            }),
            filler: look.filler.map(|filler| {
                let colour = screen(filler.colour);
                (colour, blend(colour, dried, PALER), filler.state)
            }),
            weathered: screen(WEATHERED),
            seed: layer(blank.grown.seed, 900),
        }
    }

    /// Along the grain and across it, mm.
    fn lie(&self, cell: &Cell) -> (f32, f32) {
        match self.blank.part.grain {
            Grain::Up | Grain::Matched { .. } => (cell.at.1, cell.at.0),
            Grain::Across => cell.at,
        }
    }

    /// What the wood of a pixel sends back where a share of it is wet by a film.
    pub(super) fn seen(&self, cell: &Cell, soaked: f32) -> Colour {
        let wood = &self.blank.wood;
        let [red, green, blue] = &wood.colour;
        let raw = [of(red, cell), of(green, cell), of(blue, cell)];
        let (along, across) = self.lie(cell);
        let (raw, soaked) = match self.look.prepared {
            Prepared::Sanded => (raw, soaked),
            Prepared::Rough if soaked > 0.0 => (raw, soaked),
            Prepared::Rough => (self.rough(raw, along, across), 0.0),
            Prepared::Damped => {
                let raised = cloud(self.seed ^ 2, along / FIBRE.0, across / FIBRE.1);
                (raw.map(|part| part * (1.0 + RAISED * raised)), soaked.max(WET))
            }
        };
        let dyed = match self.look.stain {
            Some(stain) => stained(self.light, raw, stain.dye, stain.build * of(&wood.takes, cell)),
            None => raw,
        };
        let open = self.pore.map(|part| part * if soaked > 0.5 { 1.0 } else { DRY_PORE });
        let pore = self.filler.map_or(open, |(filler, ..)| filler);
        let flat = blend(dyed, pore, of(&wood.pore, cell));
        let flat = match self.filler {
            Some((paste, _, Filled::Laid)) => {
                let smear = cloud(self.seed ^ 3, along / SMEAR.1, across / SMEAR.0);
                blend(flat, paste, (PASTE.0 + PASTE.1 * smear).clamp(0.0, 1.0))
            }
            Some((_, haze, Filled::Hazed)) => {
                let cloudy = soft(self.seed ^ 4, HAZE_SIZE, along, across)
                    + SMEARED * cloud(self.seed ^ 5, along / SMEAR.1, across / SMEAR.0);
                blend(flat, haze, (HAZED.0 + HAZED.1 * cloudy).clamp(0.0, 1.0))
            }
            Some((.., Filled::Wiped)) | None => flat,
        };
        blend(flat, flat.map(soak::wet), soaked)
    }

    fn rough(&self, raw: Colour, along: f32, across: f32) -> Colour {
        let stroke = along + BOWED * across * across;
        let marks = cloud(self.seed, across / REGULAR, stroke / PITCH)
            + 0.5 * cloud(self.seed ^ 1, across / 30.0, stroke / (0.4 * PITCH));
        let mean = (raw[0] + raw[1] + raw[2]) / 3.0;
        let grey = self.weathered.map(|part| part * (0.5 + mean));
        blend(raw, grey, GREY).map(|part| part * (1.0 + MARKS * marks))
    }

    /// Bare wood without anything, as where glue goes.
    pub(super) fn bare(&self, cell: &Cell) -> Colour {
        let wood = &self.blank.wood;
        let [red, green, blue] = &wood.colour;
        let pore = screen(self.blank.grown.species.pore).map(|part| part * DRY_PORE);
        blend([of(red, cell), of(green, cell), of(blue, cell)], pore, of(&wood.pore, cell))
    }
}
