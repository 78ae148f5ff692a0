//! One request after another, until nothing is left to do now.

use super::setup::refresh;
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
    {
        let mut engine = bench.engine.borrow_mut();
        if engine.working || !engine.setup.on {
            return;
        }
        engine.working = true;
    }
    let may = refresh(&bench).await && bench.engine.borrow().asker().is_some();
    if may && due(&bench) {
        hand_in(&bench, false).await;
    }
    let wake = if may { steps(&bench).await } else { None };
    {
        let mut engine = bench.engine.borrow_mut();
        engine.working = false;
        engine.again_at = wake.unwrap_or(0);
        // A password that rests until a day is looked after though nothing may be sent.
        let ends = engine.setup.password.is_some().then(|| clock::millis().saturating_add(SLEEP_MOST_MS));
        let again = Rc::clone(&bench);
        engine.timer = wake.or(ends).map(|wake| {
            let sleep = wake.saturating_sub(clock::millis()).clamp(SLEEP_LEAST_MS, SLEEP_MOST_MS);
            Timeout::new(u32::try_from(sleep).unwrap_or(u32::MAX), move || spawn_local(work(again)))
        });
    }
    bench.tell();
}

/// Whether a check was finished that is not handed in.
fn due(bench: &Bench) -> bool {
    let engine = bench.engine.borrow();
    let Some(kept) = engine.kept.as_ref().filter(|_| engine.setup.hands_in) else { return false };
    finished(&bench.record.borrow().0.book.journal, kept.sent)
}

/// Gives when to go on; nothing where somebody must do something first.
async fn steps(bench: &Rc<Bench>) -> Option<u64> {
    loop {
        if !carry::online() || !refresh(bench).await {
            return None;
        }
        let (step, authorization) = {
            let mut engine = bench.engine.borrow_mut();
            let authorization = engine.asker().map(|(user, password)| basic(user, password))?;
            let Engine { kept: Some(kept), files, .. } = &mut *engine else { return None };
            (kept.folder.next(clock::millis(), files), authorization)
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
        let arrived: Vec<Name> = news.iter().filter_map(News::arrived).cloned().collect();
        for one in news {
            happened(bench, one).await;
        }
        store(bench, &arrived).await;
    }
}

/// Stores how it stands, and in one with it lets go of the files that arrived. What is not stored is found out again after a
/// restart, since everything may be asked twice.
pub(super) async fn store(bench: &Bench, arrived: &[Name]) {
    let Some(kept) = bench.engine.borrow().kept.clone() else { return };
    let names: Vec<String> = arrived.iter().map(Name::to_string).collect();
    if bench.store.put_folder(&kept, &[], &names).await.is_ok() {
        bench.engine.borrow_mut().files.texts.retain(|name, _| !arrived.contains(name));
    }
}

async fn happened(bench: &Bench, news: News) {
    match news {
        News::Come(name, text) => came(bench, name, text).await,
        News::Proven
        | News::Arrived(_)
        | News::Refused(..)
        | News::Looked(_)
        | News::SetAside(..)
        | News::Stopped(_) => {}
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
        engine.offered.push((name, text.into()));
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
