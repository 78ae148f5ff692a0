//! One shop sheet: what it is, what may be done with it, how it differs, and every value of it.

use super::keep::kept_for;
use super::read::values;
use crate::app::hooks::{use_book, use_desk, use_keys_held, use_people, use_settings, use_sheets, use_walks};
use crate::app::parts::{Column, Frame, HandOut, differ_table};
use crate::app::route::Route;
use crate::app::state::{Keep, Settings, Shop, use_shop};
use crate::device::clock;
use crate::exchange::{OwnSheet, SHEET, SheetDraft, content_name};
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SheetOfProps {
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn SheetOf(props: &SheetOfProps) -> Html {
    let shop = use_shop();
    let (sheets, settings) = (use_sheets(), use_settings());
    let (book, desk) = (use_book().book, use_desk());
    let (keys, crew) = (use_keys_held(), use_people().crew);
    let failed = use_state(|| false);
    let slug = props.slug.clone();
    let own = sheets.editions.get(&slug);
    let sheet = shop.content().sheet(&slug);
    let (name, used) = (shop.sheet_name(&slug), shop.sheet().is_some_and(|sheet| sheet.slug == slug));
    let by = keys.open.as_ref().map(|open| format!("{} ({})", open.person.name, open.person.number)).or_else(
        || {
            crew.of_journal(&shop.settings.person)
                .map(|member| format!("{} ({})", member.name, member.number))
        },
    );
    let by = by.unwrap_or_else(|| shop.settings.person.clone());
    let begin = |copy: bool| {
        let (shop, sheets, slug, by) = (shop.clone(), sheets.clone(), slug.clone(), by.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(mut draft) = SheetDraft::of(shop.content(), &sheets.editions, &slug, &by) {
                if copy {
                    draft.name = String::new();
                }
                sheets.edit.emit(Some(draft));
                Route::SheetEdit.go();
            }
        })
    };
    let take = {
        let (change, now, slug) = (settings.change.clone(), settings.now.clone(), slug.clone());
        Callback::from(move |_: MouseEvent| change.emit(Settings { sheet: slug.clone(), ..(*now).clone() }))
    };
    let let_go = {
        let (let_go, slug, failed) = (sheets.let_go.clone(), slug.clone(), failed.setter());
        Callback::from(move |_: MouseEvent| {
            let failed = failed.clone();
            let done = Callback::from(move |gone: bool| {
                failed.set(!gone);
                if gone {
                    Route::Sheet.go();
                }
            });
            let_go.emit(Keep { what: slug.clone(), done });
        })
    };
    let stays = kept_for(&shop, &book.journal, &desk, &use_walks(), &slug);
    let text = own.and_then(|own| own.text().ok());
    let editing = sheets.draft.is_some();
    let is_own = own.is_some();
    html! {
        <Frame class="sheet own-sheets" title={name} back={Some(Route::Sheet)} cautions={shop.cautions_for(&[])}>
            <p key="none" class="lead" hidden={sheet.is_some() || is_own}>{ shop.say("own.no-such") }</p>
            { for own.map(|own| made(&shop, own)) }
            <p key="used" class="lead" role="status" hidden={!used}>{ if used { shop.say("own.is-in-use") } else { AttrValue::default() } }</p>
            <div key="acts" class="people" hidden={sheet.is_none()}>
                <button type="button" class="next-step" hidden={used} onclick={take}>{ shop.say("own.use") }</button>
                <button type="button" class="control" hidden={editing} onclick={begin(false)}>{ shop.say(if is_own { "own.edit" } else { "own.edit-shipped" }) }</button>
                <button type="button" class="control" hidden={editing || !is_own} onclick={begin(true)}>{ shop.say("own.copy") }</button>
                <a href={Route::SheetEdit.address()} class="control" hidden={!editing}>{ shop.say("own.go-on") }</a>
            </div>
            <div key="out" hidden={text.is_none()}>
                { for text.map(|text| html! { <HandOut name={content_name(SHEET, text.as_bytes())} {text} title={shop.sheet_name(&slug)} /> }) }
            </div>
            { beside(&shop, &slug) }
            { for own.map(|own| from_base(&shop, own)) }
            <details key="values" class="own-values" hidden={sheet.is_none()}>
                <summary>{ shop.say("own.all-values") }</summary>
                { for sheet.map(|sheet| values(&shop, sheet)) }
            </details>
            <section key="go" hidden={!is_own}>
                <h2>{ shop.say("own.let-go") }</h2>
                <p class="note">{ shop.say(&format!("own.stays.{}", stays.unwrap_or("not"))) }</p>
                <button type="button" class="control" hidden={stays.is_some()} onclick={let_go}>{ shop.say("own.let-go-now") }</button>
                <p class="wrong" role="alert" hidden={!*failed}>{ if *failed { shop.say("people.not-stored") } else { AttrValue::default() } }</p>
            </section>
        </Frame>
    }
}

/// Who made it, when and why, and whether it can be used here.
fn made(shop: &Shop, own: &OwnSheet) -> Html {
    let named = [("by", own.by.clone()), ("at", clock::local(&own.at))];
    let refused = own.sheet(shop.content()).err();
    let refused = refused.map(|refused| shop.refused(&refused));
    html! {
        <section key="made" class="paper">
            <p>{ shop.say_with(if own.by.is_empty() { "own.made-at" } else { "own.made" }, &named) }</p>
            <p hidden={own.note.is_empty()}>{ &own.note }</p>
            <p class="wrong" role="alert" hidden={refused.is_none()}>{ shop.say("own.unusable") }{ " " }{ refused.clone().unwrap_or_default() }</p>
        </section>
    }
}

/// How an edition differs from the sheet that it stands on.
fn from_base(shop: &Shop, own: &OwnSheet) -> Html {
    let content = shop.content();
    let Some((sheet, base)) = own.sheet(content).ok().zip(content.sheet(&own.base)) else {
        return html! { <span key="base" hidden=true></span> };
    };
    let one = Column { name: shop.sheet_name(&base.slug), sheet: base };
    let other = Column { name: shop.sheet_name(&own.slug()), sheet: &sheet };
    html! { <section key="base" class="paper"><h2>{ shop.say("own.from-base") }</h2>{ differ_table(shop, &one, &other) }</section> }
}

/// Which sheet to lay beside it.
fn beside(shop: &Shop, slug: &str) -> Html {
    let here = slug.to_owned();
    let onchange = Callback::from(move |event: Event| {
        let select = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
        let other = select.map(|select| select.value()).unwrap_or_default();
        if !other.is_empty() {
            Route::SheetBeside { slug: here.clone(), other }.go();
        }
    });
    let others = shop.content().sheets.iter().filter(|sheet| sheet.slug != slug);
    let option = |one: &str| html! { <option key={one.to_owned()} value={one.to_owned()}>{ shop.sheet_name(one) }</option> };
    html! {
        <p key="beside" class="field">
            <label for="beside">{ shop.say("own.beside-pick") }</label>
            <select id="beside" {onchange}>
                <option key="" value="" selected=true>{ shop.say("bench.pick") }</option>
                { for others.map(|sheet| option(&sheet.slug)) }
            </select>
        </p>
    }
}
