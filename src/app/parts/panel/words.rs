//! The panel in words: cells that are walked by keys or found by pointing, each told without the fault's name.

use super::place::{COLUMNS, Cell, HEIGHT, Place, ROWS, WIDTH, held};
use crate::app::state::Shop;
use crate::device::page;
use wasm_bindgen::JsCast;
use web_sys::Element;
use yew::prelude::*;

/// A cell that was come to, and the place in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Walked {
    pub(super) cell: Cell,
    pub(super) to: Place,
    pub(super) by_key: bool,
}

/// What is said of a cell.
pub(super) fn told(shop: &Shop, cell: Cell, words: &str) -> AttrValue {
    let named = [
        ("row", (cell.row + 1).to_string()),
        ("column", (cell.column + 1).to_string()),
        ("words", words.to_owned()),
    ];
    shop.say_with("panel.cell", &named)
}

/// The cells over the picture. A tap points at its very place, a key at the middle of the cell that has the focus.
pub(super) struct Cells<'a> {
    /// Sets the ids apart from those of another panel on the page.
    pub(super) id: &'a str,
    pub(super) now: Cell,
    /// The place of that cell that a key points at, where it is not its middle.
    pub(super) at: Option<Place>,
    pub(super) shown: bool,
    pub(super) on_cell: &'a Callback<Walked>,
    pub(super) on_place: &'a Callback<Place>,
}

impl Cells<'_> {
    pub(super) fn draw(&self, shop: &Shop, tell: impl Fn(Cell) -> AttrValue) -> Html {
        let one = |cell: Cell| {
            let tabindex = if cell == self.now { "0" } else { "-1" };
            html! { <span key={cell.number()} id={id(self.id, cell)} role="gridcell" {tabindex} aria-label={told(shop, cell, &tell(cell))}></span> }
        };
        let row = |row: u8| {
            html! { <div key={row} role="row">{ for (0..COLUMNS).map(|column| one(Cell { column, row })) }</div> }
        };
        html! {
            <div key="cells" class={classes!("panel-cells", self.shown.then_some("shown"))} role="grid" aria-label={shop.say("panel.places")} onclick={self.click()} onkeydown={self.keys()}>
                { for (0..ROWS).map(row) }
            </div>
        }
    }

    fn keys(&self) -> Callback<KeyboardEvent> {
        let (on_cell, on_place) = (self.on_cell.clone(), self.on_place.clone());
        let (now, panel) = (self.now, self.id.to_owned());
        let at = self.at.unwrap_or_else(|| now.middle());
        Callback::from(move |event: KeyboardEvent| {
            let key = event.key();
            if matches!(key.as_str(), "Enter" | " ") {
                on_place.emit(at);
                on_cell.emit(Walked { cell: now, to: at, by_key: true });
            } else if let Some(next) = now.walked(&key) {
                on_cell.emit(Walked { cell: next, to: next.middle(), by_key: true });
                page::focus(&id(&panel, next));
            } else {
                return;
            }
            event.prevent_default();
        })
    }

    fn click(&self) -> Callback<MouseEvent> {
        let (on_cell, on_place) = (self.on_cell.clone(), self.on_place.clone());
        Callback::from(move |event: MouseEvent| {
            let target = event.target().and_then(|target| target.dyn_into::<Element>().ok());
            let Some(grid) = target.and_then(|target| target.closest("[role=grid]").ok().flatten()) else {
                return;
            };
            let place = pointed(&grid, &event);
            on_cell.emit(Walked { cell: Cell::of(place), to: place, by_key: false });
            on_place.emit(place);
        })
    }
}

/// The element of a cell of one of the panels on the page.
fn id(panel: &str, cell: Cell) -> String {
    format!("{panel}-cell-{}", cell.number())
}

/// The place of the panel that lies under a pointer over an element that covers it.
#[allow(clippy::cast_possible_truncation, reason = "a place on a panel of some millimetres")]
pub(super) fn pointed(face: &Element, event: &MouseEvent) -> Place {
    let place = face.get_bounding_client_rect();
    let share = |at: i32, from: f64, long: f64| ((f64::from(at) - from) / long.max(1.0)) as f32;
    let x = share(event.client_x(), place.left(), place.width()) * WIDTH;
    let y = share(event.client_y(), place.top(), place.height()) * HEIGHT;
    held(Place { x, y })
}
