//! How far sets agree with themselves.

use super::card_row::Voiding;
use super::done::set_title;
use super::void::VoidForm;
use super::void_what::VoidWhat;
use crate::app::state::{SetsContext, Shop};
use crate::learn::items::{Reliability, SetReport};
use yew::prelude::*;

pub(super) fn set_figures(
    shop: &Shop,
    known: &SetsContext,
    all: &[SetReport],
    voiding: &Voiding<'_>,
) -> Html {
    let figure = |value: Option<f64>| {
        value.map_or_else(|| shop.say("crew.items.none"), |value| AttrValue::from(shop.figure(value, 2)))
    };
    let row = |one: &SetReport| {
        let found = one.reliability.as_ref();
        let count = |of: fn(&Reliability) -> usize| {
            found.map_or_else(AttrValue::default, |found| AttrValue::from(of(found).to_string()))
        };
        let void = voiding.voids.of_set(&one.set).is_some();
        html! {
            <tr key={one.set.clone()}>
                <th scope="row">{ set_title(shop, known, &one.set) }<small class="struck-out" hidden={!void}>{ shop.say("record.void") }</small></th>
                <td>{ count(|found| found.people) }</td>
                <td>{ count(|found| found.items) }</td>
                <td>{ figure(found.and_then(|found| found.kr20)) }</td>
                <td>{ figure(found.and_then(|found| found.standard_error)) }</td>
            </tr>
        }
    };
    let head = ["set", "people", "kinds", "kr20", "error"]
        .map(|key| html! { <th key={key} scope="col">{ shop.say(&format!("crew.items.sets.{key}")) }</th> });
    let choice = |one: &SetReport| (VoidWhat::Set(one.set.clone()), set_title(shop, known, &one.set));
    html! {
        <section key="sets" hidden={all.is_empty()}>
            <h2>{ shop.say("crew.items.sets") }</h2>
            <details class="seen">
                <summary>{ shop.say("crew.items.figures") }</summary>
                <p class="note">{ shop.say("crew.items.sets-why") }</p>
                <div class="paper scroll" tabindex="0" role="region" aria-label={shop.say("crew.items.sets")}><table class="working counts"><thead><tr>{ for head }</tr></thead><tbody>{ for all.iter().map(row) }</tbody></table></div>
            </details>
            <VoidForm id="void-set" choices={all.iter().map(choice).collect::<Vec<_>>()} voiding={voiding.voiding.clone()} />
        </section>
    }
}
