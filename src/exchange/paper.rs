//! Sets on paper: each worksheet has a code, from which its cards are dealt again when its answers are typed in.

mod entered;

pub use entered::Entered;

use super::Refused;
use super::set::{Set, SetCard, cards_on_paper};
use crate::content::World;
use sha2::{Digest, Sha256};
use std::fmt;

/// Letters of a code: none that is taken for another when it is written by hand. Their number is a prime, which the last
/// character needs.
const ALPHABET: &[u8; 31] = b"23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const LETTERS: u32 = 31;
/// Characters that tell the set, then those that tell whose worksheet it is, then one that tells of a slip of the pen.
const OF_SET: usize = 2;
const OF_PERSON: usize = 5;
const CHARACTERS: usize = OF_SET + OF_PERSON + 1;
/// Characters between which a line is written.
const GROUP: usize = 4;
/// Names the code in what is refused.
const PLACE: &str = "code";

/// The code of a worksheet: eight characters. One wrong character and two that changed places are noticed, as in an ISBN of
/// ten digits (ISO 2108:1992): the sum of all, each times its place, is a multiple of the number of letters, here 31.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PaperCode([u8; CHARACTERS]);

impl PaperCode {
    /// The code of somebody's worksheet of a set; `copy` tells another one for the same person from the first, 0.
    #[must_use]
    pub fn of(set: &str, person: &str, copy: u32) -> Self {
        let mut code = [0; CHARACTERS];
        let of_person = digits(&format!("{set}/{copy}/{person}"));
        let told = digits(set).take(OF_SET).chain(of_person.take(OF_PERSON));
        for (place, digit) in code.iter_mut().zip(told) {
            *place = digit;
        }
        let last = check(&code);
        if let Some(place) = code.last_mut() {
            *place = last;
        }
        Self(code)
    }

    /// The code of a worksheet of that set as somebody typed it: small letters, spaces and lines do not matter.
    ///
    /// # Errors
    /// [`Refused::Value`]: too long or too short, a letter that no code has, a slip, or a worksheet of another set.
    pub fn read(typed: &str, set: &str) -> Result<Self, Refused> {
        let mut code = [0; CHARACTERS];
        let written = || typed.chars().filter(|letter| !letter.is_whitespace() && *letter != '-');
        if written().count() != CHARACTERS {
            return Err(Refused::value(PLACE, typed, format!("{CHARACTERS} letters and digits are allowed")));
        }
        for (place, letter) in code.iter_mut().zip(written()) {
            let upper = letter.to_ascii_uppercase();
            let at = (0..).zip(ALPHABET).find(|(_, one)| char::from(**one) == upper);
            *place = at.map(|(at, _)| at).ok_or_else(|| {
                Refused::value(PLACE, letter, "digits from 2 and letters but I, L and O are allowed")
            })?;
        }
        if code.last() != Some(&check(&code)) {
            return Err(Refused::value(PLACE, typed, "one character is wrong: look once more"));
        }
        if !digits(set).take(OF_SET).eq(code.iter().copied().take(OF_SET)) {
            return Err(Refused::value(PLACE, typed, "a worksheet of this set is wanted"));
        }
        Ok(Self(code))
    }

    /// The same, only where it is written as it is printed: among names, so that hardly any is taken for a code.
    ///
    /// # Errors
    /// [`Refused::Value`].
    pub fn read_as_printed(typed: &str, set: &str) -> Result<Self, Refused> {
        let code = Self::read(typed, set)?;
        if code.to_string() == typed {
            return Ok(code);
        }
        Err(Refused::value(PLACE, typed, format!("{code}, as it is printed, is allowed")))
    }

    /// The cards of the worksheet, in order.
    #[must_use]
    pub fn cards<'a>(&self, set: &'a Set, id: &str, world: &World<'_>) -> Vec<SetCard<'a>> {
        cards_on_paper(set, id, world, &self.to_string())
    }
}

impl fmt::Display for PaperCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (nth, digit) in self.0.iter().enumerate() {
            let dash = if nth > 0 && nth % GROUP == 0 { "-" } else { "" };
            let letter = ALPHABET.get(usize::from(*digit)).copied().unwrap_or_default();
            write!(f, "{dash}{}", char::from(letter))?;
        }
        Ok(())
    }
}

/// Digits of a text to the base of the alphabet, each as likely as another to within one in a hundred million.
fn digits(text: &str) -> impl Iterator<Item = u8> + use<> {
    let hash = Sha256::digest(text.as_bytes());
    let words: Vec<u32> = hash
        .chunks_exact(4)
        .map(|word| word.iter().fold(0, |sum, byte| (sum << 8) | u32::from(*byte)))
        .collect();
    words.into_iter().map(|word| u8::try_from(word % LETTERS).unwrap_or_default())
}

/// The last character that belongs to those before it.
fn check(code: &[u8; CHARACTERS]) -> u8 {
    let sum: u32 =
        (1..).zip(code.iter().take(CHARACTERS - 1)).map(|(place, digit)| place * u32::from(*digit)).sum();
    // The sum with the last one, times eight, is to be a multiple of 31; eight times four is 32.
    let last = (LETTERS - sum % LETTERS) * INVERSE % LETTERS;
    u8::try_from(last).unwrap_or_default()
}

/// What times the place of the last character, 8, leaves 1 when divided by the number of letters.
const INVERSE: u32 = 4;
