//! One request after another, until nothing is left to do now.

use super::{Bench, Engine};
use crate::app::hooks::folder::act::hand_in;
use crate::content::Content;
use crate::device::{Shelf, carry, clock, page};
use crate::exchange::folder::{Aside, Name, News, Sort, Step, basic, finished};
use crate::exchange::set::{Set, Withdrawal};
use crate::exchange::{OwnSheet, Refused, Results, SHEET, read};
use gloo::timers::callback::Timeout;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// The longest sleep, milliseconds: a clock that was set meanwhile is noticed after it.
const SLEEP_MOST_MS: u64 = 60_000;
/// The least sleep, milliseconds.
const SLEEP_LEAST_MS: u64 = 100;

/// Works until nothing is left to do now, and wakes by itself when there is. Where it works already nothing is done.
pub(super) async fn work(bench: Rc<Bench>) {
    if !bench.engine.borrow().ready() {
        return;
    }
    bench.engine.borrow_mut().working = true;
    if due(&bench) {
        hand_in(&bench, false).await;
    }
    let wake = steps(&bench).await;
    {
        let mut engine = bench.engine.borrow_mut();
        engine.working = false;
        engine.again_at = wake.unwrap_or(0);
        let again = Rc::clone(&bench);
        engine.timer = wake.map(|wake| {
            let sleep = wake.saturating_sub(clock::millis()).clamp(SLEEP_LEAST_MS, SLEEP_MOST_MS);
            Timeout::new(u32::try_from(sleep).unwrap_or(u32::MAX), move || spawn_local(work(again)))
        });
    }
    bench.tell();
}

/// Whether a check was finished that is not handed in.
fn due(bench: &Bench) -> bool {
    let engine = bench.engine.borrow();
    let Some(kept) = engine.kept.as_ref().filter(|kept| kept.hands_in) else { return false };
    finished(&bench.record.borrow().0.book.journal, kept.sent)
}

/// Gives when to go on; nothing where somebody must do something first.
async fn steps(bench: &Rc<Bench>) -> Option<u64> {
    loop {
        if !carry::online() {
            return None;
        }
        let (step, authorization) = {
            let mut engine = bench.engine.borrow_mut();
            let Engine { kept, files, password, locked, .. } = &mut *engine;
            let (Some(kept), Some(password), false) =
                (kept.as_mut().filter(|kept| kept.on), password, *locked)
            else {
                return None;
            };
            (kept.folder.next(clock::millis(), files), basic(&kept.user, password))
        };
        let news = match step {
            Step::Ask(ask) => {
                bench.tell();
                let heard = carry::carry(&ask, &authorization).await;
                let luck = page::random_bytes().map_or(0, u64::from_le_bytes);
                let mut engine = bench.engine.borrow_mut();
                let Engine { kept: Some(kept), files, .. } = &mut *engine else { return None };
                kept.folder.heard(clock::millis(), luck, heard, files)
            }
            Step::Told(news) => vec![news],
            Step::Wait(until) => return Some(until),
            Step::Stopped | Step::Busy => return None,
        };
        for one in news {
            happened(bench, one).await;
        }
        store(bench).await;
    }
}

/// Stores how it stands. What is not stored is found out again after a restart, since everything may be asked twice.
pub(super) async fn store(bench: &Bench) {
    let kept = bench.engine.borrow().kept.clone();
    if let Some(kept) = kept {
        drop(bench.store.put_folder(&kept, &[]).await);
    }
}

async fn happened(bench: &Bench, news: News) {
    match news {
        News::Arrived(name) => {
            bench.engine.borrow_mut().files.texts.remove(&name);
            // One that is not taken from the shelf is sent again after a restart, and is there already.
            drop(bench.store.unshelve(Shelf::Outbox, name.as_str()).await);
        }
        News::Come(name, text) => came(bench, name, text).await,
        News::Proven | News::Refused(..) | News::Looked(_) | News::SetAside(..) | News::Stopped(_) => {}
    }
}

/// A file came whole: its reader checks it, and only then it is kept.
async fn came(bench: &Bench, name: Name, text: String) {
    let shelf = if name.sort() == Sort::Results { Shelf::Results } else { Shelf::Offered };
    if let Err(refused) = read_by(&bench.content.0, name.sort(), text.as_bytes()) {
        if let Some(kept) = &mut bench.engine.borrow_mut().kept {
            kept.folder.set_aside(name, Aside::from(&refused));
        }
        return;
    }
    // What is not stored is fetched again.
    if bench.store.shelve(shelf, &[(name.to_string(), text.clone())]).await.is_err() {
        return;
    }
    let mut engine = bench.engine.borrow_mut();
    engine.files.here.insert(name.clone());
    if shelf == Shelf::Offered {
        engine.offered.push((name, text));
    }
}

/// Reads a file by what its name says that it is.
fn read_by(content: &Content, sort: Sort, bytes: &[u8]) -> Result<(), Refused> {
    match sort {
        Sort::Mark => Ok(()),
        Sort::Results => Results::read(bytes).map(drop),
        Sort::Set => Set::read(bytes, content).map(drop),
        Sort::Withdrawal => Withdrawal::read(bytes).map(drop),
        Sort::Sheet => read::<OwnSheet>(bytes, SHEET).and_then(|own| own.sheet(content).map(drop)),
    }
}
