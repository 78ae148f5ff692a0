//! How the folder stands, in a line, and what can be done about it.

use crate::app::hooks::use_folder;
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{FolderAct, FolderView, Shop, use_shop};
use crate::device::{carry, clock};
use crate::exchange::folder::State;
use yew::prelude::*;

#[component]
pub(super) fn Standing() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let view = &folder.view;
    let password = use_state(String::new);
    let emit = |what: FolderAct| {
        let act = folder.act.clone();
        Callback::from(move |_: MouseEvent| act.emit(what.clone()))
    };
    let onsubmit = {
        let (act, password) = (folder.act.clone(), password.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if !password.is_empty() {
                act.emit(FolderAct::Password((*password).clone()));
                password.set(String::new());
            }
        })
    };
    let stopped = view.stopped.as_ref().filter(|_| view.on);
    let (head, why) = match stopped {
        Some(stop) => {
            (shop.say("folder.stopped"), shop.say_with(&format!("folder.stop.{}", stop.slug()), &stop.told()))
        }
        None => state(&shop, view),
    };
    let looked = view.looked.map(clock::local_millis);
    let asks = view.on && !view.open;
    html! {
        <section class={classes!("paper", "folder-standing", stopped.is_some().then_some("stopped"))}>
            <div role="status">
                <h2>{ head }</h2>
                <p key="why">{ why }</p>
                <p key="place" class="note" hidden={!view.on}>
                    { shop.say_with("folder.at", &[("place", view.place.clone()), ("user", view.user.clone())]) }
                </p>
                <p key="looked" class="note" hidden={!view.on || looked.is_none()}>
                    { shop.say_with("folder.looked", &[("at", looked.unwrap_or_default())]) }
                </p>
            </div>
            <form key="password" class="form" hidden={!asks} {onsubmit}>
                <Field id="folder-again" kind="password" label={shop.say_with("folder.password-of", &[("user", view.user.clone())])} value={(*password).clone()} on_input={typed_into(&password)} />
                <button class="control">{ shop.say("folder.unlock") }</button>
            </form>
            <div key="acts" class="people" hidden={!view.on}>
                <button type="button" class="control" disabled={asks || view.working} onclick={emit(FolderAct::Now)}>
                    { icon(Picture::Go) }{ shop.say(if stopped.is_some() { "folder.go-on" } else { "folder.now" }) }
                </button>
                <button type="button" class="control" onclick={emit(FolderAct::HandIn(false))}>{ shop.say("folder.hand-in") }</button>
                <button type="button" class="control" onclick={emit(FolderAct::HandIn(true))}>{ shop.say("folder.hand-in-all") }</button>
                <button type="button" class="control" onclick={emit(FolderAct::Off)}>{ shop.say("folder.off") }</button>
            </div>
        </section>
    }
}

fn state(shop: &Shop, view: &FolderView) -> (AttrValue, AttrValue) {
    let of = |state: fn(&State) -> bool| view.files.iter().filter(|(_, filed)| state(&filed.state)).count();
    let waiting = of(|state| matches!(state, State::Waits | State::OnItsWay));
    let key = if !view.on {
        "is-off"
    } else if !view.open {
        "asks"
    } else if view.working {
        "works"
    } else if !carry::online() {
        "offline"
    } else if waiting > 0 {
        "waits"
    } else {
        "rests"
    };
    let told = [
        ("waiting", waiting.to_string()),
        ("coming", view.coming.to_string()),
        ("at", clock::local_millis(view.again_at)),
    ];
    (shop.say(&format!("folder.{key}")), shop.say_with(&format!("folder.{key}-why"), &told))
}
