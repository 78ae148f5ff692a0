//! Who works: asked before anything is shown, where the tablet is handed over or somebody has a PIN.

use crate::app::hooks::{use_lock, use_people, use_settings};
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Settings, use_shop};
use crate::device::{lasting, page};
use crate::people::{Member, Pin};
use gloo::timers::callback::Timeout;
use std::rc::Rc;
use yew::prelude::*;

const MS_PER_SECOND: u32 = 1000;
/// How many wrong PINs are remembered by: loading the page anew is no way round the wait.
const WRONG_PINS: &str = "stepboard-wrong-pins";

#[component]
pub(in crate::app) fn Who() -> Html {
    let shop = use_shop();
    let people = use_people();
    let settings = use_settings();
    let lock = use_lock();
    let chosen = use_state(|| None::<Member>);
    // Counted over all: going from one name to another and back is no way round the wait.
    let wrong = use_state(|| lasting::get(WRONG_PINS).and_then(|tries| tries.parse().ok()).unwrap_or(0_u32));
    let enter = {
        let (change, now, set) = (settings.change.clone(), Rc::clone(&settings.now), lock.set.clone());
        Callback::from(move |person: String| {
            change.emit(Settings { person, name_asked: true, ..(*now).clone() });
            set.emit(false);
        })
    };
    let choose = {
        let (chosen, enter) = (chosen.setter(), enter.clone());
        Callback::from(move |member: Member| match member.pin {
            Some(_) => chosen.set(Some(member)),
            None => enter.emit(member.journal),
        })
    };
    let one = |member: &Member| {
        let picked = chosen.as_ref().is_some_and(|one| one.number == member.number);
        let onclick = {
            let member = member.clone();
            choose.reform(move |_: MouseEvent| member.clone())
        };
        html! {
            <li key={member.number.to_string()}>
                <button type="button" class={classes!("control", picked.then_some("picked"))} aria-pressed={picked.to_string()} {onclick}>
                    <b>{ &member.name }</b><span class="note">{ member.number.to_string() }</span>
                </button>
            </li>
        }
    };
    let nobody = enter.reform(|_: MouseEvent| String::new());
    let asked = chosen.as_ref().and_then(|member| Some((member.clone(), member.pin.clone()?)));
    html! {
        <div class="screen who">
            <main class="middle" tabindex="0">
                <h1>{ shop.say("who.title") }</h1>
                <ul class="who-list">{ for people.crew.members().iter().map(one) }</ul>
                <div key="pin">
                { if let Some((member, pin)) = asked {
                    html! { <AskPin key={member.number.to_string()} {pin} wrong={wrong.clone()} name={member.name.clone()} on_right={enter.reform(move |()| member.journal.clone())} /> }
                } else { Html::default() } }
                </div>
                <p class="note">{ shop.say("who.nobody-why") }</p>
                <button type="button" class="control" onclick={nobody}>{ icon(Picture::Go) }{ shop.say("who.nobody") }</button>
            </main>
        </div>
    }
}

#[derive(Properties, PartialEq)]
struct AskPinProps {
    pin: Pin,
    /// Wrong ones so far.
    wrong: UseStateHandle<u32>,
    name: AttrValue,
    on_right: Callback<()>,
}

/// Asks for a PIN; each wrong one after the third makes the next wait longer.
#[component]
fn AskPin(props: &AskPinProps) -> Html {
    let shop = use_shop();
    let typed = use_state(String::new);
    let wrong = props.wrong.clone();
    let waits = use_state(|| Pin::wait_seconds(*wrong) > 0);
    let timer = use_mut_ref(|| None::<Timeout>);
    let wait = {
        let (waits, timer) = (waits.setter(), Rc::clone(&timer));
        move |tries: u32| {
            let waits = waits.clone();
            let ms = Pin::wait_seconds(tries) * MS_PER_SECOND;
            timer.replace(Some(Timeout::new(ms, move || waits.set(false))));
        }
    };
    use_effect_with((), {
        let (wait, tries) = (wait.clone(), *wrong);
        move |()| wait(tries)
    });
    let onsubmit = {
        let (pin, on_right) = (props.pin.clone(), props.on_right.clone());
        let (typed, wrong, waits) = (typed.clone(), wrong.clone(), waits.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if *waits || typed.is_empty() {
                return;
            }
            waits.set(true);
            let (pin, on_right, wait) = (pin.clone(), on_right.clone(), wait.clone());
            let (typed, wrong) = (typed.clone(), wrong.clone());
            page::once_drawn(move || {
                if pin.fits(&typed) {
                    lasting::set(WRONG_PINS, None);
                    return on_right.emit(());
                }
                let tries = wrong.saturating_add(1);
                lasting::set(WRONG_PINS, Some(&tries.to_string()));
                wrong.set(tries);
                typed.set(String::new());
                wait(tries);
            });
        })
    };
    let seconds = Pin::wait_seconds(*wrong);
    let said = match (*wrong, seconds) {
        (0, _) => AttrValue::default(),
        (_, 0) => shop.say("who.pin-wrong"),
        _ => shop.say_with("who.pin-wait", &[("seconds", seconds.to_string())]),
    };
    html! {
        <form class="form paper" {onsubmit}>
            <Field id="who-pin" label={shop.say_with("who.pin", &[("name", props.name.to_string())])} kind="password" inputmode="numeric"
                value={(*typed).clone()} on_input={typed_into(&typed)} wrong={said} />
            <button type="submit" class="control" disabled={*waits}>{ shop.say("who.go") }</button>
            <p class="note">{ shop.say("who.pin-lost") }</p>
        </form>
    }
}
