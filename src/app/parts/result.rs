//! What a calculation gives, in the order that it says it gives it.

use super::{rules, working};
use crate::app::state::Shop;
use crate::bench::{Calculation, Gives, Needs, Outcome, Row};
use crate::content::Args;
use crate::quantity::{Dimension, Measure, PERCENT_A_WHOLE, Unit};
use crate::rules::verdict::Ruling;
use yew::prelude::*;

/// Numbers between 0 and 1 that a person reads as a percentage.
const SHARES: [&str; 3] = ["probability", "chance", "fit"];

/// The result, its working and its rules. `untold` are facts that may yet be told: where one is named, a tap tells
/// `on_asked`.
pub(in crate::app) fn result(
    shop: &Shop,
    calculation: &Calculation,
    ruling: &Ruling<Outcome>,
    untold: &[&Needs<'_>],
    on_asked: &Callback<String>,
) -> Html {
    let outcome = &ruling.answer;
    let ask = |slug: &str| {
        let slug = untold.iter().find(|need| need.key == slug)?.key.to_owned();
        let onclick = on_asked.reform(move |_: MouseEvent| slug.clone());
        Some(html! { <button type="button" class="plain ask" {onclick}>{ shop.say("bench.tell") }</button> })
    };
    let given = calculation.gives.iter().filter_map(|gives| match gives {
        Gives::Number { key, .. } => {
            let number = outcome.numbers.get(key)?;
            Some(fact(shop, key, "fact", html! { number_of(shop, key, *number) }))
        }
        Gives::Term { key, .. } => {
            let slug = outcome.terms.get(key)?;
            let told = shop.voice().term("", slug);
            Some(fact(shop, key, "fact", html! { <>{ told }{ for ask(slug) }</> }))
        }
        Gives::List { key } => {
            let slugs = outcome.lists.get(key).filter(|slugs| !slugs.is_empty())?;
            let names: Vec<String> = slugs.iter().map(|slug| shop.voice().term("", slug)).collect();
            Some(fact(shop, key, "fact wide", html! { names.join(", ") }))
        }
        Gives::Words { key } => {
            let (_, message) = outcome.words.iter().find(|(one, _)| one == key)?;
            Some(fact(shop, key, "fact wide words", html! { shop.voice().texts.get(message).to_owned() }))
        }
        Gives::Rows { key, .. } => {
            let (_, lines) = outcome.rows.iter().find(|(one, lines)| one == key && !lines.is_empty())?;
            Some(fact(shop, key, "fact wide words", rows(shop, lines)))
        }
    });
    html! {
        <>
            <section key="result" class="paper result">
                <h2>{ shop.say("bench.result") }</h2>
                <dl class="facts">{ for given }</dl>
            </section>
            { working(shop, &ruling.working) }
            { rules(shop, &ruling.rules) }
        </>
    }
}

fn fact(shop: &Shop, key: &str, class: &'static str, value: Html) -> Html {
    html! { <div key={key.to_owned()} {class}><dt>{ shop.text(&format!("gives.{key}")) }</dt><dd>{ value }</dd></div> }
}

/// The first rows that count for something: those after them add little. Rows of one word each make one line.
fn rows(shop: &Shop, rows: &[Row]) -> Html {
    const SHOWN: usize = 5;
    /// A share below this reads as 0 %.
    const NOTHING: f64 = 0.005;
    if rows.iter().all(|row| row.numbers.is_empty() && row.terms.len() == 1) {
        let words = rows.iter().flat_map(|row| &row.terms).map(|(_, slug)| shop.voice().term("", slug));
        return html! { words.collect::<Vec<_>>().join(", ") };
    }
    let counts =
        |row: &&Row| row.numbers.iter().all(|(key, number)| !SHARES.contains(key) || number.value >= NOTHING);
    let row = |row: &Row| {
        let terms = row.terms.iter().map(|(_, slug)| shop.voice().term("", slug));
        let numbers = row.numbers.iter().map(|(key, number)| said(shop, key, number_of(shop, key, *number)));
        html! { <li>{ terms.chain(numbers).collect::<Vec<_>>().join(" · ") }</li> }
    };
    html! { <ol>{ for rows.iter().filter(counts).take(SHOWN).map(row) }</ol> }
}

/// A number of a row in words where it needs them to be understood.
fn said(shop: &Shop, key: &str, number: String) -> String {
    let words = format!("row.{key}");
    match shop.voice().texts.find(&words) {
        Some(_) => shop.voice().texts.fill(&words, &Args::from([("number".to_owned(), number)])),
        None => number,
    }
}

/// A number as a shop reads it, in one piece with its unit.
fn number_of(shop: &Shop, key: &str, measure: Measure) -> String {
    let shown = if SHARES.contains(&key) {
        Measure::new(measure.value * PERCENT_A_WHOLE, Unit::Percent, 0)
    } else {
        readable(measure)
    };
    shop.voice().measure(shown).replace(' ', "\u{a0}")
}

/// A temperature to one decimal, since no thermometer of a shop reads finer.
fn readable(measure: Measure) -> Measure {
    match measure.unit.dimension() {
        Dimension::Temperature | Dimension::TemperatureGap => {
            Measure { decimals: measure.decimals.min(1), ..measure }
        }
        _ => measure,
    }
}
