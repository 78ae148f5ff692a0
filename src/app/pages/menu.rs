//! The menu: who works, units, shop sheet, light, hand, and whether the answers are kept.

use crate::app::hooks::{use_book, use_settings};
use crate::app::parts::{Frame, NameField, Setting, SettingChoice, SheetSetting, UnitSettings};
use crate::app::route::Route;
use crate::app::state::{Light, Settings, use_shop};
use crate::device::page::{self, Kept};
use crate::rules::term::Term;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;
use yew_router::prelude::*;

#[component]
pub(in crate::app) fn Menu() -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let now = (*settings.now).clone();
    let light = |light: &Light| SettingChoice {
        name: shop.say(&format!("menu.light.{}", light.slug())),
        chosen: *light == now.light,
        leads_to: Settings { light: *light, ..now.clone() },
    };
    let hand = |key: &str, left_hand: bool| SettingChoice {
        name: shop.say(key),
        chosen: now.left_hand == left_hand,
        leads_to: Settings { left_hand, ..now.clone() },
    };
    html! {
        <Frame class="sheet menu" title={shop.say("menu.title")} back={Some(Route::Home)} cautions={shop.cautions_for(&[])}>
            <People key="person" />
            <UnitSettings key="units" />
            <SheetSetting key="sheet" />
            <div key="sheet-why" class="note how">
                <p>{ shop.say("menu.sheet-why") }</p>
                <Link<Route> to={Route::Sheet} classes="text-link">{ shop.say("sheet.open") }</Link<Route>>
            </div>
            <Setting key="light" title={shop.say("menu.light")} group="light" choices={Light::ALL.iter().map(light).collect::<Vec<_>>()} />
            <Setting key="hand" title={shop.say("menu.hand")} group="hand"
                choices={vec![hand("menu.hand.right", false), hand("menu.hand.left", true)]} />
            <Keeping key="keeping" />
        </Frame>
    }
}

/// Who works: a new name, or one that answered on this tablet before.
#[component]
fn People() -> Html {
    let settings = use_settings();
    let book = use_book().book;
    let person = settings.now.person.clone();
    let on_name = use_callback(settings, |person: String, settings| {
        settings.change.emit(Settings { person, name_asked: true, ..(*settings.now).clone() });
    });
    let others = book.journal.people().into_iter().filter(|other| *other != person).map(str::to_owned);
    let other = |name: String| {
        let shown = name.clone();
        let onclick = on_name.reform(move |_: MouseEvent| name.clone());
        html! { <button key={shown.clone()} type="button" class="control" {onclick}>{ shown }</button> }
    };
    html! {
        <section class="setting">
            <NameField key={person.clone()} name={person.clone()} on_name={on_name.clone()} skip=false />
            <div key="people" class="people">{ for others.map(other) }</div>
        </section>
    }
}

/// Asks the browser to keep the answers and shows what it said.
#[component]
fn Keeping() -> Html {
    let shop = use_shop();
    let kept = use_state(|| None::<Kept>);
    use_effect_with((), {
        let kept = kept.setter();
        move |()| spawn_local(async move { kept.set(Some(page::ask_to_keep().await)) })
    });
    let said = match *kept {
        None => AttrValue::default(),
        Some(Kept::Yes) => shop.say("saved.kept-yes"),
        Some(Kept::No) => shop.say("saved.kept-no"),
        Some(Kept::Unknown) => shop.say("saved.kept-unknown"),
    };
    html! {
        <section class="setting">
            <h2>{ shop.say("menu.keeping") }</h2>
            <p role="status">{ said }</p>
            <p class="note">{ shop.say("menu.licence") }</p>
        </section>
    }
}
