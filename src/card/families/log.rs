//! Logs of finished work: what was done wrong, where it will first show, what would have mended it.

use super::order::job;
use crate::bench::Facts;
use crate::card::question::{After, Ask, Question, Tempt};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::quantity::{HOURS_A_DAY, Hours};
use crate::rules::sequence::check::{Finding, check};
use crate::rules::sequence::error::{Mend, OrderError};
use crate::rules::sequence::job::Job;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::{Plan, Step, Told};
use crate::rules::sequence::route;
use crate::rules::term::{Filler, Stage, Term};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

pub(super) const ALL: &[&Question] = &[&ORDER_FAULT, &ORDER_SHOWS, &ORDER_MEND];

terms! {
    /// What a log says that was done. Text: `term.<slug>`.
    Log {
        /// Filled in the morning, sealed 8 hours later.
        SealedEvening = "log-sealed-evening",
        /// Filled, sealed 24 hours later.
        SealedNextDay = "log-sealed-next-day",
        /// Filled, sealed 48 hours later.
        SealedSecondDay = "log-sealed-second-day",
        /// Coloured filler straight on the stain.
        TintedOnStain = "log-tinted-on-stain",
        /// Filler first, then stain.
        FilledFirst = "log-filled-first",
        /// No filler at all.
        NoFiller = "log-no-filler",
        /// Stain evened out with paper.
        StainSanded = "log-stain-sanded",
        /// Stained before looking for glue.
        GlueLate = "log-glue-late",
        /// No seal coat under the colour.
        NoSeal = "log-no-seal",
        /// Colour scuffed lightly.
        ColourScuffed = "log-colour-scuffed",
        /// Binding scraped during the clear build.
        ScrapedLate = "log-scraped-late",
        /// Colour mask left on.
        MaskLeft = "log-mask-left",
        /// Three coats of stearated sealer.
        HeavySealer = "log-heavy-sealer",
        /// A tack cloth before the first coat.
        TackCloth = "log-tack-cloth",
        /// Cold work sprayed at once.
        ColdWork = "log-cold-work",
        /// No solvent wipe.
        NoWipe = "log-no-wipe",
        /// Clear a week after the sealer, not scuffed.
        RecoatWeek = "log-recoat-week",
        /// Clear two days after the sealer, scuffed.
        RecoatTwoDays = "log-recoat-two-days",
        /// Clear coats a quarter of an hour apart.
        QuarterHour = "log-quarter-hour",
        /// Three clear coats, two hours apart.
        ThreeADay = "log-three-a-day",
        /// Levelled after three days.
        LevelThreeDays = "log-level-three-days",
        /// Levelled after a week.
        LevelWeek = "log-level-week",
        /// Levelled after a month.
        LevelMonth = "log-level-month",
        /// Levelled over two clear coats.
        TwoCoats = "log-two-coats",
        /// P600, then compound.
        CoarsePaper = "log-coarse-paper",
        /// One wheel for two compounds.
        OneWheel = "log-one-wheel",
        /// Holes drilled in the finished work.
        DrilledLate = "log-drilled-late",
    }
}

// What the texts of the logs say in words.
const QUARTER: f64 = 0.25;
const TWO_HOURS: f64 = 2.0;
const SAME_DAY: f64 = 8.0;
const WEEK: f64 = 7.0 * HOURS_A_DAY;
const SEALER_COATS: u32 = 3;
const FEW_COATS: u32 = 2;
const COARSE_GRIT: u32 = 600;

/// Steps being changed.
struct Edit(Vec<Step>);

impl Edit {
    fn place(&self, op: Operation) -> Option<usize> {
        self.0.iter().position(|step| step.operation == op)
    }

    fn change(mut self, op: Operation, change: impl Fn(&mut Step)) -> Option<Self> {
        self.place(op)?;
        self.0.iter_mut().filter(|step| step.operation == op).for_each(change);
        Some(self)
    }

