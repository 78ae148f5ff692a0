//! Values that are recalled when an operation is picked: one's own of before, and nobody else's.

use super::hand::Values;
use super::{Ground, Task};
use crate::app::state::{Shop, WalksContext};
use crate::walk::at_hand::asked;
use crate::walk::{Mode, Walk, Work, again};

/// Operations of earlier walks of the same person on the same shop sheet, the last first. A guide's values are recalled
/// where one is guided alone.
pub(super) fn earlier(shop: &Shop, walks: &WalksContext, walk: &Walk) -> Vec<Work> {
    let (mode, sheet) = (walk.mode(), walk.saved().sheet);
    let theirs = walks.all.iter().filter(|kept| kept.person == shop.settings.person);
    let same = theirs.filter(|kept| kept.saved.sheet == sheet);
    let own = same.filter(|kept| kept.saved.mode == Mode::Own || kept.saved.mode == mode);
    own.flat_map(|kept| again::works(kept.saved.decisions.iter())).cloned().collect()
}

/// What is recalled of something: how it was last done on this walk, else on an earlier one; what that leaves open of the
/// gun is as it was last held.
pub(super) fn recalled(ground: &Ground<'_>, task: Task) -> Values {
    let Task::Work(operation) = task else { return Values::default() };
    let (walk, content) = (ground.walk, ground.shop.content());
    if let Some(last) = again::last(walk, operation) {
        return last.clone().into();
    }
    let before = ground.earlier.iter().find(|work| work.operation == operation).cloned();
    let mut values: Values = before.map(Values::from).unwrap_or_default();
    let at_hand = asked(content, &walk.start().sheet, operation);
    if let Some(set) = again::as_the_gun_is_set(walk, content, &at_hand) {
        for (ask, number) in set.numbers {
            values.numbers.entry(ask).or_insert(number);
        }
        for (key, pick) in set.picks {
            values.picks.entry(key).or_insert(pick);
        }
    }
    values
}
