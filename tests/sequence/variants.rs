//! Every legitimate variant (`tests/data/sequence-errors.csv`, rows sv-01 to sv-25): accepted by its condition, and
//! reported as the error it would be without it.

use crate::support::table::table;
use crate::work::{Work, coloured, found, h, job, water};
use stepboard::rules::sequence::job::Job;
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::sequence::plan::Step;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{Binding, ColourPlan, Look, Term, WorkClass};
use stepboard::rules::wood::{PoreSize, WoodTrouble};

/// A variant, the error that it excuses, the work with its condition and without.
struct Case {
    id: &'static str,
    error: &'static str,
    with: Work,
    without: Work,
}

fn case(id: &'static str, error: &'static str, with: Work, without: Work) -> Case {
    Case { id, error, with, without }
}

const FILLING: [Op; 3] = [Op::Fill, Op::WipeFiller, Op::SandFiller];

fn stained() -> Work {
    Work::of(coloured(&["mahogany"], ColourPlan::Stained))
}

fn natural() -> Work {
    Work::of(job(&["hard-maple"]))
}

fn bound(colour: ColourPlan, binding: Binding) -> Job {
    Job { binding, ..coloured(&["hard-maple"], colour) }
}

fn wood_and_filler() -> Vec<Case> {
    let tinted = || stained().with(Op::Fill, |fill| fill.how(Manner::Coloured));
    let filled_first = |sample: bool| {
        stained()
            .without(&[Op::Stain, Op::Washcoat])
            .then(
                Op::SandFiller,
                if sample { Step::of(Op::Stain).how(Manner::Sample) } else { Step::of(Op::Stain) },
            )
            .with(Op::Fill, |fill| fill.how(Manner::TakesStain))
    };
    let filler_as_stain = |fill: Step| stained().without(&[Op::Stain, Op::Washcoat]).with(Op::Fill, |_| fill);
    let tint = || Step::of(Op::Fill).how(Manner::Coloured).how(Manner::ColoursFlats).how(Manner::SameWipe);
    let all_but = |left_out: Manner| {
        let mut fill = tint().how(Manner::Sample);
        fill.manners.retain(|manner| *manner != left_out);
        filler_as_stain(fill)
    };
    let unfilled = |woods: &[&str]| Work::of(job(woods)).without(&FILLING);
    let apart = |manners: &[Manner]| {
        let mut fill = Step::of(Op::Fill).how(Manner::Coloured);
        fill.manners.extend(manners);
        stained().without(&[Op::Washcoat]).with(Op::Fill, |_| fill)
    };
    let blotching = |pores| {
        Work::of(coloured(&["hard-maple"], ColourPlan::Stained))
            .with_job(|job| {
                job.parts[0].trouble.push(WoodTrouble::Blotching);
                job.parts[0].pores = pores;
            })
            .with(Op::Stain, |stain| stain.how(Manner::Pigment))
    };
    let twice = |hours: f64| {
        let again = [Step::of(Op::Fill).after(h(hours)), Step::of(Op::WipeFiller), Step::of(Op::SandFiller)];
        let mut work = Work::of(job(&["mahogany"])).with(Op::SandFiller, |sand| sand.after(h(0.0)));
        let place =
            work.plan.steps.iter().position(|step| step.operation == Op::SandFiller).expect("filled") + 1;
        work.plan.steps.splice(place..place, again);
        work
    };
    let dyed_again = |sand: Step| stained().then(Op::Stain, sand).then(Op::SandBack, Step::of(Op::Stain));
    let sealed_first = |seal: Step| {
        Work::of(job(&["mahogany"]))
            .before(Op::Fill, seal)
            .before(Op::Fill, Step::of(Op::Scuff))
            .with(Op::Fill, |fill| fill.how(Manner::Compatible))
    };
    vec![
        case("sv-01", "se-07", tinted(), tinted().with(Op::Washcoat, |coat| coat.how(Manner::Heavy))),
        case("sv-01", "se-07", tinted(), tinted().without(&[Op::Washcoat])),
        case("sv-02", "se-06", filled_first(true), filled_first(false)),
        case("sv-02", "se-06", filled_first(true), filled_first(true).without(&[Op::SandFiller])),
        case("sv-03", "order.colour", filler_as_stain(tint().how(Manner::Sample)), filler_as_stain(tint())),
        case("sv-03", "order.colour", filler_as_stain(tint().how(Manner::Sample)), all_but(Manner::Coloured)),
        case(
            "sv-03",
            "order.colour",
            filler_as_stain(tint().how(Manner::Sample)),
            all_but(Manner::ColoursFlats),
        ),
        case("sv-03", "order.colour", filler_as_stain(tint().how(Manner::Sample)), all_but(Manner::SameWipe)),
        case(
            "sv-03",
            "se-07",
            stained().without(&[Op::Washcoat]).with(Op::Fill, |_| tint().how(Manner::Sample)),
            stained().without(&[Op::Washcoat]).with(Op::Fill, |_| Step::of(Op::Fill).how(Manner::Coloured)),
        ),
        case(
            "sv-04",
            "se-34",
            unfilled(&["mahogany"]).with(Op::Clear, |clear| clear.how(Manner::BuildsFill)),
            unfilled(&["mahogany"]),
        ),
        case("sv-10", "se-34", unfilled(&["hard-maple"]), unfilled(&["mahogany"])),
        case(
            "sv-10",
            "se-34",
            unfilled(&["white-ash"]).with_job(|job| job.look = Look::OpenPore),
            unfilled(&["white-ash"]),
        ),
        case("sv-11", "se-33", blotching(PoreSize::Large), blotching(PoreSize::Small)),
        case("sv-13", "se-07", apart(&[Manner::KeptApart, Manner::Sample]), apart(&[Manner::Sample])),
        case("sv-13", "se-07", apart(&[Manner::KeptApart, Manner::Sample]), apart(&[Manner::KeptApart])),
        case("sv-20", "se-09", twice(48.0), twice(8.0)),
        case("sv-20", "se-09", twice(48.0), twice(48.0).without(&[Op::SandFiller])),
        case(
            "sv-22",
            "se-11",
            dyed_again(Step::of(Op::SandBack).how(Manner::Evenly)),
            dyed_again(Step::of(Op::SandBack)),
        ),
        case(
            "sv-25",
            "order.fill",
            sealed_first(Step::of(Op::Seal).how(Manner::Thin)),
            sealed_first(Step::of(Op::Seal)),
        ),
    ]
}

