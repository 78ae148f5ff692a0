//! Voids what was found wrong after it counted, and says what came of it where it was asked for.

use super::void_acts::{VoidActs, void_words};
use super::void_what::{VoidWhat, known_voidings};
use super::void_written::{Writing, use_writing};
use crate::app::hooks::{use_book, use_crew, use_sets};
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Shop, use_shop};
use crate::device::page;
use crate::record::{EventName, Voided, Voids};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlSelectElement};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct VoidFormProps {
    pub(super) id: String,
    /// What can be voided, one of them picked: what each is, in words.
    pub(super) choices: Vec<(VoidWhat, AttrValue)>,
    /// Told before something is voided.
    #[prop_or_default]
    pub(super) voiding: Callback<()>,
}

#[component]
pub(super) fn VoidForm(props: &VoidFormProps) -> Html {
    let shop = use_shop();
    let (books, crew, sets) = (use_book(), use_crew(), use_sets());
    let (picked, open) = (use_state(|| 0_usize), use_state(|| false));
    let known = known_voidings(&books, &crew);
    let voids = Voids::of(&known);
    let picked_one = props.choices.get(*picked).map(|(what, _)| what);
    let standing = picked_one.and_then(|what| what.standing(&voids)).cloned();
    let is_void = standing.is_some();
    let origin = standing.as_ref().map(Voided::origin);
    let heading = format!("{}-said", props.id);
    let (counts_again, on_acted) = use_said_of_act(&heading, origin.clone());
    let on_done = {
        let open = open.setter();
        Callback::from(move |()| {
            on_acted.emit(());
            open.set(false);
        })
    };
    let Writing { reason, wrong, busy, onsubmit } =
        use_writing(picked_one.cloned(), &props.voiding, &on_done);
    let words = standing.as_ref().map(|one| void_words(&shop, &sets, one));
    html! {
        <div class="void-form">
            <div key="said" id={heading} class={classes!(is_void.then_some("kraft"))} role="status" tabindex="-1">
                if is_void { <p><b>{ shop.say("crew.void.now") }</b></p>{ words.unwrap_or_default() }<p>{ shop.say("crew.void.elsewhere") }</p> }
                if counts_again { <p>{ shop.say("crew.void.over") }</p> }
                if busy { <p>{ shop.say("crew.void.busy") }</p> }
            </div>
            if let (Some(voided), Some(origin)) = (standing, origin) {
                <VoidActs key={format!("acts-{}-{}", origin.device, origin.sequence)} id={props.id.clone()} {voided} over=false {on_done} />
            }
            <details key="form" open={*open} ontoggle={unfolded(&open)} hidden={is_void && props.choices.len() < 2}>
                <summary>{ shop.say(if is_void { "crew.void.other" } else { "crew.void.open" }) }</summary>
                <form class="form" {onsubmit}>
                    <p class="note">{ shop.say("crew.void.why") }</p>
                    { what_field(&shop, props, &picked) }
                    <div class="contents" hidden={is_void}>
                        <Field id={props.id.clone()} label={shop.say("crew.void.reason")} hint={shop.say("crew.void.reason-hint")} value={(*reason).clone()} on_input={typed_into(&reason)} {wrong} />
                        <button type="submit" class="control" disabled={busy}>{ icon(Picture::Cross) }{ shop.say("crew.void.go") }</button>
                    </div>
                </form>
            </details>
        </div>
    }
}

/// What was done here takes the focus to what is said of it; what comes from elsewhere does not. Gives whether something counts
/// again by it, and what is told once something is done.
#[hook]
fn use_said_of_act(heading: &str, origin: Option<EventName>) -> (bool, Callback<()>) {
    let acted = use_mut_ref(|| false);
    let back = use_state(|| false);
    let is_void = origin.is_some();
    use_effect_with((origin, heading.to_owned()), {
        let (acted, back) = (Rc::clone(&acted), back.setter());
        move |(origin, heading)| {
            if acted.replace(false) {
                back.set(origin.is_none());
                page::focus(heading);
            }
        }
    });
    let on_acted = Callback::from(move |()| *acted.borrow_mut() = true);
    (*back && !is_void, on_acted)
}

/// Which of what can be voided; not asked where there is but one.
fn what_field(shop: &Shop, props: &VoidFormProps, picked: &UseStateHandle<usize>) -> Html {
    let id = format!("{}-what", props.id);
    let onchange = {
        let picked = picked.setter();
        Callback::from(move |event: Event| {
            let field = event.target().and_then(|target| target.dyn_into::<HtmlSelectElement>().ok());
            let place = field.and_then(|field| usize::try_from(field.selected_index()).ok());
            picked.set(place.unwrap_or(0));
        })
    };
    let option = |(nth, (_, words)): (usize, &(VoidWhat, AttrValue))| {
        html! { <option key={nth} value={nth.to_string()} selected={nth == **picked}>{ words }</option> }
    };
    html! {
        <div class="field" hidden={props.choices.len() < 2}>
            <label for={id.clone()}>{ shop.say("crew.void.what") }</label>
            <select {id} {onchange}>{ for props.choices.iter().enumerate().map(option) }</select>
        </div>
    }
}

/// Follows what is folded and unfolded by hand.
fn unfolded(open: &UseStateHandle<bool>) -> Callback<Event> {
    let open = open.setter();
    Callback::from(move |event: Event| {
        let folded = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        open.set(folded.is_some_and(|folded| folded.has_attribute("open")));
    })
}
