//! The name of a set, and keeping it.

use super::Building;
use crate::app::hooks::{use_sets, use_settings};
use crate::app::parts::{Field, NameField, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Keep, Origin, SetFile, Settings, use_shop};
use crate::device::clock;
use crate::exchange::NAME_MOST;
use crate::exchange::set::Set;
use crate::record::{is_plain, plain};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct SaveProps {
    pub(super) building: Building,
    /// Who makes it; empty where nobody is named.
    pub(super) maker: String,
}

#[component]
pub(super) fn Save(props: &SaveProps) -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let sets = use_sets();
    let said = use_state(AttrValue::default);
    let tried = use_state(|| false);
    let set = &props.building.set;
    let on_name = use_callback(settings, |person: String, settings| {
        settings.change.emit(Settings { person, name_asked: true, ..(*settings.now).clone() });
    });
    let named = [("most", NAME_MOST.to_string()), ("n", set.title.chars().count().to_string())];
    let wrong = match plain(&set.title) {
        title if title.is_empty() && *tried => shop.say("sets.build.name-missing"),
        title if !is_plain(&title, NAME_MOST) => shop.say_with("sets.build.name-wrong", &named),
        _ => AttrValue::default(),
    };
    let nothing = set.task.families_of(shop.content()).is_empty();
    let nobody = props.maker.is_empty();
    let save = {
        let (set, maker, shop, sets) = (Rc::clone(set), props.maker.clone(), shop.clone(), sets.clone());
        let (said, tried) = (said.setter(), tried.setter());
        Callback::from(move |_: MouseEvent| {
            tried.set(true);
            if nothing || nobody || plain(&set.title).is_empty() {
                if nobody {
                    said.set(shop.say("sets.build.nobody"));
                }
                return;
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
            <Field id="set-title" label={shop.say("sets.build.name")} hint={shop.say_with("sets.build.name-hint", &named)} value={set.title.clone()} on_input={title} {wrong} />
            <p key="nothing" class="note" hidden={!nothing}>{ shop.say("sets.build.saving-not") }</p>
            <div key="ways" class="people">
                <button key="save" type="button" class={if nothing || nobody { "next-step not-yet" } else { "next-step" }} aria-disabled={(nothing || nobody).to_string()} onclick={save}>{ icon(Picture::Save) }{ shop.say("sets.build.save") }</button>
                <button key="go" type="button" class="control" hidden={sets.draft.is_none()} onclick={let_go}>{ shop.say("sets.build.let-go") }</button>
            </div>
            <p key="said" class="wrong" role="alert">{ (*said).clone() }</p>
        </section>
    }
}
