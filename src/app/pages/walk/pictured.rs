//! The work of a walk as it now looks.

use crate::app::pages::walk::words;
use crate::app::parts::{Instrument, Piece, Ring};
use crate::app::state::{Shared, use_shop};
use crate::picture::instrument::{Acts, PartKind};
use crate::walk::{Walk, look, marks::marks};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct PicturedProps {
    pub(super) walk: Shared<Walk>,
    pub(super) picked: Vec<usize>,
    #[prop_or_default]
    pub(super) acts: Option<Acts>,
    pub(super) on_part: Callback<usize>,
    /// Rows of labels: one for each part, and maybe one below.
    pub(super) rows: usize,
    /// Labels of the parts, in their order.
    pub(super) children: Html,
}

#[component]
pub(super) fn Pictured(props: &PicturedProps) -> Html {
    let shop = use_shop();
    let walk = &props.walk;
    let start = walk.start();
    let piece = use_memo((start.info.slug.clone(), walk.seed()), |(_, seed)| Piece {
        views: look::views(start),
        woods: look::woods(start, *seed, shop.content()),
        parts: PartKind::ALL.iter().filter_map(|kind| Some((*kind, look::part_of(start, *kind)?))).collect(),
    });
    let looks = use_memo(walk.clone(), |walk| look::looks(walk));
    let marked = use_memo((walk.clone(), Rc::clone(&piece)), |(walk, piece)| marks(walk, &piece.views));
    let rings = marked.iter().map(|mark| Ring { view: mark.view, at: mark.at, number: mark.shown + 1 });
    let told = marked.iter().map(|mark| words::marked(&shop, walk, mark));
    let told = std::iter::once(shop.say("walk.picture").to_string()).chain(told);
    let alt = told.collect::<Vec<_>>().join(" ");
    let picked = props.picked.clone();
    html! {
        <Instrument piece={Rc::clone(&piece)} looks={Rc::clone(&looks)} {picked} count={start.parts()} rows={props.rows} acts={props.acts} rings={rings.collect::<Vec<_>>()} on_part={props.on_part.clone()} {alt}>
            { props.children.clone() }
        </Instrument>
    }
}
