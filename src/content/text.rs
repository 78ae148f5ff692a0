//! Messages: one table a language, filled in with what the program computed.

use super::packed::Table;
use crate::quantity::Measure;
use std::collections::BTreeMap;

/// Named values to put into a message.
pub type Args = BTreeMap<String, String>;

/// The messages of one language by key.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Texts {
    /// Those that the program carries.
    shipped: Table,
    /// Those that were put in since, each in the place of one that ships under its key.
    own: BTreeMap<String, String>,
}

impl Texts {
    pub(super) fn shipped(shipped: Table) -> Self {
        Self { shipped, own: BTreeMap::new() }
    }

    /// Puts a message in; gives the one that it takes the place of, where one was put in before.
    pub fn insert(&mut self, key: impl Into<String>, message: impl Into<String>) -> Option<String> {
        self.own.insert(key.into(), message.into())
    }

    /// The message as written, if there is one.
    #[must_use]
    pub fn find(&self, key: &str) -> Option<&str> {
        self.own.get(key).map(String::as_str).or_else(|| self.shipped.find(key))
    }

    /// All messages by their keys.
    #[must_use]
    pub fn all(&self) -> BTreeMap<&str, &str> {
        let own = self.own.iter().map(|(key, message)| (key.as_str(), message.as_str()));
        self.shipped.iter().chain(own).collect()
    }

    /// The message as written; the key itself where there is none, so that a gap is seen and not silent.
    #[must_use]
    pub fn get<'a>(&'a self, key: &'a str) -> &'a str {
        self.find(key).unwrap_or(key)
    }

    /// The first message that exists.
    #[must_use]
    pub fn first<'a>(&'a self, keys: &[&'a str]) -> &'a str {
        keys.iter().find_map(|key| self.find(key)).unwrap_or_else(|| keys.last().copied().unwrap_or(""))
    }

    /// A measure as the language writes it: with its decimal mark, `number.decimal`, and its word `unit.<symbol>` for a unit
    /// that has one.
    #[must_use]
    pub fn measure(&self, measure: Measure) -> String {
        let symbol = measure.unit.symbol();
        measure.written(&self.figure(measure), self.find(&format!("unit.{symbol}")).unwrap_or(symbol))
    }

    /// The figure alone, with the decimal mark of the language.
    #[must_use]
    pub fn figure(&self, measure: Measure) -> String {
        let figure = measure.figure();
        self.find("number.decimal").map_or_else(|| figure.clone(), |mark| figure.replace('.', mark))
    }

    /// What somebody typed in this language, as figures are read in English: where a comma is the decimal mark, comma and
    /// point change places, so that a point before exactly three digits is the doubtful one.
    #[must_use]
    pub fn typed(&self, text: &str) -> String {
        if self.find("number.decimal") != Some(",") {
            return text.to_owned();
        }
        let other = |mark: char| match mark {
            ',' => '.',
            '.' => ',',
            other => other,
        };
        text.chars().map(other).collect()
    }

    /// The message with `{name}` replaced by the argument of that name and `{n|one|many}` by the word that fits the
    /// number `n`.
    #[must_use]
    pub fn fill(&self, key: &str, args: &Args) -> String {
        fill(self.get(key), args)
    }
}

/// Fills one template; a name without argument stays as written.
fn fill(template: &str, args: &Args) -> String {
    let mut out = String::with_capacity(template.len());
    let mut rest = template;
    while let Some(open) = rest.find('{') {
        out.push_str(&rest[..open]);
        let Some(close) = rest[open..].find('}') else { break };
        let inner = &rest[open + 1..open + close];
        let mut pieces = inner.split('|');
        let name = pieces.next().unwrap_or("");
        match (args.get(name), pieces.next(), pieces.next()) {
            (Some(value), Some(one), Some(many)) => out.push_str(if value == "1" { one } else { many }),
            (Some(value), ..) => out.push_str(value),
            (None, ..) => out.push_str(&rest[open..=open + close]),
        }
        rest = &rest[open + close + 1..];
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_plurals_are_filled_and_gaps_stay_visible() {
        let args = Args::from([("n".into(), "1".into()), ("wood".into(), "ash".into())]);
        assert_eq!(fill("{n} {n|coat|coats} on {wood}, {other}", &args), "1 coat on ash, {other}");
    }
}
