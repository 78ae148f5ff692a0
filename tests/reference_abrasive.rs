//! Abrasives against published values; each check names its source. Which grade a shop ends at, scuffs with or levels from,
//! and how deep a scratch is, are settings and no checks: there both sides of each limit are pinned instead.

mod support;

use stepboard::quantity::Micrometres;
use stepboard::rules::abrasive::{
    Abrading, Before, BuffMove, Compound, FineLines, Grade, LampSign, LevelMove, P_SERIES, ScuffSheet, Shine,
    Strokes, US_SERIES, WoodReady, buff_move, fine_lines, ladder, last_grade, level_move, next_grade,
    p_neighbour, ready_for_stain, scratch_allowance, scratch_depth, scuff_sheet, sheets_left, skips,
    spot_next, us_neighbour,
};
use stepboard::rules::sheet::{Setting, Sheet};
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

fn with(setting: Setting, value: f64) -> Sheet {
    base().with(setting, value).expect("in range")
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

/// American Lutherie no. 86 (2006) and no. 79 (2004): a scratch of a missed grade keeps its place, a swirl turns.
#[test]
fn the_lamp_tells_scratches_from_swirls() {
    same!(fine_lines(LampSign::Stays).answer, FineLines::SandingScratch);
    same!(fine_lines(LampSign::Turns).answer, FineLines::BuffSwirl);
    covered::values("abrasive", "American Lutherie no. 86");
}

/// Six pairs that the published charts call the same paper, coarse to fine, and no other number of the US grading is read
/// as its namesake from 240 on.
#[test]
fn from_240_on_no_number_is_the_same_in_both_gradings() {
    for (us, wanted) in
        [(320.0, 400.0), (400.0, 800.0), (500.0, 1000.0), (600.0, 1200.0), (800.0, 1500.0), (1000.0, 2000.0)]
    {
        same!(p_neighbour(Grade::us(us).expect("published")).answer.number, wanted);
    }
    for us in US_SERIES.iter().filter(|grade| grade.number >= 240.0) {
        assert!(p_neighbour(us).answer.number > us.number, "US {}", us.number);
    }
    covered::values("abrasive", "three published charts of grades");
}

/// Common practice, no source: each end is the shop's own.
#[test]
fn the_last_grit_goes_by_what_follows() {
    let last = |before, sheet: &Sheet| {
        let ruling = last_grade(before, sheet);
        (ruling.answer.number, ruling.rules[0].0)
    };
    assert_eq!(last(Before::Stain, &with(Setting::LastGrit, 180.0)), (180.0, "abrasive.last-grit"));
    assert_eq!(last(Before::Clear, &with(Setting::ScuffGrit, 320.0)), (320.0, "abrasive.scuff-grit"));
    assert_eq!(
        last(Before::Compound, &with(Setting::CompoundGrit, 1500.0)),
        (1500.0, "abrasive.compound-grit")
    );
    assert_eq!(
        (Abrading::BareWood.leads_to(), Abrading::Levelling.leads_to()),
        (Before::Stain, Before::Compound)
    );
}

/// A sheet's number between two grades means the nearest one.
#[test]
fn a_setting_between_grades_means_the_nearest() {
    assert_eq!(last_grade(Before::Stain, &with(Setting::LastGrit, 200.0)).answer.number, 180.0);
    assert_eq!(last_grade(Before::Stain, &with(Setting::LastGrit, 210.0)).answer.number, 220.0);
}

/// The next grade of the series is always allowed, also on a strict sheet; the end of the ladder is never passed.
#[test]
fn the_next_grade_reaches_as_far_as_the_step_and_no_farther_than_the_end() {
    let strict = with(Setting::GritStep, 0.8);
    let next = |from, work, sheet: &Sheet| next_grade(p(from), work, sheet).answer.map(|grade| grade.number);
    assert_eq!(
        next(100.0, Abrading::BareWood, &strict),
        Some(120.0),
        "0.772 is under the step, but the neighbour"
    );
    assert_eq!(next(80.0, Abrading::BareWood, &base()), Some(120.0), "0.622; P150 is 0.498");
    assert_eq!(next(120.0, Abrading::BareWood, &base()), Some(220.0), "0.544; P240 is 0.468");
    assert_eq!(
        next(220.0, Abrading::BareWood, &base()),
        Some(240.0),
        "the end, though the step reaches farther"
    );
    assert_eq!(next(240.0, Abrading::BareWood, &base()), None);
    assert_eq!(next(320.0, Abrading::BareWood, &base()), None, "already finer");
    assert_eq!(next(800.0, Abrading::Levelling, &base()), Some(1500.0), "0.578; P2000 is 0.472");
    assert_eq!(p(80.0).beside().0, None);
    assert_eq!(p(80.0).beside().1, Some(p(100.0)));
    assert_eq!(p(2500.0).beside(), (Some(p(2000.0)), None));
}

/// Published sizes and the sheet's step: P80, 120, 220, 240 on the base sheet.
#[test]
fn the_sheets_still_to_come_are_counted() {
    let left = |from, work| sheets_left(p(from), work, &base()).answer;
    assert_eq!(left(80.0, Abrading::BareWood), 3);
    assert_eq!(left(220.0, Abrading::BareWood), 1);
    assert_eq!(left(240.0, Abrading::BareWood), 0);
    assert_eq!(left(800.0, Abrading::Levelling), 2, "P1500, P2000");
}

/// Common practice, no source. 58.5 × 0.5 = 29.25 µm lets P500 (30.2) follow P240; the sheet's first grade caps it.
#[test]
fn a_spot_is_brought_up_to_the_first_grade_of_the_face() {
    let next = |from, sheet: &Sheet| spot_next(p(from), sheet).answer.map(|grade| grade.number);
    assert_eq!(next(240.0, &base()), Some(500.0));
    assert_eq!(next(400.0, &base()), Some(800.0), "the step reaches P1000, the face is levelled from P800");
    assert_eq!(next(600.0, &base()), Some(800.0));
    assert_eq!(next(800.0, &base()), None, "on with the face");
    assert_eq!(next(1000.0, &base()), None);
    assert_eq!(next(400.0, &with(Setting::LevelGrit, 600.0)), Some(600.0));
}

/// The share is an assumption of the sheet: only the arithmetic is pinned, from published sizes.
#[test]
fn scratches_are_a_share_of_the_grain() {
    near(scratch_depth(p(800.0), &base()).answer.get(), 0.15 * 21.8, 1e-9, "P800");
    let all = scratch_allowance(&[p(800.0), p(1500.0), p(2000.0)], &base()).answer.get();
    near(all, 0.15 * (21.8 + 12.6 + 10.3), 1e-9, "three grades");
    near(scratch_allowance(&[], &base()).answer.get(), 0.0, 0.0, "none");
    near(scratch_depth(p(800.0), &with(Setting::ScratchShare, 0.3)).answer.get(), 6.54, 1e-9, "the sheet's");
}

/// Common practice, no source: one grade coarser, the shop's own, one grade finer.
#[test]
fn scuffing_takes_the_shops_grade_and_no_other() {
    let judged = |number, sheet: &Sheet| scuff_sheet(p(number), sheet).answer;
    assert_eq!(judged(360.0, &base()), ScuffSheet::TooCoarse);
    assert_eq!(judged(400.0, &base()), ScuffSheet::Right);
    assert_eq!(judged(500.0, &base()), ScuffSheet::TooFine);
    assert_eq!(judged(400.0, &with(Setting::ScuffGrit, 320.0)), ScuffSheet::TooFine);
    let us_320 = p_neighbour(Grade::us(320.0).expect("published")).answer;
    assert_eq!(scuff_sheet(us_320, &base()).answer, ScuffSheet::Right, "320 of the US grading is about P400");
}

/// Common practice, no source: every arm.
#[test]
fn bare_wood_is_ready_at_the_last_grit_along_the_grain() {
    let judged = |number, strokes| {
        let ruling = ready_for_stain(p(number), strokes, &base());
        (ruling.answer, ruling.rules[0].0)
    };
    assert_eq!(judged(240.0, Strokes::Along), (WoodReady::Ready, "abrasive.last-grit"));
    assert_eq!(judged(220.0, Strokes::Along), (WoodReady::GoFiner, "abrasive.last-grit"));
    assert_eq!(judged(240.0, Strokes::Across), (WoodReady::SandAlong, "abrasive.along-grain"));
    assert_eq!(judged(220.0, Strokes::Across), (WoodReady::FinerAlong, "abrasive.along-grain"));
    assert_eq!(judged(280.0, Strokes::Across), (WoodReady::TooFine, "abrasive.last-grit"));
    assert_eq!(judged(280.0, Strokes::Along), (WoodReady::TooFine, "abrasive.last-grit"));
}

/// Published instrument pages: dull evenly at each grit, shiny spots are low spots. The reserve is the shop's.
#[test]
fn a_grade_of_levelling_is_done_when_the_face_is_evenly_dull() {
    let judged = |number, shine, left: f64| {
        let left = Micrometres::new(left).expect("a film");
        level_move(p(number), shine, left, &base()).map(|ruling| (ruling.answer, ruling.rules[0].0))
    };
    let reserve = base().get(Setting::FilmReserve);
    let (dull, shiny) = (Some(Shine::EvenDull), Some(Shine::ShinySpots));
    same!(judged(800.0, shiny, reserve + 0.1), Ok((LevelMove::SameGrade, "abrasive.shiny-is-low")));
    same!(judged(800.0, dull, reserve + 0.1), Ok((LevelMove::NextGrade, "abrasive.shiny-is-low")));
    assert_eq!(judged(800.0, shiny, reserve), Ok((LevelMove::Recoat, "abrasive.film-reserve")));
    assert_eq!(judged(800.0, None, reserve), Ok((LevelMove::Recoat, "abrasive.film-reserve")));
    assert_eq!(judged(1500.0, dull, 100.0), Ok((LevelMove::NextGrade, "abrasive.shiny-is-low")));
    assert_eq!(judged(2000.0, dull, 100.0), Ok((LevelMove::Compound, "abrasive.compound-grit")));
    assert_eq!(judged(2500.0, dull, 100.0), Ok((LevelMove::Compound, "abrasive.compound-grit")));
    assert_eq!(judged(800.0, None, 100.0).expect_err("the shine decides").missing, ["shine"]);
    covered::values("abrasive", "published instrument pages");
}

/// Common practice, no source: every arm.
#[test]
fn compounds_go_in_order_each_on_its_own_wheel() {
    let judged = |compound, wheel, left| buff_move(compound, wheel, left).answer;
    assert_eq!(judged(Compound::Medium, Compound::Cutting, false), BuffMove::OwnWheel);
    assert_eq!(judged(Compound::Medium, Compound::Polish, true), BuffMove::OwnWheel);
    assert_eq!(judged(Compound::Cutting, Compound::Cutting, true), BuffMove::StayOn);
    assert_eq!(judged(Compound::Cutting, Compound::Cutting, false), BuffMove::NextCompound);
    assert_eq!(judged(Compound::Medium, Compound::Medium, false), BuffMove::NextCompound);
    assert_eq!(judged(Compound::Polish, Compound::Polish, true), BuffMove::StayOn);
    assert_eq!(judged(Compound::Polish, Compound::Polish, false), BuffMove::Done);
}
