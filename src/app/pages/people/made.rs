//! Makes a key behind a passphrase, from what was typed.

use crate::app::state::Shop;
use crate::device::page;
use crate::rules::term::Term;
use crate::signoff::{PASSPHRASE_LEAST, SecretKey, WrappedKey};
use yew::AttrValue;
use zeroize::Zeroizing;

/// A new key, open and wrapped.
pub(super) struct Made {
    pub(super) key: SecretKey,
    pub(super) wrapped: WrappedKey,
}

/// What is wrong with a passphrase and its repetition; empty where nothing is.
pub(super) fn unfit(shop: &Shop, first: &str, again: &str) -> (AttrValue, AttrValue) {
    if first.chars().count() < PASSPHRASE_LEAST {
        return (shop.text("locked.passphrase-short"), AttrValue::default());
    }
    let differs = if first == again { AttrValue::default() } else { shop.say("people.again-differs") };
    (AttrValue::default(), differs)
}

/// Makes one. It takes a second or two, see [`page::once_drawn`].
pub(super) fn made(shop: &Shop, passphrase: &str) -> Result<Made, AttrValue> {
    let none = || shop.say("people.no-random");
    let seed = Zeroizing::new(page::random_bytes::<32>().ok_or_else(none)?);
    let random = page::random_bytes::<32>().ok_or_else(none)?;
    let key = SecretKey::from_seed(&seed);
    let wrapped = WrappedKey::wrap(&key, &page::normalised(passphrase), &random);
    let wrapped = wrapped.map_err(|locked| shop.text(&format!("locked.{}", locked.slug())))?;
    Ok(Made { key, wrapped })
}
