//! Worksheets: their codes, the cards dealt from them again, and places on a printed panel; files of any kind of ours.

mod support;

use std::collections::HashSet;
use stepboard::card::cell::{CELLS, cells_on_fault, place_in};
use stepboard::card::{self, Answer, Card, Kind, Mark, scene};
use stepboard::content::World;
use stepboard::exchange::paper::{Entered, PaperCode};
use stepboard::exchange::set::{Set, SetCard};
use stepboard::exchange::{KINDS, Ours, Refused};
use stepboard::record::{Journal, Within};
use support::log::Log;

const SET: &str = "set-00112233445566778899aabbccddeeff";
const OTHER: &str = "set-ffeeddccbbaa99887766554433221100";

#[test]
fn a_code_is_read_as_it_was_written_whatever_its_hand() {
    let code = PaperCode::of(SET, "Ida (3)", 0);
    let written = code.to_string();
    assert_eq!((written.len(), written.find('-')), (9, Some(4)));
    for typed in
        [written.clone(), written.to_lowercase(), written.replace('-', " "), written.replace('-', "")]
    {
        assert_eq!(PaperCode::read(&typed, SET), Ok(code.clone()));
    }
    assert_eq!(PaperCode::of(SET, "Ida (3)", 0), code);
    // Among names a code is one only as it is printed.
    assert_eq!(PaperCode::read_as_printed(&written, SET), Ok(code.clone()));
    for typed in [written.to_lowercase(), written.replace('-', ""), "Margaret".to_owned()] {
        assert!(PaperCode::read_as_printed(&typed, SET).is_err(), "{typed}");
    }
    let others: HashSet<String> =
        (0..500).map(|copy| PaperCode::of(SET, "Ida (3)", copy).to_string()).collect();
    assert_eq!(others.len(), 500, "each copy has a code of its own");
}

#[test]
fn a_worksheet_goes_on_behind_the_cards_that_were_typed_in() {
    let code = PaperCode::of(SET, "", 0);
    let mut log = Log::new("a", "Ana");
    let within = |set: &str| Within::Paper { set: set.to_owned(), code: code.to_string() };
    // Neither practice nor another set on paper is of this worksheet.
    log.answer("mask-wants", true);
    log.within = within(OTHER);
    log.answer("mask-wants", true);
    log.within = within(SET);
    log.answer("mask-wants", true).answer("pore-filler", false);
    let journal = Journal::new(log.events.clone());
    let named = |place: usize| {
        let entry = journal.answers().nth(place).expect("answered");
        (entry.family.clone(), entry.seed)
    };
    // The second card was left out on the paper, so it is asked still.
    let cards = [named(2), ("open".to_owned(), 7), named(3), ("last".to_owned(), 8)];
    let entered = Entered::of(&journal, "Ana", SET, &code);
    assert_eq!((entered.count(), entered.right()), (2, 1));
    assert_eq!([0, 1, 2, 3, 4].map(|from| entered.next(&cards, from)), [1, 1, 3, 3, 4]);
    // Somebody else's worksheet of the same code, as those without a name may have.
    assert_eq!(Entered::of(&journal, "Bo", SET, &code), Entered::default());
}

/// ISO 2108:1992, annex on the check digit of an ISBN of ten digits: weights that differ for each place and a prime modulus
/// notice every single wrong digit and every two that changed places.
#[test]
fn a_slip_of_the_pen_in_a_code_is_noticed() {
    for person in ["Ida (3)", "Bo", "", "12"] {
        let code = PaperCode::of(SET, person, 0).to_string().replace('-', "");
        for (at, was) in code.char_indices() {
            for letter in ('0'..='9').chain('A'..='Z').filter(|letter| *letter != was) {
                let slip = format!("{}{letter}{}", &code[..at], &code[at + 1..]);
                assert!(PaperCode::read(&slip, SET).is_err(), "{code} as {slip}");
            }
        }
        let letters: Vec<char> = code.chars().collect();
        for (one, other) in (0..8).flat_map(|one| (0..one).map(move |other| (one, other))) {
            let mut turned = letters.clone();
            turned.swap(one, other);
            let slip: String = turned.iter().collect();
            assert!(turned == letters || PaperCode::read(&slip, SET).is_err(), "{code} as {slip}");
        }
    }
    let typed = PaperCode::of(OTHER, "Bo", 0).to_string();
    let refused = PaperCode::read(&typed, SET).expect_err("a worksheet of another set");
    assert!(refused.to_string().contains("a worksheet of this set is wanted"), "{refused}");
    for (typed, allowed) in [("K7M", "8 letters and digits"), ("K7MQ-2R4O", "I, L and O"), ("", "8 letters")]
    {
        let refused = PaperCode::read(typed, SET).expect_err("no code");
        assert!(refused.to_string().contains(allowed), "{refused}");
    }
}

fn computed(cards: Vec<SetCard<'_>>) -> Vec<Card> {
    cards
        .into_iter()
        .filter_map(|card| if let SetCard::Computed(card) = card { Some(card) } else { None })
        .collect()
}

