//! All that a tablet keeps, as one file, to go on with on another one where this one breaks.

use super::{Kind, Refused, read, save_name, write};
use crate::people::Crew;
use crate::record::LocalDate;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;

/// The file of a backup: twice what the results of one tablet may have, since what came from others is in it too.
pub const BACKUP: Kind = Kind { format: "stepboard-backup", version: 1, most: 128 * 1024 * 1024 };

/// What a value is kept under.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Key {
    /// A number: of events and of records of the sign-off book.
    Number(u64),
    /// A name.
    Name(String),
}

/// The values of a store, each a text as it is kept, even where it cannot be read.
pub type Values = Vec<(Key, String)>;

/// Everything that a tablet keeps but what it has to do with the shop's folder, whose password leaves no tablet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Backup {
    /// Random name of the tablet: whoever has several files knows which is whose.
    pub device: String,
    /// When it was made, as ISO 8601 text in universal time.
    pub at: String,
    /// The stores by name.
    stores: BTreeMap<String, Values>,
    /// SHA-256 of the stores as compact JSON, hexadecimal: a file that was damaged on its way is not put in the place of
    /// anything.
    sha256: String,
}

impl Backup {
    /// A backup of these stores.
    ///
    /// # Errors
    /// [`Refused::Form`] for what JSON cannot say; nothing that is stored is such a thing.
    pub fn of(device: &str, at: &str, stores: BTreeMap<String, Values>) -> Result<Self, Refused> {
        let sha256 = hash(&stores)?;
        Ok(Self { device: device.to_owned(), at: at.to_owned(), stores, sha256 })
    }

    /// Reads the file; `known` are the stores that there may be.
    ///
    /// # Errors
    /// [`Refused`]; also for a store that is not known, for two values under one key, and for a file that is not as it was
    /// written.
    pub fn read(bytes: &[u8], known: &[&str]) -> Result<Self, Refused> {
        let backup: Self = read(bytes, BACKUP)?;
        for (name, values) in &backup.stores {
            if !known.contains(&name.as_str()) {
                return Err(Refused::value("stores", name, format!("{} are allowed", known.join(", "))));
            }
            let mut keys: Vec<String> = values.iter().map(|(key, _)| key.told()).collect();
            keys.sort_unstable();
            if let Some([twice, _]) = keys.array_windows().find(|[one, next]| one == next) {
                return Err(Refused::value(format!("stores.{name}"), twice, "each key is allowed once"));
            }
        }
        if hash(&backup.stores)? != backup.sha256 {
            let allowed = "the file was damaged or changed: the hash of its stores is wanted";
            return Err(Refused::value("sha256", &backup.sha256, allowed));
        }
        Ok(backup)
    }

    /// The text of the file.
    ///
    /// # Errors
    /// As [`Backup::of`]; [`Refused::TooLarge`] for more than could be read again.
    pub fn text(&self) -> Result<String, Refused> {
        let text = write(self, BACKUP)?;
        if text.len() > BACKUP.most {
            return Err(Refused::TooLarge { bytes: text.len(), most: BACKUP.most });
        }
        Ok(text)
    }

    /// The name under which it is saved.
    #[must_use]
    pub fn save_name(&self, day: Option<LocalDate>) -> String {
        save_name(BACKUP.format, "", day, "json")
    }

    /// The values of a store; none where nothing was kept in it.
    #[must_use]
    pub fn values(&self, store: &str) -> &[(Key, String)] {
        self.stores.get(store).map_or(&[], Vec::as_slice)
    }

    /// The apprentices in it, as `state` keeps them under `crew`; `None` where they cannot be read.
    #[must_use]
    pub fn crew(&self, state: &str, crew: &str) -> Option<Crew> {
        let key = Key::Name(crew.to_owned());
        match self.values(state).iter().find(|(at, _)| *at == key) {
            Some((_, kept)) => serde_json::from_str(kept).ok(),
            None => Some(Crew::default()),
        }
    }
}

impl Key {
    fn told(&self) -> String {
        match self {
            Self::Number(number) => number.to_string(),
            Self::Name(name) => format!("\"{name}\""),
        }
    }
}

fn hash(stores: &BTreeMap<String, Values>) -> Result<String, Refused> {
    let text = serde_json::to_string(stores)?;
    Ok(Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const KNOWN: [&str; 2] = ["journal", "state"];

    fn backup() -> Backup {
        let journal =
            vec![(Key::Number(1), "{\"event\":\"answered\"}".into()), (Key::Number(2), "torn".into())];
        let state = vec![(Key::Name("crew".into()), "[]".into())];
        let stores = [("journal".to_owned(), journal), ("state".to_owned(), state)].into();
        Backup::of("0f", "2026-03-02T09:00:00.000Z", stores).unwrap()
    }

    #[test]
    fn what_is_written_is_read_back_even_what_no_program_reads() {
        let backup = backup();
        let read = Backup::read(backup.text().unwrap().as_bytes(), &KNOWN).unwrap();
        assert_eq!(read, backup);
        assert_eq!(read.values("journal")[1], (Key::Number(2), "torn".into()));
        assert_eq!(read.values("walks"), []);
    }

    #[test]
    fn a_file_that_is_not_as_it_was_written_is_refused_and_says_where() {
        let text = backup().text().unwrap();
        for (from, to, place) in [
            ("torn", "worn", "sha256"),
            ("\"journal\":", "\"ledger\":", "stores"),
            ("2,", "1,", "stores.journal"),
        ] {
            let broken = text.replacen(from, to, 1);
            assert_ne!(broken, text);
            match Backup::read(broken.as_bytes(), &KNOWN) {
                Err(Refused::Value { place: found, .. }) => assert_eq!(found, place),
                other => panic!("{from}: {other:?}"),
            }
        }
        assert!(Backup::read(&text.as_bytes()[..text.len() / 2], &KNOWN).is_err());
        assert!(Backup::read(text.replace("\"version\": 1", "\"version\": 2").as_bytes(), &KNOWN).is_err());
    }
}
