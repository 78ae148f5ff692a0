//! Who asks, as HTTP writes it.

/// The letters of base 64 (RFC 4648, table 1).
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const LETTER_BITS: u32 = 6;
const GROUP: usize = 3;

/// The value of `Authorization` for a user and a password (RFC 7617, in UTF-8). It is written and not encrypted: without
/// https whoever reads along on the way has the password.
#[must_use]
pub fn basic(user: &str, password: &str) -> String {
    format!("Basic {}", base64(format!("{user}:{password}").as_bytes()))
}

fn base64(bytes: &[u8]) -> String {
    let mut text = String::new();
    for group in bytes.chunks(GROUP) {
        let bits =
            (0..GROUP).fold(0_u32, |bits, at| bits << 8 | u32::from(group.get(at).copied().unwrap_or(0)));
        for letter in 0..=GROUP {
            let shift = LETTER_BITS * u32::try_from(GROUP - letter).unwrap_or(0);
            let index = bits >> shift & (u32::from(u8::MAX) >> 2);
            let known = LETTERS.get(usize::try_from(index).unwrap_or(0)).copied();
            text.push(if letter <= group.len() { known.map_or('=', char::from) } else { '=' });
        }
    }
    text
}
