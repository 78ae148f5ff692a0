//! The shop's folder: where it is, what waits, what arrived, what came, and why something did not.

mod came;
mod form;
mod going;
mod offered;
mod share;
mod standing;
mod typed;

use crate::app::hooks::use_folder;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::exchange::folder::{Name, Sort};
use yew::prelude::*;

#[component]
pub(in crate::app) fn Folder() -> Html {
    let shop = use_shop();
    let folder = use_folder();
    let view = &folder.view;
    // The form begins with what is set, and is there once that was read: none is drawn anew while somebody types.
    let form = view.loaded.then(|| html! { <form::Setup key={format!("form-{}", view.place)} /> });
    html! {
        <Frame class="sheet folder-page" title={shop.say("folder.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="why" class="lead">{ shop.say("folder.why") }</p>
            <standing::Standing key="standing" />
            <div key="going" class="pair" hidden={!view.on}>
                { going::going(&shop, &folder) }
                <came::Came />
            </div>
            <div key="share" hidden={!view.on}><share::Share /></div>
            { for form }
            <section key="what" class="told-what">
                <h2>{ shop.say("folder.what") }</h2>
                <p>{ shop.say("folder.what-goes") }</p>
                <p>{ shop.say("folder.what-stays") }</p>
                <p class="note">{ shop.say("folder.what-erased") }</p>
            </section>
        </Frame>
    }
}

/// The words for a sort of file.
const fn sort_key(sort: Sort) -> &'static str {
    match sort {
        Sort::Mark => "folder.sort.mark",
        Sort::Results => "folder.sort.results",
        Sort::Set => "folder.sort.set",
        Sort::Sheet => "folder.sort.sheet",
        Sort::Withdrawal => "folder.sort.withdrawal",
    }
}

/// What a file is, with its name.
fn named(shop: &Shop, name: &Name) -> Html {
    html! {
        <>
            <b>{ shop.say(sort_key(name.sort())) }</b>
            <span class="file-name">{ name.as_str() }</span>
        </>
    }
}
