//! Names of files in the folder.

use crate::exchange::set::{SET, WITHDRAWAL};
use crate::exchange::{Kind, RESULTS, SHEET, content_name};
use serde::{Deserialize, Serialize};
use std::fmt;

/// What a file in the folder is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sort {
    /// Says that the folder is ours; by it is tried whether the server keeps what is there.
    Mark,
    /// Results of a tablet.
    Results,
    /// A scenario set.
    Set,
    /// A shop sheet of the shop's own.
    Sheet,
    /// The withdrawal of a scenario set.
    Withdrawal,
}

/// The mark is the same few bytes in every folder.
const MARK: Kind = Kind { format: "stepboard-folder", version: 1, most: 1024 };
/// Bytes of a file in the folder, our own limit: some 20,000 answers, and what a tablet reads at once without trouble.
const FILE_MOST: usize = 8 * 1024 * 1024;
/// Characters of the hash in a name, see [`content_name`].
const HASH_CHARS: usize = 32;
const ENDING: &str = ".json";

impl Sort {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Mark, Self::Results, Self::Set, Self::Sheet, Self::Withdrawal];

    /// The kind of its files.
    #[must_use]
    pub const fn kind(self) -> Kind {
        match self {
            Self::Mark => MARK,
            Self::Results => RESULTS,
            Self::Set => SET,
            Self::Sheet => SHEET,
            Self::Withdrawal => WITHDRAWAL,
        }
    }

    /// Bytes that a file of it may have in the folder.
    #[must_use]
    pub const fn most(self) -> usize {
        let most = self.kind().most;
        if most < FILE_MOST { most } else { FILE_MOST }
    }
}

/// The name of a file by its content: `stepboard-results-` and 32 hexadecimal digits, for instance. Any other text is no
/// name, so that nothing else in the folder is ever asked for.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Name {
    sort: Sort,
    text: String,
}

/// A text that is no name of a file of ours.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is no name of a file that goes to the folder")]
pub struct NoName(String);

impl Name {
    /// The name of a file by its text.
    #[must_use]
    pub fn of(sort: Sort, text: &str) -> Self {
        Self { sort, text: content_name(sort.kind(), text.as_bytes()) }
    }

    /// A name that was read somewhere; `None` of any other text.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (format, hash) = text.strip_suffix(ENDING)?.rsplit_once('-')?;
        let sort = Sort::ALL.into_iter().find(|sort| sort.kind().format == format)?;
        let hex = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
        let named = hash.len() == HASH_CHARS && hash.bytes().all(hex);
        named.then(|| Self { sort, text: text.to_owned() })
    }

    /// Whether a file with these bytes has this name.
    #[must_use]
    pub fn fits(&self, bytes: &[u8]) -> bool {
        content_name(self.sort.kind(), bytes) == self.text
    }

    /// What the file is.
    #[must_use]
    pub const fn sort(&self) -> Sort {
        self.sort
    }

    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.text
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl TryFrom<String> for Name {
    type Error = NoName;

    fn try_from(text: String) -> Result<Self, NoName> {
        Self::parse(&text).ok_or(NoName(text))
    }
}

impl From<Name> for String {
    fn from(name: Name) -> Self {
        name.text
    }
}
