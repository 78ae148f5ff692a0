//! Languages beside English: no message is missing, none was translated from a text that has changed since, numbers and
//! units are written as the language writes them.
//!
//! `tests/data/translated/<language>.csv` says of which English text each message is the translation: key and the first
//! eight hexadecimal digits of its SHA-256. `make translated` writes it anew, once the messages that this test names were
//! read again.

mod support;

use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use stepboard::card::Voice;
use stepboard::content::load::Source;
use stepboard::content::{ENGLISH, Units};
use stepboard::quantity::{Measure, Unit, read_number};
use support::content;

type Messages = BTreeMap<String, String>;

/// The messages of each language as they are written, without what stands in for a gap.
fn written() -> BTreeMap<String, Messages> {
    let mut all = BTreeMap::<String, Messages>::new();
    for source in Source::embedded().expect("the build script wrote them") {
        let parts: Vec<&str> = source.path.iter().filter_map(|part| part.to_str()).collect();
        if let ["text", language, _] = parts.as_slice() {
            let table: toml::Table = source.text.parse().expect("the build script read it");
            flatten("", &table, all.entry((*language).to_owned()).or_default());
        }
    }
    all
}

fn flatten(above: &str, table: &toml::Table, into: &mut Messages) {
    for (name, value) in table {
        let key = if above.is_empty() { name.clone() } else { format!("{above}.{name}") };
        match value {
            toml::Value::Table(inner) => flatten(&key, inner, into),
            other => drop(into.insert(key, other.as_str().expect("the build script read it").to_owned())),
        }
    }
}

fn others(all: &BTreeMap<String, Messages>) -> impl Iterator<Item = (&String, &Messages)> {
    all.iter().filter(|(language, _)| *language != "en")
}

/// Names of woods, which English has in `content/woods.toml`.
fn is_wood(key: &str) -> bool {
    content().woods.iter().any(|wood| key == format!("wood.{}", wood.slug))
}

#[test]
fn every_message_stands_in_every_language_and_no_other() {
    let all = written();
    let english = &all["en"];
    assert!(others(&all).count() > 0, "there is another language");
    for (language, messages) in others(&all) {
        let missing: Vec<&String> = english.keys().filter(|key| !messages.contains_key(*key)).collect();
        assert!(missing.is_empty(), "missing in {language}: {missing:#?}");
        let unknown: Vec<&String> =
            messages.keys().filter(|key| !english.contains_key(*key) && !is_wood(key)).collect();
        assert!(unknown.is_empty(), "only in {language}: {unknown:#?}");
        let unnamed: Vec<String> = content()
            .woods
            .iter()
            .map(|wood| format!("wood.{}", wood.slug))
            .filter(|key| !messages.contains_key(key))
            .collect();
        assert!(unnamed.is_empty(), "woods without a name in {language}: {unnamed:#?}");
    }
}

/// Messages that count and are never shown with one: of one thing another message is shown, or there are always several.
const NEVER_ONE: [&str; 11] = [
    "app.crew.came.many",
    "app.crew.did.times",
    "app.crew.did.not-many",
    "app.crew.items.too-few",
    "app.crew.judging.few",
    "app.judging.few",
    "app.programs.case-saved",
    "app.sets.warning.long",
    "app.sets.warning.too-many",
    "app.spray.asks.crossing",
    "app.words.count",
];

/// The name of what is counted straight before an English word of many, as in `{n} more cautions`. What is told as the most of
/// something is a limit.
fn counted_as_many(message: &str) -> Option<&str> {
    const BETWEEN: [&str; 3] = ["more", "new", "own"];
    message.split('{').skip(1).filter_map(|rest| rest.split_once('}')).find_map(|(name, after)| {
        let mut words = after.strip_prefix(' ')?.split([' ', '.', ',', ';']);
        let word = words.find(|word| !BETWEEN.contains(word))?;
        let many = word == "people" || word.len() > 3 && word.ends_with('s');
        (many && !name.contains('|') && name != "most").then_some(name)
    })
}

