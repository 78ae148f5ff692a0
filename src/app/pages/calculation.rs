//! One calculation: what is known on the ticket, the result and its working on shop paper.

use super::air::{aged, old};
use crate::app::parts::{Frame, result};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::bench::{self, Calculation as Entry, Facts, Needs};
use crate::content::{CautionStage, FactInfo, World};
use std::collections::BTreeMap;
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CalculationProps {
    pub(in crate::app) name: String,
}

/// What is typed or chosen, by fact.
type Typed = BTreeMap<String, String>;

#[component]
pub(in crate::app) fn Calculation(props: &CalculationProps) -> Html {
    let shop = use_shop();
    let found = bench::calculations().into_iter().find(|one| one.name == props.name);
    let given = use_memo(shop.clone(), |shop| found.map(|one| of_air(shop, one)).unwrap_or_default());
    let typed = use_state(|| (*given).clone());
    let Some(calculation) = found else {
        return html! {
            <Frame class="sheet" title={shop.say("bench.title")} back={Some(Route::Bench)} cautions={shop.cautions_for(&[])}><p class="kraft">{ shop.say("bench.no-such") }</p></Frame>
        };
    };
    let on_typed = {
        let (now, set) = ((*typed).clone(), typed.setter());
        Callback::from(move |(key, value): (String, String)| {
            let mut next = now.clone();
            next.insert(key, value);
            set.set(next);
        })
    };
    let takes = calculation.takes(shop.content());
    let (stand, wait) = standing(&takes, &typed);
    let field = |need: &&Needs<'_>| {
        let value = typed.get(need.key).cloned().unwrap_or_default();
        let of_air = !value.is_empty() && given.get(need.key) == Some(&value);
        field(&shop, need, value, &on_typed, of_air)
    };
    let cautions = shop.cautions_for(stages(calculation));
    html! {
        <Frame class="calculation" title={shop.text(&format!("bench.{}", calculation.name))} back={Some(Route::Bench)} {cautions}>
            <section key="inputs" class="ticket form">
                <span class="hole" aria-hidden="true"></span>
                <h2>{ shop.say("bench.inputs") }</h2>
                { air_line(&shop, &takes) }
                { for stand.iter().map(field) }
                { more(&shop, &wait, &on_typed) }
            </section>
            <div key="outcome" class="outcome" aria-live="polite">{ outcome(&shop, calculation, (&*typed, &*given), &wait, &on_typed) }</div>
        </Frame>
    }
}

/// What today's air tells of the facts that a calculation takes, as it would be typed; nothing of old air.
fn of_air(shop: &Shop, calculation: &Entry) -> Typed {
    let Some(air) = shop.fresh_air() else { return Typed::new() };
    let facts = air.facts();
    let takes = calculation.takes(shop.content());
    let told = takes.iter().filter_map(|need| {
        let info = shop.content().fact(need.key)?;
        let shown = shop.settings.units.show(info.measure(facts.maybe_number(need.key)?));
        Some((need.key.to_owned(), shop.texts().figure(shown)))
    });
    told.collect()
}

/// Today's air where a calculation asks for any of it, and the way to it.
fn air_line(shop: &Shop, takes: &[Needs<'_>]) -> Html {
    /// What can be measured once for all calculations.
    const MEASURED: [&str; 3] = ["air_c", "rh", "work_c"];
    let asked = takes.iter().any(|need| MEASURED.contains(&need.key));
    let said = match (&shop.air, shop.fresh_air()) {
        (None, _) => shop.say("air.once"),
        (Some(_), None) => old(shop),
        (Some(_), Some(air)) => aged(shop, air),
    };
    html! {
        <p key="@air" class="note air-line" hidden={!asked}>
            <span>{ said }</span>{ " " }<a href={Route::Air.address()} class="text-link">{ shop.say("air.title") }</a>
        </p>
    }
}

/// Whose cautions a calculation shows: those of spraying where it is about that.
fn stages(calculation: &Entry) -> &'static [CautionStage] {
    /// Groups of the bench that are about spraying.
    const SPRAYING: [&str; 2] = ["air", "spray"];
    let of = |(name, group): &(&str, &[&Entry])| {
        SPRAYING.contains(name) && group.iter().any(|one| one.name == calculation.name)
    };
    if bench::GROUPS.iter().any(of) { &[CautionStage::Spray] } else { &[] }
}

/// The facts that stand on the ticket, and those that are put there when they are known: of many that may be left out
/// only the first ones stand from the start.
fn standing<'a, 'b>(takes: &'b [Needs<'a>], typed: &Typed) -> (Vec<&'b Needs<'a>>, Vec<&'b Needs<'a>>) {
    /// Facts that may be left out and still fit on a screen.
    const FEW: usize = 6;
    /// As many of more than those stand from the start.
    const FIRST: usize = 2;
    let optional: Vec<&str> = takes.iter().filter(|need| need.optional).map(|need| need.key).collect();
    let first = if optional.len() <= FEW { FEW } else { FIRST };
    let stands = |need: &&Needs<'_>| {
        !need.optional
            || typed.contains_key(need.key)
            || optional.iter().take(first).any(|key| *key == need.key)
    };
    takes.iter().partition(stands)
}

