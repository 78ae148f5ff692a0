//! Files that nobody honest makes: how each is made, and what must be said of it.

mod anything;
mod results;
mod sets;
mod sheets;
pub(crate) mod stored;
pub(crate) mod valid;
mod walks;

use serde_json::Value;
use stepboard::content::Content;

/// Which reader gets it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    Sheet,
    Set,
    Withdrawal,
    Walk,
    Ticket,
    Results,
}

impl What {
    /// The name of its schema.
    pub(crate) const fn schema(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Set => "set",
            Self::Withdrawal => "withdrawal",
            Self::Walk => "walk",
            Self::Ticket => "ticket",
            Self::Results => "results",
        }
    }
}

/// A hostile file.
#[derive(Debug, Clone)]
pub(crate) struct Hostile {
    /// What it tries.
    pub(crate) name: String,
    pub(crate) what: What,
    pub(crate) bytes: Vec<u8>,
    /// Parts of what is said where it is refused; none where it is accepted as plain text and numbers.
    pub(crate) says: Vec<&'static str>,
    /// Whether its shape alone is wrong, so that its schema refuses it too.
    pub(crate) shape: bool,
}

/// All of them.
pub(crate) fn corpus(content: &Content) -> Vec<Hostile> {
    let kinds = [sheets::all(content), sets::all(content), walks::all(content), results::all(content)];
    [anything::all(content), kinds.concat()].concat()
}

/// A valid file with the value at a place changed; a null takes the member out, unless it is in a list.
struct Change {
    what: What,
    valid: Value,
}

impl Change {
    fn to(&self, place: &str, value: Value) -> Value {
        let mut file = self.valid.clone();
        let (parent, name) = place.rsplit_once('/').expect("a place");
        let parent = file.pointer_mut(parent).expect("a place that is there");
        match (parent, name.parse::<usize>()) {
            (Value::Array(list), Ok(at)) => list[at] = value,
            (Value::Object(members), _) if value.is_null() => {
                members.remove(name).expect("a member that is there");
            }
            (Value::Object(members), _) => {
                members.insert(name.to_owned(), value);
            }
            _ => panic!("{place}"),
        }
        file
    }

    fn made(&self, name: &str, file: &Value, says: &[&'static str], shape: bool) -> Hostile {
        Hostile {
            name: name.to_owned(),
            what: self.what,
            bytes: file.to_string().into_bytes(),
            says: says.to_vec(),
            shape,
        }
    }

    /// Its shape is wrong.
    fn shape(&self, name: &str, place: &str, value: Value, says: &[&'static str]) -> Hostile {
        self.made(name, &self.to(place, value), says, true)
    }

    /// What it says is wrong.
    fn sense(&self, name: &str, place: &str, value: Value, says: &[&'static str]) -> Hostile {
        self.made(name, &self.to(place, value), says, false)
    }

    /// It is accepted as what it is.
    fn safe(&self, name: &str, place: &str, value: Value) -> Hostile {
        self.made(name, &self.to(place, value), &[], false)
    }
}
