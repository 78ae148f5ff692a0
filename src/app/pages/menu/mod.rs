//! The menu in the order of use: who works, what they do, the instructor's screens, people and assessing, settings, about.

mod backup;
mod links;
mod put_back;
mod settings;
mod who;

use crate::app::hooks::{use_before_menu, use_book, use_lock, use_naming, use_people, use_settings};
use crate::app::parts::Frame;
use crate::app::state::use_shop;
use crate::device::page::{self, Kept};
use backup::AllOfIt;
use links::{INSTRUCTOR, PEOPLE, WORK, links};
use settings::{about, settings};
use wasm_bindgen_futures::spawn_local;
use who::who;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Menu() -> Html {
    let shop = use_shop();
    let change = use_settings();
    let naming = use_naming();
    let back = use_before_menu();
    let journal = use_book().book.journal.clone();
    let crew = use_people().crew;
    let hand_over = use_lock().set.reform(|_: MouseEvent| true);
    // Some browsers put the question to the person first, and give no answer until that person does.
    let kept = use_state(|| Kept::Unknown);
    use_effect_with((), {
        let kept = kept.setter();
        move |()| spawn_local(async move { kept.set(page::ask_to_keep().await) })
    });
    html! {
        <Frame class="sheet menu" title={shop.say("menu.title")} back={Some(back)} cautions={shop.cautions_for(&[])}>
            { who(&shop, &change.now.person, &naming, &journal, &crew, hand_over) }
            { links(&shop, "work", &WORK) }
            { links(&shop, "instructor", &INSTRUCTOR) }
            { links(&shop, "people", &PEOPLE) }
            { settings(&shop, &change) }
            { about(&shop, *kept) }
            <AllOfIt key="backup" />
        </Frame>
    }
}
