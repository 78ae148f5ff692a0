//! The folder in memory: how it stands, the password, the files of this tablet.

use super::Bench;
use crate::app::state::{FolderView, KeptFolder, Origin};
use crate::device::{Kept, Shelf, clock, session};
use crate::exchange::folder::{Folder, Name, Rest, Setup, Shelves, Sort, State};
use gloo::timers::callback::Timeout;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// Where the password rests until the window is closed.
const SESSION: &str = "stepboard-folder";

/// The folder in memory.
#[derive(Debug, Default)]
pub(super) struct Engine {
    pub(super) loaded: bool,
    /// How it is used.
    pub(super) setup: Setup,
    /// How it stands, where it is used or was.
    pub(super) kept: Option<KeptFolder>,
    pub(super) password: Option<String>,
    pub(super) files: Files,
    pub(super) offered: Vec<(Name, Rc<str>)>,
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
        let setup = store.kept::<Setup>(Kept::Folder).await.unwrap_or_default();
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
        let offered = offered.into_iter().filter_map(named);
        engine.offered = offered.map(|(name, text)| (name, Rc::from(text))).collect();
        let name = |name: &str| Name::parse(Origin::of_file(name).1);
        let mut here: BTreeSet<Name> = results.iter().chain(&sets).filter_map(|(of, _)| name(of)).collect();
        here.extend(sheets.iter().map(|(_, text)| Name::of(Sort::Sheet, text)));
        here.extend(engine.offered.iter().map(|(name, _)| name.clone()));
        engine.files.here = here;
        engine.kept = kept;
        engine.setup = setup;
        engine.at_its_place();
        engine.find_password();
        engine.waits();
    }

    /// What lies on the tablet to be sent waits, and nothing else.
    pub(super) fn waits(&mut self) {
        let there = self.files.texts.keys().cloned().collect();
        if let Some(kept) = &mut self.kept {
            kept.folder.waits(&there);
        }
    }

    /// Uses the folder as it was set, here or in another window. A password that was let go of there is let go of here.
    pub(super) fn adopt(&mut self, setup: Setup) {
        if !setup.goes_on(&self.setup) {
            self.password = None;
            session::set(SESSION, None);
        }
        self.setup = setup;
        self.at_its_place();
        self.find_password();
    }

    /// What is known of the folder stays where it is the same folder.
    fn at_its_place(&mut self) {
        let Some(place) = &self.setup.place else { return };
        let sent = self.kept.as_ref().map_or(0, |kept| kept.sent);
        if self.kept.as_ref().is_none_or(|kept| kept.folder.place() != place) {
            self.kept = Some(KeptFolder { folder: Folder::new(place.clone()), sent });
        }
        if let Some(kept) = &mut self.kept
            && kept.folder.takes_results() != self.setup.takes_results
        {
            kept.folder.take_results(self.setup.takes_results);
        }
    }

    /// Takes the password from where it rests.
    fn find_password(&mut self) {
        match self.setup.rest {
            Rest::Page => {}
            Rest::Session => self.password = session::get(SESSION),
            // One that was typed after its day is here until the page is closed.
            Rest::Day => self.password = self.setup.password.clone().or(self.password.take()),
        }
    }

    /// Holds a password that was typed, and lays it where it rests until the window is closed.
    pub(super) fn hold(&mut self, password: String) {
        if self.setup.rest == Rest::Session {
            session::set(SESSION, Some(&password));
        }
        self.password = Some(password);
    }

    /// Whether a password rests here whose day is over.
    pub(super) fn over(&self) -> bool {
        clock::today().is_some_and(|today| self.setup.over(today))
    }

    /// By whom and with which password something may be sent now; nothing where nothing may.
    pub(super) fn asker(&self) -> Option<(&str, &str)> {
        let may = self.setup.on && !self.locked && !self.over() && self.kept.is_some();
        Some((self.setup.user.as_str(), self.password.as_deref().filter(|_| may)?))
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
            on: self.setup.on,
            open: self.password.is_some(),
            working: self.working,
            place: folder.place().as_str().to_owned(),
            user: self.setup.user.clone(),
            rest: Some(self.setup.rest),
            until: self.setup.until,
            hands_in: self.setup.hands_in,
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
