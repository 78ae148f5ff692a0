//! The folder in memory: how it stands, the password, the files of this tablet.

use super::Bench;
use crate::app::state::{FolderView, KeptFolder, Rest};
use crate::device::{Shelf, clock, session};
use crate::exchange::folder::{Name, Shelves, Sort, State};
use gloo::timers::callback::Timeout;
use std::collections::{BTreeMap, BTreeSet};

/// Where the password rests until the window is closed.
const SESSION: &str = "stepboard-folder";
/// Begins the name of a set that was made here.
const MADE: &str = "made-";

/// The folder in memory.
#[derive(Debug, Default)]
pub(super) struct Engine {
    pub(super) loaded: bool,
    pub(super) kept: Option<KeptFolder>,
    pub(super) password: Option<String>,
    pub(super) files: Files,
    pub(super) offered: Vec<(Name, String)>,
    pub(super) locked: bool,
    pub(super) working: bool,
    /// When the next try is made.
    pub(super) again_at: u64,
    /// Wakes the work; it ends with the value.
    pub(super) timer: Option<Timeout>,
}

/// The files of this tablet.
#[derive(Debug, Default)]
pub(super) struct Files {
    /// Those that go to the folder.
    pub(super) texts: BTreeMap<Name, String>,
    /// Those of the folder that are here.
    pub(super) here: BTreeSet<Name>,
}

impl Shelves for Files {
    fn text(&self, name: &Name) -> Option<String> {
        self.texts.get(name).cloned()
    }

    fn has(&self, name: &Name) -> bool {
        self.here.contains(name)
    }
}

impl Engine {
    /// Reads what is stored. A shelf that cannot be read is empty here and stays as it is.
    pub(super) async fn load(bench: &Bench) {
        let store = &bench.store;
        let kept = store.folder::<KeptFolder>().await.ok().flatten();
        let outbox = store.shelf(Shelf::Outbox).await.unwrap_or_default();
        let offered = store.shelf(Shelf::Offered).await.unwrap_or_default();
        let results = store.shelf(Shelf::Results).await.unwrap_or_default();
        let sets = store.shelf(Shelf::Sets).await.unwrap_or_default();
        let sheets = store.shelf(Shelf::Sheets).await.unwrap_or_default();
        let named = |(name, text): (String, String)| Some((Name::parse(&name)?, text));
        let mut engine = bench.engine.borrow_mut();
        engine.loaded = true;
        engine.files.texts = outbox.into_iter().filter_map(named).collect();
        engine.offered = offered.into_iter().filter_map(named).collect();
        let name = |name: &str| Name::parse(name.strip_prefix(MADE).unwrap_or(name));
        let mut here: BTreeSet<Name> = results.iter().chain(&sets).filter_map(|(of, _)| name(of)).collect();
        here.extend(sheets.iter().map(|(_, text)| Name::of(Sort::Sheet, text)));
        here.extend(engine.offered.iter().map(|(name, _)| name.clone()));
        engine.files.here = here;
        engine.kept = kept;
        engine.find_password();
        let Engine { kept: Some(kept), files, .. } = &mut *engine else { return };
        // A file whose state was not stored any more waits.
        for name in files.texts.keys() {
            kept.folder.add(name.clone());
        }
    }

    /// Takes the password from where it rests, or lets go of it after its day.
    fn find_password(&mut self) {
        let Some(kept) = &mut self.kept else { return };
        let today = clock::today().map(|day| day.to_string()).unwrap_or_default();
        if kept.until < today {
            kept.password = None;
        }
        self.password = match kept.rest {
            Rest::Page => None,
            Rest::Session => session::get(SESSION),
            Rest::Day => kept.password.clone(),
        };
    }

    /// Lays the password where it is to rest.
    pub(super) fn rest(&mut self, password: Option<String>) {
        let Some(kept) = &mut self.kept else { return };
        session::set(SESSION, password.as_deref().filter(|_| kept.rest == Rest::Session));
        kept.password = password.clone().filter(|_| kept.rest == Rest::Day);
        self.password = password;
    }

    /// Whether something may be sent.
    pub(super) fn ready(&self) -> bool {
        !self.locked
            && !self.working
            && self.password.is_some()
            && self.kept.as_ref().is_some_and(|kept| kept.on)
    }

    pub(super) fn view(&self) -> FolderView {
        let Some(kept) = &self.kept else {
            return FolderView { loaded: self.loaded, ..FolderView::default() };
        };
        let folder = &kept.folder;
        let file = |(name, filed): (&Name, &_)| (name.clone(), *filed);
        let mut files: Vec<_> = folder.outbox().files().map(file).collect();
        files.sort_by_key(|(_, filed)| match filed.state {
            State::Refused(_) => (0, 0),
            State::OnItsWay => (1, 0),
            State::Waits => (2, 0),
            // The last one first.
            State::Arrived(at) => (3, u64::MAX - at),
        });
        FolderView {
            loaded: self.loaded,
            on: kept.on,
            open: self.password.is_some(),
            working: self.working,
            place: folder.place().as_str().to_owned(),
            user: kept.user.clone(),
            rest: Some(kept.rest),
            until: kept.until.clone(),
            hands_in: kept.hands_in,
            takes_results: folder.takes_results(),
            proven: folder.proven(),
            stopped: folder.stopped().cloned(),
            again_at: self.again_at,
            looked: folder.looked(),
            files,
            aside: folder.aside().map(|(name, why)| (name.clone(), why.clone())).collect(),
            coming: folder.coming(),
            results: self.files.here.iter().filter(|name| name.sort() == Sort::Results).count(),
            offered: self.offered.clone(),
        }
    }
}
