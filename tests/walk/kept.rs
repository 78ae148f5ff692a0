//! A walk that is kept reads back as it was, to the last digit: a window tells by it whether another one has gone on.

use crate::steps::{begin, does};
use crate::support::content;
use std::collections::BTreeMap;
use stepboard::content::Ask;
use stepboard::rules::sequence::operation::Operation;
use stepboard::walk::decision::{Decision, Work};
use stepboard::walk::{Kept, Saved};

/// The international inch (yard and pound agreement of 1959; ISO 31-1).
const MM_PER_INCH: f64 = 25.4;

#[test]
fn a_distance_typed_in_inches_is_read_back_to_the_last_digit() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    does(&mut walk, &content, Operation::Sand);
    for tenths in 1..=400_u32 {
        let number = f64::from(tenths) / 10.0 * MM_PER_INCH;
        let work = Work {
            operation: Operation::Sand,
            parts: vec![0],
            numbers: BTreeMap::from([(Ask::Distance, number)]),
            picks: BTreeMap::new(),
        };
        let mut decisions = walk.saved().decisions;
        decisions.push(Decision::Work(work));
        let kept = of(Saved { decisions, ..walk.saved() });
        let read = Kept::read(&kept.write().expect("plain data"));
        assert_eq!(read.as_ref(), Some(&kept), "{number} mm");
    }
}

/// A walk as a tablet keeps it.
pub(crate) fn of(saved: Saved) -> Kept {
    Kept::begun("k".to_owned(), "17".to_owned(), String::new(), saved)
}
