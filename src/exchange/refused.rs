//! Why a file is refused.

use super::link::Faulty;
use super::ours::formats;
use crate::record::hides;
use crate::walk::Came;
use serde_json::error::Category;

/// Why a file is refused. Text for the screens: `app.refused.<slug>`, filled with [`Refused::told`].
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// More bytes than such a file may have; nothing of it was read.
    #[error("{bytes} bytes; at most {most} are allowed")]
    TooLarge {
        /// How many it has.
        bytes: usize,
        /// How many are allowed.
        most: usize,
    },
    /// It is no JSON, or no JSON of the form that is wanted.
    #[error("line {line}, column {column}: {what}")]
    Form {
        /// Line, from 1; 0 where it is not known.
        line: usize,
        /// Column, from 1; 0 where it is not known.
        column: usize,
        /// What is wrong and what is allowed, in English.
        what: String,
    },
    /// It is no text: a picture, a document, an archive.
    #[error("no text; a file of JSON (RFC 8259) is allowed")]
    NoText,
    /// It is no file of ours at all.
    #[error("`format` is {found}; {} are allowed", formats())]
    NotOurs {
        /// What it calls itself, or how it begins.
        found: String,
    },
    /// It is no link, or a damaged one.
    #[error(transparent)]
    Link(#[from] Faulty),
    /// It is another kind of file.
    #[error("it says `{found}`; a file whose `format` is `{wanted}` is wanted")]
    OtherKind {
        /// What it calls itself, or how it begins.
        found: String,
        /// What is wanted.
        wanted: &'static str,
    },
    /// It was written by another edition of the program.
    #[error("`version` is {found}; 1 to {most} can be read")]
    OtherVersion {
        /// Its version.
        found: u32,
        /// The newest that can be read.
        most: u32,
    },
    /// A walk that comes to something else here than where it was walked.
    #[error(
        "`came` is day {}, faults {}, hash {}; its decisions come to day {}, faults {}, hash {} here: another edition of the \
         program walked it, or it was changed", said.day, said.faults, shown(&said.hash, FOUND_MOST), here.day, here.faults, here.hash
    )]
    Otherwise {
        /// What it says that it came to.
        said: Came,
        /// What it comes to.
        here: Came,
    },
    /// A value that is not allowed.
    #[error("`{place}` is {found}; {allowed}")]
    Value {
        /// Where it stands, as names with points between: `deal.count`.
        place: String,
        /// What stands there, shortened.
        found: String,
        /// What is allowed, in English.
        allowed: String,
    },
}

/// Characters of a refused value that are told.
const FOUND_MOST: usize = 60;
/// Characters that are told of what a reader of JSON found: a sentence with a refused value in it.
const WHAT_MOST: usize = 200;
/// Characters that are told of what it would take; the longest of ours lists every setting of a sheet.
const EXPECTED_MOST: usize = 3_000;
/// Stands between both in the messages of `serde`.
const EXPECTED: &str = ", expected ";
/// What is said of a file with nothing in it.
const EMPTY: &str = "the file is empty, and the whole file is wanted";
/// What is said of a file that ends before it is complete.
const CUT: &str = "the file ends here too soon: it was cut short, and the whole file is wanted";
/// What `serde_json` says of a number that is none any more.
const RANGE: &str = "number out of range";
/// What is said of a file that cannot be read from a place on.
const DAMAGED: &str = "the file is damaged from here on, or was written by hand: JSON (RFC 8259) is allowed";

impl Refused {
    /// Refuses a value; what is long is shortened.
    #[must_use]
    pub fn value(place: impl Into<String>, found: impl ToString, allowed: impl Into<String>) -> Self {
        let found = Self::short(&found.to_string());
        Self::Value { place: place.into(), found, allowed: allowed.into() }
    }

    /// The same refusal of a value that stands inside another.
    #[must_use]
    pub(super) fn inside(self, outer: &str) -> Self {
        match self {
            Self::Value { place, found, allowed } => {
                Self::Value { place: format!("{outer}.{place}"), found, allowed }
            }
            other => other,
        }
    }

    /// What stood in a file as it is told: not more of it than fits a line, and nothing that hides.
    pub(super) fn short(found: &str) -> String {
        shown(found, FOUND_MOST)
    }

    /// Its name in texts.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::TooLarge { .. } => "too-large",
            Self::Form { .. } => "form",
            Self::NoText => "no-text",
            Self::NotOurs { .. } => "not-ours",
            Self::Link(faulty) => faulty.slug(),
            Self::OtherKind { .. } => "other-kind",
            Self::OtherVersion { .. } => "other-version",
            Self::Otherwise { .. } => "otherwise",
            Self::Value { .. } => "value",
        }
    }

    /// What its text is filled with.
    #[must_use]
    pub fn told(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::TooLarge { bytes, most } => vec![("bytes", bytes.to_string()), ("most", most.to_string())],
            Self::Form { line, column, what } => {
                vec![("line", line.to_string()), ("column", column.to_string()), ("what", what.clone())]
            }
            Self::NoText => Vec::new(),
            Self::NotOurs { found } => vec![("found", found.clone())],
            Self::Link(faulty) => faulty.told(),
            Self::OtherKind { found, wanted } => {
                vec![("found", found.clone()), ("wanted", (*wanted).to_owned())]
            }
            Self::OtherVersion { found, most } => {
                vec![("found", found.to_string()), ("most", most.to_string())]
            }
            Self::Otherwise { said, here } => vec![
                ("day", said.day.to_string()),
                ("faults", said.faults.to_string()),
                ("here-day", here.day.to_string()),
                ("here-faults", here.faults.to_string()),
            ],
            Self::Value { place, found, allowed } => {
                vec![("place", place.clone()), ("found", found.clone()), ("allowed", allowed.clone())]
            }
        }
    }
}

impl From<serde_json::Error> for Refused {
    fn from(error: serde_json::Error) -> Self {
        let (line, column) = (error.line(), error.column());
        let told = error.to_string();
        // The place is told beside it.
        let what = told.strip_suffix(&format!(" at line {line} column {column}")).unwrap_or(&told);
        // A file may say `expected` too: what serde expects comes last.
        let what = match (error.classify(), what.rsplit_once(EXPECTED)) {
            // Nothing was read, not even the first character.
            (Category::Eof, _) if (line, column) == (1, 0) => EMPTY.to_owned(),
            (Category::Eof, _) => CUT.to_owned(),
            (Category::Syntax, _) if what == RANGE => format!("{RANGE}: none that is read can be so large"),
            (Category::Syntax, _) => DAMAGED.to_owned(),
            (_, Some((found, wanted))) => shown(found, WHAT_MOST) + EXPECTED + &shown(wanted, EXPECTED_MOST),
            (_, None) => shown(what, WHAT_MOST),
        };
        Self::Form { line, column, what }
    }
}

/// So many characters of a text that may come from a file; those that do not show are written as their numbers.
fn shown(text: &str, most: usize) -> String {
    let mut shown = String::new();
    for (nth, character) in text.chars().enumerate() {
        match character {
            _ if nth == most => {
                shown.push('…');
                break;
            }
            hidden if hides(hidden) => shown.extend(hidden.escape_unicode()),
            plain => shown.push(plain),
        }
    }
    shown
}
