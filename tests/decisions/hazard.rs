//! Safety decisions arm by arm: 29 CFR 1910.107 (spray rooms), 1910.134 (respirators), 1910.242(b) (air lines on dust),
//! 1910.94(b) and 1910.212 (wheels), NIOSH Pocket Guide; each test names its section. Local code, the data sheet and
//! licensed practice overrule all of it.

use stepboard::quantity::{Celsius, Hours, Millilitres};
use stepboard::rules::hazard::booth_trouble::{ShutStep, Trouble, TroubleMove, shut_order, trouble_move};
use stepboard::rules::hazard::cartridge::{CartridgeMove, Sign, SignMove, Smell, cartridge_move, sign_move};
use stepboard::rules::hazard::dust::{DustMove, DustOn, dust_move};
use stepboard::rules::hazard::mask_care::{CareMove, MaskFound, MaskParts, care_move};
use stepboard::rules::hazard::mask_fit::{
    AtMask, FIT_TEST_MONTHS, MaskWant, SealCheck, SealMove, Shaven, TestedMask, mask_want, seal_move,
};
use stepboard::rules::hazard::mask_kind::{AirTask, Protection, protection_for};
use stepboard::rules::hazard::store::{
    CLEANING_FLASH, Can, CanFault, Cleaned, Lid, WashMove, can_fault, shift_need, wash_move,
};
use stepboard::rules::hazard::wheel::{
    AtWheel, FilmFeel, WheelEdge, WheelFix, WheelHalf, WheelNut, Worn, wheel_fix,
};
use stepboard::rules::hazard::{CupState, SpellStep, Vessel, spell_order, spell_steps};
use stepboard::rules::term::Term;

/// 29 CFR 1910.107(b)(5)(i), (d)(2), (j)(3).
#[test]
fn without_sure_air_the_gun_is_down() {
    for (trouble, wanted, rule) in [
        (Trouble::Nothing, TroubleMove::GoOn, "hazard.filter-gauge"),
        (Trouble::PastMark, TroubleMove::NewFilters, "hazard.filter-gauge"),
        (Trouble::NearZero, TroubleMove::NewFilters, "hazard.gauge-near-zero"),
        (Trouble::FanStopped, TroubleMove::OutAndReport, "hazard.no-spraying-without-air"),
        (Trouble::InterlockOpen, TroubleMove::OutAndReport, "hazard.no-spraying-without-air"),
        (Trouble::FanScrapes, TroubleMove::OutAndReport, "hazard.no-spraying-without-air"),
    ] {
        let ruling = trouble_move(trouble);
        assert_eq!((ruling.answer, ruling.rules[0].0), (wanted, rule), "{trouble:?}");
    }
}

/// Fan last: 29 CFR 1910.107(d)(2); the rest of the order is common practice, no source.
#[test]
fn the_fan_is_shut_off_last() {
    let sound = |steps: &[ShutStep]| {
        let steps: Vec<String> = steps.iter().map(|step| step.slug().to_owned()).collect();
        shut_order(&steps).expect("steps").answer
    };
    use ShutStep::{AirOff, FanLast, GunClean, MaterialOut, ResidueOut};
    assert!(sound(&[MaterialOut, AirOff, GunClean, ResidueOut, FanLast]));
    assert!(sound(&[AirOff, MaterialOut, GunClean, ResidueOut, FanLast]), "either may go first");
    assert!(!sound(&[AirOff, GunClean, MaterialOut, ResidueOut, FanLast]));
    assert!(!sound(&[MaterialOut, AirOff, ResidueOut, GunClean, FanLast]));
    assert!(!sound(&[MaterialOut, AirOff, GunClean, FanLast, ResidueOut]));
    assert!(!sound(&[FanLast, MaterialOut]) && sound(&[FanLast]) && sound(&[]));
    assert_eq!(shut_order(&["no-step".to_owned()]).expect_err("no step").missing, ["steps"]);
}

/// 29 CFR 1910.134(d)(3)(iii)(B): by the change plan; smell means leave.
#[test]
fn cartridges_go_by_their_plan_and_smell_means_leave() {
    let h = |hours: f64| Some(Hours::new(hours).expect("hours"));
    let found =
        |plan, used, spell, smell| cartridge_move(plan, used, spell, smell).map(|ruling| ruling.answer);
    for spell in [None, h(1.0)] {
        assert_eq!(found(None, None, spell, Smell::Solvent), Ok(CartridgeMove::Leave));
        assert_eq!(found(h(8.0), h(1.0), spell, Smell::Solvent), Ok(CartridgeMove::Leave));
    }
    assert_eq!(
        found(h(8.0), h(6.0), h(2.0), Smell::None),
        Ok(CartridgeMove::Keep),
        "to the hour of the plan"
    );
    assert_eq!(found(h(8.0), h(6.0), h(2.1), Smell::None), Ok(CartridgeMove::Change));
    assert_eq!(found(h(8.0), h(9.0), None, Smell::None), Ok(CartridgeMove::Change), "used up already");
    let missing = |plan, used, spell| found(plan, used, spell, Smell::None).expect_err("untold").missing;
    assert_eq!(missing(None, h(1.0), h(1.0)), ["plan_h"]);
    assert_eq!(missing(h(8.0), None, h(1.0)), ["used_h"]);
    assert_eq!(missing(h(8.0), h(8.0), None), ["spell_h"]);
}

