//! Laws of every calculation of every rule family, over random facts inside their ranges: none panics, each gives the keys
//! and terms that it says it gives, numbers are finite and a rule decides.

mod support;

use stepboard::bench::{GROUPS, Gives, Outcome};
use stepboard::card::Dice;
use stepboard::content::World;
use support::any::USUAL;
use support::{content, inputs, told};

fn known(gives: &[Gives], outcome: &Outcome) -> bool {
    let number = |key: &str| gives.iter().any(|one| matches!(one, Gives::Number { key: k, .. } if *k == key));
    let term = |key: &str, slug: &&str| {
        gives
            .iter()
            .any(|one| matches!(one, Gives::Term { key: k, among } if *k == key && among.contains(slug)))
    };
    outcome.numbers.keys().all(|key| number(key)) && outcome.terms.iter().all(|(key, slug)| term(key, slug))
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
            assert!(known(calculation.gives, outcome), "{name} does not say that it gives {outcome:?}");
            let finite = outcome.numbers.values().all(|measure| measure.value.is_finite());
            assert!(finite, "{name} gives {outcome:?} on {facts:?}");
        }
        assert!(judged > usual / 20, "{name} judged {judged} of {usual}: the law says something");
    }
}
