//! CASE 1.1: what a framework must have. Members and kinds of associations as in public descriptions of the standard that
//! `src/exchange/standards/case.rs` goes by; its information model itself was not at hand.

use super::home;
use crate::support::content;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use stepboard::content::Content;
use stepboard::exchange::framework;

const CHANGED: &str = "2027-03-12T00:00:00Z";

fn made(content: &Content) -> Value {
    framework(content, &home(), "A shop", CHANGED)
}

fn list<'a>(of: &'a Value, name: &str) -> &'a Vec<Value> {
    of[name].as_array().expect("a list")
}

fn text<'a>(of: &'a Value, name: &str) -> &'a str {
    of[name].as_str().unwrap_or_else(|| panic!("{name} is missing in {of}"))
}

#[test]
fn every_node_has_what_is_required() {
    let content = content();
    let told = made(&content);
    for name in ["identifier", "uri", "title", "creator", "lastChangeDateTime"] {
        assert!(!text(&told["CFDocument"], name).is_empty());
    }
    let criteria: usize = content.competencies.iter().map(|one| one.criteria.len()).sum();
    assert_eq!(list(&told, "CFItems").len(), content.competencies.len() + criteria);
    let mut ids: BTreeSet<&str> = BTreeSet::from([text(&told["CFDocument"], "identifier")]);
    for item in list(&told, "CFItems") {
        assert!(ids.insert(text(item, "identifier")), "two of {item}");
        assert!(text(item, "uri").ends_with(text(item, "identifier")));
        assert!(
            !text(item, "fullStatement").is_empty() && !text(item, "fullStatement").starts_with("criterion.")
        );
        assert_eq!(text(item, "lastChangeDateTime"), CHANGED);
        assert!(!text(item, "humanCodingScheme").is_empty() && !text(item, "CFItemType").is_empty());
    }
    for link in list(&told, "CFAssociations") {
        assert!(ids.insert(text(link, "identifier")), "two of {link}");
        assert_eq!(text(link, "lastChangeDateTime"), CHANGED);
        assert!(["isChildOf", "precedes"].contains(&text(link, "associationType")));
        for end in ["originNodeURI", "destinationNodeURI"] {
            assert!(
                ids.contains(text(&link[end], "identifier")),
                "{end} of {link} is a node of the framework"
            );
            assert!(!text(&link[end], "title").is_empty() && text(&link[end], "uri").starts_with("https://"));
        }
    }
}

#[test]
fn the_tree_and_what_comes_before_are_those_of_the_content() {
    let content = content();
    let told = made(&content);
    let code: BTreeMap<&str, &str> = list(&told, "CFItems")
        .iter()
        .map(|item| (text(item, "identifier"), text(item, "humanCodingScheme")))
        .collect();
    let of = |kind: &str| -> BTreeSet<(String, String)> {
        let name = |end: &Value| code.get(text(end, "identifier")).copied().unwrap_or("document").to_owned();
        let links = list(&told, "CFAssociations").iter().filter(|link| text(link, "associationType") == kind);
        links.map(|link| (name(&link["originNodeURI"]), name(&link["destinationNodeURI"]))).collect()
    };
    let mut tree = BTreeSet::new();
    let mut before = BTreeSet::new();
    for one in &content.competencies {
        tree.insert((one.slug.clone(), "document".to_owned()));
        tree.extend(one.criteria.iter().map(|criterion| (criterion.id.clone(), one.slug.clone())));
        before.extend(
            one.needs.iter().chain(&one.needs_knowledge).map(|slug| (slug.clone(), one.slug.clone())),
        );
    }
    assert_eq!((of("isChildOf"), of("precedes")), (tree, before));
}

/// Whatever keeps its words keeps its name; what is said otherwise is another item.
#[test]
fn unchanged_items_keep_their_names() {
    let mut content = content();
    let names = |content: &Content| -> BTreeMap<String, String> {
        let told = made(content);
        list(&told, "CFItems")
            .iter()
            .map(|item| (text(item, "humanCodingScheme").to_owned(), text(item, "identifier").to_owned()))
            .collect()
    };
    let before = names(&content);
    content.competencies[0].criteria.pop();
    let fewer = names(&content);
    assert_eq!(fewer.len() + 1, before.len());
    assert!(fewer.iter().all(|(code, name)| before[code] == *name));
}
