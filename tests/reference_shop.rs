//! Residues, booth and gun against the regulations; each check names its source.

mod support;

use stepboard::rules::hazard::{
    BoothMove, BoothState, Cartridge, Gauge, GunMove, Mask, Place, Residue, Sprayed, before_gun,
    booth_change, place_for,
};
use stepboard::rules::term::Term;
use support::covered;
use support::covered::same;

/// 29 CFR 1910.107(g)(3): oily waste into closed metal containers. Practitioners' case: rags of an oil-type finish left
/// in a heap burnt at night.
#[test]
fn oily_rags_go_into_the_closed_metal_can() {
    for residue in [Residue::OilStain, Residue::OilFiller, Residue::OilFinish] {
        same!(place_for(residue).answer, Place::MetalCan);
    }
    for residue in [Residue::NitroDust, Residue::NitroFilter] {
        same!(place_for(residue).answer, Place::WetApart);
    }
    covered::values("hazard", "29 CFR 1910.107, 1910.134, OSHA STD 01-05-010");
}

/// OSHA STD 01-05-010: the face velocity rule is about fire and does not cover breathing. Nothing but a fitted
/// respirator within its change plan (29 CFR 1910.134) lets spraying start.
#[test]
fn no_draw_makes_a_respirator_unnecessary() {
    for gauge in Gauge::ALL {
        for mask in Mask::ALL {
            for cartridge in Cartridge::ALL {
                let start = before_gun(*gauge, *mask, *cartridge).answer == GunMove::Start;
                let fit = *mask == Mask::Fitted && *cartridge == Cartridge::InPlan;
                assert_eq!(start, fit && *gauge == Gauge::UnderMark);
            }
        }
    }
    covered::count();
    covered::values("hazard", "29 CFR 1910.107, 1910.134, OSHA STD 01-05-010");
}

/// 29 CFR 1910.107(g)(6): unlike coatings alternate only after all deposits are removed from booth and ducts.
#[test]
fn an_unlike_coating_waits_for_booth_duct_and_filters() {
    for before in Sprayed::ALL {
        for next in Sprayed::ALL {
            for state in BoothState::ALL {
                let ruling = booth_change(Some(*before), Some(*state), *next).expect("all is told");
                let clear = before == next || *state == BoothState::AllCleared;
                assert_eq!(ruling.answer == BoothMove::Spray, clear, "{before:?} {next:?} {state:?}");
            }
        }
    }
    assert!(booth_change(None, Some(BoothState::NewFilters), Sprayed::Shellac).is_err());
    covered::count();
    covered::values("hazard", "29 CFR 1910.107, 1910.134, OSHA STD 01-05-010");
}
