//! A card as it stands on the paper, with the field for its answer.

use super::typed::Typed;
use crate::app::pages::dealt::Dealt;
use crate::app::parts::{Choices, answer_field, card_ticket, choices, column_letter, tests_field};
use crate::app::state::Shop;
use crate::card::cell::{CELLS, place_in};
use crate::card::{Card, Kind, Slate};
use crate::exchange::set::OwnCard;
use yew::prelude::*;

/// The field of the card at that place of the worksheet.
pub(super) fn field(shop: &Shop, typed: &Typed, nth: usize, card: &Dealt) -> Html {
    match card {
        Dealt::Computed(card) => computed(shop, card, &typed.slate(nth, card), &typed.on_slate(nth)),
        Dealt::Own(card) => own_field(shop, card, &typed.own_marks),
    }
}

/// The card as it stands on the paper, with its answer field.
fn computed(shop: &Shop, card: &Card, slate: &Slate, on_slate: &Callback<Slate>) -> Html {
    let toggle = on_slate.reform({
        let slate = slate.clone();
        move |_: MouseEvent| slate.clone().toggle_not_enough()
    });
    let answer = if card.kind == Kind::Point {
        cells(shop, card, slate, on_slate)
    } else {
        answer_field(shop, card, slate, on_slate, "paper")
    };
    html! {
        <>
            <details key="card" class="seen"><summary>{ shop.say("worksheet.situation") }</summary>{ card_ticket(shop, card) }</details>
            <p key="ask" class="lead">{ shop.voice().ask(card) }</p>
            { tests_field(shop, card, slate, on_slate) }
            { answer }
            <button key="not-enough" type="button" class={classes!("control", slate.not_enough.then_some("picked"))} aria-pressed={slate.not_enough.to_string()} onclick={toggle}>{ shop.say("card.not-enough") }</button>
        </>
    }
}

/// The cell in which the cross is: its column, then its row.
fn cells(shop: &Shop, card: &Card, slate: &Slate, on_slate: &Callback<Slate>) -> Html {
    // Until both are picked the column waits among the marks, which a card of this kind has no other use for.
    let (column, row) = (slate.marks.first().copied(), slate.marks.get(1).copied());
    let pick = |column: Option<usize>, row: Option<usize>| {
        let (shop, card, slate) = (shop.clone(), card.clone(), slate.clone());
        on_slate.reform(move |_: MouseEvent| {
            let marks = [column.unwrap_or(CELLS.0), row.unwrap_or(CELLS.1)].to_vec();
            let place = column.zip(row).and_then(|cell| place_in(&card, shop.content(), cell));
            Slate { marks, place, not_enough: false, ..slate.clone() }
        })
    };
    let button = |words: String, on: bool, onclick: Callback<MouseEvent>| {
        html! { <button key={words.clone()} type="button" class={classes!("control", "square", on.then_some("picked"))} aria-pressed={on.to_string()} {onclick}>{ words }</button> }
    };
    let of = |at: Option<usize>, most: usize| at.filter(|at| *at < most);
    let (column, row) = (of(column, CELLS.0), of(row, CELLS.1));
    html! {
        <div key="cells" class="cells-field">
            <fieldset key="column" class="setting"><legend>{ shop.say("worksheet.column") }</legend>
                <div class="people">{ for (0..CELLS.0).map(|at| button(column_letter(at).to_string(), column == Some(at), pick(Some(at), row))) }</div>
            </fieldset>
            <fieldset key="row" class="setting"><legend>{ shop.say("worksheet.row") }</legend>
                <div class="people">{ for (0..CELLS.1).map(|at| button((at + 1).to_string(), row == Some(at), pick(column, Some(at)))) }</div>
            </fieldset>
        </div>
    }
}

fn own_field(shop: &Shop, card: &OwnCard, marks: &UseStateHandle<Vec<u32>>) -> Html {
    let on_pick = {
        let (marks, card) = (marks.clone(), card.clone());
        Callback::from(move |option: usize| {
            let Ok(place) = u32::try_from(option + 1) else { return };
            marks.set(card.pick(&marks, place));
        })
    };
    let option = |place: &u32| usize::try_from(*place).ok()?.checked_sub(1);
    let rows = Choices {
        labels: card.options.iter().map(|option| AttrValue::from(option.clone())).collect(),
        label: card.question.clone(),
        group: "paper".into(),
        picked: marks.iter().filter_map(option).collect(),
        many: card.asks_all(),
        on_pick,
    };
    html! { <><p key="ask" class="lead">{ &card.question }</p>{ choices(shop, &rows) }</> }
}
