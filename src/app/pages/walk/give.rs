//! A job ticket made to be handed out: how the job is to be walked, on which edition, what is told before, until when.

use super::start::ticket;
use super::ways::ways;
use crate::app::hooks::use_sheets;
use crate::app::pages::sets::use_maker;
use crate::app::parts::{Field, Frame, HandOut, Picture, icon, typed_into};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::WalkInfo;
use crate::device::{clock, page};
use crate::exchange::{CarriedSheet, Editions, JobTicket, NOTE_MOST, TICKET, save_name};
use crate::record::{LocalDate, is_plain, plain};
use crate::rules::sheet::Sheet;
use crate::walk::Mode;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WalkGiveProps {
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn WalkGive(props: &WalkGiveProps) -> Html {
    let shop = use_shop();
    let editions = use_sheets().editions;
    let by = use_maker();
    let mode = use_state(|| Mode::Own);
    let same = use_state(|| false);
    let picked = use_state(|| None::<String>);
    let note = use_state(String::new);
    let until = use_state(String::new);
    let made = use_memo((), |()| (clock::now(), page::random_bytes::<4>().map_or(0, u32::from_le_bytes)));
    let title = shop.text(&format!("walk.name.{}", props.slug));
    let back = Some(Route::WalkNew { slug: props.slug.clone() });
    let cautions = shop.cautions_for(&[]);
    let Some(info) = shop.content().walk(&props.slug) else {
        return html! {
            <Frame class="sheet" title={shop.say("walk.title")} back={Some(Route::Walks)} {cautions}>
                <p key="gone" class="lead" role="status">{ shop.say("walk.gone") }</p>
            </Frame>
        };
    };
    let slug = picked.as_deref().unwrap_or(&info.ticket.sheet);
    let day = until.trim();
    let last = day.parse::<LocalDate>().ok();
    let past = last.zip(clock::today()).is_some_and(|(last, today)| last < today);
    let day_said = if past { "ticket.until-past" } else { "sets.build.day-wrong" };
    let day_wrong = past || (!day.is_empty() && last.is_none());
    let told = plain(&note);
    let note_wrong = !is_plain(&told, NOTE_MOST);
    let handed = shop.content().sheet(slug).filter(|_| !day_wrong && !note_wrong).map(|sheet| JobTicket {
        walk: info.slug.clone(),
        mode: *mode,
        seed: same.then_some(made.1),
        sheet: CarriedSheet::of(sheet, &editions),
        note: told,
        by,
        at: made.0.clone(),
        until: last,
    });
    let on_same = {
        let same = same.clone();
        Callback::from(move |_: Event| same.set(!*same))
    };
    let on_sheet = {
        let picked = picked.setter();
        Callback::from(move |event: Event| {
            let list = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
            picked.set(list.map(|list| list.value()));
        })
    };
    let most = [("most", NOTE_MOST.to_string()), ("n", note.chars().count().to_string())];
    let when = |wrong: bool, key: &str| if wrong { shop.say_with(key, &most) } else { AttrValue::default() };
    html! {
        <Frame class="sheet walk-start" title={title.clone()} note={shop.say("ticket.title")} {back} {cautions}>
            <p key="lead" class="lead">{ shop.say("ticket.lead") }</p>
            { ticket(&shop, &on_sheet_of(info, slug)) }
            { ways(&shop, &mode) }
            <section key="more" class="paper form">
                <label class={classes!("choice", "many", "walk-way", same.then_some("picked"))}>
                    <input type="checkbox" checked={*same} onchange={on_same} />
                    <span class="letter" aria-hidden="true">{ icon(Picture::Tick) }</span>
                    <span class="words"><b>{ shop.say("ticket.same") }</b><span class="note">{ shop.say("ticket.same-why") }</span></span>
                </label>
                { sheets(&shop, info, &editions, slug, on_sheet) }
                <Field id="ticket-note" label={shop.say("ticket.note")} hint={shop.say_with("ticket.note-hint", &most)} value={(*note).clone()} on_input={typed_into(&note)} wrong={when(note_wrong, "sets.build.note-wrong")} />
                <Field id="ticket-until" kind="date" label={shop.say("ticket.until")} hint={shop.say("ticket.until-hint")} value={(*until).clone()} on_input={typed_into(&until)} wrong={when(day_wrong, day_said)} />
            </section>
            { for handed.and_then(|ticket| ticket.write().ok()).map(|text| {
                let name = save_name(TICKET.format, &title, None, "json");
                html! { <HandOut key="out" {name} {text} title={title.clone()} /> }
            }) }
        </Frame>
    }
}

/// The walk on the sheet that was picked.
fn on_sheet_of(info: &WalkInfo, slug: &str) -> WalkInfo {
    let mut info = info.clone();
    slug.clone_into(&mut info.ticket.sheet);
    info
}

/// The sheet of the walk and the editions made from it; none to pick from where there is but one.
fn sheets(
    shop: &Shop,
    info: &WalkInfo,
    editions: &Editions,
    picked: &str,
    onchange: Callback<Event>,
) -> Html {
    let fits = |sheet: &&Sheet| {
        let base = editions.get(&sheet.slug).map_or(sheet.slug.as_str(), |own| own.base.as_str());
        base == info.ticket.sheet
    };
    let all: Vec<&Sheet> = shop.content().sheets.iter().filter(fits).collect();
    let option = |sheet: &&Sheet| {
        let slug = sheet.slug.clone();
        html! { <option key={slug.clone()} value={slug.clone()} selected={slug == picked}>{ shop.sheet_name(&slug) }</option> }
    };
    html! {
        <div key="sheet" class="field" hidden={all.len() < 2}>
            <label for="ticket-sheet">{ shop.say("walk.ticket.sheet") }</label>
            <select id="ticket-sheet" {onchange}>{ for all.iter().map(option) }</select>
        </div>
    }
}