fn colour_and_trim() -> Vec<Case> {
    let burst = |shade: Step| {
        let mut job = job(&["hard-maple"]);
        job.shaded = true;
        Work::of(job).without(&[Op::Seal]).with(Op::Shade, |_| shade)
    };
    let dyed = Step::of(Op::Shade).how(Manner::WeakBurst);
    let seals = || Step::of(Op::Colour).how(Manner::SelfSealing).how(Manner::Thin);
    let unsealed = |colour: Step| {
        Work::of(coloured(&["hard-maple"], ColourPlan::Transparent))
            .without(&[Op::Seal])
            .with(Op::Colour, |_| colour)
    };
    let scraped = |binding| {
        Work::of(bound(ColourPlan::Transparent, binding))
            .without(&[Op::Seal, Op::Protect])
            .with(Op::Colour, |_| seals().how(Manner::Sample))
    };
    let masked = |mask: Step| {
        Work::of(bound(ColourPlan::Solid, Binding::None))
            .before(Op::Colour, mask)
            .at_end(Step::of(Op::Unmask).how(Manner::Scored))
    };
    let pulled = |pull: Step| {
        Work::of(coloured(&["hard-maple"], ColourPlan::Solid))
            .before(Op::Colour, Step::of(Op::Mask))
            .then(Op::Colour, pull.after(h(0.2)))
    };
    let scuffed = |colour| {
        Work::of(coloured(&["hard-maple"], colour)).then(Op::Colour, Step::of(Op::Scuff).how(Manner::Light))
    };
    let protective = || Work::of(bound(ColourPlan::Transparent, Binding::Wood));
    vec![
        case("sv-05", "se-12", burst(dyed.clone().how(Manner::Sample)), burst(dyed)),
        case("sv-06", "se-03", scraped(Binding::Plastic), scraped(Binding::Wood)),
        case(
            "sv-09",
            "se-21",
            masked(Step::of(Op::Mask).how(Manner::OverBarePart)),
            masked(Step::of(Op::Mask)),
        ),
        case(
            "sv-15",
            "se-22",
            pulled(Step::of(Op::Unmask).how(Manner::PastRunning)),
            pulled(Step::of(Op::Unmask)),
        ),
        case("sv-18", "order.colour", natural(), natural().with_job(|job| job.colour = ColourPlan::Stained)),
        case("sv-21", "se-25", scuffed(ColourPlan::Solid), scuffed(ColourPlan::Transparent)),
        case("sv-23", "se-04", protective(), protective().with(Op::Protect, |coat| coat.how(Manner::Heavy))),
        case("sv-23", "se-04", protective(), protective().with(Op::Protect, |coat| coat.coats(3))),
        case(
            "sv-23",
            "se-03",
            protective().without(&[Op::Seal]),
            protective().without(&[Op::Seal, Op::Protect]),
        ),
        case("sv-24", "se-12", unsealed(seals().how(Manner::Sample)), unsealed(seals())),
    ]
}

