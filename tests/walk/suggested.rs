//! What a guide says, held to rows of `tests/data/sequence-errors.csv`: a step that a row says is left out is suggested
//! because of that row, and another value that a row names is said to break it.

use crate::steps::{begin, go, up_to_work};
use crate::support::content;
use crate::support::table::table;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::verdict::RuleId;
use stepboard::walk::lapse::Lapse;
use stepboard::walk::suggest::{Otherwise, Reason, otherwise, suggest};
use stepboard::walk::{Decision, right};

/// A walk, a step of it, and the row of which the words say what is left out.
const LEFT_OUT: [(&str, Op, &str, &str); 3] = [
    ("rush-box", Op::GlueCheck, "se-02", "glue"),
    ("rush-box", Op::Fill, "se-34", "fill"),
    ("oily-box", Op::SolventWipe, "se-35", "wip"),
];

#[test]
fn a_step_is_suggested_because_of_the_row_that_says_what_leaving_it_out_makes() {
    let content = content();
    let rows = table("sequence-errors.csv");
    for (slug, operation, id, word) in LEFT_OUT {
        let row = rows.iter().find(|row| row.text("id") == id).expect("a row");
        let said = row.text("what_was_done");
        assert!(said.contains(word), "{id} says: {said}");
        let mut walk = begin(&content, slug);
        let next = up_to_work(&mut walk, &content, operation);
        let told = suggest(&walk, &content).expect("a right way on");
        assert_eq!(told.decisions, [Decision::Work(next)]);
        assert_eq!(told.why, Some(Reason::Rule(RuleId(id))), "{slug}: {operation:?}");
    }
}

/// Steps of the plain plate that leave no defect when they are left out, and the row of which the words name them.
const THERE_FOR: [(Op, &str, &str); 2] = [(Op::Prefit, "se-29", "drill"), (Op::CleanOff, "se-18", "tack")];

#[test]
fn a_step_that_leaves_no_defect_when_it_is_left_out_is_suggested_by_the_row_that_names_it() {
    let content = content();
    let rows = table("sequence-errors.csv");
    for (operation, id, word) in THERE_FOR {
        let row = rows.iter().find(|row| row.text("id") == id).expect("a row");
        assert!(row.text("what_was_done").contains(word), "{id} says: {}", row.text("what_was_done"));
        let mut walk = begin(&content, "plain-plate");
        up_to_work(&mut walk, &content, operation);
        assert_eq!(
            suggest(&walk, &content).expect("on").why,
            Some(Reason::Order(RuleId(id))),
            "{operation:?}"
        );
    }
}

#[test]
fn a_mistake_that_was_made_before_is_no_reason_for_a_step_that_does_not_mend_it() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let mut sanded = up_to_work(&mut walk, &content, Op::Sand);
    sanded.picks.insert("strokes".to_owned(), "across-the-grain".to_owned());
    go(&mut walk, [Decision::Work(sanded)], &content);
    let mut asked = 0;
    while walk.shown().is_empty() {
        let told = suggest(&walk, &content).expect("a right way on");
        assert_ne!(told.why, Some(Reason::Rule(RuleId("se-01"))), "{:?}", told.decisions);
        go(&mut walk, told.decisions, &content);
        asked += 1;
    }
    assert!(asked > 1, "it shows at once");
}

#[test]
fn what_is_put_on_and_seen_to_is_suggested_together_because_of_what_it_would_leave_undone() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    crate::steps::up_to(&mut walk, &content, |_, next| *next == Decision::Wear(right::FOR_THE_GUN));
    let told = suggest(&walk, &content).expect("a right way on");
    assert!(
        matches!(told.decisions.as_slice(), [Decision::Wear(_), Decision::Room(_)]),
        "{:?}",
        told.decisions
    );
    assert!(
        matches!(told.why, Some(Reason::Lapse(Lapse::NoRespirator | Lapse::WrongRespirator | Lapse::FanOff))),
        "{:?}",
        told.why
    );
    go(&mut walk, told.decisions, &content);
    assert!(matches!(suggest(&walk, &content).expect("on").decisions.as_slice(), [Decision::Work(_)]));
}

/// A step of the plain plate, another pick of it, and the row that names it.
const OTHER_PICKS: [(Op, &str, &str, &str, &str); 2] = [
    (Op::Sand, "strokes", "across-the-grain", "se-01", "across"),
    (Op::CleanOff, "cloth", "tack-heavy", "se-18", "tack"),
];

#[test]
fn another_value_is_said_to_break_the_row_that_names_it() {
    let content = content();
    let rows = table("sequence-errors.csv");
    for (operation, key, pick, id, word) in OTHER_PICKS {
        let row = rows.iter().find(|row| row.text("id") == id).expect("a row");
        assert!(row.text("what_was_done").contains(word), "{id} says: {}", row.text("what_was_done"));
        let mut walk = begin(&content, "plain-plate");
        let next = up_to_work(&mut walk, &content, operation);
        let found = otherwise(&walk, &next, &content);
        let wanted = Otherwise::Pick(key.to_owned(), pick.to_owned(), RuleId(id));
        assert!(found.contains(&wanted), "{operation:?}: {found:?}");
        let set = |one: &Otherwise| matches!(one, Otherwise::Pick(key, pick, _) if next.picks.get(key) == Some(pick));
        assert!(!found.iter().any(set), "what is suggested breaks nothing: {found:?}");
    }
}
