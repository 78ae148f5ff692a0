//! A sheet while it is edited.

use super::super::Refused;
use super::{Barred, Editions, OwnSheet, barred, on_base, own_slug, words};
use crate::content::Content;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A sheet while it is edited: nothing of it is in use before it was saved as an edition.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetDraft {
    /// Slug of the sheet that it differs from, one that ships.
    pub base: String,
    /// Hash of the edition that it was begun from; none where it was begun from the base.
    pub before: Option<String>,
    /// What the shop calls it.
    pub name: String,
    /// Who edits it: name and shop number.
    pub by: String,
    /// Why it differs.
    pub note: String,
    /// What differs from the base, by setting; may not be allowed yet.
    pub values: BTreeMap<Setting, f64>,
}

impl SheetDraft {
    /// Begins from a sheet that ships or from an edition, by its slug; `None` where there is none of that name, or it stands
    /// on a base that is not known here.
    #[must_use]
    pub fn of(content: &Content, editions: &Editions, slug: &str, by: &str) -> Option<Self> {
        let by = by.to_owned();
        let draft = match editions.get(slug) {
            Some(own) => Self {
                base: own.base.clone(),
                before: Some(own.hash.clone()),
                name: own.name.clone(),
                by,
                note: String::new(),
                values: own.values.clone(),
            },
            None => Self {
                base: slug.to_owned(),
                before: None,
                name: String::new(),
                by,
                note: String::new(),
                values: BTreeMap::new(),
            },
        };
        on_base(content, &draft.base, &BTreeMap::new()).is_ok().then_some(draft)
    }

    /// The slug of the sheet that it was begun from.
    #[must_use]
    pub fn from(&self) -> String {
        self.before.as_deref().map_or_else(|| self.base.clone(), own_slug)
    }

    /// The sheet that it was begun from; the base where that is not known here.
    #[must_use]
    pub fn from_sheet<'a>(&self, content: &'a Content) -> Option<&'a Sheet> {
        content.sheet(&self.from()).or_else(|| self.base(content))
    }

    /// The sheet that it differs from.
    #[must_use]
    pub fn base<'a>(&self, content: &'a Content) -> Option<&'a Sheet> {
        content.sheet(&self.base)
    }

    /// The values that differ from the sheet that it was begun from; from the base where that is not known here.
    #[must_use]
    pub fn changed(&self, content: &Content) -> Vec<Setting> {
        let Some(from) = self.from_sheet(content) else { return Vec::new() };
        let differs =
            |setting: &Setting| from.get(*setting).total_cmp(&self.value(content, *setting)).is_ne();
        Setting::ALL.iter().copied().filter(differs).collect()
    }

    /// What the draft says of a value.
    #[must_use]
    pub fn value(&self, content: &Content, setting: Setting) -> f64 {
        let of_base = || self.base(content).map_or(0.0, |base| base.get(setting));
        self.values.get(&setting).copied().unwrap_or_else(of_base)
    }

    /// The same with one value set; what is the base's value again is no difference.
    #[must_use]
    pub fn with(mut self, content: &Content, setting: Setting, value: f64) -> Self {
        let of_base = self.base(content).map(|base| base.get(setting));
        if of_base.is_some_and(|of_base| of_base.total_cmp(&value).is_eq()) {
            self.values.remove(&setting);
        } else {
            self.values.insert(setting, value);
        }
        self
    }

    /// The values that may not stand so.
    #[must_use]
    pub fn barred(&self, content: &Content) -> Vec<Barred> {
        self.base(content).map(|base| barred(content, base, &self.values)).unwrap_or_default()
    }

    /// The sheet as it would be.
    ///
    /// # Errors
    /// [`Refused::Value`] naming the first value that is not allowed.
    pub fn sheet(&self, content: &Content) -> Result<Sheet, Refused> {
        let mut sheet = on_base(content, &self.base, &self.values)?;
        sheet.slug = own_slug(sheet.hash());
        Ok(sheet)
    }

    /// The next edition of its name, made at that moment (ISO 8601 text in universal time).
    ///
    /// # Errors
    /// [`Refused::Value`]: a value that is not allowed, no name, values that another edition or the base has already.
    pub fn edition(&self, content: &Content, editions: &Editions, at: &str) -> Result<OwnSheet, Refused> {
        let [name, by, note] = [&self.name, &self.by, &self.note].map(|text| text.trim());
        words(name, by, note)?;
        let sheet = self.sheet(content)?;
        let base_hash = self.base(content).map(Sheet::hash).unwrap_or_default();
        if sheet.hash() == base_hash {
            return Err(Refused::value(
                "values",
                "no difference",
                "one value at least differs from the base",
            ));
        }
        if let Some(same) = editions.get(&sheet.slug) {
            let found = format!("as in {}, edition {}", same.name, same.edition);
            return Err(Refused::value("values", found, "no other edition has the same values"));
        }
        Ok(OwnSheet {
            name: name.to_owned(),
            edition: editions.next(name),
            base: self.base.clone(),
            base_hash: base_hash.to_owned(),
            values: self.values.clone(),
            hash: sheet.hash().to_owned(),
            before: self.before.clone(),
            by: by.to_owned(),
            at: at.to_owned(),
            note: note.to_owned(),
        })
    }
}
