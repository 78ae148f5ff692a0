//! Duties beside the order of work: both sides of every bound. Rags: 29 CFR 1910.107(g)(3), "immediately after use"; the
//! half hour, and all other duties: common practice, no source.

use crate::work::{Work, coloured, h, job};
use stepboard::rules::sequence::duty::{Due, Duty, duties};
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::sequence::plan::{Detail, Step, Told};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{ColourPlan, Filler};

fn all(work: &Work) -> Vec<Due> {
    duties(&work.job, &work.plan, &work.sheet).0
}

fn of(work: &Work, duty: Duty) -> Vec<(Op, Option<bool>)> {
    let due = all(work).into_iter().filter(|due| due.duty == duty);
    due.map(|due| (work.plan.steps[due.step].operation, due.done)).collect()
}

fn filled(filler: Filler) -> Work {
    Work::of(job(&["mahogany"])).with_job(|job| job.filler = filler)
}

#[test]
fn only_oil_leaves_rags_that_must_go_away() {
    assert_eq!(of(&filled(Filler::OilPaste), Duty::Rags), [(Op::WipeFiller, Some(false))]);
    for filler in [Filler::FastSolvent, Filler::WaterBorne, Filler::TwoPart] {
        assert_eq!(of(&filled(filler), Duty::Rags), [], "{filler:?}");
    }
    let away = || Step::of(Op::RagsAway).after(h(0.0));
    assert_eq!(
        of(&filled(Filler::OilPaste).then(Op::WipeFiller, away()), Duty::Rags),
        [(Op::WipeFiller, Some(true))]
    );
    // After the sealer it is too late, and before the oil it is too early.
    assert_eq!(
        of(&filled(Filler::OilPaste).then(Op::Seal, away()), Duty::Rags),
        [(Op::WipeFiller, Some(false))]
    );
    assert_eq!(
        of(&filled(Filler::OilPaste).before(Op::Fill, away()), Duty::Rags),
        [(Op::WipeFiller, Some(false))]
    );
    let stained = Work::of(coloured(&["hard-maple"], ColourPlan::Stained));
    assert_eq!(of(&stained, Duty::Rags), []);
    let oil = stained.with(Op::Stain, |stain| stain.how(Manner::OilStain));
    assert_eq!(of(&oil, Duty::Rags), [(Op::Stain, Some(false))]);
    assert_eq!(of(&oil.clone().then(Op::Stain, away()), Duty::Rags), [(Op::Stain, Some(true))]);
    let varnished = Work::of(job(&["hard-maple"])).with(Op::Clear, |clear| clear.how(Manner::OilCured));
    assert_eq!(of(&varnished, Duty::Rags), [(Op::Clear, Some(false))]);
    assert_eq!(of(&varnished.then(Op::Clear, away()), Duty::Rags), [(Op::Clear, Some(true))]);
}

#[test]
fn each_oily_step_has_its_own_disposal_and_time_counts_from_the_last_rag() {
    let both = || {
        let oil = Work::of(coloured(&["mahogany"], ColourPlan::Stained));
        oil.with(Op::Stain, |stain| stain.how(Manner::OilStain)).with_job(|job| job.filler = Filler::OilPaste)
    };
    let away = |hours: f64| Step::of(Op::RagsAway).after(h(hours));
    assert_eq!(of(&both(), Duty::Rags), [(Op::Stain, Some(false)), (Op::WipeFiller, Some(false))]);
    let once = both().then(Op::WipeFiller, away(0.0));
    assert_eq!(of(&once, Duty::Rags), [(Op::Stain, Some(false)), (Op::WipeFiller, Some(true))]);
    let twice = once.then(Op::Stain, away(0.0));
    assert_eq!(of(&twice, Duty::Rags), [(Op::Stain, Some(true)), (Op::WipeFiller, Some(true))]);
    // The half hour runs from the wiping, not from the laying.
    let slow = |wiped: f64, gone: f64| {
        filled(Filler::OilPaste)
            .with(Op::WipeFiller, |wipe| wipe.after(h(wiped)))
            .then(Op::WipeFiller, away(gone))
    };
    for (wiped, gone, done) in [(2.0, 0.5, true), (0.1, 0.5, true), (0.1, 0.51, false)] {
        assert_eq!(of(&slow(wiped, gone), Duty::Rags), [(Op::WipeFiller, Some(done))], "{wiped} h, {gone} h");
    }
    // Hours at another small step count too.
    let swept = filled(Filler::OilPaste)
        .then(Op::WipeFiller, Step::of(Op::CleanOff).after(h(0.3)))
        .then(Op::CleanOff, Step::of(Op::CleanOff));
    let late = |hours: f64| {
        let mut work = swept.clone();
        let place = work.plan.steps.iter().rposition(|step| step.operation == Op::CleanOff).expect("swept");
        work.plan.steps.insert(place + 1, away(hours));
        work
    };
    assert_eq!(of(&late(0.2), Duty::Rags), [(Op::WipeFiller, Some(true))]);
    assert_eq!(of(&late(0.3), Duty::Rags), [(Op::WipeFiller, Some(false))]);
}

