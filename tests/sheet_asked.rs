//! Which values of a shop sheet a card is answered by: those that were asked for while it was, and no other one turns it. That
//! follows from how a program reads; nothing outside tells it.

mod support;

use std::collections::BTreeSet;
use stepboard::card::{deal, solve};
use stepboard::content::World;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
use support::{base, content};

/// One family in so many is asked, so that the test stays short unoptimised.
const EVERY: usize = 6;
/// Seeds of each.
const SEEDS: u32 = 2;

#[test]
fn what_is_asked_for_is_noted_also_of_a_sheet_made_from_it() {
    let sheet = base();
    let asked = sheet.asked_by(|sheet| {
        let colder = sheet.with(Setting::ColdStop, 14.0).expect("allowed");
        assert!(colder.get(Setting::GapSpray) > 0.0 && sheet.wait(Setting::ClearWait) > 0.0);
        assert_ne!(colder.hash(), base().hash());
    });
    // In the order of the list, and that of `with`, which looks at the limits.
    assert_eq!(asked, [Setting::ClearWait, Setting::GapSpray, Setting::ColdStop]);
    assert_eq!(sheet.asked_by(|same| assert_eq!(*same, sheet)), []);
}

#[test]
fn a_value_that_was_not_asked_for_turns_no_answer() {
    let (content, sheet) = (content(), base());
    let world = World { content: &content, sheet: &sheet };
    let mut by_any = BTreeSet::new();
    for family in content.families.iter().step_by(EVERY) {
        for card in (0..SEEDS).filter_map(|seed| deal(&world, &family.id, seed).ok()) {
            let right = solve(&card, &world).map(|solution| solution.right);
            let asked = sheet.asked_by(|sheet| drop(solve(&card, &World { content: &content, sheet })));
            for setting in Setting::ALL.iter().filter(|one| !asked.contains(one)) {
                let held = sheet.held(*setting);
                let value = if held.value < held.ceiling { held.ceiling } else { held.floor };
                let other = sheet.tried(*setting, value);
                let now = solve(&card, &World { content: &content, sheet: &other });
                assert_eq!(now.map(|solution| solution.right), right, "{} by {}", family.id, setting.slug());
            }
            by_any.extend(asked);
        }
    }
    // Not all of them: there is something that they did not ask for.
    assert!((1..Setting::ALL.len()).contains(&by_any.len()), "{}", by_any.len());
}
