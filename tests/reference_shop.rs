//! Abrasives and hazards against published values; each check names its source. The trade's own habits (which grade an
//! instrument ends at) are settings and conventions, not checks.

mod support;

use stepboard::quantity::{Fraction, Micrometres};
use stepboard::rules::abrasive::{
    Abrading, FineLines, Grade, LampSign, P_SERIES, fine_lines, ladder, next_grade, p_neighbour, skips,
    us_neighbour,
};
use stepboard::rules::film;
use stepboard::rules::hazard::{
    BoothMove, BoothState, Cartridge, Gauge, GunMove, Mask, Place, Residue, Sprayed, before_gun,
    booth_change, place_for,
};
use stepboard::rules::mixing::Thinning;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
use support::covered::same;
use support::table::table;
use support::{base, covered, near};

/// Sizes are printed to a tenth of a micrometre.
const SIZE_TOLERANCE: f64 = 0.1;
/// Ratios are printed to three decimals.
const RATIO_TOLERANCE: f64 = 0.001;

fn p(number: f64) -> &'static Grade {
    Grade::p(number).expect("a published grade")
}

fn fraction(percent: f64) -> Fraction {
    Fraction::new(percent / 100.0).expect("a share")
}

/// abrasives.csv: three published charts, all 19 grades.
#[test]
fn the_published_sizes_and_neighbours_are_met() {
    let rows = table("abrasives.csv");
    assert_eq!(rows.len(), P_SERIES.len(), "the whole series");
    for (row, grade) in rows.iter().zip(&P_SERIES) {
        let name = row.text("grade");
        assert_eq!(name, format!("P{}", grade.number));
        near(grade.median.get(), row.number("median_um"), SIZE_TOLERANCE, name);
        if let Some(us) = row.maybe_number("us_grade") {
            let found = us_neighbour(grade).answer;
            assert_eq!(found.number, us, "US neighbour of {name}");
            near(found.median.get(), row.number("us_median_um"), SIZE_TOLERANCE, name);
            assert_eq!(p_neighbour(found).answer.number, grade.number, "and back from US {us}");
        }
    }
    for (pair, row) in P_SERIES.windows(2).zip(rows.iter().skip(1)) {
        let ratio = pair[1].median.get() / pair[0].median.get();
        near(ratio, row.number("ratio_to_previous"), RATIO_TOLERANCE, row.text("grade"));
    }
    rows.iter().for_each(|row| row.checked("abrasive"));
}

/// American Lutherie no. 86 (2006), Post Buffing Finish Scratches: P800 is about 400 in the US grading.
#[test]
fn p800_is_about_400_in_the_us_grading() {
    same!(us_neighbour(p(800.0)).answer.number, 400.0);
    same!(p_neighbour(Grade::us(400.0).expect("published")).answer.number, 800.0);
    covered::values("abrasive", "American Lutherie no. 86");
}

/// Ratios of the published sizes: P80 to P150 is 0.498 and just fails half, P120 to P220 is 0.544 and passes, P400 to
/// P1500 is 0.36; the ladder P220, 320, 400, 600, 800, 1200, 2000 passes at half and at 0.6.
#[test]
fn jumps_are_judged_by_size_and_not_by_number() {
    let half = base().with(Setting::GritStep, 0.5).expect("a step");
    let strict = base().with(Setting::GritStep, 0.6).expect("a step");
    assert!(skips(p(80.0), p(150.0), &half).answer);
    assert!(!skips(p(120.0), p(220.0), &half).answer);
    assert!(skips(p(120.0), p(220.0), &strict).answer);
    assert!(skips(p(400.0), p(1500.0), &half).answer);
    for pair in [220.0, 320.0, 400.0, 600.0, 800.0, 1200.0, 2000.0].windows(2) {
        for sheet in [&half, &strict] {
            assert!(!skips(p(pair[0]), p(pair[1]), sheet).answer, "P{} to P{}", pair[0], pair[1]);
        }
    }
    covered::count();
    covered::values("abrasive", "ratios of published sizes");
}

/// Published instrument pages level from P600 or P800 up to P1500 to P2000 before compound: the sheet's ladder does.
#[test]
fn the_sheets_ladders_reach_their_ends_without_a_skip() {
    let sheet = base();
    for (from, work, end) in [(80.0, Abrading::BareWood, 240.0), (800.0, Abrading::Levelling, 2000.0)] {
        let grades = ladder(p(from), work, &sheet);
        assert_eq!(grades.last().map(|grade| grade.number), Some(end));
        assert!(grades.windows(2).all(|pair| !skips(pair[0], pair[1], &sheet).answer));
        assert!(next_grade(p(end), work, &sheet).answer.is_none());
    }
}

/// Trade knowledge base, Measuring finish thickness: 4 mil wet at 27 % solids is 1.08 mil dry.
#[test]
fn four_mil_at_27_per_cent_is_1_08_mil_dry() {
    const UM_A_MIL: f64 = 25.4;
    let wet = Micrometres::new(4.0 * UM_A_MIL).expect("a film");
    let unthinned = Thinning::of_ratio(0.0).expect("none");
    near(film::dry(wet, fraction(27.0), unthinned).answer.get() / UM_A_MIL, 1.08, 1e-9, "dry film");
    covered::values("mixing", "trade knowledge base, film thickness");
}

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

/// American Lutherie no. 86 (2006) and no. 79 (2004): a scratch of a missed grade keeps its place, a swirl turns.
#[test]
fn the_lamp_tells_scratches_from_swirls() {
    same!(fine_lines(LampSign::Stays).answer, FineLines::SandingScratch);
    same!(fine_lines(LampSign::Turns).answer, FineLines::BuffSwirl);
    covered::values("abrasive", "American Lutherie no. 86");
}
