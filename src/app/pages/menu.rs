//! The menu: who works, units, shop sheet, light, hand, and whether the answers are kept.

use crate::app::hooks::{use_book, use_lock, use_people, use_settings};
use crate::app::parts::{
    Frame, NameField, Picture, SettingChoice, icon, setting, sheet_setting, unit_settings,
};
use crate::app::route::Route;
use crate::app::state::{Light, Settings, SettingsContext, Shop, use_shop};
use crate::device::page::{self, Kept};
use crate::people::Crew;
use crate::record::Journal;
use crate::rules::term::Term;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Menu() -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let book = use_book().book;
    let crew = use_people().crew;
    let hand_over = use_lock().set.reform(|_: MouseEvent| true);
    let kept = use_state(|| None::<Kept>);
    use_effect_with((), {
        let kept = kept.setter();
        move |()| spawn_local(async move { kept.set(Some(page::ask_to_keep().await)) })
    });
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
            { people(&shop, &settings, &book.journal, &crew) }
            <nav key="office" class="people">
                <a href={Route::People.address()} class="control">{ shop.say("menu.people") }</a>
                <a href={Route::Asked.address()} class="control">{ shop.say("menu.asked") }</a>
                <a href={Route::Assess.address()} class="control">{ shop.say("assess.title") }</a>
                <button type="button" class="control" hidden={crew.members().is_empty()} onclick={hand_over}>{ shop.say("people.hand-over") }</button>
            </nav>
            { unit_settings(&shop, &settings.change) }
            { sheet_setting(&shop, &settings.change) }
            <div key="sheet-why" class="note how">
                <p>{ shop.say("menu.sheet-why") }</p>
                <a href={Route::Sheet.address()} class="text-link">{ shop.say("sheet.open") }</a>
            </div>
            { setting(&settings.change, shop.say("menu.light"), "light", &Light::ALL.iter().map(light).collect::<Vec<_>>()) }
            { setting(&settings.change, shop.say("menu.hand"), "hand", &[hand("menu.hand.right", false), hand("menu.hand.left", true)]) }
            { keeping(&shop, *kept) }
            <section key="instructor" class="setting">
                <h2>{ shop.say("menu.instructor") }</h2>
                <ul class="rows links">
                    <li key="sheet"><a href={Route::Sheet.address()} class="row-link"><span class="words">{ shop.say("own.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li key="air"><a href={Route::Air.address()} class="row-link"><span class="words">{ shop.say("air.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li key="sets"><a href={Route::Sets.address()} class="row-link"><span class="words">{ shop.say("sets.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li key="open"><a href={Route::Open.address()} class="row-link"><span class="words">{ shop.say("open.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li key="folder"><a href={Route::Folder.address()} class="row-link"><span class="words">{ shop.say("folder.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li key="crew"><a href={Route::Crew.address()} class="row-link"><span class="words">{ shop.say("crew.title") }</span>{ icon(Picture::Go) }</a></li>
                </ul>
            </section>
            <section key="verify" class="setting">
                <h2>{ shop.say("menu.sign-offs") }</h2>
                <ul class="rows links">
                    <li><a href={Route::Book.address()} class="row-link"><span class="words">{ shop.say("book.title") }</span>{ icon(Picture::Go) }</a></li>
                    <li><a href={Route::Verify.address()} class="row-link"><span class="words">{ shop.say("verify.title") }</span>{ icon(Picture::Go) }</a></li>
                </ul>
            </section>
        </Frame>
    }
}

/// Who works: a new name, or one that answered on this tablet before.
fn people(shop: &Shop, settings: &SettingsContext, journal: &Journal, crew: &Crew) -> Html {
    let person = settings.now.person.clone();
    let now = Rc::clone(&settings.now);
    let on_name =
        settings.change.reform(move |person| Settings { person, name_asked: true, ..(*now).clone() });
    // Those with a number are asked who they are elsewhere, since they may have a PIN.
    let free = |other: &&str| *other != person && crew.of_journal(other).is_none();
    let others = journal.people().into_iter().filter(free).map(str::to_owned);
    let member = crew.of_journal(&person).map(|member| format!("{} ({})", member.name, member.number));
    let other = |name: String| {
        let shown = name.clone();
        let onclick = on_name.reform(move |_: MouseEvent| name.clone());
        html! { <button key={shown.clone()} type="button" class="control" {onclick}>{ shown }</button> }
    };
    html! {
        <section key="person" class="setting">
            <p key="member" hidden={member.is_none()}>{ shop.say_with("menu.member", &[("person", member.clone().unwrap_or_default())]) }</p>
            <div key="name" hidden={member.is_some()}>
            <NameField key={person.clone()} label={shop.say("home.name")} name={person.clone()} on_name={on_name.clone()} skip=false />
            </div>
            <div key="people" class="people">{ for others.map(other) }</div>
        </section>
    }
}

/// What the browser said when it was asked to keep the answers.
fn keeping(shop: &Shop, kept: Option<Kept>) -> Html {
    let said = match kept {
        None => AttrValue::default(),
        Some(Kept::Yes) => shop.say("saved.kept-yes"),
        Some(Kept::No) => shop.say("saved.kept-no"),
        Some(Kept::Unknown) => shop.say("saved.kept-unknown"),
    };
    html! {
        <section key="keeping" class="setting">
            <h2>{ shop.say("menu.keeping") }</h2>
            <p role="status">{ said }</p>
            <p class="note">{ shop.say("menu.licence") }</p>
        </section>
    }
}
