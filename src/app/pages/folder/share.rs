//! Sets that were made on this tablet and shop sheets of the shop's own, to be put into the folder.

use super::sort_key;
use crate::app::hooks::{use_folder, use_sets, use_sheets};
use crate::app::state::{FolderAct, Origin, use_shop};
use crate::exchange::folder::{Name, Sort};
use yew::prelude::*;

#[component]
pub(super) fn Share() -> Html {
    let shop = use_shop();
    let (folder, sets, sheets) = (use_folder(), use_sets(), use_sheets());
    let made = sets.all.iter().filter(|one| one.origin == Origin::Made);
    let made = made.filter_map(|one| Some((Sort::Set, one.set.title.clone(), one.set.write().ok()?)));
    let own = sheets.editions.iter();
    let own = own.filter_map(|one| Some((Sort::Sheet, one.name.clone(), one.text().ok()?)));
    let row = |(sort, title, text): (Sort, String, String)| {
        let name = Name::of(sort, &text);
        let there = folder.view.files.iter().any(|(file, _)| *file == name);
        let put = {
            let act = folder.act.clone();
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
    let rows: Vec<Html> = made.chain(own).map(row).collect();
    html! {
        <section hidden={rows.is_empty()}>
            <h2>{ shop.say("folder.own-sets") }</h2>
            <ul class="rows">{ for rows }</ul>
        </section>
    }
}