    fn how(self, op: Operation, manner: Manner) -> Option<Self> {
        self.change(op, |step| step.manners.push(manner))
    }

    /// So many hours from one operation to another, nothing waited in between.
    fn wait(mut self, from: Operation, to: Operation, hours: f64) -> Option<Self> {
        let first = self.0.iter().rposition(|step| step.operation == from)?;
        let last = first + 1 + self.0.iter().skip(first + 1).position(|step| step.operation == to)?;
        for step in self.0.iter_mut().take(last + 1).skip(first + 1) {
            step.after = Told::Is(Hours::saturating(0.0));
        }
        self.0.get_mut(last)?.after = Told::Is(Hours::saturating(hours));
        Some(self)
    }

    fn without(mut self, ops: &[Operation]) -> Self {
        self.0.retain(|step| !ops.contains(&step.operation));
        self
    }

    fn before(mut self, op: Operation, step: Step) -> Option<Self> {
        let place = self.place(op)?;
        self.0.insert(place, step);
        Some(self)
    }

    fn after(mut self, op: Operation, step: Step) -> Option<Self> {
        let place = self.0.iter().rposition(|one| one.operation == op)? + 1;
        self.0.insert(place, step);
        Some(self)
    }
}

/// The plan that a log tells; `None` where the ticket has no such step.
fn told(log: Log, job: &Job, world: &World<'_>) -> Option<Plan> {
    use Operation as Op;
    const FILLING: [Op; 3] = [Op::Fill, Op::WipeFiller, Op::SandFiller];
    let plan = route::plan(job, world.sheet);
    let edit = Edit(plan.steps);
    let steps = match log {
        Log::SealedEvening => edit.wait(Op::WipeFiller, Op::Seal, SAME_DAY),
        Log::SealedNextDay => edit.wait(Op::WipeFiller, Op::Seal, HOURS_A_DAY),
        Log::SealedSecondDay => edit.wait(Op::WipeFiller, Op::Seal, 2.0 * HOURS_A_DAY),
        Log::TintedOnStain => {
            edit.place(Op::Stain)?;
            edit.without(&[Op::Washcoat]).how(Op::Fill, Manner::Coloured)
        }
        Log::FilledFirst => {
            edit.place(Op::Stain)?;
            edit.without(&[Op::Stain, Op::Washcoat]).after(Op::SandFiller, Step::of(Op::Stain))
        }
        Log::NoFiller => Some(edit.without(&FILLING)),
        Log::StainSanded => edit.after(Op::Stain, Step::of(Op::SandBack)),
        Log::GlueLate => {
            edit.place(Op::Stain)?;
            Some(edit.without(&[Op::GlueCheck]))
        }
        Log::NoSeal if job.colours_film() => Some(edit.without(&[Op::Seal])),
        Log::ColourScuffed => {
            let colour = if job.shaded { Op::Shade } else { Op::Colour };
            edit.after(colour, Step::of(Op::Scuff).how(Manner::Light))
        }
        Log::ScrapedLate => {
            edit.place(Op::Scrape)?;
            edit.without(&[Op::Scrape, Op::Inspect]).after(Op::Clear, Step::of(Op::Scrape))
        }
        Log::MaskLeft => {
            let colour = if job.shaded { Op::Shade } else { Op::Colour };
            edit.before(colour, Step::of(Op::Mask))
        }
        Log::HeavySealer => edit.change(Op::Seal, |seal| {
            seal.manners.push(Manner::Stearated);
            seal.coats = Told::Is(SEALER_COATS);
        }),
        Log::TackCloth => edit.how(Op::CleanOff, Manner::TackCloth),
        Log::ColdWork => edit.how(Op::Seal, Manner::ColdWork),
        Log::NoWipe => Some(edit.without(&[Op::SolventWipe])),
        Log::RecoatWeek if !job.colours_film() => edit.wait(Op::Seal, Op::Clear, WEEK),
        Log::RecoatTwoDays if !job.colours_film() => {
            edit.after(Op::Seal, Step::of(Op::Scuff))?.wait(Op::Seal, Op::Clear, 2.0 * HOURS_A_DAY)
        }
        Log::QuarterHour => {
            edit.change(Op::Clear, |clear| clear.between = Told::Is(Hours::saturating(QUARTER)))
        }
        Log::ThreeADay => {
            edit.change(Op::Clear, |clear| clear.between = Told::Is(Hours::saturating(TWO_HOURS)))
        }
        Log::LevelThreeDays => edit.wait(Op::Clear, Op::Level, 3.0 * HOURS_A_DAY),
        Log::LevelWeek => edit.wait(Op::Clear, Op::Level, WEEK),
        Log::LevelMonth => edit.wait(Op::Clear, Op::Level, 4.0 * WEEK),
        Log::TwoCoats => {
            edit.place(Op::Level)?;
            edit.change(Op::Clear, |clear| clear.coats = Told::Is(FEW_COATS))
        }
        Log::CoarsePaper => {
            edit.place(Op::Buff)?;
            edit.change(Op::Level, |level| level.grit = Told::Is(COARSE_GRIT))
        }
        Log::OneWheel => edit.how(Op::Buff, Manner::SharedWheel),
        Log::DrilledLate => edit.after(Op::Clear, Step::of(Op::FitParts)),
        Log::NoSeal | Log::RecoatWeek | Log::RecoatTwoDays => None,
    };
    Some(Plan { steps: steps?.0, detail: plan.detail })
}

