//! Text that people sign: it must show as it is.

use super::{Refusal, Why};
use crate::record::hides;

/// Characters that a text may have; a remark is some lines long. Our own limit.
const LENGTH_MOST: usize = 2_000;
/// Characters of the reason for a withdrawal: it stays on every later trust list. Our own limit.
pub(super) const REASON_MOST: usize = 200;
/// Characters that are shown of what a refused file says; enough for a key and a path. Our own limit.
const SHOWN_MOST: usize = 100;
/// Stands where more was left off.
const MORE: char = '…';

/// Whether a text is fit to be signed: neither empty, blank at an end nor too long, and without characters that show
/// nothing or turn the order of others round.
///
/// # Errors
/// [`Why::WordsUnfit`] with where the text stands.
pub(super) fn fit(text: &str, at: &str) -> Result<(), Refusal> {
    fit_within(text, at, LENGTH_MOST)
}

/// Whether a text can stand as a name, here and on what is signed.
///
/// # Errors
/// [`Why::WordsUnfit`].
pub fn fit_name(text: &str, most: usize) -> Result<(), Refusal> {
    fit_within(text, "", most)
}

/// The same with at most so many characters.
pub(super) fn fit_within(text: &str, at: &str, most: usize) -> Result<(), Refusal> {
    let plain = !text.is_empty() && text.trim() == text && text.chars().count() <= most;
    if plain && !text.chars().any(hides) { Ok(()) } else { Err(Why::WordsUnfit.at(at)) }
}

/// A text from anywhere as it may be shown: nothing in it steers a terminal, hides or turns round what stands beside it, and
/// it ends after [`SHOWN_MOST`] characters.
pub(super) fn shown(text: &str) -> String {
    let mut shown = String::new();
    let mut characters = text.chars();
    for character in characters.by_ref().take(SHOWN_MOST) {
        if hides(character) { shown.extend(character.escape_unicode()) } else { shown.push(character) }
    }
    shown.extend(characters.next().map(|_| MORE));
    shown
}
