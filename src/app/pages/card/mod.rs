//! A card before it is handed in.

use super::events::HandedIn;
use super::spray::{Came, CardStand, asked, setup_of, use_came};
use crate::app::hooks::{use_keys, use_size};
use crate::app::parts::{
    Frame, Picture, answer_field, card_panels, card_ticket, certainty_field, icon, tests_field,
};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::{Card, Kind, Slate};
use crate::learn::Round;
use crate::record::{Certainty, Draft};
use crate::spraying::{Run, Setup};
use std::rc::Rc;
use yew::prelude::*;

/// What stands around a card: how far a round or a check is, and where the ways from it lead.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Around {
    pub(super) note: AttrValue,
    pub(super) marks: Html,
    /// Stands over the card.
    pub(super) lead: Html,
    pub(super) back: Route,
    pub(super) sheet: Route,
}

#[derive(Properties, PartialEq)]
pub(super) struct CardProps {
    pub(super) draft: Rc<Draft>,
    pub(super) card: Rc<Card>,
    pub(super) around: Around,
    pub(super) on_draft: Callback<Draft>,
    pub(super) hand_in: Callback<HandedIn>,
}

#[component]
pub(super) fn CardScreen(props: &CardProps) -> Html {
    let shop = use_shop();
    let (draft, card) = (&props.draft, &props.card);
    // Keys may come faster than the screen is drawn: each goes on from what the one before it made.
    let newest = use_mut_ref(|| Rc::clone(draft));
    newest.replace(Rc::clone(draft));
    let change =
        use_callback((Rc::clone(&newest), props.on_draft.clone()), |draft: Draft, (newest, on_draft)| {
            newest.replace(Rc::new(draft.clone()));
            on_draft.emit(draft);
        });
    let on_slate = use_callback((Rc::clone(&newest), change.clone()), |slate: Slate, (newest, change)| {
        let draft = Draft { slate, ..(**newest.borrow()).clone() };
        change.emit(draft);
    });
    let on_certainty =
        use_callback((Rc::clone(&newest), change), |certainty: Certainty, (newest, change)| {
            let draft = Draft { certainty: Some(certainty), ..(**newest.borrow()).clone() };
            change.emit(draft);
        });
    let at_stand = use_state_eq(|| false);
    let setup =
        use_memo((shop.clone(), Rc::clone(card), draft.card.sheet.slug.clone()), |(shop, card, sheet)| {
            setup_of(shop, card, sheet)
        });
    let came = use_came(Some(card), &draft.card.sheet.slug, draft.slate.answer(card).as_ref());
    let missing = missing_of(draft, card, &came);
    let handed = use_mut_ref(|| None::<(String, u32)>);
    let hand_in = use_callback(
        (Rc::clone(&newest), Rc::clone(card), came, props.hand_in.clone()),
        move |(), (newest, card, came, hand_in)| {
            let draft = Rc::clone(&newest.borrow());
            // A second press before the verdict is drawn hands nothing in again.
            let this = Some((card.family.clone(), card.seed));
            if missing_of(&draft, card, came).is_none() && handed.replace(this.clone()) != this {
                hand_in.emit(HandedIn { draft, card: Rc::clone(card), came: came.clone() });
            }
        },
    );
    let toggle = on_slate.reform({
        let newest = Rc::clone(&newest);
        move |()| newest.borrow().slate.clone().toggle_not_enough()
    });
    let on_key = use_callback(
        (
            Rc::clone(card),
            Rc::clone(&newest),
            on_slate.clone(),
            on_certainty.clone(),
            hand_in.clone(),
            *at_stand,
        ),
        |key: String, (card, newest, on_slate, on_certainty, hand_in, at_stand)| {
            if *at_stand {
                return false;
            }
            let slate = newest.borrow().slate.clone();
            if let Some(certainty) = certainty_of(&key) {
                on_certainty.emit(certainty);
            } else if key == "Enter" {
                hand_in.emit(());
            } else if let Some(slate) = slate_after(&key, card, &slate) {
                on_slate.emit(slate);
            } else {
                return false;
            }
            true
        },
    );
    use_keys(on_key);
    let not_enough = draft.slate.not_enough;
    let tests = tests_field(&shop, card, &draft.slate, &on_slate);
    // Whoever does a test has the panel in view: it stands beside what is answered, or the tests stand under it.
    let (beside, below) =
        if is_wide(use_size()) { (tests, Html::default()) } else { (Html::default(), tests) };
    let action = html! {
        <div class="hand-in">
            <button key="not-enough" type="button" class={classes!("control", "not-enough", not_enough.then_some("picked"))}
                aria-pressed={not_enough.to_string()} onclick={toggle.reform(|_: MouseEvent| ())}>
                { icon(Picture::NotEnough) }{ shop.say("card.not-enough") }
            </button>
            <button key="hand-in" type="button" class={if missing.is_none() { "next-step" } else { "next-step not-yet" }}
                aria-disabled={missing.is_some().to_string()} onclick={hand_in.reform(|_: MouseEvent| ())}>
                { shop.say(missing.unwrap_or("card.hand-in")) }
            </button>
        </div>
    };
    let by_keys = (card.kind == Kind::Point)
        .then(|| html! { <span class="by-keys">{ " " }{ shop.say("card.point-by-keys") }</span> });
    if let Some(setup) = (*setup).clone().filter(|_| *at_stand) {
        return stand(setup, &draft.slate, &on_slate, &at_stand);
    }
    let Around { note, marks, lead, back, sheet } = props.around.clone();
    html! {
        <Frame class="card" title={stage_name(&shop, card)} {note} back={Some(back)} {marks}
            cautions={cautions(&shop, card)} {action}>
            <div key="situation" class="situation">
                { lead }
                { card_ticket(&shop, card) }
                <h2 class="asked">{ shop.voice().ask(card) }</h2>
                { asked(&shop, setup.as_ref().as_ref()) }
                { card_panels(&shop, card, &draft.slate, &on_slate, below) }
                <div class="note how">
                    <p>{ how(&shop, card) }{ for by_keys }</p>
                    <a href={sheet.address()} class="text-link">{ shop.say("sheet.open") }</a>
                </div>
            </div>
            <div key="answer" class="answer">
                { beside }
                { answer_field(&shop, card, &draft.slate, &on_slate, "answer") }
                { to_stand(&shop, card, &draft.slate, &at_stand) }
            </div>
            { certainty_field(&shop, draft.certainty, &on_certainty) }
            <p key="keys" class="note keys">{ shop.say("card.keys") }</p>
        </Frame>
    }
}

