//! Bench: every calculation of the model, by name.

use crate::app::parts::{Frame, Icon, Picture, SheetSetting, UnitSettings};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::bench::{self, Calculation};
use yew::prelude::*;
use yew_router::prelude::*;

#[component]
pub(in crate::app) fn Bench() -> Html {
    let shop = use_shop();
    let row = |calculation: &&Calculation| {
        let to = Route::Calculation { name: calculation.name.to_owned() };
        html! {
            <li key={calculation.name}>
                <Link<Route> {to} classes="row-link">
                    <span class="words">{ shop.text(&format!("bench.{}", calculation.name)) }</span><Icon of={Picture::Go} />
                </Link<Route>>
            </li>
        }
    };
    let cautions = shop.cautions_for(&[]);
    html! {
        <Frame class="sheet" title={shop.say("bench.title")} back={Some(Route::Home)} {cautions}>
            <p key="lead" class="lead">{ shop.say("bench.lead") }</p>
            <UnitSettings key="units" />
            <SheetSetting key="sheet" />
            <ul key="list" class="rows links">{ for bench::calculations().iter().map(row) }</ul>
        </Frame>
    }
}
