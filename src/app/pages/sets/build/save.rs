//! The name of a set, and keeping it.

use super::Building;
use super::missing::{Missing, TITLE, half_done, missing, title_wrong};
use crate::app::hooks::{Naming, use_naming, use_sets};
use crate::app::parts::{Field, NameField, Picture, icon, named};
use crate::app::route::Route;
use crate::app::state::{Keep, Origin, SetFile, use_shop};
use crate::device::{clock, page};
use crate::exchange::NAME_MOST;
use crate::exchange::set::Set;
use crate::record::plain;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct SaveProps {
    pub(super) building: Building,
    /// Who makes it; empty where nobody is named.
    pub(super) maker: String,
    /// Whether saving was tried, and that it is.
    pub(super) tried: bool,
    pub(super) on_try: Callback<()>,
}

#[component]
pub(super) fn Save(props: &SaveProps) -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let said = use_state(AttrValue::default);
    let set = &props.building.set;
    let Naming { on_name, said: told } = use_naming();
    let hint = [("most", NAME_MOST.to_string())];
    let missing = missing(&shop, set, &props.maker);
    // An empty name is no mistake before saving is tried.
    let wrong = if props.tried || !set.title.is_empty() {
        title_wrong(&shop, &set.title)
    } else {
        AttrValue::default()
    };
    let nobody = props.maker.is_empty();
    let lacking = missing.first().cloned();
    let save = {
        let (set, maker, shop, sets) = (Rc::clone(set), props.maker.clone(), shop.clone(), sets.clone());
        let (said, on_try) = (said.setter(), props.on_try.clone());
        Callback::from(move |_: MouseEvent| {
            on_try.emit(());
            // What is missing stands beside the button already.
            if let Some(Missing { field, .. }) = &lacking {
                said.set(AttrValue::default());
                return page::bring(field);
            }
            if let Some(Missing { field, said: why }) = half_done(&shop) {
                said.set(why);
                return page::bring(&field);
            }
            let made = Set {
                title: plain(&set.title),
                note: plain(&set.note),
                by: maker.clone(),
                at: clock::now(),
                ..(*set).clone()
            };
            if let Err(refused) = made.check(shop.content()) {
                return said.set(shop.say_with("sets.build.refused", &[("why", refused.to_string())]));
            }
            let (id, edit) = (made.id(), sets.edit.clone());
            let (said, failed) = (said.clone(), shop.say("sets.hand.not-stored"));
            let done = Callback::from(move |stored: bool| {
                if stored {
                    edit.emit(None);
                    Route::SetOf { id: id.clone() }.go();
                } else {
                    said.set(failed.clone());
                }
            });
            sets.keep.emit(Keep { what: SetFile::Set(Rc::new(made), Origin::Made), done });
        })
    };
    let let_go = {
        let edit = sets.edit.clone();
        Callback::from(move |_: MouseEvent| {
            edit.emit(None);
            Route::Sets.go();
        })
    };
    let title = props.building.change(|set, title: String| set.title = title);
    html! {
        <section class="build-save form">
            <div key="who" class="kraft" hidden={!nobody}>
                <NameField label={shop.say("sets.build.maker")} name="" {on_name} skip=false />
            </div>
            { named(&told) }
            <Field id={TITLE} label={shop.say("sets.build.name")} hint={shop.say_with("sets.build.name-hint", &hint)} value={set.title.clone()} on_input={title} {wrong} />
            <div key="missing" class="build-missing" hidden={missing.is_empty()}>
                <p>{ shop.say("sets.build.before-saving") }</p>
                <ul>{ for missing.iter().map(|one| html! { <li key={one.field.clone()}>{ one.said.clone() }</li> }) }</ul>
            </div>
            <div key="ways" class="people">
                <button key="save" type="button" class={if missing.is_empty() { "next-step" } else { "next-step not-yet" }} onclick={save}>{ icon(Picture::Save) }{ shop.say("sets.build.save") }</button>
                <button key="go" type="button" class="control" hidden={sets.draft.is_none()} onclick={let_go}>{ shop.say("sets.build.let-go") }</button>
            </div>
            <p key="said" class="wrong" role="alert">{ (*said).clone() }</p>
        </section>
    }
}
