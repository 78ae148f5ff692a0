//! Home: the step board, and the next step one tap away.

mod next;
mod waiting;

use crate::app::hooks::{Naming, use_naming, use_new_version, use_people, use_stamped, use_told, use_walks};
use crate::app::parts::{BandRow, Frame, NameField, Picture, board, icon, named};
use crate::app::route::Route;
use crate::app::state::{Shared, Shop, use_shop};
use crate::device::{clock, page};
use crate::learn::{self, Front, Latest};
use crate::people::Crew;
use crate::rules::term::{Stage, Term};
use crate::walk::Kept;
use next::use_next;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct HomeProps {
    /// What the journal leaves for this screen, while it is still being read.
    pub(in crate::app) front: Option<Shared<Front>>,
}

#[component]
pub(in crate::app) fn Home(props: &HomeProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let crew = use_people().crew;
    let new_version = use_new_version();
    let walks = use_walks().of(&shop.settings.person, false);
    use_effect_with((), |()| clock::mark_once("usable"));

    let known = props.front.as_ref().map_or(&*told.known, |front| &front.known);
    let next = use_next(known, props.front.as_ref());
    let Naming { on_name, said } = use_naming();

    let stamped = use_stamped();
    let rows = Stage::ALL
        .iter()
        .map(|one| BandRow {
            stamped: stamped.contains(one),
            ..band(&shop, &known.latest, *one, next.stage == Some(*one))
        })
        .collect::<Vec<_>>();
    let asks_name = !shop.settings.name_asked && next.is_first;
    html! {
        <Frame class="home" title={shop.say("board")} lead={name_tape(&shop, &crew)} cautions={shop.cautions_for(&[])}>
            <section key="board" class="home-board">
                { board(&shop, &rows) }
                <p class="legend">{ shop.say("home.legend") }</p>
            </section>
            <section key="next" class="home-side">
                { next.ticket(&shop) }
                { next.also(&shop) }
                { for walks.first().map(|walk| under_way(&shop, walk)) }
                { doors(&shop) }
                <div key="name" class="kraft ask-name" hidden={!asks_name}>
                    <NameField label={shop.say("home.ask-name")} name="" {on_name} skip=true />
                </div>
                { named(&said) }
                <div key="version" class="kraft new-version" role="status" hidden={!new_version}>
                    <p>{ shop.say("home.new-version") }</p>
                    <button type="button" class="control" onclick={|_: MouseEvent| page::take_new_version()}>{ shop.say("home.take-version") }</button>
                </div>
            </section>
        </Frame>
    }
}

/// The walk that was worked on last, to be gone on with.
fn under_way(shop: &Shop, walk: &Kept) -> Html {
    let named = [("name", shop.text(&format!("walk.name.{}", walk.saved.walk)).to_string())];
    let to = Route::WalkOf { id: walk.id.clone() };
    html! { <a key="under-way" href={to.address()} class="control door under-way">{ icon(Picture::Walk) }{ shop.say_with("walk.go-on", &named) }</a> }
}

/// The ways to what can be done besides.
fn doors(shop: &Shop) -> Html {
    let door = |to: Route, picture: Picture, key: &str| {
        html! { <a href={to.address()} class="control door">{ icon(picture) }{ shop.say(key) }</a> }
    };
    html! {
        <nav key="doors" class="doors">
            { door(Route::Walks, Picture::Walk, "home.walk") }
            { door(Route::Sprays, Picture::Gun, "home.spray") }
            { door(Route::Check, Picture::Check, "home.check") }
            { door(Route::Bench, Picture::Bench, "home.bench") }
            { door(Route::Record, Picture::Record, "home.record") }
        </nav>
    }
}

fn band(shop: &Shop, latest: &Latest, stage: Stage, next: bool) -> BandRow {
    let held = learn::held(shop.content(), latest, stage);
    let state = match (held.of, held.begun) {
        (0, _) => shop.say("home.no-cards"),
        (_, 0) => shop.say("home.not-begun"),
        _ => shop.say_with("home.holds", &[("held", held.held.to_string()), ("of", held.of.to_string())]),
    };
    BandRow { stage, state, share: held.share(), next, stamped: false }
}

/// The name on a piece of tape; it leads to the menu, where it is changed.
fn name_tape(shop: &Shop, crew: &Crew) -> Html {
    let person = crew.shown(&shop.settings.person).to_owned();
    let named = !person.is_empty();
    let said = shop.say_with("person", &[("person", person.clone())]);
    html! {
        <span class="name-place" hidden={!named}>
            <a href={Route::Menu.address()} class="name-tape"><span class="spoken">{ said }</span><span aria-hidden="true">{ person.clone() }</span></a>
        </span>
    }
}
