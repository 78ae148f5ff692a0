//! The gate to levelling, heavy and light coats, what must rise on a sheet.

use crate::support::{base, near};
use stepboard::quantity::{Celsius, Hours, Micrometres};
use stepboard::rules::drying::factors::cold_factor;
use stepboard::rules::drying::gate::{Finding, keeps_shut};
use stepboard::rules::drying::job::{Delivery, JobOutline, delivery, job_time};
use stepboard::rules::drying::release::{Compared, fewer_coats};
use stepboard::rules::drying::waits::{DryTest, StainKind, Told, Wait, earliest, setting};
use stepboard::rules::pairs::clashes;
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Filler, Term, WorkClass};

fn told() -> Told {
    Told {
        class: Some(WorkClass::InstrumentGloss),
        air: Some(Celsius::new(base().get(Setting::WaitReference)).expect("a room")),
        film: Some(Micrometres::new(100.0).expect("a film")),
        ..Told::default()
    }
}

/// Published finishing texts: no smell, no dent of the nail, dry powder. That touch-dry says nothing: common practice, no
/// source.
#[test]
fn a_failed_test_keeps_the_gate_shut_and_so_does_time_that_is_not_up() {
    let sheet = base();
    let shut = |finding, since: Option<f64>| {
        let since = since.map(|hours| Hours::new(hours).expect("a time"));
        keeps_shut(finding, since, &told(), &sheet).map(|ruling| ruling.answer)
    };
    for finding in Finding::ALL.iter().filter(|finding| **finding != Finding::TimeStood) {
        let fails = match finding {
            Finding::SolventSmell => Some(DryTest::Smell),
            Finding::NailDent => Some(DryTest::Thumbnail),
            Finding::PaperClogs => Some(DryTest::Powder),
            _ => None,
        };
        assert_eq!(finding.fails(), fails, "{finding:?}");
        assert_eq!(shut(*finding, None), Ok(fails.is_some()), "{finding:?}");
    }
    let wait = sheet.get(Setting::BuffWaitInstrument);
    assert_eq!(shut(Finding::TimeStood, Some(wait - 0.1)), Ok(true));
    assert_eq!(shut(Finding::TimeStood, Some(wait)), Ok(false), "the last hour counts");
    assert_eq!(shut(Finding::TimeStood, None).expect_err("untold").missing, ["hours_since"]);
}

/// Each wait by the square of the coat (Crank 1975, p. 48): four light coats in two heavy ones wait four times as long
/// each and twice as long in all.
#[test]
fn two_heavy_coats_wait_longer_than_four_light_ones() {
    let longer = |light, heavy, compared| fewer_coats(light, heavy, compared).answer;
    near(longer(4, 2, Compared::EachWait), 4.0, 1e-12, "each wait");
    near(longer(4, 2, Compared::AllWaits), 2.0, 1e-12, "all waits");
    near(longer(6, 2, Compared::EachWait), 9.0, 1e-12, "each wait");
    near(longer(2, 4, Compared::AllWaits), 0.5, 1e-12, "thinner coats");
    near(longer(0, 1, Compared::EachWait), 1.0, 1e-12, "none counts as one");
    near(longer(3, 0, Compared::AllWaits), 3.0, 1e-12, "none counts as one");
}

