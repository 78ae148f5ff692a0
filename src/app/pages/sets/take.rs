//! Taking a set: card after card, with a verdict at once where it is practice.

use super::super::card::{Around, CardScreen};
use super::super::check::use_presence;
use super::super::dealt::Dealt;
use super::super::events::{HandedIn, answered, answered_own, turn};
use super::super::sheet::ShopSheet;
use super::absent;
use super::at_once::AtOnce;
use super::own::OwnScreen;
use super::taken::latest;
use crate::app::hooks::{use_book, use_desk, use_sets};
use crate::app::parts::{Frame, round};
use crate::app::route::Route;
use crate::app::state::{ContentContext, KeptSet, OnDesk, use_shop};
use crate::card::{Answer, Slate};
use crate::content::{Purpose, World};
use crate::device::{Watch, page};
use crate::exchange::set::{OwnCard, cards};
use crate::learn::check::answers_of;
use crate::record::{Certainty, Draft, Entry, Event, SheetName, Standing, Step, Within};
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

/// The attempt as the screen needs it, worked out once an event.
#[derive(Debug, Clone, PartialEq)]
struct View {
    attempt: String,
    /// Whether it is evidence for something.
    counts: bool,
    /// Number of its latest step, and whether it was left with it.
    step: u64,
    left: bool,
    sheet: SheetName,
    cards: Vec<Dealt>,
    answers: Vec<Entry>,
}

impl View {
    fn of(shop: &crate::app::state::Shop, kept: &KeptSet, journal: &crate::record::Journal) -> Option<Self> {
        let attempt = latest(shop, journal, &kept.id)?;
        let sheet = kept.set.sheet_of(shop.content()).ok()?;
        let world = World { content: shop.content(), sheet: &sheet };
        let dealt = cards(&kept.set, &kept.id, &world, attempt.person, attempt.id);
        let answers = answers_of(journal.events(), attempt.device, attempt.id);
        Some(Self {
            attempt: attempt.id.to_owned(),
            counts: !attempt.competencies.is_empty(),
            step: attempt.step,
            left: attempt.standing == Standing::Left,
            sheet: SheetName::of(&sheet),
            cards: dealt.into_iter().map(Dealt::from).collect(),
            answers: answers.into_iter().cloned().collect(),
        })
    }

    fn within(&self, set: &str) -> Within {
        let (attempt, set) = (self.attempt.clone(), set.to_owned());
        if self.counts { Within::Check { attempt, set } } else { Within::Set { attempt, set } }
    }
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
    let at = view.as_ref().map_or(0, |view| view.answers.len());
    let looked = use_state(|| at);
    let at_once = kept.set.task.purpose == Purpose::Practise;
    let to_look = at_once && at > *looked;
    let card = view.as_ref().and_then(|view| view.cards.get(at).cloned());
    let open = card.is_some();
    let begun = view.as_ref().is_some_and(|view| !view.left && view.step >= books.book.opened_at);
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
    let draft = desk.check.clone().filter(|draft| {
        let of_card = |card: &Dealt| card.named() == (draft.card.family.clone(), draft.card.seed);
        let attempt = view.as_ref().map(|view| view.attempt.as_str());
        draft.attempt.as_deref() == attempt && card.as_ref().is_some_and(of_card)
    });
    let missing = view.as_ref().zip(card.as_ref()).filter(|_| draft.is_none()).and_then(|(view, card)| {
        let Dealt::Computed(card) = card else { return None };
        let done = u32::try_from(at).unwrap_or(u32::MAX);
        let draft = Draft::new(&shop.settings.person, card, view.sheet.clone(), None, done);
        Some(Draft { attempt: Some(view.attempt.clone()), ..draft })
    });
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
    let give = {
        let (shop, hand_in, view, closed) = (shop.clone(), books.hand_in.clone(), view.clone(), closed);
        Callback::from(move |event: Event| {
            hand_in.emit((event, OnDesk::NextOfCheck));
            let Some(view) = view.as_ref().filter(|view| at + 1 >= view.cards.len() && !view.counts) else {
                return;
            };
            *closed.borrow_mut() = true;
            hand_in.emit((turn(&shop, &view.attempt, Step::Closed), OnDesk::Same));
        })
    };
    let within = view.as_ref().map(|view| view.within(&kept.id)).unwrap_or_default();
    let hand_in = {
        let (shop, give, watch, within) = (shop.clone(), give.clone(), Rc::clone(&watch), within.clone());
        Callback::from(move |handed: HandedIn| {
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            if let Some(event) = answered(&shop, &handed, seconds, within.clone()) {
                give.emit(event);
            }
        })
    };
    let hand_in_own = {
        let (shop, sheet) = (shop.clone(), view.as_ref().map(|view| view.sheet.clone()));
        Callback::from(move |(card, answer, certainty): (Rc<OwnCard>, Answer, Certainty)| {
            let seconds = watch.as_ref().as_ref().map(Watch::seconds);
            if let Some(sheet) = sheet.clone() {
                give.emit(answered_own(&shop, &card, sheet, (answer, certainty), seconds, within.clone()));
            }
        })
    };
    let of = view.as_ref().map_or(0, |view| view.cards.len());
    let counts = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let shown = if to_look { at } else { at + 1 };
    let said = shop.say_with("sets.take.card", &[("n", shown.to_string()), ("of", of.to_string())]);
    let lead = if at_once { AttrValue::default() } else { shop.say("sets.take.sealed") };
    let around = Around {
        note: said.clone(),
        marks: round(&shop, counts(at), counts(of)),
        lead: html! { <p key="lead" id={LEAD} tabindex="-1" class="note sitting-lead"><span class="spoken">{ said }{ ". " }</span>{ lead }</p> },
        back: result.clone(),
        sheet: Route::TakeSetSheet { id: kept.id.clone() },
    };
    let last = view
        .as_ref()
        .and_then(|view| view.answers.last().cloned().zip(view.cards.get(at.checked_sub(1)?).cloned()));
    let on_sheet = view.as_ref().map(|view| view.sheet.slug.clone());
    let screen = match (card, draft, last) {
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
            <CardScreen key={format!("card-{at}")} {draft} {card} {around} on_draft={desk.put_check.reform(Some)} {hand_in} />
        },
        (Some(Dealt::Own(card)), _, _) => html! {
            <OwnScreen key={format!("card-{at}")} {card} {around} hand_in={hand_in_own} />
        },
        _ => html! {
            <Frame key="wait" class="sheet" title={shop.say("sets.title")} back={Some(result)} cautions={shop.cautions_for(&[])}>
                <p class="lead" role="status">{ shop.say("check.dealing") }</p>
            </Frame>
        },
    };
    html! { <div class="practise">{ screen }</div> }
}
