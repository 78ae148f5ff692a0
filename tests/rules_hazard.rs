//! Decision tables of hazards, both sides of each boundary. Each names the text it follows; where there is none it says
//! so. Outside figures are checked in `reference_hazard.rs`.

mod support;

use stepboard::quantity::{
    Celsius, ExplosiveLimit, Fraction, Hours, Millilitres, Millimetres, PartsPerMillion,
};
use stepboard::rules::hazard::before_gun::{Cartridge, Gauge, GunMove, Mask, before_gun};
use stepboard::rules::hazard::booth_trouble::{ShutStep, Trouble, TroubleMove, shut_order, trouble_move};
use stepboard::rules::hazard::cartridge::{CartridgeMove, Sign, SignMove, Smell, cartridge_move, sign_move};
use stepboard::rules::hazard::clearing::{FanMove, LeftIn, WorkState, fan_stop};
use stepboard::rules::hazard::data_sheet::{SheetHazard, sheet_hazard};
use stepboard::rules::hazard::dust::{DustMove, DustOn, dust_move};
use stepboard::rules::hazard::exposure::{
    Breathed, Exposure, Reading, average_over, ceiling_over, exposure_sum, fire_meter, mixture_over,
};
use stepboard::rules::hazard::mask_care::{CareMove, MaskFound, MaskParts, care_move};
use stepboard::rules::hazard::mask_fit::{
    AtMask, MaskWant, SealCheck, SealMove, Shaven, TestedMask, mask_want, seal_move,
};
use stepboard::rules::hazard::mask_kind::{AirTask, Protection, protection_for};
use stepboard::rules::hazard::residues::{Place, Residue, place_for};
use stepboard::rules::hazard::respirator::{PlaceMove, Standing, sprayer_place};
use stepboard::rules::hazard::sparks::{SparkPlace, SparkSource, SprayPhase, has_to_go};
use stepboard::rules::hazard::store::{Can, CanFault, Cleaned, Lid, WashMove, can_fault, wash_move};
use stepboard::rules::hazard::surroundings::{Around, BoothFault, Exhaust, booth_fault};
use stepboard::rules::hazard::{Vessel, wheel};
use stepboard::rules::term::Term;
use support::content;

fn ppm(value: f64) -> PartsPerMillion {
    PartsPerMillion::new(value).expect("in range")
}

fn hours(value: f64) -> Option<Hours> {
    Some(Hours::new(value).expect("a time"))
}

fn mm(value: f64) -> Millimetres {
    Millimetres::new(value).expect("a length")
}

/// 29 CFR 1910.134(f)(2): a fit test holds for a year and one mask; the rest of the programme as the section lists it.
#[test]
fn a_mask_is_worn_only_with_all_that_the_programme_asks() {
    let whole = AtMask {
        medical: Some(true),
        fit_months: Some(12.0),
        tested: Some(TestedMask::This),
        shaven: Some(Shaven::Clean),
        trained: Some(true),
        cartridge_in_plan: Some(true),
    };
    let wants = |at| -> Vec<MaskWant> {
        let holds = |want: &&MaskWant| mask_want(**want, at).expect("known").answer;
        MaskWant::ALL.iter().filter(holds).copied().collect()
    };
    assert_eq!(wants(whole), []);
    assert_eq!(wants(AtMask { fit_months: Some(12.1), ..whole }), [MaskWant::FitTest]);
    assert_eq!(wants(AtMask { tested: Some(TestedMask::Another), ..whole }), [MaskWant::FitTest]);
    assert_eq!(wants(AtMask { medical: Some(false), ..whole }), [MaskWant::Medical]);
    assert_eq!(wants(AtMask { shaven: Some(Shaven::Stubble), ..whole }), [MaskWant::Shave]);
    assert_eq!(wants(AtMask { trained: Some(false), ..whole }), [MaskWant::Training]);
    assert_eq!(wants(AtMask { cartridge_in_plan: Some(false), ..whole }), [MaskWant::Cartridge]);
    for want in MaskWant::ALL {
        let missing = mask_want(*want, AtMask::default()).expect_err("nothing is known").missing;
        assert_eq!(missing.len(), 1, "{want:?}");
    }
    let another = AtMask { tested: Some(TestedMask::Another), ..AtMask::default() };
    assert!(mask_want(MaskWant::FitTest, another).expect("another mask decides alone").answer);
}

