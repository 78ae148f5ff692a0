//! A task on a shop sheet, with what follows from both.

use super::film::Piece;
use super::grid::Grid;
use super::outline::Outline;
use super::point::Point;
use crate::content::{Coat, Content, SprayTask};
use crate::quantity::{Fraction, Micrometres, Millimetres, SECONDS_A_MINUTE};
use crate::rules::film::{Facing, Sag, clear_solids, dry, wet_film};
use crate::rules::mixing;
use crate::rules::shading::{self, Pass};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::spray::distance;
use crate::rules::spray::fan::Section;
use crate::rules::spray::flight;

/// µm mm² in a millilitre.
pub const FILM_A_ML: f64 = 1e6;
/// A fan as wide as the task sets it.
pub const AS_SET: f64 = 1.0;

/// A task on a sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Setup {
    /// The task.
    pub task: SprayTask,
    /// The sheet.
    pub sheet: Sheet,
    /// The outline of the work.
    pub outline: Outline,
}

/// The spot of the gun at a distance and a tilt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held {
    /// Half its width along the fan, mm.
    pub half_fan: f64,
    /// Half its width across the fan, mm.
    pub half_thin: f64,
    /// Share of the material that lands.
    pub landing: f64,
    /// Share of that which lands dry.
    pub dry: f64,
}

/// A thinnest and a thickest film, µm.
pub type Window = (f64, f64);

impl Setup {
    /// A task on its own sheet; `None` where the sheet is not there.
    #[must_use]
    pub fn of(task: &SprayTask, content: &Content) -> Option<Self> {
        content.sheet(&task.sheet).map(|sheet| Self::on(task, sheet))
    }

    /// A task on a sheet.
    #[must_use]
    pub fn on(task: &SprayTask, sheet: &Sheet) -> Self {
        Self { task: task.clone(), sheet: sheet.clone(), outline: Outline::of(&task.work) }
    }

    /// The gun with its fan as the task sets it ([`Setup::opened`]).
    #[must_use]
    pub fn held(&self, distance: f64, tilt: f64) -> Held {
        self.opened(distance, tilt, AS_SET)
    }

    /// The gun as it is held at a point: its distance to where it aims, along the slant, its tilt, and its fan, over how wide
    /// the task sets it. The spot grows with the distance (fixed fan angle, spray geometry) and is drawn out along the tilt.
    /// The knob of the fan turns from a round spot to the widest fan of the gun and no farther; it changes neither the flow
    /// nor the width of the spot across the fan (an assumption, no source), so that a narrower fan lays more film.
    #[must_use]
    pub fn opened(&self, distance: f64, tilt: f64, wide: f64) -> Held {
        let gun = &self.task.gun;
        let (narrowest, widest) = self.fans();
        let grown = distance / gun.at_mm.get();
        let flown = Millimetres::saturating(distance);
        let farthest = Millimetres::saturating(self.distances().1);
        Held {
            half_fan: gun.fan_mm.get() * wide.clamp(narrowest, widest) * grown / 2.0,
            half_thin: gun.thin_mm.get() * grown / 2.0 / libm::cos(tilt.to_radians()),
            landing: flight::landing(gun.landing, flown).get(),
            dry: flight::dry(farthest, flown).get(),
        }
    }

    /// A piece of a path that runs evenly from one point to another, with the volume in mL that leaves the gun on it.
    #[must_use]
    pub fn piece(&self, from: &Point, to: &Point, volume: f64) -> Piece {
        let middle = from.towards(to, 0.5);
        let held = self.opened(middle.distance, middle.tilt, middle.wide);
        Piece {
            from: (from.x, from.y),
            to: (to.x, to.y),
            at: middle.t,
            half_fan: held.half_fan,
            half_thin: held.half_thin,
            fan: middle.fan,
            lands: volume * held.landing * FILM_A_ML,
            dry: held.dry,
        }
    }

    /// The grid that screens use: the work and half a fan beside it; of a repaired place half a fan beside where its film may
    /// fade out.
    #[must_use]
    pub fn grid(&self) -> Grid {
        let fades = self.task.repair.map_or(0.0, |repair| repair.fades_mm.get());
        Grid::over(&self.outline, self.held(self.middle_distance(), 0.0).half_fan + fades, Grid::SCREEN)
    }

    /// Narrowest and widest fan of the gun, over that of the task.
    #[must_use]
    pub fn fans(&self) -> (f64, f64) {
        let gun = &self.task.gun;
        let share = |wide: f64| wide / gun.fan_mm.get().max(f64::MIN_POSITIVE);
        (share(gun.thin_mm.get()).min(AS_SET), share(gun.widest_mm.map_or(0.0, Millimetres::get)).max(AS_SET))
    }

    /// Flow with the trigger fully pulled, mL/s.
    #[must_use]
    pub fn flow(&self) -> f64 {
        self.task.gun.flow_ml_min.get() / SECONDS_A_MINUTE
    }

    /// The section of a straight pass: the fan of the sheet.
    #[must_use]
    pub fn section(&self) -> Section {
        Section::of_sheet(&self.sheet)
    }

    /// Nearest and farthest distance of the gun, mm, by the sheet: for a body coat those of its kind.
    #[must_use]
    pub fn distances(&self) -> (f64, f64) {
        let (from, to) = match self.task.pass {
            Pass::Body => distance::band(&self.sheet, self.task.gun.kind),
            Pass::LightSeal | Pass::Shading => shading::distance(&self.sheet, self.task.pass),
        };
        (from.get(), to.get())
    }

    /// Wet film of one coat by the sheet, µm.
    #[must_use]
    pub fn coat(&self) -> f64 {
        self.sheet.get(match self.task.coat {
            Coat::Colour => Setting::ColourWet,
            Coat::Sealer | Coat::Clear => Setting::ClearWet,
        })
    }

    /// Thinnest and thickest film of all layers together, µm wet as laid.
    #[must_use]
    pub fn window(&self) -> Option<Window> {
        let film = self.task.film?;
        let coats = self.coat() * f64::from(film.layers);
        Some((film.from * coats, film.to * coats))
    }

    /// Wet film that runs on this face, µm; `None` on a lying one.
    #[must_use]
    pub fn sag(&self) -> Option<f64> {
        let limit = self.sheet.micrometres(Setting::WetSag);
        let runs = wet_film(limit, self.task.facing, &self.sheet).answer.sag() == Sag::Sags;
        (self.task.facing == Facing::Standing && runs).then_some(limit.get())
    }

    /// Dry film that a wet one leaves, µm.
    #[must_use]
    pub fn dried(&self, wet: f64) -> f64 {
        let solids = match self.task.coat {
            Coat::Sealer => mixing::fraction(self.sheet.get(Setting::SealerSolids)),
            Coat::Colour | Coat::Clear => clear_solids(&self.sheet),
        };
        let thinning = mixing::clear_thinning(&self.sheet);
        dry(Micrometres::saturating(wet), solids, thinning).answer.get()
    }

    /// Share of the material that lands from the middle of the distances, held square.
    #[must_use]
    pub fn landing(&self) -> Fraction {
        Fraction::saturating(self.held(self.middle_distance(), 0.0).landing)
    }

    /// Half way between nearest and farthest distance, mm.
    #[must_use]
    pub fn middle_distance(&self) -> f64 {
        let (from, to) = self.distances();
        f64::midpoint(from, to)
    }
}
