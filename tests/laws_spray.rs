//! Laws of the pass and of what is seen, over many random inputs: nothing panics, shares stay shares, and what nature
//! makes rise or fall does so.

mod support;

use proptest::prelude::*;
use stepboard::quantity::{
    Absorbance, Degrees, Fraction, GunSpeed, LiquidFlow, Micrometres, Millimetres, Overlap, RefractiveIndex,
    Seconds,
};
use stepboard::rules::air::Thinner;
use stepboard::rules::optics::difference::{ciede2000, judge as judge_colour, judge_match, seen};
use stepboard::rules::optics::gloss::{GlossAngle, angle_for, ceiling, judge as judge_gloss, judge_mark};
use stepboard::rules::optics::lab::{Lab, lightness};
use stepboard::rules::optics::layer::{coats_to, over_wood, sanded_through};
use stepboard::rules::optics::opaque::{
    Hiding, contrast, hides, judge_card, over_ground, reflected, swallowed,
};
use stepboard::rules::optics::{roughness, surface};
use stepboard::rules::shading::DistanceCall;
use stepboard::rules::spray::angle::{arc, heel, tilt};
use stepboard::rules::spray::crossing::{Second, least_stripes, two_sets};
use stepboard::rules::spray::distance::{Gun, judge};
use stepboard::rules::spray::dry_spray::sandy;
use stepboard::rules::spray::fade::{Fade, coats_for, depth};
use stepboard::rules::spray::fan::{EdgeMeant, Fan, Section, seen_overlap};
use stepboard::rules::spray::overlap::{Lay, evenness, lay, lay_as_meant};
use stepboard::rules::spray::pass_film::{Spray, of_pass, of_set, pitch, speed_by_comb, speed_for};
use stepboard::rules::spray::pattern::{CapTurned, TestPattern, heavy_side};
use stepboard::rules::spray::trigger::{dwell, edge_share, end, passes_across};
use stepboard::rules::staining::Seen as Beside;
use support::any::{laws, sheet, term};

/// Rounding of a chain of operations.
const DUST: f64 = 1e-9;

fn share() -> impl Strategy<Value = Fraction> {
    (0.0..=1.0).prop_map(|value| Fraction::new(value).expect("in range"))
}

fn overlap() -> impl Strategy<Value = Overlap> {
    (0.0..=Overlap::MAX).prop_map(|value| Overlap::new(value).expect("in range"))
}

fn mm(most: f64) -> impl Strategy<Value = Millimetres> {
    (0.0..=most).prop_map(|value| Millimetres::new(value).expect("in range"))
}

fn speed() -> impl Strategy<Value = GunSpeed> {
    (GunSpeed::MIN..=GunSpeed::MAX).prop_map(|value| GunSpeed::new(value).expect("in range"))
}

fn spray() -> impl Strategy<Value = Spray> {
    (0.0..=LiquidFlow::MAX, share(), share()).prop_map(|(flow, solids, landing)| Spray {
        flow: LiquidFlow::new(flow).expect("in range"),
        solids,
        landing,
    })
}

fn section() -> impl Strategy<Value = Section> {
    prop_oneof![term::<Fan>().prop_map(Section::from), (1.5..=4.0).prop_map(Section::Beta)]
}

fn seconds() -> impl Strategy<Value = Seconds> {
    (0.0..=10.0).prop_map(|value| Seconds::new(value).expect("in range"))
}

fn degrees() -> impl Strategy<Value = Degrees> {
    (0.0..=89.0).prop_map(|value| Degrees::new(value).expect("in range"))
}

fn lab() -> impl Strategy<Value = Lab> {
    let axis = || -Lab::AXIS..=Lab::AXIS;
    (0.0..=Lab::LIGHTEST, axis(), axis()).prop_map(|(l, a, b)| Lab::new(l, a, b).expect("in range"))
}

