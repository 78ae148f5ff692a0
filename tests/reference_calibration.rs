//! Certainty beside what came out: a log of twelve answers, worked in Python (numpy, scikit-learn for the score, scipy for the
//! ranges).

mod support;

use stepboard::learn::calibration::{Calibration, OVERCONFIDENT_LEAST, points, stands_for};
use stepboard::record::Certainty;
use support::covered::{self, same};
use support::near;

/// Printed to six decimals.
const SIXTH: f64 = 6e-7;

use Certainty::{AskFirst as Low, OnTheJob as High, TestBoard as Middle};

const LOG: [(Certainty, bool); 12] = [
    (High, true),
    (High, true),
    (Middle, true),
    (High, false),
    (Low, false),
    (Middle, true),
    (High, true),
    (Low, true),
    (Middle, false),
    (High, true),
    (High, true),
    (Middle, true),
];

#[test]
fn the_worked_log_comes_out_as_computed() {
    let found = Calibration::of(&LOG).expect("answers");
    let marks: Vec<i32> = LOG.iter().map(|(certainty, right)| points(*certainty, *right)).collect();
    same!(marks, [3, 3, 2, -6, 0, 2, 3, 1, -2, 3, 3, 2]);
    same!((found.answers, found.points), (12, 14));
    let counts: Vec<(u32, u32)> = found.levels.iter().map(|level| (level.right, level.answers)).collect();
    same!(counts, [(1, 2), (3, 4), (5, 6)]);
    for (level, (low, high)) in
        found.levels.iter().zip([(0.012_579, 0.987_421), (0.194_120, 0.993_691), (0.358_765, 0.995_789)])
    {
        let range = level.range().expect("answers");
        near(range.0, low, SIXTH, "lower end");
        near(range.1, high, SIXTH, "upper end");
    }
    near(found.brier, 0.175_967, SIXTH, "Brier score");
    near(found.reliability, 0.002_356, SIXTH, "reliability");
    near(found.resolution, 0.013_889, SIXTH, "resolution");
    near(found.uncertainty, 0.187_500, SIXTH, "uncertainty");
    near(found.skill().expect("mixed"), 0.061_511, SIXTH, "skill");
    near(found.log_loss(), 0.539_096, SIXTH, "log loss");
    near(found.bias, 0.026_667, SIXTH, "bias");
    near(found.error, 0.04, SIXTH, "calibration error");
    covered::values("calibration", "log of twelve answers, computed");
}

/// The table of expected points of the published scheme, and where its lines cross: at 2/3 and at 4/5.
#[test]
fn honesty_pays_best() {
    let expected = |certainty, p: f64| {
        p * f64::from(points(certainty, true)) + (1.0 - p) * f64::from(points(certainty, false))
    };
    for (p, low, middle, high) in [
        (0.25, 0.25, -1.00, -3.75),
        (0.50, 0.50, 0.00, -1.50),
        (2.0 / 3.0, 2.0 / 3.0, 2.0 / 3.0, 0.0),
        (0.75, 0.75, 1.00, 0.75),
        (0.80, 0.80, 1.20, 1.20),
        (0.90, 0.90, 1.60, 2.10),
        (0.95, 0.95, 1.80, 2.55),
    ] {
        near(expected(Low, p), low, 1e-12, "lowest");
        near(expected(Middle, p), middle, 1e-12, "middle");
        near(expected(High, p), high, 1e-12, "highest");
    }
    // What a level stands for lies where it is the honest choice.
    for certainty in [Low, Middle, High] {
        let p = stands_for(certainty).get();
        let best = [Low, Middle, High].into_iter().max_by(|a, b| expected(*a, p).total_cmp(&expected(*b, p)));
        same!(best, Some(certainty));
    }
    covered::values("calibration", "certainty-based marking, Gardner-Medwin 2005");
}

/// Score = reliability - resolution + uncertainty (Murphy 1973), whatever the log.
#[test]
fn the_parts_sum_to_the_score() {
    let mut dice = stepboard::card::Dice::new("calibration");
    for _ in 0..support::inputs(support::any::USUAL) {
        let log: Vec<(Certainty, bool)> = (0..1 + dice.below(40))
            .map(|_| (*dice.pick(&[Low, Middle, High]).expect("one"), !dice.one_in(4)))
            .collect();
        let found = Calibration::of(&log).expect("answers");
        let direct: f64 = log
            .iter()
            .map(|(certainty, right)| (stands_for(*certainty).get() - f64::from(u8::from(*right))).powi(2))
            .sum::<f64>()
            / f64::from(found.answers);
        assert!((found.brier - direct).abs() < 1e-12);
        assert!((found.reliability - found.resolution + found.uncertainty - direct).abs() < 1e-12);
    }
}

#[test]
fn edges_show_nothing_rather_than_a_number() {
    assert_eq!(Calibration::of(&[]), None);
    let all_right = Calibration::of(&[(Middle, true), (High, true)]).expect("answers");
    assert_eq!(all_right.skill(), None);
    let unused = all_right.levels.first().expect("the lowest level");
    assert_eq!((unused.share(), unused.range()), (None, None));
    let sure = |count: u32, wrong: u32| {
        Calibration::of(&(0..count).map(|nth| (High, nth >= wrong)).collect::<Vec<_>>())
            .expect("answers")
            .too_sure()
    };
    assert!(!sure(OVERCONFIDENT_LEAST - 1, OVERCONFIDENT_LEAST - 1), "nobody is told below twenty");
    assert!(sure(OVERCONFIDENT_LEAST, OVERCONFIDENT_LEAST / 2));
    assert!(!sure(OVERCONFIDENT_LEAST, 2), "9 in 10 is what it stands for");
}
