//! Random facts for the calculator, each inside what `content/facts/` allows. Used natively and in WebAssembly.

use stepboard::bench::{Calculation, Facts};
use stepboard::card::Dice;
use stepboard::content::{Content, FactInfo};

/// Steps between the least and the greatest number of a fact.
const STEPS: f64 = 100_000.0;

/// One fact in so many is left untold, and one number in so many is an end of its range.
const RARE: u32 = 10;

/// Facts that a calculation takes, some of them left untold.
pub(crate) fn facts(content: &Content, calculation: &Calculation, dice: &mut Dice) -> Facts {
    let mut facts = Facts::default();
    for need in calculation.takes(content) {
        let info = content.fact(need.key).expect("content has every fact of the calculator");
        if dice.one_in(if need.optional { 2 } else { RARE }) {
            continue;
        }
        if info.unit.is_some() {
            facts.set(need.key, number(info, dice));
        } else if let Some(slug) = dice.pick(&info.slugs(content)) {
            facts.set_term(need.key, slug);
        }
    }
    facts
}

fn number(info: &FactInfo, dice: &mut Dice) -> f64 {
    match dice.below(2 * RARE) {
        0 => info.min,
        1 => info.max,
        // Half of the others lie near the least value, where most work is done.
        drawn => {
            let reach = (info.max - info.min) * if drawn % 2 == 0 { 1.0 } else { 0.05 };
            dice.on_grid(info.min, info.min + reach, reach / STEPS)
        }
    }
}
