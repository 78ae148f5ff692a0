//! Laws of every calculation of every rule family, over random facts inside their ranges: none panics, each gives the keys
//! and terms that it says it gives, numbers are finite and a rule decides.

mod support;

use stepboard::bench::calculation::Row;
use stepboard::bench::{GROUPS, Gives, Outcome};
use stepboard::card::Dice;
use stepboard::content::{Content, World};
use support::any::USUAL;
use support::{content, inputs, told};

fn known(content: &Content, gives: &[Gives], outcome: &Outcome) -> bool {
    let number = |key| gives.iter().any(|one| matches!(one, Gives::Number { key: k, .. } if *k == key));
    let term = |key, slug: &str| {
        let among = |names: &[&str]| names.iter().any(|name| content.listed(name).contains(&slug));
        gives
            .iter()
            .any(|one| matches!(one, Gives::Term { key: k, among: names } if *k == key && among(names)))
    };
    let list = |key| gives.iter().any(|one| matches!(one, Gives::List { key: k } if *k == key));
    let words = |key| gives.iter().any(|one| matches!(one, Gives::Words { key: k } if *k == key));
    let rows = |key, row: &Row| {
        let mut keys = row.terms.iter().map(|(key, _)| key).chain(row.numbers.iter().map(|(key, _)| key));
        gives.iter().any(
            |one| matches!(one, Gives::Rows { key: k, of } if *k == key && keys.all(|one| of.contains(one))),
        )
    };
    outcome.numbers.keys().all(|key| number(*key))
        && outcome.terms.iter().all(|(key, slug)| term(*key, slug))
        && outcome.lists.keys().all(|key| list(*key))
        && outcome.words.iter().all(|(key, _)| words(*key))
        && outcome.rows.iter().all(|(key, many)| many.iter().all(|row| rows(*key, row)))
}

/// Every number of an outcome.
fn numbers(outcome: &Outcome) -> impl Iterator<Item = f64> {
    let rows = outcome.rows.iter().flat_map(|(_, rows)| rows).flat_map(|row| &row.numbers);
    outcome.numbers.values().chain(rows.map(|(_, measure)| measure)).map(|measure| measure.value)
}

/// So many inputs a calculation, the same ones each time.
#[test]
fn no_calculation_panics_and_each_gives_what_it_says() {
    let content = content();
    for calculation in GROUPS.iter().flat_map(|(_, group)| group.iter()) {
        let name = calculation.name;
        let mut dice = Dice::new(name);
        let (mut judged, usual) = (0, inputs(USUAL));
        for _ in 0..usual {
            let sheet = dice.pick(&content.sheets).expect("sheets ship");
            let facts = told::facts(&content, calculation, &mut dice);
            let Ok(ruling) = (calculation.run)(&facts, &World { content: &content, sheet }) else { continue };
            judged += 1;
            let outcome = &ruling.answer;
            assert!(!ruling.rules.is_empty(), "{name}: no rule decides {facts:?}");
            assert!(
                known(&content, calculation.gives, outcome),
                "{name} does not say that it gives {outcome:?}"
            );
            assert!(numbers(outcome).all(f64::is_finite), "{name} gives {outcome:?} on {facts:?}");
        }
        assert!(judged > usual / 100, "{name} judged {judged} of {usual}: the law says something");
    }
}
