//! Hazards of the room that no outside figure covers: what comes before the gun, the fan, sparks, what stands round a
//! booth, where residues go.

use stepboard::quantity::Millimetres;
use stepboard::rules::hazard::before_gun::{Cartridge, Gauge, GunMove, Mask, before_gun};
use stepboard::rules::hazard::clearing::{FanMove, LeftIn, WorkState, fan_stop};
use stepboard::rules::hazard::residues::{Place, Residue, place_for};
use stepboard::rules::hazard::respirator::{PlaceMove, Standing, sprayer_place};
use stepboard::rules::hazard::sparks::{SparkPlace, SparkSource, SprayPhase, has_to_go};
use stepboard::rules::hazard::surroundings::{Around, BoothFault, Exhaust, booth_fault};
use stepboard::rules::term::Term;

fn mm(value: f64) -> Millimetres {
    Millimetres::new(value).expect("a length")
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
    // 3 feet are enough, anything less is not.
    for (clear, wrong) in [(914.4, false), (914.3, true)] {
        let around = Around { clear: Some(mm(clear)), ..Around::default() };
        assert_eq!(told(BoothFault::NoClearSpace, around), Ok(wrong), "{clear} mm");
    }
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

/// 29 CFR 1910.107(g)(3), (g)(6) and a nitrocellulose safety page.
#[test]
fn every_residue_has_its_place() {
    for residue in Residue::ALL {
        let nitro = matches!(residue, Residue::NitroDust | Residue::NitroFilter);
        let wanted = if nitro { Place::WetApart } else { Place::MetalCan };
        assert_eq!(place_for(*residue).answer, wanted, "{residue:?}");
    }
}
