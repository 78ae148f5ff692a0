//! Laws of drying over many random inputs: nothing panics, waits move only one way, plans are never too short.

mod support;

use proptest::prelude::*;
use stepboard::quantity::{Biot, Celsius, Fourier, Hours, Micrometres};
use stepboard::rules::drying::by_the_clock::coats_today;
use stepboard::rules::drying::critical_path::{Link, OpId, Plan, WorkingDay};
use stepboard::rules::drying::job::{JobOutline, job_time};
use stepboard::rules::drying::recoat::{RecoatVerdict, window};
use stepboard::rules::drying::release;
use stepboard::rules::drying::waits::{StainKind, Told, Wait, earliest};
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::rules::term::{Filler, Term, WorkClass};
use support::any::{laws, sheet, term};

fn celsius(from: f64, to: f64) -> impl Strategy<Value = Celsius> {
    (from..=to).prop_map(|value| Celsius::new(value).expect("in range"))
}

fn um() -> impl Strategy<Value = Micrometres> {
    (0.0..=500.0).prop_map(|value| Micrometres::new(value).expect("in range"))
}

fn told() -> impl Strategy<Value = Told> {
    (term(), term(), term(), celsius(-10.0, 50.0), um()).prop_map(|(class, filler, stain, air, film)| Told {
        class: Some(class),
        filler: Some(filler),
        stain: Some(stain),
        air: Some(air),
        film: Some(film),
    })
}

fn hours(wait: Wait, told: &Told, sheet: &Sheet) -> Option<f64> {
    earliest(wait, told, sheet).expect("all told").answer.estimate().map(|found| found.hours.get())
}

/// Tasks: hours each takes, and what each waits for, how long and whether by night too.
type Tasks = Vec<(f64, Vec<(usize, f64, bool)>)>;

