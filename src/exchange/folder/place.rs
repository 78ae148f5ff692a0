//! Where the folder is.

use super::Name;
use crate::exchange::Refused;
use serde::{Deserialize, Serialize};

/// Characters of a path, our own limit.
const PATH_MOST: usize = 200;
/// What else than letters and digits may stand in a segment unescaped: the unreserved characters of RFC 3986, section 2.3.
const UNRESERVED: &str = "-._~";

/// The path of the folder on the server from which the app came: `/shop/`. It begins and ends with a stroke.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Place(String);

impl Place {
    /// A path as somebody typed it; strokes at its ends may be missing.
    ///
    /// # Errors
    /// [`Refused::Value`] for an address of another server, for no path or a long one, for a step upwards and for
    /// characters that a path must escape.
    pub fn new(typed: &str) -> Result<Self, Refused> {
        let refused = |allowed: &str| Err(Refused::value("address", typed, allowed));
        let path = typed.trim();
        if path.contains("//") {
            return refused("a path on the server that this app came from is allowed, as /shop/");
        }
        let path = path.trim_matches('/');
        if path.is_empty() || path.len() > PATH_MOST {
            return refused("1 to 200 characters are allowed, as /shop/");
        }
        for segment in path.split('/') {
            if matches!(segment, "." | "..") {
                return refused("no step upwards is allowed");
            }
            if !escaped(segment) {
                return refused("letters, digits and - . _ ~ are allowed; anything else escaped, as %20");
            }
        }
        Ok(Self(format!("/{path}/")))
    }

    /// The path as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The path of a file in the folder.
    #[must_use]
    pub fn of(&self, name: &Name) -> String {
        format!("{}{name}", self.0)
    }

    /// The folder, the folder that it lies in, and so on outwards to the first below the root.
    pub(super) fn outwards(&self) -> Vec<&str> {
        let ends = self.0.char_indices().filter(|(at, c)| *c == '/' && *at > 0);
        let mut all: Vec<&str> = ends.filter_map(|(at, _)| self.0.get(..=at)).collect();
        all.reverse();
        all
    }
}

/// Whether a segment of a path is written as RFC 3986 wants it.
fn escaped(segment: &str) -> bool {
    let mut bytes = segment.bytes();
    while let Some(byte) = bytes.next() {
        let fits = match byte {
            b'%' => (0..2).all(|_| bytes.next().is_some_and(|digit| digit.is_ascii_hexdigit())),
            _ => byte.is_ascii_alphanumeric() || UNRESERVED.as_bytes().contains(&byte),
        };
        if !fits {
            return false;
        }
    }
    !segment.is_empty()
}

impl TryFrom<String> for Place {
    type Error = Refused;

    fn try_from(text: String) -> Result<Self, Refused> {
        Self::new(&text)
    }
}

impl From<Place> for String {
    fn from(place: Place) -> Self {
        place.0
    }
}