/// 29 CFR 1910.134(g)(2)(ii): out of the room on smell, dizziness or a leak; the rest is common practice, no source.
#[test]
fn signs_at_the_mask() {
    for sign in Sign::ALL {
        let wanted = match sign {
            Sign::Smell | Sign::Dizzy | Sign::Lifts => SignMove::Leave,
            Sign::Hard => SignMove::Prefilter,
            _ => SignMove::AfterSpell,
        };
        let ruling = sign_move(*sign);
        assert_eq!(ruling.answer, wanted, "{sign:?}");
        assert_eq!(ruling.rules[0].0 == "hazard.smell-means-leave", wanted == SignMove::Leave);
    }
}

/// 29 CFR 1910.242(b): no air line on a person or on dust; 1910.107(g)(2): overspray damp, without sparks.
#[test]
fn dust_is_taken_up_and_never_blown() {
    for (on, wanted, rule) in [
        (DustOn::Bench, DustMove::Vacuum, "hazard.no-air-line-on-dust"),
        (DustOn::Person, DustMove::Vacuum, "hazard.no-air-line-on-dust"),
        (DustOn::Work, DustMove::VacuumTack, "hazard.no-air-line-on-dust"),
        (DustOn::Overspray, DustMove::ScrapeDamp, "hazard.overspray-damp"),
    ] {
        let ruling = dust_move(on);
        assert_eq!((ruling.answer, ruling.rules[0].0), (wanted, rule), "{on:?}");
    }
}

/// 29 CFR 1910.134(h): cleaned, stored closed, defective ones taken out of service.
#[test]
fn a_mask_is_kept_clean_dry_and_closed_and_a_damaged_one_is_tagged() {
    let found = |state, parts| care_move(state, parts).map(|ruling| ruling.answer);
    let (whole, damaged) = (Some(MaskParts::Whole), Some(MaskParts::Damaged));
    for state in [None, Some(MaskFound::CleanDry), Some(MaskFound::CleanWet), Some(MaskFound::Dirty)] {
        assert_eq!(found(state, damaged), Ok(CareMove::TagOut));
        assert_eq!(found(state, None).expect_err("untold").missing, ["mask_parts"]);
    }
    assert_eq!(found(Some(MaskFound::CleanDry), whole), Ok(CareMove::Store));
    assert_eq!(found(Some(MaskFound::CleanWet), whole), Ok(CareMove::Dry));
    assert_eq!(found(Some(MaskFound::Dirty), whole), Ok(CareMove::Clean));
    assert_eq!(found(None, whole).expect_err("untold").missing, ["mask_found"]);
}

fn ready() -> AtMask {
    AtMask {
        medical: Some(true),
        fit_months: Some(FIT_TEST_MONTHS),
        tested: Some(TestedMask::This),
        shaven: Some(Shaven::Clean),
        trained: Some(true),
        cartridge_in_plan: Some(true),
    }
}

/// 29 CFR 1910.134(e) medical, (f)(2) fit test each year and for the mask worn, (g)(1) no hair under the seal, (k)
/// training, (d)(3) change plan.
#[test]
fn what_a_mask_still_wants() {
    let wants = |want, at| mask_want(want, at).map(|ruling| ruling.answer);
    for want in MaskWant::ALL {
        assert_eq!(wants(*want, ready()), Ok(false), "{want:?} is there");
        assert!(wants(*want, AtMask::default()).is_err(), "{want:?} is not known");
    }
    for (want, at) in [
        (MaskWant::Medical, AtMask { medical: Some(false), ..ready() }),
        (MaskWant::FitTest, AtMask { fit_months: Some(FIT_TEST_MONTHS + 0.1), ..ready() }),
        (MaskWant::FitTest, AtMask { tested: Some(TestedMask::Another), ..ready() }),
        (MaskWant::FitTest, AtMask { tested: Some(TestedMask::Another), fit_months: None, ..ready() }),
        (MaskWant::Shave, AtMask { shaven: Some(Shaven::Stubble), ..ready() }),
        (MaskWant::Training, AtMask { trained: Some(false), ..ready() }),
        (MaskWant::Cartridge, AtMask { cartridge_in_plan: Some(false), ..ready() }),
    ] {
        for other in MaskWant::ALL {
            if *other != MaskWant::FitTest || at.fit_months.is_some() || want == MaskWant::FitTest {
                assert_eq!(wants(*other, at), Ok(*other == want), "{other:?} where {want:?} is wanted");
            }
        }
    }
    let rule = |want| mask_want(want, ready()).expect("told").rules[0].0;
    assert_eq!(rule(MaskWant::FitTest), "hazard.fit-test-yearly");
    assert_eq!(rule(MaskWant::Shave), "hazard.no-beard-under-seal");
    assert_eq!(rule(MaskWant::Medical), "hazard.respirator-programme");
}

