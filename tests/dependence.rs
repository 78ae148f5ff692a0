//! What depends on what, found and not declared: every value of the shop sheet, every wood, every ticket and the room
//! are changed one at a time, and the answers that were right are graded anew. Families that none of these turn must
//! answer from what their cards tell. No answer is stored anywhere.

mod support;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use stepboard::bench::FactValue;
use stepboard::card::deal::OPTIONS_MOST;
use stepboard::card::{Answer, Ask, Card, Dice, Kind, Mark, deal, families, grade, solve};
use stepboard::content::{Binding, ColourPlan, Content, Ticket, World};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Filler, Look, Term, WorkClass};
use stepboard::rules::wood::{Cut, FillerNeed, PoreSize, Porosity, Wood, WoodTrouble};
use support::{at_once, content, seeds};

/// Seeds of each family on each sheet.
const SEEDS: u32 = 40;
/// A setting is moved by so many of its steps, up and down, and to its floor and ceiling.
const STEPS: [f64; 3] = [1.0, 3.0, 10.0];
/// Families that must answer from sheet, wood, ticket or room.
const DEPENDING_LEAST: usize = 25;
/// Facts of the room.
const ROOM: [&str; 3] = ["air_c", "rh", "work_c"];
/// A fact of the room is moved by so much, up and down.
const ROOM_MOVES: [f64; 4] = [-12.0, -4.0, 4.0, 12.0];

/// A card with the answer that is right as dealt.
struct Dealt {
    card: Card,
    right: Answer,
}

/// Cards by family.
type Cards = BTreeMap<String, Vec<Dealt>>;

fn dealt(world: &World<'_>) -> Cards {
    let cards = |id: &str| {
        let one = |seed| {
            let card = deal(world, id, seed).expect("a card");
            let right = solve(&card, world).expect("a question").right;
            Dealt { card, right }
        };
        seeds(SEEDS).map(one).collect()
    };
    world.content.families.iter().map(|family| (family.id.clone(), cards(&family.id))).collect()
}

/// Whether the answer that was right is right no more. What the model answers instead is then graded right.
fn turned(one: &Dealt, world: &World<'_>) -> bool {
    let mark = |answer: &Answer| grade(&one.card, world, answer).expect("graded").mark;
    if mark(&one.right) == Mark::Right {
        return false;
    }
    let anew = solve(&one.card, world).expect("a question").right;
    assert!(anew != one.right, "{}: the same answer is graded wrong", one.card.family);
    let none_left = matches!(&anew, Answer::Terms(terms) if terms.is_empty());
    assert!(none_left || mark(&anew) == Mark::Right, "{}: its own answer is refused", one.card.family);
    true
}

/// Which families answer differently, by what was changed.
#[derive(Default)]
struct Found(BTreeMap<String, BTreeSet<String>>);

impl Found {
    /// What was found of one change so far.
    fn of(&self, what: &str) -> Self {
        Self(
            self.0
                .get_key_value(what)
                .into_iter()
                .map(|(what, families)| (what.clone(), families.clone()))
                .collect(),
        )
    }

    fn look(&mut self, what: &str, cards: &Cards, world: &World<'_>) {
        let families = self.0.entry(what.to_owned()).or_default();
        for (family, cards) in cards {
            if !families.contains(family) && cards.iter().any(|one| turned(one, world)) {
                families.insert(family.clone());
            }
        }
    }
}

/// Other values that a setting may take.
fn others(content: &Content, sheet: &Sheet, setting: Setting) -> Vec<f64> {
    let held = sheet.held(setting);
    let step = content.settings.iter().find(|info| info.key == setting).expect("every setting").step;
    let moved = STEPS.iter().flat_map(|steps| [held.value - steps * step, held.value + steps * step]);
    let mut values: Vec<f64> = moved
        .chain([held.floor, held.ceiling])
        .filter(|value| (held.floor..=held.ceiling).contains(value) && *value != held.value)
        .collect();
    values.sort_by(f64::total_cmp);
    values.dedup();
    values
}

/// The next term of a closed list.
fn next<T: Term + PartialEq>(term: T) -> T {
    let at = T::ALL.iter().position(|one| *one == term).expect("a term of its list");
    T::ALL[(at + 1) % T::ALL.len()]
}

