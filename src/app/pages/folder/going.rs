//! What goes to the folder: what waits, what was refused and why, what arrived.

use super::named;
use crate::app::parts::{Picture, icon};
use crate::app::state::{FolderAct, FolderContext, Shop};
use crate::device::clock;
use crate::exchange::folder::{Filed, Name, Refusal, State};
use yew::prelude::*;

/// Files that arrived and are shown; of older ones only how many there are.
const ARRIVED_SHOWN: usize = 5;

pub(super) fn going(shop: &Shop, folder: &FolderContext) -> Html {
    let files = &folder.view.files;
    let arrived = files.iter().filter(|(_, filed)| matches!(filed.state, State::Arrived(_))).count();
    let shown = files.len() - arrived.saturating_sub(ARRIVED_SHOWN);
    html! {
        <section>
            <h2>{ shop.say("folder.going") }</h2>
            <p class="note">{ shop.say_with("folder.arrived-count", &[("n", arrived.to_string())]) }</p>
            <p key="none" hidden={!files.is_empty()}>{ shop.say("folder.going-none") }</p>
            <ul key="files" class="rows" hidden={files.is_empty()}>
                { for files.iter().take(shown).map(|(name, filed)| row(shop, folder, name, *filed)) }
            </ul>
        </section>
    }
}

fn row(shop: &Shop, folder: &FolderContext, name: &Name, filed: Filed) -> Html {
    let (sign, said) = match filed.state {
        State::Waits => (Picture::Dash, shop.say("folder.state.waits")),
        State::OnItsWay => (Picture::Go, shop.say("folder.state.on-its-way")),
        State::Arrived(at) => {
            (Picture::Tick, shop.say_with("folder.state.arrived", &[("at", clock::local_millis(at))]))
        }
        State::Refused(why) => {
            let status = if let Refusal::Status(status) = why { status.to_string() } else { String::new() };
            let key = format!("folder.refusal.{}", why.slug());
            (Picture::Cross, shop.say_with(&key, &[("status", status)]))
        }
    };
    let refused = matches!(filed.state, State::Refused(_));
    let again = {
        let (act, name) = (folder.act.clone(), name.clone());
        Callback::from(move |_: MouseEvent| act.emit(FolderAct::Again(name.clone())))
    };
    html! {
        <li key={name.as_str().to_owned()} class={classes!("filed", refused.then_some("wrong"))}>
            { icon(sign) }
            <span class="words">{ named(shop, name) }<span>{ said }</span></span>
            <button key="again" type="button" class="control" hidden={!refused} onclick={again}>{ shop.say("folder.again") }</button>
        </li>
    }
}
