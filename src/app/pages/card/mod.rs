//! A card before it is handed in.

mod keys;
mod making;
mod stand;

pub(super) use making::{ANSWER, NEED_CERTAINTY, place_of};
pub(super) use stand::{stand, to_stand};

use super::events::HandedIn;
use super::spray::{asked, setup_of};
use crate::app::hooks::{use_keys, use_size};
use crate::app::parts::{
    Frame, Picture, answer_field, card_panels, card_ticket, certainty_field, icon, tests_field,
};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::{Card, Kind};
use crate::learn::Round;
use crate::record::Draft;
use keys::{Key, meant};
use making::use_making;
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
    /// Whether nothing is told of an answer before all are given.
    pub(super) in_check: bool,
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
    let making = use_making(props);
    let at_stand = use_state_eq(|| false);
    let setup =
        use_memo((shop.clone(), Rc::clone(card), draft.card.sheet.slug.clone()), |(shop, card, sheet)| {
            setup_of(shop, card, sheet)
        });
    let on_key = use_callback(
        (Rc::clone(card), making.clone(), *at_stand),
        |key: String, (card, making, at_stand)| {
            match meant(&key, card, &making.slate()).filter(|_| !*at_stand) {
                Some(Key::Certain(certainty)) => making.on_certainty.emit(certainty),
                Some(Key::HandIn) => making.hand_in.emit(()),
                Some(Key::Answer(slate)) => making.on_slate.emit(slate),
                None => return false,
            }
            true
        },
    );
    use_keys(on_key);
    let on_slate = &making.on_slate;
    let tests = tests_field(&shop, card, &draft.slate, on_slate);
    // Whoever does a test has the panel in view: it stands beside what is answered, or the tests stand under it.
    let (beside, below) =
        if is_wide(use_size()) { (tests, Html::default()) } else { (Html::default(), tests) };
    let class = if making.missing.is_none() { "next-step" } else { "next-step not-yet" };
    let hand_in = html! {
        <button key="hand-in" type="button" {class} onclick={making.hand_in.reform(|_: MouseEvent| ())}>
            { shop.say(making.missing.unwrap_or("card.hand-in")) }
        </button>
    };
    let action = foot(&shop, draft.slate.not_enough, &making.toggle_not_enough(), hand_in);
    let by_keys = (card.kind == Kind::Point)
        .then(|| html! { <span class="by-keys">{ " " }{ shop.say("card.point-by-keys") }</span> });
    let Around { note, marks, lead, back, sheet, in_check } = props.around.clone();
    let cautions = shop.cautions_asked(shop.content().family(&card.family), in_check);
    if let Some(setup) = (*setup).clone().filter(|_| *at_stand) {
        return stand(setup, cautions, &draft.slate, on_slate, &at_stand);
    }
    html! {
        <Frame class="card" title={stage_name(&shop, card)} {note} back={Some(back)} {marks} {cautions} {action}>
            <div key="situation" class="situation">
                { lead }
                { card_ticket(&shop, card) }
                <h2 class="asked">{ shop.voice().ask(card) }</h2>
                { asked(&shop, setup.as_ref().as_ref()) }
                { card_panels(&shop, card, &draft.slate, on_slate, below) }
                <div class="note how">
                    <p>{ how(&shop, card) }{ for by_keys }</p>
                    <a href={sheet.address()} class="text-link">{ shop.say("sheet.open") }</a>
                </div>
            </div>
            <div key="answer" id={ANSWER} tabindex="-1" class="answer" role="group" aria-label={shop.say("verdict.chose")}>
                { beside }
                { answer_field(&shop, card, &draft.slate, on_slate, "answer") }
                { to_stand(&shop, card, &draft.slate, &at_stand) }
            </div>
            { certainty_field(&shop, draft.certainty, &making.on_certainty) }
            <p key="keys" class="note keys">{ shop.say("card.keys") }</p>
        </Frame>
    }
}

/// What stands below a card that is answered: that not enough is told, and the one next thing to do.
pub(super) fn foot(shop: &Shop, not_enough: bool, toggle: &Callback<()>, next: Html) -> Html {
    html! {
        <div class="hand-in">
            <button key="not-enough" type="button" class={classes!("control", "not-enough", not_enough.then_some("picked"))}
                aria-pressed={not_enough.to_string()} onclick={toggle.reform(|_: MouseEvent| ())}>
                { icon(Picture::NotEnough) }{ shop.say("card.not-enough") }
            </button>
            { next }
        </div>
    }
}

/// Whether a window is one in which the panels of a card stand beside its answer, as the styles have it: pixels.
const fn is_wide((width, height): (u32, u32)) -> bool {
    const WIDE: u32 = 900;
    width >= WIDE && width >= height
}

/// What is asked for while a card of a kind has no answer yet.
pub(super) const fn wanted(kind: Kind) -> &'static str {
    match kind {
        Kind::Number => "card.need-figure",
        Kind::Point => making::NEED_PLACE,
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
        Kind::Number if card.unit.is_some_and(|unit| unit.siblings().len() > 1) => {
            shop.say("card.give-number")
        }
        Kind::Number => shop.say("card.give-figure"),
        Kind::Point => shop.say("card.point-at"),
        Kind::Diagnose => shop.say("card.test-and-name"),
        Kind::Spray => shop.say("card.spray-it"),
    }
}

pub(super) fn stage_name(shop: &Shop, card: &Card) -> AttrValue {
    let family = shop.content().family(&card.family);
    family.map(|family| shop.stage(family.stage)).unwrap_or_default()
}

pub(super) fn place(shop: &Shop, draft: &Draft, round: Round) -> AttrValue {
    shop.say_with("card.of", &[("n", (draft.done + 1).to_string()), ("of", round.cards.to_string())])
}

/// The cautions below a card that was answered.
pub(super) fn cautions(shop: &Shop, card: &Card) -> Vec<AttrValue> {
    let wanted =
        shop.content().family(&card.family).map(|family| family.cautions.clone()).unwrap_or_default();
    shop.cautions_for(&wanted)
}