/// 29 CFR 1910.134(g)(1)(iii), appendix B-1: both checks each time; hair under the seal ends it before any check.
#[test]
fn a_seal_check_is_made_both_ways_each_time() {
    use SealCheck::{Holds, Leaks, Skipped};
    let found = |positive, negative, before| {
        seal_move(Shaven::Clean, positive, negative, before).map(|ruling| ruling.answer)
    };
    for before in [false, true] {
        for check in [None, Some(Holds), Some(Leaks), Some(Skipped)] {
            let refused = seal_move(Shaven::Stubble, check, check, before).map(|ruling| ruling.answer);
            assert_eq!(refused, Ok(SealMove::Refuse));
            let leaks = if before { SealMove::Refuse } else { SealMove::Reseat };
            assert_eq!(found(Some(Leaks), check, before), Ok(leaks));
            assert_eq!(found(check, Some(Leaks), before), Ok(leaks));
        }
        assert_eq!(found(Some(Holds), Some(Holds), before), Ok(SealMove::Wear));
        assert_eq!(found(Some(Skipped), Some(Holds), before), Ok(SealMove::Check));
        assert_eq!(found(Some(Holds), Some(Skipped), before), Ok(SealMove::Check));
        assert_eq!(found(None, Some(Holds), before).expect_err("untold").missing, ["positive_check"]);
        assert_eq!(found(Some(Holds), None, before).expect_err("untold").missing, ["negative_check"]);
    }
}

/// NIOSH Pocket Guide: supplied air for the hardener HDI; 29 CFR 1910.134(d)(2): a filter makes no oxygen. Particles and
/// vapour by what a task gives off.
#[test]
fn what_a_respirator_has_to_stop() {
    for (task, wanted) in [
        (AirTask::DrySanding, Protection::Particles),
        (AirTask::PourThinner, Protection::Vapour),
        (AirTask::WipeSolvent, Protection::Vapour),
        (AirTask::SprayLacquer, Protection::Both),
        (AirTask::SprayIsocyanate, Protection::SuppliedAir),
        (AirTask::LowOxygen, Protection::SuppliedAir),
    ] {
        let ruling = protection_for(task);
        assert_eq!(ruling.answer, wanted, "{task:?}");
        let supplied = ruling.rules[0].0 == "hazard.supplied-air";
        assert_eq!(supplied, wanted == Protection::SuppliedAir, "{task:?}");
    }
}

/// 29 CFR 1910.107(d)(2), (b)(5)(i), (g)(5): fan before gauge and gun, mask until the gun is clean, fan until no vapour is
/// given off. The cup under mask and fan: common practice, no source.
#[test]
fn a_spell_of_spraying_keeps_its_order() {
    let whole = spell_steps(CupState::Empty);
    assert_eq!(whole, SpellStep::ALL);
    let full = spell_steps(CupState::Full);
    assert!(!full.contains(&SpellStep::FillCup) && full.len() + 1 == whole.len());
    assert!(spell_order(&whole).answer && spell_order(&full).answer && spell_order(&[]).answer);
    for pair in [
        (SpellStep::FanOn, SpellStep::GaugeRead),
        (SpellStep::GaugeRead, SpellStep::Spray),
        (SpellStep::MaskOn, SpellStep::Spray),
        (SpellStep::MaskOn, SpellStep::FillCup),
        (SpellStep::FillCup, SpellStep::Spray),
        (SpellStep::Spray, SpellStep::GunCleaned),
        (SpellStep::GunCleaned, SpellStep::VapourGone),
        (SpellStep::GunCleaned, SpellStep::MaskOff),
        (SpellStep::VapourGone, SpellStep::FanOff),
    ] {
        assert!(spell_order(&[pair.0, pair.1]).answer, "{pair:?}");
        assert!(!spell_order(&[pair.1, pair.0]).answer, "{pair:?} turned round");
    }
    assert!(spell_order(&[SpellStep::FanOn, SpellStep::MaskOn]).answer, "either may come first");
    let filled = |steps: &[SpellStep]| {
        spell_order(steps).rules.iter().any(|rule| rule.0 == "hazard.cup-filled-in-draw")
    };
    assert!(filled(&whole) && !filled(&full));
}

