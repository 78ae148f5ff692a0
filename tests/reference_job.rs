//! Waits and whole jobs worked by hand from the values of the base sheet; the reckoning stands beside each check.

mod support;

use stepboard::quantity::{Celsius, Hours, Micrometres};
use stepboard::rules::drying::by_the_clock::hours_until;
use stepboard::rules::drying::job::{JobOutline, job_time};
use stepboard::rules::drying::job_step::JobStep;
use stepboard::rules::drying::recoat::{RecoatVerdict, window};
use stepboard::rules::drying::waits::{StainKind, Told, Wait, earliest};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Filler, Term, WorkClass};
use support::{base, near};

/// Where the cold factor is 1.
const REFERENCE_C: f64 = 21.0;

fn hours(value: f64) -> Hours {
    Hours::new(value).expect("in range")
}

fn room(celsius: f64) -> Celsius {
    Celsius::new(celsius).expect("in range")
}

fn film(um: f64) -> Micrometres {
    Micrometres::new(um).expect("in range")
}

fn with(sheet: &Sheet, values: &[(Setting, f64)]) -> Sheet {
    let set =
        |sheet: Sheet, (setting, value): &(Setting, f64)| sheet.with(*setting, *value).expect("allowed");
    values.iter().fold(sheet.clone(), set)
}

/// All that any wait goes by, in air at the reference, with film under both references.
fn all_told() -> Told {
    Told {
        class: Some(WorkClass::Satin),
        filler: Some(Filler::OilPaste),
        stain: Some(StainKind::Dye),
        air: Some(room(REFERENCE_C)),
        film: Some(film(20.0)),
    }
}

fn wait(wait: Wait, told: &Told, sheet: &Sheet) -> f64 {
    earliest(wait, told, sheet).expect("all told").answer.estimate().expect("inside the model").hours.get()
}

/// Worked by hand: 336 h stated, floor 72 h. The film lengthens the floor, never the stated wait: 250 µm of build over
/// 125 µm is g 4, so max(336, 72 × 4 = 288) = 336 h; 300 µm is g 5.76, so max(336, 414.72) = 414.72 h. At 15 °C q is
/// 1.5157 and multiplies both.
#[test]
fn thick_film_lengthens_the_floor_and_not_the_stated_wait() {
    const COLD: f64 = 1.515_717;
    let gloss = |um, celsius| {
        let told = Told {
            class: Some(WorkClass::InstrumentGloss),
            air: Some(room(celsius)),
            film: Some(film(um)),
            ..Told::default()
        };
        wait(Wait::Buff, &told, &base())
    };
    near(gloss(250.0, REFERENCE_C), 336.0, 1e-9, "stated");
    near(gloss(300.0, REFERENCE_C), 414.72, 1e-9, "floor × g");
    near(gloss(250.0, 15.0), 336.0 * COLD, 0.01, "stated × q");
    near(gloss(300.0, 15.0), 414.72 * COLD, 0.01, "floor × q × g");
}

/// Each wait reads its own value of the sheet: every value is set apart from the others.
#[test]
fn every_wait_reads_its_own_value() {
    let sheet = with(
        &base(),
        &[
            (Setting::WashcoatWait, 2.0),
            (Setting::SealWait, 3.0),
            (Setting::ColourWait, 4.0),
            (Setting::ClearWait, 5.0),
            (Setting::ScuffWait, 13.0),
            (Setting::RunWait, 30.0),
        ],
    );
    for (kind, wanted) in [
        (Wait::WashcoatToNext, 2.0),
        (Wait::SealToNext, 3.0),
        (Wait::ColourToColour, 4.0),
        (Wait::ClearToClear, 5.0),
        (Wait::Scuff, 13.0),
        (Wait::Run, 30.0),
    ] {
        near(wait(kind, &all_told(), &sheet), wanted, 1e-9, "its own value");
    }
}

