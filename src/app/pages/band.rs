//! A band of the board: what the stage is, practising it, and how each of its questions stands.

use super::deal;
use super::record::competency_row;
use crate::app::hooks::{use_desk, use_told};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::FamilyInfo;
use crate::learn::{Past, Round};
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use std::sync::Arc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct BandProps {
    pub(in crate::app) stage: String,
}

#[component]
pub(in crate::app) fn Band(props: &BandProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let desk = use_desk();
    let stage = Stage::from_slug(&props.stage).unwrap_or(Stage::Room);
    let known = Arc::clone(&told.known);
    let found = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| told.evidence(shop.content()));
    let of_band: Vec<_> = found.iter().filter(|(competency, _)| competency.band == stage).collect();
    let families: Vec<&FamilyInfo> =
        shop.content().families.iter().filter(|family| family.stage == stage).collect();
    let onclick = use_callback((shop.clone(), told, desk.put), move |_: MouseEvent, (shop, told, put)| {
        if let Some(draft) = deal::fresh(shop, told, Some(stage), None, 0) {
            put.emit(Some(draft));
            Route::Practise.go();
        }
    });
    let name = shop.stage(stage).to_string();
    let minutes = Round::of(shop.content(), Some(stage)).minutes.to_string();
    let practise = shop.say_with("band.practise", &[("stage", name.clone()), ("minutes", minutes)]);
    let cautions = shop.cautions_of_band(stage);
    let row = |family: &&FamilyInfo| standing(&shop, family, known.latest.of(&family.id));
    let action = html! {
        <button type="button" class="next-step" hidden={families.is_empty()} {onclick}>{ practise }{ icon(Picture::Go) }</button>
    };
    html! {
        <Frame class="sheet" title={name} back={Some(Route::Home)} {cautions} {action}>
            <p key="about" class="lead">{ shop.say(&format!("stage.{}.about", stage.slug())) }</p>
            <h2 key="head">{ shop.say("band.families") }</h2>
            <p key="empty" hidden={!families.is_empty()}>{ shop.say("band.empty") }</p>
            <ul key="list" class="rows">{ for families.iter().map(row) }</ul>
            <section key="competencies" hidden={of_band.is_empty()}>
                <h2>{ shop.say("band.competencies") }</h2>
                <ul class="rows links">{ for of_band.into_iter().map(|one| competency_row(&shop, one)) }</ul>
            </section>
        </Frame>
    }
}

/// A family, and how its latest answer stands.
fn standing(shop: &Shop, family: &FamilyInfo, latest: Option<Past>) -> Html {
    let (class, picture, key) = match latest {
        None => ("", None, "band.mark.none"),
        Some(one) if one.holds() => ("ok", Some(Picture::Tick), "band.mark.holds"),
        Some(one) if one.right => ("", Some(Picture::Pencil), "band.mark.asked"),
        Some(_) => ("wrong", Some(Picture::Cross), "band.mark.not"),
    };
    html! {
        <li key={family.id.clone()}>
            <span class="words">{ shop.family_title(&family.id) }</span>
            <span class={classes!("standing", class)}>
                { for picture.map(icon) }
                <span key="word">{ shop.say(key) }</span>
            </span>
        </li>
    }
}
