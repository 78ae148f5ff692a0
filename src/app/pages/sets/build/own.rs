//! Cards of the shop's own: those in the set, and writing another.

use super::Building;
use super::missing::OWN_QUESTION;
use crate::app::parts::{Field, LETTERS, Picture, icon};
use crate::app::state::use_shop;
use crate::exchange::Refused;
use crate::exchange::set::{OPTION_MOST, OWN_CARDS_MOST, OWN_OPTIONS, OwnCard, QUESTION_MOST, WHY_MOST};
use crate::record::plain;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct OwnCardsProps {
    pub(super) building: Building,
}

/// Answers that a new card has room for at first.
const FIRST_OPTIONS: usize = 4;

/// What typing changes in a card.
type Change = Rc<dyn Fn(&mut OwnCard, String)>;

/// A card with nothing in it.
fn blank() -> OwnCard {
    OwnCard { options: vec![String::new(); FIRST_OPTIONS], ..OwnCard::default() }
}

/// What was typed as it goes into the set: empty answers are left out, and the places of the right ones follow.
fn made(typed: &OwnCard) -> OwnCard {
    let mut made = OwnCard { question: plain(&typed.question), why: plain(&typed.why), ..OwnCard::default() };
    for (place, option) in (1_u32..).zip(&typed.options).map(|(place, option)| (place, plain(option))) {
        if option.is_empty() {
            continue;
        }
        made.options.push(option);
        if typed.right.contains(&place) {
            made.right.extend(u32::try_from(made.options.len()));
        }
    }
    made
}

#[component]
pub(super) fn OwnCards(props: &OwnCardsProps) -> Html {
    let shop = use_shop();
    let building = &props.building;
    let typed = use_state(|| None::<Rc<OwnCard>>);
    let wrong = use_state(|| None::<Refused>);
    let cards = &building.set.own_cards;
    let full = cards.len() >= OWN_CARDS_MOST;
    let row = |(nth, card): (usize, &OwnCard)| {
        let onclick = building.change(move |set, _: MouseEvent| drop(set.own_cards.remove(nth)));
        let named = [("question", card.question.clone())];
        html! {
            <li key={card.id()}><span class="words"><b>{ &card.question }</b><span class="note">{ card.options.join(", ") }</span></span>
                <button type="button" class="control square" aria-label={shop.say_with("sets.build.own.remove", &named)} {onclick}>{ icon(Picture::Cross) }</button></li>
        }
    };
    let add = {
        let typed = typed.setter();
        Callback::from(move |_: MouseEvent| typed.set(Some(Rc::new(blank()))))
    };
    let leave = {
        let (typed, wrong) = (typed.setter(), wrong.setter());
        Callback::from(move |_: MouseEvent| {
            typed.set(None);
            wrong.set(None);
        })
    };
    let put = {
        let (typed, wrong, set) = (typed.clone(), wrong.setter(), Rc::clone(&building.set));
        let put = building.change(|set, card: OwnCard| set.own_cards.push(card));
        Callback::from(move |_: MouseEvent| {
            let Some(card) = typed.as_deref().map(made) else { return };
            let twice = set.own_cards.iter().any(|other| other.id() == card.id());
            match card.check() {
                Err(refused) => wrong.set(Some(refused)),
                Ok(()) => {
                    wrong.set(None);
                    typed.set(None);
                    if !twice {
                        put.emit(card);
                    }
                }
            }
        })
    };
    let place = wrong.as_ref().map(|refused| match refused {
        Refused::Value { place, .. } => place.split('.').next().unwrap_or_default().to_owned(),
        _ => String::new(),
    });
    let said = |of: &str, key: &str, most: usize| {
        let is_it = place.as_deref() == Some(of);
        if is_it {
            shop.say_with(&format!("sets.build.own.{key}"), &[("most", most.to_string())])
        } else {
            AttrValue::default()
        }
    };
    let change = |change: Change| {
        let typed = typed.clone();
        Callback::from(move |text: String| {
            let Some(mut card) = typed.as_deref().cloned() else { return };
            change(&mut card, text);
            typed.set(Some(Rc::new(card)));
        })
    };
    let form = typed.as_deref().map(|card| {
        let option = |(index, option): (usize, &String)| {
            let letter = LETTERS.get(index).copied().unwrap_or_default();
            let Ok(number) = u32::try_from(index + 1) else { return Html::default() };
            let named = [("letter", letter.to_owned())];
            let is_right = card.right.contains(&number);
            let on_right = change(Rc::new(move |card, _| {
                let before = card.right.len();
                card.right.retain(|one| *one != number);
                if card.right.len() == before {
                    card.right.push(number);
                }
            }));
            let on_input = change(Rc::new(move |card, text| {
                if let Some(option) = card.options.get_mut(index) {
                    *option = text;
                }
            }));
            html! {
                <div key={index} class="own-option">
                    <Field id={format!("own-option-{index}")} label={shop.say_with("sets.build.own.option", &named)} value={option.clone()} {on_input} />
                    <label class={classes!("unit", is_right.then_some("picked"))}>
                        <input type="checkbox" checked={is_right} onchange={on_right.reform(|_: Event| String::new())} /><span>{ shop.say_with("sets.build.own.right", &named) }</span>
                    </label>
                </div>
            }
        };
        let more = change(Rc::new(|card, _| card.options.push(String::new())));
        html! {
            <div key="new" class="form kraft">
                <Field id={OWN_QUESTION} label={shop.say("sets.build.own.question")} value={card.question.clone()} on_input={change(Rc::new(|card, text| card.question = text))} wrong={said("question", "wrong-question", QUESTION_MOST)} />
                { for card.options.iter().enumerate().map(option) }
                <p key="options" class="wrong" role="alert">{ said("options", "wrong-option", OPTION_MOST) }{ said("right", "wrong-right", OPTION_MOST) }</p>
                <button key="more" type="button" class="control" hidden={card.options.len() >= *OWN_OPTIONS.end()} onclick={more.reform(|_: MouseEvent| String::new())}>{ shop.say("sets.build.own.more") }</button>
                <Field id="own-why" label={shop.say("sets.build.own.why")} value={card.why.clone()} on_input={change(Rc::new(|card, text| card.why = text))} wrong={said("why", "wrong-why", WHY_MOST)} />
                <div key="ways" class="people">
                    <button type="button" class="control" onclick={put.clone()}>{ icon(Picture::Tick) }{ shop.say("sets.build.own.put") }</button>
                    <button type="button" class="control" onclick={leave.clone()}>{ shop.say("sets.build.own.leave") }</button>
                </div>
            </div>
        }
    });
    let writing = form.is_some();
    html! {
        <section class="own-cards">
            <h3>{ shop.say("sets.build.own.head") }</h3>
            <p key="lead" class="note">{ shop.say("sets.build.own.lead") }</p>
            <ul key="rows" class="rows" hidden={cards.is_empty()}>{ for cards.iter().enumerate().map(row) }</ul>
            <div key="form">{ for form }</div>
            <button key="add" type="button" class="control" hidden={writing || full} onclick={add}>{ icon(Picture::Pencil) }{ shop.say("sets.build.own.add") }</button>
            <p key="full" class="note" hidden={!full}>{ shop.say_with("sets.build.own.full", &[("most", OWN_CARDS_MOST.to_string())]) }</p>
        </section>
    }
}
