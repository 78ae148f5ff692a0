//! The sign-off book: who may sign what, what is refused, the book as it grows, what becomes of lost keys.

#[path = "../support/mod.rs"]
mod support;

mod book;
mod keys;
mod signing;
mod standing;
mod tampering;
mod trust;

use stepboard::rules::term::Term;
use stepboard::signoff::{Barred, Fault, Locked, Why};

#[test]
fn every_reason_is_worded() {
    let texts = support::content().texts("en").clone();
    let told = |prefix: &str, slugs: Vec<&'static str>| {
        for slug in slugs {
            assert!(texts.find(&format!("{prefix}.{slug}")).is_some(), "`{prefix}.{slug}` has no text");
        }
    };
    told("verify", Why::ALL.iter().map(|one| one.slug()).collect());
    told("sign", Barred::ALL.iter().map(|one| one.slug()).collect());
    told("book", Fault::ALL.iter().map(|one| one.slug()).collect());
    told("locked", Locked::ALL.iter().map(|one| one.slug()).collect());
}
