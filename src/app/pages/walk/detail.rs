//! With which values something was decided, in words.

use super::figure;
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::walk::at_hand::asked;
use crate::walk::{Decision, Start, Work, Worn};

/// The values of a decision; nothing where it has none.
pub(super) fn detail(shop: &Shop, start: &Start, decision: &Decision) -> String {
    match decision {
        Decision::Work(work) => of_work(shop, start, work),
        Decision::Wear(worn) => of_worn(shop, *worn),
        _ => String::new(),
    }
}

fn of_work(shop: &Shop, start: &Start, work: &Work) -> String {
    let at_hand = asked(shop.content(), &start.sheet, work.operation);
    let numbers = at_hand.numbers.iter().map(|number| {
        let value = work.numbers.get(&number.ask).copied().unwrap_or(number.start);
        let name = shop.text(&format!("walk.ask.{}", number.ask.slug()));
        format!("{name}: {}", shop.voice().measure(figure::said(number, value)))
    });
    let picks = at_hand.choices.iter().filter_map(|choice| {
        let slug = work.picks.get(&choice.key)?;
        let name = shop.text(&format!("walk.choice.{}", choice.key));
        Some(format!("{name}: {}", shop.text(&format!("walk.pick.{}.{slug}", choice.key))))
    });
    numbers.chain(picks).collect::<Vec<_>>().join(". ")
}

fn of_worn(shop: &Shop, worn: Worn) -> String {
    let mask = worn.respirator.map_or("nothing", Term::slug);
    let mask = shop.say(&format!("walk.respirator.{mask}"));
    let mut told = vec![
        format!("{}: {mask}", shop.say("walk.respirator")),
        shop.say(&format!("walk.suit.{}", worn.suit.slug())).to_string(),
    ];
    let on = [("sealed", worn.sealed), ("gloves", worn.gloves), ("eyes", worn.eyes)];
    told.extend(
        on.iter().filter(|(_, on)| *on).map(|(key, _)| shop.say(&format!("walk.worn.{key}")).to_string()),
    );
    told.join(". ")
}