/// That the other languages take the same words for one is held where content is read.
#[test]
fn what_is_counted_has_a_word_for_one() {
    let all = written();
    let takes_numbers =
        |name: &str| all["en"].values().any(|message| message.contains(&format!("{{{name}|")));
    let many = all["en"].iter().filter(|(_, message)| counted_as_many(message).is_some_and(takes_numbers));
    let keys: Vec<&str> = many.map(|(key, _)| key.as_str()).collect();
    let wrong: Vec<_> = keys.iter().filter(|key| !NEVER_ONE.contains(key)).collect();
    assert!(wrong.is_empty(), "`{{n|one|many}}` is missing: {wrong:#?}");
    let gone: Vec<_> = NEVER_ONE.iter().filter(|key| !keys.contains(key)).collect();
    assert!(gone.is_empty(), "these count nothing any more: {gone:#?}");
}

fn fingerprint(text: &str) -> String {
    let hash = Sha256::digest(text.as_bytes());
    hash.iter().take(4).fold(String::new(), |mut out, byte| {
        let _ = write!(out, "{byte:02x}");
        out
    })
}

fn list(language: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/translated").join(format!("{language}.csv"))
}

#[test]
fn no_message_was_translated_from_a_text_that_has_changed_since() {
    let all = written();
    let now: Messages = all["en"].iter().map(|(key, text)| (key.clone(), fingerprint(text))).collect();
    for (language, _) in others(&all) {
        let file = list(language);
        if std::env::var_os("STEPBOARD_TRANSLATED").is_some() {
            let lines: String = now.iter().map(|(key, print)| format!("{key},{print}\n")).collect();
            std::fs::write(&file, format!("key,english\n{lines}")).expect("the list can be written");
        }
        let text = std::fs::read_to_string(&file).expect("each language has its list");
        let then: Messages = text
            .lines()
            .skip(1)
            .filter_map(|line| line.split_once(','))
            .map(|(key, print)| (key.to_owned(), print.to_owned()))
            .collect();
        let stale: Vec<&String> =
            now.iter().filter(|(key, print)| then.get(*key) != Some(print)).map(|(key, _)| key).collect();
        assert!(stale.is_empty(), "read again in {language}, then `make translated`: {stale:#?}");
        assert_eq!(then.len(), now.len(), "{}: a message that is gone stands there", file.display());
    }
}

/// Figures with a comma: Spanish as the International System of Units allows it (SI Brochure, 9th edition, 5.4.4: the decimal
/// marker is the point or the comma on the line, as is customary).
#[test]
fn figures_are_written_with_the_mark_of_the_language_and_read_back() {
    let content = content();
    let said = |language: &str, measure| Voice::new(&content, language, Units::METRIC).measure(measure);
    let warm = Measure::new(21.5, Unit::Celsius, 1);
    assert_eq!(said("en", warm), "21.5 °C");
    assert_eq!(said("es", warm), "21,5 °C");
    assert_eq!(said("es", Measure::new(5.5, Unit::Day, 1)), "5,5 días");
    assert_eq!(said("es", Measure::new(220.0, Unit::Grit, 0)), "P220");
    for decimals in 0..=4 {
        let measure = Measure::new(1.234_56, Unit::Ratio, decimals);
        let spanish = content.texts("es");
        let shown = spanish.figure(measure);
        let read = read_number(&spanish.typed(&shown)).expect("what stands in a field is read");
        assert_eq!(Some(read), read_number(&measure.figure()), "{shown}");
    }
    let read = |language: &str, text: &str| read_number(&content.texts(language).typed(text));
    assert_eq!(
        (read("es", "0,785"), read("es", "21,5"), read("es", "21.5")),
        (Some(0.785), Some(21.5), Some(21.5))
    );
    assert_eq!(
        (read("es", "1.200"), read("en", "1,200")),
        (None, None),
        "a thousand, or one with three decimals?"
    );
}

/// A message that one language has and another has not is missing there, so that whoever asks finds it missing: woods are called by
/// their file in English and by a message in other languages.
#[test]
fn no_language_has_a_key_for_a_message() {
    let content = content();
    for (language, texts) in &content.texts {
        for (key, message) in texts.all() {
            assert_ne!(key, message, "{language}");
        }
    }
    assert_eq!(content.texts(ENGLISH).find("wood.mahogany"), None);
    assert!(content.texts("es").find("wood.mahogany").is_some());
}
