//! Sets that were made on this tablet and shop sheets of the shop's own, to be put into the folder.

use super::sort_key;
use crate::app::hooks::{use_folder, use_sets, use_sheets};
use crate::app::state::{FolderAct, Origin, use_shop};
use crate::exchange::folder::{Name, Sort};
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(super) fn Share() -> Html {
    let shop = use_shop();
    let (folder, sets, sheets) = (use_folder(), use_sets(), use_sheets());
    let files = use_memo((Rc::clone(&sets.all), Rc::clone(&sheets.editions)), |(sets, editions)| {
        let made = sets.iter().filter(|one| one.origin == Origin::Made);
        let made = made.filter_map(|one| Some((Sort::Set, one.set.title.clone(), one.set.write().ok()?)));
        let own = editions.iter();
        let own = own.filter_map(|one| Some((Sort::Sheet, one.name.clone(), one.text().ok()?)));
        let named = |(sort, title, text): (Sort, String, String)| (Name::of(sort, &text), title, text);
        made.chain(own).map(named).collect::<Vec<(Name, String, String)>>()
    });
    let row = |(name, title, text): &(Name, String, String)| {
        let sort = name.sort();
        let there = folder.view.files.iter().any(|(file, _)| file == name);
        let put = {
            let (act, text) = (folder.act.clone(), text.clone());
            Callback::from(move |_: MouseEvent| act.emit(FolderAct::Share(sort, text.clone())))
        };
        html! {
            <li key={name.as_str().to_owned()}>
                <span class="words"><b>{ title }</b><span>{ shop.say(sort_key(sort)) }</span></span>
                <span key="there" hidden={!there}>{ shop.say("folder.shared") }</span>
                <button key="put" type="button" class="control" hidden={there} onclick={put}>{ shop.say("folder.share") }</button>
            </li>
        }
    };
    html! {
        <section hidden={files.is_empty()}>
            <h2>{ shop.say("folder.own-sets") }</h2>
            <ul class="rows">{ for files.iter().map(row) }</ul>
        </section>
    }
}
