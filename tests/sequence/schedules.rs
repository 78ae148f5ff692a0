//! The published schedules (`tests/data/schedules.csv`, 21 sources): accepted on a sheet set to their own values, or
//! refused by the floor under the wait after oil-based filler, as the reference says (check values Q1 to Q7 of the order
//! of operations as published).

use crate::reader::{coats, number, read, rows, sources};
use crate::work::{found, h};
use stepboard::rules::sequence::check::check;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::sequence::plan::{Step, Told};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Filler::{self, FastSolvent, OilPaste, TwoPart, WaterBorne};

/// Source, kinds of filler read into it, what is found, and why.
const EXPECTED: &[(&str, &[Filler], &[&str], &str)] = &[
    (
        "SC1",
        &[OilPaste, FastSolvent],
        &[],
        "the handbook's order: stain, fill, seal, build; neutral filler on stain",
    ),
    ("SC2", &[OilPaste], &[], "24 h after stain and 24 h after filler are the floors themselves"),
    ("SC3", &[OilPaste], &[], "24 h to harden is the floor; wiped at about 20 min by its own sheet"),
    ("SC4", &[OilPaste], &[], "solid colour is scuffed lightly before clear: sv-21; 4 coats a day: sv-08"),
    ("SC5", &[OilPaste], &[], "3 coats a day, 2 weeks before levelling"),
    ("SC6", &[OilPaste, FastSolvent], &[], "seal before colour; wait after filler is not printed"),
    ("SC7", &[OilPaste], &["se-09"], "Q7: overnight is under the 24 h floor of oil-based filler"),
    (
        "SC7",
        &[FastSolvent, WaterBorne, TwoPart],
        &[],
        "Q7: overnight is enough for other fillers; filled twice: sv-20",
    ),
    ("SC8", &[OilPaste], &[], "pores filled by lacquer alone: sv-04; 48 h on small turned work"),
    ("SC9", &[WaterBorne], &[], "water-borne: 2 h coats inside the window, a week before levelling"),
    ("SC10", &[OilPaste], &["se-09"], "Q7: overnight is under the 24 h floor of oil-based filler"),
    ("SC10", &[FastSolvent, WaterBorne, TwoPart], &[], "seal, fill, seal: sv-25"),
    ("SC11", &[OilPaste, FastSolvent], &[], "seal, fill, seal: sv-25; flattened between build coats: sv-19"),
    ("SC12", &[OilPaste], &[], "an order of duties: seal lies under the shading"),
    (
        "SC13",
        &[OilPaste],
        &[],
        "dye, sand back, dye: sv-22; the seal that keeps colour off lies on another part",
    ),
    ("SC14", &[OilPaste], &[], "close grain, no filler: sv-10; half-hour coats of its own sheet"),
    ("SC15", &[OilPaste], &[], "washcoat before stain; seal; two clear coats"),
    ("SC16", &[OilPaste], &["se-09"], "Q7: overnight is under the 24 h floor of oil-based filler"),
    ("SC16", &[FastSolvent, WaterBorne, TwoPart], &[], "Q7: overnight is enough for other fillers"),
    ("SC17", &[OilPaste], &[], "coloured filler on water stain: sv-13; varnish sanded between coats"),
    ("SC18", &[OilPaste, FastSolvent], &[], "the wait after filler is not printed as a number"),
    ("SC19", &[OilPaste, FastSolvent], &[], "filled and sealed first; 1 h between coats"),
    (
        "SC20",
        &[OilPaste, FastSolvent],
        &["se-09"],
        "a few hours, read as 2, are under the floors of 24 h and 8 h",
    ),
    ("SC20", &[WaterBorne], &[], "filler first, sanded to the wood, then stain: sv-02"),
    (
        "SC21",
        &[OilPaste, FastSolvent],
        &["se-09"],
        "several hours, read as 3, are under the floors of 24 h and 8 h",
    ),
    ("SC21", &[WaterBorne], &[], "filler first: sv-02; stain over a thin seal is no full seal coat"),
];

/// A step that stands for another way: wax instead of varnish.
const OTHER_WAY: (&str, &[&str]) = ("SC17", &["7"]);

fn left_out(source: &str) -> &'static [&'static str] {
    if source == OTHER_WAY.0 { OTHER_WAY.1 } else { &[] }
}

#[test]
fn every_published_schedule_is_accepted_or_refused_for_the_reason_given() {
    for (source, fillers, expected, why) in EXPECTED {
        for filler in *fillers {
            let schedule = read(source, *filler, left_out(source));
            let checked = check(&schedule.job, &schedule.plan, &schedule.sheet);
            let steps: Vec<Op> = schedule.plan.steps.iter().map(|step| step.operation).collect();
            assert_eq!(
                found(&checked),
                *expected,
                "{source} with {filler:?} ({why}): {checked:?} in {steps:?}"
            );
            assert!(checked.missing.is_empty(), "{source}: {:?}", checked.missing);
        }
    }
    let wax = read("SC17", OilPaste, &["5", "6"]);
    assert_eq!(found(&check(&wax.job, &wax.plan, &wax.sheet)), [""; 0], "wax instead of varnish");
}

