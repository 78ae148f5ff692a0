//! Laws of abrasives and mixing over many random inputs: nothing panics, readings of a mix turn back into one another,
//! more thinner never raises the solids, ladders only get finer.

mod support;

use proptest::prelude::*;
use stepboard::quantity::{Fraction, Hours, Micrometres, Millilitres};
use stepboard::rules::abrasive::{
    Abrading, Grade, P_SERIES, Shine, Strokes, ladder, level_move, next_grade, ready_for_stain, skips,
};
use stepboard::rules::mixing::{
    MixStep, PotKind, Thinning, Washcoat, batch, mix_order, mix_use, retarder_dose, retarder_most,
    thin_to_solids, thinned_solids, thinner_for, washcoat,
};
use stepboard::rules::term::Term;
use support::any::{laws, sheet, term};

/// Rounding of a chain of divisions.
const DUST: f64 = 1e-9;

fn grade() -> impl Strategy<Value = &'static Grade> {
    (0..P_SERIES.len()).prop_map(|index| &P_SERIES[index])
}

fn share() -> impl Strategy<Value = Fraction> {
    (0.0..=1.0).prop_map(|value| Fraction::new(value).expect("in range"))
}

fn thinning() -> impl Strategy<Value = Thinning> {
    (0.0..=20.0).prop_map(|ratio| Thinning::of_ratio(ratio).expect("in range"))
}

fn ml() -> impl Strategy<Value = Millilitres> {
    (0.0..=20_000.0).prop_map(|value| Millilitres::new(value).expect("in range"))
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= DUST * (1.0 + b.abs())
}