/// A change with its name.
type Change<T> = (&'static str, fn(&mut T));

/// Ways to change the data of every wood.
fn wood_changes() -> Vec<Change<Wood>> {
    vec![
        ("wood: filler", |wood| {
            wood.filler = if wood.filler == FillerNeed::Yes { FillerNeed::No } else { FillerNeed::Yes };
        }),
        ("wood: pores", |wood| {
            wood.pores = if wood.pores == PoreSize::Large { PoreSize::Small } else { PoreSize::Large };
        }),
        ("wood: porosity", |wood| wood.porosity = next::<Porosity>(wood.porosity)),
        ("wood: trouble", |wood| {
            let all = WoodTrouble::ALL.iter().copied();
            wood.trouble = all.filter(|one| !wood.trouble.contains(one)).collect();
        }),
        ("wood: movement", |wood| {
            if let Some(movement) = &mut wood.movement {
                movement.radial *= 2.0;
                movement.tangential *= 3.0;
            }
        }),
    ]
}

/// Ways to change every ticket.
fn ticket_changes() -> Vec<Change<Ticket>> {
    vec![
        ("ticket: class", |ticket| ticket.class = next::<WorkClass>(ticket.class)),
        ("ticket: look", |ticket| ticket.look = next::<Look>(ticket.look)),
        ("ticket: colour", |ticket| ticket.colour = next::<ColourPlan>(ticket.colour)),
        ("ticket: shaded", |ticket| ticket.shaded = !ticket.shaded),
        ("ticket: binding", |ticket| ticket.binding = next::<Binding>(ticket.binding)),
        ("ticket: filler", |ticket| ticket.filler = next::<Filler>(ticket.filler)),
        ("ticket: coats", |ticket| ticket.clear_coats += 3),
        ("ticket: days", |ticket| ticket.days /= 4),
        ("ticket: cut", |ticket| ticket.parts.iter_mut().for_each(|part| part.cut = next::<Cut>(part.cut))),
        ("ticket: width", |ticket| ticket.parts.iter_mut().for_each(|part| part.width_mm *= 2.0)),
    ]
}

/// Cards with one fact of the room moved, within the fact's range.
fn moved(content: &Content, key: &str, cards: &Cards) -> Cards {
    let info = content.fact(key).expect("a fact of the room");
    let shifted = |one: &Dealt| {
        let told = one.card.facts.maybe_number(key)?;
        Some(ROOM_MOVES.map(|by| {
            let mut card = one.card.clone();
            let value = (told + by).clamp(info.min, info.max);
            card.facts.0.insert(key.to_owned(), FactValue::Number(value));
            Dealt { card, right: one.right.clone() }
        }))
    };
    cards
        .iter()
        .map(|(id, cards)| (id.clone(), cards.iter().filter_map(shifted).flatten().collect()))
        .collect()
}

/// Changes one thing after the other and gathers what turned.
fn search(content: &Content) -> Found {
    let mut found = Found::default();
    for sheet in &content.sheets {
        let world = World { content, sheet };
        let cards = dealt(&world);
        let of_settings = at_once::each(Setting::ALL, |setting| {
            let mut found = found.of(setting.slug());
            for value in others(content, sheet, *setting) {
                let changed = sheet.with(*setting, value).expect("within floor and ceiling");
                found.look(setting.slug(), &cards, &World { content, sheet: &changed });
            }
            found
        });
        found.0.extend(of_settings.into_iter().flat_map(|one| one.0));
        for (what, change) in wood_changes() {
            let mut content = content.clone();
            content.woods.iter_mut().for_each(change);
            found.look(what, &cards, &World { content: &content, sheet });
        }
        for (what, change) in ticket_changes() {
            let mut content = content.clone();
            content.tickets.iter_mut().for_each(change);
            found.look(what, &cards, &World { content: &content, sheet });
        }
        for key in ROOM {
            found.look(&format!("room: {key}"), &moved(content, key, &cards), &world);
        }
    }
    found
}

/// A card that asks for an order, its steps laid out anew from what it tells; other cards as they are.
fn laid_out(mut card: Card, world: &World<'_>) -> Card {
    if let Some(Ask::Order { items, .. }) = families::find(&card.family).map(|question| question.ask) {
        let items = items(&card.facts, world, &mut Dice::new("laid out"));
        card.options = items.into_iter().map(|item| Answer::Term(item.slug)).take(OPTIONS_MOST).collect();
    }
    card
}

/// Cards with one told fact changed to what another card of the family tells, by that fact.
fn retold(world: &World<'_>, cards: &[Dealt]) -> BTreeMap<String, Vec<Dealt>> {
    let mut told: BTreeMap<&String, Vec<&FactValue>> = BTreeMap::new();
    for (key, value) in cards.iter().flat_map(|one| &one.card.facts.0) {
        let values = told.entry(key).or_default();
        if !values.contains(&value) {
            values.push(value);
        }
    }
    let mut changed: BTreeMap<String, Vec<Dealt>> = BTreeMap::new();
    for one in cards.iter().filter(|one| one.right != Answer::NotEnough) {
        let as_dealt = laid_out(one.card.clone(), world);
        let right = solve(&as_dealt, world).expect("a question").right;
        for (key, held) in &as_dealt.facts.0 {
            for value in told[key].iter().filter(|value| **value != held) {
                let mut card = as_dealt.clone();
                card.facts.0.insert(key.clone(), (*value).clone());
                let card = laid_out(card, world);
                changed.entry(key.clone()).or_default().push(Dealt { card, right: right.clone() });
            }
        }
    }
    changed
}

/// Which told facts, changed alone, turn a family's answer into another one that is no "not enough is told".
fn deciding(world: &World<'_>, cards: &[Dealt]) -> Vec<String> {
    let another = |one: &Dealt| {
        solve(&one.card, world).expect("a question").right != Answer::NotEnough && turned(one, world)
    };
    let changed = retold(world, cards).into_iter();
    changed.filter(|(_, cards)| cards.iter().any(another)).map(|(key, _)| key).collect()
}

/// Every family that nothing else turns answers from what its card tells; those that do not are returned.
fn frozen<'a>(content: &Content, ids: &[&'a str]) -> Vec<&'a str> {
    let worlds = content.sheets.iter().map(|sheet| World { content, sheet });
    let cards: Vec<(World<'_>, Cards)> = worlds.map(|world| (world, dealt(&world))).collect();
    println!("\n| family | told facts that turn its answer |\n|---|---|");
    let found: Vec<BTreeSet<String>> = at_once::each(ids, |id| {
        cards.iter().flat_map(|(world, cards)| deciding(world, &cards[*id])).collect()
    });
    let mut frozen = Vec::new();
    for (id, keys) in ids.iter().zip(found) {
        println!("| {id} | {} |", keys.iter().cloned().collect::<Vec<_>>().join(", "));
        frozen.extend(keys.is_empty().then_some(*id));
    }
    frozen
}

