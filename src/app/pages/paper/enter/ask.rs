//! Card by card: the answer that stands on the paper, and at once what it is worth.

use super::Given;
use super::field::field;
use super::typed::use_typed;
use crate::app::hooks::use_book;
use crate::app::pages::dealt::Dealt;
use crate::app::pages::paper::OnPaper;
use crate::app::parts::{SignKind, certainty_field, sign};
use crate::app::state::{OnDesk, Shop, use_shop};
use crate::card::{self, Answer, Mark};
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
    let typed = use_typed();
    let marked = use_state(|| Marked::None);
    let Through { cards, named, before, nth, right } = use_through(&shop, on, given);
    let told_before = told_before(&shop, before.count());
    let Some(card) = cards.get(*nth) else {
        let sum = done(&shop, given, *right, cards.len(), &props.on_given);
        return html! { <>{ for told_before }{ sum }</> };
    };
    let ready = typed.ready(&shop, *nth, card);
    let not_yet = ready.clone().err().unwrap_or_default();
    let hand_in = {
        let (shop, on, given, card) = (shop.clone(), on.clone(), given.clone(), card.clone());
        let (marked, right_now, set_right) = (marked.setter(), *right, right.setter());
        Callback::from(move |_: MouseEvent| {
            let Ok((answer, certainty)) = ready.clone() else { return };
            let Some((entry, told)) = graded(&shop, &on, &given, &card, answer, certainty) else { return };
            let mark = entry.mark;
            book.hand_in.emit((entry.into(), OnDesk::Same));
            set_right.set(right_now + usize::from(mark == Mark::Right));
            marked.set(Some((mark, told)));
        })
    };
    let next = {
        let (set, to) = (nth.setter(), before.next(&named, *nth + 1));
        let (marked, clear) = (marked.setter(), typed.clearing());
        Callback::from(move |_: MouseEvent| {
            marked.set(None);
            clear();
            set.set(to);
            page::bring(PLACE);
        })
    };
    let (of, over) = (cards.len(), marked.is_some());
    let place = [("n", (*nth + 1).to_string()), ("of", of.to_string()), ("whom", given.sheet.whom.clone())];
    html! {
        <div class="paper-card">
            { for told_before }
            <h2 key="place" id={PLACE} tabindex="-1">{ shop.say_with("worksheet.entering", &place) }</h2>
            <div key={format!("ask-{}", *nth)} hidden={over}>
                { field(&shop, &typed, *nth, card) }
                { certainty_field(&shop, *typed.certainty, &typed.on_certainty()) }
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

/// How far somebody is through the cards of a worksheet.
struct Through {
    cards: Rc<Vec<Dealt>>,
    /// Family and seed of each, under which it is answered.
    named: Rc<Vec<(String, u32)>>,
    /// As it was when this worksheet was begun with: what is typed in now is counted here.
    before: Rc<Entered>,
    /// The card that is asked for.
    nth: UseStateHandle<usize>,
    /// How many are right so far.
    right: UseStateHandle<usize>,
}

#[hook]
fn use_through(shop: &Shop, on: &OnPaper, given: &Given) -> Through {
    let journal = use_book().book.journal.clone();
    let cards = use_memo((shop.clone(), on.clone(), given.clone()), |(shop, on, given)| {
        on.cards(shop, &given.sheet.code).into_iter().map(Dealt::from).collect::<Vec<_>>()
    });
    let named = use_memo(Rc::clone(&cards), |cards| cards.iter().map(Dealt::named).collect::<Vec<_>>());
    let before = use_memo((), |()| Entered::of(&journal, &given.person, &on.id, &given.sheet.code));
    let nth = use_state(|| before.next(&named, 0));
    let right = use_state(|| before.right());
    Through { cards, named, before, nth, right }
}

/// How many answers of the worksheet were typed in before, where some were.
fn told_before(shop: &Shop, count: usize) -> Option<Html> {
    let said = (count > 0).then(|| shop.say_with("worksheet.before", &[("n", count.to_string())]))?;
    Some(html! { <p key="before" class="kraft">{ said }</p> })
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