proptest! {
    #![proptest_config(laws())]

    /// Parts, percent thinned and share of the mix are one thing said in three ways.
    #[test]
    fn readings_of_a_mix_turn_back_into_one_another(material in 0.5..=50.0, thinner in 0.0..=50.0) {
        let parts = Thinning::of_parts(material, thinner).expect("in range");
        let percent = Thinning::of_percent(parts.percent()).expect("in range");
        let share = Thinning::of_share(parts.share()).expect("in range");
        prop_assert!(near(percent.ratio(), parts.ratio()));
        prop_assert!(near(share.ratio(), parts.ratio()));
        prop_assert!(parts.share().get() <= parts.ratio(), "a share of the mix is never over the ratio");
    }

    /// A batch and the thinner for its material agree, and nothing is lost.
    #[test]
    fn a_batch_is_its_parts(whole in ml(), thinning in thinning()) {
        let (material, thinner) = batch(whole, thinning).answer;
        prop_assert!(near(material.get() + thinner.get(), whole.get()));
        prop_assert!(near(thinner_for(material, thinning).answer.get(), thinner.get()));
    }

    /// More thinner never raises the solids, and thinning never makes them more than they were.
    #[test]
    fn more_thinner_never_raises_the_solids(solids in share(), a in thinning(), b in thinning()) {
        let (less, more) = if a <= b { (a, b) } else { (b, a) };
        let (thick, thin) = (thinned_solids(solids, less).answer, thinned_solids(solids, more).answer);
        prop_assert!(thin <= thick && thick <= solids);
    }

    /// The thinner computed for wanted solids gives those solids.
    #[test]
    fn thinning_to_wanted_solids_gets_there(base in 1.0..=5_000.0, solids in 0.05..=0.6, drop in 0.05..=1.0) {
        let (base, solids) = (Millilitres::new(base).expect("in range"), Fraction::new(solids).expect("in range"));
        let wanted = Fraction::new(solids.get() * drop).expect("in range");
        let thinner = thin_to_solids(base, solids, wanted).expect("solids are wanted").answer;
        let reached = thinned_solids(solids, Thinning::of_parts(base.get(), thinner.get()).expect("in range"));
        prop_assert!(near(reached.answer.get(), wanted.get()));
    }

    /// More thinner only ever moves a mix from too heavy over the band to too thin.
    #[test]
    fn a_washcoat_passes_through_its_band_once(solids in share(), a in thinning(), b in thinning(), sheet in sheet()) {
        let rank = |thinning| match washcoat(Some(solids), thinning, &sheet).expect("told").answer {
            Washcoat::TooHeavy => 0,
            Washcoat::InBand => 1,
            Washcoat::TooThin => 2,
        };
        let (less, more) = if a <= b { (a, b) } else { (b, a) };
        prop_assert!(rank(less) <= rank(more));
        prop_assert!(washcoat(None, a, &sheet).is_err());
    }

    /// The most retarder keeps within the limit, a drop more does not.
    #[test]
    fn the_most_retarder_is_the_most(whole in 100.0..=5_000.0, sheet in sheet()) {
        let whole = Millilitres::new(whole).expect("in range");
        let most = retarder_most(whole, &sheet).answer;
        let over = Millilitres::new(most.get() + 1.0).expect("in range");
        prop_assert_eq!(retarder_dose(most, whole, &sheet).answer.slug(), "dose-within");
        prop_assert_eq!(retarder_dose(over, whole, &sheet).answer.slug(), "dose-over");
    }

    /// A mix that may be used later may be used now; a two-part mix without a pot life is never judged.
    #[test]
    fn age_never_makes_a_mix_better(kind in term::<PotKind>(), a in 0.0..=100.0, b in 0.0..=100.0, life in 0.0..=72.0, sheet in sheet()) {
        let hours = |value| Some(Hours::new(value).expect("in range"));
        let used = |age| mix_use(kind, hours(age), hours(life), &sheet).expect("told").answer.slug() == "use-strained";
        let (younger, older) = if a <= b { (a, b) } else { (b, a) };
        prop_assert!(used(younger) || !used(older));
        prop_assert_eq!(mix_use(kind, hours(a), None, &sheet).is_err(), kind == PotKind::TwoPart);
    }

    /// A ladder only gets finer, never skips, and ends at the sheet's end or where it began.
    #[test]
    fn ladders_get_finer_without_a_skip(from in grade(), work in term::<Abrading>(), sheet in sheet()) {
        let grades = ladder(from, work, &sheet);
        for pair in grades.windows(2) {
            prop_assert!(pair[1].number > pair[0].number);
            prop_assert!(!skips(pair[0], pair[1], &sheet).answer);
        }
        let last = grades.last().expect("the first at least");
        prop_assert!(next_grade(last, work, &sheet).answer.is_none());
    }

    /// A longer jump is never less of a skip.
    #[test]
    fn skips_only_grow_with_the_jump(from in grade(), a in grade(), b in grade(), sheet in sheet()) {
        let (near, far) = if a.number <= b.number { (a, b) } else { (b, a) };
        let backward = near.number <= from.number;
        prop_assert!(backward || skips(from, far, &sheet).answer || !skips(from, near, &sheet).answer);
    }

    /// Every combination is answered without a panic; less film never allows more.
    #[test]
    fn less_film_never_allows_more(on in grade(), shine in term::<Shine>(), strokes in term::<Strokes>(), a in 0.0..=400.0, b in 0.0..=400.0, sheet in sheet()) {
        let _ = ready_for_stain(on, strokes, &sheet);
        let stops = |left| {
            let left = Micrometres::new(left).expect("in range");
            level_move(on, Some(shine), left, &sheet).expect("told").answer.slug() == "recoat-first"
        };
        let (less, more) = if a <= b { (a, b) } else { (b, a) };
        prop_assert!(stops(less) || !stops(more));
    }

    /// Any order is judged, and a kept order stays kept when a step is left out.
    #[test]
    fn a_kept_order_stays_kept_with_fewer_steps(steps in Just(MixStep::ALL.to_vec()).prop_shuffle(), left_out in 0..MixStep::ALL.len()) {
        let kept = mix_order(&steps).answer;
        let fewer: Vec<MixStep> = steps.iter().enumerate().filter(|(at, _)| *at != left_out).map(|(_, step)| *step).collect();
        prop_assert!(!kept || mix_order(&fewer).answer);
    }
}
