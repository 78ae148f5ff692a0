//! Two sheets beside each other.

use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;

/// A value in which two sheets differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Difference {
    /// Which value.
    pub setting: Setting,
    /// What the one sheet says.
    pub one: f64,
    /// What the other one says.
    pub other: f64,
}

/// The values in which two sheets differ, in the order of the settings; none for a sheet and itself.
#[must_use]
pub fn differences(one: &Sheet, other: &Sheet) -> Vec<Difference> {
    let differ = |setting: &Setting| {
        let (one, other) = (one.get(*setting), other.get(*setting));
        (one.total_cmp(&other).is_ne()).then_some(Difference { setting: *setting, one, other })
    };
    Setting::ALL.iter().filter_map(differ).collect()
}
