//! Memory against rows computed with a library of the same model, and the grade of an answer against the table it was
//! designed by.

mod support;

use stepboard::learn::memory::{Answered, Care, Day, Earlier, Grade, Memory, State, graded};
use stepboard::quantity::Fraction;
use stepboard::record::Certainty;
use support::covered::same;
use support::table::{Row, table};
use support::{covered, near};

/// Eight decimals are printed.
const DIGIT: f64 = 1e-8;
/// Far above every interval of the table.
const NO_CAP: u32 = 36_500;

fn share(value: f64) -> Fraction {
    Fraction::new(value).expect("a share")
}

fn grade(number: &str) -> Grade {
    match number {
        "1" => Grade::Missed,
        "2" => Grade::Shaky,
        "3" => Grade::Steady,
        "4" => Grade::Solid,
        other => panic!("`{other}` is no grade"),
    }
}

/// Works a history written as `+days:grade +days:grade`.
fn worked(row: &Row) -> State {
    let mut state: Option<State> = None;
    for step in row.text("history").split(' ') {
        let (days, number) = step.trim_start_matches('+').split_once(':').expect("days and a grade");
        let (days, grade) = (days.parse().expect("days"), grade(number));
        state = Some(state.map_or_else(|| State::first(grade), |before| before.after(days, grade)));
    }
    state.expect("a history has answers")
}

/// memory.csv, all 24 rows.
#[test]
fn the_rows_of_the_library_are_met() {
    let rows = table("memory.csv");
    assert_eq!(rows.len(), 24, "the whole table");
    for row in &rows {
        let (state, id) = (worked(row), row.text("id"));
        near(state.stability_days(), row.number("stability"), DIGIT, &format!("{id}: stability"));
        near(state.difficulty(), row.number("difficulty"), DIGIT, &format!("{id}: difficulty"));
        let days = state.interval_days(share(row.number("target")), NO_CAP);
        assert_eq!(days.to_string(), row.text("interval_days"), "{id}: days at {}", row.text("target"));
        let recall = state.recall(row.number("t_days"));
        near(recall, row.number("retrievability_at_t"), DIGIT, &format!("{id}: recall"));
        row.checked("memory");
    }
}

/// Chances of recall and days for a stability of 10 days, printed by the same library.
#[test]
fn forgetting_at_ten_days_is_met() {
    let state = State::new(10.0, 5.0);
    for (days, recall) in
        [(5.0, 0.940_344_29), (10.0, 0.9), (30.0, 0.809_388_10), (100.0, 0.692_826_63), (365.0, 0.573_558_67)]
    {
        near(state.recall(days), recall, DIGIT, &format!("recall after {days} days"));
    }
    for (target, days) in [(0.80, 33), (0.85, 19), (0.90, 10), (0.95, 4), (0.97, 2)] {
        same!(state.interval_days(share(target), NO_CAP), days, "days at {target}");
    }
    covered::values("memory", "curve at ten days, computed with the library of `memory.csv`");
}

/// Two answers on one day, by the equation reckoned beside the program; the library's rows hold it for one grade only, so
/// these are not counted.
#[test]
fn answers_within_a_day_are_met() {
    let grades = [Grade::Missed, Grade::Shaky, Grade::Steady, Grade::Solid];
    for (stability, after) in [
        (0.5, [0.185_804_15, 0.5, 0.549_876_21, 0.945_953_28]),
        (20.0, [5.830_420_30, 20.0, 20.0, 29.683_433_34]),
    ] {
        for (grade, after) in grades.into_iter().zip(after) {
            let found = State::new(stability, 5.0).after(0, grade).stability_days();
            near(found, after, DIGIT, &format!("{stability} days, {grade:?}"));
        }
    }
}

const MEDIAN_SECONDS: u32 = 40;

fn answered(right: bool, certainty: Certainty, seconds: u32) -> Answered {
    let family = "fill-wait".to_owned();
    Answered { family, day: Day(0), right, certainty, helped: false, active_seconds: Some(seconds) }
}

