//! Laws of every calculation of every rule family, over random facts inside their ranges: none panics, each gives the keys
//! and terms that it says it gives, numbers are finite, a rule decides, and the working leads to the numbers.

mod support;

use stepboard::bench::{Calculation, GROUPS, Gives, Outcome};
use stepboard::card::Dice;
use stepboard::content::{Content, World};
use stepboard::quantity::Measure;
use stepboard::rules::verdict::Step;
use support::any::USUAL;
use support::{content, inputs, told};

/// Keys and terms that an outcome has and its calculation does not say it gives.
fn unsaid(content: &Content, gives: &[Gives], outcome: &Outcome) -> Vec<String> {
    let number = |key| gives.iter().any(|one| matches!(one, Gives::Number { key: k, .. } if *k == key));
    let term = |key, slug: &str| {
        // What every calculation may answer need not be said, nor the stages and probes of an open list.
        let among = |names: &[&str]| {
            names.is_empty()
                || slug == "cannot-be-judged"
                || names.iter().any(|name| content.listed(name).contains(&slug))
        };
        gives
            .iter()
            .any(|one| matches!(one, Gives::Term { key: k, among: names } if *k == key && among(names)))
    };
    let list = |key| gives.iter().any(|one| matches!(one, Gives::List { key: k } if *k == key));
    let words = |key| gives.iter().any(|one| matches!(one, Gives::Words { key: k } if *k == key));
    let cell = |rows, key: &str| {
        gives.iter().any(|one| matches!(one, Gives::Rows { key: k, of } if *k == rows && of.contains(&key)))
    };
    let mut odd: Vec<String> = Vec::new();
    odd.extend(outcome.numbers.keys().filter(|key| !number(**key)).map(ToString::to_string));
    odd.extend(
        outcome
            .terms
            .iter()
            .filter(|(key, slug)| !term(**key, slug))
            .map(|(key, slug)| format!("{key}={slug}")),
    );
    odd.extend(outcome.lists.keys().filter(|key| !list(**key)).map(ToString::to_string));
    odd.extend(outcome.words.iter().filter(|(key, _)| !words(*key)).map(|(key, _)| key.to_string()));
    for (rows, row) in outcome.rows.iter().flat_map(|(key, rows)| rows.iter().map(move |row| (*key, row))) {
        let keys = row.terms.iter().map(|(key, _)| *key).chain(row.numbers.iter().map(|(key, _)| *key));
        odd.extend(keys.filter(|key| !cell(rows, key)).map(|key| format!("{rows}.{key}")));
    }
    odd
}

/// Every number of an outcome.
fn numbers(outcome: &Outcome) -> impl Iterator<Item = f64> {
    let rows = outcome.rows.iter().flat_map(|(_, rows)| rows).flat_map(|row| &row.numbers);
    outcome.numbers.values().chain(rows.map(|(_, measure)| measure)).map(|measure| measure.value)
}

/// Calculations that also give numbers which are read off, shared out or said in another unit than they are worked in.
const MORE_THAN_WORKED: [&str; 15] = [
    "earliest",
    "thin",
    "mix-parts",
    "weigh",
    "washcoat-solids",
    "voc",
    "volume-solids",
    "overlap",
    "gloss",
    "grit",
    "us-grit",
    "next-grit",
    "dilution-air",
    "diagnose",
    "probe",
];

/// Whether a number stands in the working, as the result of a line of it.
fn is_worked(measure: &Measure, working: &[Step]) -> bool {
    let same = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs().max(1.0);
    working.iter().any(|step| same(step.result.base(), measure.base()))
}

/// The inputs of a family are shared among its calculations, the same ones each time; families go side by side.
#[test]
fn no_calculation_panics_and_each_gives_what_it_says() {
    let content = content();
    std::thread::scope(|scope| {
        for (_, group) in GROUPS {
            let content = &content;
            scope.spawn(move || {
                let share = inputs(USUAL) / u32::try_from(group.len()).expect("a few") + 1;
                group.iter().for_each(|calculation| law(content, calculation, share));
            });
        }
    });
}

fn law(content: &Content, calculation: &Calculation, inputs: u32) {
    let name = calculation.name;
    let mut dice = Dice::new(name);
    let mut judged = 0;
    for _ in 0..inputs {
        let sheet = dice.pick(&content.sheets).expect("sheets ship");
        let facts = told::facts(content, calculation, &mut dice);
        let Ok(ruling) = (calculation.run)(&facts, &World { content, sheet }) else { continue };
        judged += 1;
        let outcome = &ruling.answer;
        assert!(!ruling.rules.is_empty(), "{name}: no rule decides {facts:?}");
        let odd = unsaid(content, calculation.gives, outcome);
        assert!(odd.is_empty(), "{name} does not say that it gives {odd:?} on {facts:?}");
        if !MORE_THAN_WORKED.contains(&name) {
            let odd: Vec<_> =
                outcome.numbers.iter().filter(|(_, one)| !is_worked(one, &ruling.working)).collect();
            assert!(odd.is_empty(), "{name}: the working does not lead to {odd:?} on {facts:?}");
        }
        assert!(numbers(outcome).all(f64::is_finite), "{name} gives {outcome:?} on {facts:?}");
    }
    assert!(judged > inputs / 200, "{name} judged {judged} of {inputs}: the law says something");
}
