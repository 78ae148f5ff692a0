//! A card of the shop's own while it is written.

use super::Building;
use super::missing::OWN_QUESTION;
use crate::app::parts::{Field, LETTERS, Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::exchange::Refused;
use crate::exchange::set::{OPTION_MOST, OWN_OPTIONS, OwnCard, QUESTION_MOST, WHY_MOST};
use crate::record::plain;
use std::rc::Rc;
use yew::prelude::*;

/// Answers that a new card has room for at first.
const FIRST_OPTIONS: usize = 4;

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

/// What is typed so far.
struct Typed(UseStateHandle<Rc<OwnCard>>);

impl Typed {
    /// What an event changes in it.
    fn change<E: 'static>(&self, change: impl Fn(&mut OwnCard, E) + 'static) -> Callback<E> {
        let typed = self.0.clone();
        Callback::from(move |event: E| {
            let mut card = (**typed).clone();
            change(&mut card, event);
            typed.set(Rc::new(card));
        })
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct NewOwnCardProps {
    pub(super) building: Building,
    /// Told once it is in the set, or left.
    pub(super) on_end: Callback<()>,
}

#[component]
pub(super) fn NewOwnCard(props: &NewOwnCardProps) -> Html {
    let shop = use_shop();
    let typed = Typed(use_state(|| Rc::new(blank())));
    let tried = use_state(|| false);
    let card = &**typed.0;
    let put = {
        let (card, tried, on_end) = (Rc::clone(&typed.0), tried.setter(), props.on_end.clone());
        let set = Rc::clone(&props.building.set);
        let put = props.building.change(|set, card: OwnCard| set.own_cards.push(card));
        Callback::from(move |_: MouseEvent| {
            let card = made(&card);
            if card.check().is_err() {
                return tried.set(true);
            }
            on_end.emit(());
            if set.own_cards.iter().all(|other| other.id() != card.id()) {
                put.emit(card);
            }
        })
    };
    let leave = props.on_end.reform(|_: MouseEvent| ());
    // Once it was to be put into the set, what is wrong stands there until it is put right.
    let wrong = tried.then(|| made(card).check().err()).flatten();
    let said = |of: &str, key: &str, most: usize| {
        if wrong.as_ref().is_some_and(|refused| part(refused) == of) {
            shop.say_with(&format!("sets.build.own.{key}"), &[("most", most.to_string())])
        } else {
            AttrValue::default()
        }
    };
    let option = |index: usize| option_field(&shop, &typed, index);
    html! {
        <div key="new" class="form kraft">
            <Field id={OWN_QUESTION} label={shop.say("sets.build.own.question")} value={card.question.clone()} on_input={typed.change(|card, text| card.question = text)} wrong={said("question", "wrong-question", QUESTION_MOST)} />
            { for (0..card.options.len()).filter_map(option) }
            <p key="options" class="wrong" role="alert">{ said("options", "wrong-option", OPTION_MOST) }{ said("right", "wrong-right", OPTION_MOST) }</p>
            <button key="more" type="button" class="control" hidden={card.options.len() >= *OWN_OPTIONS.end()} onclick={typed.change(|card, _: MouseEvent| card.options.push(String::new()))}>{ shop.say("sets.build.own.more") }</button>
            <Field id="own-why" label={shop.say("sets.build.own.why")} value={card.why.clone()} on_input={typed.change(|card, text| card.why = text)} wrong={said("why", "wrong-why", WHY_MOST)} />
            <div key="ways" class="people">
                <button type="button" class="control" onclick={put}>{ icon(Picture::Tick) }{ shop.say("sets.build.own.put") }</button>
                <button type="button" class="control" onclick={leave}>{ shop.say("sets.build.own.leave") }</button>
            </div>
        </div>
    }
}

/// The part of a card that was refused, as the file of a set names it.
fn part(refused: &Refused) -> &str {
    match refused {
        Refused::Value { place, .. } => place.split('.').next().unwrap_or_default(),
        _ => "",
    }
}

/// An answer, and whether it is right.
fn option_field(shop: &Shop, typed: &Typed, index: usize) -> Option<Html> {
    let option = typed.0.options.get(index)?.clone();
    let number = u32::try_from(index + 1).ok()?;
    let named = [("letter", LETTERS.get(index).copied().unwrap_or_default().to_owned())];
    let is_right = typed.0.right.contains(&number);
    let on_right = typed.change(move |card, _: Event| {
        if is_right {
            card.right.retain(|one| *one != number);
        } else {
            card.right.push(number);
        }
    });
    let on_input = typed.change(move |card, text| {
        if let Some(option) = card.options.get_mut(index) {
            *option = text;
        }
    });
    Some(html! {
        <div key={index} class="own-option">
            <Field id={format!("own-option-{index}")} label={shop.say_with("sets.build.own.option", &named)} value={option} {on_input} />
            <label class={classes!("unit", is_right.then_some("picked"))}>
                <input type="checkbox" checked={is_right} onchange={on_right} /><span>{ shop.say_with("sets.build.own.right", &named) }</span>
            </label>
        </div>
    })
}
