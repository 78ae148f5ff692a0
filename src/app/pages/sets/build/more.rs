//! What is seldom changed: shop sheet, days, note, the shop's own cards.

use super::Building;
use super::choice::{Choice, choices};
use super::own::OwnCards;
use crate::app::hooks::use_sheets;
use crate::app::parts::Field;
use crate::app::state::{Shop, use_shop};
use crate::exchange::CarriedSheet;
use crate::exchange::set::Set;
use crate::exchange::{Editions, NOTE_MOST};
use crate::record::{LocalDate, is_plain};
use crate::rules::sheet::Sheet;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct MoreProps {
    pub(super) building: Building,
}

#[component]
pub(super) fn More(props: &MoreProps) -> Html {
    let shop = use_shop();
    let building = &props.building;
    let editions = use_sheets().editions;
    let set = &building.set;
    let text = |day: Option<LocalDate>| day.map(|day| day.to_string()).unwrap_or_default();
    let from = use_state(|| text(set.from));
    let until = use_state(|| text(set.until));
    let note = building.change(|set, note: String| set.note = note);
    let typed = set.note.chars().count();
    let note_wrong = if is_plain(&set.note, NOTE_MOST) {
        AttrValue::default()
    } else {
        let told = [("most", NOTE_MOST.to_string()), ("n", typed.to_string())];
        shop.say_with("sets.build.note-wrong", &told)
    };
    let from_wrong = day_wrong(&shop, &from);
    let order = set.from.zip(set.until).is_some_and(|(from, until)| until < from);
    let until_wrong = if order { shop.say("sets.build.until-wrong") } else { day_wrong(&shop, &until) };
    let day = |state: &UseStateHandle<String>, into: fn(&mut Set, Option<LocalDate>)| {
        let typed = state.setter();
        building.change(move |set, text: String| {
            into(set, text.trim().parse().ok());
            typed.set(text);
        })
    };
    let hint = [("most", NOTE_MOST.to_string())];
    html! {
        <details key="more" class="build-part">
            <summary>{ shop.say("sets.build.more-head") }</summary>
            { sheets(&shop, building, &editions) }
            <fieldset key="days" class="setting">
                <legend>{ shop.say("sets.build.days") }</legend>
                <div class="pair">
                    <Field id="set-from" kind="date" label={shop.say("sets.build.from")} hint={shop.say("sets.build.day-hint")} value={(*from).clone()} on_input={day(&from, |set, day| set.from = day)} wrong={from_wrong} />
                    <Field id="set-until" kind="date" label={shop.say("sets.build.until")} hint={shop.say("sets.build.day-hint")} value={(*until).clone()} on_input={day(&until, |set, day| set.until = day)} wrong={until_wrong} />
                </div>
            </fieldset>
            <Field id="set-note" label={shop.say("sets.build.note")} hint={shop.say_with("sets.build.note-hint", &hint)} value={set.note.clone()} on_input={note} wrong={note_wrong} />
            <OwnCards building={building.clone()} />
        </details>
    }
}

fn day_wrong(shop: &Shop, typed: &str) -> AttrValue {
    let fits = typed.trim().is_empty() || typed.trim().parse::<LocalDate>().is_ok();
    if fits { AttrValue::default() } else { shop.say("sets.build.day-wrong") }
}

/// The sheets that ship, and the shop's own of this tablet.
fn sheets(shop: &Shop, building: &Building, editions: &Editions) -> Html {
    let now = building.set.sheet.slug();
    let sheet = |one: &Sheet| {
        let sheet = CarriedSheet::of(one, editions);
        Choice {
            name: shop.sheet_name(&one.slug),
            note: AttrValue::default(),
            chosen: one.slug == now,
            on_pick: building.change(move |set, _: Event| set.sheet = sheet.clone()),
        }
    };
    choices(
        shop.say("sets.build.sheet"),
        Some("set-sheet"),
        shop.content().sheets.iter().map(sheet).collect(),
    )
}