#[test]
fn the_cards_of_a_worksheet_are_dealt_again_from_its_code_alone() {
    let content = support::content();
    for ships in &content.sets {
        let set = Set::ready(&content, ships).expect("a set that ships");
        let sheet = set.sheet_of(&content).expect("its sheet");
        let world = World { content: &content, sheet: &sheet };
        let ida = PaperCode::of(&ships.slug, "Ida (3)", 0);
        let again = PaperCode::read(&ida.to_string(), &ships.slug).expect("a code");
        let cards = computed(ida.cards(&set, &ships.slug, &world));
        assert_eq!(cards, computed(again.cards(&set, &ships.slug, &world)));
        assert_eq!(u32::try_from(cards.len()), Ok(ships.task.count));
        let bo = computed(PaperCode::of(&ships.slug, "Bo", 0).cards(&set, &ships.slug, &world));
        assert_eq!(bo == cards, ships.task.same_seed.is_some(), "{}: others for another person", ships.slug);
    }
}

#[test]
fn worksheets_without_a_name_have_cards_of_their_own_unless_the_set_asks_all_the_same() {
    const COPIES: u32 = 12;
    let content = support::content();
    let ships =
        content.sets.iter().find(|set| set.task.same_seed.is_none()).expect("a set with cards for each");
    let own = Set::ready(&content, ships).expect("a set that ships");
    let mut same = own.clone();
    same.task.same_seed = Some(7);
    let sheet = own.sheet_of(&content).expect("its sheet");
    let world = World { content: &content, sheet: &sheet };
    for (set, hands) in [(&own, COPIES), (&same, 1)] {
        let id = set.id();
        let codes: Vec<PaperCode> = (0..COPIES).map(|copy| PaperCode::of(&id, "", copy)).collect();
        let printed: HashSet<String> = codes.iter().map(ToString::to_string).collect();
        assert_eq!(u32::try_from(printed.len()), Ok(COPIES), "each copy has a code of its own");
        let mut dealt = HashSet::new();
        for code in &codes {
            let cards = computed(code.cards(set, &id, &world));
            // What is typed off the paper finds the cards that were printed.
            let typed = PaperCode::read(&code.to_string().to_lowercase(), &id).expect("a code");
            assert_eq!(computed(typed.cards(set, &id, &world)), cards);
            dealt.insert(cards.iter().map(|card| (card.family.clone(), card.seed)).collect::<Vec<_>>());
        }
        assert_eq!(u32::try_from(dealt.len()), Ok(hands), "{:?}", set.task.same_seed);
    }
}

#[test]
fn a_cross_on_the_fault_is_right_and_one_away_from_it_is_wrong() {
    let content = support::content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let families = content.families.iter().map(|family| family.id.as_str());
    let mut dealt =
        families.flat_map(|family| (0..6).filter_map(move |seed| card::deal(&world, family, seed).ok()));
    let on_fault = |card: &Card| {
        card.kind == Kind::Point
            && card::solve(card, &world).is_some_and(|solution| solution.right == Answer::OnTheFault)
    };
    let card = dealt.find(on_fault).expect("a card that asks for a place");
    let mark = |cell| {
        let place = place_in(&card, &content, cell).expect("a cell of the panel");
        card::grade(&card, &world, &Answer::Place(place)).expect("a family").mark
    };
    let on = cells_on_fault(&card, &content);
    let first = on.first().expect("the fault is somewhere");
    assert_eq!(mark(*first), Mark::Right, "{} {}", card.family, card.seed);
    // Further away than a tap reaches is beside it: a cell whose neighbours are free of it as well.
    let near = |cell: (usize, usize)| {
        on.iter().any(|one| one.0.abs_diff(cell.0) <= 1 && one.1.abs_diff(cell.1) <= 1)
    };
    let mut cells = (0..CELLS.0).flat_map(|x| (0..CELLS.1).map(move |y| (x, y)));
    let away = cells.find(|cell| !near(*cell)).expect("a cell away from it");
    assert_eq!(mark(away), Mark::Wrong, "{} {}", card.family, card.seed);
    assert!(place_in(&card, &content, (CELLS.0, 0)).is_none());
    assert_eq!(scene::panels(&card, &content).len(), 1);
}

#[test]
fn a_file_of_no_kind_of_ours_is_refused_by_its_name() {
    let content = support::content();
    let refused = |text: &str| Ours::read(text.as_bytes(), &content).expect_err("none of ours");
    let other = refused(r#"{"format":"holiday","version":1}"#).to_string();
    for kind in KINDS {
        assert!(other.contains("`format` is holiday") && other.contains(kind.format), "{other}");
        let later = refused(&format!(r#"{{"format":"{}","version":999}}"#, kind.format)).to_string();
        assert!(later.contains("`version` is 999"), "{later}");
    }
    assert!(matches!(refused("{"), Refused::Form { line: 1, .. }));
    // Results from before they were a file are a bare list of events.
    assert!(matches!(refused("[{"), Refused::Form { line: 1, .. }));
    for none in ["[]", "7", "null", "not json", "\u{feff}{}", "{}"] {
        assert!(matches!(refused(none), Refused::NotOurs { .. }), "{none}");
    }
}
