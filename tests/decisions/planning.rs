//! A plan of work inside working hours and waits round the clock, worked by hand; the order of mixing; what a job asks for.

use crate::support::job::job;
use crate::support::{base, near};
use stepboard::quantity::Hours;
use stepboard::rules::drying::critical_path::{Link, Plan, WorkingDay};
use stepboard::rules::mixing::{MixStep, PotKind, mix_order, mix_steps};
use stepboard::rules::sequence::job::Job;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{Binding, ColourPlan, Look, Term, WorkClass};

fn h(hours: f64) -> Hours {
    Hours::new(hours).expect("hours in range")
}

/// A day from 8 to 17 o'clock.
fn day() -> WorkingDay {
    let sheet = base().with(Setting::DayFrom, 8.0).and_then(|sheet| sheet.with(Setting::DayTo, 17.0));
    WorkingDay::of(&sheet.expect("a day"))
}

/// Worked by hand: work of an hour begins at 8 at the soonest, at 16 at the latest, and else on the next morning.
#[test]
fn work_that_fits_a_day_is_begun_only_if_it_ends_that_day() {
    let begin = |ready, work| day().begin(ready, h(work));
    near(day().opens().get(), 8.0, 1e-12, "opening");
    for (ready, work, wanted) in [
        (0.0, 1.0, 8.0),
        (8.0, 1.0, 8.0),
        (12.0, 1.0, 12.0),
        (16.0, 1.0, 16.0),
        (16.1, 1.0, 32.0),
        (8.0, 9.0, 8.0),
        (8.1, 9.0, 32.0),
        (17.0, 0.0, 32.0),
        (16.9, 0.0, 16.9),
        (16.9, 10.0, 16.9),
        (17.0, 10.0, 32.0),
        (24.0, 1.0, 32.0),
        (20.0, 1.0, 32.0),
        (36.0, 1.0, 36.0),
    ] {
        near(begin(ready, work), wanted, 1e-9, &format!("{work} h ready at {ready}"));
    }
}

/// Worked by hand: what does not fit into the nine hours of a day goes on the next mornings.
#[test]
fn long_work_goes_on_the_next_mornings() {
    for (start, work, wanted) in [
        (8.0, 1.0, 9.0),
        (8.0, 9.0, 17.0),
        (8.0, 10.0, 33.0),
        (8.0, 18.0, 41.0),
        (8.0, 19.0, 57.0),
        (16.0, 10.0, 41.0),
        (32.0, 10.0, 57.0),
        (34.0, 27.0, 106.0),
    ] {
        near(day().end(start, h(work)), wanted, 1e-9, &format!("{work} h begun at {start}"));
    }
}

/// Worked by hand: an hour of work, a wait of 10 h that ends at 19 and so at 8 the next morning; beside it a wait of 3 h.
/// The longer chain decides; its waits are the 10 h.
#[test]
fn the_longest_chain_decides_the_end_and_names_its_waits() {
    let mut plan = Plan::new();
    let fill = plan.add("fill", h(1.0), &[]);
    let trim = plan.add("trim", h(2.0), &[Link::Wait(fill, h(3.0))]);
    let seal = plan.add("seal", h(0.5), &[Link::Wait(trim, h(0.0)), Link::Wait(fill, h(10.0))]);
    plan.add("scuff", h(0.5), &[Link::NextDay(seal)]);
    let schedule = plan.schedule(day());
    let times: Vec<(f64, f64)> =
        schedule.steps.iter().map(|step| (step.start.get(), step.end.get())).collect();
    assert_eq!(times, [(8.0, 9.0), (12.0, 14.0), (32.0, 32.5), (56.0, 56.5)]);
    assert_eq!(schedule.critical, [0, 2, 3]);
    near(schedule.waiting.get(), 10.0, 1e-12, "waits of the chain");
    near(schedule.total.get(), 48.5, 1e-12, "from the first begin to the last end");
    let none = Plan::<&str>::new().schedule(day());
    assert!(none.steps.is_empty() && none.critical.is_empty());
    near(none.total.get(), 0.0, 1e-12, "nothing to do");
}

/// Of links that are over at once the first decides; where the day has to open first it is still the one that is named.
#[test]
fn a_link_that_is_over_early_still_stands_in_the_chain() {
    let mut plan = Plan::new();
    let sand = plan.add("sand", h(0.0), &[]);
    let wipe = plan.add("wipe", h(0.0), &[]);
    plan.add("stain", h(1.0), &[Link::Wait(sand, h(0.0)), Link::Wait(wipe, h(0.0))]);
    let schedule = plan.schedule(day());
    assert_eq!(schedule.critical, [0, 2]);
    near(schedule.waiting.get(), 0.0, 1e-12, "no waits");
}

/// Published pages on mixing: stir first, hardener before thinner, strain last, spray a card; a bond before anything is
/// poured (29 CFR 1910.106). Every pair of steps side by side in the whole order may not be turned round where it matters.
#[test]
fn steps_of_a_mix_stand_in_their_order() {
    let whole = mix_steps(PotKind::TwoPart);
    assert_eq!(whole, MixStep::ALL);
    let plain = mix_steps(PotKind::OnePart);
    assert!(!plain.contains(&MixStep::AddHardener) && plain.len() + 1 == whole.len());
    assert!(mix_order(&whole).answer && mix_order(&plain).answer && mix_order(&[]).answer);
    let free = [(MixStep::ReadSheet, MixStep::Bond), (MixStep::Bond, MixStep::StirBase)];
    for pair in whole.windows(2).map(|pair| (pair[0], pair[1])) {
        let turned: Vec<MixStep> = whole
            .iter()
            .map(|step| {
                if *step == pair.0 {
                    pair.1
                } else if *step == pair.1 {
                    pair.0
                } else {
                    *step
                }
            })
            .collect();
        assert_eq!(mix_order(&turned).answer, free.contains(&pair), "{pair:?} turned round");
        assert_eq!(mix_order(&[pair.1, pair.0]).answer, free.contains(&pair), "{pair:?} alone, turned round");
        assert!(mix_order(&[pair.0, pair.1]).answer, "{pair:?} alone");
    }
    let hardens = |steps: &[MixStep]| {
        mix_order(steps).rules.iter().any(|rule| rule.0 == "mixing.hardener-before-thinner")
    };
    assert!(hardens(&whole) && !hardens(&plain));
}

