//! Saves a sheet that was edited as the next edition of its name.

use crate::app::hooks::{use_settings, use_sheets};
use crate::app::parts::{Field, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, Settings, Shop, use_shop};
use crate::device::{clock, page};
use crate::exchange::{NAME_MOST, NOTE_MOST, Refused, SheetDraft};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct SaveProps {
    pub(super) draft: Rc<SheetDraft>,
}

#[component]
pub(super) fn Save(props: &SaveProps) -> Html {
    let shop = use_shop();
    let (sheets, settings) = (use_sheets(), use_settings());
    let draft = &props.draft;
    let (name, by, note) =
        (use_state(|| draft.name.clone()), use_state(|| draft.by.clone()), use_state(|| draft.note.clone()));
    let refused = use_state(|| None::<Refused>);
    let failed = use_state(|| false);
    let save = |into_use: bool| {
        let named = SheetDraft {
            name: (*name).clone(),
            by: (*by).clone(),
            note: (*note).clone(),
            ..(**draft).clone()
        };
        let (shop, sheets, settings) = (shop.clone(), sheets.clone(), settings.clone());
        let (refused, failed) = (refused.setter(), failed.setter());
        Callback::from(move |_: MouseEvent| {
            let edition = match named.edition(shop.content(), &sheets.editions, &clock::now()) {
                Ok(edition) => edition,
                Err(why) => {
                    // What is wrong is told beside its field, which takes the focus.
                    if let Refused::Value { place, .. } = &why {
                        page::focus(&format!("sheet-{place}"));
                    }
                    return refused.set(Some(why));
                }
            };
            refused.set(None);
            let (slug, edit, settings, failed) =
                (edition.slug(), sheets.edit.clone(), settings.clone(), failed.clone());
            let done = Callback::from(move |stored: bool| {
                failed.set(!stored);
                if !stored {
                    return;
                }
                if into_use {
                    settings.change.emit(Settings { sheet: slug.clone(), ..(*settings.now).clone() });
                }
                Route::SheetOf { slug: slug.clone() }.go();
                edit.emit(None);
            });
            sheets.put.emit(Keep { what: edition, done });
        })
    };
    let wrong =
        |place: &str| refused.as_ref().map_or_else(AttrValue::default, |refused| at(&shop, refused, place));
    let edition = sheets.editions.next(name.trim());
    let which = shop.say_with("own.will-be", &[("edition", edition.to_string())]);
    let most = |most: usize| shop.say_with("own.most", &[("most", most.to_string())]);
    html! {
        <section key="save" class="paper form own-save">
            <h2>{ shop.say("own.save") }</h2>
            <Field id="sheet-name" label={shop.say("own.name")} hint={if name.trim().is_empty() { most(NAME_MOST) } else { which }} wrong={wrong("name")} value={(*name).clone()} on_input={typed_into(&name)} />
            <Field id="sheet-note" label={shop.say("own.note")} hint={most(NOTE_MOST)} wrong={wrong("note")} value={(*note).clone()} on_input={typed_into(&note)} />
            <Field id="sheet-by" label={shop.say("own.by")} hint={most(NAME_MOST)} wrong={wrong("by")} value={(*by).clone()} on_input={typed_into(&by)} />
            <p key="values" class="wrong" role="alert" hidden={wrong("values").is_empty()}>{ wrong("values") }</p>
            <p key="failed" class="wrong" role="alert" hidden={!*failed}>{ if *failed { shop.say("people.not-stored") } else { AttrValue::default() } }</p>
            <div class="people">
                <button type="button" class="next-step" onclick={save(true)}>{ shop.say("own.save-use") }</button>
                <button type="button" class="control" onclick={save(false)}>{ shop.say("own.save-only") }</button>
            </div>
        </section>
    }
}

/// Why it is refused, beside the field that it is about; what is about no field stands with the values.
fn at(shop: &Shop, refused: &Refused, place: &str) -> AttrValue {
    match refused {
        Refused::Value { place: at, .. } if at == "name" && place == "name" => {
            shop.say_with("own.wrong.name", &[("most", NAME_MOST.to_string())])
        }
        Refused::Value { place: at, .. } if at == "note" && place == "note" => {
            shop.say_with("own.wrong.note", &[("most", NOTE_MOST.to_string())])
        }
        Refused::Value { place: at, .. } if at == "by" && place == "by" => {
            shop.say_with("own.wrong.by", &[("most", NAME_MOST.to_string())])
        }
        Refused::Value { place: at, found, .. } if at == "values" && place == "values" => {
            shop.say_with("own.wrong.values", &[("found", found.clone())])
        }
        Refused::Value { place: at, .. } if ["name", "note", "by", "values"].contains(&at.as_str()) => {
            AttrValue::default()
        }
        other if place == "values" => shop.refused(other),
        _ => AttrValue::default(),
    }
}