fn film_and_finish() -> Vec<Case> {
    let self_sealed = |clear: Step| {
        Work::of(coloured(&["hard-maple"], ColourPlan::Stained))
            .with(Op::Stain, |stain| stain.how(Manner::Dye))
            .without(&[Op::Seal])
            .with(Op::Clear, |_| clear)
    };
    // Four coats of 16 µm by the base sheet carry a light levelling of 10 µm.
    let day = |clear: Step| {
        natural().setting(Setting::LevelTakeOff, 10.0).with(Op::Clear, |_| clear.between(h(1.0)))
    };
    let four = || Step::of(Op::Clear).coats(4);
    let recoat =
        |hours: f64| Work::on(job(&["hard-maple"]), water()).with(Op::Clear, |clear| clear.after(h(hours)));
    // Levelled after 100 h, past the floor of 72 h; buffed when the 336 h of the base sheet are over.
    let early = |level: Step| {
        natural().with(Op::Level, |_| level.after(h(100.0))).with(Op::Buff, |buff| buff.after(h(236.0)))
    };
    let fitted = |fit: Step| natural().at_end(fit);
    let left = |clear: Step| {
        natural()
            .with_job(|job| job.class = WorkClass::Satin)
            .without(&[Op::Level, Op::Buff])
            .with(Op::Clear, |_| clear)
    };
    let between = |level: Step| {
        let mut work = natural();
        let place = work.plan.steps.iter().position(|step| step.operation == Op::Clear).expect("clear") + 1;
        work.plan.steps.splice(place..place, [level, Step::of(Op::Clear)]);
        work
    };
    vec![
        case(
            "sv-07",
            "se-13",
            self_sealed(Step::of(Op::Clear).how(Manner::Mist)),
            self_sealed(Step::of(Op::Clear)),
        ),
        case("sv-08", "se-15", day(four()), day(four().how(Manner::Heavy))),
        case("sv-08", "se-15", day(four()), day(Step::of(Op::Clear).coats(8))),
        case("sv-12", "se-23", early(Step::of(Op::Level).how(Manner::Powder)), early(Step::of(Op::Level))),
        case("sv-14", "se-17", recoat(4.0), recoat(100.0)),
        case(
            "sv-16",
            "se-29",
            fitted(Step::of(Op::FitParts).how(Manner::Guarded)),
            fitted(Step::of(Op::FitParts)),
        ),
        case(
            "sv-17",
            "order.finish",
            left(Step::of(Op::Clear).how(Manner::CleanLastCoat)),
            left(Step::of(Op::Clear)),
        ),
        case(
            "sv-17",
            "order.finish",
            left(Step::of(Op::Clear).how(Manner::CleanLastCoat)),
            left(Step::of(Op::Clear).how(Manner::CleanLastCoat))
                .with_job(|job| job.class = WorkClass::InstrumentGloss),
        ),
        case(
            "sv-19",
            "se-23",
            between(Step::of(Op::Level).how(Manner::Powder)),
            between(Step::of(Op::Level)),
        ),
    ]
}

fn cases() -> Vec<Case> {
    [wood_and_filler(), colour_and_trim(), film_and_finish()].into_iter().flatten().collect()
}

#[test]
fn every_variant_is_accepted_by_its_condition_and_not_without() {
    for Case { id, error, with, without } in cases() {
        let checked = with.check();
        assert!(checked.findings.is_empty(), "{id}: {:?}", checked.findings);
        assert!(checked.missing.is_empty(), "{id}: {:?}", checked.missing);
        let excused =
            checked.excused.iter().any(|(variant, of, _)| variant.slug() == id && of.slug() == error);
        assert!(excused, "{id} excuses no {error}: {:?}", checked.excused);
        let checked = without.check();
        assert!(found(&checked).contains(&error), "{id} without its condition: {:?}", checked.findings);
        let finding = checked.findings.iter().find(|finding| finding.error.slug() == error).expect("found");
        assert!(finding.tested.iter().any(|variant| variant.slug() == id), "{id} was not tested");
    }
}

#[test]
fn no_row_of_the_variants_is_without_a_case() {
    let cases = cases();
    let mut variants = 0;
    for row in table("sequence-errors.csv").iter().filter(|row| row["kind"] == "variant") {
        assert!(cases.iter().any(|case| case.id == row["id"]), "{} has no case", row["id"]);
        row.checked("sequence");
        variants += 1;
    }
    assert_eq!(variants, 25, "rows read");
}