/// 29 CFR 1910.107(e)(2) and (3); a date on the label is common practice, no source.
#[test]
fn faults_of_a_can() {
    let ml = |value: f64| Some(Millilitres::new(value).expect("a volume"));
    let sound = Can {
        lid: Some(Lid::Shut),
        vessel: Some(Vessel::Metal),
        content: Some(true),
        date: Some(true),
        hazard: Some(true),
        held: ml(500.0),
        need: ml(500.0),
    };
    let faulty = |fault, can| can_fault(fault, can).map(|ruling| ruling.answer);
    for fault in CanFault::ALL {
        assert_eq!(faulty(*fault, sound), Ok(false), "{fault:?}");
        assert!(faulty(*fault, Can::default()).is_err(), "{fault:?} is not known");
    }
    for (fault, can) in [
        (CanFault::Open, Can { lid: Some(Lid::Off), ..sound }),
        (CanFault::Glass, Can { vessel: Some(Vessel::Glass), ..sound }),
        (CanFault::NoContent, Can { content: Some(false), ..sound }),
        (CanFault::NoDate, Can { date: Some(false), ..sound }),
        (CanFault::NoHazard, Can { hazard: Some(false), ..sound }),
        (CanFault::TooMuch, Can { held: ml(500.1), ..sound }),
    ] {
        for other in CanFault::ALL {
            assert_eq!(faulty(*other, can), Ok(*other == fault), "{other:?} on a can with {fault:?}");
        }
    }
    assert_eq!(
        faulty(CanFault::TooMuch, Can { need: None, ..sound }).expect_err("untold").missing,
        ["need_l"]
    );
}

/// 29 CFR 1910.107(e)(2): what the shift needs and no more; worked by hand.
#[test]
fn the_shift_needs_pieces_times_coats_less_what_is_there() {
    let ml = |value: f64| Millilitres::new(value).expect("a volume");
    let need = |there| shift_need(6.0, 4.0, ml(90.0), ml(there)).answer.get();
    assert_eq!((need(0.0), need(1_000.0), need(2_160.0), need(5_000.0)), (2_160.0, 1_160.0, 0.0, 0.0));
}

/// 29 CFR 1910.107(g)(5): at least 100 °F for general cleaning; for the gun no lower than what is sprayed.
#[test]
fn a_cleaning_solvent_has_its_least_flash_point() {
    let c = |value: f64| Celsius::new(value).expect("a temperature");
    let found = |thing, flash, sprayed| wash_move(thing, flash, sprayed).map(|ruling| ruling.answer);
    let limit = (100.0 - 32.0) / 1.8;
    assert!((CLEANING_FLASH.get() - limit).abs() < 1e-9);
    assert_eq!(found(Cleaned::Room, CLEANING_FLASH, None), Ok(WashMove::Use));
    assert_eq!(found(Cleaned::Room, c(limit - 0.1), Some(c(-20.0))), Ok(WashMove::HigherFlash));
    assert_eq!(found(Cleaned::Gun, c(4.0), Some(c(4.0))), Ok(WashMove::Use));
    assert_eq!(found(Cleaned::Gun, c(3.9), Some(c(4.0))), Ok(WashMove::HigherFlash));
    assert_eq!(found(Cleaned::Gun, c(60.0), None).expect_err("untold").missing, ["sprayed_flash_c"]);
}

/// 29 CFR 1910.94(b), 1910.212; below centre and off the trailing edge: a published column on buffing.
#[test]
fn what_has_to_be_put_right_at_the_wheel() {
    let sound = AtWheel {
        half: Some(WheelHalf::Lower),
        edge: Some(WheelEdge::Trailing),
        worn: Some(Worn::Close),
        film: Some(FilmFeel::Cool),
        nut: Some(WheelNut::Checked),
    };
    let wrong = |fix, at| wheel_fix(fix, at).map(|ruling| ruling.answer);
    for fix in WheelFix::ALL {
        assert_eq!(wrong(*fix, sound), Ok(false), "{fix:?}");
        assert!(wrong(*fix, AtWheel::default()).is_err(), "{fix:?} is not known");
    }
    for (fix, at) in [
        (WheelFix::LowerHalf, AtWheel { half: Some(WheelHalf::Upper), ..sound }),
        (WheelFix::TrailEdge, AtWheel { edge: Some(WheelEdge::Leading), ..sound }),
        (WheelFix::TieBack, AtWheel { worn: Some(Worn::Loose), ..sound }),
        (WheelFix::LetCool, AtWheel { film: Some(FilmFeel::Warm), ..sound }),
        (WheelFix::CheckNut, AtWheel { nut: Some(WheelNut::Unchecked), ..sound }),
    ] {
        for other in WheelFix::ALL {
            assert_eq!(wrong(*other, at), Ok(*other == fix), "{other:?} where {fix:?} is due");
        }
    }
}
