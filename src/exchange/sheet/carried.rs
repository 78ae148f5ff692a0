//! A shop sheet as a file carries it on which something stands: so that it is the same on every tablet.

use super::{Editions, OwnSheet};
use crate::content::Content;
use crate::exchange::Refused;
use crate::record::SheetName;
use crate::rules::sheet::Sheet;
use serde::{Deserialize, Serialize};

/// A shop sheet that a file carries.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum CarriedSheet {
    /// One that ships, by its slug and the hash of its values.
    Ships(SheetName),
    /// One of the shop's own, whole.
    Own(Box<OwnSheet>),
}

impl CarriedSheet {
    /// A sheet as it is carried: one of the shop's own whole.
    #[must_use]
    pub fn of(sheet: &Sheet, editions: &Editions) -> Self {
        Self::named(SheetName::of(sheet), editions)
    }

    /// The same of a sheet that is known by its name.
    #[must_use]
    pub fn named(name: SheetName, editions: &Editions) -> Self {
        match editions.get(&name.slug) {
            Some(own) => Self::Own(Box::new(own.clone())),
            None => Self::Ships(name),
        }
    }

    /// Its name: by it the sheet is found once it is on the tablet.
    #[must_use]
    pub fn name(&self) -> SheetName {
        match self {
            Self::Ships(name) => name.clone(),
            Self::Own(own) => SheetName { slug: own.slug(), hash: own.hash.clone() },
        }
    }

    /// Its values, for a file in which it stands under `sheet`.
    ///
    /// # Errors
    /// [`Refused::Value`]: the sheet is not known here, or has other values here.
    pub fn sheet(&self, content: &Content) -> Result<Sheet, Refused> {
        match self {
            Self::Own(own) => own.sheet(content).map_err(|refused| refused.inside("sheet.own")),
            Self::Ships(name) => {
                let known: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
                let Some(sheet) = content.sheet(&name.slug) else {
                    let allowed = format!("{} are known", known.join(", "));
                    return Err(Refused::value("sheet.ships.slug", &name.slug, allowed));
                };
                let hash = sheet.hash();
                if hash != name.hash {
                    let allowed = format!("`{}` has the values {hash} here", name.slug);
                    return Err(Refused::value("sheet.ships.hash", &name.hash, allowed));
                }
                Ok(sheet.clone())
            }
        }
    }

    /// The slug by which it is found once it is on the tablet.
    #[must_use]
    pub fn slug(&self) -> String {
        self.name().slug
    }

    /// The edition, where it is one of the shop's own.
    #[must_use]
    pub fn own(&self) -> Option<&OwnSheet> {
        match self {
            Self::Ships(_) => None,
            Self::Own(own) => Some(own),
        }
    }

    /// Content in which it can be found by its slug.
    #[must_use]
    pub fn known_in(&self, content: &Content) -> Content {
        content.with_own_sheets(self.own())
    }
}
