//! A wrong way through a walk, held to its row of a published table (`tests/data/sequence-errors.csv`,
//! `tests/data/faults.csv`): the faults of the row, the band in which it says that they show, and the hours that rework and
//! wait cost. Hours of rework are those of `content/faults.toml`, our estimates (common practice, no source); the wait that
//! starts again is the sheet's.

use crate::steps::{begin, does, go, ready_for_the_gun, up_to_work, work};
use crate::support::content;
use crate::support::table::{Row, table};
use std::collections::BTreeMap;
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::term::Stage;
use stepboard::walk::decision::Decision;
use stepboard::walk::report::report;
use stepboard::walk::{Walk, When, right};

/// A wrong way: what is done, and what of its row it comes to.
pub(crate) struct Case {
    pub(crate) walk: &'static str,
    /// The row that it does.
    pub(crate) row: &'static str,
    /// What the row says of where it shows.
    pub(crate) says: &'static str,
    /// The band that those words name; `None`: after the work has left.
    pub(crate) shows: Option<Stage>,
    /// When the apprentice sees it.
    pub(crate) when: When,
    /// Hours of rework, and of the wait that starts again.
    pub(crate) lost: (f64, f64),
    pub(crate) wrong: fn(&mut Walk, &Content),
}

/// Does an operation in another way when it comes next.
pub(crate) fn other_way(
    walk: &mut Walk,
    content: &Content,
    operation: Op,
    numbers: &[(Ask, f64)],
    picks: &[(&str, &str)],
) {
    let mut next = up_to_work(walk, content, operation);
    next.numbers.extend(numbers.iter().copied());
    next.picks.extend(picks.iter().map(|(key, pick)| ((*key).to_owned(), (*pick).to_owned())));
    go(walk, [Decision::Work(next)], content);
}

/// Sprays in place of an operation that comes next.
pub(crate) fn sprays_instead(
    walk: &mut Walk,
    content: &Content,
    of: Op,
    coat: Op,
    numbers: &[(Ask, f64)],
    picks: &[(&str, &str)],
) {
    up_to_work(walk, content, of);
    go(walk, ready_for_the_gun(), content);
    go(walk, [work(walk, content, coat, numbers, picks)], content);
}

/// Does an operation as the sheet asks where another comes next.
pub(crate) fn puts_before(walk: &mut Walk, content: &Content, next: Op, operation: Op) {
    up_to_work(walk, content, next);
    does(walk, content, operation);
}

/// What a row of either table says: its faults, and where it shows.
fn rows() -> BTreeMap<String, (Vec<String>, String)> {
    let list = |text: &str| text.split(';').map(str::to_owned).collect();
    let orders = table("sequence-errors.csv");
    let order = |row: &Row| (row["id"].clone(), (list(&row["fault_ids"]), row["shows_at_step"].clone()));
    let faults = table("faults.csv");
    let fault =
        |row: &Row| (row["id"].clone(), (vec![row["id"].clone()], row["stage_where_it_shows"].clone()));
    orders.iter().map(order).chain(faults.iter().map(fault)).collect()
}

/// Holds wrong ways to their rows. An order makes all the faults of its row; a row of a fault is held to that one.
pub(crate) fn hold(cases: &[Case]) {
    let (content, rows) = (content(), rows());
    let unlike: Vec<String> = cases.iter().filter_map(|case| unlike(case, &rows, &content)).collect();
    assert!(unlike.is_empty(), "{unlike:#?}");
}

/// What a wrong way comes to that is not as its row says.
fn unlike(case: &Case, rows: &BTreeMap<String, (Vec<String>, String)>, content: &Content) -> Option<String> {
    let (slug, row) = (case.walk, case.row);
    let (faults, words) = &rows[row];
    assert!(words.contains(case.says), "{row} says `{words}`");
    let mut walk = begin(content, slug);
    (case.wrong)(&mut walk, content);
    let Some(on) = right::rest(&walk, content) else { return Some(format!("{slug} {row}: no way on")) };
    go(&mut walk, on, content);
    let report = report(&walk, content);
    let [found] = report.found.as_slice() else { return Some(format!("{slug} {row}: {:?}", report.found)) };
    let is_order = row.starts_with("se-");
    let held = if is_order { found.faults } else { found.faults.get(..1).unwrap_or_default() };
    let turn = &walk.turns()[found.turn];
    let alike = held == faults
        && (!is_order || found.rule.0 == row)
        && (found.shows_in, found.when) == (case.shows, case.when)
        && (found.cost.rework_h, found.cost.wait_h) == case.lost
        && report.lost_h() == case.lost.0 + case.lost.1
        && turn.shown.contains(&found.shown);
    (!alike).then(|| format!("{slug} {row}: {found:?}"))
}
