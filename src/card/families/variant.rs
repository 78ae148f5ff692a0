//! Departures from the usual order: a fault, or a variant that is right under the circumstances told.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::Hours;
use crate::rules::sequence::check::check;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::job::{Job, Part};
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation as Op;
use crate::rules::sequence::plan::{Plan, Step, Told};
use crate::rules::sequence::route;
use crate::rules::sequence::variant::Variant;
use crate::rules::term::{Binding, ColourPlan, Filler, Look, Term, WorkClass};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::rules::wood::{FillerNeed, Wood};
use crate::terms;

pub(super) const ALL: &[&Question] = &[&ORDER_VARIANT];

/// How does this stand? Misconceptions: a variant is always allowed, a departure never is, its condition does not matter.
const ORDER_VARIANT: Question = Question {
    id: "order-variant",
    settle,
    ask: Ask::One { answer: judged, tempt: tempts },
    after: After::is("order-turned-round"),
};

terms! {
    /// A departure from the usual order. Text: `term.<slug>`; its circumstance, kept or not: `term.<slug>-kept`, `-not`.
    Departure {
        /// Coloured filler straight on the stain.
        Tinted = "dep-tinted",
        /// Filler first, then stain.
        FillFirst = "dep-fill-first",
        /// No filler on open grain under a level gloss.
        NoFiller = "dep-no-filler",
        /// Seal, fill, seal.
        SealFirst = "dep-seal-first",
        /// Filled twice.
        Twice = "dep-twice",
        /// Dyed, sanded back, dyed again.
        DyedAgain = "dep-dyed-again",
        /// Colour with no seal coat under it.
        NoSeal = "dep-no-seal",
        /// A mask that stays on through the clear.
        MaskStays = "dep-mask-stays",
        /// Tape pulled from soft colour.
        SoftPull = "dep-soft-pull",
        /// Flattened with more clear to come.
        Flattened = "dep-flattened",
        /// Cuts in the finished work.
        LateCuts = "dep-late-cuts",
        /// Neither levelled nor buffed.
        OffTheGun = "dep-off-the-gun",
    }
}

const KEPT: &str = "-kept";
const NOT_KEPT: &str = "-not";
const NEVER: &str = "never-allowed";
const ALWAYS: &str = "always-allowed";

impl Departure {
    /// The error that it looks like, and the variant that it may be.
    const fn pair(self) -> (OrderError, Variant) {
        match self {
            Self::Tinted => (OrderError::FillerOverRawStain, Variant::StainFillSeal),
            Self::FillFirst => (OrderError::FilledBeforeStain, Variant::FillSandStain),
            Self::NoFiller => (OrderError::PoresUnfilled, Variant::FilledWithFinish),
            Self::SealFirst => (OrderError::Fill, Variant::SealFillSeal),
            Self::Twice => (OrderError::FillerNotDry, Variant::SecondFilling),
            Self::DyedAgain => (OrderError::StainSandedBare, Variant::DyeSandDye),
            Self::NoSeal => (OrderError::ColourUnsealed, Variant::ColourSealedOver),
            Self::MaskStays => (OrderError::MaskLeftOn, Variant::MaskToTheEnd),
            Self::SoftPull => (OrderError::MaskPulledWet, Variant::MaskPulledSoft),
            Self::Flattened => (OrderError::LevelledTooSoon, Variant::FlattenedBetweenCoats),
            Self::LateCuts => (OrderError::FittedAfterFinish, Variant::CutsAfterFinish),
            Self::OffTheGun => (OrderError::Finish, Variant::OffTheGun),
        }
    }

    const fn on_open_grain(self) -> bool {
        matches!(self, Self::Tinted | Self::FillFirst | Self::NoFiller | Self::SealFirst | Self::Twice)
    }

    const fn colour(self) -> ColourPlan {
        match self {
            Self::Tinted | Self::FillFirst | Self::DyedAgain => ColourPlan::Stained,
            Self::NoSeal | Self::SoftPull => ColourPlan::Transparent,
            Self::MaskStays => ColourPlan::Solid,
            _ => ColourPlan::Natural,
        }
    }
}

/// A wood that fits the departure and brings no trouble of its own, and a circumstance of it.
fn settle(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let Ok(departure) = facts.term::<Departure>("departure") else { return };
    let need = if departure.on_open_grain() { FillerNeed::Yes } else { FillerNeed::No };
    let fits = |wood: &&Wood| wood.filler == need && wood.trouble.is_empty();
    let woods: Vec<&Wood> = world.content.woods.iter().filter(fits).collect();
    if let Some(wood) = dice.pick(&woods) {
        facts.set_term("wood", &wood.slug);
    }
    let end = if dice.one_in(2) { KEPT } else { NOT_KEPT };
    facts.set_term("circumstance", &format!("{}{end}", departure.slug()));
}

/// What is told of the circumstance.
#[derive(Clone, Copy, PartialEq)]
enum Circumstance {
    Kept,
    NotKept,
    Untold,
}

impl Circumstance {
    fn of(facts: &Facts) -> Self {
        match facts.maybe_slug("circumstance") {
            Some(slug) if slug.ends_with(KEPT) => Self::Kept,
            Some(_) => Self::NotKept,
            None => Self::Untold,
        }
    }

    /// Adds remarks that hold, do not hold, or are not known.
    fn mark(self, mut step: Step, manners: &[Manner]) -> Step {
        match self {
            Self::Kept => step.manners.extend(manners),
            Self::NotKept => {}
            Self::Untold => step.unknown.extend(manners),
        }
        step
    }
}

