//! A wrong way through a walk, held to its row of a published table (`tests/data/sequence-errors.csv`,
//! `tests/data/faults.csv`): its faults, the band in which its words say that they show, and the hours of work and of waiting
//! that the steps of the rework cost which the row of its likeliest fault names (`rework.rs`).

use crate::rework::{cost, is_mended};
use crate::shows::Shows;
use crate::steps::{begin, does, go, ready_for_the_gun, up_to_work, work};
use crate::support::content;
use crate::support::table::{Row, table};
use std::collections::BTreeMap;
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::Decision;
use stepboard::walk::report::{Found, report};
use stepboard::walk::{Walk, right};

/// A wrong way: what is done, and the row that it is held to.
pub(crate) struct Case {
    pub(crate) walk: &'static str,
    /// The row that it does.
    pub(crate) row: &'static str,
    /// What the row says of where it shows.
    pub(crate) says: &'static str,
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
pub(crate) type Rows = BTreeMap<String, (Vec<String>, String)>;

/// The rows of both tables.
pub(crate) fn rows() -> Rows {
    let list = |text: &str| text.split(';').map(str::to_owned).collect();
    let orders = table("sequence-errors.csv");
    let order = |row: &Row| (row["id"].clone(), (list(&row["fault_ids"]), row["shows_at_step"].clone()));
    let faults = table("faults.csv");
    let fault =
        |row: &Row| (row["id"].clone(), (vec![row["id"].clone()], row["stage_where_it_shows"].clone()));
    orders.iter().map(order).chain(faults.iter().map(fault)).collect()
}

/// Whether a fault is that of a row. An order makes all the faults of its row; a row of a fault is held to that one.
pub(crate) fn is_of(found: &Found, row: &str, faults: &[String]) -> bool {
    if row.starts_with("se-") {
        found.rule.0 == row && found.faults == faults
    } else {
        found.faults.first().is_some_and(|first| *first == row)
    }
}

/// Holds wrong ways to their rows.
pub(crate) fn hold(cases: &[Case]) {
    let (content, rows) = (content(), rows());
    let unlike: Vec<String> = cases.iter().filter_map(|case| unlike(case, &rows, &content)).collect();
    assert!(unlike.is_empty(), "{unlike:#?}");
}

/// What a wrong way comes to that is not as its row says.
fn unlike(case: &Case, rows: &Rows, content: &Content) -> Option<String> {
    let (slug, row) = (case.walk, case.row);
    let (faults, words) = &rows[row];
    assert!(words.contains(case.says), "{row} says `{words}`");
    let mut walk = begin(content, slug);
    (case.wrong)(&mut walk, content);
    let Some(on) = right::rest(&walk, content) else { return Some(format!("{slug} {row}: no way on")) };
    go(&mut walk, on, content);
    let report = report(&walk, content);
    let [found] = report.found.as_slice() else { return Some(format!("{slug} {row}: {:?}", report.found)) };
    let shows = Shows::read(case.says);
    let (work, wait) = cost(&walk, found, &faults[0]);
    let alike = is_of(found, row, faults)
        && (found.shows_in, found.when) == (shows.band(&walk, found), shows.when(&walk, found))
        && (found.cost.rework_h, found.cost.wait_h) == (work, wait)
        && report.lost_h() == if is_mended(&walk, found, &faults[0]) { 0.0 } else { work + wait }
        && walk.turns()[found.turn].shown.contains(&found.shown);
    (!alike).then(|| format!("{slug} {row}: {work} h and {wait} h of its row, {found:?}"))
}
