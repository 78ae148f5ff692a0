//! What somebody does with the folder.

use super::Bench;
use super::work::{store, work};
use crate::app::state::{FolderAct, FolderSetup, KeptFolder, Saved};
use crate::device::{Shelf, clock};
use crate::exchange::folder::{Name, Sort, fresh};
use crate::exchange::{Named, OwnSheet, Results, SHEET, read};
use std::rc::Rc;

pub(super) async fn act(bench: Rc<Bench>, what: FolderAct) {
    match what {
        FolderAct::Use(setup) => begin(&bench, *setup),
        FolderAct::Off => {
            let mut engine = bench.engine.borrow_mut();
            engine.rest(None);
            if let Some(kept) = &mut engine.kept {
                kept.on = false;
            }
        }
        FolderAct::Password(password) => {
            bench.engine.borrow_mut().rest(Some(password));
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
        FolderAct::Done(name) => done(&bench, &name).await,
    }
    store(&bench).await;
    bench.tell();
    work(bench).await;
}

/// Nobody is asked about it any more. The file stays known, so that it is not fetched again before the page is loaded anew.
async fn done(bench: &Bench, name: &Name) {
    bench.engine.borrow_mut().offered.retain(|(offered, _)| offered != name);
    drop(bench.store.unshelve(Shelf::Offered, name.as_str()).await);
}

fn hurry(bench: &Bench) {
    if let Some(kept) = &mut bench.engine.borrow_mut().kept {
        kept.folder.hurry();
    }
}

/// Uses the folder as it was set; what is known of it stays where it is the same folder.
fn begin(bench: &Bench, setup: FolderSetup) {
    let mut engine = bench.engine.borrow_mut();
    let before = engine.kept.take();
    let sent = before.as_ref().map_or(0, |kept| kept.sent);
    let same = before.map(|kept| kept.folder).filter(|folder| folder.place() == setup.folder.place());
    let mut folder = same.unwrap_or_else(|| setup.folder.clone());
    folder.take_results(setup.folder.takes_results());
    folder.prove();
    for name in engine.files.texts.keys() {
        folder.add(name.clone());
    }
    let FolderSetup { user, password, rest, until, hands_in, .. } = setup;
    engine.kept = Some(KeptFolder { folder, on: true, user, rest, until, password: None, hands_in, sent });
    engine.rest(Some(password));
}

/// Puts what is new since the last file, or everything, into a file that goes to the folder.
pub(super) async fn hand_in(bench: &Bench, all: bool) {
    let Some(sent) = bench.engine.borrow().kept.as_ref().map(|kept| kept.sent) else { return };
    let own = bench.store.shelf(Shelf::Sheets).await.unwrap_or_default();
    let own: Vec<OwnSheet> = own.iter().filter_map(|(_, text)| read(text.as_bytes(), SHEET).ok()).collect();
    let (text, last) = {
        let record = bench.record.borrow();
        let book = &record.0.book;
        // What is not stored may still get another number.
        if book.saved != Saved::Yes {
            return;
        }
        let journal = &book.journal;
        let Some(new) = fresh(journal, if all { 0 } else { sent }) else { return };
        let people: Vec<Named> = record.1.crew.members().iter().map(Named::from).collect();
        let at = clock::now();
        let results = Results::of(&bench.content.0, &new, &own, people, (&bench.device, &at));
        // What was read can be written.
        let Ok(text) = results.text() else { return };
        (text, new.next_sequence().saturating_sub(1))
    };
    put(bench, Sort::Results, text, Some(last)).await;
}

/// Lays a file into the outbox, in one with the number of the last event that it has.
async fn put(bench: &Bench, sort: Sort, text: String, sent: Option<u64>) {
    let name = Name::of(sort, &text);
    let Some(mut kept) = bench.engine.borrow().kept.clone() else { return };
    kept.folder.add(name.clone());
    kept.sent = sent.unwrap_or(kept.sent).max(kept.sent);
    let stored = bench.store.put_folder(&kept, &[(name.to_string(), text.clone())]).await;
    // What is not stored is handed in the next time.
    if stored.is_ok() {
        let mut engine = bench.engine.borrow_mut();
        engine.files.texts.insert(name.clone(), text);
        if let Some(now) = &mut engine.kept {
            now.folder.add(name);
            now.sent = kept.sent;
        }
    }
}
