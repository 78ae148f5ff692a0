//! Files for other programs, by open standards: what was answered, and the competency list.

mod save;

use crate::app::hooks::use_crew;
use crate::app::parts::{Field, Frame, Picture, icon, typed_into};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::page;
use crate::exchange::Home;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Id of the field for the address.
const HOME: &str = "programs-home";

#[component]
pub(in crate::app) fn Programs() -> Html {
    let shop = use_shop();
    let crew = use_crew();
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let (address, creator) = (use_state(String::new), use_state(String::new));
    let (tried, working) = (use_state(|| false), use_state(|| false));
    let (told_xapi, told_case) = (use_state(AttrValue::default), use_state(AttrValue::default));
    let home = Home::new(address.trim()).ok();
    let wrong = if *tried && home.is_none() {
        shop.say_with("programs.home-wrong", &[("most", Home::MOST.to_string())])
    } else {
        AttrValue::default()
    };
    let with_home = |act: Callback<Home>| {
        let (home, tried) = (home.clone(), tried.setter());
        let told = [told_xapi.setter(), told_case.setter()];
        Callback::from(move |_: MouseEvent| {
            tried.set(true);
            told.iter().for_each(|told| told.set(AttrValue::default()));
            match home.clone() {
                Some(home) => act.emit(home),
                None => page::bring(HOME),
            }
        })
    };
    let xapi = {
        let (shop, crew, told) = (shop.on(crew.content.clone()), crew.clone(), told_xapi.setter());
        let working = working.setter();
        with_home(Callback::from(move |home: Home| {
            let Some(gathered) = crew.gathered.clone() else { return };
            let (shop, told, working) = (shop.clone(), told.clone(), working.clone());
            working.set(true);
            spawn_local(async move {
                told.set(save::statements(&shop, &gathered, &home).await);
                working.set(false);
            });
        }))
    };
    let case = {
        let (shop, told, creator) = (shop.clone(), told_case.setter(), creator.trim().to_owned());
        with_home(Callback::from(move |home: Home| {
            told.set(save::framework(&shop, &home, &creator));
        }))
    };
    let reading = crew.busy || crew.gathered.is_none() || *working;
    html! {
        <Frame class="sheet programs" title={shop.say("programs.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("programs.lead") }</p>
            <div key="home" class="paper form">
                <Field id={HOME} label={shop.say("programs.home")} hint={shop.say("programs.home-hint")} value={(*address).clone()} on_input={typed_into(&address)} {wrong} />
            </div>
            { part(&shop, "xapi", None, reading, xapi, &told_xapi) }
            { part(&shop, "case", Some(html! {
                <Field id="programs-creator" label={shop.say("programs.creator")} hint={shop.say("programs.creator-hint")} value={(*creator).clone()} on_input={typed_into(&creator)} />
            }), false, case, &told_case) }
            <section key="qti" class="paper form">
                <h2>{ shop.say("programs.qti") }</h2>
                <p>{ shop.say("programs.qti-why") }</p>
                <p class="how"><a href={Route::Sets.address()} class="text-link">{ shop.say("programs.qti-where") }{ icon(Picture::Go) }</a></p>
            </section>
        </Frame>
    }
}

/// One file: what it is for, what it asks, its button, and what came of it. Text: `app.programs.<slug>...`.
fn part(
    shop: &Shop,
    slug: &'static str,
    field: Option<Html>,
    waits: bool,
    onclick: Callback<MouseEvent>,
    told: &AttrValue,
) -> Html {
    let say = |what: &str| shop.say(&format!("programs.{slug}{what}"));
    html! {
        <section key={slug} class="paper form">
            <h2>{ say("") }</h2>
            <p>{ say("-why") }</p>
            { for field }
            <div class="people"><button type="button" class="control" disabled={waits} {onclick}>{ icon(Picture::Save) }{ say("-save") }</button></div>
            <p role="status">{ if waits { shop.say("programs.reading") } else { told.clone() } }</p>
        </section>
    }
}
