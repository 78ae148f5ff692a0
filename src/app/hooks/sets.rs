//! Keeps the scenario sets of this tablet and the one that is being built: what is not stored is not there.

use super::draft::{DRAFT, drafted, use_edit};
use crate::app::state::{ContentContext, Keep, KeptSet, Origin, SetFile, SetsContext, SheetsContext};
use crate::content::Content;
use crate::device::{Shelf, Shown, Store};
use crate::exchange::CarriedSheet;
use crate::exchange::content_name;
use crate::exchange::set::{SET, Set, WITHDRAWAL, Withdrawal};
use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// The sets that files hold, and how many files hold what this program cannot use: those are left out and stay.
fn held(content: &Content, files: &[(String, String)]) -> (Vec<KeptSet>, usize) {
    let read = |(name, text): &(String, String)| {
        let set = Set::read(text.as_bytes(), content).ok()?;
        let (origin, _) = Origin::of_file(name);
        Some(KeptSet { id: set.id(), set: Rc::new(set), origin, withdrawn: None })
    };
    let keyed = files
        .iter()
        .filter_map(read)
        .map(|one| ((Reverse(one.set.at.clone()), one.id.clone(), one.origin), one));
    let keyed: Vec<_> = keyed.collect();
    let withdrawals: Vec<_> =
        files.iter().filter_map(|(_, text)| Withdrawal::read(text.as_bytes()).ok()).map(Rc::new).collect();
    let drafts = files.iter().filter(|(name, _)| name == DRAFT).count();
    let unread = files.len().saturating_sub(keyed.len() + withdrawals.len() + drafts);
    let mut all: Vec<KeptSet> = keyed.into_iter().collect::<BTreeMap<_, _>>().into_values().collect();
    // One that was made here and came back is the one that was made here.
    all.dedup_by(|later, first| later.id == first.id);
    for withdrawal in withdrawals {
        for one in all.iter_mut().filter(|one| withdrawal.withdraws(&one.id, &one.set)) {
            one.withdrawn = Some(Rc::clone(&withdrawal));
        }
    }
    all.extend(KeptSet::ready(content));
    (all, unread)
}

/// Keeps the sets that lie on the shelf.
#[hook]
pub(in crate::app) fn use_kept_sets(
    store: &Store,
    content: &ContentContext,
    sheets: &SheetsContext,
) -> SetsContext {
    let all = use_state(|| Rc::new((KeptSet::ready(&content.0), 0)));
    let draft = use_state(|| None::<Rc<Set>>);
    let loaded = use_state(|| false);
    // Another window may have made sets too: after each change all are read anew.
    let again = use_callback((store.clone(), content.clone()), {
        let all = all.setter();
        move |done: Callback<bool>, (store, content)| {
            let (store, content, all) = (store.clone(), content.clone(), all.clone());
            spawn_local(async move {
                if let Ok(files) = store.shelf(Shelf::Sets).await {
                    all.set(Rc::new(held(&content.0, &files)));
                }
                done.emit(true);
            });
        }
    });
    use_effect_with((), {
        let (store, content) = (store.clone(), content.clone());
        let (all, draft, loaded) = (all.setter(), draft.setter(), loaded.setter());
        move |()| {
            spawn_local(async move {
                let read = store.shelf(Shelf::Sets).await;
                let files = read.as_deref().unwrap_or_default();
                // What cannot be read is not there; those that ship are. Where the store itself cannot be read nobody knows.
                all.set(Rc::new(held(&content.0, files)));
                draft.set(drafted(files));
                loaded.set(read.is_ok());
            });
        }
    });
    // Another window that was in front may have made or taken some, and sheets of theirs.
    use_effect_with((again.clone(), sheets.reread.clone()), |(again, reread)| {
        let (again, reread) = (again.clone(), reread.clone());
        let shown = Shown::tell(move || {
            let again = again.clone();
            reread.emit(Callback::from(move |_| again.emit(Callback::noop())));
        });
        move || drop(shown)
    });
    let with_sheet = (store.clone(), again, sheets.reread.clone());
    let keep = use_callback(with_sheet, |Keep { what, done }: Keep<SetFile>, (store, again, reread)| {
        let (store, again, reread) = (store.clone(), again.clone(), reread.clone());
        spawn_local(async move {
            match put(&store, &what).await {
                // Its answers stand on its sheet: that is to be known wherever they are looked at.
                Some(()) if on_own_sheet(&what) => {
                    reread.emit(Callback::from(move |_| again.emit(done.clone())));
                }
                Some(()) => again.emit(done),
                None => done.emit(false),
            }
        });
    });
    let edit = use_edit(store, Shelf::Sets, draft.setter());
    let (all, unread) = (Rc::new(all.0.clone()), all.1);
    SetsContext { loaded: *loaded, all, unread, draft: (*draft).clone(), keep, edit }
}

/// Whether a file brings a sheet of the shop's own.
fn on_own_sheet(file: &SetFile) -> bool {
    matches!(file, SetFile::Set(set, _) if matches!(set.sheet, CarriedSheet::Own(_)))
}

/// Stores a file of the shelf, and before a set its own sheet.
async fn put(store: &Store, file: &SetFile) -> Option<()> {
    let (name, text) = match file {
        SetFile::Set(set, origin) => {
            if let CarriedSheet::Own(own) = &set.sheet {
                store.shelve_new(Shelf::Sheets, &own.slug(), &own.text().ok()?).await.ok()?;
            }
            let text = set.write().ok()?;
            (origin.file(content_name(SET, text.as_bytes())), text)
        }
        SetFile::Withdrawal(withdrawal) => {
            let text = withdrawal.write().ok()?;
            (content_name(WITHDRAWAL, text.as_bytes()), text)
        }
    };
    store.shelve(Shelf::Sets, &[(name, text)]).await.ok()
}