/// Which operations a job asks for, and the rule that says so: errors and variants of the published table by their ids.
#[test]
fn a_job_asks_for_what_it_has_and_says_by_which_rule() {
    let sheet = base();
    let found = |job: &Job, operation| {
        let ruling = route::need(job, &sheet, operation);
        (ruling.answer, ruling.rules[0].0)
    };
    for operation in [Operation::Fill, Operation::WipeFiller, Operation::SandFiller] {
        assert_eq!(found(&job(&["mahogany"]), operation), (true, "se-34"));
        assert_eq!(found(&job(&["hard-maple"]), operation), (false, "sv-10"));
    }
    assert_eq!(found(&job(&["mahogany"]), Operation::Washcoat), (false, "shop.washcoat"));
    let bound = Job { binding: Binding::Plastic, ..job(&["hard-maple"]) };
    let coloured = Job { colour: ColourPlan::Transparent, ..bound.clone() };
    assert_eq!(found(&bound, Operation::Trim), (true, "se-03"));
    assert_eq!(found(&job(&["hard-maple"]), Operation::Trim), (false, "sv-18"));
    assert_eq!(found(&coloured, Operation::Scrape), (true, "se-04"));
    assert_eq!(found(&bound, Operation::Scrape), (false, "sv-18"));
    assert_eq!(found(&coloured, Operation::Protect), (true, "shop.protective-clear"));
    assert_eq!(found(&bound, Operation::Protect), (false, "shop.protective-clear"));
    assert_eq!(found(&job(&["hard-maple"]), Operation::Protect), (false, "sv-18"));
    assert_eq!(found(&job(&["indian-rosewood"]), Operation::SolventWipe), (true, "se-35"));
    assert_eq!(found(&job(&["hard-maple"]), Operation::SolventWipe), (false, "se-35"));
    let satin = Job { class: WorkClass::Satin, ..job(&["hard-maple"]) };
    let open = Job { look: Look::OpenPore, ..job(&["hard-maple"]) };
    for operation in [Operation::Level, Operation::Buff] {
        assert_eq!(found(&job(&["hard-maple"]), operation), (true, "order.finish"));
        assert_eq!(found(&satin, operation), (false, "sv-17"));
        assert_eq!(found(&open, operation), (false, "sv-17"));
    }
    let stained = Job { colour: ColourPlan::Stained, ..job(&["hard-maple"]) };
    let solid = Job { colour: ColourPlan::Solid, ..job(&["hard-maple"]) };
    assert_eq!(found(&stained, Operation::Stain), (true, "order.colour"));
    assert_eq!(found(&solid, Operation::Stain), (false, "sv-18"));
    assert_eq!(found(&solid, Operation::Colour), (true, "order.colour"));
    assert_eq!(found(&coloured, Operation::Colour), (true, "order.colour"));
    assert_eq!(found(&stained, Operation::Colour), (false, "sv-18"));
    assert_eq!(found(&job(&["hard-maple"]), Operation::Shade), (false, "sv-18"));
    assert_eq!(
        found(&Job { shaded: true, ..job(&["hard-maple"]) }, Operation::Shade),
        (true, "order.colour")
    );
    assert_eq!(found(&job(&["hard-maple"]), Operation::Inspect), (false, "sv-18"));
    for coloured in [&stained, &solid, &coloured] {
        assert_eq!(found(coloured, Operation::Inspect), (true, "order.colour"));
    }
    for always in [
        Operation::Sand,
        Operation::GlueCheck,
        Operation::Prefit,
        Operation::CleanOff,
        Operation::Seal,
        Operation::Clear,
    ] {
        assert_eq!(found(&job(&["hard-maple"]), always), (true, "order.colour"), "{always:?}");
    }
}

/// A washcoat before filling is asked for where stain comes first, wood is filled and the sheet lays one.
#[test]
fn a_washcoat_is_asked_for_under_filler_over_stain_where_the_sheet_lays_one() {
    let on = |sheet: &[(Setting, f64)], job: &Job| {
        let mut held = base();
        for (setting, value) in sheet {
            held = held.with(*setting, *value).expect("a switch");
        }
        route::asks_for(job, &held, Operation::Washcoat)
    };
    let stained = Job { colour: ColourPlan::Stained, ..job(&["mahogany"]) };
    let both = [(Setting::WashcoatBeforeFill, 1.0), (Setting::StainFirst, 1.0)];
    assert!(on(&both, &stained));
    assert!(!on(&both, &job(&["mahogany"])), "no stain");
    assert!(!on(&both, &Job { colour: ColourPlan::Stained, ..job(&["hard-maple"]) }), "no filler");
    assert!(!on(&[(Setting::WashcoatBeforeFill, 0.0), (Setting::StainFirst, 1.0)], &stained));
    assert!(!on(&[(Setting::WashcoatBeforeFill, 1.0), (Setting::StainFirst, 0.0)], &stained));
}
