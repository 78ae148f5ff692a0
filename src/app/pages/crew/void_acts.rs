//! What can be done with something that is void: taken over from another tablet, taken back, handed out.

use super::card_title::card_title;
use super::void_written::{finder, voided};
use crate::app::hooks::{use_book, use_keys_held, use_people};
use crate::app::parts::{HandOut, Picture, icon};
use crate::app::state::{Keep, SetsContext, Shop, use_shop};
use crate::device::{clock, page};
use crate::exchange::crew::finding;
use crate::exchange::save_name;
use crate::record::{Event, Voided, Wrong};
use yew::prelude::*;

/// Begins the name of the file of something that was found wrong.
const FOUND_WRONG: &str = "stepboard-found-wrong";

#[derive(Properties, PartialEq)]
pub(super) struct VoidActsProps {
    /// Begins the ids of what it shows.
    pub(super) id: String,
    pub(super) voided: Voided,
    /// Whether it was taken back.
    pub(super) over: bool,
    /// Told once something is written.
    #[prop_or_default]
    pub(super) on_done: Callback<()>,
}

#[component]
pub(super) fn VoidActs(props: &VoidActsProps) -> Html {
    let shop = use_shop();
    let (books, keys, people) = (use_book(), use_keys_held(), use_people());
    let handing = use_state(|| false);
    // Whether what was pressed last is stored.
    let stored = use_state(|| None::<bool>);
    let line = format!("{}-came", props.id);
    let one = &props.voided;
    let origin = one.origin();
    let of_it = |event: &Event| matches!(event, Event::Voided(other) if other.origin() == origin);
    let here = books.book.journal.events().iter().any(of_it);
    let over = props.over;
    let lift = matches!(one.wrong, Wrong::Void { .. });
    let write = |what: Voided| {
        let (books, on_done, line) = (books.clone(), props.on_done.clone(), line.clone());
        let stored = stored.setter();
        Callback::from(move |_: MouseEvent| {
            let (on_done, line, stored) = (on_done.clone(), line.clone(), stored.clone());
            let done = Callback::from(move |is_stored: bool| {
                stored.set(Some(is_stored));
                if is_stored {
                    // The button that had the focus goes.
                    page::focus(&line);
                    on_done.emit(());
                }
            });
            books.write.emit(Keep { what: what.clone().into(), done });
        })
    };
    let by = finder(&shop, &keys, &people.crew);
    let reason = shop.say("crew.void.taken-back");
    let journal = &books.book.journal;
    let back = voided(&shop, journal, by, Wrong::Void { void: origin.clone() }, &reason, None);
    let from = Some(origin.clone());
    let take = voided(&shop, journal, one.by.clone(), one.wrong.clone(), &one.reason, from);
    let file = use_memo((handing.then(|| journal.clone()), origin), |(journal, origin)| {
        let found = finding(journal.as_ref()?, origin)?;
        let voided = found
            .events
            .iter()
            .find_map(|event| if let Event::Voided(one) = event { Some(one) } else { None })?;
        let name = save_name(FOUND_WRONG, &voided.reason, voided.stamp.day(), "json");
        Some((name, found.text().ok()?))
    });
    let on_hand = {
        let handing = handing.clone();
        Callback::from(move |_: MouseEvent| handing.set(!*handing))
    };
    let said = match *stored {
        Some(false) => shop.say("assess.not-stored"),
        _ if over => shop.say("crew.void.over"),
        Some(true) => shop.say("crew.void.taken"),
        None => AttrValue::default(),
    };
    html! {
        <div class="void-acts">
            <p key="said" id={line.clone()} class="note" role="status" tabindex="-1">{ said }</p>
            <div key="acts" class="people">
                <button key="take" type="button" class="control" hidden={here} onclick={write(take)}>{ icon(Picture::Save) }{ shop.say("crew.void.take") }</button>
                <button key="back" type="button" class="control" hidden={over || lift || !here} onclick={write(back)}>{ shop.say("crew.void.back") }</button>
                <button key="hand" type="button" class="control" hidden={!here} aria-expanded={handing.to_string()} onclick={on_hand}>{ icon(Picture::Up) }{ shop.say("crew.void.hand") }</button>
            </div>
            if let Some((name, text)) = (*file).clone() {
                <p key="why" class="note">{ shop.say("crew.void.hand-why") }</p>
                <HandOut key="hand-out" id={format!("{}-hand", props.id)} {name} {text} title={shop.say("crew.void.head")} />
            }
        </div>
    }
}

/// That an answer no longer counts, with what voids it.
pub(in crate::app) fn void_mark(shop: &Shop, sets: &SetsContext, void: Option<&Voided>) -> Html {
    html! {
        <div key="void" class="kraft void-mark" hidden={void.is_none()}>
            <p><b>{ shop.say("crew.void.answer") }</b></p>
            { for void.map(|one| void_words(shop, sets, one)) }
        </div>
    }
}

/// What was found wrong, why, by whom and when.
pub(in crate::app) fn void_words(shop: &Shop, sets: &SetsContext, one: &Voided) -> Html {
    let what = match &one.wrong {
        Wrong::Cards(kind) => card_title(shop, sets, &kind.family),
        Wrong::Rule { rule, cards } => {
            let told =
                [("rule", shop.text(&format!("rule.{rule}")).to_string()), ("n", cards.len().to_string())];
            shop.say_with("crew.void.rule", &told)
        }
        Wrong::Set { set } => {
            shop.say_with("crew.void.set", &[("set", super::done::set_title(shop, sets, set).to_string())])
        }
        Wrong::Void { .. } => shop.say("crew.void.void"),
    };
    let by = if one.by.name.is_empty() { shop.say("crew.nameless").to_string() } else { one.by.name.clone() };
    let told = [("reason", one.reason.clone()), ("name", by), ("at", clock::local(&one.stamp.at))];
    html! {
        <span class="words"><b>{ what }</b><span>{ shop.say_with("crew.void.told", &told) }</span></span>
    }
}