/// Waits that are not told are those of the sheet: rags that lie while a film or filler dries were not put away at once.
#[test]
fn rags_that_lie_through_the_waits_of_the_sheet_are_not_put_away_at_once() {
    let away = || Step::of(Op::RagsAway).after(h(0.0));
    let rags = |work: &Work| of(work, Duty::Rags);
    let varnish = || Work::of(job(&["hard-maple"])).with(Op::Clear, |clear| clear.how(Manner::OilCured));
    for op in [Op::Level, Op::Buff] {
        assert_eq!(rags(&varnish().then(op, away())), [(Op::Clear, Some(false))], "{op:?}");
    }
    let slow =
        [Op::Scuff, Op::Scrape, Op::Inspect, Op::Unmask, Op::Rework, Op::Pack, Op::Polish, Op::FitParts];
    for op in slow {
        let work = varnish().then(Op::Clear, Step::of(op)).then(op, away());
        assert_eq!(rags(&work), [(Op::Clear, Some(false))], "{op:?}");
        let told = varnish().then(Op::Clear, away()).then(Op::Clear, Step::of(op).after(h(0.0)));
        assert_eq!(rags(&told), [(Op::Clear, Some(true))], "{op:?} at once");
    }
    for op in [Op::CleanOff, Op::Mask, Op::PlugHoles] {
        let mut work = varnish();
        let place = work.plan.steps.iter().position(|step| step.operation == Op::Clear).expect("clear") + 1;
        work.plan.steps.splice(place..place, [Step::of(op), away()]);
        assert_eq!(rags(&work), [(Op::Clear, Some(true))], "nothing dries before {op:?}");
    }
    let filler = filled(Filler::OilPaste).then(Op::SandFiller, away());
    assert_eq!(rags(&filler), [(Op::WipeFiller, Some(false))]);
    let stained = Work::of(coloured(&["hard-maple"], ColourPlan::Stained))
        .with(Op::Stain, |stain| stain.how(Manner::OilStain))
        .then(Op::Stain, Step::of(Op::SandBack));
    assert_eq!(rags(&stained.clone().then(Op::Stain, away())), [(Op::Stain, Some(true))]);
    assert_eq!(rags(&stained.then(Op::SandBack, away())), [(Op::Stain, Some(false))]);
}

/// The rags of the first coat lie while the next ones follow.
#[test]
fn rags_lie_from_coat_to_coat() {
    let coats = |change: fn(Step) -> Step| {
        let work =
            Work::of(job(&["hard-maple"])).with(Op::Clear, |clear| change(clear.how(Manner::OilCured)));
        let work = work.then(Op::Clear, Step::of(Op::RagsAway).after(h(0.0)));
        let (due, missing) = duties(&work.job, &work.plan, &work.sheet);
        let rags: Vec<_> = due.iter().filter(|due| due.duty == Duty::Rags).map(|due| due.done).collect();
        assert_eq!(rags.len(), 1);
        (rags[0], missing)
    };
    assert_eq!(coats(|clear| clear.coats(5).between(h(24.0))), (Some(false), vec![]));
    assert_eq!(coats(|clear| clear.coats(2).between(h(0.5))).0, Some(true));
    assert_eq!(coats(|clear| clear.coats(2).between(h(0.51))).0, Some(false));
    assert_eq!(coats(|clear| clear.coats(3).between(h(0.26))).0, Some(false));
    assert_eq!(coats(|clear| clear.coats(2)).0, Some(false), "the sheet's wait lies between");
    assert_eq!(coats(|clear| clear.between(h(24.0))).0, Some(false), "two coats at least");
    assert_eq!(coats(|clear| clear.coats(1).between(h(24.0))).0, Some(true));
    assert_eq!(coats(|clear| clear).0, Some(true));
    let uncounted = coats(|clear| Step { coats: Told::Untold, ..clear });
    assert_eq!(uncounted, (None, vec!["clear_coats".to_owned()]));
    let unsure = coats(|clear| Step { between: Told::Untold, ..clear.coats(2) });
    assert_eq!(unsure, (None, vec!["wait".to_owned()]));
}

