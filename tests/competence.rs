//! Competencies: the reference table and the content say the same, and every competency has knowledge evidence.
//! `cargo test --test competence -- --nocapture` prints which families give it.

mod support;

use std::collections::BTreeSet;
use stepboard::content::{Content, Profile};
use stepboard::rules::term::Term;
use support::{content, table::table};

/// Slugs of the families that give evidence for a competency.
fn evidence<'a>(content: &'a Content, slug: &str) -> Vec<&'a str> {
    let gives = content.families.iter().filter(|family| family.competencies.iter().any(|one| one == slug));
    gives.map(|family| family.id.as_str()).collect()
}

/// Families that give evidence for a competency, at least: our choice, so that no one card stands for all of it.
const LEAST: usize = 3;
/// For a competency of the safety profile.
const SAFETY_LEAST: usize = 5;
/// Families in all.
const ALL_LEAST: usize = 90;

/// `competencies.csv`: ids and profiles, in the order of the table.
#[test]
fn the_competencies_are_those_of_the_reference_table() {
    let content = content();
    let found: Vec<(&str, &str)> =
        content.competencies.iter().map(|one| (one.slug.as_str(), one.profile.slug())).collect();
    let rows = table("competencies.csv");
    let wanted: Vec<(&str, &str)> = rows.iter().map(|row| (row.text("id"), row.text("profile"))).collect();
    assert_eq!(found, wanted);
    assert_eq!(wanted.len(), 25, "rows of the table");
}

#[test]
fn each_competency_has_families_enough_that_give_evidence() {
    let content = content();
    let mut names = BTreeSet::new();
    for one in &content.competencies {
        let families = evidence(&content, &one.slug);
        println!("{:14} {:8} {:3}  {}", one.slug, one.profile.slug(), families.len(), families.join(", "));
        let least = if one.profile == Profile::Safety { SAFETY_LEAST } else { LEAST };
        assert!(families.len() >= least, "{} has {} families of at least {least}", one.slug, families.len());
        assert!(
            names.insert(content.texts("en").get(&format!("competency.{}", one.slug)).to_owned()),
            "a name stands twice"
        );
    }
    assert!(content.families.len() >= ALL_LEAST, "{} families", content.families.len());
    let safety = content.competencies.iter().filter(|one| one.profile == Profile::Safety).count();
    assert_eq!(safety, 5, "competencies of the safety profile");
}
