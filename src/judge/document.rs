//! A JSON document read place by place: every mistake is named with where it stands, what it is and what is allowed.

use crate::content::Content;
use crate::rules::term::Term;
use serde_json::{Map, Value};

/// The mistakes found so far.
#[derive(Debug, Default)]
pub(crate) struct Mistakes(pub(crate) Vec<String>);

/// A value and where it stands.
#[derive(Debug, Clone)]
pub(crate) struct At<'v> {
    path: String,
    value: &'v Value,
}

/// An object whose keys are all known.
#[derive(Debug)]
pub(crate) struct Fields<'v> {
    path: String,
    map: &'v Map<String, Value>,
}

impl<'v> At<'v> {
    /// The whole document.
    pub(crate) fn whole(value: &'v Value) -> Self {
        Self { path: String::new(), value }
    }

    /// Where it stands.
    pub(crate) fn path(&self) -> &str {
        &self.path
    }

    /// Notes that something else is wanted here.
    pub(crate) fn refuse(&self, allowed: &str, mistakes: &mut Mistakes) {
        let place = if self.path.is_empty() { "the document" } else { &self.path };
        mistakes.0.push(format!("`{place}` is {}; allowed: {allowed}", self.value));
    }

    /// Whether it says that nothing is known.
    pub(crate) fn is_null(&self) -> bool {
        self.value.is_null()
    }

    /// An object with some of those keys and no other.
    pub(crate) fn fields(&self, allowed: &[&str], mistakes: &mut Mistakes) -> Option<Fields<'v>> {
        let fields = self.any_fields(mistakes)?;
        for key in fields.map.keys().filter(|key| !allowed.contains(&key.as_str())) {
            let place = join(&self.path, key);
            mistakes.0.push(format!("`{place}` is not known here; allowed: {}", allowed.join(", ")));
        }
        Some(fields)
    }

    /// An object with any keys.
    pub(crate) fn any_fields(&self, mistakes: &mut Mistakes) -> Option<Fields<'v>> {
        let Value::Object(map) = self.value else {
            self.refuse("an object", mistakes);
            return None;
        };
        Some(Fields { path: self.path.clone(), map })
    }

    /// The places of a list.
    pub(crate) fn list(&self, mistakes: &mut Mistakes) -> Vec<Self> {
        let Value::Array(values) = self.value else {
            self.refuse("a list", mistakes);
            return Vec::new();
        };
        let place = |(nth, value)| Self { path: format!("{}[{nth}]", self.path), value };
        values.iter().enumerate().map(place).collect()
    }

    /// A number in a range.
    pub(crate) fn number(&self, min: f64, max: f64, mistakes: &mut Mistakes) -> Option<f64> {
        let number = self.value.as_f64().filter(|number| (min..=max).contains(number));
        if number.is_none() {
            self.refuse(&format!("a number from {min} to {max}"), mistakes);
        }
        number
    }

    /// A number in the range of a fact of the content.
    pub(crate) fn fact(&self, content: &Content, key: &str, mistakes: &mut Mistakes) -> Option<f64> {
        let info = content.fact(key)?;
        self.number(info.min, info.max, mistakes)
    }

    /// A whole number in a range.
    pub(crate) fn count(&self, min: u32, max: u32, mistakes: &mut Mistakes) -> Option<u32> {
        let count = self.value.as_u64().and_then(|count| u32::try_from(count).ok());
        let count = count.filter(|count| (min..=max).contains(count));
        if count.is_none() {
            self.refuse(&format!("a whole number from {min} to {max}"), mistakes);
        }
        count
    }

    /// Yes or no.
    pub(crate) fn flag(&self, mistakes: &mut Mistakes) -> Option<bool> {
        let flag = self.value.as_bool();
        if flag.is_none() {
            self.refuse("true, false", mistakes);
        }
        flag
    }

    /// A value that a type of its own reads.
    pub(crate) fn parsed<T: serde::de::DeserializeOwned>(&self, mistakes: &mut Mistakes) -> Option<T> {
        let parsed = serde_json::from_value(self.value.clone());
        if let Err(error) = &parsed {
            mistakes.0.push(format!("`{}`: {error}", self.path));
        }
        parsed.ok()
    }

    /// A text.
    pub(crate) fn text(&self, mistakes: &mut Mistakes) -> Option<&'v str> {
        let text = self.value.as_str();
        if text.is_none() {
            self.refuse("a text", mistakes);
        }
        text
    }

    /// One of some texts, by its place among them.
    pub(crate) fn among(&self, allowed: &[&str], mistakes: &mut Mistakes) -> Option<usize> {
        let place = self.value.as_str().and_then(|text| allowed.iter().position(|one| *one == text));
        if place.is_none() {
            self.refuse(&allowed.join(", "), mistakes);
        }
        place
    }

    /// A term of a closed list.
    pub(crate) fn term<T: Term>(&self, mistakes: &mut Mistakes) -> Option<T> {
        let slugs: Vec<&str> = T::ALL.iter().map(|term| term.slug()).collect();
        self.among(&slugs, mistakes).and_then(|place| T::ALL.get(place).copied())
    }
}

impl<'v> Fields<'v> {
    /// The value under a key.
    pub(crate) fn get(&self, key: &str) -> Option<At<'v>> {
        self.map.get(key).map(|value| At { path: join(&self.path, key), value })
    }

    /// The value under a key that must be there.
    pub(crate) fn need(&self, key: &str, mistakes: &mut Mistakes) -> Option<At<'v>> {
        let found = self.get(key);
        if found.is_none() {
            mistakes.0.push(format!("`{}` is missing", join(&self.path, key)));
        }
        found
    }

    /// A term under a key that must be there.
    pub(crate) fn need_term<T: Term>(&self, key: &str, mistakes: &mut Mistakes) -> Option<T> {
        self.need(key, mistakes)?.term(mistakes)
    }

    /// Every key with its value.
    pub(crate) fn each(&self) -> impl Iterator<Item = (&'v str, At<'v>)> {
        self.map.iter().map(|(key, value)| (key.as_str(), At { path: join(&self.path, key), value }))
    }
}

fn join(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}
