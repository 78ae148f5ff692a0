//! The colour of a pixel by itself, before anything is mirrored: wood, pores, stain, film colour.

use super::Layers;
use super::recipe::{Dyes, Finish, Probe, Recipe};
use crate::dye::{self, RED_BROWN, passed, times};
use crate::light::{Colour, Light, screen};
use crate::soak;
use crate::wood::blend;

/// Open pores in bare wood look paler than under a film: no light is lost at a wet wall.
pub(crate) const DRY_PORE: f32 = 1.25;
/// White filler: seen through an amber film it is not cold.
const WHITE: Colour = [0.95, 0.89, 0.85];
/// Air in a pore mirrors the room before the light has gone through the film's colour twice: a silver grey (by eye).
const SILVER: Colour = [0.46, 0.45, 0.43];

/// Light and shade of the walls of an open groove, along the grain and across it, and the least and most of it.
const GROOVE: (f32, f32) = (0.06, 0.22);
const SHADED: (f32, f32) = (0.6, 1.4);
/// What a recipe's colours are in linear light.
#[derive(Debug, Clone)]
pub(crate) struct Paints {
    pore: Colour,
    filler: Option<Colour>,
    opaque: Option<Colour>,
    finish: Finish,
    wetted: bool,
    stain: f32,
    amber: f32,
    dyes: Dyes,
}

impl Paints {
    pub(crate) fn of(recipe: &Recipe) -> Self {
        Self {
            pore: screen(recipe.species.pore),
            filler: recipe.filler.map(screen),
            opaque: recipe.opaque.map(screen),
            finish: recipe.finish,
            wetted: recipe.probe == Probe::Wetted,
            stain: recipe.stain,
            amber: recipe.amber,
            dyes: recipe.dyes,
        }
    }

    /// Light and shade of open pores in bare wood.
    pub(crate) fn groove(&self, layers: &Layers, column: usize, row: usize) -> f32 {
        if self.filler.is_some() {
            return 1.0;
        }
        let pore = &layers.wood.pore;
        let (dx, dy) = (
            pore.at(column + 1, row) - pore.at(column.saturating_sub(1), row),
            pore.at(column, row + 1) - pore.at(column, row.saturating_sub(1)),
        );
        // The window stands beyond the panel to the left: it shines on the near and the right wall.
        (1.0 - GROOVE.0 * dx - GROOVE.1 * dy).clamp(SHADED.0, SHADED.1)
    }

    /// The same with a share of the pore turned silver by the air in it.
    pub(crate) fn with_pore(&self, layers: &Layers, light: &Light, place: usize, silver: f32) -> Colour {
        let pore = layers.wood.pore.values.get(place).copied().unwrap_or(0.0);
        blend(self.body(layers, light, place), SILVER, silver * pore)
    }

    /// Share of the wood that opaque colour hides: by its thickness, all of it where it is as meant.
    pub(crate) fn hidden(&self, layers: &Layers, light: &Light, place: usize) -> f32 {
        if self.opaque.is_none() || !self.finish.has_film() {
            return 0.0;
        }
        let at = |map: &crate::map::Map| map.values.get(place).copied().unwrap_or(0.0);
        at(&layers.film.there) * dye::hidden(light, at(&layers.film.tint))
    }

    /// Light that the body of a pixel sends back, of the light that falls on it.
    pub(crate) fn body(&self, layers: &Layers, light: &Light, place: usize) -> Colour {
        let (wood, film) = (&layers.wood, &layers.film);
        let at = |map: &crate::map::Map| map.values.get(place).copied().unwrap_or(0.0);
        let pass = |dye: Colour, build: f32| passed(light, dye, build);
        let there = if self.finish.has_film() { at(&film.there) } else { 0.0 };
        // Naphtha on bare wood shows it as a film would.
        let soaked = if self.wetted && !self.finish.has_film() { at(&film.there) } else { there };
        let [red, green, blue] = &wood.colour;
        let raw = [at(red), at(green), at(blue)];
        let stain = self.stain * at(&wood.takes);
        let stained = dye::stained(light, raw, self.dyes.stain, stain);
        let pore = self
            .filler
            .unwrap_or_else(|| self.pore.map(|part| part * if soaked > 0.5 { 1.0 } else { DRY_PORE }));
        let pore = blend(pore, WHITE, at(&film.grey));
        let flat = blend(stained, pore, at(&wood.pore));
        let wet = flat.map(soak::wet);
        let seen = blend(flat, wet, soaked);
        let seen = seen.map(|part| part * at(&film.body));
        let tint = at(&film.tint).max(0.0);
        let colours = times(
            times(
                pass(self.dyes.film.in_film(), self.amber * tint),
                pass(self.dyes.shade.in_film(), at(&film.shade) * tint),
            ),
            pass(RED_BROWN, at(&film.bled)),
        );
        match self.opaque {
            Some(paint) => blend(seen, paint, self.hidden(layers, light, place)),
            None => blend(seen, times(seen, colours), there),
        }
    }
}