/// A later oily step does not set the clock of the earlier rags back.
#[test]
fn a_later_oily_step_pays_nothing_for_the_rags_before_it() {
    let three = |hours: f64| {
        let mut work = Work::of(job(&["hard-maple"]));
        let place = work.plan.steps.iter().position(|step| step.operation == Op::Clear).expect("clear");
        let coat = || Step::of(Op::Clear).how(Manner::OilCured).coats(1).after(h(hours));
        let away = Step::of(Op::RagsAway).after(h(0.0));
        work.plan.steps.splice(place..=place, [coat(), coat(), coat(), away]);
        of(&work, Duty::Rags).into_iter().map(|(_, done)| done).collect::<Vec<_>>()
    };
    assert_eq!(three(24.0), [Some(false), Some(false), Some(true)]);
    assert_eq!(three(0.3), [Some(false), Some(true), Some(true)]);
    assert_eq!(three(0.2), [Some(true), Some(true), Some(true)]);
    let untold_waits = |part: Option<usize>| {
        let mut work = Work::of(job(&["hard-maple", "hard-maple"]));
        let place = work.plan.steps.iter().position(|step| step.operation == Op::Clear).expect("clear");
        let coat = |part| Step { part, ..Step::of(Op::Clear).how(Manner::OilCured) };
        let away = Step::of(Op::RagsAway).after(h(0.0));
        work.plan.steps.splice(place..=place, [coat(Some(0)), coat(part), away]);
        of(&work, Duty::Rags).into_iter().map(|(_, done)| done).collect::<Vec<_>>()
    };
    assert_eq!(untold_waits(Some(0)), [Some(false), Some(true)]);
    assert_eq!(untold_waits(None), [Some(false), Some(true)]);
    assert_eq!(untold_waits(Some(1))[1], Some(true));
    // Filler on several parts, wiped one after the other: minutes each.
    let body = Work::of(job(&["mahogany", "mahogany", "mahogany"]));
    let last = body.plan.steps.iter().rposition(|step| step.operation == Op::WipeFiller).expect("wiped");
    let mut wiped = body;
    wiped.plan.steps.insert(last + 1, Step::of(Op::RagsAway).after(h(0.0)));
    assert_eq!(of(&wiped, Duty::Rags), [(Op::WipeFiller, Some(true)); 3]);
    // What is late stays late, whatever else is not told.
    let late = filled(Filler::OilPaste)
        .then(Op::WipeFiller, Step { after: Told::Untold, ..Step::of(Op::RagsAway) })
        .then(Op::WipeFiller, Step::of(Op::CleanOff).after(h(3.0)));
    let (due, missing) = duties(&late.job, &late.plan, &late.sheet);
    assert_eq!((due[0].done, missing), (Some(false), vec![]));
}

#[test]
fn rags_that_a_short_schedule_does_not_list_are_to_be_seen_to() {
    for detail in [Detail::Main, Detail::Some] {
        let mut work = filled(Filler::OilPaste);
        work.plan.detail = detail;
        assert_eq!(of(&work, Duty::Rags), [(Op::WipeFiller, None)], "{detail:?}");
        // Once one is listed, such steps are listed.
        let late = work.at_end(Step::of(Op::RagsAway));
        assert_eq!(of(&late, Duty::Rags), [(Op::WipeFiller, Some(false))], "{detail:?}");
    }
}

#[test]
fn what_is_not_told_of_rags_is_missing() {
    let untold =
        filled(Filler::OilPaste).then(Op::WipeFiller, Step { after: Told::Untold, ..Step::of(Op::RagsAway) });
    assert_eq!(duties(&untold.job, &untold.plan, &untold.sheet).1, ["wait"]);
    let stain = Work::of(coloured(&["hard-maple"], ColourPlan::Stained));
    let unsure = stain.with(Op::Stain, |stain| stain.unknown(Manner::OilStain));
    assert_eq!(duties(&unsure.job, &unsure.plan, &unsure.sheet).1, ["oil-stain"]);
}

