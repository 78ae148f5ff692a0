//! Works the shop's folder while the page is open: sends what waits and fetches what is new, one request after another and
//! beside everything else. What is not stored has not happened.

mod act;
mod engine;
mod setup;
mod work;

use crate::app::state::{BookContext, ContentContext, FolderAct, FolderContext, FolderView, PeopleContext};
use crate::device::{Store, rest};
use act::act;
use engine::Engine;
use gloo::events::EventListener;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use work::work;
use yew::prelude::*;

/// What the work needs of the rest of the app.
struct Bench {
    engine: RefCell<Engine>,
    store: Store,
    content: ContentContext,
    show: UseStateSetter<Rc<FolderView>>,
    /// Journal and people as they are now.
    record: RefCell<(BookContext, PeopleContext)>,
    /// Name of the tablet.
    device: String,
}

impl Bench {
    /// Shows how it stands.
    fn tell(&self) {
        self.show.set(Rc::new(self.engine.borrow().view()));
    }
}

/// Keeps and works the folder. Nothing is sent while the tablet is locked.
#[hook]
pub(in crate::app) fn use_kept_folder(
    store: &Store,
    content: &ContentContext,
    record: (&BookContext, &PeopleContext),
    device: &str,
    locked: bool,
) -> FolderContext {
    let view = use_state(|| Rc::new(FolderView::default()));
    let bench = use_memo((), |()| Bench {
        engine: RefCell::new(Engine::default()),
        store: store.clone(),
        content: content.clone(),
        show: view.setter(),
        record: RefCell::new((record.0.clone(), record.1.clone())),
        device: device.to_owned(),
    });
    bench.record.replace((record.0.clone(), record.1.clone()));
    bench.engine.borrow_mut().locked = locked;
    use_effect_with((), {
        let bench = Rc::clone(&bench);
        move |()| {
            spawn_local({
                let bench = Rc::clone(&bench);
                async move {
                    Engine::load(&bench).await;
                    bench.tell();
                    work(bench).await;
                }
            });
            let back = EventListener::new(&gloo::utils::window(), "online", move |_| {
                go_on(Rc::clone(&bench));
            });
            move || drop(back)
        }
    });
    // Whatever was stored may be handed in, and whoever unlocks lets the work go on.
    let book = &record.0.book;
    use_effect_with((book.journal.next_sequence(), book.saved, locked), {
        let bench = Rc::clone(&bench);
        move |_| go_on(bench)
    });
    let act = use_callback((), move |what: FolderAct, ()| spawn_local(act(Rc::clone(&bench), what)));
    FolderContext { view: (*view).clone(), act }
}

/// Lets the work go on, once the part of the program is there that does it.
fn go_on(bench: Rc<Bench>) {
    spawn_local(async move {
        rest::there().await;
        work(bench).await;
    });
}
