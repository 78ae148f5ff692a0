//! One competency: what came with the program, and what the shop asks for more.

use super::counts;
use super::own::Own;
use crate::app::hooks::{use_keys_held, use_signed, use_stricter};
use crate::app::parts::{Field, Frame, Unlock, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, Shop, use_shop};
use crate::content::{Competency, Stricter};
use crate::device::clock;
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct AskedOfProps {
    pub(in crate::app) competency: String,
}

#[component]
pub(in crate::app) fn AskedOf(props: &AskedOfProps) -> Html {
    let shop = use_shop();
    let slug = &props.competency;
    let shipped = shop.content().shipped().iter().find(|one| one.slug == *slug).cloned();
    html! {
        <Frame class="sheet asked-page" title={shop.text(&format!("competency.{slug}"))} back={Some(Route::Asked)} cautions={shop.cautions_for(&[])}>
            { match shipped {
                None => html! { <p key="none" class="lead">{ shop.say("asked.none") }</p> },
                Some(shipped) => html! { <Edit key="edit" {shipped} /> },
            } }
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
struct EditProps {
    shipped: Competency,
}

#[component]
fn Edit(props: &EditProps) -> Html {
    let shop = use_shop();
    let (keys, signed, asked) = (use_keys_held(), use_signed(), use_stricter());
    let shipped = &props.shipped;
    let latest = asked.asked.iter().rev().find(|one| one.competency == shipped.slug).cloned();
    let now = latest.clone().unwrap_or_else(|| Stricter::of(shipped));
    let demonstrations = use_state(|| now.demonstrations.to_string());
    let days = use_state(|| now.days.to_string());
    let months = use_state(|| now.expires_months.to_string());
    let criteria = use_state(|| now.criteria.clone());
    let said = use_state(|| (false, AttrValue::default()));
    let onsubmit = {
        let (shop, said, shipped, asked) = (shop.clone(), said.clone(), shipped.clone(), asked.clone());
        let (demonstrations, days, months, criteria) =
            (demonstrations.clone(), days.clone(), months.clone(), criteria.clone());
        let by = keys.open.as_ref().map(|open| format!("{} ({})", open.person.name, open.person.number));
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let number = |typed: &str| typed.trim().parse::<u32>().unwrap_or(0);
            let one = Stricter {
                competency: shipped.slug.clone(),
                demonstrations: number(&demonstrations),
                days: number(&days),
                expires_months: number(&months),
                criteria: (*criteria).clone(),
                by: by.clone().unwrap_or_default(),
                at: clock::now(),
            };
            if let Err(not) = one.applied(&shipped) {
                return said.set((false, refused(&shop, &shipped, not.slug())));
            }
            let mut all = (*asked.asked).clone();
            all.push(one);
            let (said, shop) = (said.clone(), shop.clone());
            let done = Callback::from(move |stored| {
                said.set((stored, shop.say(if stored { "people.stored" } else { "people.not-stored" })));
            });
            asked.put.emit(Keep { what: all, done });
        })
    };
    // Where somebody may sign, only they change what is asked.
    let office = keys.open.is_some() || signed.book().is_none();
    let on_criteria = {
        let criteria = criteria.setter();
        Callback::from(move |now| criteria.set(now))
    };
    let came = limits(shipped);
    let (stored, text) = (*said).clone();
    let by = latest
        .filter(|one| !one.by.is_empty())
        .map(|one| shop.say_with("asked.by", &[("by", one.by.clone()), ("at", clock::local(&one.at))]));
    let criterion = |one: &crate::content::Criterion| {
        let mark = if one.critical { shop.say("asked.critical") } else { AttrValue::default() };
        html! { <li key={one.id.clone()}><span class="words"><span>{ shop.text(&format!("criterion.{}", one.id)) }</span><span class="note">{ mark }</span></span></li> }
    };
    html! {
        <>
            <section key="came">
                <p class="lead">{ shop.say_with("asked.may", &[("may", shop.text(&format!("may.{}", shipped.slug)).to_string())]) }</p>
                <p>{ shop.say("asked.came") }{ " " }{ counts(&shop, shipped) }</p>
                <ul class="rows">{ for shipped.criteria.iter().map(criterion) }</ul>
            </section>
            <div key="unlock" hidden={signed.book().is_none()}><Unlock /></div>
            <p key="office" class="note" hidden={office}>{ shop.say("asked.office") }</p>
            <form key="form" class="form paper" hidden={!office} {onsubmit}>
                <h2>{ shop.say("asked.form") }</h2>
                <p class="note">{ shop.say("asked.form-why") }</p>
                <div class="pair">
                    <Field id="asked-demonstrations" inputmode="numeric" label={shop.say("asked.demonstrations")} hint={shop.say_with("asked.demonstrations-hint", &came)} value={(*demonstrations).clone()} on_input={typed_into(&demonstrations)} />
                    <Field id="asked-days" inputmode="numeric" label={shop.say("asked.days")} hint={shop.say_with("asked.days-hint", &came)} value={(*days).clone()} on_input={typed_into(&days)} />
                    <Field id="asked-months" inputmode="numeric" label={shop.say("asked.months")} hint={shop.say_with("asked.months-hint", &came)} value={(*months).clone()} on_input={typed_into(&months)} />
                </div>
                <Own criteria={(*criteria).clone()} on_change={on_criteria} />
                <button type="submit" class="next-step">{ shop.say("asked.save") }</button>
                <p key="wrong" class="wrong" role="alert" hidden={stored}>{ if stored { AttrValue::default() } else { text.clone() } }</p>
                <p key="said" role="status" hidden={!stored}>{ if stored { text } else { AttrValue::default() } }</p>
                <p key="by" class="note" hidden={by.is_none()}>{ by.unwrap_or_default() }</p>
            </form>
        </>
    }
}

fn refused(shop: &Shop, shipped: &Competency, slug: &str) -> AttrValue {
    shop.say_with(&format!("asked.not.{slug}"), &limits(shipped))
}

/// What may be asked, for the words beside the fields.
fn limits(shipped: &Competency) -> [(&'static str, String); 4] {
    [
        ("demonstrations", shipped.demonstrations.to_string()),
        ("most", Competency::DEMONSTRATIONS_MOST.to_string()),
        ("days", shipped.days.to_string()),
        ("months", shipped.expires_months.to_string()),
    ]
}
