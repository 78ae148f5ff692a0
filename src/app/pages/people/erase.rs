//! Erases an apprentice from this tablet, after saying what goes and what stays.

use crate::app::hooks::{use_book, use_people, use_settings, use_watching};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Keep, Settings, WatchingChange, use_shop};
use crate::people::{Member, erased};
use crate::record::Stamp;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct EraseProps {
    pub(super) member: Member,
}

#[component]
pub(super) fn Erase(props: &EraseProps) -> Html {
    let shop = use_shop();
    let (people, books, settings) = (use_people(), use_book(), use_settings());
    let watching = use_watching();
    let sure = use_state(|| false);
    let said = use_state(AttrValue::default);
    let on_sure = {
        let sure = sure.clone();
        Callback::from(move |_: Event| sure.set(!*sure))
    };
    let on_erase = {
        let (member, shop, said, sure) = (props.member.clone(), shop.clone(), said.clone(), sure.clone());
        Callback::from(move |_: MouseEvent| {
            if !*sure {
                return said.set(shop.say("people.erase-sure-first"));
            }
            let journal = books.book.journal.clone();
            let stamp = Stamp { sequence: journal.next_sequence(), ..shop.stamp("") };
            let journal_name = member.journal.clone();
            let what = erased(&journal, &journal_name, stamp);
            let Ok(crew) = people.crew.without(member.number.text()) else { return };
            let (people, settings, member) = (people.clone(), settings.clone(), member.clone());
            let watching = watching.clone();
            let (said, shop) = (said.clone(), shop.clone());
            let failed = {
                let (said, shop) = (said.clone(), shop.clone());
                move || said.set(shop.say("people.not-stored"))
            };
            let done = Callback::from(move |stored: bool| {
                if !stored {
                    return failed();
                }
                let begun = watching.begun.iter().filter(|one| one.subject == member.number.text());
                begun.for_each(|one| watching.change.emit(WatchingChange::LetGo(one.clone())));
                let mut without = Settings::clone(&settings.now);
                without.languages.remove(&member.journal);
                if without.person == member.journal {
                    without.person.clear();
                }
                settings.change.emit(without);
                let failed = failed.clone();
                let gone =
                    Callback::from(move |stored: bool| if stored { Route::People.go() } else { failed() });
                people.put.emit(Keep { what: crew.clone(), done: gone });
            });
            books.erase.emit((journal_name.clone(), Keep { what, done }));
        })
    };
    html! {
        <section class="paper form">
            <h2>{ shop.say("people.erase") }</h2>
            <p>{ shop.say("people.erase-why") }</p>
            <p>{ shop.say("people.erase-stays") }</p>
            <label class={classes!("unit", sure.then_some("picked"))}>
                <input type="checkbox" checked={*sure} onchange={on_sure} /><span>{ shop.say_with("people.erase-sure", &[("name", props.member.name.clone())]) }</span>
            </label>
            <button type="button" class="control" onclick={on_erase}>{ icon(Picture::Delete) }{ shop.say("people.erase-go") }</button>
            <p class="wrong" role="alert">{ (*said).clone() }</p>
        </section>
    }
}
