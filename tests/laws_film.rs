//! Laws of film over many random inputs: nothing panics, more thinner and less landing never give more film, more film never
//! leaves less.

mod support;

use proptest::prelude::*;
use stepboard::quantity::{Density, Hours, SquareMetres};
use stepboard::rules::abrasive::{
    Abrading, Grade, P_SERIES, ScuffSheet, ladder, scratch_allowance, scuff_sheet, skips, spot_next,
};
use stepboard::rules::film::{self, Facing, Levelling, Place, ToRub};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::Term;
use support::any::{laws, sheet, term};
use support::film::{dry, share, thinned, um};

thread_local! {
    static BASE: Sheet = support::base();
}

/// Rounding of a chain of divisions.
const DUST: f64 = 1e-9;

fn grade() -> impl Strategy<Value = &'static Grade> {
    (0..P_SERIES.len()).prop_map(|index| &P_SERIES[index])
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn more_thinner_never_leaves_more_film(
        wet in 0.0..=600.0_f64, solids in 0.0..=1.0_f64, a in 0.0..=10.0_f64, b in 0.0..=10.0_f64,
    ) {
        let (less, more) = (a.min(b), a.max(b));
        prop_assert!(dry(wet, solids, more) <= dry(wet, solids, less));
        prop_assert!(dry(wet, solids, less) <= wet, "a film never dries thicker than it was laid");
    }

    #[test]
    fn more_coats_never_lower_the_build(coat in 0.0..=100.0_f64, a in 0_u32..60, b in 0_u32..60) {
        let build = |coats: u32| film::build(coats, um(coat)).answer;
        prop_assert!(build(a.min(b)) <= build(a.max(b)));
    }

    #[test]
    fn the_coats_counted_reach_the_build_and_one_less_does_not(
        target in 1.0..=300.0_f64, coat in 2.0..=100.0_f64,
    ) {
        let coats = film::coats_for(um(target), um(coat)).expect("a coat leaves film").answer;
        let reached = |coats: u32| f64::from(coats) * coat;
        prop_assert!(reached(coats) >= target - 1e-6);
        prop_assert!(reached(coats - 1) < target);
    }

    #[test]
    fn wet_and_dry_turn_into_one_another(
        wanted in 1.0..=50.0_f64, solids in 0.05..=1.0_f64, ratio in 0.0..=3.0_f64,
    ) {
        let wet = film::wet_for(um(wanted), share(solids), thinned(ratio)).expect("solids are there").answer;
        prop_assert!((dry(wet.get(), solids, ratio) - wanted).abs() < 1e-6);
    }

    #[test]
    fn more_film_never_forbids_what_less_allowed(a in 0.0..=300.0_f64, b in 0.0..=300.0_f64, taken in 0.0..=100.0_f64) {
        let rank = |build: f64| {
            let answer = BASE.with(|sheet| film::levelling(um(build), um(taken), sheet).answer);
            Levelling::ALL.iter().position(|one| *one == answer)
        };
        prop_assert!(rank(a.max(b)) <= rank(a.min(b)), "the list runs from level to cut through");
    }

    #[test]
    fn nothing_panics(
        wet in 0.0..=5_000.0_f64, solids in 0.0..=1.0_f64, ratio in 0.0..=100.0_f64, hour in 0.0..=24.0_f64,
        ordered in 0_u32..=40, laid in 0_u32..=40,
    ) {
        BASE.with(|sheet| {
            let coat = film::dry(um(wet), share(solids), thinned(ratio)).answer;
            let _ = film::coats_for(um(300.0), coat);
            let _ = film::wet_for(coat, share(solids), thinned(ratio));
            for facing in Facing::ALL {
                let _ = film::wet_film(um(wet), *facing, sheet);
            }
            let now = Hours::new(hour).expect("a time of day");
            let coats = film::coats_today(ordered, laid, 0, now, sheet).answer;
            assert!(f64::from(coats) <= sheet.get(Setting::CoatsADay));
        });
    }

    /// Thicker, poorer or less landing never covers more; what covers an area is what an area takes.
    #[test]
    fn coverage_falls_with_film_and_rises_with_solids_and_transfer(
        (solids, more_solids) in (0.05..=1.0_f64, 0.0..=1.0_f64), dry in 1.0..=400.0_f64, thicker in 1.0..=3.0_f64,
        (lands, more_lands) in (0.05..=1.0_f64, 0.0..=1.0_f64), area in 0.01..=4.0_f64,
    ) {
        let covers = |solids: f64, dry: f64, lands: f64| film::coverage(share(solids), um(dry), share(lands)).expect("told").answer.get();
        let here = covers(solids, dry, lands);
        prop_assert!(covers(solids, dry * thicker, lands) <= here + DUST);
        prop_assert!(covers(solids + (1.0 - solids) * more_solids, dry, lands) >= here - DUST);
        prop_assert!(covers(solids, dry, lands + (1.0 - lands) * more_lands) >= here - DUST);
        let area = SquareMetres::new(area).expect("an area");
        let needed = film::volume_for(area, um(dry), share(solids), share(lands)).expect("told").answer.get();
        prop_assert!((needed / 1_000.0 * here - area.get()).abs() < 1e-6 * area.get());
    }

    /// Solids heavier than the solvent hold less of the volume than of the weight, and more weight is more volume.
    #[test]
    fn heavy_solids_are_fewer_by_volume(
        a in 0.01..=0.99_f64, b in 0.01..=0.99_f64, solids in 0.5..=2.5_f64, solvent in 0.5..=2.5_f64,
    ) {
        let density = |value| Density::new(value).expect("a density");
        let volume = |weight: f64| film::volume_solids(share(weight), density(solids), density(solvent)).answer.get();
        prop_assert!(volume(a.min(b)) <= volume(a.max(b)) + DUST);
        let alike = (solids - solvent).abs() < 1e-3;
        prop_assert!(alike || (volume(a) < a) == (solids > solvent));
    }

    /// More film or evenness never leaves less; more texture never leaves more; an edge never has more than the face.
    #[test]
    fn the_margin_moves_one_way(
        build in 0.0..=400.0_f64, more in 0.0..=100.0_f64, even in 0.1..=1.0_f64, texture in 0.0..=60.0_f64,
        first in grade(), place in term::<Place>(), sheet in sheet(),
    ) {
        let grades = ladder(first, Abrading::Levelling, &sheet);
        let left = |build: f64, even: f64, texture: f64, place| {
            let film = ToRub { build: um(build), evenness: share(even), texture: um(texture), place };
            film::cut_through(film, &grades, &sheet).answer
        };
        let here = left(build, even, texture, place);
        prop_assert!(left(build + more, even, texture, place).left >= here.left);
        prop_assert!(left(build + more, even, texture, place).risk as u8 <= here.risk as u8);
        prop_assert!(left(build, even * 0.9, texture, place).left <= here.left);
        prop_assert!(left(build, even, texture + more, place).left <= here.left);
        prop_assert!(left(build, even, texture, Place::Edge).left <= left(build, even, texture, Place::Face).left);
        prop_assert!(here.left.get() <= build);
    }

    /// More wet film never flows less, and flows back by the same factor.
    #[test]
    fn more_wet_film_never_flows_less(a in 1.0..=600.0_f64, b in 1.0..=600.0_f64, coat in 20.0..=200.0_f64) {
        let flow = |wet: f64, other: f64| film::sag_flow(um(wet), um(other)).answer;
        prop_assert!(flow(a.min(b), coat) <= flow(a.max(b), coat));
        prop_assert!((flow(a, b) * flow(b, a) - 1.0).abs() < 1e-9);
    }

    /// A heavier wet film never holds better on a face, and a lying face never holds worse than a standing one.
    #[test]
    fn more_wet_film_never_holds_better(a in 0.0..=600.0_f64, b in 0.0..=600.0_f64, facing in term::<Facing>(), sheet in sheet()) {
        let sags = |wet: f64, facing| film::wet_film(um(wet), facing, &sheet).answer.sag() as u8;
        prop_assert!(sags(a.min(b), facing) <= sags(a.max(b), facing));
        prop_assert!(sags(a, Facing::Lying) <= sags(a, Facing::Standing));
    }

    /// Finer grades never scratch deeper, and a longer ladder never takes less.
    #[test]
    fn finer_grades_never_take_more(a in grade(), b in grade(), sheet in sheet()) {
        let (coarse, fine) = if a.number <= b.number { (a, b) } else { (b, a) };
        let taken = |grades: &[&Grade]| scratch_allowance(grades, &sheet).answer.get();
        prop_assert!(taken(&[fine]) <= taken(&[coarse]));
        prop_assert!(taken(&[coarse, fine]) >= taken(&[coarse]));
    }

    /// A spot is brought up without a skip and never past the first grade of the face.
    #[test]
    fn a_spot_comes_up_to_the_face_without_a_skip(from in grade(), sheet in sheet()) {
        let first = stepboard::rules::abrasive::on_sheet(&sheet, Setting::LevelGrit);
        let mut spot = from;
        while let Some(next) = spot_next(spot, &sheet).answer {
            prop_assert!(next.number > spot.number && next.number <= first.number);
            prop_assert!(!skips(spot, next, &sheet).answer);
            spot = next;
        }
        prop_assert!(spot.number >= first.number);
    }

    /// Exactly one grade is the shop's for scuffing; finer than right is too fine, coarser too coarse.
    #[test]
    fn one_grade_scuffs(a in grade(), sheet in sheet()) {
        let right = P_SERIES.iter().filter(|grade| scuff_sheet(grade, &sheet).answer == ScuffSheet::Right).count();
        prop_assert_eq!(right, 1);
        let (coarser, finer) = a.beside();
        if scuff_sheet(a, &sheet).answer != ScuffSheet::TooFine {
            prop_assert!(coarser.is_none_or(|grade| scuff_sheet(grade, &sheet).answer == ScuffSheet::TooCoarse));
        }
        if scuff_sheet(a, &sheet).answer != ScuffSheet::TooCoarse {
            prop_assert!(finer.is_none_or(|grade| scuff_sheet(grade, &sheet).answer == ScuffSheet::TooFine));
        }
    }
}
