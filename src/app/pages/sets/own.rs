//! A card of the shop's own: asked, and what came of it. Both say that it is not computed.

use super::super::card::{ANSWER, Around, NEED_CERTAINTY, place_of};
use crate::app::parts::{Choices, Frame, SignKind, certainty_field, choices, sign};
use crate::app::state::{Shop, use_shop};
use crate::card::{Answer, Mark};
use crate::device::page;
use crate::exchange::set::OwnCard;
use crate::record::Certainty;
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading that takes the focus.
const HEADING: &str = "own-verdict";

#[derive(Properties, PartialEq)]
pub(super) struct OwnProps {
    pub(super) card: Rc<OwnCard>,
    pub(super) around: Around,
    pub(super) hand_in: Callback<(Rc<OwnCard>, Answer, Certainty)>,
}

#[component]
pub(super) fn OwnScreen(props: &OwnProps) -> Html {
    let shop = use_shop();
    let picked = use_state(Vec::<u32>::new);
    let certainty = use_state(|| None::<Certainty>);
    let card = &props.card;
    let many = card.asks_all();
    let on_pick = {
        let (picked, card) = (picked.clone(), Rc::clone(card));
        Callback::from(move |index: usize| {
            let Ok(place) = u32::try_from(index + 1) else { return };
            picked.set(card.pick(&picked, place));
        })
    };
    let on_certainty = {
        let certainty = certainty.setter();
        Callback::from(move |step: Certainty| certainty.set(Some(step)))
    };
    let answer = card.answer(&picked);
    let missing = match (&answer, *certainty) {
        (None, _) => Some("card.need-answer"),
        (_, None) => Some(NEED_CERTAINTY),
        _ => None,
    };
    let hand_in = {
        let (card, hand_in, certainty) = (Rc::clone(card), props.hand_in.clone(), *certainty);
        Callback::from(move |_: MouseEvent| {
            if let Some(missing) = missing {
                page::bring(place_of(missing));
            } else if let Some((answer, certainty)) = answer.clone().zip(certainty) {
                hand_in.emit((Rc::clone(&card), answer, certainty));
            }
        })
    };
    let action = html! {
        <div class="hand-in">
            <button key="hand-in" type="button" class={if missing.is_none() { "next-step" } else { "next-step not-yet" }}
                onclick={hand_in}>{ shop.say(missing.unwrap_or("card.hand-in")) }</button>
        </div>
    };
    let fields = Choices {
        labels: card.options.iter().map(|option| option.clone().into()).collect(),
        label: card.question.clone(),
        group: "own-answer".into(),
        picked: picked.iter().filter_map(|place| usize::try_from(*place).ok()?.checked_sub(1)).collect(),
        many,
        on_pick,
    };
    let Around { note, marks, lead, back, in_check, .. } = props.around.clone();
    html! {
        <Frame class="card" title={shop.say("sets.take.own-title")} {note} back={Some(back)} {marks} cautions={shop.cautions_asked(None, in_check)} {action}>
            <div key="situation" class="situation">
                { lead }
                <h2 class="asked">{ &card.question }</h2>
                <p class="note">{ shop.say("sets.take.own") }{ ". " }{ shop.say(if many { "card.pick-all" } else { "card.pick-one" }) }</p>
            </div>
            <div key="answer" id={ANSWER} tabindex="-1" class="answer" role="group" aria-label={shop.say("verdict.chose")}>{ choices(&shop, &fields) }</div>
            { certainty_field(&shop, *certainty, &on_certainty) }
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app::pages) struct OwnVerdictProps {
    pub(in crate::app::pages) card: Rc<OwnCard>,
    pub(in crate::app::pages) answer: Answer,
    pub(in crate::app::pages) certainty: Certainty,
}

/// What came of an answer to such a card.
#[component]
pub(in crate::app::pages) fn OwnVerdict(props: &OwnVerdictProps) -> Html {
    let shop = use_shop();
    use_effect_with((), |()| page::focus(HEADING));
    let (card, answer) = (&props.card, &props.answer);
    let right = card.grade(answer) == Mark::Right;
    let sure = props.certainty == Certainty::OnTheJob;
    let (kind, class, key) = match (right, sure) {
        (true, _) => (SignKind::Right, "ok", "verdict.right"),
        (false, true) => (SignKind::Wrong, "wrong", "verdict.wrong-sure"),
        (false, false) => (SignKind::Wrong, "wrong", "verdict.wrong"),
    };
    html! {
        <article class={classes!("verdict", class)}>
            <header key="head">{ sign(kind) }<h2 id={HEADING} tabindex="-1">{ shop.say(key) }</h2></header>
            <p key="tag" class="note">{ shop.say("sets.take.own") }</p>
            <p key="asked">{ &card.question }</p>
            <dl key="said" class="said">
                <div key="chose"><dt>{ shop.say("verdict.chose") }</dt><dd>{ listed(&card.said(answer)) }</dd></div>
                <div key="needs" hidden={right}><dt>{ shop.say("sets.preview.right-own") }</dt><dd>{ listed(&card.said(&card.right_answer())) }</dd></div>
            </dl>
            { why(&shop, card) }
        </article>
    }
}

fn listed(options: &[&str]) -> Html {
    let item = |option: &&str| html! { <li key={(*option).to_owned()}>{ *option }</li> };
    html! { <ul class="told">{ for options.iter().map(item) }</ul> }
}

/// Why the right answer is right, as the shop says it.
pub(super) fn why(shop: &Shop, card: &OwnCard) -> Html {
    html! {
        <section key="why" class="paper"><h3>{ shop.say("sets.take.own-why") }</h3><p>{ &card.why }</p></section>
    }
}

/// The card as a preview shows it: its answers, the right ones and why.
pub(super) fn own_preview(shop: &Shop, card: &OwnCard) -> Html {
    let all: Vec<&str> = card.options.iter().map(String::as_str).collect();
    html! {
        <>
            <p key="ask" class="asked-small">{ &card.question }</p>
            <div key="all">{ listed(&all) }</div>
            <dl key="right" class="said"><div><dt>{ shop.say("sets.preview.right-own") }</dt><dd>{ listed(&card.said(&card.right_answer())) }</dd></div></dl>
            { why(shop, card) }
        </>
    }
}