/// 29 CFR 1910.134(g)(1): nothing under the seal, a check each time; resetting once is common practice, no source.
#[test]
fn a_seal_check_decides_over_the_mask() {
    let (holds, leaks, skipped) = (Some(SealCheck::Holds), Some(SealCheck::Leaks), Some(SealCheck::Skipped));
    let told = |positive, negative, before| {
        seal_move(Shaven::Clean, positive, negative, before).map(|one| one.answer)
    };
    assert_eq!(told(holds, holds, false), Ok(SealMove::Wear));
    assert_eq!(told(holds, holds, true), Ok(SealMove::Wear));
    for (positive, negative) in
        [(leaks, holds), (holds, leaks), (leaks, None), (None, leaks), (leaks, skipped)]
    {
        assert_eq!(told(positive, negative, false), Ok(SealMove::Reseat));
        assert_eq!(told(positive, negative, true), Ok(SealMove::Refuse));
    }
    assert_eq!(told(skipped, holds, false), Ok(SealMove::Check));
    assert_eq!(told(holds, skipped, false), Ok(SealMove::Check));
    assert_eq!(told(None, holds, false).expect_err("unknown").missing, ["positive_check"]);
    assert_eq!(told(holds, None, false).expect_err("unknown").missing, ["negative_check"]);
    assert_eq!(seal_move(Shaven::Stubble, None, None, false).expect("hair decides").answer, SealMove::Refuse);
}

/// 29 CFR 1910.134(d)(3)(iii)(B): a plan from data decides, smell never does but to say out.
#[test]
fn cartridges_go_by_the_plan() {
    let told = |plan, used, spell| cartridge_move(plan, used, spell, Smell::None).map(|one| one.answer);
    assert_eq!(told(hours(8.0), hours(6.0), hours(2.0)), Ok(CartridgeMove::Keep), "up to the plan");
    assert_eq!(told(hours(8.0), hours(6.0), hours(2.1)), Ok(CartridgeMove::Change));
    assert_eq!(told(hours(8.0), hours(8.1), None), Ok(CartridgeMove::Change), "used up already");
    assert_eq!(told(hours(8.0), hours(8.0), None).expect_err("unknown").missing, ["spell_h"]);
    assert_eq!(told(None, hours(1.0), hours(1.0)).expect_err("unknown").missing, ["plan_h"]);
    assert_eq!(told(hours(8.0), None, hours(1.0)).expect_err("unknown").missing, ["used_h"]);
    let smelt = cartridge_move(None, None, None, Smell::Solvent).expect("smell decides alone").answer;
    assert_eq!(smelt, CartridgeMove::Leave);
}

/// Smell: 29 CFR 1910.134(d)(3)(iii)(B)(2). The other signs: common practice, no source.
#[test]
fn signs_call_for_leaving_or_wait() {
    let wanted = [
        (Sign::Smell, SignMove::Leave),
        (Sign::Dizzy, SignMove::Leave),
        (Sign::Lifts, SignMove::Leave),
        (Sign::Hard, SignMove::Prefilter),
        (Sign::Presses, SignMove::AfterSpell),
        (Sign::Visor, SignMove::AfterSpell),
    ];
    assert_eq!(wanted.len(), Sign::ALL.len());
    for (sign, next) in wanted {
        assert_eq!(sign_move(sign).answer, next, "{sign:?}");
    }
}

/// Cleaning and storing: 29 CFR 1910.134(h), from memory; common practice.
#[test]
fn a_mask_goes_clean_and_dry_into_its_bag() {
    let told = |found, parts| care_move(found, parts).map(|one| one.answer);
    let whole = Some(MaskParts::Whole);
    assert_eq!(told(Some(MaskFound::CleanDry), whole), Ok(CareMove::Store));
    assert_eq!(told(Some(MaskFound::CleanWet), whole), Ok(CareMove::Dry));
    assert_eq!(told(Some(MaskFound::Dirty), whole), Ok(CareMove::Clean));
    assert_eq!(told(None, Some(MaskParts::Damaged)), Ok(CareMove::TagOut), "damage decides alone");
    assert_eq!(told(None, whole).expect_err("unknown").missing, ["mask_found"]);
    assert_eq!(told(Some(MaskFound::Dirty), None).expect_err("unknown").missing, ["mask_parts"]);
}

