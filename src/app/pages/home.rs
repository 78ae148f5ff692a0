//! Home: the step board, and the next step one tap away.

use super::deal;
use super::sets::{set_waiting, way_on};
use crate::app::hooks::{
    use_desk, use_keys, use_new_version, use_people, use_sets, use_settings, use_stamped, use_told, use_walks,
};
use crate::app::parts::{BandRow, Frame, NameField, Picture, board, icon};
use crate::app::route::Route;
use crate::app::state::{KeptSet, Settings, Shared, Shop, use_shop};
use crate::device::{clock, page, rest};
use crate::learn::check::Takings;
use crate::learn::{self, Front, Latest, Round};
use crate::people::Crew;
use crate::rules::term::{Stage, Term};
use crate::walk::Kept;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct HomeProps {
    /// What the journal leaves for this screen, while it is still being read.
    pub(in crate::app) front: Option<Shared<Front>>,
}

#[component]
pub(in crate::app) fn Home(props: &HomeProps) -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let told = use_told();
    let desk = use_desk();
    let crew = use_people().crew;
    let new_version = use_new_version();
    let sets = use_sets();
    let walks = use_walks().of(&shop.settings.person, false);
    use_effect_with((), |()| clock::mark_once("usable"));

    let reading = props.front.is_some();
    let of = (told.journal.clone(), shop.settings.person.clone(), shop.settings.device.clone());
    let takings = use_memo(of, |(journal, person, device)| Takings::of(journal.events(), person, device));
    let (known, takings) = match &props.front {
        Some(front) => (&front.known, &front.takings),
        None => (&*told.known, &*takings),
    };
    let open = desk.draft.filter(|draft| draft.handed.is_none() && draft.person == shop.settings.person);
    let waiting = open.as_ref().and_then(|draft| shop.content().family(&draft.card.family));
    let next = deal::next(&shop, (known, &told.ends), None);
    let coming = next.as_ref().and_then(|(family, _)| shop.content().family(family));
    let stage = waiting.or(coming).map(|family| family.stage);

    // A set that somebody put together for whoever works here goes before what practice would ask.
    let set = set_waiting(&sets, takings);
    let to_set = set.map(|(one, at)| way_on(&shop, one, at));
    let set = set.map(|(one, at)| set_waits(&shop, one, at));
    let start = use_callback(
        (shop.clone(), Rc::clone(&told), open.is_some(), desk.put, to_set, reading),
        |(), (shop, told, open, put, to_set, reading)| {
            if let Some(to) = to_set {
                return to.go();
            }
            if !open {
                // Practice deals the card once the journal and what deals are there.
                let wait = *reading || !rest::is_there();
                put.emit(if wait { None } else { deal::fresh(shop, told, None, None, 0) });
            }
            Route::Practise.go();
        },
    );
    let on_key = use_callback(start.clone(), |key: String, start| {
        let enter = key == "Enter";
        if enter {
            start.emit(());
        }
        enter
    });
    use_keys(on_key);
    let on_name = use_callback(settings, |person: String, settings| {
        settings.change.emit(Settings { person, name_asked: true, ..(*settings.now).clone() });
    });

    let stamped = use_stamped();
    let rows = Stage::ALL
        .iter()
        .map(|one| BandRow {
            stamped: stamped.contains(one),
            ..band(&shop, &known.latest, *one, stage == Some(*one))
        })
        .collect::<Vec<_>>();
    let waits = set.is_some();
    let (title, why, go) = match (&open, stage, &next) {
        _ if set.is_some() => set.unwrap_or_default(),
        (Some(draft), Some(stage), _) => {
            let n = (draft.done + 1).to_string();
            (
                shop.say_with("home.next", &[("stage", shop.stage(stage).to_string())]),
                shop.say_with("home.go-on-why", &[("stage", shop.stage(stage).to_string())]),
                shop.say_with("home.go-on", &[("n", n)]),
            )
        }
        (None, Some(stage), Some((_, why))) => {
            let name = shop.stage(stage).to_string();
            let minutes = Round::of(shop.content(), None).minutes.to_string();
            let key = if known.latest.is_empty() {
                "home.bare".to_owned()
            } else {
                format!("home.next.{}", why.slug())
            };
            (
                shop.say("home.ten-minutes"),
                shop.say_with(&key, &[("stage", name.clone())]),
                shop.say_with("home.start", &[("stage", name), ("minutes", minutes)]),
            )
        }
        _ => (shop.say("band.empty"), AttrValue::default(), AttrValue::default()),
    };
    let asks_name = !shop.settings.name_asked && known.latest.is_empty();
    html! {
        <Frame class="home" title={shop.say("board")} lead={name_tape(&shop, &crew)} cautions={shop.cautions_for(&[])}>
            <section key="board" class="home-board">
                { board(&shop, &rows) }
                <p class="legend">{ shop.say("home.legend") }</p>
            </section>
            <section key="next" class="home-side">
                <div key="ticket" class={classes!("ticket", "next-ticket", waits.then_some("set-waits"))}>
                    <span class="hole" aria-hidden="true"></span>
                    <h2>{ title }</h2>
                    <p>{ why }</p>
                    <button type="button" class="next-step" hidden={go.is_empty()} onclick={start.reform(|_: MouseEvent| ())}>
                        { go }{ icon(Picture::Go) }
                    </button>
                </div>
                { for walks.first().map(|walk| under_way(&shop, walk)) }
                <nav key="doors" class="doors">
                    <a href={Route::Walks.address()} class="control door">{ icon(Picture::Walk) }{ shop.say("home.walk") }</a>
                    <a href={Route::Sprays.address()} class="control door">{ icon(Picture::Gun) }{ shop.say("home.spray") }</a>
                    <a href={Route::Check.address()} class="control door">{ icon(Picture::Check) }{ shop.say("home.check") }</a>
                    <a href={Route::Bench.address()} class="control door">{ icon(Picture::Bench) }{ shop.say("home.bench") }</a>
                    <a href={Route::Record.address()} class="control door">{ icon(Picture::Record) }{ shop.say("home.record") }</a>
                </nav>
                <div key="name" class="kraft ask-name" hidden={!asks_name}>
                    <NameField label={shop.say("home.ask-name")} name="" {on_name} skip=true />
                </div>
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

/// What the next step says where it is a set.
fn set_waits(shop: &Shop, one: &KeptSet, at: u32) -> (AttrValue, AttrValue, AttrValue) {
    let named = [
        ("title", shop.set_title(&one.id, &one.set.title).to_string()),
        ("by", one.set.by.clone()),
        ("n", (at + 1).to_string()),
    ];
    let go = if at > 0 { "home.go-on" } else { "home.set-go" };
    (shop.say_with("home.set", &named), shop.say_with("home.set-why", &named), shop.say_with(go, &named))
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
