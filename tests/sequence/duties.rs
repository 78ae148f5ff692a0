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