/// HDI: NIOSH Pocket Guide 0320, supplied air in every respirator listed. The rest: common practice, no source.
#[test]
fn what_is_breathed_decides_what_is_stopped() {
    let wanted = [
        (AirTask::DrySanding, Protection::Particles),
        (AirTask::SprayLacquer, Protection::Both),
        (AirTask::PourThinner, Protection::Vapour),
        (AirTask::WipeSolvent, Protection::Vapour),
        (AirTask::SprayIsocyanate, Protection::SuppliedAir),
        (AirTask::LowOxygen, Protection::SuppliedAir),
    ];
    assert_eq!(wanted.len(), AirTask::ALL.len());
    for (task, stops) in wanted {
        assert_eq!(protection_for(task).answer, stops, "{task:?}");
    }
}

/// 29 CFR 1910.94(c)(6)(iii), 1910.107(b)(5)(i): downstream never; gauge and mask before the gun.
#[test]
fn place_mask_and_gauge_come_before_the_gun() {
    assert_eq!(sprayer_place(Standing::Upstream).answer, PlaceMove::Stay);
    assert_eq!(sprayer_place(Standing::Beside).answer, PlaceMove::Stay);
    assert_eq!(sprayer_place(Standing::Downstream).answer, PlaceMove::MoveUpstream);
    for gauge in Gauge::ALL {
        for mask in Mask::ALL {
            for cartridge in Cartridge::ALL {
                let breathing = *mask == Mask::Fitted && *cartridge == Cartridge::InPlan;
                let wanted = match (breathing, gauge) {
                    (true, Gauge::UnderMark) => GunMove::Start,
                    (true, Gauge::PastMark) => GunMove::FiltersFirst,
                    (false, Gauge::UnderMark) => GunMove::MaskFirst,
                    (false, Gauge::PastMark) => GunMove::BothFirst,
                };
                assert_eq!(before_gun(*gauge, *mask, *cartridge).answer, wanted);
            }
        }
    }
}

/// 29 CFR 1910.107(d)(2): the fan runs until nothing gives off vapour.
#[test]
fn the_fan_stops_last() {
    let told = |work, left| fan_stop(work, left).map(|one| one.answer);
    let nothing = Some(LeftIn::Nothing);
    assert_eq!(told(Some(WorkState::Wet), nothing), Ok(FanMove::RunOn));
    assert_eq!(told(Some(WorkState::Dry), nothing), Ok(FanMove::Stop));
    assert_eq!(told(Some(WorkState::Gone), nothing), Ok(FanMove::Stop));
    assert_eq!(told(None, Some(LeftIn::OpenLiquid)), Ok(FanMove::CloseFirst));
    assert_eq!(told(Some(WorkState::Dry), Some(LeftIn::WetResidue)), Ok(FanMove::ResidueFirst));
    assert_eq!(told(None, nothing).expect_err("unknown").missing, ["work_state"]);
    assert_eq!(told(Some(WorkState::Dry), None).expect_err("unknown").missing, ["left_in"]);
    let order = |steps: &[ShutStep]| {
        let slugs: Vec<String> = steps.iter().map(|step| step.slug().to_owned()).collect();
        shut_order(&slugs).expect("steps").answer
    };
    use ShutStep::{AirOff, FanLast, GunClean, MaterialOut, ResidueOut};
    assert!(order(&[MaterialOut, AirOff, GunClean, ResidueOut, FanLast]));
    assert!(order(&[AirOff, MaterialOut, GunClean, ResidueOut, FanLast]));
    for wrong in [
        [FanLast, MaterialOut, AirOff, GunClean, ResidueOut],
        [MaterialOut, GunClean, AirOff, ResidueOut, FanLast],
        [MaterialOut, AirOff, ResidueOut, GunClean, FanLast],
        [MaterialOut, AirOff, GunClean, FanLast, ResidueOut],
    ] {
        assert!(!order(&wrong), "{wrong:?}");
    }
    assert!(shut_order(&["no-step".to_owned()]).is_err());
}

/// 29 CFR 1910.107(b)(5)(i), (d)(2), (j)(3); the gauge near nothing: common practice, no source.
#[test]
fn troubles_stop_the_gun() {
    let wanted = [
        (Trouble::PastMark, TroubleMove::NewFilters),
        (Trouble::NearZero, TroubleMove::NewFilters),
        (Trouble::FanStopped, TroubleMove::OutAndReport),
        (Trouble::InterlockOpen, TroubleMove::OutAndReport),
        (Trouble::FanScrapes, TroubleMove::OutAndReport),
        (Trouble::Nothing, TroubleMove::GoOn),
    ];
    assert_eq!(wanted.len(), Trouble::ALL.len());
    for (trouble, next) in wanted {
        assert_eq!(trouble_move(trouble).answer, next, "{trouble:?}");
    }
}