/// Kinds of material and classes of work on the base sheet: content/settings.toml holds the source of each value.
#[test]
fn every_kind_has_its_own_wait() {
    let told = all_told();
    for (filler, wanted) in [
        (Filler::OilPaste, 48.0),
        (Filler::FastSolvent, 8.0),
        (Filler::WaterBorne, 4.0),
        (Filler::TwoPart, 12.0),
    ] {
        let told = Told { filler: Some(filler), ..told };
        near(wait(Wait::FillerToNext, &told, &base()), wanted, 1e-9, "filler");
    }
    for (stain, wanted) in [(StainKind::Dye, 1.0), (StainKind::Oil, 24.0)] {
        let told = Told { stain: Some(stain), ..told };
        near(wait(Wait::StainToNext, &told, &base()), wanted, 1e-9, "stain");
    }
    for (class, wanted) in
        [(WorkClass::InstrumentGloss, 336.0), (WorkClass::Satin, 72.0), (WorkClass::Turned, 48.0)]
    {
        let told = Told { class: Some(class), ..told };
        near(wait(Wait::Buff, &told, &base()), wanted, 1e-9, "class of work");
    }
}

/// Worked by hand at 18 °C, where q is 2^0.3 = 1.231: the window opens at 1 × q = 1.23 h, closes at the stated 2 h and
/// not at 2.46, and opens again at 8 × q = 9.85 h.
#[test]
fn cold_puts_off_the_openings_of_the_window_and_not_its_closing() {
    let sheet = with(&base(), &[(Setting::RecoatCloses, 2.0), (Setting::RecoatOpensAgain, 8.0)]);
    for (since, verdict) in [
        (1.2, RecoatVerdict::TooSoon),
        (1.3, RecoatVerdict::Open),
        (2.0, RecoatVerdict::Open),
        (2.1, RecoatVerdict::Closed),
        (9.8, RecoatVerdict::Closed),
        (9.9, RecoatVerdict::OpenAgain),
    ] {
        assert_eq!(
            window(hours(since), room(18.0), &sheet).expect("told").answer,
            verdict,
            "after {since} h"
        );
    }
}

fn satin(clear_coats: u32) -> JobOutline {
    JobOutline {
        parts_filled: vec![false],
        stain: None,
        colour_passes: 0,
        shaded: false,
        binding: false,
        clear_coats,
        coat: film(16.0),
        class: WorkClass::Satin,
        filler: Filler::FastSolvent,
        rubbed: true,
    }
}

/// A day and an hour of it, in hours after the first midnight.
fn at(day: u32, hour: f64) -> f64 {
    f64::from(day) * 24.0 + hour
}

/// A bound, shaded ticket worked by hand, 8 to 17 o'clock, at the reference temperature: dye 1 h, washcoat 1 h, fast
/// filler 8 h (so the seal goes on the next morning), seal, colour and clear 1 h, four clear coats a day, 12 h before the
/// scuff, 72 h before levelling. The inspection ends at closing, so the clear build begins on the third day.
#[test]
fn a_ticket_worked_by_hand_begins_and_ends_as_reckoned() {
    let outline = JobOutline {
        parts_filled: vec![true],
        stain: Some(StainKind::Dye),
        colour_passes: 1,
        shaded: true,
        binding: true,
        ..satin(5)
    };
    let ruling = job_time(&outline, Some(room(REFERENCE_C)), &base()).expect("a ticket");
    let time = ruling.answer.estimate().expect("inside the model");
    let wanted = [
        (JobStep::Prepare, at(0, 8.0), at(0, 10.0)),
        (JobStep::Stain, at(0, 10.0), at(0, 10.5)),
        (JobStep::Washcoat, at(0, 11.5), at(0, 12.0)),
        (JobStep::Fill, at(0, 13.0), at(0, 14.0)),
        (JobStep::Seal, at(1, 8.0), at(1, 8.5)),
        (JobStep::Colour, at(1, 9.5), at(1, 10.0)),
        (JobStep::Shade, at(1, 11.0), at(1, 12.0)),
        (JobStep::Protect, at(1, 13.0), at(1, 13.5)),
        (JobStep::Scrape, at(1, 14.5), at(1, 16.5)),
        (JobStep::Inspect, at(1, 16.5), at(1, 17.0)),
        (JobStep::Clear, at(2, 8.0), at(2, 8.5)),
        (JobStep::Clear, at(2, 9.5), at(2, 10.0)),
        (JobStep::Clear, at(2, 11.0), at(2, 11.5)),
        (JobStep::Clear, at(2, 12.5), at(2, 13.0)),
        (JobStep::Scuff, at(3, 8.0), at(3, 8.5)),
        (JobStep::Clear, at(3, 8.5), at(3, 9.0)),
        (JobStep::Level, at(6, 9.0), at(6, 12.0)),
        (JobStep::Buff, at(6, 12.0), at(6, 15.0)),
    ];
    assert_eq!(time.schedule.steps.len(), wanted.len());
    for (step, (label, start, end)) in time.schedule.steps.iter().zip(wanted) {
        assert_eq!(step.label, label);
        near(step.start.get(), start, 1e-9, &format!("begin of {label:?}"));
        near(step.end.get(), end, 1e-9, &format!("end of {label:?}"));
    }
    near(time.schedule.total.get(), at(6, 15.0) - 8.0, 1e-9, "from opening to the last pass");
}

