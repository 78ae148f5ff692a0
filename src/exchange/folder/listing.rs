//! What a server says is in the folder: the body of a 207 (RFC 4918, section 14.16), read strictly.

use super::Name;
use quick_xml::NsReader;
use quick_xml::events::Event;
use quick_xml::name::ResolveResult;
use std::collections::BTreeMap;

/// A file of ours in the folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Its name.
    pub name: Name,
    /// Its bytes, where the server tells them.
    pub bytes: Option<u64>,
}

/// Why a listing is refused.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoListing {
    /// It is not UTF-8.
    #[error("the text is not UTF-8")]
    Encoding,
    /// It is no well-formed XML.
    #[error("at byte {at}: {what}")]
    Xml {
        /// Where.
        at: u64,
        /// What.
        what: String,
    },
    /// It declares a document type or uses an entity of its own; neither is needed, and both can be made to harm.
    #[error("at byte {at}: a document type or an entity")]
    Entity {
        /// Where.
        at: u64,
    },
    /// It is another document than a `multistatus`.
    #[error("no `multistatus` of `DAV:`")]
    Other,
    /// It nests deeper or lists more than a folder has.
    #[error("more than {0}")]
    TooMuch(&'static str),
}

const DAV: &str = "DAV:";
/// Elements inside each other and files, our own limits.
const DEPTH_MOST: usize = 32;
const FILES_MOST: usize = 100_000;
/// Places of the elements that are read.
const HREF: [&str; 3] = ["multistatus", "response", "href"];
const STATUS: [&str; 3] = ["multistatus", "response", "status"];
const PROP_STATUS: [&str; 4] = ["multistatus", "response", "propstat", "status"];
const LENGTH: [&str; 5] = ["multistatus", "response", "propstat", "prop", "getcontentlength"];
const COLLECTION: [&str; 6] = ["multistatus", "response", "propstat", "prop", "resourcetype", "collection"];

/// One `response` as far as it was read.
#[derive(Debug, Default)]
struct Response {
    href: String,
    status: String,
    prop_status: String,
    length: String,
    prop_collection: bool,
    bytes: Option<u64>,
    collection: bool,
}

/// The files of ours in a listing, each once. Whatever else lies in the folder is left out, and elements that are not known
/// are passed over, as RFC 4918, section 17 wants it. Of an address only its last part counts: a server behind another one
/// tells the path that it has itself.
///
/// # Errors
/// [`NoListing`]: then nothing of it is believed.
pub fn listing(body: &[u8]) -> Result<Vec<Entry>, NoListing> {
    let text = std::str::from_utf8(body).map_err(|_| NoListing::Encoding)?;
    let mut reader = NsReader::from_str(text.trim_start_matches('\u{feff}'));
    reader.config_mut().expand_empty_elements = true;
    let mut path: Vec<String> = Vec::new();
    let mut root = false;
    let mut response = Response::default();
    let mut found = BTreeMap::new();
    loop {
        let at = reader.buffer_position();
        let (namespace, event) =
            reader.read_resolved_event().map_err(|error| NoListing::Xml { at, what: error.to_string() })?;
        match event {
            Event::Start(start) => {
                let dav = matches!(namespace, ResolveResult::Bound(bound) if bound.into_inner() == DAV);
                let local = start.local_name();
                // An element of another namespace has no place of ours.
                path.push(if dav { local.into_inner().to_owned() } else { String::new() });
                if path.len() > DEPTH_MOST {
                    return Err(NoListing::TooMuch("32 elements inside each other"));
                }
                if path.len() == 1 {
                    if root || path != ["multistatus"] {
                        return Err(NoListing::Other);
                    }
                    root = true;
                }
                response.prop_collection |= path == COLLECTION;
            }
            Event::End(_) => {
                if path.len() == 3 && path.ends_with(&["propstat".to_owned()]) {
                    response.end_propstat();
                }
                if path == ["multistatus", "response"]
                    && let Some(entry) = std::mem::take(&mut response).entry()
                {
                    found.insert(entry.name, entry.bytes);
                    if found.len() > FILES_MOST {
                        return Err(NoListing::TooMuch("100,000 files"));
                    }
                }
                path.pop();
            }
            Event::Text(text) => response.take(&path, &text.xml10_content()),
            Event::CData(text) => response.take(&path, &text.xml10_content()),
            Event::GeneralRef(reference) => {
                let resolved = reference
                    .resolve_char_ref()
                    .map_err(|error| NoListing::Xml { at, what: error.to_string() })?
                    .or_else(|| predefined(&reference.xml10_content()))
                    .ok_or(NoListing::Entity { at })?;
                response.take(&path, resolved.encode_utf8(&mut [0; 4]));
            }
            Event::DocType(_) => return Err(NoListing::Entity { at }),
            Event::Eof if path.is_empty() && root => break,
            Event::Eof => return Err(NoListing::Other),
            Event::Comment(_) | Event::Decl(_) | Event::PI(_) | Event::Empty(_) => {}
        }
    }
    Ok(found.into_iter().map(|(name, bytes)| Entry { name, bytes }).collect())
}

/// The five entities that every XML document has (XML 1.0, section 4.6).
fn predefined(name: &str) -> Option<char> {
    match name {
        "amp" => Some('&'),
        "lt" => Some('<'),
        "gt" => Some('>'),
        "apos" => Some('\''),
        "quot" => Some('"'),
        _ => None,
    }
}

impl Response {
    fn take(&mut self, path: &[String], text: &str) {
        let into = if path == HREF {
            &mut self.href
        } else if path == STATUS {
            &mut self.status
        } else if path == PROP_STATUS {
            &mut self.prop_status
        } else if path == LENGTH {
            &mut self.length
        } else {
            return;
        };
        into.push_str(text);
    }

    /// What stands under a status that is not 200 is not there.
    fn end_propstat(&mut self) {
        if is_ok(&self.prop_status) {
            self.collection |= self.prop_collection;
            self.bytes = self.bytes.or_else(|| self.length.trim().parse().ok());
        }
        self.prop_status.clear();
        self.length.clear();
        self.prop_collection = false;
    }

    fn entry(self) -> Option<Entry> {
        let there = self.status.is_empty() || is_ok(&self.status);
        let last = self.href.trim().rsplit('/').next()?;
        let name = Name::parse(&unescaped(last)?)?;
        (there && !self.collection).then_some(Entry { name, bytes: self.bytes })
    }
}

/// Whether a status line says 200 (RFC 4918, section 14.28).
fn is_ok(line: &str) -> bool {
    line.split_whitespace().nth(1) == Some("200")
}

/// A part of a path with its escapes resolved; `None` where it is no text then.
fn unescaped(part: &str) -> Option<String> {
    let mut bytes = part.bytes();
    let mut plain = Vec::with_capacity(part.len());
    while let Some(byte) = bytes.next() {
        if byte == b'%' {
            let digits = [bytes.next()?, bytes.next()?];
            let digits = std::str::from_utf8(&digits).ok().filter(|text| !text.starts_with('+'))?;
            plain.push(u8::from_str_radix(digits, 16).ok()?);
        } else {
            plain.push(byte);
        }
    }
    String::from_utf8(plain).ok()
}