/// Which value of the sheet a wait reads: the sheet's own words.
#[test]
fn each_kind_of_material_and_work_reads_its_own_value() {
    let of = |wait, told: Told| setting(wait, &told).map_err(|cannot| cannot.missing);
    let filled = |filler| Told { filler: Some(filler), ..Told::default() };
    for (filler, wanted) in [
        (Filler::OilPaste, Setting::FillerOilWait),
        (Filler::FastSolvent, Setting::FillerFastWait),
        (Filler::WaterBorne, Setting::FillerWaterWait),
        (Filler::TwoPart, Setting::FillerTwoPartWait),
    ] {
        assert_eq!(of(Wait::FillerToNext, filled(filler)), Ok(wanted));
    }
    for (stain, wanted) in [(StainKind::Dye, Setting::StainDyeWait), (StainKind::Oil, Setting::StainOilWait)]
    {
        assert_eq!(of(Wait::StainToNext, Told { stain: Some(stain), ..Told::default() }), Ok(wanted));
    }
    for (class, wanted) in [
        (WorkClass::InstrumentGloss, Setting::BuffWaitInstrument),
        (WorkClass::Satin, Setting::BuffWaitSatin),
        (WorkClass::Turned, Setting::BuffWaitTurned),
    ] {
        assert_eq!(of(Wait::Buff, Told { class: Some(class), ..Told::default() }), Ok(wanted));
    }
    for (wait, wanted) in [
        (Wait::WashcoatToNext, Setting::WashcoatWait),
        (Wait::SealToNext, Setting::SealWait),
        (Wait::ColourToColour, Setting::ColourWait),
        (Wait::ClearToClear, Setting::ClearWait),
        (Wait::Scuff, Setting::ScuffWait),
        (Wait::Run, Setting::RunWait),
    ] {
        assert_eq!(of(wait, Told::default()), Ok(wanted));
    }
    for (wait, missing) in
        [(Wait::FillerToNext, "filler"), (Wait::StainToNext, "stain_kind"), (Wait::Buff, "class")]
    {
        assert_eq!(of(wait, Told::default()), Err(vec![missing.to_owned()]));
    }
}

/// Which rule a wait names beside the one that decides, and which one decides: the sheet's wait at its reference, the floor
/// where film lengthens it past that. 250 µm over the reference of 125 is four times the floor (square law).
#[test]
fn a_wait_names_its_rules() {
    let sheet = base();
    let rules = |wait, told: &Told| {
        let ruling = earliest(wait, told, &sheet).expect("told");
        ruling.rules.iter().map(|rule| rule.0).collect::<Vec<_>>()
    };
    let thin = Some(Micrometres::new(10.0).expect("a film"));
    let all = Told { filler: Some(Filler::OilPaste), stain: Some(StainKind::Dye), film: thin, ..told() };
    for (wait, kind) in [
        (Wait::FillerToNext, "drying.filler-kind"),
        (Wait::StainToNext, "drying.stain-kind"),
        (Wait::Buff, "drying.class-of-work"),
        (Wait::Run, "drying.run-rests"),
        (Wait::Scuff, "drying.overnight-before-scuff"),
        (Wait::WashcoatToNext, "drying.recoat-re-wets"),
        (Wait::SealToNext, "drying.recoat-re-wets"),
        (Wait::ColourToColour, "drying.recoat-re-wets"),
        (Wait::ClearToClear, "drying.recoat-re-wets"),
    ] {
        let found = rules(wait, &all);
        assert_eq!(found[..2], ["drying.stated-wait", kind], "{wait:?}");
        assert_eq!(found.contains(&"drying.physical-tests"), wait == Wait::Buff, "{wait:?}");
    }
    let thick =
        Told { class: Some(WorkClass::Satin), film: Some(Micrometres::new(400.0).expect("a film")), ..all };
    assert_eq!(rules(Wait::Buff, &thick)[0], "drying.floor");
}

