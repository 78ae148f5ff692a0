//! A shop sheet of the shop's own: a sheet that ships, and what the shop does otherwise.
//!
//! An edition is never changed; whoever edits it makes the next one. It is named by its values ([`OwnSheet::slug`]), so that
//! a card names for ever the values that it was dealt on, on every tablet that has the edition.

use super::{Kind, Refused};
use crate::content::{Content, SettingInfo};
use crate::record::is_plain;
use crate::rules::pairs::clashes;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The file of a sheet. A sheet that differs in every value has some 6 kB.
pub const SHEET: Kind = Kind { format: "stepboard-sheet", version: 1, most: 64 * 1024 };

/// Characters of a sheet's name, of a person's name on it and of its note. Our own limits: they stand on one line, a note on
/// three.
pub const NAME_MOST: usize = 60;
/// See [`NAME_MOST`].
pub const NOTE_MOST: usize = 200;
/// Begins the slug of every sheet that does not ship.
const OWN: &str = "own-";

/// One edition of a shop sheet of the shop's own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnSheet {
    /// What the shop calls it.
    pub name: String,
    /// Which edition of that name, from 1.
    pub edition: u32,
    /// Slug of the sheet that it differs from, one that ships.
    pub base: String,
    /// Hash of that one's values: another edition of the program may ship others.
    pub base_hash: String,
    /// What differs, by setting.
    pub values: BTreeMap<Setting, f64>,
    /// Hash of all its values.
    pub hash: String,
    /// Hash of the edition that it was made from; none where it was made from the base.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub before: Option<String>,
    /// Who made it: name and shop number.
    pub by: String,
    /// When, as ISO 8601 text in universal time.
    pub at: String,
    /// Why it differs; may be empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

impl OwnSheet {
    /// The slug by which cards and settings name the edition.
    #[must_use]
    pub fn slug(&self) -> String {
        format!("{OWN}{}", self.hash)
    }

    /// The values of the edition, all of them.
    ///
    /// # Errors
    /// [`Refused::Value`]: a base that is not known or ships with other values here, a value outside its span or at odds with
    /// another, a hash of other values, a name that does not show as it is.
    pub fn sheet(&self, content: &Content) -> Result<Sheet, Refused> {
        self.words()?;
        let sheet = on_base(content, &self.base, &self.values)?;
        let base = content.sheet(&self.base).map(Sheet::hash).unwrap_or_default();
        if base != self.base_hash {
            let allowed = format!("`{}` ships with the values {base} here", self.base);
            return Err(Refused::value("base_hash", &self.base_hash, allowed));
        }
        let hash = sheet.hash();
        if hash != self.hash {
            return Err(Refused::value("hash", &self.hash, format!("these values have the hash {hash}")));
        }
        Ok(Sheet { slug: self.slug(), ..sheet })
    }

    fn words(&self) -> Result<(), Refused> {
        let texts = [
            ("name", &self.name, NAME_MOST, false),
            ("by", &self.by, NAME_MOST, true),
            ("note", &self.note, NOTE_MOST, true),
        ];
        for (place, text, most, may_be_empty) in texts {
            if !is_plain(text, most) || (text.is_empty() && !may_be_empty) {
                let allowed = format!("text that shows as it is, {most} characters at most");
                return Err(Refused::value(place, text, allowed));
            }
        }
        if self.edition == 0 {
            return Err(Refused::value("edition", self.edition, "1 and more are allowed"));
        }
        Ok(())
    }
}

/// A base sheet with values changed.
///
/// # Errors
/// [`Refused::Value`] naming the first value that is not allowed.
pub fn on_base(content: &Content, base: &str, values: &BTreeMap<Setting, f64>) -> Result<Sheet, Refused> {
    let Some(mut sheet) = content.sheet(base).filter(|sheet| !sheet.slug.starts_with(OWN)).cloned() else {
        let known: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
        return Err(Refused::value("base", base, format!("{} are known", known.join(", "))));
    };
    for (setting, value) in values {
        let place = format!("values.{}", setting.slug());
        let switch =
            content.settings.iter().find(|info| info.key == *setting).is_some_and(SettingInfo::is_switch);
        if switch && *value != 0.0 && *value != 1.0 {
            return Err(Refused::value(place, value, "0 or 1 is allowed"));
        }
        sheet = sheet.with(*setting, *value).map_err(|error| {
            Refused::value(place, value, format!("{} to {} is allowed", error.min, error.max))
        })?;
    }
    match clashes(&sheet).first() {
        Some(clash) => {
            let place = format!("values.{}", clash.high.slug());
            Err(Refused::value(place, clash.high_value, clash.to_string()))
        }
        None => Ok(sheet),
    }
}

impl Content {
    /// The same content with the shop's own sheets behind those that ship; one whose slug is there already is left out.
    #[must_use]
    pub fn with_sheets(&self, own: impl IntoIterator<Item = Sheet>) -> Self {
        let mut content = self.clone();
        for sheet in own {
            if content.sheet(&sheet.slug).is_none() {
                content.sheets.push(sheet);
            }
        }
        content
    }
}