/// 29 CFR 1910.107(c)(2), (c)(3), (c)(8).
#[test]
fn sparks_heat_and_lamps_are_kept_off() {
    use SparkPlace::{Inside, Open, Partition};
    use SparkSource::{FlameOrSpark, HotSurface, PortableLamp, RatedLamp, Telephone};
    let goes =
        |source, place, phase| has_to_go(source, place, Some(mm(1_000.0)), phase).map(|one| one.answer);
    let (spraying, before) = (Some(SprayPhase::Spraying), Some(SprayPhase::Before));
    for source in [FlameOrSpark, HotSurface, Telephone] {
        assert_eq!(goes(source, Inside, before), Ok(true), "{source:?}");
        assert_eq!(goes(source, Partition, spraying), Ok(false), "{source:?}");
    }
    assert_eq!(goes(PortableLamp, Inside, spraying), Ok(true));
    assert_eq!(goes(PortableLamp, Inside, before), Ok(false));
    assert_eq!(goes(PortableLamp, Inside, None).expect_err("unknown").missing, ["spray_phase"]);
    assert_eq!(goes(RatedLamp, Inside, spraying), Ok(false));
    assert_eq!(goes(FlameOrSpark, Open, None), Ok(true));
    for source in [HotSurface, PortableLamp, Telephone] {
        assert_eq!(goes(source, Open, spraying), Ok(false), "{source:?}");
    }
    let unknown = has_to_go(FlameOrSpark, Open, None, None).expect_err("unknown");
    assert_eq!(unknown.missing, ["distance_m"]);
}

/// 29 CFR 1910.107(b)(6), (b)(8), (b)(9), (d)(3); a partition serves instead of the distance.
#[test]
fn the_room_round_a_booth_is_kept() {
    let face = |feet: f64| Some((mm(304.8), mm(304.8 * feet)));
    let told = |fault, at| booth_fault(fault, at).map(|one| one.answer);
    let near = Around { other_work: Some(mm(500.0)), partition: Some(true), ..Around::default() };
    assert_eq!(told(BoothFault::OtherWork, near), Ok(false), "a partition stands between");
    let hung = Around { face: face(20.0), deflector: Some(true), ..Around::default() };
    assert_eq!(told(BoothFault::NoDeflector, hung), Ok(false));
    let exhaust = |exhaust| Around { face: face(5.0), exhaust: Some(exhaust), ..Around::default() };
    assert_eq!(told(BoothFault::SharedExhaust, exhaust(Exhaust::Own)), Ok(false));
    assert_eq!(told(BoothFault::SharedExhaust, exhaust(Exhaust::SharedSame)), Ok(false));
    assert_eq!(told(BoothFault::SharedExhaust, exhaust(Exhaust::SharedOther)), Ok(true));
    let missing = |fault, at: Around| booth_fault(fault, at).expect_err("unknown").missing;
    assert_eq!(missing(BoothFault::NoClearSpace, Around::default()), ["clear_m"]);
    assert_eq!(missing(BoothFault::OtherWork, Around::default()), ["partition"]);
    assert_eq!(missing(BoothFault::NoDeflector, Around::default()), ["deflector"]);
    assert_eq!(missing(BoothFault::SharedExhaust, Around::default()), ["exhaust"]);
    let open = Around { partition: Some(false), deflector: Some(false), ..Around::default() };
    assert_eq!(missing(BoothFault::OtherWork, open), ["other_work_m"]);
    assert_eq!(missing(BoothFault::NoDeflector, open), ["width_m"]);
}

