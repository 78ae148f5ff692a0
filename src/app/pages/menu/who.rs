//! Who works: a new name, or one that answered on this tablet before.

use crate::app::hooks::Naming;
use crate::app::parts::{NameField, named};
use crate::app::state::Shop;
use crate::people::Crew;
use crate::record::Journal;
use yew::prelude::*;

pub(super) fn who(
    shop: &Shop,
    person: &str,
    Naming { on_name, said }: &Naming,
    journal: &Journal,
    crew: &Crew,
    hand_over: Callback<MouseEvent>,
) -> Html {
    // Those with a number are asked who they are elsewhere, since they may have a PIN.
    let free = |other: &&str| *other != person && crew.of_journal(other).is_none();
    let others = journal.people().into_iter().filter(free).map(str::to_owned);
    let member = crew.of_journal(person).map(|member| format!("{} ({})", member.name, member.number));
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
                <NameField key={person.to_owned()} label={shop.say("home.name")} name={person.to_owned()} on_name={on_name.clone()} skip=false />
            </div>
            { named(said) }
            <div key="people" class="people">
                { for others.map(other) }
                <button key="hand-over" type="button" class="control" hidden={crew.members().is_empty()} onclick={hand_over}>{ shop.say("people.hand-over") }</button>
            </div>
        </section>
    }
}
