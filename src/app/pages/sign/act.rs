//! The signature, and the book with its record. Nothing is stored here.

use crate::app::parts::refusal;
use crate::app::state::{Shop, Unlocked};
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{Act, Book, Broken, Draft, read_canonical};

/// The book with the signed draft in it.
///
/// # Errors
/// Why there is none, in words.
pub(super) fn signed(
    shop: &Shop,
    draft: &Draft,
    open: &Unlocked,
    book: &Book,
    replaces: Option<String>,
) -> Result<Book, String> {
    let file = draft.sign(&open.key).map_err(|not| {
        let words = not.barred.iter().map(|one| shop.text(&format!("sign.{}", one.slug())).to_string());
        words.collect::<Vec<_>>().join(" ")
    })?;
    let credential = read_canonical(file.as_bytes()).map_err(|why| refusal(shop, &why))?;
    let act = match replaces {
        None => Act::SignedOff { credential },
        Some(replaces) => Act::Reassessed { credential, replaces },
    };
    let at = clock::when().ok_or_else(|| shop.say("sign-off.no-clock").to_string())?;
    let added = book.append(act, &open.key, &at, &shop.content().competencies);
    added.map_err(|broken| broken_words(shop, &broken))
}

/// Why a record does not fit, in words.
pub(in crate::app) fn broken_words(shop: &Shop, broken: &Broken) -> String {
    let first = shop.text(&format!("book.{}", broken.fault.slug())).to_string();
    let words = broken.reasons.iter().map(|one| refusal(shop, one));
    [first].into_iter().chain(words).collect::<Vec<_>>().join(" ")
}
