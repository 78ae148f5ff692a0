//! Random jobs and plans, for the laws of the order checker and of the run.

use super::any::term;
use proptest::prelude::*;
use stepboard::quantity::{Celsius, Hours, MoistureContent, RelativeHumidity};
use stepboard::rules::sequence::job::{Condition, Job, Part};
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::plan::{Climate, Detail, Plan, Step, Told};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Sheet;
use stepboard::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};
use stepboard::rules::wood::WoodTrouble;

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
    let conditions = proptest::collection::vec(term::<Condition>(), 0..2);
    let part = (proptest::sample::select(parts), moisture, proptest::bool::weighted(0.2), conditions)
        .prop_map(|(mut part, moisture, blotches, conditions)| {
            if blotches {
                part.trouble.push(WoodTrouble::Blotching);
            }
            Part { moisture, conditions, ..part }
        });
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
            water_dye: false,
            shaded,
            binding,
            filler,
            coating,
            melts,
        })
}

/// The remarks that say something about an operation.
fn fitting(operation: Operation) -> &'static [Manner] {
    use Manner as M;
    match operation {
        Operation::Sand => &[M::GritSkipped, M::AcrossGrain, M::DustAcross],
        Operation::CleanOff => &[M::TackCloth, M::HeavyTack],
        Operation::Stain => {
            &[M::Dye, M::WaterDye, M::OilStain, M::Pigment, M::ExcessLeft, M::Glaze, M::Sample]
        }
        Operation::SandBack => &[M::Evenly],
        Operation::Fill => &[
            M::Coloured,
            M::ColoursFlats,
            M::TakesStain,
            M::SameWipe,
            M::Sample,
            M::KeptApart,
            M::Compatible,
        ],
        Operation::WipeFiller => &[M::BallTest],
        Operation::Washcoat => &[M::Heavy],
        Operation::Seal => &[M::Thin, M::Mist, M::Heavy, M::Stearated, M::Barrier, M::BuildsFill],
        Operation::Colour => &[M::SelfSealing, M::Thin, M::Sample, M::Heavy, M::Mist],
        Operation::Shade => &[M::WeakBurst, M::Sample, M::Thin, M::Heavy],
        Operation::Protect | Operation::Clear => &[
            M::Mist,
            M::Heavy,
            M::Retarder,
            M::BuildsFill,
            M::OilCured,
            M::CleanLastCoat,
            M::ScuffedBetween,
            M::Boosted,
        ],
        Operation::Scuff => &[M::Light, M::NibsOnly],
        Operation::Mask => &[M::OverBarePart],
        Operation::Unmask => &[M::Scored, M::PastRunning],
        Operation::Scrape => &[M::TrimSealed],
        Operation::Level => &[M::Powder, M::WithWater, M::ThroughCoat, M::GritSkipped, M::NibsOnly],
        Operation::Buff => &[M::SharedWheel],
        Operation::FitParts => &[M::Guarded],
        _ => &[],
    }
}

/// Those of the fitting remarks that a number picks.
fn some_fitting(operation: Operation, pick: u16) -> Vec<Manner> {
    let all = fitting(operation).iter().enumerate();
    all.filter(|(bit, _)| pick >> bit & 1 == 1).map(|(_, manner)| *manner).collect()
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
        (proptest::collection::vec(term::<Manner>(), 0..2), any::<u16>()),
    )
        .prop_map(
            move |((operation, part), (after, coats, between), (grit, climate, mix_age), (odd, pick))| Step {
                operation,
                part,
                after: Told::Is(after),
                coats: Told::Is(coats),
                between: Told::Is(between),
                grit: grit.map_or(Told::Kept, Told::Is),
                climate: kept(climate),
                mix_age: mix_age.map_or(Told::Kept, Told::Is),
                manners: odd.into_iter().chain(some_fitting(operation, pick)).collect(),
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
    How(usize, u16),
    Way(usize, u16),
}

/// Other ways of working that [`take`] knows.
const WAYS: usize = 6;

/// Another way of working, as the published variants go it: after the first of an operation, further steps.
fn take(plan: &mut Plan, way: usize, pick: u16) {
    use Operation as O;
    let place = |plan: &Plan, operation| plan.steps.iter().position(|step| step.operation == operation);
    let (after, then): (O, &[O]) = match way {
        0 => (O::SandFiller, &[O::Stain]),
        1 => (O::Stain, &[O::SandBack, O::Stain]),
        2 => (O::SandFiller, &[O::Fill, O::WipeFiller]),
        3 => (O::CleanOff, &[O::Seal, O::Scuff]),
        4 => (O::Clear, &[O::Level, O::Clear]),
        _ => (O::Clear, &[O::Level, O::Buff]),
    };
    if way == 0
        && let Some(stain) = place(plan, O::Stain)
    {
        plan.steps.remove(stain);
    }
    let Some(at) = place(plan, after) else { return };
    for (n, operation) in then.iter().enumerate() {
        let early = *operation == O::Level && way != 4;
        let hours = if early {
            120.0
        } else if *operation == O::WipeFiller {
            0.12
        } else {
            800.0
        };
        let mut step =
            Step::of(*operation).after(Hours::saturating(hours)).coats(1).between(Hours::saturating(0.0));
        step.part = plan.steps[at].part;
        step.manners = some_fitting(*operation, pick);
        plan.steps.insert(at + 1 + n, step);
    }
}

fn edit() -> impl Strategy<Value = Edit> {
    let place = || 0_usize..24;
    prop_oneof![
        2 => (place(), told_step()).prop_map(|(at, step)| Edit::Insert(at, step)),
        2 => place().prop_map(Edit::Remove),
        1 => (place(), place()).prop_map(|(a, b)| Edit::Swap(a, b)),
        1 => (place(), hours()).prop_map(|(at, hours)| Edit::Wait(at, hours)),
        1 => (place(), 1_u32..9, hours()).prop_map(|(at, coats, between)| Edit::Coats(at, coats, between)),
        3 => (place(), any::<u16>()).prop_map(|(at, pick)| Edit::How(at, pick)),
        3 => (0..WAYS, any::<u16>()).prop_map(|(way, pick)| Edit::Way(way, pick)),
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
            Edit::Way(way, pick) => take(&mut plan, *way, *pick),
            Edit::How(at, pick) => {
                let step = &mut plan.steps[at % len];
                step.manners.extend(some_fitting(step.operation, *pick));
            }
        }
    }
    plan
}

/// A job, a plan for it of which everything is told, a sheet: wild plans and plans a few edits from right.
pub(crate) fn told_work(
    sheets: impl Strategy<Value = Sheet>,
    parts: Vec<Part>,
) -> impl Strategy<Value = (Job, Plan, Sheet)> {
    let wild = proptest::collection::vec(told_step(), 0..14);
    let edits = proptest::collection::vec(edit(), 0..6);
    let moisture = proptest::bool::weighted(0.8);
    (job(parts), sheets, wild, edits, (proptest::bool::weighted(0.8), moisture)).prop_map(
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
