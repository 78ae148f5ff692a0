//! Everything on this tablet as one file, and put back from it.

use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::parts::{FileField, Picture, Unlock, file_field, icon};
use crate::app::state::{Shop, use_shop};
use crate::device::files::{Picked, picked_from, read, save_json};
use crate::device::{Held, Store, StoreError, clock, held, page, read_backup};
use crate::exchange::{BACKUP, Backup};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Id of what a picked file holds.
const WAITING: &str = "backup-waiting";

/// What was read of a picked file, and what is on this tablet beside it.
#[derive(Debug, Clone, PartialEq)]
struct Waiting {
    backup: Rc<Backup>,
    here: Held,
}

#[component]
pub(super) fn AllOfIt() -> Html {
    let shop = use_shop();
    let (file, waiting) = (use_state(|| None::<Picked>), use_state(|| None::<Waiting>));
    let (sure, said) = (use_state(|| false), use_state(AttrValue::default));
    let wrong = use_state(AttrValue::default);
    let save = {
        let (shop, said) = (shop.clone(), said.clone());
        Callback::from(move |_: MouseEvent| {
            let (shop, said) = (shop.clone(), said.clone());
            spawn_local(async move {
                said.set(match saved(&shop).await {
                    Ok(name) => shop.say_with("backup.saved", &[("name", name)]),
                    Err(why) => shop.say_with("backup.not-saved", &[("why", why)]),
                });
            });
        })
    };
    let pick = {
        let (shop, file) = (shop.clone(), file.clone());
        let (waiting, wrong, sure) = (waiting.clone(), wrong.clone(), sure.clone());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (shop, file) = (shop.clone(), file.clone());
            let (waiting, wrong, sure) = (waiting.clone(), wrong.clone(), sure.clone());
            spawn_local(async move {
                let picked = read(picked, BACKUP.most).await;
                let found = picked.bytes.as_ref().ok().map(|bytes| read_backup(bytes));
                file.set(Some(picked));
                waiting.set(None);
                sure.set(false);
                wrong.set(AttrValue::default());
                match found {
                    None => {}
                    Some(Err(refused)) => {
                        let why = shop.refused(&refused);
                        wrong.set(shop.say_with("backup.refused", &[("why", why.to_string())]));
                    }
                    Some(Ok(backup)) => match all_here(&shop).await {
                        Ok(here) => {
                            waiting.set(Some(Waiting { backup: Rc::new(backup), here: held(&here) }));
                            page::once_drawn(|| page::bring(WAITING));
                        }
                        Err(_) => wrong.set(shop.say("backup.unread")),
                    },
                }
            });
        })
    };
    let on_sure = {
        let (sure, wrong) = (sure.clone(), wrong.clone());
        Callback::from(move |_: Event| {
            sure.set(!*sure);
            wrong.set(AttrValue::default());
        })
    };
    // Where somebody may sign, only they replace what belongs to others too.
    let office = use_keys_held().open.is_some() || use_signed().book().is_none();
    let put_back = {
        let (shop, waiting, wrong, sure) = (shop.clone(), waiting.clone(), wrong.clone(), sure.clone());
        Callback::from(move |_: MouseEvent| {
            let Some(Waiting { backup, .. }) = (*waiting).clone() else { return };
            if !*sure {
                return wrong.set(shop.say("backup.sure-first"));
            }
            let (shop, wrong) = (shop.clone(), wrong.clone());
            spawn_local(async move {
                match put(&backup).await {
                    Ok(()) => page::all_windows_anew(),
                    Err(_) => wrong.set(shop.say("backup.failed")),
                }
            });
        })
    };
    let field = FileField {
        id: "backup-file",
        label: shop.say("backup.pick"),
        hint: shop.say("backup.hint"),
        file: file.as_ref(),
        onchange: pick,
    };
    html! {
        <section key="backup" class="setting form">
            <h2>{ shop.say("backup.title") }</h2>
            <p class="note">{ shop.say("backup.why") }</p>
            <button key="save" type="button" class="control" onclick={save}>{ icon(Picture::File) }{ shop.say("backup.save") }</button>
            <p key="said" role="status">{ (*said).clone() }</p>
            { file_field(&shop, field) }
            <div key="waiting" id={WAITING} tabindex="-1" class="kraft form" hidden={waiting.is_none()}>
                { waiting.as_ref().map(|waiting| seen(&shop, waiting)).unwrap_or_default() }
                <label class={classes!("unit", sure.then_some("picked"))}>
                    <input type="checkbox" checked={*sure} onchange={on_sure} /><span>{ shop.say("backup.sure") }</span>
                </label>
                <div key="key" hidden={office}><p>{ shop.say("backup.needs-key") }</p>{ if office { Html::default() } else { html! { <Unlock /> } } }</div>
                <button key="go" type="button" class="control" disabled={!office} onclick={put_back}>{ shop.say("backup.go") }</button>
            </div>
            <p key="wrong" class="wrong" role="alert">{ (*wrong).clone() }</p>
        </section>
    }
}

async fn put(backup: &Backup) -> Result<(), StoreError> {
    Store::open().await?.put_back(backup, &page::random_name()).await
}

async fn all_here(shop: &Shop) -> Result<Backup, String> {
    let store = Store::open().await.map_err(|error| error.to_string())?;
    let all = store.everything().await.map_err(|error| error.to_string())?;
    Backup::of(&shop.settings.device, &clock::now(), all).map_err(|refused| refused.to_string())
}

/// Offers all as a file to save; gives its name.
async fn saved(shop: &Shop) -> Result<String, String> {
    let backup = all_here(shop).await?;
    let name = backup.save_name(clock::today());
    let text = backup.text().map_err(|refused| refused.to_string())?;
    save_json(&name, &text).map_err(|error| format!("{error:?}"))?;
    Ok(name)
}

/// What the file holds, what is here, and that two tablets may not go on with it.
fn seen(shop: &Shop, waiting: &Waiting) -> Html {
    let Waiting { backup, here } = waiting;
    let counts = |held: &Held| {
        let people = held.people.map_or_else(|| "?".to_owned(), |people| people.to_string());
        [
            ("events", held.events.to_string()),
            ("people", people),
            ("records", held.records.to_string()),
            ("walks", held.walks.to_string()),
            ("others", held.others.to_string()),
            ("at", clock::local(&backup.at)),
        ]
    };
    let empty = Held { events: 0, people: Some(0), records: 0, walks: 0, others: 0 };
    let told = if *here == empty {
        shop.say("backup.here-empty")
    } else {
        shop.say_with("backup.here", &counts(here))
    };
    html! {
        <>
            <p><b>{ shop.say_with("backup.holds", &counts(&held(backup))) }</b></p>
            <p>{ told }</p>
            <p>{ shop.say("backup.one") }</p>
        </>
    }
}
