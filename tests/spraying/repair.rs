//! A repaired place that gets its clear again: film on the place, none on the sound film farther out than it may fade.

use crate::support::near;
use crate::tries::setup;
use stepboard::spraying::program::path;
use stepboard::spraying::reading::measure;
use stepboard::spraying::setup::FILM_A_ML;
use stepboard::spraying::{Better, Fault, Grid, Passes, Reading, Sprayer, better, good, grade, read};

/// The model's run with something done otherwise in each of its passes.
fn changed(change: impl Fn(&mut Passes)) -> Vec<Passes> {
    let mut sets = good::run(&setup("repaired-place")).expect("a good run");
    sets.iter_mut().for_each(change);
    sets
}

fn came(sets: &[Passes]) -> (Reading, Vec<Fault>, Option<Better>) {
    let setup = setup("repaired-place");
    let reading = read(&setup, &path(sets, &setup).expect("a path"));
    let findings = grade(&reading, &setup);
    let advice = better(&reading, &findings, &setup).map(|advice| advice.better);
    (reading, findings.iter().map(|finding| finding.fault).collect(), advice)
}

#[test]
fn a_local_mist_passes() {
    let (reading, faults, _) = came(&changed(|_| ()));
    assert_eq!(faults, []);
    assert!(reading.paint.strayed() < 0.1, "{}", reading.paint.strayed());
}

/// The place is a rectangle of 150 mm by 110: how far a cell lies from it by plane geometry, and what lies there added up.
#[test]
fn what_strays_is_what_lies_farther_out_than_the_fade() {
    const WIDE: Grid = Grid { left: -500.0, top: -400.0, cell: 2.0, columns: 500, rows: 450 };
    let setup = setup("repaired-place");
    let path = path(&changed(|set| (set.lead, set.lag) = (150.0, 150.0)), &setup).expect("a path");
    let sprayer = Sprayer::spray(&setup, WIDE, &path);
    let past = |(x, y): (f64, f64)| (x.abs() - 75.0).max(0.0).hypot((-y).max(y - 110.0).max(0.0)) > 60.0;
    let cells = sprayer.film().laid().iter().enumerate().filter(|(cell, _)| past(WIDE.middle(*cell)));
    let strayed = cells.map(|(_, film)| f64::from(*film)).sum::<f64>() * WIDE.area() / FILM_A_ML;
    let read = measure(&sprayer, &path).paint;
    near(read.past, strayed, 1e-3 * read.sprayed, "mL farther out");
    near(read.strayed(), strayed / (read.on_work + read.beside), 1e-3, "share of what landed");
    assert!(read.strayed() > 0.1, "{}", read.strayed());
}

#[test]
fn passes_that_go_on_over_the_sound_film_and_a_whole_coat_fail_for_that() {
    let (_, faults, advice) = came(&changed(|set| (set.lead, set.lag) = (150.0, 150.0)));
    assert_eq!((faults.first(), advice), (Some(&Fault::Strayed), Some(Better::LeadLess)));
    // The whole face, as wide again on each side and above and below.
    let (_, faults, _) = came(&{
        let first = changed(|_| ())[0].clone();
        vec![Passes { line: vec![(-225.0, -110.0), (225.0, -110.0)], wide: 330.0, ..first }]
    });
    assert!(faults.contains(&Fault::Strayed), "{faults:?}");
    // A fan opened to its widest reaches past the fade and leaves the place thin.
    let (_, faults, advice) = came(&changed(|set| set.fan = 2.5));
    assert!(!faults.is_empty());
    assert_eq!(advice, Some(Better::CloseFan), "{faults:?}");
}