/// 29 CFR 1910.107(e)(2)-(3), (g)(5); the date on a label: common practice, no source.
#[test]
fn cans_are_closed_labelled_and_few() {
    let ml = |value| Some(Millilitres::new(value).expect("in range"));
    let whole = Can {
        lid: Some(Lid::Shut),
        vessel: Some(Vessel::Metal),
        content: Some(true),
        date: Some(true),
        hazard: Some(true),
        held: ml(1_000.0),
        need: ml(1_000.0),
    };
    let faults = |can| -> Vec<CanFault> {
        let holds = |fault: &&CanFault| can_fault(**fault, can).expect("known").answer;
        CanFault::ALL.iter().filter(holds).copied().collect()
    };
    assert_eq!(faults(whole), []);
    assert_eq!(faults(Can { lid: Some(Lid::Off), ..whole }), [CanFault::Open]);
    assert_eq!(faults(Can { vessel: Some(Vessel::Glass), ..whole }), [CanFault::Glass]);
    assert_eq!(faults(Can { vessel: Some(Vessel::Plastic), ..whole }), []);
    assert_eq!(faults(Can { content: Some(false), ..whole }), [CanFault::NoContent]);
    assert_eq!(faults(Can { date: Some(false), ..whole }), [CanFault::NoDate]);
    assert_eq!(faults(Can { hazard: Some(false), ..whole }), [CanFault::NoHazard]);
    assert_eq!(faults(Can { held: ml(1_000.1), ..whole }), [CanFault::TooMuch]);
    for fault in CanFault::ALL {
        assert_eq!(can_fault(*fault, Can::default()).expect_err("unknown").missing.len(), 1);
    }
    let celsius = |value| Celsius::new(value).expect("in range");
    let gun = |flash, sprayed| wash_move(Cleaned::Gun, celsius(flash), sprayed).map(|one| one.answer);
    assert_eq!(gun(4.0, Some(celsius(4.0))), Ok(WashMove::Use), "no lower than what is sprayed");
    assert_eq!(gun(3.9, Some(celsius(4.0))), Ok(WashMove::HigherFlash));
    assert_eq!(gun(4.0, None).expect_err("unknown").missing, ["sprayed_flash_c"]);
}

/// 29 CFR 1910.242(b), 1910.107(g)(2).
#[test]
fn dust_is_never_blown() {
    assert_eq!(dust_move(DustOn::Bench).answer, DustMove::Vacuum);
    assert_eq!(dust_move(DustOn::Person).answer, DustMove::Vacuum);
    assert_eq!(dust_move(DustOn::Work).answer, DustMove::VacuumTack);
    assert_eq!(dust_move(DustOn::Overspray).answer, DustMove::ScrapeDamp);
}

/// 29 CFR 1910.107(g)(3), (g)(6) and a nitrocellulose safety page.
#[test]
fn every_residue_has_its_place() {
    for residue in Residue::ALL {
        let nitro = matches!(residue, Residue::NitroDust | Residue::NitroFilter);
        let wanted = if nitro { Place::WetApart } else { Place::MetalCan };
        assert_eq!(place_for(*residue).answer, wanted, "{residue:?}");
    }
}

/// 29 CFR 1910.1000(a), (b), (d): at the limit is kept, over it is passed.
#[test]
fn at_a_limit_is_kept_and_over_it_is_passed() {
    assert!(!average_over(ppm(200.0), ppm(200.0)).answer && average_over(ppm(200.1), ppm(200.0)).answer);
    assert!(!ceiling_over(ppm(300.0), ppm(300.0)).answer && ceiling_over(ppm(300.1), ppm(300.0)).answer);
    let half = |value| (ppm(value), ppm(200.0));
    assert!(!mixture_over(&[half(100.0), half(100.0)]).answer, "1 is not over 1");
    assert!(mixture_over(&[half(100.0), half(100.1)]).answer);
    let meter = |percent: f64| {
        let share = Fraction::new(percent / 100.0).expect("a share");
        fire_meter(ExplosiveLimit::new(1.0).expect("in range"), share, ppm(200.0), ppm(500.0)).answer
    };
    assert_eq!(meter(2.0), Breathed::NotShown);
    assert_eq!(meter(2.1), Breathed::OverLimit);
    assert_eq!(meter(5.0), Breathed::OverLimit);
    assert_eq!(meter(5.1), Breathed::DangerousAtOnce);
}

