//! Which task is sprayed: all of them by how hard they are, each with what it asks.

use super::words;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{CautionStage, SprayTask};
use crate::spraying::Setup;
use yew::prelude::*;

#[component]
pub(in crate::app) fn Sprays() -> Html {
    let shop = use_shop();
    let hard = |level: u32| {
        let of: Vec<&SprayTask> =
            shop.content().sprays.iter().filter(|task| task.difficulty == level).collect();
        html! {
            <section key={level} hidden={of.is_empty()}>
                <h2>{ shop.say(&format!("spray.hard.{level}")) }</h2>
                <ul class="rows links">{ for of.into_iter().map(|task| offered(&shop, task)) }</ul>
            </section>
        }
    };
    html! {
        <Frame class="sheet sprays" title={shop.say("spray.title")} back={Some(Route::Home)} cautions={shop.cautions_for(&[CautionStage::Spray])}>
            <p key="lead" class="lead">{ shop.say("spray.lead") }</p>
            <p key="judgement" class="spray-judgement kraft">{ shop.say("spray.judgement") }</p>
            { for (1..=SprayTask::HARDEST).map(hard) }
        </Frame>
    }
}

fn offered(shop: &Shop, task: &SprayTask) -> Html {
    let asks = Setup::of(task, shop.content()).map(|setup| words::asks(shop, &setup)).unwrap_or_default();
    html! {
        <li key={task.slug.clone()}>
            <a href={Route::SprayOf { task: task.slug.clone() }.address()} class="row-link">
                <span class="words"><b>{ words::name(shop, task) }</b><span class="note">{ asks }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
