//! A shop sheet of the shop's own: a sheet that ships, and what the shop does otherwise.
//!
//! An edition is never changed; whoever edits it makes the next one ([`SheetDraft`]). It is named by its values
//! ([`OwnSheet::slug`]), so that a card names for ever the values that it was dealt on, on every tablet that has the edition.

mod barred;
mod carried;
mod compare;
mod draft;
mod editions;

pub use barred::{Bar, Barred, barred, on_base};
pub use carried::CarriedSheet;
pub use compare::{Difference, differences};
pub use draft::SheetDraft;
pub use editions::Editions;

use super::fit::moment;
use super::{Kind, Refused};
use crate::content::{Content, SheetTitle};
use crate::record::is_plain;
use crate::rules::sheet::{Setting, Sheet};
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
        own_slug(&self.hash)
    }

    /// The values of the edition, all of them.
    ///
    /// # Errors
    /// [`Refused::Value`]: a base that is not known or ships with other values here, a value outside its span or at odds with
    /// another, a hash of other values, a name that does not show as it is, a moment that is none.
    pub fn sheet(&self, content: &Content) -> Result<Sheet, Refused> {
        words(&self.name, &self.by, &self.note)?;
        if self.edition == 0 {
            return Err(Refused::value("edition", self.edition, "1 and more are allowed"));
        }
        moment("at", &self.at)?;
        let mut sheet = on_base(content, &self.base, &self.values)?;
        let base = content.sheet(&self.base).map(Sheet::hash).unwrap_or_default();
        if base != self.base_hash {
            let allowed = format!("`{}` ships with the values {base} here", self.base);
            return Err(Refused::value("base_hash", &self.base_hash, allowed));
        }
        let hash = sheet.hash();
        if hash != self.hash {
            return Err(Refused::value("hash", &self.hash, format!("these values have the hash {hash}")));
        }
        sheet.slug = self.slug();
        Ok(sheet)
    }

    /// Reads the file of an edition and checks it whole.
    ///
    /// # Errors
    /// [`Refused`] saying what, where, and what is allowed.
    pub fn read(bytes: &[u8], content: &Content) -> Result<Self, Refused> {
        let own: Self = super::read(bytes, SHEET)?;
        own.sheet(content)?;
        Ok(own)
    }

    /// The text of its file.
    ///
    /// # Errors
    /// As [`super::write`].
    pub fn text(&self) -> Result<String, Refused> {
        super::write(self, SHEET)
    }
}

fn own_slug(hash: &str) -> String {
    format!("{OWN}{hash}")
}

/// Whether name, person and note can stand on an edition.
fn words(name: &str, by: &str, note: &str) -> Result<(), Refused> {
    let texts =
        [("name", name, NAME_MOST, false), ("by", by, NAME_MOST, true), ("note", note, NOTE_MOST, true)];
    for (place, text, most, may_be_empty) in texts {
        if !is_plain(text, most) || (text.is_empty() && !may_be_empty) {
            let allowed = format!("text that shows as it is, {most} characters at most");
            return Err(Refused::value(place, text, allowed));
        }
    }
    Ok(())
}

impl Content {
    /// The same content with more sheets behind those that ship; one whose slug is there already is left out.
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

    /// The same content with the shop's own editions behind the sheets that ship, each with its name; those that cannot be
    /// used with this content are left out.
    #[must_use]
    pub fn with_own_sheets<'a>(&self, own: impl IntoIterator<Item = &'a OwnSheet>) -> Self {
        let usable: Vec<(Sheet, &OwnSheet)> =
            own.into_iter().filter_map(|one| Some((one.sheet(self).ok()?, one))).collect();
        let title = |own: &OwnSheet| SheetTitle { name: own.name.clone(), edition: own.edition };
        let titles: Vec<(String, SheetTitle)> =
            usable.iter().map(|(sheet, own)| (sheet.slug.clone(), title(own))).collect();
        let mut content = self.with_sheets(usable.into_iter().map(|(sheet, _)| sheet));
        content.own_sheets.extend(titles);
        content
    }
}
