//! Card by card: the answer that stands on the paper, and at once what it is worth.

use super::Given;
use crate::app::hooks::use_book;
use crate::app::pages::dealt::Dealt;
use crate::app::pages::paper::OnPaper;
use crate::app::parts::{
    Choices, SignKind, answer_field, card_ticket, certainty_field, choices, column_letter, sign, tests_field,
};
use crate::app::state::{OnDesk, Shop, use_shop};
use crate::card::cell::{CELLS, place_in};
use crate::card::{self, Answer, Card, Kind, Mark, Slate};
use crate::device::page;
use crate::exchange::paper::Entered;
use crate::exchange::set::OwnCard;
use crate::record::{Certainty, Entry, Help, SheetName, Within};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct AskProps {
    pub(super) on: OnPaper,
    pub(super) given: Given,
    pub(super) on_given: Callback<Option<Given>>,
}

/// Id of the heading that tells the card.
const PLACE: &str = "paper-place";

/// What was made of the answer to a card: nothing yet, or its mark and what is right.
type Marked = Option<(Mark, AttrValue)>;

#[component]
pub(super) fn Ask(props: &AskProps) -> Html {
    let shop = use_shop();
    let book = use_book();
    let (on, given) = (&props.on, &props.given);
    let slate = use_state(|| None::<(usize, Slate)>);
    let own_marks = use_state(Vec::<u32>::new);
    let certainty = use_state(|| None::<Certainty>);
    let marked = use_state(|| Marked::None);
    let cards = use_memo((shop.clone(), on.clone(), given.clone()), |(shop, on, given)| {
        on.cards(shop, &given.sheet.code).into_iter().map(Dealt::from).collect::<Vec<_>>()
    });
    let named = use_memo(Rc::clone(&cards), |cards| cards.iter().map(Dealt::named).collect::<Vec<_>>());
    // As it was when this worksheet was begun with: what is typed in now is counted here.
    let before = use_memo((), |()| Entered::of(&book.book.journal, &given.person, &on.id, &given.sheet.code));
    let nth = use_state(|| before.next(&named, 0));
    let right = use_state(|| before.right());
    let told_before =
        (before.count() > 0).then(|| shop.say_with("worksheet.before", &[("n", before.count().to_string())]));
    let told_before = told_before.map(|said| html! { <p key="before" class="kraft">{ said }</p> });
    let Some(card) = cards.get(*nth) else {
        let sum = done(&shop, given, *right, cards.len(), &props.on_given);
        return html! { <>{ for told_before }{ sum }</> };
    };
    let now = match (&*slate, card) {
        (Some((at, slate)), _) if at == &*nth => slate.clone(),
        (_, Dealt::Computed(card)) => Slate::for_card(card),
        _ => Slate::default(),
    };
    let on_slate = {
        let (set, at) = (slate.setter(), *nth);
        Callback::from(move |to: Slate| set.set(Some((at, to))))
    };
    let answer = match card {
        Dealt::Computed(card) => now.answer(card),
        Dealt::Own(card) => card.answer(&own_marks),
    };
    let ready = answer.clone().zip(*certainty);
    let hand_in = {
        let (shop, on, given, card) = (shop.clone(), on.clone(), given.clone(), card.clone());
        let (book, marked, right_now, set_right) = (book.clone(), marked.setter(), *right, right.setter());
        Callback::from(move |_: MouseEvent| {
            let Some((answer, certainty)) = ready.clone() else { return };
            let Some((entry, told)) = graded(&shop, &on, &given, &card, answer, certainty) else { return };
            let mark = entry.mark;
            book.hand_in.emit((entry.into(), OnDesk::Same));
            set_right.set(right_now + usize::from(mark == Mark::Right));
            marked.set(Some((mark, told)));
        })
    };
    let next = {
        let (set, to, marked) = (nth.setter(), before.next(&named, *nth + 1), marked.setter());
        let (certainty, own_marks) = (certainty.setter(), own_marks.setter());
        Callback::from(move |_: MouseEvent| {
            marked.set(None);
            certainty.set(None);
            own_marks.set(Vec::new());
            set.set(to);
            page::bring(PLACE);
        })
    };
    let (of, over) = (cards.len(), marked.is_some());
    let place = [("n", (*nth + 1).to_string()), ("of", of.to_string()), ("whom", given.sheet.whom.clone())];
    let not_yet = match (&answer, *certainty) {
        (None, _) => shop.say("worksheet.need-answer"),
        (_, None) => shop.say("worksheet.need-certainty"),
        _ => AttrValue::default(),
    };
    let on_certainty = {
        let set = certainty.setter();
        Callback::from(move |to: Certainty| set.set(Some(to)))
    };
    let field = match card {
        Dealt::Computed(card) => computed(&shop, card, &now, &on_slate),
        Dealt::Own(card) => own_field(&shop, card, &own_marks),
    };
    html! {
        <div class="paper-card">
            { for told_before }
            <h2 key="place" id={PLACE} tabindex="-1">{ shop.say_with("worksheet.entering", &place) }</h2>
            <div key={format!("ask-{}", *nth)} hidden={over}>
                { field }
                { certainty_field(&shop, *certainty, &on_certainty) }
            </div>
            <div key="verdict" class="paper verdict-line" role="status" hidden={!over}>{ for (*marked).clone().map(|marked| verdict(&shop, &marked)) }</div>
            <p key="not-yet" class="note" hidden={over || not_yet.is_empty()}>{ not_yet.clone() }</p>
            <div key="acts" class="people">
                <button key="in" type="button" class="next-step" hidden={over} disabled={!not_yet.is_empty()} onclick={hand_in}>{ shop.say("worksheet.grade") }</button>
                <button key="skip" type="button" class="control" hidden={over} onclick={next.clone()}>{ shop.say("worksheet.skip") }</button>
                <button key="next" type="button" class="next-step" hidden={!over} onclick={next}>{ shop.say("worksheet.next") }</button>
            </div>
        </div>
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

fn verdict(shop: &Shop, (mark, right): &(Mark, AttrValue)) -> Html {
    let (kind, key) = match mark {
        Mark::Right => (SignKind::Right, "verdict.right"),
        Mark::Partly => (SignKind::Partly, "verdict.partly"),
        Mark::Wrong => (SignKind::Wrong, "verdict.wrong"),
    };
    html! {
        <>
            <p class="standing">{ sign(kind) }{ shop.say(key) }</p>
            <p hidden={*mark == Mark::Right}>{ shop.say_with("worksheet.right-is", &[("right", right.to_string())]) }</p>
        </>
    }
}

/// The answer as an event of whoever gave it, and what is right. Time does not count, and no help is known of.
fn graded(
    shop: &Shop,
    on: &OnPaper,
    given: &Given,
    card: &Dealt,
    answer: Answer,
    certainty: Certainty,
) -> Option<(Entry, AttrValue)> {
    let world = on.world(shop);
    let (family, version, seed, mark, guess, right) = match card {
        Dealt::Computed(card) => {
            let graded = card::grade(card, &world, &answer)?;
            let right = shop.voice().answer(&card.family, &graded.solution.right);
            (card.family.clone(), card.version, card.seed, graded.mark, card::luck(card, &world), right)
        }
        Dealt::Own(card) => {
            let right = card.said(&card.right_answer()).join("; ");
            (card.id(), OwnCard::VERSION, 0, card.grade(&answer), Some(card.luck()), right)
        }
    };
    let entry = Entry {
        stamp: shop.stamp(&given.person),
        family,
        version,
        seed,
        sheet: SheetName::of(&on.sheet),
        answer,
        certainty,
        mark,
        guess,
        active_seconds: None,
        help: Help::None,
        within: Within::Paper { set: on.id.clone(), code: given.sheet.code.to_string() },
    };
    Some((entry, right.into()))
}

/// All cards are through.
fn done(shop: &Shop, given: &Given, right: usize, of: usize, on_given: &Callback<Option<Given>>) -> Html {
    let sum = [("right", right.to_string()), ("of", of.to_string()), ("whom", given.sheet.whom.clone())];
    let onclick = on_given.reform(|_: MouseEvent| None);
    html! {
        <section class="paper">
            <h2>{ shop.say_with("worksheet.sum", &sum) }</h2>
            <p class="note">{ shop.say("worksheet.kept") }</p>
            <button type="button" class="next-step" {onclick}>{ shop.say("worksheet.another") }</button>
        </section>
    }
}
