//! What came from the folder: results that were taken in, sets and sheets that can be taken, and what was set aside.

use super::named;
use super::offered::{Offered, Taken};
use crate::app::hooks::use_folder;
use crate::app::parts::{Picture, icon};
use crate::app::state::{FolderAct, Shop, use_shop};
use crate::exchange::folder::{Aside, Name};
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(super) fn Came() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let taken = use_state(|| None::<Taken>);
    let on_done = use_callback(folder.act.clone(), {
        let set = taken.setter();
        move |(name, what): (Name, Option<Taken>), act| {
            set.set(what);
            act.emit(FolderAct::Done(name));
        }
    });
    let offered = |(name, text): &(Name, Rc<str>)| {
        html! { <Offered key={name.as_str().to_owned()} name={name.clone()} text={Rc::clone(text)} on_done={on_done.clone()} /> }
    };
    let taken = (*taken).clone().map(|(title, to)| {
        html! { <a href={to.address()} class="control">{ shop.say_with("folder.taken", &[("title", title)]) }</a> }
    });
    let view = &folder.view;
    let counts = [("n", view.results.to_string()), ("coming", view.coming.to_string())];
    let key = if view.takes_results { "folder.results-count" } else { "folder.results-not" };
    html! {
        <section>
            <h2>{ shop.say("folder.came") }</h2>
            <p class="note">{ shop.say_with(key, &counts) }</p>
            <p key="none" hidden={!view.offered.is_empty() || !view.aside.is_empty()}>{ shop.say("folder.came-none") }</p>
            <ul key="offered" class="rows" hidden={view.offered.is_empty()}>
                { for view.offered.iter().map(offered) }
            </ul>
            <p key="taken" role="status">{ for taken }</p>
            <ul key="aside" class="rows" hidden={view.aside.is_empty()}>
                { for view.aside.iter().map(|(name, why)| aside(&shop, &folder.act, name, why)) }
            </ul>
        </section>
    }
}

fn aside(shop: &Shop, act: &Callback<FolderAct>, name: &Name, why: &Aside) -> Html {
    let said = match why {
        Aside::Refused(slug, told) => {
            let told: Vec<(&str, String)> =
                told.iter().map(|(key, value)| (key.as_str(), value.clone())).collect();
            let why = shop.say_with(&format!("refused.{slug}"), &told).to_string();
            shop.say_with("folder.aside.refused", &[("why", why)])
        }
        Aside::NotGiven(status) => shop.say_with("folder.aside.not-given", &[("status", status.to_string())]),
        Aside::NotItsName | Aside::TooLarge => shop.say(&format!("folder.aside.{}", why.slug())),
    };
    let again = {
        let (act, name) = (act.clone(), name.clone());
        Callback::from(move |_: MouseEvent| act.emit(FolderAct::Again(name.clone())))
    };
    html! {
        <li key={name.as_str().to_owned()} class="filed wrong">
            { icon(Picture::Caution) }
            <span class="words">{ named(shop, name) }<span>{ said }</span></span>
            <button type="button" class="control" onclick={again}>{ shop.say("folder.fetch-again") }</button>
        </li>
    }
}
