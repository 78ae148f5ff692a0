//! How well a person judges themselves: certainty beside what came out. It decides nothing.

use crate::app::state::Shop;
use crate::learn::calibration::{Calibration, Level, OVERCONFIDENT_LEAST, firsts, stands_for};
use crate::quantity::PERCENT_A_WHOLE;
use crate::record::{Certainty, Entry};
use crate::rules::term::Term;
use yew::prelude::*;

/// To whom it is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app::pages) enum Whose {
    /// To whom it is about.
    Own,
    /// To an instructor.
    Theirs,
}

/// Where in a hundred a share lies.
fn hundredths(share: f64) -> String {
    (share * PERCENT_A_WHOLE).round().to_string()
}

/// Of answers, oldest first; nothing where there are none.
pub(in crate::app::pages) fn judging<'a>(
    shop: &Shop,
    whose: Whose,
    answers: impl Iterator<Item = &'a Entry>,
) -> Html {
    let told = |key: &str| match whose {
        Whose::Own => format!("judging.{key}"),
        Whose::Theirs => format!("crew.judging.{key}"),
    };
    let Some(found) = Calibration::of(&firsts(answers)) else {
        return html! { <section key="judging" hidden=true></section> };
    };
    let sure = found.levels.iter().find(|level| level.certainty == Certainty::OnTheJob);
    let few = sure.is_none_or(|level| level.answers < OVERCONFIDENT_LEAST);
    let verdict = match (few, found.too_sure()) {
        (true, _) => shop.say_with(&told("few"), &[("n", OVERCONFIDENT_LEAST.to_string())]),
        (false, true) => shop.say(&told("too-sure")),
        (false, false) => shop.say(&told("not-too-sure")),
    };
    let head = |key: &str| html! { <th key={key.to_owned()} scope="col">{ shop.say(&format!("judging.{key}")) }</th> };
    let part = |key: &'static str, value: f64| {
        html! {
            <tr {key}><th scope="row">{ shop.say(&format!("judging.{key}")) }<small>{ shop.say(&format!("judging.{key}.why")) }</small></th>
                <td>{ shop.figure(value, 2) }</td></tr>
        }
    };
    html! {
        <section key="judging" class="judging">
            <h2>{ shop.say(&told("head")) }</h2>
            <p key="lead" class="note">{ shop.say(&told("lead")) }</p>
            <div key="levels" class="paper"><table class="working levels">
                <thead><tr><th key="level" scope="col">{ shop.say(&told("level")) }</th>{ head("claims") }{ head("right") }{ head("range") }</tr></thead>
                <tbody>{ for found.levels.iter().map(|level| row(shop, *level)) }</tbody>
            </table>
            <p key="legend" class="note">{ shop.say("judging.legend") }</p></div>
            <p key="verdict"><strong>{ verdict }</strong></p>
            <details key="parts" class="seen">
                <summary>{ shop.say("judging.parts") }</summary>
                <div class="paper"><table class="working parts"><tbody>
                    { part("brier", found.brier) }
                    { part("reliability", found.reliability) }
                    { part("resolution", found.resolution) }
                    { part("uncertainty", found.uncertainty) }
                </tbody></table></div>
            </details>
        </section>
    }
}

/// One certainty: what it claims, what came out, and where so few answers could put it.
fn row(shop: &Shop, level: Level) -> Html {
    let slug = level.certainty.slug();
    let claims = hundredths(stands_for(level.certainty).get());
    let right = match level.share() {
        Some(share) => shop.say_with(
            "judging.of",
            &[
                ("right", level.right.to_string()),
                ("of", level.answers.to_string()),
                ("share", hundredths(share)),
            ],
        ),
        None => shop.say("judging.never"),
    };
    let range = level.range();
    let words = range.map_or_else(AttrValue::default, |(low, high)| {
        shop.say_with("judging.from-to", &[("low", hundredths(low)), ("high", hundredths(high))])
    });
    let drawn = range.zip(level.share()).map(|((low, high), share)| {
        let wide = (high - low) * PERCENT_A_WHOLE;
        html! {
            <svg class="range" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" focusable="false">
                <path class="line" d="M0 5H100" />
                <rect class="span" x={hundredths(low)} y="2" width={wide.to_string()} height="6" />
                <path class="claim" d={format!("M{claims} 0V10")} />
                <path class="share" d={format!("M{} 0V10", hundredths(share))} />
            </svg>
        }
    });
    html! {
        <tr key={slug}>
            <th scope="row">{ shop.say(&format!("card.certainty.{slug}")) }</th>
            <td>{ shop.say_with("judging.percent", &[("share", claims.clone())]) }</td>
            <td>{ right }</td>
            <td>{ words }{ for drawn }</td>
        </tr>
    }
}
