//! The face on its canvas: what lies on it, which place of it is seen where, and how it is drawn.

use super::turn::Turn;
use crate::content::Coat;
use crate::device::canvas;
use crate::device::pointer::Sample;
use crate::spraying::grid::Window;
use crate::spraying::outline::Place;
use crate::spraying::{Grid, Setup, Sprayer};
use stepboard_picture::{Coating, Look, Moment, single};
use web_sys::{DomRect, Element, HtmlCanvasElement};
use yew::prelude::*;

/// What is laid in a cell is seen from so many cells beside it: the film's slope is.
const SEEN_FROM: usize = 1;

pub(super) struct Face {
    canvas: NodeRef,
    pub(super) sprayer: Sprayer,
    pub(super) turn: Turn,
    look: Look,
    /// Where the canvas stands on the page, as long as that is known.
    stands: Option<DomRect>,
    pixels: Vec<u8>,
}

impl Face {
    pub(super) fn new(canvas: NodeRef, setup: &Setup, turn: Turn) -> Self {
        let sprayer = Sprayer::new(setup.clone(), setup.grid());
        let grid = sprayer.film().grid();
        let mut work = grid.work(&setup.outline);
        if setup.task.repair.is_some() {
            // The face goes on around the place.
            work.fill(true);
        }
        let look = Look::new(coating(setup), grid.columns, &work);
        Self { canvas, sprayer, turn, look, stands: None, pixels: Vec::new() }
    }

    fn grid(&self) -> Grid {
        self.sprayer.film().grid()
    }

    /// The place of the work that is seen where a pointer is. Where the canvas stands is asked once, until it is forgotten.
    pub(super) fn place(&mut self, sample: Sample) -> Option<Place> {
        let stands = match self.stands.take() {
            Some(stands) => stands,
            None => self.canvas.cast::<Element>()?.get_bounding_client_rect(),
        };
        let grid = self.grid();
        // The picture stands in the middle of its place, as large as it fits.
        let (across, down) = self.turn.cells(grid);
        let scale = (stands.width() / across).min(stands.height() / down).max(f64::MIN_POSITIVE);
        let share =
            |at: f64, from: f64, long: f64, cells: f64| (at - from - long / 2.0) / (cells * scale) + 0.5;
        let seen = (
            share(sample.x, stands.left(), stands.width(), across),
            share(sample.y, stands.top(), stands.height(), down),
        );
        self.stands = Some(stands);
        Some(self.turn.place(grid, seen))
    }

    /// Forgets where the canvas stands: it may have moved.
    pub(super) fn forget(&mut self) {
        self.stands = None;
    }

    /// Draws cells at a moment of the run, s, and those beside them that show what changed there.
    pub(super) fn draw(&mut self, touched: &Window, now: f64) {
        let Some(canvas) = self.canvas.cast::<HtmlCanvasElement>().filter(|_| !touched.is_empty()) else {
            return;
        };
        let (place, seen) = self.turn.window(self.grid(), &touched.wider(SEEN_FROM, self.grid()));
        let film = self.sprayer.film();
        let moment = Moment {
            left: film.left_at(now),
            runs_at: self.sprayer.setup().sag().map_or(f32::INFINITY, single),
        };
        self.look.paint(film.layers(), moment, seen, &mut self.pixels);
        let number = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
        canvas::show_part(&canvas, (number(place.0), number(place.1)), number(seen.wide), &self.pixels);
    }

    /// Draws all of it at a moment of the run, s.
    pub(super) fn draw_all(&mut self, now: f64) {
        let grid = self.grid();
        let (wide, high) = self.turn.size(grid);
        let size = u32::try_from(wide).ok().zip(u32::try_from(high).ok());
        if let (Some((wide, high)), Some(canvas)) = (size, self.canvas.cast::<HtmlCanvasElement>()) {
            canvas::size(&canvas, wide, high);
        }
        self.draw(&Window { columns: 0..grid.columns, rows: 0..grid.rows }, now);
    }
}

/// How what a task sprays takes light.
fn coating(setup: &Setup) -> Coating {
    match (setup.task.coat, setup.task.shade) {
        (_, Some(_)) => Coating::Shade,
        (Coat::Colour, None) => Coating::Solid,
        (Coat::Sealer | Coat::Clear, None) => Coating::Clear,
    }
}