fn after(count: usize, answer: &Answered) -> Grade {
    let before = answered(true, Certainty::TestBoard, MEDIAN_SECONDS);
    graded(answer, &Earlier::of(&vec![before; count]))
}

/// The designed table of grades; our own design, not counted as a check.
#[test]
fn the_grade_follows_from_right_certain_and_slow() {
    use Certainty::{AskFirst, OnTheJob, TestBoard};
    // Times of the median: 0.6, 1.5 and 2.5.
    let (quick, normal, slow) = (24, 60, 100);
    assert_eq!(after(5, &answered(true, AskFirst, normal)), Grade::Shaky);
    assert_eq!(after(5, &answered(true, TestBoard, normal)), Grade::Steady);
    assert_eq!(after(5, &answered(true, TestBoard, slow)), Grade::Shaky);
    assert_eq!(after(0, &answered(true, OnTheJob, quick)), Grade::Steady);
    assert_eq!(after(1, &answered(true, OnTheJob, quick)), Grade::Steady);
    assert_eq!(after(2, &answered(true, OnTheJob, quick)), Grade::Solid);
    assert_eq!(after(5, &answered(true, OnTheJob, slow)), Grade::Steady);
    assert_eq!(after(5, &answered(false, OnTheJob, normal)), Grade::Missed);
    let helped = |right| Answered { helped: true, ..answered(right, OnTheJob, normal) };
    assert_eq!(after(5, &helped(true)), Grade::Shaky);
    assert_eq!(after(5, &helped(false)), Grade::Missed);
}

#[test]
fn time_counts_only_where_the_usual_time_is_known() {
    let slow = answered(true, Certainty::TestBoard, 100);
    assert_eq!(after(4, &slow), Grade::Steady, "four right answers tell no usual time");
    assert_eq!(after(5, &slow), Grade::Shaky);
    let untimed = Answered { active_seconds: None, ..slow };
    assert_eq!(after(5, &untimed), Grade::Steady);
    let twice = answered(true, Certainty::TestBoard, 2 * MEDIAN_SECONDS);
    assert_eq!(after(5, &twice), Grade::Steady, "twice is not more than twice");
    // Ten minutes at most: after a usual time of 300 s nothing is slow.
    let before = answered(true, Certainty::TestBoard, 300);
    let away = answered(true, Certainty::TestBoard, 4_000);
    assert_eq!(graded(&away, &Earlier::of(&vec![before; 5])), Grade::Steady);
}

/// Missed at last after a long interval: the model says 5 days (S10), the schedule the day after.
#[test]
fn what_was_missed_comes_back_the_day_after() {
    let state = State::new(5.485_626_27, 7.026_989_57);
    let missed = Memory { state, last: Day(300), grade: Grade::Missed };
    assert_eq!(missed.due(Care::Ordinary, None), Day(301));
    let right = Memory { grade: Grade::Steady, ..missed };
    assert_eq!(right.due(Care::Ordinary, None), Day(305));
    assert_eq!(right.due(Care::Safety, None), Day(302), "S10 at 0.95");
}

/// 60 days, 30 for safety, and never past the day on which a pass expires (own design).
#[test]
fn caps_hold() {
    let long = Memory { state: State::new(162.862, 2.097), last: Day(100), grade: Grade::Steady };
    assert_eq!(long.due(Care::Ordinary, None), Day(160));
    assert_eq!(long.due(Care::Safety, None), Day(130));
    assert_eq!(long.due(Care::Ordinary, Some(Day(112))), Day(112));
    assert_eq!(long.due(Care::Ordinary, Some(Day(400))), Day(160));
    assert_eq!(long.due(Care::Ordinary, Some(Day(90))), Day(101), "expired: no sooner than the day after");
}

#[test]
fn a_family_needs_the_care_of_the_worst_it_can_do() {
    let content = support::content();
    let care = |id: &str| Care::of(&content, content.family(id).expect("a family"));
    for family in &content.families {
        let severe = family.severity == stepboard::rules::term::Severity::Safety;
        assert!(!severe || care(&family.id) == Care::Safety, "{}", family.id);
    }
    assert_eq!(care("next-grit"), Care::Ordinary);
}
