//! The address under which a shop's numbers and lists mean something: everything that other programs see is named below it.

use crate::exchange::Refused;
use std::fmt::Write as _;

/// An address such as `https://example.org/shop`; nothing needs to answer there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Home(String);

impl Home {
    /// Characters of an address, our own limit.
    pub const MOST: usize = 200;

    /// Reads an address.
    ///
    /// # Errors
    /// [`Refused::Value`].
    pub fn new(text: &str) -> Result<Self, Refused> {
        let rest = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://"));
        let fits = rest.is_some_and(|rest| {
            let host = rest.split('/').next().unwrap_or_default();
            !host.is_empty() && rest.bytes().all(|byte| unreserved(byte) || b":/".contains(&byte))
        });
        if !fits || text.len() > Self::MOST || text.ends_with('/') {
            let allowed = format!(
                "an address that begins with https:// or http:// is allowed, {} characters at most, without blanks, query and a stroke at its end",
                Self::MOST
            );
            return Err(Refused::value("home", text, allowed));
        }
        Ok(Self(text.to_owned()))
    }

    /// The address.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.0
    }

    /// An address below it; whatever a part holds, it stays one part (RFC 3986, section 2.1).
    #[must_use]
    pub fn below(&self, parts: &[&str]) -> String {
        let mut address = self.0.clone();
        for part in parts {
            address.push('/');
            for byte in part.bytes() {
                if unreserved(byte) {
                    address.push(char::from(byte));
                } else {
                    let _ = write!(address, "%{byte:02X}");
                }
            }
        }
        address
    }
}

/// Characters that stand for themselves: RFC 3986, section 2.3.
const fn unreserved(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~')
}
