//! Who works: a new name, or one that answered on this tablet before.

use crate::app::parts::NameField;
use crate::app::state::{Settings, SettingsContext, Shop};
use crate::people::Crew;
use crate::record::Journal;
use std::rc::Rc;
use yew::prelude::*;

pub(super) fn who(
    shop: &Shop,
    settings: &SettingsContext,
    journal: &Journal,
    crew: &Crew,
    hand_over: Callback<MouseEvent>,
) -> Html {
    let person = settings.now.person.clone();
    let now = Rc::clone(&settings.now);
    let on_name =
        settings.change.reform(move |person| Settings { person, name_asked: true, ..(*now).clone() });
    // Those with a number are asked who they are elsewhere, since they may have a PIN.
    let free = |other: &&str| *other != person && crew.of_journal(other).is_none();
    let others = journal.people().into_iter().filter(free).map(str::to_owned);
    let member = crew.of_journal(&person).map(|member| format!("{} ({})", member.name, member.number));
    let other = |name: String| {
        let shown = name.clone();
        let onclick = on_name.reform(move |_: MouseEvent| name.clone());
        html! { <button key={shown.clone()} type="button" class="control" {onclick}>{ shown }</button> }
    };
    html! {
        <section key="person" class="setting">
            <h2>{ shop.say("menu.who") }</h2>
            <p key="member" hidden={member.is_none()}>{ shop.say_with("menu.member", &[("person", member.clone().unwrap_or_default())]) }</p>
            <div key="name" hidden={member.is_some()}>
                <NameField key={person.clone()} label={shop.say("home.name")} name={person.clone()} on_name={on_name.clone()} skip=false />
            </div>
            <div key="people" class="people">
                { for others.map(other) }
                <button key="hand-over" type="button" class="control" hidden={crew.members().is_empty()} onclick={hand_over}>{ shop.say("people.hand-over") }</button>
            </div>
        </section>
    }
}
