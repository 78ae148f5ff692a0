//! Published tasks of the trade (`coverage.csv`): each is reached by a card family, a walk, a spray task or a criterion that
//! an instructor sees, as its row says it can be. `cargo test --test coverage -- --nocapture` prints the table.

mod support;

use std::collections::BTreeSet;
use stepboard::card::{Kind, families};
use stepboard::content::{Content, Topic, WalkInfo};
use stepboard::rules::sequence::operation::Operation;
use stepboard::walk::decision::Decision;
use stepboard::walk::saved::Mode;
use stepboard::walk::start::Start;
use stepboard::walk::{Walk, right};
use support::content;
use support::table::{Row, table};

/// Tasks that the table has walks for too and that no operation of a walk is named after: cards ask them, and an instructor
/// sees most of them. A walk touches them in its air, its waits and its duties.
const CARDS_IN_PLACE_OF_WALKS: [&str; 16] = [
    "cv-023", "cv-026", "cv-031", "cv-035", "cv-046", "cv-047", "cv-054", "cv-058", "cv-069", "cv-070",
    "cv-084", "cv-105", "cv-142", "cv-143", "cv-201", "cv-219",
];
/// The same of spray tasks: what is sprayed is not what they are about.
const CARDS_IN_PLACE_OF_SPRAYS: [&str; 8] =
    ["cv-033", "cv-034", "cv-076", "cv-078", "cv-176", "cv-180", "cv-207", "cv-212"];

/// What cards about a stage of the table are about.
fn topics(stage: &str) -> &'static [Topic] {
    use Topic as T;
    match stage {
        "prep" => &[T::ReadWood, T::Sand, T::Clean, T::Masking],
        "fill" => &[T::Fill, T::ReadWood, T::Dry, T::Panel],
        "stain" => &[T::Stain, T::Mix, T::Panel],
        "booth-air" => &[T::BoothAir, T::Entry, T::Clear, T::Cup, T::Breathing, T::WasteFire],
        "mix" => &[T::Mix, T::Cup, T::TwoPart],
        "seal" => &[T::Seal, T::Dry, T::Clear],
        "colour" => &[T::SolidColour, T::Mix],
        "shade" => &[T::ShadedEdge],
        "inspect" => &[T::Inspect, T::Fault, T::Panel, T::SolidColour, T::Clear],
        "clear" => &[T::Clear, T::Dry, T::SolidColour],
        "cure" => &[T::Cure, T::Dry],
        "level" => &[T::Level, T::Sand],
        "buff" => &[T::Buff, T::Level],
        "faults" => &[T::Fault, T::Inspect, T::Panel, T::Clear],
        "rework" => &[T::Fault, T::Panel, T::Inspect, T::Level],
        "safety" => &[T::Breathing, T::WasteFire, T::BoothAir, T::TwoPart, T::Buff],
        "waste" => &[T::WasteFire],
        "records" => &[T::JobTicket, T::Dry],
        other => panic!("stage `{other}` of the table"),
    }
}

fn yes(row: &Row, column: &str) -> bool {
    match row.text(column) {
        "yes" => true,
        "no" => false,
        other => panic!("`{other}` in column {column} of {row:?}"),
    }
}

/// Card families that ask about a task, or have it sprayed: about its stage, and evidence for one of its competencies.
fn asked<'a>(content: &'a Content, row: &Row, sprayed: bool) -> Vec<&'a str> {
    let competencies: Vec<&str> = row.text("competency").split(';').collect();
    let about = topics(row.text("stage"));
    let fits = content.families.iter().filter(|family| {
        let is_sprayed = families::find(&family.id).is_some_and(|question| question.kind() == Kind::Spray);
        is_sprayed == sprayed
            && about.contains(&family.topic)
            && family.competencies.iter().any(|slug| competencies.contains(&slug.as_str()))
    });
    fits.map(|family| family.id.as_str()).collect()
}

/// What is done on a walk at a stage of the table, all of it; none where a walk does nothing of it that is named so.
fn done_at(stage: &str) -> &'static [Operation] {
    use Operation as O;
    match stage {
        "prep" => &[O::Sand, O::CleanOff],
        "fill" => &[O::Fill, O::WipeFiller],
        "stain" => &[O::Stain],
        "seal" => &[O::Seal],
        "colour" => &[O::Colour],
        "shade" => &[O::Shade],
        // What is sealed is scuffed and looked at before film is built on it.
        "inspect" => &[O::Seal, O::Scuff, O::Inspect],
        "clear" => &[O::Clear],
        "level" => &[O::Level],
        "buff" => &[O::Level, O::Buff],
        "rework" => &[O::Rework],
        _ => &[],
    }
}

