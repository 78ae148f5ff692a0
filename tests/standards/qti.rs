//! QTI 3.0: names and structure as in the standard's official examples (1EdTech, repository of examples, commit 9811473).

use crate::support::{base, content};
use roxmltree::{Document, Node};
use std::sync::LazyLock;
use stepboard::card::{Answer, Kind, Mark, Voice, deal, grade, solve};
use stepboard::content::{Content, Units, World};
use stepboard::exchange::paper::PaperCode;
use stepboard::exchange::set::{OwnCard, Set, SetCard};
use stepboard::exchange::{Items, LeftOut, items, items_of_set};
use stepboard::quantity::Measure;

const ITEM: &str = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
const PACKAGE: &str = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1";
const TEMPLATE: &str = "https://purl.imsglobal.org/spec/qti/v3p0/rptemplates/match_correct.xml";
const SEEDS: u32 = 1;

/// Every family, some seeds each.
fn cards(content: &Content) -> Vec<(String, u32)> {
    content.families.iter().flat_map(|family| (0..SEEDS).map(|seed| (family.id.clone(), seed))).collect()
}

/// All of them as a package, made once.
fn package() -> &'static Items {
    static MADE: LazyLock<Items> = LazyLock::new(|| {
        let content = content();
        items(&World { content: &content, sheet: &base() }, Units::METRIC, &cards(&content))
    });
    &MADE
}

fn named<'a>(node: Node<'a, 'a>, name: &str) -> Vec<Node<'a, 'a>> {
    node.descendants().filter(|one| one.has_tag_name((ITEM, name))).collect()
}

fn only<'a>(node: Node<'a, 'a>, name: &str) -> Node<'a, 'a> {
    let found = named(node, name);
    assert_eq!(found.len(), 1, "one {name}");
    found[0]
}

fn values(node: Node<'_, '_>) -> Vec<String> {
    let values = node.descendants().filter(|one| one.has_tag_name((ITEM, "qti-value")));
    values.map(|one| one.text().unwrap_or_default().to_owned()).collect()
}

#[test]
fn the_manifest_names_every_file_once() {
    let made = package();
    let files = &made.files;
    assert_eq!(files[0].0, "imsmanifest.xml");
    let text = String::from_utf8(files[0].1.clone()).expect("text");
    let manifest = Document::parse(&text).expect("well-formed");
    assert!(manifest.root_element().has_tag_name((PACKAGE, "manifest")));
    let resources: Vec<Node<'_, '_>> =
        manifest.descendants().filter(|one| one.has_tag_name((PACKAGE, "resource"))).collect();
    let mut listed: Vec<&str> = resources.iter().filter_map(|one| one.attribute("href")).collect();
    assert!(resources.iter().all(|one| one.attribute("type") == Some("imsqti_item_xmlv3p0")));
    assert!(resources.iter().all(|one| one.attribute("identifier").is_some()));
    listed.sort_unstable();
    let mut there: Vec<&str> = files.iter().skip(1).map(|(path, _)| path.as_str()).collect();
    there.sort_unstable();
    assert_eq!(listed, there);
    assert!(there.len() > 80, "{} items", there.len());
}

