//! Random jobs and plans, for the laws of the order checker and of the run.

use super::any::term;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use stepboard::quantity::{Celsius, Hours, MoistureContent, RelativeHumidity};
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::plan::{Climate, Detail, Plan, Step, Told};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Sheet;
use stepboard::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};

pub(crate) fn told<T: Clone + std::fmt::Debug + 'static>(
    value: impl Strategy<Value = T> + 'static,
) -> impl Strategy<Value = Told<T>> {
    prop_oneof![3 => Just(Told::Kept), 3 => value.prop_map(Told::Is), 1 => Just(Told::Untold)]
}

pub(crate) fn hours() -> impl Strategy<Value = Hours> {
    prop_oneof![0.0..2.0, 0.0..60.0, 0.0..500.0].prop_map(|hours| Hours::new(hours).expect("in range"))
}

pub(crate) fn climate() -> impl Strategy<Value = Climate> {
    let celsius = || (0.0..35.0).prop_map(|c| Celsius::new(c).expect("in range"));
    let humidity = (10.0..100.0).prop_map(|rh| RelativeHumidity::new(rh).expect("in range"));
    (celsius(), celsius(), humidity).prop_map(|(air, work, humidity)| Climate { air, work, humidity })
}

pub(crate) fn step() -> impl Strategy<Value = Step> {
    let manners = || proptest::collection::vec(term::<Manner>(), 0..4);
    let part = prop_oneof![4 => Just(None), 1 => (0_usize..4).prop_map(Some)];
    (
        (term::<Operation>(), part, told(hours()), told(0_u32..9)),
        (told(hours()), told(60_u32..3000), told(climate()), told(hours())),
        (manners(), manners()),
    )
        .prop_map(
            |((operation, part, after, coats), (between, grit, climate, mix_age), (manners, unknown))| Step {
                operation,
                part,
                after,
                coats,
                between,
                grit,
                climate,
                mix_age,
                manners,
                unknown,
            },
        )
}

pub(crate) fn plan() -> impl Strategy<Value = Plan> {
    let detail = prop_oneof![Just(Detail::Every), Just(Detail::Main), Just(Detail::Some)];
    (proptest::collection::vec(step(), 0..16), detail).prop_map(|(steps, detail)| Plan { steps, detail })
}

pub(crate) fn job(parts: Vec<Part>) -> impl Strategy<Value = Job> {
    let moisture = told((0.0..20.0).prop_map(|mc| MoistureContent::new(mc).expect("in range")));
    let part =
        (proptest::sample::select(parts), moisture).prop_map(|(part, moisture)| Part { moisture, ..part });
    (
        proptest::collection::vec(part, 0..4),
        (term::<Look>(), term::<WorkClass>(), term::<ColourPlan>(), any::<bool>()),
        (term::<Binding>(), term::<Filler>(), term::<Coating>(), any::<bool>()),
    )
        .prop_map(|(parts, (look, class, colour, shaded), (binding, filler, coating, melts))| Job {
            parts,
            look,
            class,
            colour,
            shaded,
            binding,
            filler,
            coating,
            melts,
        })
}


/// A step of which everything is told.
pub(crate) fn told_step() -> impl Strategy<Value = Step> {
    let kept = |climate: Option<Climate>| climate.map_or(Told::Kept, Told::Is);
    (
        (term::<Operation>(), prop_oneof![4 => Just(None), 1 => (0_usize..4).prop_map(Some)]),
        (hours(), 1_u32..9, hours()),
        (
            proptest::option::of(60_u32..3000),
            proptest::option::weighted(0.3, climate()),
            proptest::option::weighted(0.3, hours()),
        ),
        proptest::collection::vec(term::<Manner>(), 0..5),
    )
        .prop_map(
            move |((operation, part), (after, coats, between), (grit, climate, mix_age), manners)| Step {
                operation,
                part,
                after: Told::Is(after),
                coats: Told::Is(coats),
                between: Told::Is(between),
                grit: grit.map_or(Told::Kept, Told::Is),
                climate: kept(climate),
                mix_age: mix_age.map_or(Told::Kept, Told::Is),
                manners,
                unknown: Vec::new(),
            },
        )
}

