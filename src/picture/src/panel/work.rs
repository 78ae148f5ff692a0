//! A panel that is drawn in turns.

use super::{Film, Layers, Panel, Recipe};
use crate::map::{Grid, Map};
use crate::pause::{at_once, go_on, pause};
use crate::scene::Lit;
use crate::wood::{Cut, Wood};
use core::fmt::{self, Debug, Formatter};
use core::future::Future;
use core::pin::Pin;

/// A panel that is being drawn, in turns, so that a screen can answer between.
pub struct Work {
    turns: Pin<Box<dyn Future<Output = Panel>>>,
    panel: Option<Panel>,
}

impl Work {
    /// Begins a panel.
    #[must_use]
    pub fn begin(recipe: Recipe, grid: Grid) -> Self {
        Self { turns: Box::pin(draw(recipe, grid)), panel: None }
    }

    /// Draws up to so many turns further: one is about what a row of pixels takes. Whether it is done.
    pub fn step(&mut self, turns: usize) -> bool {
        for _ in 0..turns.max(1) {
            if self.panel.is_none() {
                self.panel = go_on(self.turns.as_mut());
            }
        }
        self.panel.is_some()
    }

    /// Draws what is left of it.
    #[must_use]
    pub fn finish(self) -> Panel {
        self.panel.unwrap_or_else(|| at_once(self.turns))
    }
}

impl Debug for Work {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.debug_struct("Work").field("panel", &self.panel).finish_non_exhaustive()
    }
}

/// Draws a panel, in turns.
pub(super) async fn draw(recipe: Recipe, grid: Grid) -> Panel {
    let cut = Cut::new(&recipe.species, recipe.face, recipe.seed, grid.height());
    let wood = Wood::blank(grid);
    pause().await;
    let film = Film::blank(grid);
    pause().await;
    let mut layers = Layers { wood, film, mask: Map::of(grid, 0.0) };
    for row in 0..grid.rows {
        layers.wood.grow(&recipe.species, &cut, row);
        pause().await;
    }
    layers.wood.open(&recipe.species, &cut).await;
    for row in 0..grid.rows {
        layers.film.lay(&recipe, row);
        pause().await;
    }
    layers.film.sink(&recipe, &layers.wood.pore).await;
    if let Some((fault, severity)) = recipe.fault {
        fault.spoil(&mut layers, &recipe, severity).await;
    }
    pause().await;
    let mut lit = Lit::blank(grid);
    pause().await;
    for row in 0..grid.rows {
        lit.row(&layers, &recipe, row);
        pause().await;
    }
    Panel { lit, mask: layers.mask, height: layers.film.height, rough: layers.film.rough }
}
