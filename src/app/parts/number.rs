//! A figure with its unit, typed on our own keypad, so that no keyboard of the system covers the ticket.

use super::{Icon, Picture};
use crate::app::state::use_shop;
use crate::card::Slate;
use crate::quantity::{Dimension, Unit};
use yew::prelude::*;

/// The keypad in reading order; `\u{8}` deletes.
const KEYS: [char; 12] = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '\u{8}'];

#[derive(Properties, PartialEq)]
pub(super) struct NumberProps {
    pub(super) label: String,
    pub(super) group: &'static str,
    pub(super) slate: Slate,
    /// Unit that the card asks for; its siblings count as well.
    pub(super) asked: Option<Unit>,
    pub(super) on_slate: Callback<Slate>,
}

#[component]
pub(super) fn NumberField(props: &NumberProps) -> Html {
    let shop = use_shop();
    let slate = &props.slate;
    let key_button = |key: char| {
        let (on, slate) = (props.on_slate.clone(), slate.clone());
        let onclick = Callback::from(move |_: MouseEvent| on.emit(slate.clone().typed(key)));
        let (face, name) = match key {
            '\u{8}' => (html! { <Icon of={Picture::Delete} /> }, Some(shop.say("card.delete"))),
            '.' => (html! { "." }, Some(shop.say("card.point"))),
            '-' => (html! { "±" }, Some(shop.say("card.minus"))),
            digit => (html! { digit }, None),
        };
        html! { <button type="button" key={key.to_string()} class="key" {onclick} aria-label={name}>{ face }</button> }
    };
    let units = props.asked.map(Unit::siblings).unwrap_or_default();
    let unit_row = |unit: &Unit| {
        let (on, slate, unit) = (props.on_slate.clone(), slate.clone(), *unit);
        let picked = slate.unit == Some(unit);
        let onchange = Callback::from(move |_: Event| on.emit(slate.clone().in_unit(unit)));
        let symbol = unit.symbol();
        let name = shop.say(&format!("unit.{symbol}"));
        let words = match symbol {
            "" => AttrValue::default(),
            symbol if name == symbol => name,
            symbol => format!("{symbol}, {name}").into(),
        };
        html! {
            <label key={symbol} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={format!("{}-unit", props.group)} checked={picked} {onchange} />
                <Icon of={Picture::Tick} /><span>{ words }</span>
            </label>
        }
    };
    let signed = props.asked.map(Unit::dimension);
    let signed = matches!(signed, Some(Dimension::Temperature | Dimension::TemperatureGap));
    let symbol = slate.unit.map_or("", Unit::symbol);
    html! {
        <div class="number" role="group" aria-label={props.label.clone()}>
            <div key="keypad" class="keypad">
                { for KEYS.into_iter().map(key_button) }
                <span key="sign" class="sign-key" hidden={!signed}>{ key_button('-') }</span>
            </div>
            <div key="figure" class="figure-side">
                <output class="figure" aria-label={shop.say("card.figure")} aria-live="polite">
                    <span class="typed">{ &slate.figure }</span><i class="caret" aria-hidden="true"></i><small>{ symbol }</small>
                </output>
                <div class="units" role="radiogroup" aria-label={shop.say("card.units")} hidden={symbol.is_empty()}>
                    <p class="note" hidden={units.len() < 2}>{ shop.say("card.units") }</p>
                    { for units.iter().map(unit_row) }
                </div>
            </div>
        </div>
    }
}
