//! The step board: one board, a band a stage, each a button; the picture behind it says nothing that the rows do not.

use super::wood::BoardPicture;
use super::{Picture, icon, stamp};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::picture::{Band, Surface};
use crate::rules::term::{Stage, Term};
use yew::prelude::*;

/// One row of the board.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct BandRow {
    pub(in crate::app) stage: Stage,
    /// How well it is held, in words.
    pub(in crate::app) state: AttrValue,
    /// Share that is held, 0 to 1.
    pub(in crate::app) share: f32,
    /// Whether the next step is here.
    pub(in crate::app) next: bool,
    /// Whether every competency of it stands signed.
    pub(in crate::app) stamped: bool,
}

pub(in crate::app) fn board(shop: &Shop, rows: &[BandRow]) -> Html {
    let bands = rows.len().saturating_sub(1).to_string();
    let row = |(place, row): (usize, &BandRow)| {
        let stage = shop.stage(row.stage);
        let key = if row.next { "home.row-next" } else { "home.row" };
        let signed = shop.say_with("standing.stamped", &[("state", row.state.to_string())]);
        let state = if row.stamped { &signed } else { &row.state };
        let named = [
            ("stage", stage.to_string()),
            ("n", place.to_string()),
            ("bands", bands.clone()),
            ("state", state.to_string()),
        ];
        let to = Route::Band { stage: row.stage.slug().to_owned() };
        let number = if place == 0 { String::new() } else { place.to_string() };
        html! {
            <li key={row.stage.slug()} class={classes!("band", row.stage.slug(), row.next.then_some("next"))}>
                <a href={to.address()} class="band-link">
                    <span class="spoken">{ shop.say_with(key, &named) }</span>
                    <span class="band-number" aria-hidden="true">{ number }</span>
                    <span class="band-words" aria-hidden="true"><b>{ stage }</b><span>{ state }</span></span>
                    <span class="band-wood" aria-hidden="true">{ for row.stamped.then(|| stamp("")) }</span>
                    <span class="band-go" aria-hidden="true">{ icon(Picture::Go) }</span>
                </a>
            </li>
        }
    };
    html! {
        <div class="board-place">
            <BoardPicture bands={rows.iter().map(wood).collect::<Vec<_>>()} />
            <ol class="board">{ for rows.iter().enumerate().map(row) }</ol>
        </div>
    }
}

/// What the picture shows of a row. The room leaves no finish of its own: its rail is sanded wood.
fn wood(row: &BandRow) -> Band {
    let surface = match row.stage {
        Stage::Room | Stage::Sand => Surface::Sanded,
        Stage::Stain => Surface::Stained,
        Stage::Fill => Surface::Filled,
        Stage::Seal => Surface::Sealed,
        Stage::Colour => Surface::Coloured,
        Stage::Shade => Surface::Shaded,
        Stage::Scrape => Surface::Scraped,
        Stage::Clear => Surface::Cleared,
        Stage::Cure => Surface::Cured,
        Stage::Buff => Surface::Buffed,
    };
    Band { surface, finished: row.share, once: row.share }
}
