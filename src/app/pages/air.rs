//! Today's air: measured once, with its time; what Bench and the cautions go by until it is old.

use crate::app::hooks::{now, use_air};
use crate::app::parts::{Field, Frame, result, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, Shop, use_shop};
use crate::bench;
use crate::content::{CautionStage, World};
use crate::device::clock;
use crate::quantity::{Measure, Unit};
use crate::record::{AIR_OLD_HOURS, MeasuredAir};
use yew::prelude::*;

/// What is measured, as facts of the bench.
const FACTS: [&str; 3] = ["air_c", "rh", "work_c"];
/// The calculation that judges it.
const GATE: &str = "spray-gate";

#[component]
pub(in crate::app) fn Air() -> Html {
    let shop = use_shop();
    let air = use_air();
    let typed = [use_state(String::new), use_state(String::new), use_state(String::new)];
    let tried = use_state(|| false);
    let doubted = use_state(|| None::<[f64; FACTS.len()]>);
    let said = use_state(AttrValue::default);
    let read: Vec<Option<f64>> =
        FACTS.iter().zip(&typed).map(|(key, text)| number(&shop, key, text)).collect();
    let onsubmit = {
        let measured = match read.as_slice() {
            [Some(air_c), Some(rh), Some(work_c)] => Some([*air_c, *rh, *work_c]),
            _ => None,
        };
        let (put, tried, said) = (air.put.clone(), tried.setter(), said.setter());
        let doubted = doubted.clone();
        let (shop, texts) = (shop.clone(), typed.iter().map(UseStateHandle::setter).collect::<Vec<_>>());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            tried.set(true);
            let Some(figures @ [air_c, rh, work_c]) = measured else { return said.set(AttrValue::default()) };
            let air = MeasuredAir { air_c, rh, work_c, at: clock::now() };
            if !air.is_of_a_workshop() && *doubted != Some(figures) {
                doubted.set(Some(figures));
                return said.set(shop.say_with("air.doubted", &[("air", shop.air_in_words(&air))]));
            }
            let (shop, said, tried, texts) = (shop.clone(), said.clone(), tried.clone(), texts.clone());
            let done = Callback::from(move |stored: bool| {
                if stored {
                    tried.set(false);
                    texts.iter().for_each(|text| text.set(String::new()));
                }
                said.set(shop.say(if stored { "air.stored" } else { "people.not-stored" }));
            });
            put.emit(Keep { what: Some(air), done });
        })
    };
    let erase = {
        let (put, shop, said) = (air.put.clone(), shop.clone(), said.setter());
        Callback::from(move |_: MouseEvent| {
            let (shop, said) = (shop.clone(), said.clone());
            let done = Callback::from(move |stored: bool| {
                said.set(shop.say(if stored { "air.erased" } else { "people.not-stored" }));
            });
            put.emit(Keep { what: None, done });
        })
    };
    let field = |place: usize, key: &'static str| {
        let (text, read) = (&typed[place], read[place]);
        let wrong = if read.is_none() && (*tried || !text.is_empty()) {
            allowed(&shop, key)
        } else {
            AttrValue::default()
        };
        html! { <Field key={key} id={format!("air-{key}")} inputmode="decimal" label={label(&shop, key)} {wrong} value={(**text).clone()} on_input={typed_into(text)} /> }
    };
    html! {
        <Frame class="sheet air-page" title={shop.say("air.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[CautionStage::Spray])}>
            <p key="lead" class="lead">{ shop.say("air.lead") }</p>
            { for air.now.as_deref().map(|air| measured(&shop, air, erase)) }
            <form key="form" class="form paper" {onsubmit}>
                <h2>{ shop.say(if air.now.is_some() { "air.anew" } else { "air.enter" }) }</h2>
                <div class="trio">{ for FACTS.iter().enumerate().map(|(place, key)| field(place, key)) }</div>
                <p class="note">{ shop.say("air.how") }</p>
                <button type="submit" class="next-step">{ shop.say("air.save") }</button>
                <p key="said" role="status">{ (*said).clone() }</p>
            </form>
        </Frame>
    }
}

/// A figure in the unit shown as a number in the fact's unit, where it lies in the fact's range.
fn number(shop: &Shop, key: &str, text: &str) -> Option<f64> {
    shop.content().fact(key).and_then(|info| info.read(shop.settings.units, &shop.texts().typed(text)))
}

/// The name of a fact with the unit that is shown.
fn label(shop: &Shop, key: &str) -> AttrValue {
    let unit = shop.content().fact(key).and_then(|info| info.unit);
    let symbol = unit.map_or("", |unit| shop.settings.units.shown(unit).symbol());
    AttrValue::from(format!("{} ({symbol})", shop.voice().fact_name(key)))
}

fn allowed(shop: &Shop, key: &str) -> AttrValue {
    let Some(info) = shop.content().fact(key) else { return AttrValue::default() };
    let voice = shop.voice();
    let bound = |number: f64| voice.measure(info.measure(number));
    let named =
        [("name", voice.fact_name(key).to_owned()), ("min", bound(info.min)), ("max", bound(info.max))];
    shop.say_with("bench.wrong-number", &named)
}

/// What was measured, how long ago, and whether it may be sprayed in.
fn measured(shop: &Shop, air: &MeasuredAir, erase: Callback<MouseEvent>) -> Html {
    let fresh = shop.fresh_air().is_some();
    let gate = bench::calculations().into_iter().find(|one| one.name == GATE);
    let judged = gate.zip(shop.sheet()).and_then(|(gate, sheet)| {
        let ruling = (gate.run)(&air.facts(), &World { content: shop.content(), sheet }).ok()?;
        Some(result(shop, gate, &ruling, &[], &Callback::noop()))
    });
    html! {
        <div key="measured" class="air-now">
            <section key="what" class="paper">
                <h2>{ shop.air_in_words(air) }</h2>
                <p role="status">{ aged(shop, air) }</p>
                <p class="wrong" role="alert" hidden={fresh}>{ if fresh { AttrValue::default() } else { old(shop) } }</p>
                <button type="button" class="control" onclick={erase}>{ shop.say("air.erase") }</button>
            </section>
            <div key="gate" class="outcome" hidden={!fresh}>{ for judged }</div>
        </div>
    }
}

/// When it was measured, and how long ago that is.
pub(super) fn aged(shop: &Shop, air: &MeasuredAir) -> AttrValue {
    /// Less is told as just now.
    const A_MINUTE_H: f64 = 1.0 / 60.0;
    let at = ("at", clock::local(&air.at));
    match now().at.and_then(|now| air.hours(now)) {
        None => shop.say_with("air.of-unknown-age", &[at]),
        Some(hours) if hours < A_MINUTE_H => shop.say_with("air.just-now", &[at]),
        Some(hours) => shop
            .say_with("air.aged", &[at, ("age", shop.voice().measure(Measure::new(hours, Unit::Hour, 1)))]),
    }
}

pub(super) fn old(shop: &Shop) -> AttrValue {
    shop.say_with("air.old", &[("hours", AIR_OLD_HOURS.to_string())])
}
