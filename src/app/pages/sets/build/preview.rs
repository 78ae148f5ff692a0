//! What a set that is being built deals, card by card, each with the computed answer and its working.

use super::super::own::own_preview;
use super::warned::warned;
use crate::app::pages::dealt::Dealt;
use crate::app::pages::spray::asked;
use crate::app::parts::{answered_panels, card_ticket, counts_told, rules, told, working};
use crate::app::state::{Shop, use_shop};
use crate::card::{Card, Kind, solve, sprayed};
use crate::content::World;
use crate::exchange::set::{Set, Warned, cards, counts_not, minutes_of, warnings};
use crate::learn::check::COMPETENCIES_MOST;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct PreviewProps {
    pub(super) set: Rc<Set>,
}

/// What is worked out once a change.
#[derive(PartialEq)]
struct Shown {
    cards: Vec<Dealt>,
    minutes: u32,
    warned: Vec<Warned>,
}

impl Shown {
    fn of(shop: &Shop, set: &Set, other: u32) -> Option<Self> {
        let sheet = set.sheet_of(shop.content()).ok()?;
        let world = World { content: shop.content(), sheet: &sheet };
        let dealt = cards(set, "", &world, "", &other.to_string());
        Some(Self {
            minutes: minutes_of(&dealt, &world),
            warned: warnings(set, &world),
            cards: dealt.into_iter().map(Dealt::from).collect(),
        })
    }
}

#[component]
pub(super) fn Preview(props: &PreviewProps) -> Html {
    let shop = use_shop();
    let set = &props.set;
    // Nobody's cards: another number deals others.
    let other = use_state(|| 0_u32);
    let open = use_state(|| None::<usize>);
    let shown =
        use_memo((shop.clone(), Rc::clone(set), *other), |(shop, set, other)| Shown::of(shop, set, *other));
    let shown = (*shown).as_ref();
    let none = shown.is_none_or(|shown| shown.cards.is_empty());
    let row = |(nth, card): (usize, &Dealt)| {
        let is_open = *open == Some(nth);
        let onclick = {
            let open = open.setter();
            Callback::from(move |_: MouseEvent| open.set((!is_open).then_some(nth)))
        };
        let n = ("n", (nth + 1).to_string());
        let title = match card {
            Dealt::Computed(card) => shop
                .say_with("sets.preview.card", &[n, ("title", shop.family_title(&card.family).to_string())]),
            Dealt::Own(card) => shop.say_with("sets.preview.own", &[n, ("question", card.question.clone())]),
        };
        let stage = match card {
            Dealt::Computed(card) => {
                shop.content().family(&card.family).map(|family| shop.stage(family.stage))
            }
            Dealt::Own(_) => Some(shop.say("sets.take.own")),
        };
        let body = is_open.then(|| match card {
            Dealt::Computed(card) => computed(&shop, set, card),
            Dealt::Own(card) => own_preview(&shop, card),
        });
        html! {
            <li key={format!("{nth}-{}", card.named().0)}>
                <button type="button" class="preview-row" aria-expanded={is_open.to_string()} {onclick}><b>{ title }</b><span class="note">{ stage.unwrap_or_default() }</span></button>
                <div class="preview-card" hidden={!is_open}>{ for body }</div>
            </li>
        }
    };
    let deal_others = {
        let (other, open) = (other.clone(), open.setter());
        Callback::from(move |_: MouseEvent| {
            open.set(None);
            other.set(*other + 1);
        })
    };
    let same = set.task.same_seed.is_some();
    let figures =
        shown.map(|shown| [("n", shown.cards.len().to_string()), ("minutes", shown.minutes.to_string())]);
    let length = figures.map(|figures| shop.say_with("sets.preview.length", &figures)).unwrap_or_default();
    let nothing = !counts_not(set, shop.content()).is_empty();
    html! {
        <section class="preview">
            <h2>{ shop.say("sets.preview.head") }</h2>
            <p key="empty" class="kraft" hidden={!none}>{ shop.say("sets.preview.empty") }</p>
            <div key="full" class="preview-full" hidden={none}>
                <p class="figure-line" role="status">{ length }</p>
                { warned(&shop, shown.map(|shown| shown.warned.as_slice()).unwrap_or_default()) }
                <div class="preview-counts"><p>{ counts_told(&shop, set) }</p>
                    <p class="note" hidden={!nothing}>{ shop.say_with("sets.counts-how", &[("most", COMPETENCIES_MOST.to_string())]) }</p></div>
                <p class="note">{ shop.say(if same { "sets.preview.lead-same" } else { "sets.preview.lead" }) }</p>
                <ol class="preview-rows">{ for shown.iter().flat_map(|shown| shown.cards.iter().enumerate()).map(row) }</ol>
                <button type="button" class="control" hidden={same} onclick={deal_others}>{ shop.say("sets.preview.others") }</button>
            </div>
        </section>
    }
}

/// A card as it is asked, with the computed answer, the rules and the working.
fn computed(shop: &Shop, set: &Set, card: &Rc<Card>) -> Html {
    let Ok(sheet) = set.sheet_of(shop.content()) else { return Html::default() };
    let world = World { content: shop.content(), sheet: &sheet };
    let Some(solution) = solve(card, &world) else { return Html::default() };
    let face = sprayed::setup(card, &world).map(Rc::new);
    let options: Vec<String> =
        card.options.iter().map(|option| shop.voice().answer(&card.family, option)).collect();
    let item = |option: &String| html! { <li key={option.clone()}>{ option }</li> };
    let listed = matches!(card.kind, Kind::ChooseOne | Kind::ChooseAll | Kind::Order);
    html! {
        <>
            { card_ticket(shop, card) }
            <p key="ask" class="asked-small">{ shop.voice().ask(card) }</p>
            { asked(shop, face.as_ref()) }
            <div key="panels">{ answered_panels(shop, card, None, &Callback::from(|_| ())) }</div>
            <ul key="options" class="told" hidden={!listed}>{ for options.iter().map(item) }</ul>
            <dl key="right" class="said"><div><dt>{ shop.say("sets.preview.right") }</dt><dd>{ told(shop, card, &solution.right) }</dd></div></dl>
            { rules(shop, &solution.rules) }
            { working(shop, &solution.working) }
        </>
    }
}
