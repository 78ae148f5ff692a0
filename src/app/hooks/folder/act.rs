//! What somebody does with the folder.

use super::Bench;
use super::setup::change;
use super::work::{store, work};
use crate::app::state::{FolderAct, Saved};
use crate::device::{Shelf, clock};
use crate::exchange::folder::{Name, Setup, Sort, fresh, parts};
use crate::exchange::{Named, OwnSheet, Results, SHEET, read};
use crate::record::{Event, Journal};
use std::rc::Rc;

pub(super) async fn act(bench: Rc<Bench>, what: FolderAct) {
    match what {
        FolderAct::Use(setup) => begin(&bench, *setup).await,
        FolderAct::Off => {
            change(&bench, |setup| {
                setup.on = false;
                setup.password = None;
            })
            .await;
        }
        FolderAct::Password(password) => {
            change(&bench, |setup| rest(setup, &password)).await;
            bench.engine.borrow_mut().hold(password);
            hurry(&bench);
        }
        FolderAct::Now => hurry(&bench),
        FolderAct::HandIn(all) => {
            hand_in(&bench, all).await;
            hurry(&bench);
        }
        FolderAct::Share(sort, text) => {
            put(&bench, sort, text, None).await;
            hurry(&bench);
        }
        FolderAct::Again(name) => {
            if let Some(kept) = &mut bench.engine.borrow_mut().kept {
                kept.folder.again(&name);
            }
        }
        FolderAct::Done(name) => done(&bench, name).await,
    }
    store(&bench, &[]).await;
    bench.tell();
    work(bench).await;
}

/// Nobody is asked about it any more, and it is not fetched again.
async fn done(bench: &Bench, name: Name) {
    drop(bench.store.unshelve(Shelf::Offered, name.as_str()).await);
    let mut engine = bench.engine.borrow_mut();
    engine.offered.retain(|(offered, _)| *offered != name);
    if let Some(kept) = &mut engine.kept {
        kept.folder.leave(name);
    }
}

fn hurry(bench: &Bench) {
    if let Some(kept) = &mut bench.engine.borrow_mut().kept {
        kept.folder.hurry();
    }
}

/// Uses the folder as it was set, and tries the connection.
async fn begin(bench: &Bench, setup: Setup) {
    let Setup { password: Some(password), .. } = setup.clone() else { return };
    change(bench, |now| {
        *now = setup.clone();
        rest(now, &password);
    })
    .await;
    let mut engine = bench.engine.borrow_mut();
    if !engine.setup.on {
        return;
    }
    engine.hold(password);
    engine.waits();
    if let Some(kept) = &mut engine.kept {
        kept.folder.prove();
    }
}

/// Lets a password rest in a setup, where it rests there today.
fn rest(setup: &mut Setup, password: &str) {
    let rests = clock::today().is_some_and(|today| setup.rests(today));
    setup.password = rests.then(|| password.to_owned());
}

/// Puts what is new since the last file, or everything, into a file that goes to the folder.
pub(super) async fn hand_in(bench: &Bench, all: bool) {
    let Some(sent) = bench.engine.borrow().kept.as_ref().map(|kept| kept.sent) else { return };
    let own = bench.store.shelf(Shelf::Sheets).await.unwrap_or_default();
    let own: Vec<OwnSheet> = own.iter().filter_map(|(_, text)| read(text.as_bytes(), SHEET).ok()).collect();
    let files = {
        let record = bench.record.borrow();
        let book = &record.0.book;
        // What is not stored may still get another number.
        if book.saved != Saved::Yes {
            return;
        }
        let people: Vec<Named> = record.1.crew.members().iter().map(Named::from).collect();
        let at = clock::now();
        let text = |events: &[Event]| {
            let (events, people) = (Journal::new(events.to_vec()), people.clone());
            // What was read can be written.
            Results::of(&bench.content.0, &events, &own, people, (&bench.device, &at)).text().ok()
        };
        parts(&fresh(&book.journal, if all { 0 } else { sent }), Sort::Results.most(), text)
    };
    for file in files {
        if !put(bench, Sort::Results, file.text, Some(file.last)).await {
            return;
        }
    }
}

/// Lays a file into the outbox, in one with the number of the last event that it has. Says whether it was stored; what was not
/// is handed in the next time.
async fn put(bench: &Bench, sort: Sort, text: String, sent: Option<u64>) -> bool {
    let name = Name::of(sort, &text);
    let Some(mut kept) = bench.engine.borrow().kept.clone() else { return false };
    kept.folder.add(name.clone());
    kept.sent = sent.unwrap_or(kept.sent).max(kept.sent);
    let stored = bench.store.put_folder(&kept, &[(name.to_string(), text.clone())], &[]).await.is_ok();
    if stored {
        let mut engine = bench.engine.borrow_mut();
        engine.files.texts.insert(name.clone(), text);
        if let Some(now) = &mut engine.kept {
            now.folder.add(name);
            now.sent = kept.sent;
        }
    }
    stored
}
