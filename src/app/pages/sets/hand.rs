//! Handing a set out, building another from it, withdrawing it.

use super::maker::use_maker;
use crate::app::hooks::use_sets;
use crate::app::parts::{Field, HandOut, Picture, icon, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, KeptSet, Origin, SetFile, use_shop};
use crate::device::{clock, files};
use crate::exchange::set::{SET, WITHDRAWAL, Withdrawal};
use crate::exchange::{NOTE_MOST, save_name};
use crate::record::plain;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct HandProps {
    pub(super) kept: KeptSet,
    /// Whether its answers are kept back, which a set built on it would show.
    pub(super) kept_back: bool,
}

#[component]
pub(super) fn Hand(props: &HandProps) -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let maker = use_maker();
    let asked = use_state(|| false);
    let reason = use_state(String::new);
    let said = use_state(AttrValue::default);
    let kept = &props.kept;
    let file = |name: String, text: Option<String>| {
        Callback::from(move |_: MouseEvent| {
            if let Some(text) = &text {
                // What the browser refuses it tells itself.
                drop(files::save_json(&name, text));
            }
        })
    };
    let file_name = save_name(SET.format, &kept.set.title, None, "json");
    let text = kept.set.write().ok().filter(|_| kept.origin != Origin::Ready);
    let like = {
        let (edit, kept) = (sets.edit.clone(), kept.clone());
        Callback::from(move |_: MouseEvent| {
            edit.emit(Some((*kept.set).clone()));
            Route::NewSet.go();
        })
    };
    let withdraw = {
        let (keep, kept, maker, reason) = (sets.keep.clone(), kept.clone(), maker.clone(), plain(&reason));
        let (said, asked, failed) = (said.setter(), asked.setter(), shop.say("sets.hand.not-stored"));
        Callback::from(move |_: MouseEvent| {
            let reason = reason.chars().take(NOTE_MOST).collect();
            let withdrawal = Withdrawal { set: kept.id.clone(), by: maker.clone(), at: clock::now(), reason };
            let (said, asked, failed) = (said.clone(), asked.clone(), failed.clone());
            let done = Callback::from(move |stored: bool| {
                asked.set(false);
                said.set(if stored { AttrValue::default() } else { failed.clone() });
            });
            keep.emit(Keep { what: SetFile::Withdrawal(Rc::new(withdrawal)), done });
        })
    };
    let (ask, give_up) = (asked.setter(), asked.setter());
    let ships = kept.origin == Origin::Ready;
    let own = !ships && kept.set.by == maker;
    let gone = kept.withdrawn.clone();
    let told = gone.as_ref().map(|one| {
        shop.say_with("sets.hand.withdrawn", &[("at", clock::local(&one.at)), ("reason", one.reason.clone())])
    });
    let of_withdrawal = gone.as_ref().and_then(|one| one.write().ok());
    let save_withdrawal = file(save_name(WITHDRAWAL.format, &kept.set.title, None, "json"), of_withdrawal);
    let may_withdraw = own && gone.is_none();
    html! {
        <section class="set-hand">
            <p key="gone" class="kraft" hidden={gone.is_none()}>{ told }</p>
            <div key="out" hidden={ships || gone.is_some()}>
                { for text.map(|text| html! { <HandOut name={file_name.clone()} {text} title={kept.set.title.clone()} /> }) }
            </div>
            <div key="ways" class="people">
                <a key="paper" href={Route::SetPaper { id: kept.id.clone() }.address()} class="control" hidden={gone.is_some()}>{ icon(Picture::Print) }{ shop.say("sets.hand.paper") }</a>
                <button key="gone" type="button" class="control" hidden={gone.is_none()} onclick={save_withdrawal}>{ icon(Picture::Save) }{ shop.say("sets.hand.withdrawn-save") }</button>
                <button key="like" type="button" class="control" hidden={props.kept_back} onclick={like}>{ icon(Picture::Pencil) }{ shop.say("sets.hand.like") }</button>
                <button key="withdraw" type="button" class="control" hidden={!may_withdraw || *asked} onclick={move |_: MouseEvent| ask.set(true)}>{ shop.say("sets.hand.withdraw") }</button>
            </div>
            <p key="maker" class="note" hidden={ships || own || gone.is_some()}>{ shop.say_with("sets.hand.only-maker", &[("by", kept.set.by.clone())]) }</p>
            <div key="ask" class="kraft form" hidden={!*asked}>
                <p>{ shop.say("sets.hand.withdraw-why") }</p>
                <Field id="withdraw-reason" label={shop.say("sets.hand.withdraw-reason")} value={(*reason).clone()} on_input={typed_into(&reason)} />
                <div class="people">
                    <button type="button" class="control" onclick={withdraw}>{ shop.say("sets.hand.withdraw-now") }</button>
                    <button type="button" class="control" onclick={move |_: MouseEvent| give_up.set(false)}>{ shop.say("sets.hand.keep") }</button>
                </div>
            </div>
            <p key="said" role="status">{ (*said).clone() }</p>
        </section>
    }
}
