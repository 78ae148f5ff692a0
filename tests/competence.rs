//! Competencies: the reference tables and the content say the same, and every competency has knowledge evidence.
//! `cargo test --test competence -- --nocapture` prints which families give it.

mod support;

use std::collections::BTreeSet;
use stepboard::content::{Competency, Content, Criterion, Profile};
use stepboard::rules::term::{Stage, Term};
use support::{content, table::table};

/// Families that give evidence for a competency, at least: our choice, so that no one card stands for all of it.
const LEAST: usize = 3;
/// For a competency of the safety profile.
const SAFETY_LEAST: usize = 5;
/// Families in all.
const ALL_LEAST: usize = 90;

/// `competencies.csv`: every cell that content has, in the order of the table.
#[test]
fn the_competencies_are_those_of_the_reference_table() {
    let content = content();
    let rows = table("competencies.csv");
    assert_eq!(rows.len(), 25, "rows of the table");
    assert_eq!(content.competencies.len(), rows.len());
    for (one, row) in content.competencies.iter().zip(&rows) {
        let slug = one.slug.as_str();
        let said = |key: &str| content.texts("en").get(&format!("{key}.{slug}")).to_owned();
        assert_eq!(slug, row.text("id"));
        assert_eq!(one.profile.slug(), row.text("profile"), "{slug}");
        assert_eq!(said("competency"), row.text("name"));
        assert_eq!(said("may"), row.text("may_do"));
        for (found, column) in [
            (one.demonstrations, "demonstrations"),
            (one.days, "separate_days"),
            (one.expires_months, "expiry_months"),
        ] {
            assert_eq!(found.to_string(), row.text(column), "{slug}, {column}");
        }
        assert_eq!(needs(&content, one), needed(row.text("prerequisites")), "{slug}");
        // Rule families in the table, card families here: each has some.
        assert!(content.evidence_for(slug).next().is_some(), "{slug}");
    }
}

/// What comes before a competency, as content has it.
fn needs(content: &Content, one: &Competency) -> BTreeSet<String> {
    let knowledge = one.needs_knowledge.iter().map(|slug| format!("{slug} (knowledge part)"));
    let papers = one.on_file.iter().map(|paper| paper.slug().to_owned());
    assert!(
        one.on_file
            .iter()
            .all(|paper| { content.texts("en").find(&format!("on-file.{}", paper.slug())).is_some() })
    );
    one.needs.iter().cloned().chain(knowledge).chain(papers).collect()
}

/// The same, as the table words it.
fn needed(cell: &str) -> BTreeSet<String> {
    let parts = cell.split("; ").filter(|part| *part != "none");
    parts
        .flat_map(|part| match part {
            "a medical clearance and a fit-test record for this person and this mask on file" => {
                vec!["medical-clearance", "fit-test"]
            }
            "an employer's exposure and medical programme that covers the hardener" => {
                vec!["exposure-programme"]
            }
            part => vec![part],
        })
        .map(str::to_owned)
        .collect()
}

/// `criteria.csv`: every criterion with its words and whether it is critical, in the order of the table.
#[test]
fn the_criteria_are_those_of_the_reference_table() {
    let content = content();
    let rows = table("criteria.csv");
    assert_eq!(rows.len(), 149, "rows of the table");
    let found: Vec<(&str, &Criterion)> = content
        .competencies
        .iter()
        .flat_map(|one| one.criteria.iter().map(|it| (one.slug.as_str(), it)))
        .collect();
    assert_eq!(found.len(), rows.len());
    for ((slug, criterion), row) in found.iter().zip(&rows) {
        assert_eq!(*slug, row.text("competency"));
        assert_eq!(criterion.id, row.text("id"));
        assert_eq!(criterion.critical, row.text("critical") == "yes", "{}", criterion.id);
        assert_eq!(content.texts("en").get(&format!("criterion.{}", criterion.id)), row.text("criterion"));
    }
    assert_eq!(found.iter().filter(|(_, one)| one.critical).count(), 95, "critical ones");
}

#[test]
fn each_band_of_the_board_has_a_competency_and_most_of_its_families_stand_there() {
    let content = content();
    for band in Stage::ALL {
        let of: Vec<&str> = content
            .competencies
            .iter()
            .filter(|one| one.band == *band)
            .map(|one| one.slug.as_str())
            .collect();
        println!("{:8} {}", band.slug(), of.join(", "));
        assert!(!of.is_empty(), "nobody could stamp {band:?}");
    }
    for one in &content.competencies {
        let families: Vec<Stage> = content.evidence_for(&one.slug).map(|family| family.stage).collect();
        let on = |stage: Stage| families.iter().filter(|other| **other == stage).count();
        let most = Stage::ALL.iter().map(|stage| on(*stage)).max().unwrap_or(0);
        assert_eq!(on(one.band), most, "{} is not where most of its families are", one.slug);
    }
}

#[test]
fn each_competency_has_families_enough_that_give_evidence() {
    let content = content();
    let mut names = BTreeSet::new();
    for one in &content.competencies {
        let families = content.evidence_for(&one.slug).map(|family| family.id.as_str()).collect::<Vec<_>>();
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
