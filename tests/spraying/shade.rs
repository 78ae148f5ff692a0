//! A shaded edge beside its target.

use crate::support::near;
use crate::tries::setup;
use stepboard::spraying::program::path;
use stepboard::spraying::reading::shade::Zone;
use stepboard::spraying::reading::target::{lightness, reach, wanted};
use stepboard::spraying::{Better, Fault, Passes, better, good, grade, read};

/// R_wood 0.45, A 0.08 a coat: L* after 0 to 8 coats (Beer-Lambert, computed with the lightness of ISO/CIE 11664-4).
#[test]
fn colour_by_coats_is_that_of_the_worked_table() {
    let setup = setup("shaded-edge");
    let shade = stepboard::content::ShadedEdge {
        wood_reflectance: crate::tries::share(0.45),
        coat_absorbance: stepboard::quantity::Absorbance::new(0.08).expect("an absorbance"),
        ..setup.task.shade.expect("it is shaded")
    };
    let table = [
        (0.0, 72.9),
        (1.0, 62.6),
        (2.0, 53.5),
        (3.0, 45.5),
        (4.0, 38.4),
        (5.0, 32.1),
        (6.0, 26.5),
        (8.0, 17.3),
    ];
    for (coats, wanted) in table {
        near(lightness(coats * setup.coat(), &setup, shade), wanted, 0.06, "L*");
    }
    crate::support::covered::values("optics", "coats over wood through a film");
}

#[test]
fn the_target_falls_from_the_edge_to_nothing() {
    let setup = setup("shaded-edge");
    let shade = setup.task.shade.expect("it is shaded");
    let end = reach(&setup, shade);
    near(wanted(0.0, &setup, shade), shade.depth * setup.coat(), 1e-9, "whole at the edge");
    near(wanted(end, &setup, shade), 0.0, 1e-9, "nothing at its end");
    let falls = (0..50).map(|nth| wanted(end * f64::from(nth) / 49.0, &setup, shade)).collect::<Vec<_>>();
    assert!(falls.windows(2).all(|pair| pair[0] >= pair[1]));
}

fn changed(change: impl Fn(&mut Vec<Passes>)) -> (Vec<Fault>, Option<Better>) {
    let setup = setup("shaded-edge");
    let mut sets = good::run(&setup).expect("a good run");
    change(&mut sets);
    let reading = read(&setup, &path(&sets, &setup).expect("a path"));
    let findings = grade(&reading, &setup);
    let advice = better(&reading, &findings, &setup).map(|advice| advice.better);
    (findings.iter().map(|finding| finding.fault).collect(), advice)
}

#[test]
fn a_shade_fails_for_what_is_wrong_with_it() {
    let (pale, advice) = changed(|sets| sets.iter_mut().for_each(|set| set.speed *= 3.0));
    assert_eq!((pale.first(), advice), (Some(&Fault::Pale), Some(Better::OnceMore)));
    let (dark, advice) = changed(|sets| sets.iter_mut().for_each(|set| set.speed /= 2.0));
    assert_eq!((dark.first(), advice), (Some(&Fault::Dark), Some(Better::OnceLess)), "{dark:?}");
    // One side is done twice, the other not at all.
    let (lopsided, _) = changed(|sets| {
        let one: Vec<Passes> = sets.iter().step_by(2).cloned().collect();
        *sets = one.iter().chain(&one).cloned().collect();
    });
    assert!(lopsided.contains(&Fault::Lopsided) && lopsided.contains(&Fault::Banded), "{lopsided:?}");
    // Across the middle of the face.
    let (covered, advice) = changed(|sets| {
        let line = vec![(-100.0, 215.0), (100.0, 215.0)];
        let over = Passes { line, wide: 0.0, speed: 0.1, ..sets[0].clone() };
        sets.extend([over.clone(), over]);
    });
    assert_eq!((covered.first(), advice), (Some(&Fault::CentreCovered), Some(Better::AimOut)), "{covered:?}");
}

#[test]
fn a_good_shade_is_even_along_the_edge_and_alike_on_both_sides() {
    let setup = setup("shaded-edge");
    let sets = good::run(&setup).expect("a good run");
    let reading = read(&setup, &path(&sets, &setup).expect("a path"));
    let shade = reading.shade.expect("it is shaded");
    assert_eq!(
        shade.zones.iter().map(|read| read.zone).collect::<Vec<_>>(),
        [Zone::Edge, Zone::Middle, Zone::Inner, Zone::Centre]
    );
    assert!(shade.sides < 0.5, "sides: {}", shade.sides);
    let lightness: Vec<f64> = shade.zones.iter().map(|read| read.lightness).collect();
    assert!(lightness.windows(2).all(|pair| pair[0] < pair[1]), "{lightness:?}");
}