/// Each item has what is required, and its correct response is what the model answers.
#[test]
fn every_item_answers_as_the_model_does() {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    let made = package();
    let mut files = made.files.iter().skip(1);
    let mut seen = [0; 4];
    for (family, seed) in cards(&content) {
        if made.left_out.iter().any(|(of, nth, _)| (of, *nth) == (&family, seed)) {
            continue;
        }
        let (path, text) = files.next().expect("an item");
        let text = std::str::from_utf8(text).expect("text");
        let item = Document::parse(text).unwrap_or_else(|error| panic!("{path}: {error}"));
        let root = item.root_element();
        assert!(root.has_tag_name((ITEM, "qti-assessment-item")));
        for name in ["identifier", "title", "time-dependent"] {
            assert!(root.attribute(name).is_some_and(|value| !value.is_empty()), "{path}: {name}");
        }
        assert_eq!(path, &format!("items/{}.xml", root.attribute("identifier").expect("told")));
        let declared = only(root, "qti-response-declaration");
        assert_eq!(declared.attribute("identifier"), Some("RESPONSE"));
        assert_eq!(only(root, "qti-outcome-declaration").attribute("identifier"), Some("SCORE"));
        let card = deal(&world, &family, seed).expect("dealt");
        let right = solve(&card, &world).expect("solved").right;
        let (place, cardinality, interaction) = match card.kind {
            Kind::ChooseOne => (0, "single", "qti-choice-interaction"),
            Kind::ChooseAll => (1, "multiple", "qti-choice-interaction"),
            Kind::Order => (2, "ordered", "qti-order-interaction"),
            Kind::Number => (3, "single", "qti-text-entry-interaction"),
            other => panic!("{other:?} is no item"),
        };
        seen[place] += 1;
        assert_eq!(declared.attribute("cardinality"), Some(cardinality));
        let asks = only(root, interaction);
        assert_eq!(asks.attribute("response-identifier"), Some("RESPONSE"));
        // What the options say is what the app says.
        let choices = named(root, "qti-simple-choice");
        let voice = Voice::new(&content, "en", Units::METRIC);
        let meant: Vec<Answer> = values(declared)
            .iter()
            .map(|value| match choices.iter().position(|one| one.attribute("identifier") == Some(value)) {
                Some(place) if place < card.options.len() => card.options[place].clone(),
                Some(_) => Answer::NotEnough,
                None => Answer::Number(Measure::new(
                    value.parse().expect("a number"),
                    card.unit.expect("a unit"),
                    6,
                )),
            })
            .collect();
        for (choice, option) in choices.iter().zip(&card.options) {
            assert_eq!(
                choice.text().unwrap_or_default().trim(),
                voice.answer(&family, option).trim(),
                "{path}"
            );
        }
        let terms = || {
            meant
                .iter()
                .filter_map(|one| if let Answer::Term(slug) = one { Some(slug.clone()) } else { None })
        };
        let answer = match card.kind {
            Kind::ChooseAll if meant != [Answer::NotEnough] => Answer::Terms(terms().collect()),
            Kind::Order => Answer::Order(terms().collect()),
            _ => meant[0].clone(),
        };
        let graded = grade(&card, &world, &answer).expect("graded");
        assert_eq!(graded.mark, Mark::Right, "{family}:{seed} {answer:?}, right is {right:?}");
        scores(root, card.kind);
    }
    assert!(files.next().is_none() && seen.iter().all(|count| *count >= 4), "{seen:?}");
}

/// The standard's template scores what is right or not; a number by its tolerance, several right orders one by one.
fn scores(root: Node<'_, '_>, kind: Kind) {
    let processing = only(root, "qti-response-processing");
    match processing.attribute("template") {
        Some(template) => assert!(template == TEMPLATE && kind != Kind::Number),
        None if kind == Kind::Number => {
            let equal = only(processing, "qti-equal");
            assert_eq!(equal.attribute("tolerance-mode"), Some("absolute"));
            let room: Vec<f64> = equal
                .attribute("tolerance")
                .expect("told")
                .split(' ')
                .map(|one| one.parse().expect("a number"))
                .collect();
            assert!(room.len() == 2 && room[0] >= 0.0 && room[0] == room[1]);
        }
        None => {
            assert!(kind == Kind::Order && named(processing, "qti-ordered").len() > 1);
            assert_eq!(named(only(processing, "qti-response-else"), "qti-base-value").len(), 1);
        }
    }
}

/// A tolerance of QTI lets pass what the model lets pass, and no more.
#[test]
fn a_number_is_scored_as_the_model_grades_it() {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    let mut tried = 0;
    for (family, seed) in cards(&content) {
        let Ok(card) = deal(&world, &family, seed) else { continue };
        let Some(Answer::Number(right)) =
            solve(&card, &world).map(|solution| solution.right).filter(|_| card.kind == Kind::Number)
        else {
            continue;
        };
        let made = items(&world, Units::METRIC, &[(family.clone(), seed)]);
        let text = String::from_utf8(made.files[1].1.clone()).expect("text");
        let item = Document::parse(&text).expect("well-formed");
        let room = only(item.root_element(), "qti-equal").attribute("tolerance").expect("told");
        let room: f64 = room.split(' ').next().expect("one").parse().expect("a number");
        let asked = right.in_unit(card.unit.expect("a unit"));
        for (share, passes) in [(0.0, true), (0.99, true), (-0.99, true), (1.01, false), (-1.01, false)] {
            let given = Answer::Number(Measure { value: asked.value + share * room, ..asked });
            let mark = grade(&card, &world, &given).expect("graded").mark;
            assert!(room == 0.0 || (mark == Mark::Right) == passes, "{family}:{seed}, {share} of {room}");
        }
        tried += 1;
    }
    assert!(tried > 10, "{tried}");
}

