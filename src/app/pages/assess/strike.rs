//! Strikes out what was entered wrongly, with a reason.

use super::office::stamp;
use crate::app::hooks::use_book;
use crate::app::parts::{Field, Picture, icon, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::people::Member;
use crate::record::{AssessorName, EventName, Struck, plain};
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct StrikeProps {
    pub(super) member: Member,
    pub(super) by: AssessorName,
    /// What would be struck out.
    pub(super) strikes: EventName,
}

#[component]
pub(super) fn Strike(props: &StrikeProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let open = use_state(|| false);
    let reason = use_state(String::new);
    let wrong = use_state(AttrValue::default);
    let toggle = {
        let open = open.clone();
        Callback::from(move |_: MouseEvent| open.set(!*open))
    };
    let onsubmit = {
        let (shop, reason, wrong) = (shop.clone(), reason.clone(), wrong.clone());
        let (member, by, strikes) = (props.member.clone(), props.by.clone(), props.strikes.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let stamp = stamp(&shop, &books.book.journal, &member);
            let struck = Struck {
                stamp,
                subject: member.number.to_string(),
                strikes: strikes.clone(),
                reason: plain(&reason),
                by: by.clone(),
            };
            if let Some(unfit) = struck.unfit().first() {
                return wrong.set(shop.say(&format!("assess.unfit.{}", unfit.slug())));
            }
            let (shop, wrong) = (shop.clone(), wrong.clone());
            let done = Callback::from(move |stored: bool| {
                if !stored {
                    wrong.set(shop.say("assess.not-stored"));
                }
            });
            books.write.emit(Keep { what: struck.into(), done });
        })
    };
    let id = format!("strike-{}-{}", props.strikes.device, props.strikes.sequence);
    html! {
        <div class="strike">
            <button key="open" type="button" class="control" aria-expanded={(*open).to_string()} onclick={toggle}>
                { shop.say(if *open { "assess.give-up" } else { "assess.strike" }) }
            </button>
            <form key="form" class="form" hidden={!*open} {onsubmit}>
                <Field {id} label={shop.say("assess.strike-reason")} hint={shop.say("assess.strike-hint")} value={(*reason).clone()} on_input={typed_into(&reason)} wrong={(*wrong).clone()} />
                <button type="submit" class="control">{ icon(Picture::Cross) }{ shop.say("assess.strike-go") }</button>
            </form>
        </div>
    }
}
