//! How the folder is used, and what waits, as the database has it: another window may have changed either.

use super::Bench;
use crate::device::{Kept, Shelf, StoreError, clock};
use crate::exchange::folder::{Name, Setup};

/// How often a change is tried anew where another window was quicker.
const TRIES: usize = 3;

/// Changes how the folder is used. What is not stored has not happened.
pub(super) async fn change(bench: &Bench, change: impl Fn(&mut Setup)) {
    for _ in 0..TRIES {
        let Ok(before) = bench.store.kept::<Setup>(Kept::Folder).await else { return };
        let mut now = before.clone();
        change(&mut now);
        match bench.store.swap(Kept::Folder, &before, &now).await {
            Ok(()) => return bench.engine.borrow_mut().adopt(now),
            Err(StoreError::Changed) => {}
            Err(_) => return,
        }
    }
}

/// Takes over what other windows have changed, and lets go of a password whose day is over. Says whether all could be read:
/// else nothing may be sent.
pub(super) async fn refresh(bench: &Bench) -> bool {
    let Ok(setup) = bench.store.kept::<Setup>(Kept::Folder).await else { return false };
    if bench.engine.borrow().setup != setup {
        bench.engine.borrow_mut().adopt(setup);
    }
    if bench.engine.borrow().over() {
        change(bench, |setup| {
            if clock::today().is_some_and(|today| setup.over(today)) {
                setup.password = None;
            }
        })
        .await;
    }
    waiting(bench).await.is_ok()
}

/// What lies on the tablet to be sent is what waits: files that another window added, and none that was erased.
async fn waiting(bench: &Bench) -> Result<(), StoreError> {
    let there = bench.store.names(Shelf::Outbox).await?;
    let there: Vec<Name> = there.iter().filter_map(|name| Name::parse(name)).collect();
    let new = there.iter().any(|name| !bench.engine.borrow().files.texts.contains_key(name));
    let read = if new { bench.store.shelf(Shelf::Outbox).await? } else { Vec::new() };
    let mut engine = bench.engine.borrow_mut();
    engine.files.texts.retain(|name, _| there.contains(name));
    engine.files.texts.extend(read.into_iter().filter_map(|(name, text)| Some((Name::parse(&name)?, text))));
    engine.waits();
    Ok(())
}
