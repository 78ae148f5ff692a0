//! The code of a worksheet, and whose it is.

use super::{Given, member_of};
use crate::app::pages::paper::Worksheet;
use crate::app::parts::{Field, typed_into};
use crate::app::state::{Shop, use_shop};
use crate::exchange::Refused;
use crate::exchange::paper::PaperCode;
use crate::people::{Crew, NAME_MOST};
use crate::record::is_plain;
use std::rc::Rc;
use web_sys::SubmitEvent;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct WhoseProps {
    pub(super) id: String,
    pub(super) crew: Rc<Crew>,
    pub(super) on_given: Callback<Option<Given>>,
}

#[component]
pub(super) fn Whose(props: &WhoseProps) -> Html {
    let shop = use_shop();
    let (typed, name) = (use_state(String::new), use_state(String::new));
    let member = use_state(|| None::<usize>);
    let tried = use_state(|| false);
    let code = PaperCode::read(&typed, &props.id);
    let found = code.as_ref().ok().and_then(|code| member_of(&props.crew, &props.id, code));
    let picked = member.or(found);
    let one = picked.and_then(|at| props.crew.members().get(at));
    let person = one.map_or_else(|| name.trim().to_owned(), |one| one.journal.clone());
    let fit = is_plain(&person, NAME_MOST) && !person.is_empty();
    let wrong_code = match &code {
        Err(refused) if *tried => refused_code(&shop, refused),
        _ => AttrValue::default(),
    };
    let limit = [("most", NAME_MOST.to_string())];
    let wrong_name =
        if *tried && !fit { shop.say_with("worksheet.name-wrong", &limit) } else { AttrValue::default() };
    let onsubmit = {
        let (on_given, tried, whom) =
            (props.on_given.clone(), tried.setter(), one.map(|one| one.name.clone()));
        let code = code.clone().ok().filter(|_| fit);
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            tried.set(true);
            if let Some(code) = code.clone() {
                let whom = whom.clone().unwrap_or_else(|| person.clone());
                on_given.emit(Some(Given { sheet: Worksheet { whom, code }, person: person.clone() }));
            }
        })
    };
    let choice = |(nth, one): (usize, &crate::people::Member)| {
        let (set, on) = (member.setter(), picked == Some(nth));
        let onclick = Callback::from(move |_: MouseEvent| set.set(if on { None } else { Some(nth) }));
        html! {
            <button key={nth} type="button" class={classes!("control", on.then_some("picked"))} aria-pressed={on.to_string()} {onclick}>
                { &one.name }{ " (" }{ one.number.text().to_owned() }{ ")" }
            </button>
        }
    };
    html! {
        <form class="paper form" {onsubmit}>
            <p class="lead">{ shop.say("worksheet.enter-lead") }</p>
            <Field id="code" label={shop.say("worksheet.code")} value={(*typed).clone()} on_input={typed_into(&typed)} hint={shop.say("worksheet.code-hint")} wrong={wrong_code} />
            <fieldset class="setting" hidden={props.crew.members().is_empty()}>
                <legend>{ shop.say("worksheet.whose") }</legend>
                <div class="people">{ for props.crew.members().iter().enumerate().map(choice) }</div>
            </fieldset>
            <div hidden={picked.is_some()}>
                <Field id="whose" label={shop.say("worksheet.whose-name")} value={(*name).clone()} on_input={typed_into(&name)} wrong={wrong_name} />
            </div>
            <p class="kraft">{ shop.say("worksheet.counts") }</p>
            <button type="submit" class="next-step">{ shop.say("worksheet.begin") }</button>
        </form>
    }
}

/// What is wrong with a code.
fn refused_code(shop: &Shop, refused: &Refused) -> AttrValue {
    shop.refused(refused)
}