/// The stand of a card that is sprayed, in the place of the card; what is sprayed there is its answer.
pub(super) fn stand(
    setup: Rc<Setup>,
    slate: &Slate,
    on_slate: &Callback<Slate>,
    at_stand: &UseStateHandle<bool>,
) -> Html {
    let leave = {
        let set = at_stand.setter();
        Callback::from(move |()| set.set(false))
    };
    let on_run = {
        let (slate, on_slate, leave) = (slate.clone(), on_slate.clone(), leave.clone());
        Callback::from(move |run: Run| {
            on_slate.emit(slate.clone().sprayed(run));
            leave.emit(());
        })
    };
    html! { <CardStand key="stand" {setup} {on_run} on_leave={leave} /> }
}

/// The way to the stand of a card that is sprayed.
pub(super) fn to_stand(shop: &Shop, card: &Card, slate: &Slate, at_stand: &UseStateHandle<bool>) -> Html {
    if card.kind != Kind::Spray {
        return Html::default();
    }
    let go = {
        let set = at_stand.setter();
        Callback::from(move |_: MouseEvent| set.set(true))
    };
    let key = if slate.run.is_some() { "card.spray-anew" } else { "card.to-stand" };
    html! { <button key="to-stand" type="button" class="control" onclick={go}>{ shop.say(key) }{ icon(Picture::Go) }</button> }
}

