//! The PIN of an apprentice: what is kept of it, and whether a typed one is it.

use crate::signoff::{KEY, SALT, stretched};
use serde::{Deserialize, Serialize};

/// Digits that a PIN has at least and at most. Our own limits: short enough for gloves off in a hurry.
pub const PIN_LEAST: usize = 4;
/// See [`PIN_LEAST`].
pub const PIN_MOST: usize = 8;
/// Wrong tries before each further one must wait.
const FREE_TRIES: u32 = 3;
/// Seconds that the first of those waits; each further one twice as long.
const FIRST_WAIT_SECONDS: u32 = 5;
/// Doublings at most: 5 s become 5 min.
const DOUBLINGS_MOST: u32 = 6;

/// What is kept of a PIN: never its digits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pin {
    salt: [u8; SALT],
    hash: [u8; KEY],
}

impl Pin {
    /// Whether these are the digits of a PIN: [`PIN_LEAST`] to [`PIN_MOST`] of them, 0 to 9.
    #[must_use]
    pub fn is_one(digits: &str) -> bool {
        (PIN_LEAST..=PIN_MOST).contains(&digits.len()) && digits.bytes().all(|byte| byte.is_ascii_digit())
    }

    /// Keeps a PIN; `salt` is random and used once. `None` where it is none, see [`Pin::is_one`].
    #[must_use]
    pub fn new(digits: &str, salt: [u8; SALT]) -> Option<Self> {
        if !Self::is_one(digits) {
            return None;
        }
        stretched(digits, &salt).map(|hash| Self { salt, hash: *hash })
    }

    /// Whether the typed digits are it.
    #[must_use]
    pub fn fits(&self, digits: &str) -> bool {
        Self::is_one(digits) && stretched(digits, &self.salt).is_some_and(|hash| *hash == self.hash)
    }

    /// Seconds to wait before the next try after so many wrong ones.
    #[must_use]
    pub const fn wait_seconds(wrong: u32) -> u32 {
        match wrong.checked_sub(FREE_TRIES) {
            None => 0,
            Some(over) => {
                let doublings = if over < DOUBLINGS_MOST { over } else { DOUBLINGS_MOST };
                FIRST_WAIT_SECONDS << doublings
            }
        }
    }
}
