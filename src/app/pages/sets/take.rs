//! Taking a set: card after card, with a verdict at once where it is practice.

use super::super::card::{Around, CardScreen};
use super::super::check::use_presence;
use super::super::dealt::Dealt;
use super::super::sheet::ShopSheet;
use super::absent;
use super::at_once::AtOnce;
use super::give::{Giving, use_giving};
use super::own::OwnScreen;
use super::view::{View, count};
use crate::app::hooks::{use_book, use_desk, use_sets};
use crate::app::parts::{Frame, round};
use crate::app::route::Route;
use crate::app::state::{ContentContext, KeptSet, Shop, use_shop};
use crate::card::Slate;
use crate::content::Purpose;
use crate::device::{Watch, page};
use std::rc::Rc;
use yew::prelude::*;

/// Id of the line over a card. It takes the focus, so that the next card is heard of.
const LEAD: &str = "set-card";

#[derive(Properties, PartialEq)]
pub(in crate::app) struct TakeSetProps {
    pub(in crate::app) id: String,
    /// Whether its shop sheet is looked at meanwhile.
    pub(in crate::app) sheet: bool,
}

/// Sees to it that the set's own sheet is known while it is taken.
#[component]
pub(in crate::app) fn TakeSet(props: &TakeSetProps) -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let book = use_book().book;
    let kept = sets.find(&props.id).cloned();
    let content = use_memo((shop.clone(), kept.clone()), |(shop, kept)| {
        let sheet = kept.as_ref()?.set.sheet_of(shop.content()).ok()?;
        Some(ContentContext(Rc::new(shop.content().with_sheets([sheet]))))
    });
    match kept.zip((*content).clone()) {
        Some((kept, context)) => html! {
            <ContextProvider<ContentContext> {context}><Taking {kept} sheet={props.sheet} /></ContextProvider<ContentContext>>
        },
        None => absent(&shop, &sets, &book.journal, &props.id),
    }
}

#[derive(Properties, PartialEq)]
struct TakingProps {
    kept: KeptSet,
    sheet: bool,
}

#[component]
fn Taking(props: &TakingProps) -> Html {
    let shop = use_shop();
    let (books, desk) = (use_book(), use_desk());
    let kept = &props.kept;
    let journal = &books.book.journal;
    let view = use_memo((shop.clone(), kept.clone(), journal.next_sequence()), |(shop, kept, _)| {
        View::of(shop, kept, journal).map(Rc::new)
    });
    let view = (*view).clone();
    let at = view.as_ref().map_or(0, |view| view.at());
    let looked = use_state(|| at);
    let to_look = kept.set.task.purpose == Purpose::Practise && at > *looked;
    let card = view.as_ref().and_then(|view| view.card().cloned());
    let open = card.is_some();
    let begun = view.as_ref().is_some_and(|view| view.begun_since(books.book.opened_at));
    let closed =
        use_presence(view.as_ref().map(|view| view.attempt.clone()).unwrap_or_default(), open, begun);
    // With the last card a set that is no check of a competency is over; the screen that tells what came of it comes next.
    let result = Route::SetOf { id: kept.id.clone() };
    use_effect_with(!open && !to_look, {
        let result = result.clone();
        move |over| {
            if *over {
                result.go();
            }
        }
    });
    use_effect_with((at, to_look), |_| page::focus(LEAD));
    let draft = desk.check.clone().filter(|draft| view.as_ref().is_some_and(|view| view.is_next(draft)));
    let missing =
        view.as_ref().filter(|_| draft.is_none()).and_then(|view| view.draft(&shop.settings.person));
    use_effect_with(missing, {
        let put = desk.put_check.clone();
        move |missing| {
            if missing.is_some() {
                put.emit(missing.clone());
            }
        }
    });
    let fresh = match (&card, &draft) {
        (Some(Dealt::Computed(card)), Some(draft)) => draft.slate == Slate::for_card(card),
        (Some(Dealt::Own(_)), _) => true,
        _ => false,
    };
    // An answer that was begun before this page was opened is not timed.
    let watch = use_memo((at, draft.is_some()), |_| fresh.then(Watch::start));
    let within = view.as_ref().map(|view| view.within(&kept.id)).unwrap_or_default();
    let Giving { computed, own } = use_giving(view.clone(), within, watch, closed);
    let around = around(&shop, kept, view.as_deref(), to_look);
    let on_sheet = view.as_ref().map(|view| view.sheet.slug.clone());
    let screen = match (card, draft, view.and_then(|view| view.last())) {
        _ if props.sheet => {
            html! { <ShopSheet key="sheet" back={Route::TakeSet { id: kept.id.clone() }} sheet={on_sheet} /> }
        }
        (_, _, Some((entry, card))) if to_look => {
            let on_next = {
                let looked = looked.setter();
                Callback::from(move |()| looked.set(at))
            };
            html! { <AtOnce key={format!("told-{at}")} {card} entry={Rc::new(entry)} {around} {on_next} last={!open} /> }
        }
        (Some(Dealt::Computed(card)), Some(draft), _) => html! {
            <CardScreen key={format!("card-{at}")} {draft} {card} {around} on_draft={desk.put_check.reform(Some)} hand_in={computed} />
        },
        (Some(Dealt::Own(card)), _, _) => html! {
            <OwnScreen key={format!("card-{at}")} {card} {around} hand_in={own} />
        },
        _ => html! {
            <Frame key="wait" class="sheet" title={shop.say("sets.title")} back={Some(result)} cautions={shop.cautions_for(&[])}>
                <p class="lead" role="status">{ shop.say("check.dealing") }</p>
            </Frame>
        },
    };
    html! { <div class="practise">{ screen }</div> }
}

/// What stands around a card of a set, or around the verdict on it.
fn around(shop: &Shop, kept: &KeptSet, view: Option<&View>, to_look: bool) -> Around {
    let (at, of) = view.map_or((0, 0), |view| (view.at(), view.cards.len()));
    let shown = if to_look { at } else { at + 1 };
    let note = shop.say_with("sets.take.card", &[("n", shown.to_string()), ("of", of.to_string())]);
    let at_once = kept.set.task.purpose == Purpose::Practise;
    let lead = if at_once { AttrValue::default() } else { shop.say("sets.take.sealed") };
    Around {
        note: note.clone(),
        marks: round(shop, count(at), count(of)),
        lead: html! { <p key="lead" id={LEAD} tabindex="-1" class="note sitting-lead"><span class="spoken">{ note }{ ". " }</span>{ lead }</p> },
        back: Route::SetOf { id: kept.id.clone() },
        sheet: Route::TakeSetSheet { id: kept.id.clone() },
        in_check: !at_once,
    }
}
