//! Text that people sign: it must show as it is.

use super::{Refusal, Why};

/// Characters that a text may have; a remark is some lines long. Our own limit.
const LENGTH_MOST: usize = 2_000;

/// Whether a text is fit to be signed: neither empty, blank at an end nor too long, and without characters that show
/// nothing or turn the order of others round (Unicode Technical Report 36, section 3; Unicode Standard Annex 9, section 2).
///
/// # Errors
/// [`Why::WordsUnfit`] with where the text stands.
pub(super) fn fit(text: &str, at: &str) -> Result<(), Refusal> {
    let plain = !text.is_empty() && text.trim() == text && text.chars().count() <= LENGTH_MOST;
    if plain && !text.chars().any(hides) { Ok(()) } else { Err(Why::WordsUnfit.at(at)) }
}

/// Controls, line and paragraph separators, marks of direction, and characters without width.
fn hides(character: char) -> bool {
    character.is_control()
        || matches!(character, '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}')
        || matches!(character, '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}')
        || matches!(character, '\u{e0000}'..='\u{e007f}')
}
