//! One walk: worked on its floor until it is handed over, then told. Each decision is stored at once.

use super::floor::Floor;
use super::inspect::Inspect;
use super::keeping::{Trouble, use_keeping};
use super::report::Report;
use crate::app::hooks::{use_inspected_journal, use_walk_journal, use_walks};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Onward, Shared, Shop, use_shop};
use crate::device::{clock, page};
use crate::walk::inspect::{Inspected, inspect};
use crate::walk::window::Became;
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
    let walks = use_walks();
    let kept = walks.find(&props.id).cloned();
    let (store, trouble) = use_keeping(kept.clone());
    let first = use_memo((kept.is_some(), props.id.clone()), |_| {
        kept.as_deref().map(|kept| kept.saved.replay(shop.content()).map(Shared::new))
    });
    let now = use_state(|| None::<Shared<Walk>>);
    // What another window has stored is shown instead of what was done here.
    let shown = use_state(|| 0_u32);
    use_effect_with(trouble.clone(), {
        let (shop, now, shown) = (shop.clone(), now.setter(), shown.clone());
        move |trouble: &Option<Trouble>| {
            let Some(Trouble::Overtaken(stored)) = trouble else { return };
            now.set(
                stored.as_deref().and_then(|kept| kept.saved.replay(shop.content()).ok()).map(Shared::new),
            );
            shown.set(*shown + 1);
        }
    });
    // What is not stored is not written down either: another window may have decided otherwise.
    let replayed = first.as_ref().as_ref().and_then(|walk| walk.as_ref().ok());
    let is_stored = |walk: &&Shared<Walk>| kept.as_deref().is_some_and(|kept| kept.saved == walk.saved());
    use_walk_journal(kept.clone(), now.as_ref().or(replayed).filter(is_stored).cloned());
    let graded = use_inspected_journal(kept.clone());
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
    let again = use_again(kept.clone());
    let strip = strip(&shop, trouble.as_ref(), &store);
    let walk = match (now.as_ref(), first.as_ref()) {
        (Some(walk), _) | (None, Some(Ok(walk))) => walk.clone(),
        (None, Some(Err(why))) => return refused(&shop, why),
        (None, None) => return absent(&shop, walks.loaded),
    };
    let open = kept.as_deref().filter(|kept| kept.saved.mode == Mode::Inspect && !kept.graded);
    if let Some(open) = open {
        return inspecting(&shop, open, walk, strip, &store, &graded);
    }
    if walk.is_over() {
        let taken_over = kept.as_deref().is_some_and(|kept| kept.taken_over.is_some());
        html! { <Report key="report" {walk} {strip} {taken_over} {again} out={hand_out(&shop, &props.id)} /> }
    } else {
        html! { <Floor key={format!("floor-{}", *shown)} {walk} {strip} {put} /> }
    }
}

/// Begins another try from what a walk was, and leads there once it is stored.
#[hook]
fn use_again(kept: Option<Rc<Kept>>) -> Callback<Shared<Walk>> {
    let keep = use_walks().keep;
    use_callback((kept, keep), |walk: Shared<Walk>, (kept, keep)| {
        let Some(kept) = kept.as_deref() else { return };
        let (id, at) = (page::random_name(), clock::now());
        let to = Route::WalkOf { id: id.clone() };
        let done = Callback::from(move |became: Became| {
            if became == Became::Stored {
                to.go();
            }
        });
        keep.emit(Onward { from: None, to: Rc::new(kept.another_try(&walk, id, at)), done });
    })
}

/// Somebody else's walk, of which the mistakes are still to be named: each is stored, and what came of it once all are.
fn inspecting(
    shop: &Shop,
    open: &Kept,
    walk: Shared<Walk>,
    strip: Html,
    store: &Callback<Kept>,
    graded: &Callback<(Kept, Inspected)>,
) -> Html {
    let kept = open.clone();
    let name = store.reform(move |named| Kept { named, changed: clock::now(), ..kept.clone() });
    let done = {
        let (open, walk, shop) = (open.clone(), walk.clone(), shop.clone());
        let (store, graded) = (store.clone(), graded.clone());
        Callback::from(move |()| {
            let told = inspect(&walk, &open.named, shop.content());
            let to = Kept { graded: true, changed: clock::now(), ..open.clone() };
            graded.emit((to.clone(), told));
            store.emit(to);
        })
    };
    html! { <Inspect key="inspect" {walk} {strip} named={open.named.clone()} {name} {done} /> }
}

/// The way to handing a walk out.
pub(super) fn hand_out(shop: &Shop, id: &str) -> Html {
    let to = Route::WalkOut { id: id.to_owned() };
    html! { <a key="out" href={to.address()} class="control">{ icon(Picture::Up) }{ shop.say("walk-file.hand-out") }</a> }
}

/// What is said where a decision was not simply stored.
fn strip(shop: &Shop, trouble: Option<&Trouble>, store: &Callback<Kept>) -> Html {
    let waits = match trouble {
        Some(Trouble::Waits(kept)) => Some(Rc::clone(kept)),
        _ => None,
    };
    let overtaken = matches!(trouble, Some(Trouble::Overtaken(_)));
    let hidden = waits.is_none();
    let retry = {
        let store = store.clone();
        move |_: MouseEvent| waits.iter().for_each(|kept| store.emit((**kept).clone()))
    };
    html! {
        <>
            <div key="unsaved" class="kraft walk-unsaved" role="alert" {hidden}>
                <p>{ shop.say("walk.not-saved") }</p>
                <button type="button" class="control" onclick={retry}>{ icon(Picture::Save) }{ shop.say("saved.retry") }</button>
            </div>
            <p key="overtaken" class="kraft walk-unsaved" role="alert" hidden={!overtaken}>{ if overtaken { shop.say("walk.overtaken") } else { AttrValue::default() } }</p>
        </>
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
