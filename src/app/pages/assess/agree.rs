//! How far two assessors who watched the same work agree, at this competency and at all of them.

use crate::app::state::Shop;
use crate::content::Competency;
use crate::learn::agreement::Agreement;
use crate::learn::observation::agreement;
use crate::quantity::PERCENT_A_WHOLE;
use crate::record::Journal;
use yew::prelude::*;

pub(super) fn agreement_tables(shop: &Shop, journal: &Journal, competency: &Competency) -> Html {
    let here = agreement(journal.events(), Some(&competency.slug));
    let all = agreement(journal.events(), None);
    let none = all.is_none();
    let tables = [("here", here), ("all", all)];
    let table = |(key, found): &(&'static str, Option<Agreement>)| Some(one(shop, key, found.as_ref()?));
    html! {
        <section class="agreement">
            <h2>{ shop.say("assess.agree") }</h2>
            <p class="note">{ shop.say(if none { "assess.agree-none" } else { "assess.agree-why" }) }</p>
            <div class="pair">{ for tables.iter().filter_map(table) }</div>
        </section>
    }
}

/// One table with what is reckoned from it.
fn one(shop: &Shop, key: &'static str, found: &Agreement) -> Html {
    let percent = |share: f64| format!("{:.0}", share * PERCENT_A_WHOLE);
    let told = [("n", found.table.total().to_string()), ("percent", percent(found.observed))];
    let kappa = found.kappa.map_or_else(
        || shop.say("assess.agree-no-kappa"),
        |kappa| {
            let figure = |value: f64| shop.figure(value, 2);
            let told = [
                ("kappa", figure(kappa.value)),
                ("low", figure(kappa.low)),
                ("high", figure(kappa.high)),
                ("largest", figure(kappa.largest)),
            ];
            shop.say_with("assess.agree-kappa", &told)
        },
    );
    let judged = ["met", "not-yet"].map(|slug| shop.say(&format!("assess.judged.{slug}")));
    let row = |(name, counts): (&AttrValue, &Vec<u32>)| {
        html! {
            <tr key={name.to_string()}><th scope="row">{ name }</th>{ for counts.iter().enumerate().map(|(nth, count)| html! { <td key={nth}>{ *count }</td> }) }</tr>
        }
    };
    html! {
        <div key={key} class="paper">
            <h3>{ shop.say(&format!("assess.agree-{key}")) }</h3>
            <p>{ shop.say_with("assess.agree-share", &told) }</p>
            <table>
                <caption>{ shop.say("assess.agree-table") }</caption>
                <thead><tr><td></td>{ for judged.iter().map(|name| html! { <th key={name.to_string()} scope="col">{ name }</th> }) }</tr></thead>
                <tbody>{ for judged.iter().zip(found.table.rows()).map(row) }</tbody>
            </table>
            <p class="note">{ kappa }</p>
        </div>
    }
}
