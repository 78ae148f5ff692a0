//! Holds what is kept, and draws the screens round it.

use super::hooks::{
    Around, Keeper, use_keeper, use_kept_air, use_kept_crew, use_kept_folder, use_kept_front, use_kept_keys,
    use_kept_lock, use_kept_people, use_kept_sets, use_kept_sheets, use_kept_signed, use_kept_stricter,
    use_kept_walks, use_kept_watching, use_route, use_shop_content,
};
use super::pages;
use super::route::Route;
use super::screen::screen;
use super::start::Start;
use super::state::{Everything, Light, Settings, Shared, Unlocked};
use crate::device::page;
use crate::learn::Front;
use crate::rules::term::Term;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct RootProps {
    pub(super) start: Rc<Start>,
}

impl PartialEq for RootProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.start, &other.start)
    }
}

#[component]
pub(super) fn Root(props: &RootProps) -> Html {
    let start = &props.start;
    let Keeper { settings, book, desk } =
        use_keeper(&start.store, &start.content, &start.loaded, start.journal.as_ref(), &start.first);
    // Before anything is drawn, since dates are written in it.
    page::set_language(settings.now.speaks());
    let people = use_kept_people(&start.store, &start.loaded);
    let keys = use_kept_keys(&start.store, &start.loaded);
    let signed = use_kept_signed(&start.store, &start.loaded);
    let stricter = use_kept_stricter(&start.store, &start.loaded);
    let air = use_kept_air(&start.store, &start.loaded);
    let sheets = use_kept_sheets(&start.store, &start.loaded.sheets);
    let content = use_shop_content(&start.content, &stricter, &sheets);
    let sets = use_kept_sets(&start.store, &start.content, &sheets);
    let walks = use_kept_walks(&start.store);
    let watching = use_kept_watching(&start.store, &start.loaded);
    let crew = use_kept_crew(&Around {
        store: &start.store,
        content: &content,
        settings: &settings.now,
        book: &book,
        people: &people,
        signed: &signed,
    });
    let asks_pin = people.crew.of_journal(&settings.now.person).is_some_and(|one| one.pin.is_some());
    let lock = use_kept_lock(asks_pin, &keys.set_open);
    let device = &settings.now.device;
    // Of a journal that is still being read nothing is handed in.
    let rests = lock.locked || !book.book.read;
    let folder = use_kept_folder(&start.store, &start.content, (&book, &people), device, rests);
    use_kept_front(&start.store, &content, &settings.now, &book);
    let route = use_route();
    use_key_shut_at_cards(&route, &keys.set_open);
    use_marked_page(&settings.now);
    let shown = if lock.locked {
        html! { <pages::Who key="who" /> }
    } else if book.book.read {
        screen(route, desk.draft.as_ref().map(|draft| draft.card.sheet.slug.clone()))
    } else {
        let front = start.front.clone().filter(|front| front.is_of(&settings.now.person));
        before_read(&route, front)
    };
    let shown = provided(Everything::of(start.store.clone()), shown);
    let shown = provided(watching, shown);
    let shown = provided(walks, shown);
    let shown = provided(sets, shown);
    let shown = provided(folder, shown);
    let shown = provided(crew, shown);
    let shown = provided(lock, shown);
    let shown = provided(air, shown);
    let shown = provided(sheets, shown);
    let shown = provided(stricter, shown);
    let shown = provided(signed, shown);
    let shown = provided(keys, shown);
    let shown = provided(people, shown);
    let shown = provided(desk, shown);
    let shown = provided(book, shown);
    let shown = provided(settings, shown);
    provided(content, shown)
}

/// What is seen before the journal is read: of the first screen what is kept of it.
fn before_read(route: &Route, front: Option<Shared<Front>>) -> Html {
    match front.filter(|_| *route == Route::Home) {
        Some(front) => html! { <pages::Home key="home" front={Some(front)} /> },
        None => html! { <pages::Reading key="reading" /> },
    }
}

/// Cards are for whoever learns: an assessor's key does not stay open in their hands.
#[hook]
fn use_key_shut_at_cards(route: &Route, set_open: &Callback<Option<Unlocked>>) {
    let cards = matches!(
        route,
        Route::Practise
            | Route::Sitting { .. }
            | Route::SittingSheet { .. }
            | Route::TakeSet { .. }
            | Route::TakeSetSheet { .. }
            | Route::WalkOf { .. }
            | Route::SprayOf { .. }
    );
    use_effect_with((cards, set_open.clone()), |(cards, set_open)| {
        if *cards {
            set_open.emit(None);
        }
    });
}

/// The page is as light as it is set, and its controls stand at the hand that is.
#[hook]
fn use_marked_page(settings: &Rc<Settings>) {
    use_effect_with(Rc::clone(settings), |settings| {
        let light = Some(settings.light).filter(|light| *light != Light::Auto);
        page::mark_root("light", light.map(Term::slug));
        page::mark_root("hand", settings.left_hand.then_some("left"));
    });
}

/// What stands inside sees the context.
fn provided<T: Clone + PartialEq + 'static>(context: T, inside: Html) -> Html {
    html! { <ContextProvider<T> {context}>{ inside }</ContextProvider<T>> }
}
