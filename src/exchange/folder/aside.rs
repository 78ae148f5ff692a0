//! Files of the folder that were not taken.

use crate::exchange::Refused;
use serde::{Deserialize, Serialize};

/// Why a file of the folder was set aside. Text for the screens: `app.folder.aside.<slug>`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Aside {
    /// What is in it is not what its name says.
    NotItsName,
    /// It has more bytes than such a file may have.
    TooLarge,
    /// The server lists it and does not give it.
    NotGiven(u16),
    /// It came whole and is refused by who reads it: the reason's name in texts, and what that text is filled with.
    Refused(String, Vec<(String, String)>),
}

impl Aside {
    /// Its name in texts.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::NotItsName => "not-its-name",
            Self::TooLarge => "too-large",
            Self::NotGiven(_) => "not-given",
            Self::Refused(..) => "refused",
        }
    }
}

impl From<&Refused> for Aside {
    fn from(refused: &Refused) -> Self {
        let told = refused.told().into_iter().map(|(key, value)| (key.to_owned(), value)).collect();
        Self::Refused(refused.slug().to_owned(), told)
    }
}