/// Whether a window is one in which the panels of a card stand beside its answer, as the styles have it: pixels.
const fn is_wide((width, height): (u32, u32)) -> bool {
    const WIDE: u32 = 900;
    width >= WIDE && width >= height
}

/// What is missing before the card can be handed in.
fn missing_of(draft: &Draft, card: &Card, came: &Came) -> Option<&'static str> {
    match (draft.slate.answer(card), draft.certainty) {
        (None, _) => Some(wanted(card.kind)),
        (Some(_), None) => Some("card.need-certainty"),
        _ if *came == Came::Measuring => Some("spray.measuring"),
        _ => None,
    }
}

/// What is asked for while a card of a kind has no answer yet.
pub(super) const fn wanted(kind: Kind) -> &'static str {
    match kind {
        Kind::Number => "card.need-figure",
        Kind::Point => "card.need-place",
        Kind::Diagnose => "card.need-diagnosis",
        Kind::Spray => "card.need-run",
        Kind::ChooseOne | Kind::ChooseAll | Kind::Order => "card.need-answer",
    }
}

fn how(shop: &Shop, card: &Card) -> AttrValue {
    match card.kind {
        Kind::ChooseOne => shop.say("card.pick-one"),
        Kind::ChooseAll => shop.say("card.pick-all"),
        Kind::Order => shop.say("card.put-order"),
        Kind::Number => shop.say("card.give-number"),
        Kind::Point => shop.say("card.point-at"),
        Kind::Diagnose => shop.say("card.test-and-name"),
        Kind::Spray => shop.say("card.spray-it"),
    }
}

fn certainty_of(key: &str) -> Option<Certainty> {
    match key {
        "q" | "Q" => Some(Certainty::AskFirst),
        "w" | "W" => Some(Certainty::TestBoard),
        "e" | "E" => Some(Certainty::OnTheJob),
        _ => None,
    }
}

/// The answer after a key; `None` where the key means nothing on this card.
fn slate_after(key: &str, card: &Card, slate: &Slate) -> Option<Slate> {
    let mut letters = key.chars();
    let letter = letters.next().filter(|_| letters.next().is_none());
    match (card.kind, key, letter) {
        (_, "?", _) => Some(slate.clone().toggle_not_enough()),
        (Kind::Number, "Backspace", _) => Some(slate.clone().typed('\u{8}')),
        (Kind::Number, _, Some(key @ ('0'..='9' | '.' | ',' | '-'))) => Some(slate.clone().typed(key)),
        (Kind::ChooseOne | Kind::ChooseAll, _, Some(letter)) => {
            let digit = letter.to_digit(10).and_then(|digit| digit.checked_sub(1));
            let place = digit.or_else(|| u32::from(letter.to_ascii_lowercase()).checked_sub(u32::from('a')));
            let place = usize::try_from(place?).ok().filter(|place| *place < card.options.len())?;
            Some(slate.clone().pick(card.kind, place))
        }
        _ => None,
    }
}

pub(super) fn stage_name(shop: &Shop, card: &Card) -> AttrValue {
    let family = shop.content().family(&card.family);
    family.map(|family| shop.stage(family.stage)).unwrap_or_default()
}

pub(super) fn place(shop: &Shop, draft: &Draft, round: Round) -> AttrValue {
    shop.say_with("card.of", &[("n", (draft.done + 1).to_string()), ("of", round.cards.to_string())])
}

pub(super) fn cautions(shop: &Shop, card: &Card) -> Vec<AttrValue> {
    let wanted =
        shop.content().family(&card.family).map(|family| family.cautions.clone()).unwrap_or_default();
    shop.cautions_for(&wanted)
}