fn plan() -> impl Strategy<Value = Tasks> {
    let link = (0..32_usize, 0.0..=100.0, any::<bool>());
    proptest::collection::vec((0.0..=30.0, proptest::collection::vec(link, 0..3)), 1..14)
}

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn colder_never_shortens_and_hotter_never_lengthens(
        wait in term::<Wait>(), told in told(), sheet in sheet(), other in celsius(-10.0, 50.0),
    ) {
        let here = hours(wait, &told, &sheet);
        let there = hours(wait, &Told { air: Some(other), ..told }, &sheet);
        if let (Some(here), Some(there), Some(air)) = (here, there, told.air) {
            let (warmer, colder) = if other > air { (there, here) } else { (here, there) };
            prop_assert!(warmer <= colder);
        }
    }

    #[test]
    fn more_film_never_shortens(wait in term::<Wait>(), told in told(), sheet in sheet(), other in um()) {
        let here = hours(wait, &told, &sheet);
        let there = hours(wait, &Told { film: Some(other), ..told }, &sheet);
        if let (Some(here), Some(there), Some(film)) = (here, there, told.film) {
            let (more, less) = if other > film { (there, here) } else { (here, there) };
            prop_assert!(more >= less);
        }
    }

    #[test]
    fn no_sheet_undercuts_a_floor(wait in term::<Wait>(), told in told(), sheet in sheet()) {
        for credit in [0.0, 1.0] {
            let sheet = sheet.with(Setting::WarmCredit, credit).expect("a switch");
            let ruling = earliest(wait, &told, &sheet).expect("all told");
            prop_assert!(!ruling.rules.is_empty());
            if let Some(found) = ruling.answer.estimate() {
                let floor = found.floor.get() * if sheet.is_on(Setting::WarmCredit) { found.cold } else { 1.0 };
                prop_assert!(found.hours.get() >= floor.min(Hours::MAX));
                prop_assert!(found.thickness >= 1.0);
            }
        }
    }

    #[test]
    fn a_wait_is_judged_only_when_what_it_goes_by_is_told(wait in term::<Wait>(), told in told(), sheet in sheet()) {
        let untold = Told { air: None, ..told };
        let missing = earliest(wait, &untold, &sheet).expect_err("air decides every wait").missing;
        prop_assert_eq!(missing, vec!["air_c".to_owned()]);
    }

    #[test]
    fn release_rises_from_nothing_to_all(a in 0.0..=10.0_f64, b in 0.0..=10.0_f64) {
        let share = |value| release::released(Fourier::new(value).expect("in range")).answer.get();
        let (low, high) = (share(a.min(b)), share(a.max(b)));
        prop_assert!(0.0 <= low && high <= 1.0);
        prop_assert!(low <= high + 1e-10);
    }

    #[test]
    fn a_recoat_window_never_goes_back(
        a in 0.0..=400.0_f64, b in 0.0..=400.0_f64, air in celsius(-10.0, 50.0), sheet in sheet(),
    ) {
        let place = |value| -> Option<usize> {
            let verdict = window(Hours::new(value).expect("in range"), air, &sheet).expect("told").answer;
            RecoatVerdict::ALL.iter().position(|one| *one == verdict)
        };
        prop_assert!(place(a.min(b)) <= place(a.max(b)));
    }

    #[test]
    fn a_plan_is_never_shorter_than_any_of_its_chains(operations in plan(), sheet in sheet()) {
        let day = WorkingDay::of(&sheet);
        let mut plan = Plan::new();
        let (mut ids, mut chains): (Vec<OpId>, Vec<f64>) = (Vec::new(), Vec::new());
        for (index, (work, links)) in operations.iter().enumerate() {
            let mut made = Vec::new();
            let mut before = 0.0_f64;
            for (on, wait, next_day) in links {
                let Some(id) = ids.get(on % 32).filter(|_| index > 0) else { continue };
                if *next_day {
                    made.push(Link::NextDay(*id));
                } else {
                    made.push(Link::Wait(*id, Hours::new(*wait).expect("in range")));
                    before = before.max(chains[on % 32] + wait);
                }
            }
            ids.push(plan.add(index, Hours::new(*work).expect("in range"), &made));
            chains.push(before + work);
        }
        let schedule = plan.schedule(day);
        let longest = chains.iter().copied().fold(0.0, f64::max);
        prop_assert!(schedule.total.get() >= longest - 1e-6);
        prop_assert!(schedule.total >= schedule.waiting);
        prop_assert!(!schedule.critical.is_empty());
        for step in &schedule.steps {
            let (start, end) = (step.start.get().rem_euclid(24.0), step.end.get().rem_euclid(24.0));
            let (opens, closes) = (sheet.get(Setting::DayFrom), sheet.get(Setting::DayTo));
            prop_assert!(start >= opens - 1e-6 && start <= closes + 1e-6, "begun at {start}");
            prop_assert!(end >= opens - 1e-6 && end <= closes + 1e-6, "ended at {end}");
        }
    }

    #[test]
    fn a_job_is_never_shorter_than_its_last_wait_and_cold_never_shortens_it(
        parts in proptest::collection::vec(any::<bool>(), 1..4),
        (class, filler, dyed, rubbed) in (term::<WorkClass>(), term::<Filler>(), any::<bool>(), any::<bool>()),
        (passes, coats, shaded, binding) in (0..4_u32, 1..12_u32, any::<bool>(), any::<bool>()),
        (coat, air, sheet) in (um(), celsius(-10.0, 50.0), sheet()),
    ) {
        let outline = JobOutline {
            parts_filled: parts,
            stain: dyed.then_some(StainKind::Dye),
            colour_passes: passes,
            shaded,
            binding,
            clear_coats: coats,
            coat,
            class,
            filler,
            rubbed,
        };
        let found = job_time(&outline, Some(air), &sheet).expect("all told").answer.estimate();
        if let Some(found) = &found {
            prop_assert_eq!(found.before_levelling.is_some(), rubbed);
            prop_assert!(found.before_levelling.as_ref().is_none_or(|wait| found.schedule.total >= wait.hours));
        }
        let warm = job_time(&outline, None, &sheet).expect("all told").answer.estimate();
        if let (Some(cold), Some(warm)) = (found, warm)
            && air < Celsius::new(sheet.get(Setting::WaitReference)).expect("in range")
        {
            prop_assert!(cold.schedule.total >= warm.schedule.total);
        }
    }

    #[test]
    fn coats_a_day_never_pass_the_sheet(clock in 0.0..=23.9_f64, coat in um(), air in celsius(-10.0, 50.0), sheet in sheet()) {
        let clock = Hours::new(clock).expect("in range");
        let found = coats_today(clock, Some(coat), Some(air), &sheet).expect("told").answer.estimate();
        if let Some(found) = found {
            prop_assert!(f64::from(found.coats) <= libm::ceil(sheet.get(Setting::CoatsADay)));
        }
    }
}

/// The sum over roots is longer work: fewer inputs.
#[test]
fn resistance_at_the_surface_never_speeds_release() {
    let mut last = 0.0;
    for step in 0..400_u32 {
        let fo = Fourier::new(f64::from(step) * 0.01).expect("in range");
        for biot in [0.05, 1.0, 20.0, 500.0] {
            let held = release::released_with_resistance(fo, Biot::new(biot).expect("in range")).answer.get();
            assert!(held <= release::released(fo).answer.get() + 1e-9, "Fo {fo:?}, Bi {biot}");
        }
        let now = release::released_with_resistance(fo, Biot::new(20.0).expect("in range")).answer.get();
        assert!(now >= last, "Fo {fo:?}");
        last = now;
    }
}
