//! The menu: who works, units, shop sheet, light, hand, and whether the answers are kept.

use crate::app::hooks::{use_book, use_settings};
use crate::app::parts::{Frame, NameField};
use crate::app::route::Route;
use crate::app::state::{Light, Settings, use_shop};
use crate::content::Units;
use crate::device::page::{self, Kept};
use crate::rules::term::Term;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Menu() -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let book = use_book().book;
    let kept = use_state(|| None::<Kept>);
    use_effect_with((), {
        let kept = kept.setter();
        move |()| spawn_local(async move { kept.set(Some(page::ask_to_keep().await)) })
    });
    let now = (*settings.now).clone();
    let set = |next: Settings| settings.change.reform(move |_: Event| next.clone());
    let choice = |group: &'static str, label: AttrValue, picked: bool, next: Settings| {
        html! {
            <label key={label.to_string()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={group} checked={picked} onchange={set(next)} /><span>{ label }</span>
            </label>
        }
    };
    let group = |title: &str, choices: Vec<Html>| {
        html! { <fieldset key={title.to_owned()} class="setting"><legend>{ shop.say(title) }</legend><div class="segments">{ choices.into_iter().collect::<Html>() }</div></fieldset> }
    };
    let units = |fahrenheit, us| Settings { units: Units { fahrenheit, us }, ..now.clone() };
    let (fahrenheit, us) = (now.units.fahrenheit, now.units.us);
    let sheet_now = shop.sheet().map(|sheet| sheet.slug.clone()).unwrap_or_default();
    let sheets = shop.content().sheets.iter().map(|sheet| {
        let next = Settings { sheet: sheet.slug.clone(), ..now.clone() };
        choice("sheet", shop.text(&format!("sheet.{}", sheet.slug)), sheet.slug == sheet_now, next)
    });
    let lights = Light::ALL.iter().map(|light| {
        let next = Settings { light: *light, ..now.clone() };
        choice("light", shop.say(&format!("menu.light.{}", light.slug())), *light == now.light, next)
    });
    let hand = |left: bool| Settings { left_hand: left, ..now.clone() };
    let on_name = use_callback(settings.clone(), |person: String, settings| {
        settings.change.emit(Settings { person, name_asked: true, ..(*settings.now).clone() });
    });
    let others = book.journal.people().into_iter().filter(|person| *person != now.person).map(|person| {
        let name = person.to_owned();
        html! { <button key={name.clone()} type="button" class="control" onclick={on_name.reform(move |_: MouseEvent| name.clone())}>{ person.to_owned() }</button> }
    });
    let keeping = match *kept {
        None => AttrValue::default(),
        Some(Kept::Yes) => shop.say("saved.kept-yes"),
        Some(Kept::No) => shop.say("saved.kept-no"),
        Some(Kept::Unknown) => shop.say("saved.kept-unknown"),
    };
    html! {
        <Frame class="sheet menu" title={shop.say("menu.title")} back={Some(Route::Home)} cautions={Vec::new()}>
            <section key="person" class="setting">
                <h2>{ shop.say("menu.person") }</h2>
                <NameField key={now.person.clone()} name={now.person.clone()} on_name={on_name.clone()} skip=false />
                <div class="people">{ for others }</div>
            </section>
            { group("menu.temperature", vec![
                choice("temperature", "°C".into(), !fahrenheit, units(false, us)),
                choice("temperature", "°F".into(), fahrenheit, units(true, us)),
            ]) }
            { group("menu.measures", vec![
                choice("measures", shop.say("menu.metric"), !us, units(fahrenheit, false)),
                choice("measures", shop.say("menu.us"), us, units(fahrenheit, true)),
            ]) }
            { group("menu.sheet", sheets.collect()) }
            <p key="sheet-why" class="note">{ shop.say("menu.sheet-why") }</p>
            { group("menu.light", lights.collect()) }
            { group("menu.hand", vec![
                choice("hand", shop.say("menu.hand.right"), !now.left_hand, hand(false)),
                choice("hand", shop.say("menu.hand.left"), now.left_hand, hand(true)),
            ]) }
            <section key="keeping" class="setting">
                <h2>{ shop.say("menu.keeping") }</h2>
                <p role="status">{ keeping }</p>
                <p class="note">{ shop.say("menu.licence") }</p>
            </section>
        </Frame>
    }
}
