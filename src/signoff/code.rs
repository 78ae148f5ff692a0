//! What is printed under a sign-off on paper, short enough to type: it says which file belongs to the paper.

use super::{Credential, Hash};
use std::fmt;

/// Bytes of the hash that are printed: 128 bits, so that no second document with the same ones can be made.
const HASH_BYTES: usize = 16;
/// Digits between two blanks.
const GROUP: usize = 4;

/// Name of the sign-off, the first 16 bytes of its document's hash, the fingerprint of the key that signed. The paper alone
/// proves nothing: the file does, and the code says whether it is that file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    id: String,
    hash: String,
    key: String,
}

impl Code {
    /// The code of a sign-off whose document has that hash.
    #[must_use]
    pub fn new(credential: &Credential, hash: Hash) -> Self {
        let hash = hash.0.iter().take(HASH_BYTES).map(|byte| format!("{byte:02x}")).collect();
        Self { id: credential.id.clone(), hash, key: credential.assessor.key.fingerprint() }
    }

    /// Whether a code typed off paper is this one; blanks, hyphens and capitals do not matter.
    #[must_use]
    pub fn is(&self, typed: &str) -> bool {
        plain(typed) == plain(&self.to_string())
    }
}

/// Letters and digits alone, small.
fn plain(text: &str) -> String {
    text.chars().filter(char::is_ascii_alphanumeric).map(|letter| letter.to_ascii_lowercase()).collect()
}

impl fmt::Display for Code {
    /// Three lines.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n{}\n{}", self.id, grouped(&self.hash), grouped(&self.key))
    }
}

/// Digits in fours, as they are compared by eye.
#[must_use]
pub fn grouped(digits: &str) -> String {
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && place % GROUP == 0 {
            text.push(' ');
        }
        text.push(digit);
    }
    text
}
