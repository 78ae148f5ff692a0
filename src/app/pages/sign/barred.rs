//! What bars signing, each with what is to be done about it.

use crate::app::parts::refusal;
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::people::{Ready, Signing, Source};
use crate::rules::term::Term;
use crate::signoff::{Barred, NotSigned};
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
                    { more(shop, signing, source, *one) }
                    <span>{ unfit.map(|unfit| refusal(shop, unfit)).unwrap_or_default() }</span>
                </div>
            </li>
        }
    };
    let (number, slug) = (signing.member.number.to_string(), signing.ready.competency.slug.clone());
    let to = Route::Observe { number, slug }.address();
    html! {
        <section key="barred" class="paper" hidden={only_reason}>
            <h2>{ shop.say("sign-off.barred") }</h2>
            <p>{ shop.say("sign-off.barred-why") }</p>
            <ul class="rows">{ for not.barred.iter().map(row) }</ul>
            <a href={to} class="text-link">{ shop.say("sign-off.to-watch") }</a>
        </section>
    }
}

/// What is missing of it by name or number, and what to do; nothing where the reason itself says it.
fn more(shop: &Shop, signing: &Signing<'_>, source: &Source<'_>, barred: Barred) -> Html {
    let Ready { competency, evidence, shown, needs, needs_knowledge, .. } = &signing.ready;
    let text = |prefix: &str, slug: &str| shop.text(&format!("{prefix}.{slug}"));
    let listed: Vec<AttrValue> = match barred {
        Barred::NeedsMissing => needs.iter().map(|slug| text("competency", slug)).collect(),
        Barred::NeedsKnowledge => needs_knowledge.iter().map(|slug| text("competency", slug)).collect(),
        Barred::CriticalOpen => evidence.hazards.iter().map(|one| shop.family_title(&one.family)).collect(),
        Barred::CriterionNotMet => shown.to_see.iter().map(|one| text("criterion", &one.id)).collect(),
        Barred::NotOnFile => {
            let filed = |what| {
                shown
                    .papers
                    .iter()
                    .any(|paper| paper.filing.filed.what == what && paper.filing.filed.in_force(source.today))
            };
            let missing = competency.on_file.iter().filter(|what| !filed(**what));
            missing.map(|what| text("on-file", what.slug())).collect()
        }
        Barred::SafetyNotShown
        | Barred::ReasonMissing
        | Barred::NothingObserved
        | Barred::TooFewShown
        | Barred::Unsettled => Vec::new(),
        Barred::NotTrusted | Barred::OwnWork | Barred::ValidTooLong | Barred::Unfit | Barred::OtherKey => {
            return Html::default();
        }
    };
    let named = [
        ("told", signing.knowledge(shop.texts()).narrative),
        ("n", shown.count.to_string()),
        ("of", competency.demonstrations.to_string()),
        ("on", shown.days.to_string()),
        ("days", competency.days.to_string()),
    ];
    html! {
        <>
            <span>{ shop.say_with(&format!("sign-off.more.{}", barred.slug()), &named) }</span>
            <ul class="told" hidden={listed.is_empty()}>{ for listed.iter().map(|one| html! { <li key={one.to_string()}>{ one }</li> }) }</ul>
        </>
    }
}