/// A change of a plan.
#[derive(Debug, Clone)]
pub(crate) enum Edit {
    Insert(usize, Step),
    Remove(usize),
    Swap(usize, usize),
    Wait(usize, Hours),
    Coats(usize, u32, Hours),
    How(usize, Manner),
}

fn edit() -> impl Strategy<Value = Edit> {
    let place = || 0_usize..24;
    prop_oneof![
        (place(), told_step()).prop_map(|(at, step)| Edit::Insert(at, step)),
        place().prop_map(Edit::Remove),
        (place(), place()).prop_map(|(a, b)| Edit::Swap(a, b)),
        (place(), hours()).prop_map(|(at, hours)| Edit::Wait(at, hours)),
        (place(), 1_u32..9, hours()).prop_map(|(at, coats, between)| Edit::Coats(at, coats, between)),
        (place(), term::<Manner>()).prop_map(|(at, manner)| Edit::How(at, manner)),
    ]
}

/// The route of a job with long waits and counted coats, edited a few times.
pub(crate) fn edited(job: &Job, sheet: &Sheet, edits: &[Edit]) -> Plan {
    let mut plan = route::plan(job, sheet);
    for step in &mut plan.steps {
        let wiping = step.operation == Operation::WipeFiller;
        step.after = Told::Is(Hours::saturating(if wiping { 0.12 } else { 800.0 }));
        step.coats = Told::Is(if step.operation == Operation::Clear { 9 } else { 1 });
        step.between = Told::Is(Hours::saturating(40.0));
    }
    for edit in edits {
        let len = plan.steps.len();
        match edit {
            Edit::Insert(at, step) => plan.steps.insert(at % (len + 1), step.clone()),
            _ if len == 0 => {}
            Edit::Remove(at) => {
                plan.steps.remove(at % len);
            }
            Edit::Swap(a, b) => plan.steps.swap(a % len, b % len),
            Edit::Wait(at, hours) => plan.steps[at % len].after = Told::Is(*hours),
            Edit::Coats(at, coats, between) => {
                let step = &mut plan.steps[at % len];
                (step.coats, step.between) = (Told::Is(*coats), Told::Is(*between));
            }
            Edit::How(at, manner) => plan.steps[at % len].manners.push(*manner),
        }
    }
    plan
}

/// A job, a plan for it of which everything is told, a sheet: wild plans and plans a few edits from right.
pub(crate) fn told_work(sheets: Vec<Sheet>, parts: Vec<Part>) -> impl Strategy<Value = (Job, Plan, Sheet)> {
    let wild = proptest::collection::vec(told_step(), 0..14);
    let edits = proptest::collection::vec(edit(), 0..5);
    let moisture = proptest::bool::weighted(0.8);
    (job(parts), proptest::sample::select(sheets), wild, edits, (proptest::bool::weighted(0.8), moisture)).prop_map(
        |(mut job, sheet, steps, edits, (near, dry))| {
            if dry {
                job.parts.iter_mut().for_each(|part| part.moisture = Told::Kept);
            }
            for part in &mut job.parts {
                if part.moisture == Told::Untold {
                    part.moisture = Told::Kept;
                }
            }
            let plan = if near {
                job.melts = Job::melting(job.coating);
                edited(&job, &sheet, &edits)
            } else {
                Plan { steps, detail: Detail::Every }
            };
            (job, plan, sheet)
        },
    )
}

/// Holds a law over many values, the same ones each time.
pub(crate) fn hold<S: Strategy>(cases: u32, strategy: &S, law: impl Fn(S::Value)) {
    let config = Config { cases, failure_persistence: None, max_shrink_iters: 4000, ..Config::default() };
    let mut runner = TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let held = runner.run(strategy, |value| {
        law(value);
        Ok(())
    });
    held.expect("the law holds");
}
