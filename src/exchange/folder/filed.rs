//! A file that goes to the folder.

use super::Pause;
use serde::{Deserialize, Serialize};

/// How a file stands that goes to the folder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Filed {
    /// How it stands.
    pub state: State,
    /// How long it waits by itself, as where the server has it locked.
    #[serde(default)]
    pub pause: Pause,
}

/// How a file stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// It waits.
    #[default]
    Waits,
    /// It was sent, and no answer has come yet.
    OnItsWay,
    /// It is in the folder since that moment.
    Arrived(u64),
    /// It is not sent again by itself.
    Refused(Refusal),
}

/// Why a file is not sent. Text for the screens: `app.folder.refusal.<slug>`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Refusal {
    /// Another file has its name in the folder; that one stays.
    Other,
    /// 413, or more than a file in the folder may have.
    TooLarge,
    /// What is stored under its name on this tablet is something else.
    NotItsName,
    /// The server refuses this file with that status.
    Status(u16),
}

impl Refusal {
    /// Its name in texts.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Other => "other",
            Self::TooLarge => "too-large",
            Self::NotItsName => "not-its-name",
            Self::Status(_) => "status",
        }
    }
}
