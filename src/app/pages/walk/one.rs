//! One walk: worked on its floor until it is handed over, then told. Each decision is stored at once.

use super::floor::Floor;
use super::inspect::Inspect;
use super::report::Report;
use crate::app::hooks::{use_book, use_walk_journal, use_walks, write_inspected};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Keep, Shared, Shop, use_shop};
use crate::device::{clock, page};
use crate::walk::inspect::inspect;
use crate::walk::{Kept, Mode, NotKept, Walk};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct WalkPageProps {
    pub(in crate::app) id: String,
}

#[component]
pub(in crate::app) fn WalkPage(props: &WalkPageProps) -> Html {
    let shop = use_shop();
    let (books, walks) = (use_book(), use_walks());
    let kept = walks.find(&props.id).cloned();
    let first = use_memo((kept.is_some(), props.id.clone()), |_| {
        kept.as_deref().map(|kept| kept.saved.replay(shop.content()).map(Shared::new))
    });
    let now = use_state(|| None::<Shared<Walk>>);
    let waits = use_state(|| None::<Rc<Kept>>);
    let replayed = first.as_ref().as_ref().and_then(|walk| walk.as_ref().ok());
    use_walk_journal(kept.clone(), now.as_ref().or(replayed).cloned());
    let store = use_callback(walks.keep.clone(), {
        let waits = waits.setter();
        move |what: Kept, keep| {
            let waits = waits.clone();
            let kept = Rc::new(what.clone());
            let done = Callback::from(move |stored: bool| waits.set((!stored).then(|| Rc::clone(&kept))));
            keep.emit(Keep { what, done });
        }
    });
    let put = use_callback((kept.clone(), store.clone()), {
        let now = now.setter();
        move |walk: Shared<Walk>, (kept, store)| {
            if let Some(kept) = kept.as_deref() {
                let changed = clock::now();
                store.emit(Kept { changed, saved: walk.saved(), ..kept.clone() });
            }
            now.set(Some(walk));
        }
    });
    let again = use_callback(kept.clone(), {
        let keep = walks.keep.clone();
        move |walk: Shared<Walk>, kept| {
            let Some(kept) = kept.as_deref() else { return };
            let (id, at) = (page::random_name(), clock::now());
            let to = Route::WalkOf { id: id.clone() };
            let done = Callback::from(move |stored: bool| {
                if stored {
                    to.go();
                }
            });
            // What came of it was told: it counts for nothing from there on.
            let taken_over = Some(walk.turns().len());
            let (begun, saved) = (at.clone(), walk.saved());
            let what = Kept { id, begun, changed: at, saved, taken_over, ..kept.clone() };
            keep.emit(Keep { what, done });
        }
    });
    let keep = store.clone();
    let retry = {
        let (store, waits) = (store, waits.clone());
        move |_: MouseEvent| waits.iter().for_each(|kept| store.emit((**kept).clone()))
    };
    let strip = html! {
        <div key="unsaved" class="kraft walk-unsaved" role="alert" hidden={waits.is_none()}>
            <p>{ shop.say("walk.not-saved") }</p>
            <button type="button" class="control" onclick={retry}>{ icon(Picture::Save) }{ shop.say("saved.retry") }</button>
        </div>
    };
    let walk = match (now.as_ref(), first.as_ref()) {
        (Some(walk), _) | (None, Some(Ok(walk))) => walk.clone(),
        (None, Some(Err(why))) => return refused(&shop, why),
        (None, None) => return absent(&shop, walks.loaded),
    };
    let open = kept.as_deref().filter(|kept| kept.saved.mode == Mode::Inspect && !kept.graded);
    if let Some(open) = open {
        let named = open.named.clone();
        let name = {
            let (store, open) = (keep.clone(), open.clone());
            Callback::from(move |named| store.emit(Kept { named, changed: clock::now(), ..open.clone() }))
        };
        let done = {
            let (open, walk, shop) = (open.clone(), walk.clone(), shop.clone());
            Callback::from(move |()| {
                let told = inspect(&walk, &open.named, shop.content());
                write_inspected(&shop, &books, &open, &told);
                keep.emit(Kept { graded: true, changed: clock::now(), ..open.clone() });
            })
        };
        return html! { <Inspect key="inspect" {walk} {strip} {named} {name} {done} /> };
    }
    if walk.is_over() {
        let taken_over = kept.as_deref().is_some_and(|kept| kept.taken_over.is_some());
        html! { <Report key="report" {walk} {strip} {taken_over} {again} /> }
    } else {
        html! { <Floor key="floor" {walk} {strip} {put} /> }
    }
}

/// In place of a walk that is not here, or not yet.
fn absent(shop: &Shop, loaded: bool) -> Html {
    plain(
        shop,
        html! { <p key="said" class="lead" role="status">{ shop.say(if loaded { "walk.gone" } else { "walk.loading" }) }</p> },
    )
}

/// In place of a walk that cannot be walked again.
fn refused(shop: &Shop, why: &NotKept) -> Html {
    let told = shop.text(&format!("walk.refused.{}", why.slug()));
    let place = [("place", why.place())];
    plain(
        shop,
        html! {
            <div key="refused" class="kraft" role="alert">
                <p>{ told }{ " " }{ shop.say_with("walk.refused-at", &place) }</p>
                <p>{ shop.say("walk.refused-now") }</p>
            </div>
        },
    )
}

fn plain(shop: &Shop, inside: Html) -> Html {
    html! {
        <Frame class="sheet" title={shop.say("walk.title")} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])}>
            { inside }
        </Frame>
    }
}
