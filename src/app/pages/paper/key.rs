//! The marked key of a worksheet: to each card the computed answer, its working, the rule and its source.

use super::head::{Sort, end, paged};
use super::{OnPaper, Worksheet};
use crate::app::parts::{LETTERS, column_letter, rules, working};
use crate::app::state::Shop;
use crate::card::{self, Answer, Card, Kind, cell};
use crate::exchange::set::{OwnCard, SetCard};
use yew::prelude::*;

pub(super) fn key(shop: &Shop, on: &OnPaper, sheet: &Worksheet) -> Html {
    let cards = on.cards(shop, &sheet.code);
    let total = cards.len();
    let one = |(nth, card): (usize, &SetCard<'_>)| {
        let place =
            shop.say_with("worksheet.nth", &[("n", (nth + 1).to_string()), ("of", total.to_string())]);
        let told = match card {
            SetCard::Computed(card) => computed(shop, on, card),
            SetCard::Own(_, own) => fixed(shop, own),
        };
        let end = (nth + 1 == total).then(|| end(shop, Sort::Key));
        html! { <section key={nth} class="one-card together"><h3>{ place }</h3>{ told }{ for end }</section> }
    };
    let whom = [("whom", sheet.whom.clone())];
    let inside = html! {
        <>
            <header key="head" class="sheet-head">
                <h2>{ shop.say_with("worksheet.key", &[("title", shop.set_title(&on.id, &on.set.title).to_string())]) }</h2>
                <p hidden={sheet.whom.is_empty()}>{ shop.say_with("worksheet.key-of", &whom) }</p>
                <p class="small">{ shop.say("worksheet.key-why") }</p>
            </header>
            <div key="cards" class="cards-on-paper">{ for cards.iter().enumerate().map(one) }</div>
        </>
    };
    paged(shop, on, sheet, Sort::Key, inside)
}

fn computed(shop: &Shop, on: &OnPaper, card: &Card) -> Html {
    let Some(solution) = card::solve(card, &on.world(shop)) else { return Html::default() };
    let missing: Vec<&str> = solution.missing.iter().map(|key| shop.voice().fact_name(key)).collect();
    let several = matches!(solution.right, Answer::Order(_));
    html! {
        <>
            <p key="ask" class="ask">{ shop.voice().ask(card) }</p>
            <p key="right" class="right-answer">
                <span hidden={!several}>{ shop.say("worksheet.for-one") }{ " " }</span>
                <b>{ in_words(shop, card, &solution.right) }</b>
            </p>
            <p key="missing" hidden={missing.is_empty()}>{ shop.say_with("verdict.missing", &[("facts", missing.join(", "))]) }</p>
            { working(shop, &solution.working) }
            { rules(shop, &solution.rules) }
        </>
    }
}

/// An answer as it stands on the paper: letters before the words that they stand for.
fn in_words(shop: &Shop, card: &Card, right: &Answer) -> String {
    let lettered = |answer: &Answer| {
        let place = card.options.iter().position(|option| option.agrees(answer));
        let words = shop.voice().answer(&card.family, answer);
        match place.and_then(|place| LETTERS.get(place)) {
            Some(letter) => format!("{letter} {words}"),
            None => words,
        }
    };
    let each = |slugs: &[String], between: &str| {
        slugs.iter().map(|slug| lettered(&Answer::Term(slug.clone()))).collect::<Vec<_>>().join(between)
    };
    match right {
        Answer::Terms(slugs) => each(slugs, "; "),
        Answer::Order(slugs) => each(slugs, " → "),
        Answer::OnTheFault if card.kind == Kind::Point => {
            let cells = cell::cells_on_fault(card, shop.content());
            let cells: Vec<String> = cells
                .into_iter()
                .map(|(column, row)| format!("{}{}", column_letter(column), row + 1))
                .collect();
            shop.say_with("worksheet.cells", &[("cells", cells.join(" "))]).to_string()
        }
        other => lettered(other),
    }
}

fn fixed(shop: &Shop, own: &OwnCard) -> Html {
    let right = own.right.iter().filter_map(|place| {
        let place = usize::try_from(place.checked_sub(1)?).ok()?;
        Some(format!("{} {}", LETTERS.get(place)?, own.options.get(place)?))
    });
    html! {
        <>
            <p key="ask" class="ask">{ &own.question }</p>
            <p key="right" class="right-answer"><b>{ right.collect::<Vec<_>>().join("; ") }</b></p>
            <p key="why">{ &own.why }</p>
            <p key="tag" class="small">{ shop.say("worksheet.not-computed") }</p>
        </>
    }
}
