//! Whose answers a set gets, where nobody is named: a name or a shop number, and it begins.

use super::begin::ended_by;
use super::taken::stand;
use crate::app::hooks::{use_book, use_lock, use_people, use_settings};
use crate::app::parts::NameField;
use crate::app::state::{KeptSet, Settings, Shop, use_shop};
use crate::learn::check::Stand;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct NamedProps {
    pub(super) kept: KeptSet,
    /// Begins the set as that shop has it, for who works there.
    pub(super) begin: Callback<Shop>,
}

#[component]
pub(super) fn Named(props: &NamedProps) -> Html {
    let shop = use_shop();
    let settings = use_settings();
    let crew = use_people().crew;
    let lock = use_lock();
    let journal = use_book().book.journal.clone();
    let on_name = {
        let (shop, kept, begin) = (shop.clone(), props.kept.clone(), props.begin.clone());
        Callback::from(move |typed: String| {
            let by_name = || crew.named(&typed).next();
            let member = crew.member(&typed).or_else(|| crew.of_journal(&typed)).or_else(by_name);
            // Whoever has a PIN is asked for it, and whoever shares the name that was typed, which of them they are.
            let shared = crew.named(&typed).nth(1).is_some();
            if shared || member.is_some_and(|one| one.pin.is_some()) {
                return lock.set.emit(true);
            }
            let person = member.map_or_else(|| typed.clone(), |one| one.journal.clone());
            let now = Settings { person, name_asked: true, ..(*settings.now).clone() };
            settings.change.emit(now.clone());
            let named = shop.set_as(now);
            // Whoever has begun it before, or would end a check with it, is told so first.
            let new = stand(&named, &journal, &kept) == Stand::New;
            if new && ended_by(&named, &journal, &kept).is_empty() {
                begin.emit(named);
            }
        })
    };
    html! {
        <div class="kraft">
            <p>{ shop.say("sets.take.whose") }</p>
            <NameField label={shop.say("sets.take.name")} name="" {on_name} skip=false next="sets.take.name-and-begin" />
        </div>
    }
}
