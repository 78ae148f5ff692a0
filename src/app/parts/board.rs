//! The step board: one board, a band a stage, each a button; the picture behind it says nothing that the rows do not.

use super::{Icon, Picture};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::rules::term::{Stage, Term};
use yew::prelude::*;
use yew_router::prelude::*;

/// One row of the board.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct BandRow {
    pub(in crate::app) stage: Stage,
    /// How well it is held, in words.
    pub(in crate::app) state: AttrValue,
    /// Share that is held, 0 to 1.
    pub(in crate::app) share: f64,
    /// Whether the next step is here.
    pub(in crate::app) next: bool,
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct BoardProps {
    pub(in crate::app) rows: Vec<BandRow>,
}

#[component]
pub(in crate::app) fn Board(props: &BoardProps) -> Html {
    let shop = use_shop();
    let bands = props.rows.len().saturating_sub(1).to_string();
    let row = |(place, row): (usize, &BandRow)| {
        let stage = shop.stage(row.stage);
        let key = if row.next { "home.row-next" } else { "home.row" };
        let named = [
            ("stage", stage.to_string()),
            ("n", place.to_string()),
            ("bands", bands.clone()),
            ("state", row.state.to_string()),
        ];
        let to = Route::Band { stage: row.stage.slug().to_owned() };
        let number = if place == 0 { String::new() } else { place.to_string() };
        html! {
            <li key={row.stage.slug()} class={classes!("band", row.stage.slug(), row.next.then_some("next"))}>
                <Link<Route> {to} classes="band-link">
                    <span class="spoken">{ shop.say_with(key, &named) }</span>
                    <span class="band-number" aria-hidden="true">{ number }</span>
                    <span class="band-words" aria-hidden="true"><b>{ stage }</b><span>{ &row.state }</span></span>
                    <span class="band-wood" aria-hidden="true">{ tape(row) }</span>
                    <span class="band-go" aria-hidden="true"><Icon of={Picture::Go} /></span>
                </Link<Route>>
            </li>
        }
    };
    html! { <ol class="board">{ for props.rows.iter().enumerate().map(row) }</ol> }
}

/// Finished wood up to the tape, as sawn beyond it.
fn tape(row: &BandRow) -> Html {
    /// The drawing is so many units wide.
    const WIDE: f64 = 1000.0;
    const TAPE: f64 = 46.0;
    let end = row.share * (WIDE - TAPE);
    let shown = row.share > 0.0 && row.share < 1.0;
    html! {
        <svg viewBox="0 0 1000 100" preserveAspectRatio="none" focusable="false">
            <rect class="sawn" width="1000" height="100" />
            <rect class="finish" width={if row.share >= 1.0 { WIDE } else { end }.to_string()} height="100" />
            <rect class="tape" x={end.to_string()} width={TAPE.to_string()} height="100" visibility={if shown { "visible" } else { "hidden" }} />
        </svg>
    }
}
