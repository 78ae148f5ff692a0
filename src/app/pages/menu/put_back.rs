//! A saved file put back: it is picked, looked at beside what is here, and then replaces all of it.

use crate::app::hooks::{use_everything, use_keys_held, use_signed};
use crate::app::parts::{FileField, Unlock, file_field};
use crate::app::state::{Everything, Shop, use_shop};
use crate::device::files::{Picked, picked_from, read};
use crate::device::{Held, clock, held, page, read_backup, session};
use crate::exchange::{BACKUP, Backup};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Id of what a picked file holds.
const WAITING: &str = "backup-waiting";
/// What this window is told by when it was loaded anew after all was replaced.
const PUT_BACK: &str = "stepboard-put-back";

/// Whether all was replaced before this window was loaded; told once.
pub(super) fn was_put_back() -> bool {
    let was = session::get(PUT_BACK).is_some();
    session::set(PUT_BACK, None);
    was
}

/// What was read of a picked file, and what is on this tablet beside it.
#[derive(Debug, Clone, PartialEq)]
struct Waiting {
    backup: Rc<Backup>,
    here: Held,
}

#[component]
pub(super) fn PutBack() -> Html {
    let shop = use_shop();
    let everything = use_everything();
    let (file, waiting) = (use_state(|| None::<Picked>), use_state(|| None::<Waiting>));
    let (sure, wrong) = (use_state(|| false), use_state(AttrValue::default));
    let pick = {
        let (shop, everything) = (shop.clone(), everything.clone());
        let (file, waiting) = (file.setter(), waiting.setter());
        let (sure, wrong) = (sure.setter(), wrong.setter());
        Callback::from(move |event: Event| {
            let Some(picked) = picked_from(&event) else { return };
            let (shop, everything) = (shop.clone(), everything.clone());
            let (file, waiting) = (file.clone(), waiting.clone());
            let (sure, wrong) = (sure.clone(), wrong.clone());
            spawn_local(async move {
                let picked = read(picked, BACKUP.most).await;
                let found = match &picked.bytes {
                    Ok(bytes) => looked_at(&shop, &everything, bytes).await.map(Some),
                    Err(_) => Ok(None),
                };
                file.set(Some(picked));
                sure.set(false);
                wrong.set(found.as_ref().err().cloned().unwrap_or_default());
                let found = found.unwrap_or_default();
                if found.is_some() {
                    page::once_drawn(|| page::bring(WAITING));
                }
                waiting.set(found);
            });
        })
    };
    let on_sure = {
        let (sure, wrong) = (sure.clone(), wrong.setter());
        Callback::from(move |_: Event| {
            sure.set(!*sure);
            wrong.set(AttrValue::default());
        })
    };
    // Where somebody may sign, only they replace what belongs to others too.
    let office = use_keys_held().open.is_some() || use_signed().book().is_none();
    let put_back = {
        let (shop, waiting, wrong, sure) = (shop.clone(), waiting.clone(), wrong.setter(), *sure);
        Callback::from(move |_: MouseEvent| {
            let Some(Waiting { backup, .. }) = (*waiting).clone() else { return };
            if !sure {
                return wrong.set(shop.say("backup.sure-first"));
            }
            let (shop, everything, wrong) = (shop.clone(), everything.clone(), wrong.clone());
            spawn_local(async move {
                match everything.put_back(&backup).await {
                    Ok(()) => {
                        session::set(PUT_BACK, Some(PUT_BACK));
                        page::all_windows_anew();
                    }
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
        <>
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
        </>
    }
}

/// What a picked file holds and what is here, or in words why it cannot be put back.
async fn looked_at(shop: &Shop, everything: &Everything, bytes: &[u8]) -> Result<Waiting, AttrValue> {
    let backup = read_backup(bytes)
        .map_err(|refused| shop.say_with("backup.refused", &[("why", shop.refused(&refused).to_string())]))?;
    let here = everything.backup(&shop.settings.device).await.map_err(|_| shop.say("backup.unread"))?;
    Ok(Waiting { backup: Rc::new(backup), here: held(&here) })
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
