//! The values of a shop.

use super::Setting;
use super::asked::Asked;
use crate::quantity::{Celsius, Hours, Micrometres, Millimetres, OutOfRange, within};
use crate::rules::term::{Coating, Term};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fmt::Write;
use std::sync::OnceLock;

/// A value with the floor and ceiling that its setting allows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Held {
    /// The shop's value.
    pub value: f64,
    /// Least value that a shop may set.
    pub floor: f64,
    /// Greatest value that a shop may set.
    pub ceiling: f64,
}

/// One value for every setting, and what the film is made of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Slug of the sheet.
    pub slug: String,
    coating: Coating,
    /// Values in the order of [`Setting::ALL`].
    held: Vec<Held>,
    #[serde(skip)]
    hash: Hashed,
    #[serde(skip)]
    asked: Asked,
}

/// The hash of a sheet, worked out when it is first asked for: a card that is dealt carries it. It tells nothing beside the
/// values, so that two sheets of the same values are the same whether it was asked for or not.
#[derive(Debug, Clone, Default)]
struct Hashed(OnceLock<String>);

impl PartialEq for Hashed {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl Sheet {
    /// A sheet of that slug with values in the order of [`Setting::ALL`].
    #[must_use]
    pub fn new(slug: String, coating: Coating, held: Vec<Held>) -> Self {
        Self { slug, coating, held, hash: Hashed::default(), asked: Asked::default() }
    }

    /// The same, with what it is asked for noted there.
    pub(super) fn noting(&self, asked: Asked) -> Self {
        Self { asked, ..self.clone() }
    }

    /// What the film is made of.
    #[must_use]
    pub const fn coating(&self) -> Coating {
        self.coating
    }

    /// The value, its floor and its ceiling.
    #[must_use]
    pub fn held(&self, setting: Setting) -> Held {
        const NONE: Held = Held { value: 0.0, floor: 0.0, ceiling: 0.0 };
        self.asked.note(setting);
        self.held.get(setting as usize).copied().unwrap_or(NONE)
    }

    /// The bare value.
    #[must_use]
    pub fn get(&self, setting: Setting) -> f64 {
        self.held(setting).value
    }

    /// A switch: on when the value is not 0.
    #[must_use]
    pub fn is_on(&self, setting: Setting) -> bool {
        self.get(setting) != 0.0
    }

    /// A wait or time of day.
    #[must_use]
    pub fn hours(&self, setting: Setting) -> Hours {
        Hours::saturating(self.get(setting))
    }

    /// The hours of a wait that count: the shop's value, never less than its floor.
    #[must_use]
    pub fn wait(&self, setting: Setting) -> f64 {
        let held = self.held(setting);
        held.value.max(held.floor)
    }

    /// A temperature.
    #[must_use]
    pub fn celsius(&self, setting: Setting) -> Celsius {
        Celsius::saturating(self.get(setting))
    }

    /// A thickness.
    #[must_use]
    pub fn micrometres(&self, setting: Setting) -> Micrometres {
        Micrometres::saturating(self.get(setting))
    }

    /// A length.
    #[must_use]
    pub fn millimetres(&self, setting: Setting) -> Millimetres {
        Millimetres::saturating(self.get(setting))
    }

    /// The same sheet with one value changed.
    ///
    /// # Errors
    /// [`OutOfRange`] when the value lies outside floor and ceiling.
    pub fn with(&self, setting: Setting, value: f64) -> Result<Self, OutOfRange> {
        let held = self.held(setting);
        within(setting.slug(), "", held.floor, held.ceiling, value)?;
        Ok(self.tried(setting, value))
    }

    /// The same with one value changed, whether it is allowed or not: only to be asked what bars it.
    #[must_use]
    pub fn tried(&self, setting: Setting, value: f64) -> Self {
        let mut held = self.held.clone();
        if let Some(slot) = held.get_mut(setting as usize) {
            slot.value = value;
        }
        Self::new(self.slug.clone(), self.coating, held).noting(self.asked.clone())
    }

    /// Names this sheet's values: the first 16 hexadecimal digits of the SHA-256 of coating and values.
    #[must_use]
    pub fn hash(&self) -> &str {
        self.hash.0.get_or_init(|| {
            let mut text = self.coating.slug().to_owned();
            for (setting, held) in Setting::ALL.iter().zip(&self.held) {
                // What is written to a string is always written.
                let _ = write!(text, ";{}={}", setting.slug(), held.value);
            }
            Sha256::digest(text.as_bytes()).iter().take(8).map(|byte| format!("{byte:02x}")).collect()
        })
    }
}
