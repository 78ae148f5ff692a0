//! Values that a shop may not set, each with what bars it.

use super::super::Refused;
use super::OWN;
use crate::content::{Content, SettingInfo};
use crate::rules::pairs::{Clash, clashes};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::sorted::sorted;
use crate::rules::term::Term;
use std::collections::BTreeMap;

/// What bars a value. Text for the screens: `app.own.barred.<slug>`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bar {
    /// It lies under the least that a shop may set.
    Floor(f64),
    /// It lies over the most that a shop may set.
    Ceiling(f64),
    /// It is a switch, and the value is neither 0 nor 1.
    Switch,
    /// It stands in the wrong order with another value.
    Clash(Clash),
}

impl Bar {
    /// Its name in texts.
    #[must_use]
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::Floor(_) => "floor",
            Self::Ceiling(_) => "ceiling",
            Self::Switch => "switch",
            Self::Clash(_) => "clash",
        }
    }
}

/// A value that a shop may not set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Barred {
    /// Which value.
    pub setting: Setting,
    /// What it was to be.
    pub value: f64,
    /// What bars it.
    pub bar: Bar,
}

impl Barred {
    /// The same for whoever reads a file: what, where, what is allowed, and what holds the limit.
    fn refused(&self, content: &Content, base: &Sheet) -> Refused {
        let held = base.held(self.setting);
        let allowed = match self.bar {
            Bar::Switch => "0 or 1 is allowed".to_owned(),
            Bar::Clash(clash) => clash.to_string(),
            Bar::Floor(_) | Bar::Ceiling(_) => {
                let source = content.setting(self.setting).map_or("", SettingInfo::limit_source);
                format!("{} to {} is allowed ({source})", held.floor, held.ceiling)
            }
        };
        Refused::value(format!("values.{}", self.setting.slug()), self.value, allowed)
    }
}

/// The sheet that ships with that slug.
fn shipped<'a>(content: &'a Content, base: &str) -> Option<&'a Sheet> {
    content.sheet(base).filter(|sheet| !sheet.slug.starts_with(OWN))
}

/// A base sheet with values changed, whether they are allowed or not: only to be asked what bars them.
fn tried(base: &Sheet, values: &BTreeMap<Setting, f64>) -> Sheet {
    values.iter().fold(base.clone(), |sheet, (setting, value)| sheet.tried(*setting, *value))
}

/// Every value that may not stand so, in the order of the settings. Clashes are looked for among all values of the sheet; each
/// is told at a value that was changed.
#[must_use]
pub fn barred(content: &Content, base: &Sheet, values: &BTreeMap<Setting, f64>) -> Vec<Barred> {
    let alone = |(setting, value): (&Setting, &f64)| {
        let held = base.held(*setting);
        let switch = content.setting(*setting).is_some_and(SettingInfo::is_switch);
        let bar = if switch && *value != 0.0 && *value != 1.0 {
            Bar::Switch
        } else if *value > held.ceiling {
            Bar::Ceiling(held.ceiling)
        } else if (held.floor..=held.ceiling).contains(value) {
            return None;
        } else {
            Bar::Floor(held.floor)
        };
        Some(Barred { setting: *setting, value: *value, bar })
    };
    let mut found: Vec<Barred> = values.iter().filter_map(alone).collect();
    for clash in clashes(&tried(base, values)) {
        let (setting, value) = if values.contains_key(&clash.high) {
            (clash.high, clash.high_value)
        } else {
            (clash.low, clash.low_value)
        };
        if !found.iter().any(|one| one.setting == setting) {
            found.push(Barred { setting, value, bar: Bar::Clash(clash) });
        }
    }
    sorted(found, |a, b| a.setting.cmp(&b.setting))
}

/// A base sheet with values changed.
///
/// # Errors
/// [`Refused::Value`] naming the first value that is not allowed, and what holds its limit.
pub fn on_base(content: &Content, base: &str, values: &BTreeMap<Setting, f64>) -> Result<Sheet, Refused> {
    let Some(base) = shipped(content, base) else {
        let known = content.sheets.iter().filter(|sheet| !sheet.slug.starts_with(OWN));
        let known: Vec<&str> = known.map(|sheet| sheet.slug.as_str()).collect();
        return Err(Refused::value("base", base, format!("{} are known", known.join(", "))));
    };
    match barred(content, base, values).first() {
        Some(barred) => Err(barred.refused(content, base)),
        None => Ok(tried(base, values)),
    }
}