/// Puts another fact on the ticket.
fn more(shop: &Shop, wait: &[&Needs<'_>], on_typed: &Callback<(String, String)>) -> Html {
    let onchange = on_typed.reform(|event: Event| (select_value(&event), String::new()));
    let option = |need: &&Needs<'_>| html! { <option key={need.key.to_owned()} value={need.key.to_owned()}>{ shop.voice().fact_name(need.key).to_owned() }</option> };
    html! {
        <p key="@more" class="field more" hidden={wait.is_empty()}>
            <label for="more">{ shop.say("bench.more") }</label>
            <select id="more" {onchange}>
                // A new key: the choice springs back once what was chosen stands above.
                <option key={format!("@{}", wait.len())} value="" selected=true>{ shop.say("bench.more-pick") }</option>
                { for wait.iter().map(option) }
            </select>
        </p>
    }
}

/// One fact: a number in the person's unit, or one of its terms.
fn field(
    shop: &Shop,
    need: &Needs<'_>,
    value: String,
    on_typed: &Callback<(String, String)>,
    of_air: bool,
) -> Html {
    let key = need.key;
    let keyed = key.to_owned();
    let Some(info) = shop.content().fact(key) else {
        return html! { <p key={key.to_owned()}>{ key.to_owned() }</p> };
    };
    let name = shop.voice().fact_name(key).to_owned();
    let optional = if need.optional { shop.say("bench.optional") } else { AttrValue::default() };
    let id = format!("fact-{key}");
    let control = if let Some(unit) = info.unit {
        let symbol = shop.settings.units.shown(unit).symbol();
        let oninput = on_typed.reform(move |event: InputEvent| (keyed.clone(), input_value(&event)));
        html! {
            <span class="typed-unit">
                <input id={id.clone()} type="text" inputmode="decimal" autocomplete="off" {value} {oninput} /><span>{ symbol }</span>
            </span>
        }
    } else {
        let onchange = on_typed.reform(move |event: Event| (keyed.clone(), select_value(&event)));
        let option = |slug: &str| html! { <option key={slug.to_owned()} value={slug.to_owned()} selected={slug == value}>{ shop.voice().term("", slug) }</option> };
        html! {
            <select id={id.clone()} {onchange}>
                <option key="" value="" selected={value.is_empty()}>{ shop.say("bench.pick") }</option>
                { for info.slugs(shop.content()).into_iter().map(option) }
            </select>
        }
    };
    html! { <p key={key.to_owned()} class="field"><label for={id}>{ name }<small>{ optional }</small></label>{ control }<span class="note of-air" hidden={!of_air}>{ shop.say("air.taken-over") }</span></p> }
}

fn input_value(event: &InputEvent) -> String {
    let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
    input.map(|input| input.value()).unwrap_or_default()
}

fn select_value(event: &Event) -> String {
    let select = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
    select.map(|select| select.value()).unwrap_or_default()
}

/// The result, or what stands in its way.
fn outcome(
    shop: &Shop,
    calculation: &Entry,
    (typed, given): (&Typed, &Typed),
    untold: &[&Needs<'_>],
    on_typed: &Callback<(String, String)>,
) -> Html {
    let (facts, wrong) = read(shop, calculation, typed);
    if facts.0.is_empty() && wrong.is_empty() {
        return html! { <p class="kraft">{ shop.say("bench.empty") }</p> };
    }
    if !wrong.is_empty() {
        return html! { <ul class="kraft wrong">{ for wrong.iter().map(|text| html! { <li key={text.to_string()}>{ text }</li> }) }</ul> };
    }
    let Some(sheet) = shop.sheet() else { return html! { <p></p> } };
    match (calculation.run)(&facts, &World { content: shop.content(), sheet }) {
        // What today's air told is not a question yet.
        Err(_) if typed == given => html! { <p class="kraft">{ shop.say("bench.empty") }</p> },
        Err(cannot) => {
            // What no person can tell has no name: a figure that no source gives.
            let name = |key: &String| match shop.voice().fact_name(key) {
                "" => shop.say("bench.no-figure").to_string(),
                name => name.to_owned(),
            };
            let names: Vec<String> = cannot.missing.iter().map(name).collect();
            let text = if cannot.contradicting { "bench.clash" } else { "bench.unknown" };
            html! { <p class="kraft">{ shop.say_with(text, &[("facts", names.join(", "))]) }</p> }
        }
        Ok(ruling) => {
            let on_asked = on_typed.reform(|key: String| (key, String::new()));
            result(shop, calculation, &ruling, untold, &on_asked)
        }
    }
}

/// The facts as told, and what was told wrongly.
fn read(shop: &Shop, calculation: &Entry, typed: &Typed) -> (Facts, Vec<AttrValue>) {
    let (mut facts, mut wrong) = (Facts::default(), Vec::new());
    for need in calculation.takes(shop.content()) {
        let value = typed.get(need.key).map_or("", |value| value.trim());
        let Some(info) = shop.content().fact(need.key).filter(|_| !value.is_empty()) else { continue };
        match info.unit {
            None => facts.set_term(need.key, value),
            Some(_) => match info.read(shop.settings.units, &shop.texts().typed(value)) {
                Some(number) => facts.set(need.key, number),
                None => wrong.push(allowed(shop, info)),
            },
        }
    }
    (facts, wrong)
}

fn allowed(shop: &Shop, info: &FactInfo) -> AttrValue {
    let voice = shop.voice();
    let bound = |number: f64| voice.measure(info.measure(number));
    let name = voice.fact_name(&info.key).to_owned();
    shop.say_with("bench.wrong-number", &[("name", name), ("min", bound(info.min)), ("max", bound(info.max))])
}
