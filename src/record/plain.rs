//! Text that people type and others will read and sign: it shows as it is.

/// Controls, line and paragraph separators, marks of direction, and characters without width (Unicode Technical Report 36,
/// section 3; Unicode Standard Annex 9, section 2).
#[must_use]
pub fn hides(character: char) -> bool {
    character.is_control()
        || matches!(character, '\u{ad}' | '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}')
        || matches!(character, '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}')
        || matches!(character, '\u{e0000}'..='\u{e007f}')
}

/// What was typed as it can be signed: on one line, without blanks at its ends and without characters that do not show.
#[must_use]
pub fn plain(typed: &str) -> String {
    let shown = |word: &str| word.chars().filter(|character| !hides(*character)).collect::<String>();
    let words: Vec<String> = typed.split_whitespace().map(shown).filter(|word| !word.is_empty()).collect();
    words.join(" ")
}

/// Whether a text is plain and has at most so many characters.
#[must_use]
pub fn is_plain(text: &str, most: usize) -> bool {
    text.chars().count() <= most && plain(text) == text
}