/// Walks that ship on which all that a task is about is decided: on a right way to the hand-over, or by something that lies
/// at hand on it.
fn walks<'a>(content: &Content, ways: &[(&'a str, BTreeSet<Operation>)], row: &Row) -> Vec<&'a str> {
    let asked = done_at(row.text("stage"));
    let at_hand = |one: &Operation| content.tools.iter().any(|tool| tool.operations.contains(one));
    let reaches = |(_, done): &&(&str, BTreeSet<Operation>)| {
        asked.iter().any(|one| done.contains(one))
            && asked.iter().all(|one| done.contains(one) || at_hand(one))
    };
    ways.iter().filter(reaches).map(|(slug, _)| *slug).collect()
}

/// The walks that ship, each with the operations on a right way to its hand-over.
fn ways(content: &Content) -> Vec<(&str, BTreeSet<Operation>)> {
    let way = |info: &'_ WalkInfo| {
        let sheet = content.sheet(&info.ticket.sheet).expect("a sheet that ships");
        let start = Start::of(info, sheet, content).expect("woods that ship");
        let decisions = right::rest(&Walk::begin(start, Mode::Own, 1), content).expect("a right way");
        decisions.iter().filter_map(Decision::operation).collect()
    };
    content.walks.iter().map(|info| (info.slug.as_str(), way(info))).collect()
}

#[test]
fn every_published_task_in_our_work_is_reached() {
    let content = content();
    let rows = table("coverage.csv");
    assert_eq!(rows.len(), 221, "rows of the table");
    let ways = ways(&content);
    let (mut await_walks, mut await_sprays, mut cards, mut seen) = (Vec::new(), Vec::new(), 0, 0);
    let (mut no_walk, mut no_spray) = (Vec::new(), Vec::new());
    for row in &rows {
        let id = row.text("id");
        if row.text("scope") == "outside" {
            row.left_out("competence");
            continue;
        }
        let competencies: Vec<_> =
            row.text("competency").split(';').map(|slug| content.competency(slug)).collect();
        assert!(competencies.iter().all(Option::is_some), "{id} names a competency that is not there");
        let walked = if yes(row, "walk") { walks(&content, &ways, row) } else { Vec::new() };
        let sprayed = if yes(row, "spray_task") { asked(&content, row, true) } else { Vec::new() };
        let families = if yes(row, "card") { asked(&content, row, false) } else { Vec::new() };
        assert_eq!(!families.is_empty(), yes(row, "card"), "{id}: cards ask {families:?}");
        let observed = match row.text("observation") {
            "no" => 0,
            "also" | "only" => competencies.iter().flatten().map(|one| one.criteria.len()).sum::<usize>(),
            other => panic!("`{other}` under observation in {id}"),
        };
        assert!(!families.is_empty() || observed > 0, "{id} is reached by nothing");
        // A card asks these; what the table says of walks and spray tasks is held for them too.
        if yes(row, "walk") && walked.is_empty() {
            no_walk.push(id);
        }
        if yes(row, "spray_task") && sprayed.is_empty() {
            no_spray.push(id);
        }
        if families.is_empty() && row.text("observation") == "also" {
            assert!(yes(row, "walk") || yes(row, "spray_task"), "{id} is reached by nothing but an eye");
            if yes(row, "walk") && walked.is_empty() {
                await_walks.push(id);
            }
            if yes(row, "spray_task") && sprayed.is_empty() {
                await_sprays.push(id);
            }
        }
        cards += usize::from(!families.is_empty());
        seen += usize::from(observed > 0);
        println!(
            "{id} {:5} {:10} {:10} {:32} {:3} families, {observed:2} criteria, walks {walked:?}, sprayed {sprayed:?}  {}",
            row.text("source_code"),
            row.text("element"),
            row.text("stage"),
            row.text("competency"),
            families.len(),
            families.iter().take(3).copied().collect::<Vec<_>>().join(" "),
        );
        row.checked("competence");
    }
    println!(
        "{cards} asked by cards, {seen} seen at demonstrations; {await_walks:?} await walks, {await_sprays:?} spray tasks"
    );
    assert_eq!(no_walk, CARDS_IN_PLACE_OF_WALKS, "asked by cards, where the table has walks too");
    assert_eq!(no_spray, CARDS_IN_PLACE_OF_SPRAYS, "asked by cards, where the table has spray tasks too");
    assert!(await_walks.is_empty(), "no card asks them and no walk reaches them: {await_walks:?}");
    assert!(await_sprays.is_empty(), "no card asks them and no spray task reaches them: {await_sprays:?}");
}

/// What our mapping says of the source tables, from their own description.
#[test]
fn what_is_outside_our_work_is_named() {
    let rows = table("coverage.csv");
    let outside: Vec<&str> =
        rows.iter().filter(|row| row.text("scope") == "outside").map(|row| row.text("element")).collect();
    assert_eq!(outside.len(), 8);
    let of = |code: &str| rows.iter().filter(|row| row.text("source_code") == code).count();
    // O*NET 51-7021 lists 22 tasks, 51-9124 lists 29.
    assert_eq!((of("ON1"), of("ON2")), (22, 29));
    let observed =
        rows.iter().filter(|row| row.text("observation") == "only" && row.text("scope") != "outside");
    assert_eq!(observed.count(), 21, "can only be watched");
}