#[test]
fn what_is_no_item_says_why() {
    let made = package();
    for why in [LeftOut::Picture, LeftOut::NotEnough] {
        assert!(made.left_out.iter().any(|(_, _, found)| *found == why), "{why:?}");
    }
    let unknown =
        items(&World { content: &content(), sheet: &base() }, Units::METRIC, &[("no-such".to_owned(), 1)]);
    assert_eq!(unknown.left_out, [("no-such".to_owned(), 1, LeftOut::NoCard)]);
    assert_eq!(unknown.files.len(), 1);
}

/// A set as a package: what a worksheet of it asks, in its order, the shop's own cards among them.
#[test]
fn a_set_is_its_cards_and_what_was_left_out() {
    let content = content();
    let ships = content.sets.iter().find(|set| set.slug == "first-week").expect("ships");
    let mut set = Set::ready(&content, ships).expect("its sheet ships");
    set.own_cards = vec![OwnCard {
        question: "Where does the <key> of the store hang?".to_owned(),
        options: ["Office", "Booth", "Bench"].map(str::to_owned).to_vec(),
        right: vec![1, 3],
        why: "The house rule says so.".to_owned(),
        ..OwnCard::default()
    }];
    let sheet = set.sheet_of(&content).expect("known");
    let world = World { content: &content, sheet: &sheet };
    let id = set.id();
    let cards = PaperCode::of(&id, "", 0).cards(&set, &id, &world);
    let made = items_of_set(&world, Units::METRIC, &cards);
    assert_eq!(made.files.len() - 1 + made.left_out.len(), cards.len());
    let mut files = made.files.iter().skip(1);
    for card in &cards {
        let SetCard::Computed(card) = card else { continue };
        if made.left_out.iter().any(|(family, seed, _)| (family, *seed) == (&card.family, card.seed)) {
            continue;
        }
        let alone = items(&world, Units::METRIC, &[(card.family.clone(), card.seed)]);
        assert_eq!(files.next(), alone.files.get(1), "{}:{}", card.family, card.seed);
    }
    let text = String::from_utf8(files.next().expect("the shop's own").1.clone()).expect("text");
    let item = Document::parse(&text).expect("well-formed");
    let root = item.root_element();
    assert_eq!(only(root, "qti-prompt").text(), Some("Where does the <key> of the store hang?"));
    assert_eq!(only(root, "qti-response-declaration").attribute("cardinality"), Some("multiple"));
    assert_eq!(values(only(root, "qti-response-declaration")), ["OPTION_1", "OPTION_3"]);
    let said = named(root, "qti-simple-choice").into_iter().map(|one| one.text().unwrap_or_default().trim());
    assert_eq!(said.collect::<Vec<_>>(), ["Office", "Booth", "Bench"]);
    assert_eq!(only(root, "qti-choice-interaction").attribute("max-choices"), Some("0"));
}

/// XML 1.0, sections 2.2 and 2.4: words are words, whatever stands in them.
#[test]
fn text_is_escaped() {
    let mut content = content();
    let texts = content.texts.get_mut("en").expect("ships");
    let hostile = "</p><script>&amp;\"'\u{0}\u{1b}]]>";
    let keys: Vec<String> = texts
        .all()
        .into_keys()
        .filter(|key| key.starts_with("card.wants-filler."))
        .map(str::to_owned)
        .collect();
    for key in keys {
        texts.insert(key, hostile.to_owned());
    }
    let made =
        items(&World { content: &content, sheet: &base() }, Units::METRIC, &[("wants-filler".to_owned(), 7)]);
    let text = String::from_utf8(made.files[1].1.clone()).expect("text");
    let item = Document::parse(&text).expect("well-formed");
    assert!(item.descendants().all(|one| one.tag_name().name() != "script"));
    assert_eq!(only(item.root_element(), "qti-prompt").text(), Some("</p><script>&amp;\"']]>"));
}