/// Tells the ticket's own filler, or none where the ticket takes none.
fn filler_of_the_ticket(facts: &mut Facts, world: &World<'_>, _: &mut Dice) {
    let Ok(job) = job(facts, world) else { return };
    if route::asks_for(&job, world.sheet, Operation::Fill) {
        facts.set_term("filler", job.filler.slug());
    } else {
        facts.0.remove("filler");
    }
}

/// The one error in a log, or none. Where the kind of filler is not told, it must not matter.
fn found(facts: &Facts, world: &World<'_>) -> Judged<Option<Finding>> {
    if facts.maybe_slug("filler").is_some() {
        return found_with(facts.term("filler")?, facts, world);
    }
    let mut rulings = Vec::new();
    for filler in Filler::ALL {
        rulings.push(found_with(*filler, facts, world)?);
    }
    let same = |one: &Ruling<Option<Finding>>| rulings.iter().all(|other| other.answer == one.answer);
    rulings.iter().find(|one| same(one)).cloned().ok_or_else(|| CannotJudge::without("filler"))
}

/// The one error with a kind of filler. A log that tells of two is no card.
fn found_with(filler: Filler, facts: &Facts, world: &World<'_>) -> Judged<Option<Finding>> {
    let nothing = || CannotJudge::without("log");
    let job = Job { filler, ..job(facts, world)? };
    let plan = told(facts.term("log")?, &job, world).ok_or_else(nothing)?;
    let checked = check(&job, &plan, world.sheet);
    let mut errors = checked.findings;
    errors.dedup_by_key(|finding| finding.error);
    if errors.len() > 1 || !checked.missing.is_empty() {
        return Err(nothing());
    }
    let Some(finding) = errors.pop() else {
        // Every job excuses the steps that it does not order; that is no news.
        let telling = checked
            .excused
            .iter()
            .rfind(|(_, of, _)| ![OrderError::Colour, OrderError::PoresUnfilled].contains(of));
        let ruling = Ruling::by("order.accepted", None);
        return Ok(telling.map_or(ruling.clone(), |(variant, _, _)| ruling.and(variant.slug())));
    };
    Ok(Ruling::by(finding.error.slug(), Some(finding)))
}

const NOTHING: &str = "nothing-wrong";

