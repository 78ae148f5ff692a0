//! What is wrong with a link.

/// What is wrong with a link, or with what was given instead of one. Text for the screens: `app.refused.<slug>`.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Faulty {
    /// Nothing stands there.
    #[error("no link; a whole link is wanted")]
    Empty,
    /// A link to somewhere else, or to a screen of the app, that holds no file.
    #[error("`{found}` is a link in which no file of this app stands; one with `#/take/` in it is wanted")]
    Elsewhere {
        /// How it begins.
        found: String,
    },
    /// No link at all.
    #[error("`{found}` is no link of this app; one with `#/take/` in it is wanted")]
    NoLink {
        /// How it begins.
        found: String,
    },
    /// A character that no link has.
    #[error("link, character {at} is `{found}`; letters, digits, - and _ are allowed")]
    Letter {
        /// Its place behind `take/`, from 1.
        at: usize,
        /// The character.
        found: String,
    },
    /// It ends before what it holds does.
    #[error("link, {characters} characters long, was cut off: more follow")]
    Cut {
        /// How many stand behind `take/`.
        characters: usize,
    },
    /// Its characters are not those that were handed out.
    #[error("link, checksum is `{said:08x}`; its characters give {found:08x}")]
    Changed {
        /// The checksum that it says.
        said: u32,
        /// That of its characters.
        found: u32,
    },
    /// Its checksum fits and what it holds does not: another program made it.
    #[error("link, packed otherwise than it says; {said} bytes were said, no more, no fewer")]
    Packed {
        /// Bytes that it says it holds.
        said: usize,
    },
    /// Its checksum fits and what it holds is no text.
    #[error("link, no text at byte {at}; UTF-8 is allowed")]
    NoText {
        /// The first byte that is none, from 0.
        at: usize,
    },
}

impl Faulty {
    /// Its name in texts.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::Empty => "link-empty",
            Self::Elsewhere { .. } => "link-elsewhere",
            Self::NoLink { .. } => "link-none",
            Self::Letter { .. } => "link-letter",
            Self::Cut { .. } => "link-cut",
            Self::Changed { .. } => "link-changed",
            Self::Packed { .. } | Self::NoText { .. } => "link-packed",
        }
    }

    /// What its text is filled with.
    #[must_use]
    pub fn told(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::Elsewhere { found } | Self::NoLink { found } => vec![("found", found.clone())],
            Self::Letter { at, found } => vec![("at", at.to_string()), ("found", found.clone())],
            Self::Cut { characters } => vec![("characters", characters.to_string())],
            Self::Empty | Self::Changed { .. } | Self::Packed { .. } | Self::NoText { .. } => Vec::new(),
        }
    }
}