#[test]
fn figured_wood_wants_a_sample_and_the_method_decides_the_washcoat() {
    let dyed = |figured: bool, wood: &str, manners: &[Manner]| {
        let work = Work::of(coloured(&[wood], ColourPlan::Stained));
        let work = work.with_job(|job| job.parts[0].figured = figured);
        work.with(Op::Stain, |mut stain| {
            stain.manners = manners.to_vec();
            stain
        })
    };
    use Manner::{Sample, SprayedOn, WipedOn};
    let sample = |work: &Work| of(work, Duty::Sample);
    let washcoat = |work: &Work| of(work, Duty::Washcoat);
    assert_eq!(sample(&dyed(true, "hard-maple", &[SprayedOn])), [(Op::Stain, Some(false))]);
    assert_eq!(sample(&dyed(true, "hard-maple", &[SprayedOn, Sample])), [(Op::Stain, Some(true))]);
    assert_eq!(sample(&dyed(false, "hard-maple", &[SprayedOn])), []);
    assert_eq!(washcoat(&dyed(true, "hard-maple", &[SprayedOn])), []);
    assert_eq!(washcoat(&dyed(true, "hard-maple", &[WipedOn])), [(Op::Stain, Some(false))]);
    assert_eq!(washcoat(&dyed(true, "hard-maple", &[WipedOn, Sample])), [(Op::Stain, Some(true))]);
    let under = dyed(true, "hard-maple", &[WipedOn]).before(Op::Stain, Step::of(Op::Washcoat));
    assert_eq!(washcoat(&under), [(Op::Stain, Some(true))]);
    // A wood that blotches is uneven without figure, a figured one that does not blotch is too, a plain one is neither.
    assert_eq!(washcoat(&dyed(false, "hard-maple", &[WipedOn])), [(Op::Stain, Some(false))]);
    assert_eq!(washcoat(&dyed(true, "white-ash", &[WipedOn])), [(Op::Stain, Some(false))]);
    assert_eq!(washcoat(&dyed(false, "white-ash", &[WipedOn])), []);
    // Over a coat it is another error: the colour does not reach the wood.
    let sealed = dyed(true, "hard-maple", &[WipedOn]).before(Op::Stain, Step::of(Op::Seal));
    assert_eq!(washcoat(&sealed), []);
    let missing = |work: &Work| duties(&work.job, &work.plan, &work.sheet).1;
    assert_eq!(missing(&dyed(true, "hard-maple", &[])), ["method"]);
    assert!(missing(&dyed(true, "hard-maple", &[Sample])).is_empty());
    assert!(missing(&dyed(true, "hard-maple", &[]).before(Op::Stain, Step::of(Op::Washcoat))).is_empty());
    assert!(missing(&dyed(false, "hard-maple", &[])).is_empty());
}

#[test]
fn an_unlike_coat_wants_a_hard_scuffed_and_isolated_film() {
    let touched = |hours: f64, scuffed: bool, isolated: bool| {
        let mut work = Work::of(job(&["hard-maple"]));
        let place = work.plan.steps.iter().position(|step| step.operation == Op::Clear).expect("clear") + 1;
        let mut steps =
            vec![Step::of(Op::Clear).how(Manner::UnlikeFilm).after(h(if isolated { 0.0 } else { hours }))];
        if isolated {
            steps.insert(0, Step::of(Op::Clear).how(Manner::Barrier).after(h(hours)));
        }
        if scuffed {
            steps.insert(0, Step::of(Op::Scuff).after(h(0.0)));
        }
        work.plan.steps.splice(place..place, steps);
        of(&work.setting(Setting::RunWait, 24.0), Duty::Isolate)
    };
    assert_eq!(touched(24.0, true, true), [(Op::Clear, Some(true))]);
    assert_eq!(touched(23.9, true, true), [(Op::Clear, Some(false))]);
    assert_eq!(touched(24.0, false, true), [(Op::Clear, Some(false))]);
    assert_eq!(touched(24.0, true, false), [(Op::Clear, Some(false))]);
    let first = Work::of(job(&["hard-maple"])).with(Op::Seal, |seal| seal.how(Manner::UnlikeFilm));
    assert_eq!(of(&first, Duty::Isolate), [], "nothing lies under the first coat");
}

#[test]
fn a_failed_test_stands_above_the_calendar() {
    for op in [Op::Level, Op::Buff] {
        let soft =
            Work::of(job(&["hard-maple"])).with(op, |cut| cut.after(h(5_000.0)).how(Manner::DryTestFailed));
        assert_eq!(of(&soft, Duty::DryTests), [(op, Some(false))]);
    }
    assert_eq!(of(&Work::of(job(&["hard-maple"])), Duty::DryTests), []);
}
