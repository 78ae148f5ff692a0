//! Strategies that several laws share.

use proptest::prelude::*;
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::Term;

thread_local! {
    static BASE: Sheet = super::base();
}

/// Any term of a kind.
pub(crate) fn term<T: Term + std::fmt::Debug>() -> impl Strategy<Value = T> {
    (0..T::ALL.len()).prop_map(|index| T::ALL[index])
}

/// Any sheet that its floors and ceilings allow.
pub(crate) fn sheet() -> impl Strategy<Value = Sheet> {
    proptest::collection::vec(0.0..=1.0_f64, Setting::ALL.len()).prop_map(|shares| {
        let mut sheet = BASE.with(Clone::clone);
        for (held, share) in sheet.held.iter_mut().zip(shares) {
            held.value = held.floor + share * (held.ceiling - held.floor);
        }
        sheet
    })
}
