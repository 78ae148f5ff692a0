//! Messages in other languages than English: each takes the same names, and English stands where one leaves a gap.

use super::Reader;
use crate::content::{Content, ENGLISH, Texts};
use std::collections::BTreeSet;

/// Reports messages that take other names than the English ones.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    words(content, reader);
    let Some(english) = content.texts.get(ENGLISH) else { return };
    for (language, texts) in others(content) {
        for (key, message) in texts.all() {
            let Some(wanted) = english.find(key).map(names) else { continue };
            let found = names(message);
            if found != wanted {
                let folder = format!("text/{language}");
                reader.whole(
                    &folder,
                    format!("text `{key}` takes {}, in English {}", told(&found), told(&wanted)),
                );
            }
        }
    }
}

/// Reports words of the trade that stand twice, or lack a language that there are messages in.
fn words(content: &Content, reader: &mut Reader) {
    let mut known = BTreeSet::new();
    for (index, word) in content.words.iter().enumerate() {
        if !known.insert(&word.en) {
            reader.at("word", index, "en", format!("`{}` stands twice", word.en));
        }
        for (language, _) in others(content).filter(|(language, _)| !word.others.contains_key(*language)) {
            reader.at("word", index, "en", format!("`{}` has no `in.{language}`", word.en));
        }
    }
}

/// Puts the English message where a language has none.
pub(super) fn fill_gaps(content: &mut Content) {
    let Some(english) = content.texts.get(ENGLISH).cloned() else { return };
    for (_, texts) in content.texts.iter_mut().filter(|(language, _)| *language != ENGLISH) {
        let gaps = english.all().into_iter().filter(|(key, _)| texts.find(key).is_none()).collect::<Vec<_>>();
        gaps.into_iter().for_each(|(key, message)| drop(texts.insert(key, message)));
    }
}

fn others(content: &Content) -> impl Iterator<Item = (&String, &Texts)> {
    content.texts.iter().filter(|(language, _)| *language != ENGLISH)
}

/// What a message takes: the names in braces, those of plurals with their bar.
fn names(message: &str) -> BTreeSet<String> {
    let inside = message.split('{').skip(1).filter_map(|rest| rest.split_once('}'));
    let name = |(inner, _): (&str, &str)| match inner.split_once('|') {
        Some((name, _)) => format!("{{{name}|}}"),
        None => format!("{{{inner}}}"),
    };
    inside.map(name).collect()
}

fn told(names: &BTreeSet<String>) -> String {
    if names.is_empty() { "no name".to_owned() } else { names.iter().cloned().collect::<Vec<_>>().join(", ") }
}
