//! Published tasks of the trade (`coverage.csv`): each is reached by a card family, a walk, a spray task or a criterion that
//! an instructor sees, as its row says it can be. `cargo test --test coverage -- --nocapture` prints the table.

mod support;

use stepboard::content::{Content, Topic};
use support::content;
use support::table::{Row, table};

/// Rows that no card can ask and that an instructor only sees besides: until there are walks and spray tasks, nothing in
/// the program reaches them.
const AWAIT_WALK: &[&str] = &["cv-096", "cv-102", "cv-108", "cv-111", "cv-216"];
const AWAIT_SPRAY: &[&str] = &[
    "cv-002", "cv-024", "cv-080", "cv-088", "cv-096", "cv-110", "cv-114", "cv-116", "cv-130", "cv-181",
    "cv-189", "cv-190", "cv-195", "cv-210", "cv-213",
];

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

/// Card families that ask about a task: about its stage, and evidence for one of its competencies.
fn families<'a>(content: &'a Content, row: &Row) -> Vec<&'a str> {
    let competencies: Vec<&str> = row.text("competency").split(';').collect();
    let about = topics(row.text("stage"));
    let fits = content.families.iter().filter(|family| {
        about.contains(&family.topic)
            && family.competencies.iter().any(|slug| competencies.contains(&slug.as_str()))
    });
    fits.map(|family| family.id.as_str()).collect()
}

#[test]
fn every_published_task_in_our_work_is_reached() {
    let content = content();
    let rows = table("coverage.csv");
    assert_eq!(rows.len(), 221, "rows of the table");
    let (mut walks, mut sprays, mut cards, mut seen) = (Vec::new(), Vec::new(), 0, 0);
    for row in &rows {
        let id = row.text("id");
        if row.text("scope") == "outside" {
            row.left_out("competence");
            continue;
        }
        let competencies: Vec<_> =
            row.text("competency").split(';').map(|slug| content.competency(slug)).collect();
        assert!(competencies.iter().all(Option::is_some), "{id} names a competency that is not there");
        let families = if yes(row, "card") { families(&content, row) } else { Vec::new() };
        assert_eq!(!families.is_empty(), yes(row, "card"), "{id}: cards ask {families:?}");
        let observed = match row.text("observation") {
            "no" => 0,
            "also" | "only" => competencies.iter().flatten().map(|one| one.criteria.len()).sum::<usize>(),
            other => panic!("`{other}` under observation in {id}"),
        };
        assert!(!families.is_empty() || observed > 0, "{id} is reached by nothing");
        if families.is_empty() && row.text("observation") == "also" {
            assert!(yes(row, "walk") || yes(row, "spray_task"), "{id} is reached by nothing but an eye");
            if yes(row, "walk") {
                walks.push(id);
            }
            if yes(row, "spray_task") {
                sprays.push(id);
            }
        }
        cards += usize::from(!families.is_empty());
        seen += usize::from(observed > 0);
        println!(
            "{id} {:5} {:10} {:10} {:32} {:3} families, {observed:2} criteria{}{}  {}",
            row.text("source_code"),
            row.text("element"),
            row.text("stage"),
            row.text("competency"),
            families.len(),
            if yes(row, "walk") { ", awaits walks" } else { "" },
            if yes(row, "spray_task") { ", awaits spray tasks" } else { "" },
            families.iter().take(3).copied().collect::<Vec<_>>().join(" "),
        );
        row.checked("competence");
    }
    println!(
        "{cards} asked by cards, {seen} seen at demonstrations; {walks:?} await walks, {sprays:?} spray tasks"
    );
    assert_eq!(walks, AWAIT_WALK, "rows that await walks");
    assert_eq!(sprays, AWAIT_SPRAY, "rows that await spray tasks");
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
