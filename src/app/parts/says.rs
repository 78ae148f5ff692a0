//! Exactly what a sign-off says, as it stands in the file: words of its assessor, shown as text and nothing else.

use crate::app::state::Shop;
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{Code, Credential, Evidence, Hash, Knowledge, When, grouped};
use yew::prelude::*;

pub(in crate::app) fn says(shop: &Shop, one: &Credential, hash: Hash) -> Html {
    let Credential { achievement, assessor, .. } = one;
    let safety = shop.say(&format!("says.profile.{}", achievement.profile.slug()));
    let number = |number: &str| shop.say_with("says.number", &[("number", number.to_owned())]);
    html! {
        <section key="says" class="paper says">
            <p class="note">{ shop.say("says.file") }</p>
            <h2>{ &achievement.name }</h2>
            <p>{ &achievement.description }</p>
            <dl class="lines">
                { line(shop, "who", html! { number(one.subject.text()) }) }
                { line(shop, "from", moment(&one.from)) }
                { line(shop, "until", moment(&one.until)) }
                { line(shop, "profile", html! { safety }) }
                { line(shop, "reached", html! { &achievement.criteria }) }
                { line(shop, "criteria", list(&one.criteria)) }
                { line(shop, "knowledge", html! { shop.say(&format!("says.knowledge.{}", knowledge_slug(one.knowledge))) }) }
                { for one.evidence.iter().enumerate().map(|(nth, one)| evidence(shop, nth, one)) }
                { line(shop, "assessor", html! { <>{ &assessor.name }{ ", " }{ number(assessor.number.text()) }</> }) }
                { line(shop, "shop", html! { &one.shop }) }
                { line(shop, "key", html! { <span class="digits">{ grouped(&assessor.key.fingerprint()) }</span> }) }
                { line(shop, "wording", html! { <>{ &achievement.slug }{ ", " }{ &achievement.version }</> }) }
                { line(shop, "code", html! { <span class="digits code">{ Code::new(one, hash).to_string() }</span> }) }
                { line(shop, "hash", html! { <span class="digits">{ grouped(&hash.to_string()) }</span> }) }
            </dl>
        </section>
    }
}

fn line(shop: &Shop, key: &'static str, told: Html) -> Html {
    html! { <div key={key}><dt>{ shop.say(&format!("says.{key}")) }</dt><dd>{ told }</dd></div> }
}

/// As the file has it, and as this device reads it.
fn moment(at: &When) -> Html {
    html! { <>{ clock::local(at.text()) }<small>{ " " }{ at.text() }</small></> }
}

fn list(all: &[String]) -> Html {
    let line = |(nth, one): (usize, &String)| html! { <li key={nth}>{ one }</li> };
    html! { <ol class="told">{ for all.iter().enumerate().map(line) }</ol> }
}

fn evidence(shop: &Shop, nth: usize, one: &Evidence) -> Html {
    html! {
        <div key={format!("evidence-{nth}")}>
            <dt>{ genre(shop, one) }</dt>
            <dd><b>{ &one.name }</b><br />{ &one.narrative }</dd>
        </div>
    }
}

/// What kind of evidence it is.
pub(super) fn genre(shop: &Shop, one: &Evidence) -> AttrValue {
    use crate::signoff::Genre;
    shop.say(match one.genre {
        Genre::Knowledge => "says.genre.knowledge",
        Genre::Reason => "says.genre.reason",
        Genre::Observation => "says.genre.observation",
    })
}

const fn knowledge_slug(knowledge: Knowledge) -> &'static str {
    match knowledge {
        Knowledge::Sufficient => "sufficient",
        Knowledge::Insufficient => "insufficient",
    }
}