/// What was done wrong? Misconceptions: a fault passed, a variant called a fault, a wait taken for an order and back.
const ORDER_FAULT: Question = Question {
    id: "order-fault",
    settle: filler_of_the_ticket,
    ask: Ask::One { answer: fault, tempt: fault_tempts },
    after: After::is("order-turned-round"),
};

fn fault(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    Ok(found(facts, world)?.map(|one| Answer::term(one.map_or(NOTHING, |finding| finding.error.slug()))))
}

/// Errors that are mistaken for each other: same material, same moment.
const NEIGHBOURS: [&[OrderError]; 4] = [
    &[
        OrderError::FilledBeforeStain,
        OrderError::FillerOverRawStain,
        OrderError::FillerNotDry,
        OrderError::StainSandedBare,
        OrderError::PoresUnfilled,
        OrderError::GlueUnchecked,
    ],
    &[
        OrderError::ColourUnsealed,
        OrderError::TransparentColourScuffed,
        OrderError::TrimAfterClear,
        OrderError::MaskLeftOn,
        OrderError::DyeFlooded,
    ],
    &[
        OrderError::SealerTooThick,
        OrderError::RecoatTooSoon,
        OrderError::RecoatWindowClosed,
        OrderError::HardFilmUnscuffed,
        OrderError::WaxyTackCloth,
        OrderError::ColdWork,
        OrderError::OilyWoodUnsealed,
    ],
    &[
        OrderError::LevelledTooSoon,
        OrderError::LevelledTooThin,
        OrderError::CoarseBeforeCompound,
        OrderError::OneWheel,
        OrderError::FittedAfterFinish,
    ],
];

/// The errors that a log may be mistaken for.
fn neighbours(log: Log) -> &'static [OrderError] {
    let group = match log {
        Log::SealedEvening
        | Log::SealedNextDay
        | Log::SealedSecondDay
        | Log::TintedOnStain
        | Log::FilledFirst
        | Log::NoFiller
        | Log::StainSanded
        | Log::GlueLate => 0,
        Log::NoSeal | Log::ColourScuffed | Log::ScrapedLate | Log::MaskLeft => 1,
        Log::HeavySealer
        | Log::TackCloth
        | Log::ColdWork
        | Log::NoWipe
        | Log::RecoatWeek
        | Log::RecoatTwoDays
        | Log::QuarterHour
        | Log::ThreeADay => 2,
        _ => 3,
    };
    NEIGHBOURS.get(group).copied().unwrap_or_default()
}

fn fault_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(log), Ok(right)) = (facts.term::<Log>("log"), found(facts, world)) else { return Vec::new() };
    let right = right.answer.map(|finding| finding.error);
    let waits = |error: OrderError| error.known().mend == Mend::Wait;
    let slip = |error: OrderError| match right {
        None => "variant-called-fault",
        Some(right) if waits(right) && !waits(error) => "order-blamed-for-wait",
        Some(right) if !waits(right) && waits(error) => "wait-blamed-for-order",
        Some(_) => "other-fault-named",
    };
    let others = neighbours(log).iter().filter(|error| Some(**error) != right);
    let mut tempts: Vec<Tempt> = others.map(|error| Tempt::term(error.slug(), slip(*error), "")).collect();
    if right.is_some() {
        tempts.push(Tempt::term(NOTHING, "fault-passed", ""));
    }
    tempts
}

/// Where will it first show? Misconceptions: where it is made, at the next coat always, never.
const ORDER_SHOWS: Question = Question {
    id: "order-shows",
    settle: filler_of_the_ticket,
    ask: Ask::One { answer: shows, tempt: shows_tempts },
    after: After::is("order-turned-round"),
};

const LATER: &str = "shows-later";
const NOWHERE: &str = "shows-nowhere";

fn band(stage: Stage) -> &'static str {
    match stage {
        Stage::Room | Stage::Sand => "shows-sand",
        Stage::Stain => "shows-stain",
        Stage::Fill => "shows-fill",
        Stage::Seal => "shows-seal",
        Stage::Colour => "shows-colour",
        Stage::Shade => "shows-shade",
        Stage::Scrape => "shows-scrape",
        Stage::Clear => "shows-clear",
        Stage::Cure => "shows-cure",
        Stage::Buff => "shows-buff",
    }
}

