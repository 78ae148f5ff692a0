//! What bars signing, each with what is to be done about it.

use crate::app::parts::refusal;
use crate::app::state::Shop;
use crate::people::{Ready, Signing, Source};
use crate::rules::term::Term;
use crate::signoff::{Barred, NotSigned};
use std::collections::BTreeSet;
use yew::prelude::*;

pub(super) fn barred(shop: &Shop, signing: &Signing<'_>, source: &Source<'_>, not: &NotSigned) -> Html {
    // A missing reason alone is asked for below and bars nothing for good.
    let only_reason = not.barred == [Barred::ReasonMissing];
    let row = |one: &Barred| {
        let unfit = not.refusal.as_ref().filter(|_| *one == Barred::Unfit);
        html! {
            <li key={one.slug()}>
                <div class="words">
                    <b>{ shop.text(&format!("sign.{}", one.slug())) }</b>
                    <span>{ more(shop, signing, source, *one) }</span>
                    <span>{ unfit.map(|unfit| refusal(shop, unfit)).unwrap_or_default() }</span>
                </div>
            </li>
        }
    };
    let to = format!("#/assess/{}/{}", signing.member.number, signing.ready.competency.slug);
    html! {
        <section key="barred" class="paper" hidden={only_reason}>
            <h2>{ shop.say("sign-off.barred") }</h2>
            <p>{ shop.say("sign-off.barred-why") }</p>
            <ul class="rows">{ for not.barred.iter().map(row) }</ul>
            <a href={to} class="text-link">{ shop.say("sign-off.to-watch") }</a>
        </section>
    }
}

/// The knowledge evidence as it would stand on the sign-off.
pub(super) fn cards(shop: &Shop, signing: &Signing<'_>) -> String {
    signing.knowledge(shop.texts()).narrative
}

/// What is missing of it by name or number, and what to do; nothing where the reason itself says it.
fn more(shop: &Shop, signing: &Signing<'_>, source: &Source<'_>, barred: Barred) -> AttrValue {
    let Ready { competency, evidence, shown, needs, needs_knowledge, .. } = &signing.ready;
    let names = |prefix: &str, slugs: &mut dyn Iterator<Item = &str>| {
        slugs.map(|slug| shop.text(&format!("{prefix}.{slug}")).to_string()).collect::<Vec<_>>().join("; ")
    };
    let list = |text: String| vec![("list", text)];
    let days: BTreeSet<_> = shown.counting().map(|one| one.on).collect();
    let counts = || {
        vec![
            ("n", shown.count.to_string()),
            ("of", competency.demonstrations.to_string()),
            ("on", days.len().to_string()),
            ("days", competency.days.to_string()),
        ]
    };
    let on_file = |what: &&crate::content::OnFile| {
        !shown
            .papers
            .iter()
            .any(|paper| paper.filing.filed.what == **what && paper.filing.filed.in_force(source.today))
    };
    let named = match barred {
        Barred::NeedsMissing => list(names("competency", &mut needs.iter().copied())),
        Barred::NeedsKnowledge => list(names("competency", &mut needs_knowledge.iter().copied())),
        Barred::CriticalOpen => {
            let titles = evidence.hazards.iter().map(|one| shop.family_title(&one.family).to_string());
            list(titles.collect::<Vec<_>>().join("; "))
        }
        Barred::SafetyNotShown | Barred::ReasonMissing => vec![("told", cards(shop, signing))],
        Barred::CriterionNotMet => {
            list(names("criterion", &mut shown.to_see.iter().map(|one| one.id.as_str())))
        }
        Barred::NothingObserved | Barred::TooFewShown => counts(),
        Barred::Unsettled => Vec::new(),
        Barred::NotOnFile => {
            list(names("on-file", &mut competency.on_file.iter().filter(on_file).map(|one| one.slug())))
        }
        Barred::NotTrusted | Barred::OwnWork | Barred::ValidTooLong | Barred::Unfit | Barred::OtherKey => {
            return AttrValue::default();
        }
    };
    shop.say_with(&format!("sign-off.more.{}", barred.slug()), &named)
}