/// Toluene (29 CFR 1910.1000 Table Z-2; NIOSH): average 200, ceiling 300, recommended 100 and 150 for 15 minutes.
#[test]
fn verdicts_keep_averages_and_ceilings_apart() {
    let content = content();
    let told = |slug: &str, average: f64, peak: Option<f64>| {
        let solvent = content.solvent(slug).expect("listed");
        exposure_sum(&[Reading { solvent, average: ppm(average), peak: peak.map(ppm) }])
            .expect("a reading")
            .answer
    };
    assert_eq!(told("toluene", 50.0, None).verdict, Some(Exposure::WithinAverages));
    assert_eq!(told("toluene", 50.0, Some(150.0)).verdict, Some(Exposure::WithinLimits));
    assert_eq!(told("toluene", 50.0, Some(151.0)).verdict, Some(Exposure::OverRecommended));
    assert_eq!(
        told("toluene", 50.0, Some(301.0)).verdict,
        Some(Exposure::OverLimit),
        "average far under its limit"
    );
    assert_eq!(told("toluene", 101.0, Some(120.0)).verdict, Some(Exposure::OverRecommended));
    assert_eq!(told("toluene", 201.0, None).verdict, Some(Exposure::OverLimit));
    assert_eq!(told("toluene", 201.0, None).over_pel, ["toluene"]);
    assert_eq!(told("toluene", 50.0, Some(151.0)).over_ceiling, ["toluene"]);
    assert_eq!(told("acetone", 200.0, None).verdict, Some(Exposure::WithinLimits), "no ceiling is published");
    let none = told("pgmea", 1.0, None);
    assert_eq!((none.verdict, none.without_pel), (None, vec!["pgmea".to_owned()]));
    assert_eq!(exposure_sum(&[]).expect_err("no reading").missing, ["solvent"]);
}

/// Figures of 29 CFR 1910.1000, NIOSH and the data sheets of content/solvents.toml.
#[test]
fn the_figures_of_a_data_sheet_are_read() {
    let content = content();
    let toluene = content.solvent("toluene").expect("listed");
    let flash = toluene.flash_c.expect("published").get();
    let room = |value: f64| Some(Celsius::new(value).expect("in range"));
    let shows = |hazard, slug: &str, at| {
        sheet_hazard(hazard, content.solvent(slug).expect("listed"), at).map(|one| one.answer)
    };
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", room(flash)), Ok(true));
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", room(flash - 0.1)), Ok(false));
    assert_eq!(shows(SheetHazard::LightsInRoom, "toluene", None).expect_err("unknown").missing, ["air_c"]);
    assert_eq!(
        shows(SheetHazard::LightsInRoom, "cyclohexanone", room(20.0)).expect_err("none").missing,
        ["flash_c"]
    );
    assert_eq!(shows(SheetHazard::ThroughSkin, "methanol", None), Ok(true));
    assert_eq!(shows(SheetHazard::ThroughSkin, "toluene", None), Ok(false));
    assert_eq!(shows(SheetHazard::HasCeiling, "toluene", None), Ok(true));
    assert_eq!(shows(SheetHazard::HasCeiling, "acetone", None), Ok(false));
    assert_eq!(shows(SheetHazard::RecommendedLower, "acetone", None), Ok(true));
    assert_eq!(shows(SheetHazard::RecommendedLower, "ethanol", None), Ok(false));
    assert_eq!(shows(SheetHazard::FireAirDangerous, "toluene", None), Ok(true));
    assert_eq!(shows(SheetHazard::FireAirDangerous, "pgmea", None).expect_err("none").missing.len(), 1);
}

/// 29 CFR 1910.94(b), 1910.212: each thing at the wheel is judged by its own fact.
#[test]
fn the_wheel_is_judged_by_each_fact() {
    use wheel::{AtWheel, FilmFeel, WheelEdge, WheelFix, WheelHalf, WheelNut, Worn, wheel_fix};
    let wrong = AtWheel {
        half: Some(WheelHalf::Upper),
        edge: Some(WheelEdge::Leading),
        worn: Some(Worn::Loose),
        film: Some(FilmFeel::Warm),
        nut: Some(WheelNut::Unchecked),
    };
    let right = AtWheel {
        half: Some(WheelHalf::Lower),
        edge: Some(WheelEdge::Trailing),
        worn: Some(Worn::Close),
        film: Some(FilmFeel::Cool),
        nut: Some(WheelNut::Checked),
    };
    for fix in WheelFix::ALL {
        assert!(wheel_fix(*fix, wrong).expect("known").answer, "{fix:?}");
        assert!(!wheel_fix(*fix, right).expect("known").answer, "{fix:?}");
        assert_eq!(wheel_fix(*fix, AtWheel::default()).expect_err("unknown").missing.len(), 1);
    }
}
