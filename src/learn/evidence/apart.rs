//! The decisions of walks that are evidence apart from what was found void since.

use super::account::Account;
use crate::record::{Event, Exercised, Voids, WalkStep, Walked};

/// What decisions of one person's walks say of families and the test takes, were nothing void: of each job the first of a
/// family on a walk that nobody guided.
#[must_use]
pub fn of_walks<'a>(events: impl IntoIterator<Item = &'a Event>) -> Vec<(&'a Walked, &'a Exercised)> {
    let (mut account, nothing, mut found) = (Account::default(), Voids::default(), Vec::new());
    for walked in events.into_iter().filter_map(Event::walked) {
        match &walked.step {
            WalkStep::Inspected(_) => account.inspected(walked),
            WalkStep::Decided(decided) if account.is_new(walked, decided) => {
                found.extend(decided.exercised.iter().filter_map(|one| {
                    let counted = account.decided((walked, decided, one), &nothing).ok()?;
                    counted.left_out.is_none().then_some((walked, one))
                }));
            }
            WalkStep::Decided(_) | WalkStep::LetGo => {}
        }
    }
    found
}
