//! One apprentice: name, PIN, their data as a file, and erasing them.

use super::erase::Erase;
use super::pin::PinForm;
use crate::app::hooks::{use_book, use_keys_held, use_people, use_signed};
use crate::app::parts::{Field, Frame, Picture, Unlock, icon, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, use_shop};
use crate::device::files;
use crate::people::{Member, told};
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct PersonProps {
    pub(in crate::app) number: String,
}

#[component]
pub(in crate::app) fn Person(props: &PersonProps) -> Html {
    let shop = use_shop();
    let people = use_people();
    let member = people.crew.member(&props.number).cloned();
    let title = member.as_ref().map_or_else(|| props.number.clone(), |member| member.name.clone());
    html! {
        <Frame class="sheet people-page" title={title} note={props.number.clone()} back={Some(Route::People)} cautions={shop.cautions_for(&[])}>
            { match member {
                None => html! { <p key="gone" class="lead">{ shop.say("people.nobody") }</p> },
                Some(member) => html! { <Known key="known" {member} /> },
            } }
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
struct KnownProps {
    member: Member,
}

#[component]
fn Known(props: &KnownProps) -> Html {
    let shop = use_shop();
    let (people, signed, keys) = (use_people(), use_signed(), use_keys_held());
    let journal = use_book().book.journal.clone();
    let name = use_state(|| props.member.name.clone());
    let wrong = use_state(AttrValue::default);
    let said = use_state(AttrValue::default);
    let member = props.member.clone();
    // Where somebody may sign, only they change others; everybody changes their own name and PIN.
    let office = keys.open.is_some() || signed.book().is_none();
    let own = shop.settings.person == member.journal;
    let answers = journal.of(&member.journal).count();
    let rename = {
        let (people, shop, name) = (people, shop.clone(), name.clone());
        let (wrong, said, number) = (wrong.clone(), said.clone(), member.number.to_string());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            match people.crew.renamed(&number, &name) {
                Err(not) => wrong.set(shop.say(&format!("people.not.{}", not.slug()))),
                Ok(crew) => {
                    wrong.set(AttrValue::default());
                    let (said, shop) = (said.clone(), shop.clone());
                    let done = Callback::from(move |stored| {
                        said.set(shop.say(if stored { "people.stored" } else { "people.not-stored" }))
                    });
                    people.put.emit(Keep { what: crew, done });
                }
            }
        })
    };
    let save = {
        let (member, journal, book) = (member.clone(), journal.clone(), signed.book().cloned());
        Callback::from(move |_: MouseEvent| {
            let json = told(&member, &journal, book.as_deref());
            if let Ok(text) = serde_json::to_string_pretty(&json) {
                // A browser that saves no file says so itself.
                let _ = files::save_json(&format!("stepboard-person-{}.json", member.number), &text);
            }
        })
    };
    html! {
        <>
            <div key="unlock" hidden={office && signed.book().is_none()}>
                <p class="note" hidden={office}>{ shop.say("people.office") }</p>
                <Unlock />
            </div>
            <form key="name" class="form paper" onsubmit={rename} hidden={!office && !own}>
                <h2>{ shop.say("people.name") }</h2>
                <Field id="person-name" label={shop.say("people.name")} value={(*name).clone()} on_input={typed_into(&name)} wrong={(*wrong).clone()} />
                <button type="submit" class="control">{ shop.say("people.rename") }</button>
                <p role="status">{ (*said).clone() }</p>
            </form>
            <div key="pin" hidden={!office && !own}><PinForm member={member.clone()} /></div>
            <section key="file" class="paper form" hidden={!office && !own}>
                <h2>{ shop.say("people.file") }</h2>
                <p>{ shop.say_with("people.file-why", &[("n", answers.to_string())]) }</p>
                <button type="button" class="control" onclick={save}>{ icon(Picture::Save) }{ shop.say("people.file-save") }</button>
            </section>
            <div key="erase" hidden={!office}><Erase {member} /></div>
        </>
    }
}