/// Worked by hand, one coat a day, 8 h before the scuff, 5 to 22 o'clock: the coat ends at 9.30 and might be scuffed at
/// 17.30, but the scuff belongs to the coats of another day and is done at 5 the next morning.
#[test]
fn the_scuff_waits_for_another_day() {
    let sheet = with(
        &base(),
        &[
            (Setting::DayFrom, 5.0),
            (Setting::DayTo, 22.0),
            (Setting::CoatsADay, 1.0),
            (Setting::ScuffWait, 8.0),
        ],
    );
    let ruling = job_time(&satin(2), Some(room(REFERENCE_C)), &sheet).expect("a ticket");
    let steps = ruling.answer.estimate().expect("inside the model").schedule.steps;
    let of = |label| steps.iter().find(|step| step.label == label).expect("in the plan");
    near(of(JobStep::Clear).end.get(), at(0, 9.5), 1e-9, "first clear coat");
    near(of(JobStep::Scuff).start.get(), at(1, 5.0), 1e-9, "scuff");
}

/// Worked by hand, 1 h between clear coats, closing at 17: ready at 16.30 the next coat of half an hour still ends in
/// time; ready at 16.45 it does not and goes on at 8 the next morning.
#[test]
fn the_next_coat_has_to_end_before_closing() {
    let until = |clock| {
        let found = hours_until(hours(clock), Wait::ClearToClear, JobStep::Clear, &all_told(), &base());
        found.expect("told").answer.estimate().expect("inside the model").get()
    };
    near(until(15.5), 1.0, 1e-9, "fits");
    near(until(15.75), at(1, 8.0) - 15.75, 1e-9, "does not fit");
}

/// Each operation takes the hours that the shop sets for it: every value is set apart from the others.
#[test]
fn every_operation_takes_its_own_hours() {
    let values = [
        (Setting::WorkPrepare, 4.0, vec![JobStep::Prepare]),
        (Setting::WorkFill, 1.25, vec![JobStep::Fill]),
        (
            Setting::WorkCoat,
            0.75,
            vec![
                JobStep::Stain,
                JobStep::Washcoat,
                JobStep::Seal,
                JobStep::Colour,
                JobStep::Protect,
                JobStep::Clear,
            ],
        ),
        (Setting::WorkShade, 1.5, vec![JobStep::Shade]),
        (Setting::WorkScrape, 3.5, vec![JobStep::Scrape]),
        (Setting::WorkInspect, 0.25, vec![JobStep::Inspect]),
        (Setting::WorkScuff, 1.75, vec![JobStep::Scuff]),
        (Setting::WorkLevel, 5.0, vec![JobStep::Level]),
        (Setting::WorkBuff, 6.0, vec![JobStep::Buff]),
    ];
    let set: Vec<(Setting, f64)> = values.iter().map(|(setting, hours, _)| (*setting, *hours)).collect();
    let sheet = with(&base(), &set);
    for (_, hours, steps) in &values {
        for step in steps {
            near(step.work(&sheet).get(), *hours, 0.0, "its own hours");
        }
    }
    let counted: usize = values.iter().map(|(_, _, steps)| steps.len()).sum();
    assert_eq!(counted, JobStep::ALL.len());
}

/// A washcoat keeps coloured filler off stained flats: on wood that is not stained the time plan has none. Common practice,
/// no source.
#[test]
fn bare_wood_is_filled_with_no_washcoat_under_it() {
    let sheet = with(&base(), &[(Setting::StainFirst, 1.0), (Setting::WashcoatBeforeFill, 1.0)]);
    let under = |stain| {
        let outline = JobOutline { parts_filled: vec![true], stain, ..satin(1) };
        let ruling = job_time(&outline, Some(room(REFERENCE_C)), &sheet).expect("a ticket");
        let steps = ruling.answer.estimate().expect("inside the model").schedule.steps;
        steps.iter().any(|step| step.label == JobStep::Washcoat)
    };
    assert!(under(Some(StainKind::Dye)) && !under(None));
}