fn job(departure: Departure, wood: &Wood, world: &World<'_>, circumstance: Circumstance) -> Job {
    let satin = departure == Departure::OffTheGun && circumstance != Circumstance::NotKept;
    Job {
        parts: vec![Part::of(wood)],
        look: Look::LevelGloss,
        class: if satin { WorkClass::Satin } else { WorkClass::InstrumentGloss },
        colour: departure.colour(),
        water_dye: false,
        shaded: false,
        binding: Binding::None,
        filler: Filler::OilPaste,
        coating: world.sheet.coating(),
        melts: Job::melting(world.sheet.coating()),
    }
}

/// Puts steps in place of the first of an operation.
fn put(steps: &mut Vec<Step>, op: Op, new: impl IntoIterator<Item = Step>) {
    if let Some(place) = steps.iter().position(|step| step.operation == op) {
        steps.splice(place..=place, new);
    }
}

fn plan(departure: Departure, job: &Job, world: &World<'_>, told: Circumstance) -> Plan {
    use Circumstance::{Kept, NotKept, Untold};
    const FILLING: [Op; 3] = [Op::Fill, Op::WipeFiller, Op::SandFiller];
    let mut plan = route::plan(job, world.sheet);
    let steps = &mut plan.steps;
    let mark = |op, manners: &[Manner]| told.mark(Step::of(op), manners);
    match departure {
        Departure::Tinted => {
            steps.retain(|step| step.operation != Op::Washcoat);
            put(
                steps,
                Op::Fill,
                [mark(Op::Fill, &[Manner::KeptApart, Manner::Sample]).how(Manner::Coloured)],
            );
        }
        Departure::FillFirst => {
            steps.retain(|step| ![Op::Stain, Op::Washcoat].contains(&step.operation));
            put(steps, Op::Fill, [mark(Op::Fill, &[Manner::TakesStain])]);
            put(steps, Op::SandFiller, [Step::of(Op::SandFiller), mark(Op::Stain, &[Manner::Sample])]);
        }
        Departure::NoFiller => {
            steps.retain(|step| !FILLING.contains(&step.operation));
            put(steps, Op::Clear, [mark(Op::Clear, &[Manner::BuildsFill])]);
        }
        Departure::SealFirst => {
            let seal = mark(Op::Seal, &[Manner::Thin]);
            let fill = Step::of(Op::Fill).how(Manner::Compatible);
            put(steps, Op::Fill, [seal, Step::of(Op::Scuff), fill]);
        }
        Departure::Twice => {
            let mut again = Step::of(Op::Fill);
            again.after = match told {
                Kept => Told::Kept,
                NotKept => Told::Is(Hours::saturating(0.0)),
                Untold => Told::Untold,
            };
            let mut sand = Step::of(Op::SandFiller);
            sand.after = Told::Is(Hours::saturating(0.0));
            put(
                steps,
                Op::SandFiller,
                [sand.clone(), again, Step::of(Op::WipeFiller), Step::of(Op::SandFiller)],
            );
        }
        Departure::DyedAgain => {
            let sand = mark(Op::SandBack, &[Manner::Evenly]);
            put(steps, Op::Stain, [Step::of(Op::Stain), sand, Step::of(Op::Stain)]);
        }
        Departure::NoSeal => {
            steps.retain(|step| step.operation != Op::Seal);
            let colour = mark(Op::Colour, &[Manner::SelfSealing, Manner::Thin, Manner::Sample]);
            put(steps, Op::Colour, [colour]);
        }
        Departure::MaskStays => {
            let mask = mark(Op::Mask, &[Manner::OverBarePart]);
            put(steps, Op::Colour, [mask, Step::of(Op::Colour)]);
            steps.push(Step::of(Op::Unmask).how(Manner::Scored));
        }
        Departure::SoftPull => {
            let mut pull = mark(Op::Unmask, &[Manner::PastRunning]);
            pull.after = Told::Is(Hours::saturating(0.0));
            put(steps, Op::Colour, [Step::of(Op::Mask), Step::of(Op::Colour), pull]);
        }
        Departure::Flattened => {
            let level = mark(Op::Level, &[Manner::Powder]);
            put(steps, Op::Clear, [Step::of(Op::Clear), level, Step::of(Op::Clear)]);
        }
        Departure::LateCuts => steps.push(mark(Op::FitParts, &[Manner::Guarded])),
        Departure::OffTheGun => {
            steps.retain(|step| ![Op::Level, Op::Buff].contains(&step.operation));
            put(steps, Op::Clear, [mark(Op::Clear, &[Manner::CleanLastCoat])]);
        }
    }
    plan
}

/// The error that is found, or the variant that excuses it.
fn judged(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let departure: Departure = facts.term("departure")?;
    let (wood, told) = (world.wood(facts.slug("wood")?)?, Circumstance::of(facts));
    let job = job(departure, wood, world, told);
    let checked = check(&job, &plan(departure, &job, world, told), world.sheet);
    let (error, variant) = departure.pair();
    if checked.findings.iter().any(|finding| finding.error == error) {
        return Ok(Ruling::by(error.slug(), Answer::term(error.slug())).and(variant.slug()));
    }
    if checked.excused.iter().any(|(one, of, _)| *one == variant && *of == error) {
        return Ok(Ruling::by(variant.slug(), Answer::term(variant.slug())));
    }
    Err(CannotJudge::without("circumstance"))
}

fn tempts(facts: &Facts, _: &World<'_>) -> Vec<Tempt> {
    let Ok(departure) = facts.term::<Departure>("departure") else { return Vec::new() };
    let (error, variant) = departure.pair();
    vec![
        Tempt::term(error.slug(), "circumstance-not-seen", ""),
        Tempt::term(variant.slug(), "circumstance-missing", ""),
        Tempt::term(NEVER, "departure-always-wrong", ""),
        Tempt::term(ALWAYS, "departure-always-right", ""),
    ]
}
