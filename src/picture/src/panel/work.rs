//! A panel that is drawn in turns.

use super::{Film, Layers, Panel, Recipe};
use crate::fault::tried_at;
use crate::map::{Grid, Map};
use crate::pause::{Turns, pause};
use crate::scene::Lit;
use crate::wood::{Cut, Wood};

/// A panel that is being drawn.
pub type Work = Turns<Panel>;

impl Work {
    /// Begins a panel.
    #[must_use]
    pub fn begin(recipe: Recipe, grid: Grid) -> Self {
        Self::of(draw(recipe, grid))
    }
}

/// Draws a panel, in turns.
pub(super) async fn draw(recipe: Recipe, grid: Grid) -> Panel {
    let cut = Cut::new(&recipe.species, recipe.face, recipe.seed, grid.height());
    let wood = Wood::blank(grid);
    pause().await;
    let film = Film::blank(grid);
    pause().await;
    let mut layers = Layers { wood, film, mask: Map::of(grid, 0.0), mark: tried_at(recipe.probe, grid) };
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
        fault.lay(&mut layers, &recipe, severity).await;
    }
    pause().await;
    let mut lit = Lit::blank(grid);
    pause().await;
    for row in 0..grid.rows {
        lit.row(&layers, &recipe, row);
        pause().await;
    }
    let Layers { film, mask, mark, .. } = layers;
    Panel { lit, mask, mark, height: film.height, rough: film.rough }
}

#[cfg(test)]
mod tests {
    use super::draw;
    use crate::fault::Fault;
    use crate::map::Grid;
    use crate::panel::{Finish, Probe, Recipe, Severity};
    use crate::pause::{counted, go_on};
    use crate::wood::{Growth, Pores, Species};
    use core::pin::pin;

    /// What may lie between two stops on a panel of 240 pixels by 180: values of noise, and pixels that are looked up or
    /// inked. A row of wood takes some 2,000 of them, a pass over all pixels more than 43,000.
    const MOST: usize = 6_000;

    fn recipe(fault: Fault) -> Recipe {
        let pores = Pores {
            count: 90.0,
            stand: Growth::Ring,
            length: 4.0,
            length_spread: 0.5,
            width: 0.2,
            width_spread: 0.05,
        };
        let species =
            Species { growth: Growth::Ring, telegraphs: true, pores: vec![pores], ..Species::plain() };
        let fault = Some((fault, Severity::Severe));
        let (finish, probe) = (Finish::Cleared, Probe::Wiped);
        Recipe { finish, probe, fault, stain: 0.6, amber: 0.35, ..Recipe::bare(species, 3) }
    }

    #[test]
    fn little_is_done_between_two_stops() {
        for fault in Fault::ALL {
            let mut work = pin!(draw(recipe(*fault), Grid::covering(120.0, 90.0, 0.5)));
            let (mut turn, mut done) = (0, false);
            while !done {
                counted();
                done = go_on(work.as_mut()).is_some();
                let values = counted();
                assert!(values <= MOST, "{}: {values} values in turn {turn}", fault.slug());
                turn += 1;
            }
        }
    }
}
