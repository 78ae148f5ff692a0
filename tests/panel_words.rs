//! What a drawn fault looks like in words tells no more than the eye sees: no name, no cause, no history, no remedy. What a test
//! finds out has to be paid for with its minutes by those who read the panel too (an invariant of our own, no source).

mod support;

use std::collections::{BTreeMap, BTreeSet};
use stepboard::content::Content;
use support::content;

/// Letters by which two words are held to be of one stem: "sanded", "sanding".
const STEM: usize = 5;
/// Words of a fault's name count from this length on, those of its causes and its remedy from a stem's.
const NAME: usize = 3;
/// Words of plain description that names, causes and remedies use too.
const PLAIN: [&str; 10] =
    ["colour", "coloured", "edge", "edges", "film", "from", "grain", "pores", "the", "wood"];
/// Words that tell what went before, or what came of a test.
const HISTORY: [&str; 38] = [
    "after", "again", "ago", "before", "brushed", "buffed", "came", "comes", "cured", "days", "dried",
    "dries", "dry", "fresh", "hours", "later", "minutes", "new", "old", "once", "pulled", "rubbed", "rubs",
    "sanded", "scraped", "since", "soon", "sprayed", "tested", "touch", "was", "weeks", "were", "wet",
    "wheel", "when", "wiped", "wipes",
];

fn words(text: &str) -> Vec<String> {
    let parts = text.split(|letter: char| !letter.is_alphabetic()).filter(|word| !word.is_empty());
    parts.map(str::to_lowercase).collect()
}

/// The stem of a word; one that is short stands for its plural too.
fn stem(word: &str) -> String {
    let single = if word.len() <= STEM { word.strip_suffix('s').unwrap_or(word) } else { word };
    single.chars().take(STEM).collect()
}

/// Stems that would give a fault away.
fn telling(content: &Content, fault: &str) -> BTreeSet<String> {
    let texts = content.texts("en");
    let info = content.fault(fault).expect("a fault");
    let names = [fault.to_owned(), texts.get(&format!("fault.{fault}")).to_owned()];
    let causes = info.causes.iter().map(|cause| texts.get(&format!("cause.{cause}")).to_owned());
    let remedy = texts.get(&format!("fault.{fault}.fix")).to_owned();
    let long = causes.chain([remedy]).flat_map(|text| words(&text)).filter(|word| word.len() >= STEM);
    let named = names.iter().flat_map(|name| words(name)).filter(|word| word.len() >= NAME);
    long.chain(named).filter(|word| !PLAIN.contains(&word.as_str())).map(|word| stem(&word)).collect()
}

/// What gives a fault away in a sentence.
fn given_away(content: &Content, fault: &str, sentence: &str) -> Vec<String> {
    let telling = telling(content, fault);
    let told = |word: &String| {
        let plain = PLAIN.contains(&word.as_str());
        HISTORY.contains(&word.as_str()) || (!plain && telling.contains(&stem(word)))
    };
    words(sentence).into_iter().filter(told).collect()
}

#[test]
fn a_drawn_fault_is_told_by_its_looks_alone() {
    let content = content();
    let mut faults = BTreeSet::new();
    for panel in &content.panels {
        let sentence = content.texts("en").find(&format!("seen.{}", panel.fault));
        let sentence = sentence.unwrap_or_else(|| panic!("{} has no words of its own", panel.fault));
        let given = given_away(&content, &panel.fault, sentence);
        assert!(given.is_empty(), "{}: `{sentence}` says {given:?}", panel.fault);
        faults.insert(panel.fault.as_str());
    }
    let drawn: BTreeSet<&str> = stepboard::picture::Fault::ALL.iter().map(|fault| fault.slug()).collect();
    assert_eq!(faults, drawn);
}

fn text(content: &Content, key: &str) -> String {
    content.texts("en").get(key).to_owned()
}

/// Words that differ would name the twin before it is wiped; other faults must differ, for they are named by their looks.
#[test]
fn twins_share_their_words_and_no_others_do() {
    let content = content();
    let mut alike: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    for panel in &content.panels {
        let sentence = text(&content, &format!("seen.{}", panel.fault));
        alike.entry(sentence).or_default().insert(&panel.fault);
    }
    for panel in &content.panels {
        let sentence = text(&content, &format!("seen.{}", panel.fault));
        let twins: BTreeSet<&str> = panel.twins.iter().chain([&panel.fault]).map(String::as_str).collect();
        assert_eq!(alike.get(&sentence), Some(&twins), "{}: `{sentence}`", panel.fault);
    }
}

/// Definitions of a textbook are what the test above is there to keep out.
#[test]
fn a_definition_of_a_fault_gives_it_away() {
    let content = content();
    let told = |fault: &str, sentence: &str| given_away(&content, fault, sentence);
    for fault in ["wrinkle-lift", "buff-burn", "dye-bleed", "sand-through", "tape-bridge", "edge-pullback"] {
        let looks = text(&content, &format!("fault.{fault}.looks"));
        assert!(!told(fault, &looks).is_empty(), "{fault}: `{looks}`");
    }
    assert_eq!(told("solvent-pop", "Pops in the skin."), ["pops"]);
    assert_eq!(told("sand-through", "A sanded edge of the wood."), ["sanded"]);
}
