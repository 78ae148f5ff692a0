//! Bytes as characters that an address may hold: base64url without padding, RFC 4648, section 5.

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
/// Bits of a character and of a byte.
const CHARACTER: u32 = 6;
const BYTE: u32 = 8;
/// The bits of one character.
const MASK: u32 = (1 << CHARACTER) - 1;

/// Bytes as base64url.
#[must_use]
pub fn to_base64url(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    let (mut held, mut bits) = (0_u32, 0);
    let mut put = |value: u32| {
        let at = usize::try_from(value & MASK).unwrap_or_default();
        text.extend(ALPHABET.get(at).map(|letter| char::from(*letter)));
    };
    for byte in bytes {
        held = (held << BYTE) | u32::from(*byte);
        bits += BYTE;
        while bits >= CHARACTER {
            bits -= CHARACTER;
            put(held >> bits);
        }
    }
    if bits > 0 {
        put(held << (CHARACTER - bits));
    }
    text
}

/// The bytes of base64url. One row of bytes has one text only.
///
/// # Errors
/// The character, from 1, that is none of the alphabet or could not have been written, and that character.
pub fn from_base64url(text: &str) -> Result<Vec<u8>, (usize, char)> {
    let mut bytes = Vec::with_capacity(text.len());
    let (mut held, mut bits) = (0_u32, 0);
    for (at, letter) in (1..).zip(text.chars()) {
        held = (held << CHARACTER) | value(letter).ok_or((at, letter))?;
        bits += CHARACTER;
        if bits >= BYTE {
            bits -= BYTE;
            bytes.extend(u8::try_from((held >> bits) & 0xFF));
        }
    }
    // Bits left over hold nothing; a whole character of them, or any that is set, was never written.
    let left = held & ((1 << bits) - 1);
    match text.chars().last() {
        Some(last) if bits >= CHARACTER || left != 0 => Err((text.chars().count(), last)),
        _ => Ok(bytes),
    }
}

fn value(letter: char) -> Option<u32> {
    let after = |first: char, at: u32| u32::from(letter) - u32::from(first) + at;
    match letter {
        'A'..='Z' => Some(after('A', 0)),
        'a'..='z' => Some(after('a', 26)),
        '0'..='9' => Some(after('0', 52)),
        '-' => Some(62),
        '_' => Some(63),
        _ => None,
    }
}
