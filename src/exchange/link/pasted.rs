//! The code in what somebody pasted.

use super::Faulty;
use crate::exchange::Refused;

/// Stands before the code in every link.
pub const TAKE: &str = "#/take/";

/// What a message may put right behind a link; no code ends with it.
const BEHIND: [char; 14] =
    ['.', ',', ';', ':', '!', '?', ')', ']', '>', '"', '\'', '\u{201d}', '\u{2019}', '\u{bb}'];

/// The code in a link, in a message that holds one, or alone.
///
/// # Errors
/// [`Faulty::Empty`], [`Faulty::Elsewhere`] or [`Faulty::NoLink`].
pub fn code_in(pasted: &str) -> Result<&str, Refused> {
    let pasted = pasted.trim();
    let found = || Refused::short(pasted);
    let code = match pasted.split_once(TAKE) {
        Some((_, behind)) => behind.split_whitespace().next().unwrap_or_default(),
        None if pasted.is_empty() => return Err(Faulty::Empty.into()),
        None if is_address(pasted) => return Err(Faulty::Elsewhere { found: found() }.into()),
        None if pasted.contains(char::is_whitespace) => return Err(Faulty::NoLink { found: found() }.into()),
        None => pasted.trim_start_matches('/').trim_start_matches("take/"),
    };
    Ok(code.trim_end_matches(BEHIND))
}

/// Whether a text has an address in it: a scheme (RFC 3986, section 3), or a part of a host and a path.
fn is_address(text: &str) -> bool {
    let host = |word: &str| word.split_once('/').is_some_and(|(host, _)| host.contains('.'));
    text.split_whitespace().any(|word| word.contains("://") || word.starts_with("www.") || host(word))
}