#[test]
fn every_published_schedule_is_expected_and_read_whole() {
    let (mut steps, sources) = (0, sources());
    assert_eq!(sources.len(), 21);
    for source in &sources {
        assert!(EXPECTED.iter().any(|(name, ..)| name == source), "{source} is not expected");
        for row in rows(source) {
            row.checked("sequence");
            steps += 1;
        }
    }
    assert_eq!(steps, 133);
}

/// The variants that the reasons above name are the ones that excuse.
#[test]
fn a_schedule_is_accepted_by_the_variant_that_its_reason_names() {
    use stepboard::rules::term::Term;
    for (source, fillers, _, why) in EXPECTED {
        let schedule = read(source, fillers[0], left_out(source));
        let checked = check(&schedule.job, &schedule.plan, &schedule.sheet);
        for word in why.split([' ', ';', ',']).filter(|word| word.starts_with("sv-")) {
            let excused = checked.excused.iter().any(|(variant, ..)| variant.slug() == word);
            let tested = checked.findings.iter().any(|finding| !finding.tested.is_empty());
            assert!(excused || tested, "{source}: {word} excuses nothing: {:?}", checked.excused);
        }
    }
}

#[test]
fn q1_and_q2_coats_are_counted() {
    let mut on = [0, 0];
    for step in read("SC5", OilPaste, &[]).plan.steps.iter().filter(|step| step.operation == Op::Clear) {
        let Told::Is(coats) = step.coats else { panic!("coats are printed") };
        for (part, sum) in on.iter_mut().enumerate() {
            *sum += if step.part.is_none_or(|on| on == part) { coats } else { 0 };
        }
    }
    assert_eq!(on, [12, 7], "Q1: neck 3+3+3+3, body 3+2+2");
    let clear: u32 = rows("SC4")
        .iter()
        .filter(|row| row["operation"] == "clear")
        .filter_map(|row| coats(&row["material_class"]))
        .sum();
    assert_eq!(clear, 12, "Q2: the steps of SC4 add up to 12");
}

#[test]
fn q3_from_first_coat_to_levelling() {
    const DAY: f64 = 24.0;
    let rows = rows("SC5");
    let last = rows.iter().find(|row| row["step_number"] == "8").expect("the last scuff");
    let day: f64 = last["conditions"].trim_start_matches("day ").parse().expect("day 8");
    let wait = number(last, "wait_min_h").expect("two weeks");
    assert!((day - 1.0 + wait / DAY - 21.0).abs() < 1e-9, "Q3: 21 days after day 1");
}

#[test]
fn q4_from_stain_to_first_finish_coat() {
    let sum = |column: &str| rows("SC2").iter().filter_map(|row| number(row, column)).sum::<f64>();
    let rounded = |hours: f64| (hours * 10.0).round() / 10.0;
    assert_eq!((rounded(sum("wait_min_h")), rounded(sum("wait_max_h"))), (48.1, 48.2));
}

#[test]
fn q5_filled_twice() {
    let once = read("SC3", OilPaste, &[]);
    let fill_and_wait: f64 =
        rows("SC3").iter().take(2).filter_map(|row| number(row, "wait_min_h")).sum::<f64>();
    assert!(
        (2.0 * fill_and_wait - 48.67).abs() < 0.01,
        "Q5: 2 x (20 min + 24 h), the night before the scuff apart"
    );
    let mut twice = once;
    let fill = [
        Step::of(Op::SandFiller).after(h(24.0)),
        Step::of(Op::Fill).after(h(0.0)),
        Step::of(Op::WipeFiller).after(h(1.0 / 3.0)),
    ];
    let place = twice.plan.steps.iter().position(|step| step.operation == Op::WipeFiller).expect("wiped") + 1;
    twice.plan.steps.splice(place..place, fill);
    let checked = check(&twice.job, &twice.plan, &twice.sheet);
    assert_eq!(found(&checked), [""; 0], "sv-20: {checked:?}");
}

#[test]
fn a_stricter_sheet_refuses_what_its_own_sheet_accepts() {
    let mut schedule = read("SC2", OilPaste, &[]);
    schedule.sheet = schedule.sheet.with(Setting::FillerOilWait, 48.0).expect("in range");
    assert_eq!(found(&check(&schedule.job, &schedule.plan, &schedule.sheet)), ["se-09"]);
    let mut schedule = read("SC9", WaterBorne, &[]);
    schedule.sheet = schedule.sheet.with(Setting::BuffWaitInstrument, 336.0).expect("in range");
    assert_eq!(found(&check(&schedule.job, &schedule.plan, &schedule.sheet)), ["se-23"]);
}
