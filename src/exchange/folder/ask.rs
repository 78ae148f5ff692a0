//! What is asked of the server, and what was heard of it.

/// What is to be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// Puts a file there.
    Put,
    /// Gets a file.
    Get,
    /// Lists the folder (RFC 4918, section 9.1).
    Propfind,
    /// Makes a folder (RFC 4918, section 9.3).
    Mkcol,
}

impl Method {
    /// As HTTP writes it.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Self::Put => "PUT",
            Self::Get => "GET",
            Self::Propfind => "PROPFIND",
            Self::Mkcol => "MKCOL",
        }
    }
}

/// A request. Who asks is added by whoever carries it, since the password does not rest with the state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// What is to be done.
    pub method: Method,
    /// Path on the server.
    pub path: String,
    /// Header fields.
    pub fields: Vec<(&'static str, &'static str)>,
    /// What is sent along.
    pub body: Option<String>,
    /// Bytes of the body that an answer may have; one that is longer is [`Heard::TooLong`]. With 0 no body is read.
    pub most: usize,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Answer {
    /// Status (RFC 9110, section 15). A redirection is told as its status and never followed.
    pub status: u16,
    /// What stands in `Retry-After`.
    pub retry_after: Option<String>,
    /// What it holds.
    pub body: Vec<u8>,
}

/// What was heard of a request.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Heard {
    /// The server answered, and the answer came whole.
    Answer(Answer),
    /// No answer came, or not all of it: nobody knows whether the server did what was asked.
    Cut,
    /// The answer is longer than was asked for.
    TooLong,
}

/// The body of an answer that is only looked at for its status is not read.
const STATUS_ONLY: usize = 0;
/// Bytes of a listing, our own limit: a server takes some 250 to 500 bytes a file.
const LISTING_MOST: usize = 32 * 1024 * 1024;
/// Asks for nothing but what is read.
const WANTED: &str = concat!(
    r#"<?xml version="1.0" encoding="utf-8"?>"#,
    r#"<propfind xmlns="DAV:"><prop><resourcetype/><getcontentlength/></prop></propfind>"#
);

impl Ask {
    /// Puts a file where none is.
    pub(super) fn put(path: String, text: String) -> Self {
        let fields = vec![("If-None-Match", "*"), ("Content-Type", "application/json")];
        Self { method: Method::Put, path, fields, body: Some(text), most: STATUS_ONLY }
    }

    /// Gets a file of so many bytes at most.
    pub(super) fn get(path: String, most: usize) -> Self {
        Self { method: Method::Get, path, fields: Vec::new(), body: None, most }
    }

    /// Lists a folder.
    pub(super) fn list(path: String) -> Self {
        let fields = vec![("Depth", "1"), ("Content-Type", "application/xml; charset=utf-8")];
        Self { method: Method::Propfind, path, fields, body: Some(WANTED.to_owned()), most: LISTING_MOST }
    }

    /// Makes a folder.
    pub(super) fn make(path: String) -> Self {
        Self { method: Method::Mkcol, path, fields: Vec::new(), body: None, most: STATUS_ONLY }
    }
}