#[test]
fn families_answer_from_sheet_wood_ticket_and_room() {
    let content = content();
    let found = search(&content);
    println!("| changed | families that answer differently |\n|---|---|");
    for (what, families) in found.0.iter().filter(|(_, families)| !families.is_empty()) {
        println!("| {what} | {} |", families.iter().cloned().collect::<Vec<_>>().join(", "));
    }
    let idle: Vec<&String> =
        found.0.iter().filter(|(_, families)| families.is_empty()).map(|(what, _)| what).collect();
    println!("\nNo card depends on: {idle:?}");
    let depending: BTreeSet<&String> = found.0.values().flatten().collect();
    println!("\n{} of {} families depend: {depending:?}", depending.len(), content.families.len());
    let alone: Vec<&str> = content.families.iter().map(|family| family.id.as_str()).collect();
    // The right place on a panel moves with every panel: `panels.rs` draws them. What passes on a face moves with all that its
    // card tells: `spray_cards.rs` sprays it.
    let points = |id: &str| {
        families::find(id).is_some_and(|question| [Kind::Point, Kind::Spray].contains(&question.kind()))
    };
    let alone: Vec<&str> =
        alone.into_iter().filter(|id| !depending.iter().any(|one| one == id) && !points(id)).collect();
    println!("\nOthers: {alone:?}");
    assert!(depending.len() >= DEPENDING_LEAST, "{} families depend", depending.len());
    let frozen = frozen(&content, &alone);
    assert!(frozen.is_empty(), "no told fact turns the answer of {frozen:?}");
}

/// Keys that would hold an answer.
fn answer_keys(value: &toml::Value, path: &str, into: &mut Vec<String>) {
    match value {
        toml::Value::Table(table) => {
            for (key, value) in table {
                let here = format!("{path}.{key}");
                if ["answer", "answers", "right", "correct", "solution", "key_answer"].contains(&key.as_str())
                {
                    into.push(here.clone());
                }
                answer_keys(value, &here, into);
            }
        }
        toml::Value::Array(list) => list.iter().for_each(|value| answer_keys(value, path, into)),
        _ => {}
    }
}

/// Messages are words, not data: the table `answer` there names the button "not enough is told".
#[test]
fn content_stores_no_right_answer() {
    let mut found = Vec::new();
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("content")];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("content can be read") {
            let path = entry.expect("an entry").path();
            if path.is_dir() && path.file_name().is_some_and(|name| name != "text") {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "toml") {
                let text = fs::read_to_string(&path).expect("a file");
                let table: toml::Table = text.parse().expect("content is TOML");
                let name = path.display().to_string();
                answer_keys(&toml::Value::Table(table), &name, &mut found);
            }
        }
    }
    assert!(found.is_empty(), "{found:?}");
}
