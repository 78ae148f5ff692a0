//! Colour that went where it should not, and what lies beside the wood.

use crate::measure::*;
use stepboard_picture::{Finish, Severity, Species};

/// Row of the joint with a strip along the lower edge: where rows differ most from the next but one.
fn joint(light: &Field) -> usize {
    let (_, rows) = light.means();
    let from = rows.len() / 2;
    let step = |row: &usize| (rows[row + 1] - rows[row - 1]).abs();
    (from..rows.len() - 1).max_by(|a, b| step(a).total_cmp(&step(b))).unwrap_or(from)
}

/// Columns on the left, of a quarter of a millimetre, where dark wood may stand.
const BESIDE: usize = 100;

/// Whether each pixel of a row differs from the same strip without colour on it.
fn coloured(light: &Field, strip: &Field, row: usize) -> Vec<bool> {
    (BESIDE..light.columns)
        .map(|column| (light.at(column, row) - strip.at(column, row)).abs() > 10.0)
        .collect()
}

/// [la-27] Colour under tape is fingers from one straight line (T43; T44); a dye that bleeds spreads with a broad front and also
/// moves in the field.
#[test]
fn bleed_under_tape_is_fingers_from_a_line_and_bleeding_dye_spreads() {
    const FINE: f32 = 0.25;
    for seed in SEEDS {
        let look = |slug: &str| {
            Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Severe), FINE), ASIDE, 2)
        };
        let (tape, dye) = (look("tape-bleed"), look("dye-bleed"));
        assert!(joint(&tape).abs_diff(joint(&dye)) <= 2, "the same strip");
        let line = joint(&tape);
        // A slight bridge has the same strip and no colour that far on it.
        let strip =
            Field::light(&draw(&spoiled(&stained(seed), "tape-bridge", Severity::Slight), FINE), ASIDE, 2);
        let at = |light: &Field, mm: f32| coloured(light, &strip, line + pixels(mm, FINE));
        let share = |marks: &[bool]| marks.iter().filter(|on| **on).count() as f32 / marks.len() as f32;
        let run = |marks: &[bool]| longest_run(marks.len(), |n| marks[n]) as f32 * FINE;
        assert!(
            share(&at(&tape, 1.0)) > share(&at(&tape, 2.5))
                && share(&at(&tape, 2.5)) > share(&at(&tape, 6.0))
        );
        assert!(share(&at(&tape, 1.5)) > 0.03, "{}", share(&at(&tape, 1.5)));
        assert!(run(&at(&tape, 2.5)) < 8.0, "fingers: {} mm", run(&at(&tape, 2.5)));
        assert!(run(&at(&dye, 1.5)) > 15.0, "a front: {} mm", run(&at(&dye, 1.5)));
        // In the field only the dye has moved.
        let clean = Field::light(&draw(&stained(seed), FINE), ASIDE, 2);
        let moved = |light: &Field| {
            let change = light.less(&clean);
            let field =
                (0..line - 8).flat_map(|row| (BESIDE..change.columns).map(move |column| (column, row)));
            spread(&field.map(|(column, row)| change.at(column, row)).collect::<Vec<f32>>())
        };
        assert!(moved(&tape) < 0.5 && moved(&dye) > 2.0, "{} {}", moved(&tape), moved(&dye));
    }
}

/// What a dark wood gives off is strongest beside it, runs out along the grain and is red-brown (B1; T24).
#[test]
fn extractives_run_out_along_the_grain_and_are_red() {
    for seed in SEEDS {
        let clean = recipe(Species::plain(), Finish::Cleared, Dress::Bare, seed);
        let spoiled = draw(&spoiled(&clean, "extractive-bleed", Severity::Plain), COARSE);
        let clean = draw(&clean, COARSE);
        let part = |part: usize| Field::light(&spoiled, ASIDE, part).less(&Field::light(&clean, ASIDE, part));
        let (red, blue) = (part(0), part(2));
        // The strip of dark wood ends where red comes back: what bleeds takes little of it.
        let (columns, _) = red.means();
        let darkest = columns.iter().copied().fold(0.0, f32::min);
        let joint = columns.iter().rposition(|value| *value < 0.5 * darkest).unwrap_or(0) + 2;
        let mean = |field: &Field, from: f32| {
            let columns = field.means().0;
            let start = joint + pixels(from, COARSE);
            columns[start..start + 6].iter().sum::<f32>() / 6.0
        };
        assert!(mean(&blue, 1.0) < mean(&blue, 7.0) && mean(&blue, 7.0) < mean(&blue, 18.0));
        assert!(mean(&blue, 1.0) < 2.0 * mean(&red, 1.0), "{} {}", mean(&blue, 1.0), mean(&red, 1.0));
        let (mut along, mut across) = (0.0, 0.0);
        for row in 1..blue.rows {
            for column in joint + 4..joint + 30 {
                along += (blue.at(column, row) - blue.at(column - 1, row)).powi(2);
                across += (blue.at(column, row) - blue.at(column, row - 1)).powi(2);
            }
        }
        assert!(across > 1.5 * along, "fingers with the grain: {along} {across}");
    }
}

/// A bridge tears the film at the line alone: no colour on the strip apart from flakes, nothing changed farther off.
#[test]
fn a_bridge_is_at_the_line_and_nowhere_else() {
    for seed in SEEDS {
        let panel = stained(seed);
        let (clean, torn) =
            (draw(&panel, COARSE), draw(&spoiled(&panel, "tape-bridge", Severity::Severe), COARSE));
        let rise: Vec<f32> = torn.height().iter().zip(clean.height()).map(|(a, b)| a - b).collect();
        let rise = Field::of(&torn, rise);
        let line = joint(&Field::light(&torn, ASIDE, 2));
        let most = |rows: std::ops::Range<usize>| {
            rows.flat_map(|row| (0..rise.columns).map(move |column| (column, row)))
                .map(|(column, row)| rise.at(column, row).abs())
                .fold(0.0, f32::max)
        };
        assert!(most(line - 3..line + 3) > 6.0);
        assert_eq!(most(0..line - 16), 0.0);
        assert_eq!(most(line + 16..rise.rows), 0.0);
    }
}

/// What lies beside the wood tells nothing: of two faults that are told apart it stands beside both on the same panels.
#[test]
fn neighbours_do_not_give_the_fault_away() {
    let darkest_left = |slug: &str, seed: u32| {
        let light = Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Slight), COARSE), ASIDE, 0);
        let column = |column: usize| (0..light.rows / 2).map(|row| light.at(column, row)).sum::<f32>();
        column(2) < 0.6 * column(light.columns - 3)
    };
    let pale_below = |slug: &str, seed: u32| {
        let light = Field::light(&draw(&spoiled(&stained(seed), slug, Severity::Slight), COARSE), ASIDE, 2);
        let row =
            |row: usize| (light.columns / 2..light.columns).map(|column| light.at(column, row)).sum::<f32>();
        row(light.rows - 3) > 1.2 * row(light.rows / 2)
    };
    let count = |holds: &dyn Fn(u32) -> bool| (0..8).filter(|seed| holds(*seed)).count();
    assert!((1..8).contains(&count(&|seed| darkest_left("dye-bleed", seed))));
    assert!((1..8).contains(&count(&|seed| pale_below("extractive-bleed", seed))));
    for seed in 0..8 {
        assert_eq!(pale_below("glue-spot", seed), pale_below("stain-blotch", seed), "{seed}");
    }
}