/// Values of a sheet that must rise: equal is in order where it says so; a window that is not set is in order.
#[test]
fn values_that_must_rise_are_held_to_it() {
    let clash = |changes: &[(Setting, f64)]| {
        let mut sheet: Sheet = base();
        for (setting, value) in changes {
            sheet = sheet.with(*setting, *value).expect("in range");
        }
        clashes(&sheet).iter().map(|clash| (clash.low, clash.high)).collect::<Vec<_>>()
    };
    assert_eq!(clash(&[]), []);
    let wipe = (Setting::FillerWipeFrom, Setting::FillerWipeTo);
    let to = base().get(wipe.1);
    assert_eq!(clash(&[(wipe.0, to)]), [], "equal is allowed");
    assert_eq!(clash(&[(wipe.0, to), (wipe.1, base().get(wipe.0))]), [wipe]);
    let window = (Setting::RecoatCloses, Setting::RecoatOpensAgain);
    assert_eq!(clash(&[(window.0, 8.0), (window.1, 2.0)]), [window]);
    assert_eq!(clash(&[(window.0, 2.0), (window.1, 2.0)]), [window]);
    assert_eq!(clash(&[(window.0, 2.0), (window.1, 8.0)]), []);
    assert_eq!(clash(&[(window.0, 0.0), (window.1, 2.0)]), []);
    assert_eq!(clash(&[(window.0, 8.0), (window.1, 0.0)]), []);
    let coat = (Setting::ClearWait, Setting::RecoatCloses);
    assert_eq!(clash(&[(coat.0, 4.0), (coat.1, 2.0)]), [coat], "no coat would ever come in time");
    assert_eq!(clash(&[(coat.0, 4.0), (coat.1, 0.0)]), []);
}

/// The last wait of 72 h exactly fills the time left: it alone takes no job past the day, the work beside it does.
#[test]
fn a_job_is_late_by_its_last_wait_or_by_the_whole_chain() {
    let sheet = base();
    let outline = JobOutline {
        parts_filled: vec![false],
        stain: None,
        colour_passes: 0,
        shaded: false,
        binding: false,
        clear_coats: 1,
        coat: Micrometres::new(16.0).expect("a film"),
        class: WorkClass::Satin,
        filler: Filler::FastSolvent,
        rubbed: true,
    };
    let time = job_time(&outline, told().air, &sheet).expect("a ticket");
    let whole = time.answer.clone().estimate().expect("inside the model");
    let (last, all) =
        (whole.before_levelling.as_ref().expect("rubbed").hours.get(), whole.schedule.total.get());
    let found = |left: f64| delivery(time.clone(), Hours::new(left).expect("a time")).answer;
    assert_eq!(found(all), Delivery::InTime);
    assert_eq!(found(all - 0.1), Delivery::LateByWholeChain);
    assert_eq!(found(last), Delivery::LateByWholeChain);
    assert_eq!(found(last - 0.1), Delivery::LateByLastWait);

    // Left off the gun it waits for no levelling.
    let off_the_gun =
        job_time(&JobOutline { rubbed: false, ..outline }, told().air, &sheet).expect("a ticket");
    let whole = off_the_gun.answer.clone().estimate().expect("inside the model");
    assert!(whole.before_levelling.is_none() && whole.schedule.total.get() < last);
    let found = |left: f64| delivery(off_the_gun.clone(), Hours::new(left).expect("a time")).answer;
    assert_eq!(found(whole.schedule.total.get()), Delivery::InTime);
    assert_eq!(found(0.1), Delivery::LateByWholeChain);
}

/// At the reference temperature nothing is scaled: no cold lengthens, and warmth is credited only where the sheet says so.
#[test]
fn a_room_names_what_its_warmth_does() {
    let rule = |celsius: f64, credit: f64| {
        let sheet = base().with(Setting::WarmCredit, credit).expect("a switch");
        cold_factor(Celsius::new(celsius).expect("a room"), &sheet).rules[0].0
    };
    let at = base().get(Setting::WaitReference);
    assert_eq!((rule(at, 0.0), rule(at, 1.0)), ("drying.warm-no-credit", "drying.warm-credit"));
    assert_eq!((rule(at + 1.0, 0.0), rule(at + 1.0, 1.0)), ("drying.warm-no-credit", "drying.warm-credit"));
    assert_eq!(
        (rule(at - 1.0, 0.0), rule(at - 1.0, 1.0)),
        ("drying.cold-lengthens", "drying.cold-lengthens")
    );
    assert_eq!(rule(base().get(Setting::WaitModelFrom) - 0.1, 1.0), "drying.outside-model");
}
