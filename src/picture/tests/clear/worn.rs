//! What levelling and buffing wore through: outline, patch, melted streak.

use crate::measure::{ASIDE, Face, SCALE, bytes, change, draw, probed, sound, spoiled};
use crate::{SEEDS, SEEN, buffed};
use stepboard_picture::{Finish, Lamp, Probe, Recipe, Severity, Species};

/// [la-18; T19] Wet with naphtha the colour of a sand-through still differs; a witness line is gone.
#[test]
fn naphtha_hides_a_witness_line_and_not_a_sand_through() {
    for seed in SEEDS {
        let amber = Recipe { amber: 0.6, ..sound(Species::plain(), Finish::Buffed, seed) };
        let wet = probed(&amber, Probe::Wetted);
        let clean = bytes(&draw(&wet, SCALE), Lamp::OVERHEAD);
        let line = draw(&spoiled(&wet, "witness-line", Severity::Severe), SCALE);
        assert!(bytes(&line, Lamp::OVERHEAD) == clean, "seed {seed}: a line is seen through naphtha");
        let through = draw(&spoiled(&wet, "sand-through", Severity::Plain), SCALE);
        let change = Face::bright(&through, ASIDE).less(&Face::bright(&draw(&wet, SCALE), ASIDE));
        let paler = change.mean(|place| through.mask()[place] > 0.9);
        assert!(paler > SEEN, "seed {seed}: {paler}");
    }
}

/// A witness line is an outline: what it surrounds is unchanged (faults reference, appearance). A sand-through is a patch.
#[test]
fn a_witness_line_is_an_outline_and_a_sand_through_a_patch() {
    /// Half-width of a square that is looked at, pixels: 2.5 mm.
    const HALF: usize = 5;
    for seed in SEEDS {
        let full = |slug: &str| {
            let change = change(&buffed(seed), slug, Severity::Plain, ASIDE);
            let filled = |column: usize, row: usize| {
                let seen = |(c, r): (usize, usize)| change.at(c, r).abs() > 0.5 * SEEN;
                (row - HALF..=row + HALF).all(|r| (column - HALF..=column + HALF).all(|c| seen((c, r))))
            };
            let rows = HALF..change.grid.rows - HALF;
            rows.flat_map(|row| (HALF..change.grid.columns - HALF).map(move |column| (column, row)))
                .filter(|(column, row)| filled(*column, *row))
                .count()
        };
        let (line, patch) = (full("witness-line"), full("sand-through"));
        assert!(line < 10 && patch > 100, "seed {seed}: {line}, {patch}");
    }
}

/// [la-20; T22] A burn pushes up a lip and leaves drag lines; sanding only takes away.
#[test]
fn a_burn_has_a_lip_and_sanding_has_none() {
    for seed in SEEDS {
        let rise = |slug: &str| {
            let (with, without) =
                (draw(&spoiled(&buffed(seed), slug, Severity::Plain), SCALE), draw(&buffed(seed), SCALE));
            let rise = with.height().iter().zip(without.height()).map(|(a, b)| a - b);
            rise.fold((0.0_f32, 0.0_f32), |(low, high), rise| (low.min(rise), high.max(rise)))
        };
        let ((burnt, lip), (sanded, none)) = (rise("buff-burn"), rise("sand-through"));
        assert!(lip > 1.5 && burnt < -2.0, "seed {seed}: {burnt} to {lip} micrometres");
        assert!(none < 0.1 && sanded < -2.0, "seed {seed}: {sanded} to {none} micrometres");
    }
}
