//! Takes result files in and says of each what came; the tablets that are known.

use super::came::came;
use crate::app::hooks::use_crew;
use crate::app::parts::{Picture, icon};
use crate::app::state::use_shop;
use crate::device::clock;
use crate::device::files::{all_picked_from, read};
use crate::exchange::{RESULTS, Results};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Files that are listed one by one; more of them would push everything else off the screen.
const FEW: usize = 3;

#[component]
pub(super) fn Import() -> Html {
    let shop = use_shop();
    let crew = use_crew();
    let onchange = {
        let take = crew.take.clone();
        Callback::from(move |event: Event| {
            let (files, take) = (all_picked_from(&event), take.clone());
            spawn_local(async move {
                let mut picked = Vec::new();
                for file in files {
                    picked.push(read(file, RESULTS.most).await);
                }
                if !picked.is_empty() {
                    take.emit(picked);
                }
            });
        })
    };
    let devices: Vec<&Results> = crew.gathered.iter().flat_map(|all| all.devices()).collect();
    let tablet = |one: &&Results| {
        let own = one.device == shop.settings.device;
        let name = if own { shop.say("crew.this-tablet") } else { AttrValue::from(one.device.clone()) };
        let answers = one.events.iter().filter(|event| event.answer().is_some()).count();
        let told = [("n", answers.to_string()), ("at", clock::local(&one.at))];
        let device = one.device.clone();
        let forget = crew.forget.reform(move |_: MouseEvent| device.clone());
        html! {
            <li key={one.device.clone()}>
                <span class="words"><b>{ name }</b><span class="note">{ shop.say_with("crew.tablet", &told) }</span></span>
                <button type="button" class="control" hidden={own} onclick={forget}>{ shop.say("crew.forget") }</button>
            </li>
        }
    };
    let all = crew.came.len();
    let told = |good: bool| {
        let of = crew.came.iter().enumerate().filter(move |(_, one)| one.what.is_ok() == good);
        of.map(|(nth, one)| came(&shop, all - nth, one)).collect::<Vec<Html>>()
    };
    let (refused, taken) = (told(false), told(true));
    let many = taken.len() > FEW;
    let new: usize =
        crew.came.iter().filter_map(|one| one.what.as_ref().ok()).map(|added| added.answers).sum();
    let summary = [("n", taken.len().to_string()), ("new", new.to_string())];
    let tablets: Html = devices.iter().map(tablet).collect();
    html! {
        <section class="import">
            <div key="field" class="field file-field">
                <label for="results" class="control">{ icon(Picture::File) }{ shop.say("crew.import") }</label>
                <input id="results" type="file" multiple=true accept=".json,application/json" class="file-input" {onchange} aria-describedby="results-told" />
                <p id="results-told" class="note">{ shop.say("crew.import-hint") }</p>
            </div>
            <div key="came" role="status">
                <p key="busy" class="note">{ if crew.busy { shop.say("crew.reading") } else { AttrValue::default() } }</p>
                <ul key="refused" class="rows came" hidden={refused.is_empty()}>{ for refused }</ul>
                <ul key="few" class="rows came" hidden={many || taken.is_empty()}>{ for taken.iter().filter(|_| !many).cloned() }</ul>
                <details key="many" class="seen" hidden={!many}>
                    <summary>{ shop.say_with("crew.came.many", &summary) }</summary>
                    <ul class="rows came">{ for taken.iter().filter(|_| many).cloned() }</ul>
                </details>
            </div>
            <p key="broken" class="wrong" role="alert" hidden={crew.broken == 0}>
                { shop.say_with("crew.broken", &[("n", crew.broken.to_string())]) }
            </p>
            <details key="tablets" class="seen tablets" hidden={devices.is_empty()}>
                <summary>{ shop.say_with("crew.tablets", &[("n", devices.len().to_string())]) }</summary>
                <ul class="rows">{ tablets }</ul>
            </details>
        </section>
    }
}
