//! Why nothing goes on until somebody does something about it.

use serde::{Deserialize, Serialize};

/// Why nothing goes on. Text for the screens: `app.folder.stop.<slug>`, filled with [`Stop::told`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stop {
    /// 401: user or password are not known to the server.
    Unknown,
    /// 403: this user may not do that.
    Forbidden,
    /// 507: the server has no room.
    Full,
    /// A redirection: the folder is somewhere else.
    Moved(u16),
    /// 405 or 501: the server offers no WebDAV at that address.
    NoWebdav(u16),
    /// The server writes over what is there, though asked not to.
    Overwrites,
    /// The folder is not there and cannot be made.
    NoFolder(u16),
    /// The listing cannot be read.
    Listing(String),
    /// Any other answer.
    Odd {
        /// What was asked.
        method: String,
        /// Status of the answer; 0 where it was too long.
        status: u16,
    },
}

impl Stop {
    /// Its name in texts.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::Unknown => "unknown",
            Self::Forbidden => "forbidden",
            Self::Full => "full",
            Self::Moved(_) => "moved",
            Self::NoWebdav(_) => "no-webdav",
            Self::Overwrites => "overwrites",
            Self::NoFolder(_) => "no-folder",
            Self::Listing(_) => "listing",
            Self::Odd { .. } => "odd",
        }
    }

    /// What its text is filled with.
    #[must_use]
    pub fn told(&self) -> Vec<(&'static str, String)> {
        match self {
            Self::Unknown | Self::Forbidden | Self::Full | Self::Overwrites => Vec::new(),
            Self::Moved(status) | Self::NoWebdav(status) | Self::NoFolder(status) => {
                vec![("status", status.to_string())]
            }
            Self::Listing(what) => vec![("what", what.clone())],
            Self::Odd { method, status } => vec![("method", method.clone()), ("status", status.to_string())],
        }
    }
}
