//! A worksheet: the cards of a set with room to answer them, and the cautions.

use super::answer_box::{answer_box, certainty_boxes, how, how_own, own_box};
use super::head::{Sort, end, line, paged};
use super::values::values;
use super::whom::name_and_number;
use super::{OnPaper, Worksheet};
use crate::app::parts::{Still, card_ticket};
use crate::app::state::Shop;
use crate::card::{Card, Kind, scene};
use crate::content::FamilyInfo;
use crate::exchange::set::SetCard;
use yew::prelude::*;

pub(super) fn worksheet(shop: &Shop, on: &OnPaper, sheet: &Worksheet, on_drawn: &Callback<()>) -> Html {
    let cards = on.cards(shop, &sheet.code);
    let total = cards.len();
    let one = |(nth, card): (usize, &SetCard<'_>)| {
        let place =
            shop.say_with("worksheet.nth", &[("n", (nth + 1).to_string()), ("of", total.to_string())]);
        // Tests with three lists take the whole width.
        let wide = matches!(card, SetCard::Computed(card) if card.kind == Kind::Diagnose);
        let (asked, answers) = match card {
            SetCard::Computed(card) => (asked(shop, card, on_drawn), answer_box(shop, card)),
            SetCard::Own(_, own) => (ask(shop, &own.question, how_own(own)), own_box(own)),
        };
        html! {
            <section key={nth} class={classes!("one-card", "together", wide.then_some("wide"))}>
                <h3>{ place }</h3>
                { asked }
                { answers }
                { certainty_boxes(shop) }
            </section>
        }
    };
    let (name, number) = name_and_number(&sheet.whom);
    let inside = html! {
        <>
            <header key="head" class="sheet-head">
                <h2>{ shop.set_title(&on.id, &on.set.title) }</h2>
                <p hidden={on.set.note.is_empty()}>{ &on.set.note }</p>
                <div class="lines-to-fill">
                    { line("wide", shop.say("worksheet.name"), name) }
                    { line("", shop.say("worksheet.number"), number) }
                    { line("", shop.say("worksheet.date"), "") }
                </div>
                <p class="small">{ shop.say("worksheet.how") }</p>
            </header>
            <div key="cards" class="cards-on-paper">{ for cards.iter().enumerate().map(one) }</div>
            { closing(shop, on, &cards) }
        </>
    };
    paged(shop, on, sheet, Sort::Worksheet, inside)
}

/// The situation, its pictures and the question.
fn asked(shop: &Shop, card: &Card, on_drawn: &Callback<()>) -> Html {
    let recipes = scene::panels(card, shop.content());
    let (several, ruled) = (recipes.len() > 1, card.kind == Kind::Point);
    let still = |(nth, recipe)| {
        let name = if nth == 0 { "panel.first" } else { "panel.second" };
        html! {
            <figure key={nth}>
                <figcaption hidden={!several}>{ shop.say(name) }</figcaption>
                <Still {recipe} alt={shop.voice().panel_words(card, nth)} {ruled} on_drawn={on_drawn.clone()} />
            </figure>
        }
    };
    html! {
        <>
            { card_ticket(shop, card) }
            <div key="pictures" class={classes!("stills", several.then_some("two"))} hidden={recipes.is_empty()}>
                { for recipes.into_iter().enumerate().map(still) }
            </div>
            { ask(shop, &shop.voice().ask(card), how(card)) }
        </>
    }
}

/// The question, and behind it what is done on the paper.
fn ask(shop: &Shop, question: &str, how: &str) -> Html {
    html! { <p key="ask" class="ask">{ question.to_owned() }{ " " }<span class="how-to">{ shop.say(how) }</span></p> }
}

/// Behind the cards: cautions and values, each on one page, and the last line on the page of what is last.
fn closing(shop: &Shop, on: &OnPaper, cards: &[SetCard<'_>]) -> Html {
    let (cautions, end) = (cautions(shop, cards), end(shop, Sort::Worksheet));
    match values(shop, on, cards) {
        Some(values) => html! {
            <>
                <div key="cautions" class="together">{ cautions }</div>
                <div key="values" class="together">{ values }{ end }</div>
            </>
        },
        None => html! { <div key="cautions" class="together">{ cautions }{ end }</div> },
    }
}

/// The cautions of everything that is asked about, as far as they do not answer it.
fn cautions(shop: &Shop, cards: &[SetCard<'_>]) -> Html {
    let asked: Vec<&FamilyInfo> =
        cards.iter().filter_map(|card| shop.content().family(&card.family())).collect();
    let caution = |text: AttrValue| html! { <li key={text.to_string()}>{ text.clone() }</li> };
    html! {
        <section class="cautions-on-paper">
            <h3>{ shop.say("cautions") }</h3>
            <ul class="told">{ for shop.printed_cautions(&asked).into_iter().map(caution) }</ul>
            <p><b>{ shop.say("training") }{ " " }{ shop.say("closing") }</b>{ " " }{ shop.say("overruled") }</p>
        </section>
    }
}