fn absorbance() -> impl Strategy<Value = Absorbance> {
    (0.0..=3.0).prop_map(|value| Absorbance::new(value).expect("in range"))
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn the_mean_lies_between_the_thinnest_and_the_thickest(section in section(), overlap in overlap()) {
        let even = evenness(section, overlap).answer;
        prop_assert!(even.cv >= 0.0 && even.cv.is_finite());
        prop_assert!(even.min_over_mean >= 0.0 && even.min_over_mean <= 1.0 + DUST);
        prop_assert!(even.max_over_mean >= 1.0 - DUST);
        let set = even.mean_over_peak * (1.0 - overlap.get());
        prop_assert!((set - section.mean()).abs() < DUST, "volume is kept");
        for second in [Second::Across, Second::HalfPitch, Second::SameLines] {
            prop_assert!(two_sets(section, overlap, second).answer.cv.is_finite());
        }
        let best = two_sets(section, overlap, least_stripes(section, overlap).answer).answer.cv;
        prop_assert!(best <= even.cv + DUST, "the better second coat never adds stripes");
    }

    #[test]
    fn a_section_falls_from_its_middle(section in section(), near in 0.0..=1.0_f64, further in 0.0..=1.0_f64) {
        let (inner, outer) = (near.min(further), near.max(further));
        prop_assert!(section.height(outer) <= section.height(inner) + DUST);
        prop_assert!((section.height(-inner) - section.height(inner)).abs() < DUST);
        prop_assert!(section.height(0.0) == 1.0 && section.height(1.0) == 0.0);
        let level = Fraction::new(inner).expect("in range");
        let place = section.falls_to(level);
        prop_assert!((0.0..=1.0).contains(&place));
        prop_assert!((section.height(place.min(1.0 - 1e-15)) - inner).abs() < 1e-6);
    }

    #[test]
    fn the_full_overlap_is_never_less_than_the_seen_one(section in section(), judged in overlap(), sheet in sheet()) {
        prop_assert!(seen_overlap(section, judged).answer >= judged);
        let by = |meant| lay_as_meant(section, judged, meant, &sheet);
        let full = by(Some(EdgeMeant::Full)).expect("told").answer;
        let seen = by(Some(EdgeMeant::Seen)).expect("told").answer;
        prop_assert_eq!(by(None).map(|ruling| ruling.answer).ok(), (full == seen).then_some(full));
        prop_assert_eq!(full, lay(section, judged, &sheet).answer);
        let even = evenness(section, judged).answer.cv * 100.0;
        let limit = sheet.get(stepboard::rules::sheet::Setting::StripesMost);
        if (even - limit).abs() > DUST {
            prop_assert_eq!(full == Lay::Even, even < limit);
        }
    }

    #[test]
    fn film_goes_as_one_over_the_speed(spray in spray(), slow in speed(), fast in speed(), width in mm(1_000.0)) {
        let (slow, fast) = if slow <= fast { (slow, fast) } else { (fast, slow) };
        match (of_pass(spray, slow, width), of_pass(spray, fast, width)) {
            (Ok(heavy), Ok(light)) => {
                prop_assert!(light.answer.wet <= heavy.answer.wet);
                prop_assert!(light.answer.dry.get() <= light.answer.wet.get());
                if heavy.answer.wet.get() < Micrometres::MAX {
                    let times = fast.get() / slow.get();
                    let back = light.answer.wet.get() * times;
                    prop_assert!((back - heavy.answer.wet.get()).abs() <= 1e-9 * back.max(1.0));
                }
            }
            (one, _) => prop_assert!(one.is_err() && width.get() == 0.0),
        }
    }

    #[test]
    fn a_set_is_its_pass_over_one_less_the_overlap(spray in spray(), v in speed(), width in mm(1_000.0), o in overlap()) {
        let apart = pitch(width, o).answer;
        if let (Ok(one), Ok(set)) = (of_pass(spray, v, width), of_set(spray, v, apart))
            && set.answer.wet.get() < Micrometres::MAX
        {
            let expected = one.answer.wet.get() / (1.0 - o.get());
            prop_assert!((set.answer.wet.get() - expected).abs() <= 1e-6 * expected.max(1.0));
            if let Ok(back) = speed_for(spray, apart, set.answer.wet) {
                prop_assert!((back.answer.get() - v.get()).abs() <= 1e-6);
            }
        }
    }

    #[test]
    fn a_heavier_reading_asks_for_more_speed(v in speed(), one in 1.0..=400.0_f64, other in 1.0..=400.0_f64) {
        let film = |um| Micrometres::new(um).expect("in range");
        let wanted = film(100.0);
        let asked = |read| speed_by_comb(v, film(read), wanted).map(|ruling| ruling.answer);
        if let (Ok(low), Ok(high)) = (asked(one.min(other)), asked(one.max(other))) {
            prop_assert!(low <= high);
        }
    }

    #[test]
    fn ends_fill_up_with_the_lead(one in mm(100.0), other in mm(100.0), reach in mm(100.0), stood in seconds(), v in speed()) {
        let (short, long) = if one <= other { (one, other) } else { (other, one) };
        if reach.get() > 0.0 {
            let share = |lead| edge_share(lead, reach).expect("a reach").answer;
            prop_assert!(share(short) <= share(long) + DUST);
            prop_assert!((0.5..=1.0 + DUST).contains(&share(short)));
            prop_assert!(dwell(v, stood, reach).expect("a reach").answer >= 0.0);
        }
        let _ = end(Some(short), Some(reach), Some(stood));
        let _ = end(None, Some(reach), None);
    }

    #[test]
    fn no_angle_adds_film(angle in degrees(), half in degrees(), pivot in mm(1_000.0), middle in mm(500.0)) {
        prop_assert!((0.0..=1.0).contains(&tilt(angle).answer));
        if let Ok(ratio) = heel(angle, half) {
            prop_assert!(ratio.answer >= 1.0 - DUST);
        }
        if let Ok(film) = arc(angle, pivot, middle) {
            prop_assert!(film.answer <= 1.0 + DUST && film.answer >= 0.0);
        }
    }

    #[test]
    fn farther_never_turns_into_too_near(gun in term::<Gun>(), one in mm(1_000.0), other in mm(1_000.0), sheet in sheet(), thinner in term::<Thinner>()) {
        let rank = |held| match judge(&sheet, Some(gun), held).expect("told").answer {
            DistanceCall::GoBack => 0,
            DistanceCall::Keep => 1,
            DistanceCall::ComeNearer => 2,
        };
        let (near, far) = if one <= other { (one, other) } else { (other, one) };
        prop_assert!(rank(near) <= rank(far));
        if let Ok(untold) = judge(&sheet, None, near) {
            prop_assert_eq!(untold.answer, judge(&sheet, Some(gun), near).expect("told").answer);
        }
        prop_assert!(sandy(&sheet, Some(gun), far, Some(thinner)).is_ok());
    }

    #[test]
    fn a_fade_falls_from_the_edge(width in mm(400.0), coats in 0_u32..12, fan in mm(400.0), section in section(), one in mm(900.0), other in mm(900.0)) {
        let fade = Fade { width, coats, fan, section };
        let (near, far) = if one <= other { (one, other) } else { (other, one) };
        prop_assert!(depth(fade, far).get() <= depth(fade, near).get() + DUST);
        if fan.get() > 0.0 {
            let need = coats_for(width, fan).expect("a fan").answer;
            prop_assert!(need >= 1.0 && width.get() / need <= fan.get() / 2.0 + 1e-6);
        }
        if let Ok(passes) = passes_across(width, fan, Overlap::saturating(0.5)) {
            prop_assert!((passes.answer - 1.0) * fan.get() / 2.0 >= width.get() - 1e-6);
        }
    }

    #[test]
    fn a_pattern_is_judged_or_says_what_is_missing(pattern in term::<TestPattern>(), cap in term::<CapTurned>()) {
        let told = heavy_side(Some(pattern), Some(cap));
        let open = pattern == TestPattern::OneSided && cap == CapTurned::NotTurned;
        prop_assert_eq!(told.is_err(), open);
        prop_assert!(heavy_side(None, Some(cap)).is_err());
    }

    #[test]
    fn a_difference_is_the_same_both_ways_and_none_from_itself(one in lab(), other in lab(), sheet in sheet()) {
        let found = ciede2000(one, other);
        prop_assert!(found.is_finite() && found >= 0.0);
        prop_assert!((ciede2000(other, one) - found).abs() <= 1e-9 * found.max(1.0));
        prop_assert!(ciede2000(one, one) == 0.0);
        let _ = (seen(found, &sheet), judge_colour(one, other, &sheet));
        for beside in [Beside::Lighter, Beside::Darker] {
            prop_assert!(judge_match(Some(found), Some(beside), &sheet).is_ok());
        }
    }

    #[test]
    // Of clear coatings: past an index of 1.9 a flat angle mirrors less again.
    fn gloss_rises_with_the_index(one in 1.3..=1.7_f64, other in 1.3..=1.7_f64, angle in term::<GlossAngle>(), sheet in sheet(), mark in 0.0..=150.0_f64) {
        let index = |n| RefractiveIndex::new(n).expect("in range");
        let gloss = |n| ceiling(index(n), angle).answer;
        prop_assert!(gloss(one.min(other)) <= gloss(one.max(other)) + DUST);
        let _ = (judge_mark(mark, None, &sheet), judge_gloss(mark, Some(angle), &sheet), angle_for(mark, &sheet));
    }

    #[test]
    fn rougher_is_never_glossier(one in 0.0..=1.0_f64, other in 0.0..=1.0_f64, angle in term::<GlossAngle>()) {
        let kept = |um| roughness::kept(Micrometres::new(um).expect("in range"), angle).answer;
        prop_assert!(kept(one.max(other)) <= kept(one.min(other)));
        prop_assert!(roughness::height_for(kept(one), angle).get() >= 0.0);
    }

    #[test]
    fn more_coats_are_never_lighter(wood in share(), coat in absorbance(), coats in 0.0..=40.0_f64, more in 0.0..=10.0_f64, wanted in share()) {
        let toned = |coats| over_wood(wood, coat, coats).answer;
        prop_assert!(toned(coats + more).reflectance <= toned(coats).reflectance);
        prop_assert!(toned(coats + more).lightness <= toned(coats).lightness + DUST);
        prop_assert!(sanded_through(wood, coat, Absorbance::saturating(more)).answer >= -DUST);
        if let Ok(need) = coats_to(wood, coat, wanted)
            && wood.get() > 0.0
        {
            prop_assert!(toned(need.answer).reflectance.get() <= wanted.get() + 1e-6);
        }
        prop_assert!((0.0..=100.0 + DUST).contains(&lightness(wood)));
    }

    #[test]
    fn more_colour_never_hides_less(ratio in 0.0..=10.0_f64, film in 0.0..=8.0_f64, more in 0.0..=8.0_f64, ground in share(), sheet in sheet()) {
        prop_assert!(contrast(ratio, film) <= contrast(ratio, film + more) + 1e-6);
        prop_assert!((0.0..=1.0).contains(&over_ground(ratio, film, ground).get()));
        if let Ok(back) = swallowed(reflected(ratio)) {
            prop_assert!((back.answer - ratio).abs() <= 1e-6 * ratio.max(1.0));
        }
        if hides(ratio, film, 1.0, &sheet).answer == Hiding::Hides {
            prop_assert_eq!(hides(ratio, film + more, 1.0, &sheet).answer, Hiding::Hides);
        }
        let _ = judge_card(ground, reflected(ratio), &sheet);
    }

    #[test]
    fn the_surface_keeps_the_order_of_colours(one in share(), other in share(), k1 in 0.0..=0.2_f64, k2 in 0.0..=0.9_f64) {
        let k = |value| Fraction::new(value).expect("in range");
        let seen = |within| surface::seen(within, k(k1), k(k2)).answer;
        let (dark, pale) = if one <= other { (one, other) } else { (other, one) };
        prop_assert!(seen(dark).get() <= seen(pale).get() + DUST);
    }
}