/// Bands of the work that the ticket has, in order; the wait before the abrasive is one wherever there is an abrasive.
fn bands_of(job: &Job, world: &World<'_>) -> Vec<Stage> {
    let route = route::order(job, world.sheet);
    let has = |stage: &Stage| match stage {
        Stage::Cure => true,
        stage => route.iter().any(|step| step.stage() == *stage),
    };
    Stage::ALL.iter().copied().filter(has).collect()
}

/// Where it shows on this ticket: colour where nothing is shaded, else the next band that the ticket has.
fn shown(finding: Option<&Finding>, bands: &[Stage]) -> &'static str {
    let Some(finding) = finding else { return NOWHERE };
    let Some(first) = finding.shows else { return LATER };
    let first = if first == Stage::Shade && !bands.contains(&first) { Stage::Colour } else { first };
    bands.iter().find(|stage| **stage >= first).map_or(LATER, |stage| band(*stage))
}

fn shows(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    let bands = bands_of(&job(facts, world)?, world);
    Ok(found(facts, world)?.map(|one| Answer::term(shown(one.as_ref(), &bands))))
}

fn shows_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let (Ok(right), Ok(job)) = (found(facts, world), job(facts, world)) else { return Vec::new() };
    let finding = right.answer;
    let bands = bands_of(&job, world);
    let right = shown(finding.as_ref(), &bands);
    let made = finding.as_ref().map_or("", |finding| band(finding.made));
    let slip = |slug: &str| match slug {
        NOWHERE => "fault-passed",
        _ if right == NOWHERE => "variant-called-fault",
        LATER => "shows-sooner",
        slug if slug == made => "shown-where-made",
        _ => "shows-elsewhere",
    };
    let mut all = vec![NOWHERE, LATER];
    all.extend(bands.into_iter().map(band));
    all.into_iter().filter(|slug| *slug != right).map(|slug| Tempt::term(slug, slip(slug), "")).collect()
}

/// What would have been right? Misconceptions: more waiting cures an order, another order cures a wait.
const ORDER_MEND: Question = Question {
    id: "order-mend",
    settle: filler_of_the_ticket,
    ask: Ask::One { answer: mend, tempt: mend_tempts },
    after: After::is("order-turned-round"),
};

fn mend(facts: &Facts, world: &World<'_>) -> Judged<Answer> {
    Ok(found(facts, world)?.map(|one| Answer::term(one.map_or(NOTHING, |finding| finding.mend().slug()))))
}

fn mend_tempts(facts: &Facts, world: &World<'_>) -> Vec<Tempt> {
    let Ok(right) = found(facts, world) else { return Vec::new() };
    let right = right.answer.map(|finding| finding.mend());
    let slip = |mend: Mend| match (right, mend) {
        (None, _) => "variant-called-fault",
        (Some(_), Mend::Wait) => "wait-blamed-for-order",
        (Some(Mend::Wait), _) => "order-blamed-for-wait",
        _ => "other-fault-named",
    };
    // A step done otherwise is also not done as it was: the two are never offered beside each other.
    const ALIKE: [Mend; 2] = [Mend::LeaveOut, Mend::Redo];
    let alike = |mend: &Mend| {
        ALIKE.contains(mend) && right.map_or(*mend == Mend::LeaveOut, |right| ALIKE.contains(&right))
    };
    let others = Mend::ALL.iter().filter(|mend| Some(**mend) != right && !alike(mend));
    let mut tempts: Vec<Tempt> = others.map(|mend| Tempt::term(mend.slug(), slip(*mend), "")).collect();
    if right.is_some() {
        tempts.push(Tempt::term(NOTHING, "fault-passed", ""));
    }
    tempts
}
