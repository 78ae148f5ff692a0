//! What changes with a sheet before it is saved: the card families that answer differently, by stage, each with a card.

use super::edit::none;
use super::save::Save;
use super::turned::{Found, use_turned};
use crate::app::hooks::use_sheets;
use crate::app::parts::{Column, Frame, differ_table};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::card::{Answer, Change, Example};
use crate::content::FamilyInfo;
use crate::exchange::SheetDraft;
use crate::quantity::{Measure, Unit};
use crate::rules::term::{Stage, Term};
use crate::spraying::{Passes, Run};
use std::rc::Rc;
use yew::prelude::*;

/// What changes with the sheet that is edited; where a value is not allowed or none differs, the values are gone to.
#[component]
pub(in crate::app) fn SheetChanges() -> Html {
    let shop = use_shop();
    let draft = use_sheets().draft;
    let content = shop.content();
    let fits = |draft: &SheetDraft| draft.barred(content).is_empty() && !draft.changed(content).is_empty();
    let shown = draft.as_deref().is_none_or(fits);
    use_effect_with(shown, |shown| {
        if !shown {
            Route::SheetEdit.go_instead();
        }
    });
    match draft {
        Some(draft) if shown => html! { <Preview key="preview" {draft} /> },
        Some(_) => Html::default(),
        None => none(&shop),
    }
}

#[derive(Properties, PartialEq)]
struct PreviewProps {
    draft: Rc<SheetDraft>,
}

#[component]
fn Preview(props: &PreviewProps) -> Html {
    let shop = use_shop();
    let (draft, content) = (&props.draft, shop.content());
    let (before, after) = (draft.from_sheet(content).cloned(), draft.sheet(content).ok());
    let found = use_turned(before.clone(), after.clone());
    let name = before.as_ref().map(|sheet| shop.sheet_name(&sheet.slug)).unwrap_or_default();
    let values = before.as_ref().zip(after.as_ref()).map(|(before, after)| {
        let one = Column { name: name.clone(), sheet: before };
        differ_table(&shop, &one, &Column { name: shop.say("own.edited"), sheet: after })
    });
    html! {
        <Frame class="sheet own-sheets" title={shop.say("own.what-changes")} back={Some(Route::SheetEdit)} cautions={shop.cautions_for(&[])}>
            <section key="values" class="paper"><h2>{ shop.say("own.changed-values") }</h2>{ for values }</section>
            <section key="cards">
                <h2>{ shop.say("own.cards") }</h2>
                <p class="lead" role="status">{ summary(&shop, &found) }</p>
                <progress class="own-progress" max={content.families.len().to_string()} value={found.changes.len().to_string()} hidden={found.done} aria-label={shop.say("own.looking")}></progress>
                { for Stage::ALL.iter().map(|stage| of_stage(&shop, &found, *stage)) }
                { others(&shop, &found) }
                <p class="note">{ shop.say("own.sampled") }</p>
            </section>
            <Save key="save" draft={Rc::clone(draft)} />
        </Frame>
    }
}

/// The families that were looked at, each with what changes of it.
fn changes<'a>(shop: &'a Shop, found: &'a Found) -> impl Iterator<Item = (&'a FamilyInfo, &'a Change)> {
    let family = |(place, change): &'a (usize, Change)| Some((shop.content().families.get(*place)?, change));
    found.changes.iter().filter_map(family)
}

fn summary(shop: &Shop, found: &Found) -> AttrValue {
    if !found.done {
        return shop.say("own.looking");
    }
    let turned = changes(shop, found).filter(|(_, change)| matches!(change, Change::Turned { .. })).count();
    shop.say_with("own.turned", &[("n", turned.to_string()), ("all", found.changes.len().to_string())])
}

/// The families of a stage that answer differently.
fn of_stage(shop: &Shop, found: &Found, stage: Stage) -> Html {
    let row = |(family, change): (&FamilyInfo, &Change)| {
        let Change::Turned { turned, looked, example } = change else { return None };
        let named = [("turned", turned.to_string()), ("looked", looked.to_string())];
        Some(html! {
            <li key={family.id.clone()} class="own-turned">
                <p><b>{ shop.family_title(&family.id) }</b>{ " " }<span class="note">{ shop.say_with("own.of", &named) }</span></p>
                { shown(shop, example) }
            </li>
        })
    };
    let rows: Vec<Html> =
        changes(shop, found).filter(|(family, _)| family.stage == stage).filter_map(row).collect();
    html! {
        <section key={stage.slug()} hidden={rows.is_empty()}>
            <h3>{ shop.stage(stage) }</h3>
            <ul class="rows own-list">{ for rows }</ul>
        </section>
    }
}

/// A card that is answered differently: what it tells and asks, and its answer before and now.
fn shown(shop: &Shop, example: &Example) -> Html {
    let (voice, card) = (shop.voice(), &example.card);
    let fact = |(name, value): (&str, String)| html! { <li key={name.to_owned()}>{ name.to_owned() }{ ": " }<b>{ value }</b></li> };
    html! {
        <>
            <p key="story">{ voice.story(card) }</p>
            <ul key="facts" class="own-facts">{ for voice.facts(card).into_iter().map(fact) }</ul>
            <p key="ask"><b>{ voice.ask(card) }</b></p>
            <dl key="answers" class="own-answers">
                <div><dt>{ shop.say("own.before") }</dt><dd>{ said(shop, example, &example.before) }</dd></div>
                <div><dt>{ shop.say("own.now") }</dt><dd>{ said(shop, example, &example.after) }</dd></div>
            </dl>
        </>
    }
}

fn said(shop: &Shop, example: &Example, answer: &Answer) -> String {
    if let Answer::Run(Run::Passes(sets)) = answer {
        return good_run(shop, sets);
    }
    let words = shop.voice().answer(&example.card.family, answer);
    if words.is_empty() { shop.say("own.none-of-them").to_string() } else { words }
}

/// A good run: how many passes, how far off and how fast.
fn good_run(shop: &Shop, sets: &[Passes]) -> String {
    let measure =
        |value: f64, unit: Unit, decimals: u8| shop.voice().measure(Measure::new(value, unit, decimals));
    let first = |of: fn(&Passes) -> f64| sets.first().map_or(0.0, of);
    let named = [
        ("n", sets.len().to_string()),
        ("distance", measure(first(|set| set.distance), Unit::Millimetre, 0)),
        ("speed", measure(first(|set| set.speed), Unit::MetrePerSecond, 2)),
    ];
    shop.say_with("own.good-run", &named).to_string()
}

/// The families of which other situations are dealt, and those that cannot be compared.
fn others(shop: &Shop, found: &Found) -> Html {
    let list = |key: &'static str, holds: fn(&Change) -> bool| {
        let names: Vec<String> = changes(shop, found)
            .filter(|(_, change)| holds(change))
            .map(|(family, _)| shop.family_title(&family.id).to_string())
            .collect();
        html! {
            <details key={key} hidden={names.is_empty()}>
                <summary>{ shop.say_with(&format!("own.{key}"), &[("n", names.len().to_string())]) }</summary>
                <ul class="own-facts">{ for names.iter().map(|name| html! { <li key={name.clone()}>{ name }</li> }) }</ul>
            </details>
        }
    };
    html! {
        <div key="others" class="own-others">
            { list("dealt", |change| matches!(change, Change::Dealt)) }
            { list("unknown", |change| matches!(change, Change::Unknown { .. })) }
        </div>
    }
}
