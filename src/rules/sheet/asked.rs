//! Which values of a sheet some work asks for.

use super::{Setting, Sheet};
use crate::rules::term::Term;
use std::collections::BTreeSet;
use std::sync::{Arc, Mutex};

/// Where the values that are asked for are noted, if somebody wants to know. It tells nothing of the sheet: two sheets of the
/// same values are the same with it or without.
#[derive(Debug, Clone, Default)]
pub(super) struct Asked(Option<Arc<Mutex<BTreeSet<Setting>>>>);

impl PartialEq for Asked {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Asked {
    /// Notes that a value was asked for.
    pub(super) fn note(&self, setting: Setting) {
        // A lock that broke has lost what it held; whoever noted then has stopped already.
        if let Some(mut noted) = self.0.as_ref().and_then(|noted| noted.lock().ok()) {
            noted.insert(setting);
        }
    }
}

impl Sheet {
    /// The values that some work asks this sheet for, in the order of [`Setting::ALL`].
    #[must_use]
    pub fn asked_by(&self, work: impl FnOnce(&Self)) -> Vec<Setting> {
        let asked = Asked(Some(Arc::default()));
        work(&self.noting(asked.clone()));
        let noted = asked.0.and_then(|noted| noted.lock().ok().map(|noted| noted.clone()));
        let noted = noted.unwrap_or_default();
        Setting::ALL.iter().copied().filter(|setting| noted.contains(setting)).collect()
    }
}
