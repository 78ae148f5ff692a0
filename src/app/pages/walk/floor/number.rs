//! A number of an operation: a button on either side, or typed in the unit that is shown.

use super::{Ground, guide};
use crate::app::pages::walk::figure;
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::content::Number;
use crate::quantity::{Unit, read_number};
use crate::rules::term::Term;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

pub(super) fn id(ask: crate::content::Ask) -> String {
    format!("walk-{}", ask.slug())
}

/// The next value below or above, or the same at the end of the span.
fn next(number: &Number, now: f64, up: bool) -> f64 {
    let dust = number.step / 1e6;
    let found = if number.among.is_empty() {
        let steps = ((now - number.from) / number.step).round() + if up { 1.0 } else { -1.0 };
        Some(number.from + steps * number.step)
    } else if up {
        number.among.iter().copied().find(|one| *one > now + dust)
    } else {
        number.among.iter().copied().rfind(|one| *one < now - dust)
    };
    found.unwrap_or(now).clamp(number.from, number.to)
}

pub(super) fn number(ground: &Ground<'_>, number: &Number) -> Html {
    let Ground { shop, hand, .. } = ground;
    let ask = number.ask;
    let now = hand.values.numbers.get(&ask).copied().unwrap_or(number.start);
    let unit = shop.settings.units.shown(figure::said(number, now).unit);
    let shown = |value: f64| figure::said(number, value).in_unit(unit);
    let typed = hand.values.typed.get(&ask).cloned();
    let wrong = typed.is_some();
    let step = |up: bool| {
        let number = number.clone();
        // From what stands there when it is touched: a second touch may come before the screen shows the first.
        ground.on(move |hand, _: MouseEvent| {
            let now = hand.values.numbers.get(&ask).copied().unwrap_or(number.start);
            hand.values.typed.remove(&ask);
            hand.values.numbers.insert(ask, next(&number, now, up));
        })
    };
    let (own, language) = (number.clone(), Shop::clone(shop));
    let oninput = ground.on(move |hand, event: InputEvent| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let text = input.map(|input| input.value()).unwrap_or_default();
        let value =
            read_number(&language.texts().typed(&text)).and_then(|value| figure::typed(&own, value, unit));
        match value.filter(|value| own.allows(*value)) {
            Some(value) => {
                hand.values.typed.remove(&ask);
                hand.values.numbers.insert(ask, value);
            }
            None => {
                hand.values.typed.insert(ask, text);
            }
        }
    });
    let name = shop.text(&format!("walk.ask.{}", ask.slug()));
    let symbol = if unit == Unit::Count { AttrValue::default() } else { unit.symbol().into() };
    let texts = shop.texts();
    let bounds = [("from", texts.measure(shown(number.from))), ("to", texts.measure(shown(number.to)))];
    let among: Vec<String> = number.among.iter().map(|one| texts.figure(shown(*one))).collect();
    let allowed = if among.is_empty() {
        shop.say_with("walk.allowed", &bounds)
    } else {
        shop.say_with("walk.among", &[("values", among.join(", "))])
    };
    let named = [("name", name.to_string())];
    let (id, hint) = (id(ask), format!("walk-{}-wrong", ask.slug()));
    html! {
        <div key={ask.slug()} class="walk-number">
            <label for={id.clone()}>{ name }<small>{ symbol }</small></label>
            <div class="stepper">
                <button key="less" type="button" class="control square" aria-label={shop.say_with("walk.less", &named)} disabled={now <= number.from} onclick={step(false)}>{ icon(Picture::Dash) }</button>
                <input key="value" {id} type="text" inputmode="decimal" autocomplete="off" value={typed.unwrap_or_else(|| texts.figure(shown(now)))}
                    {oninput} aria-invalid={wrong.then_some("true")} aria-describedby={hint.clone()} />
                <button key="more" type="button" class="control square" aria-label={shop.say_with("walk.more", &named)} disabled={now >= number.to} onclick={step(true)}>{ icon(Picture::Plus) }</button>
            </div>
            <p id={hint} class="wrong" role="alert" hidden={!wrong}>{ allowed }</p>
            { for guide::of_number(ground, ask).into_iter().enumerate().map(|(nth, told)| html! { <p key={nth} class="note">{ told }</p> }) }
        </div>
    }
}
