//! A figure with its unit, typed on our own keypad, so that no keyboard of the system covers the ticket.

use super::{Picture, icon};
use crate::app::state::Shop;
use crate::card::Slate;
use crate::quantity::{Dimension, Unit};
use yew::prelude::*;

/// The keypad in reading order; `\u{8}` deletes.
const KEYS: [char; 12] = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '\u{8}'];

/// `asked` is the unit that the card asks for; its siblings count as well.
pub(super) fn number_field(
    shop: &Shop,
    label: String,
    group: &'static str,
    slate: &Slate,
    asked: Option<Unit>,
    on_slate: &Callback<Slate>,
) -> Html {
    let mark = shop.texts().get("number.decimal");
    let key_button = |key: char| {
        let slate = slate.clone();
        let onclick = on_slate.reform(move |_: MouseEvent| slate.clone().typed(key));
        let (face, name) = match key {
            '\u{8}' => (icon(Picture::Delete), Some(shop.say("card.delete"))),
            '.' => (html! { mark }, Some(shop.say("card.point"))),
            '-' => (html! { "±" }, Some(shop.say("card.minus"))),
            digit => (html! { digit }, None),
        };
        html! { <button type="button" key={key.to_string()} class="key" {onclick} aria-label={name}>{ face }</button> }
    };
    let units = asked.map(Unit::siblings).unwrap_or_default();
    let unit_row = |unit: &Unit| {
        let (slate, unit) = (slate.clone(), *unit);
        let picked = slate.unit == Some(unit);
        let onchange = on_slate.reform(move |_: Event| slate.clone().in_unit(unit));
        let symbol = unit.symbol();
        let name = shop.say(&format!("unit.{symbol}"));
        let words = match symbol {
            "" => Html::default(),
            symbol if name == symbol => html! { name },
            symbol => html! { <>{ symbol }<span class="unit-name">{ ", " }{ name }</span></> },
        };
        html! {
            <label key={symbol} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={format!("{}-unit", group)} checked={picked} {onchange} />
                { icon(Picture::Tick) }<span>{ words }</span>
            </label>
        }
    };
    let signed = asked.map(Unit::dimension);
    let signed = matches!(signed, Some(Dimension::Temperature | Dimension::TemperatureGap));
    let symbol = slate.unit.map_or("", Unit::symbol);
    html! {
        <div class="number" role="group" aria-label={label}>
            <div key="keypad" class="keypad">
                { for KEYS.into_iter().map(key_button) }
                <span key="sign" class="sign-key" hidden={!signed}>{ key_button('-') }</span>
            </div>
            <div key="figure" class="figure-side">
                <output class="figure" aria-label={shop.say("card.figure")} aria-live="polite">
                    <span class="typed">{ slate.figure.replace('.', mark) }</span><i class="caret" aria-hidden="true"></i><small>{ symbol }</small>
                </output>
                <div class="units" role="radiogroup" aria-label={shop.say("card.units")} hidden={symbol.is_empty()}>
                    <p class="note" hidden={units.len() < 2}>{ shop.say("card.units") }</p>
                    { for units.iter().map(unit_row) }
                </div>
            </div>
        </div>
    }
}
