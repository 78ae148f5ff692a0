//! Bench: a panel to be looked at, and every calculation of the model, by name.

use super::air::aged;
use crate::app::hooks::use_settings;
use crate::app::parts::{Frame, Picture, icon, sheet_setting, unit_settings};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::bench::{self, Calculation};
use crate::record::MeasuredAir;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Bench() -> Html {
    let shop = use_shop();
    let change = use_settings().change;
    let row = |calculation: &&Calculation| {
        let to = Route::Calculation { name: calculation.name.to_owned() };
        html! {
            <li key={calculation.name}>
                <a href={to.address()} class="row-link">
                    <span class="words">{ shop.text(&format!("bench.{}", calculation.name)) }</span>{ icon(Picture::Go) }
                </a>
            </li>
        }
    };
    let group = |(name, calculations): &(&'static str, &[&Calculation])| {
        html! {
            <section key={*name}>
                <h2>{ shop.say(&format!("bench.group.{name}")) }</h2>
                <ul class="rows links">{ for calculations.iter().map(row) }</ul>
            </section>
        }
    };
    let cautions = shop.cautions_for(&[]);
    html! {
        <Frame class="sheet" title={shop.say("bench.title")} back={Some(Route::Home)} {cautions}>
            <p key="lead" class="lead">{ shop.say("bench.lead") }</p>
            <section key="today">
                <ul class="rows links"><li>
                    <a href={Route::Air.address()} class="row-link">
                        <span class="words"><b>{ shop.say("air.title") }</b><span class="note">{ shop.air.as_deref().map_or_else(|| shop.say("air.once"), |air| air_row(&shop, air)) }</span></span>{ icon(Picture::Go) }
                    </a>
                </li></ul>
            </section>
            <section key="panel">
                <h2>{ shop.say("bench.group.panel") }</h2>
                <ul class="rows links"><li>
                    <a href={Route::Panel.address()} class="row-link"><span class="words">{ shop.say("panel.title") }</span>{ icon(Picture::Go) }</a>
                </li></ul>
            </section>
            { for bench::GROUPS.iter().map(group) }
            <details key="settings" class="seen">
                <summary>{ shop.say("bench.settings") }</summary>
                { unit_settings(&shop, &change) }
                { sheet_setting(&shop, &change) }
            </details>
        </Frame>
    }
}

/// What was measured, and how long ago.
fn air_row(shop: &Shop, air: &MeasuredAir) -> AttrValue {
    AttrValue::from(format!("{}. {}", shop.air_in_words(air), aged(shop, air)))
}
