//! What a person has set on this tablet.

use crate::content::Units;
use crate::terms;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;
use std::rc::Rc;
use yew::prelude::*;

terms! {
    /// Light of the workshop that the screens are drawn for.
    Light {
        /// As the system says.
        Auto = "auto",
        /// Bright.
        Day = "day",
        /// Dim.
        Dim = "dim",
    }
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(in crate::app) struct Settings {
    /// Random name of this device.
    pub(in crate::app) device: String,
    /// Who works; empty without a name.
    pub(in crate::app) person: String,
    /// Whether the name was asked for.
    pub(in crate::app) name_asked: bool,
    /// Language of the messages for whoever has chosen none.
    pub(in crate::app) language: String,
    /// The language that a person has chosen.
    #[serde(default)]
    pub(in crate::app) languages: BTreeMap<String, String>,
    /// Units shown.
    #[serde(deserialize_with = "units")]
    pub(in crate::app) units: Units,
    /// Slug of the shop sheet in use; the base sheet where there is none of that name.
    pub(in crate::app) sheet: String,
    /// Light.
    #[serde(deserialize_with = "light")]
    pub(in crate::app) light: Light,
    /// Whether columns are mirrored for the left hand.
    pub(in crate::app) left_hand: bool,
}

/// A value that a later program wrote and this one does not know is the usual one, and not the loss of the tablet's name.
fn or<'de, D: Deserializer<'de>, T: DeserializeOwned>(from: D, usual: T) -> Result<T, D::Error> {
    Ok(serde_json::from_value(Value::deserialize(from)?).unwrap_or(usual))
}

fn units<'de, D: Deserializer<'de>>(from: D) -> Result<Units, D::Error> {
    or(from, Units::METRIC)
}

fn light<'de, D: Deserializer<'de>>(from: D) -> Result<Light, D::Error> {
    or(from, Light::Auto)
}

impl Settings {
    /// Settings of a tablet that nobody has used yet, in a language that there is.
    pub(in crate::app) fn new(device: String, language: String) -> Self {
        Self {
            device,
            person: String::new(),
            name_asked: false,
            language,
            languages: BTreeMap::new(),
            units: Units::METRIC,
            sheet: String::new(),
            light: Light::Auto,
            left_hand: false,
        }
    }

    /// The language of whoever works.
    pub(in crate::app) fn speaks(&self) -> &str {
        self.languages.get(&self.person).unwrap_or(&self.language)
    }

    /// The same in a language: for whoever works, and for the tablet while nobody has given a name.
    pub(in crate::app) fn speaking(mut self, language: &str) -> Self {
        if self.person.is_empty() {
            language.clone_into(&mut self.language);
        } else {
            self.languages.insert(self.person.clone(), language.to_owned());
        }
        self
    }
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SettingsContext {
    pub(in crate::app) now: Rc<Settings>,
    pub(in crate::app) change: Callback<Settings>,
}
