//! Order: the operations of a ticket in order, what comes before what, which steps a ticket does not ask for.

use crate::bench::Facts;
use crate::card::Dice;
use crate::card::question::{After, Ask, Item, Question, keep};
use crate::content::{Ticket, World};
use crate::rules::sequence::check::accepts_here;
use crate::rules::sequence::job::Job;
use crate::rules::sequence::operation::Operation;
use crate::rules::sequence::plan::Plan;
use crate::rules::sequence::route;
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&ORDER_TICKET, &ORDER_BEFORE, &ORDER_NOT_NEEDED];

/// Operations whose places are fixed against each other.
const FIXED: [Operation; 12] = [
    Operation::Stain,
    Operation::Washcoat,
    Operation::Fill,
    Operation::Seal,
    Operation::Colour,
    Operation::Shade,
    Operation::Protect,
    Operation::Scrape,
    Operation::Inspect,
    Operation::Clear,
    Operation::Level,
    Operation::Buff,
];
/// Bare-wood operations that fill a short ticket up.
const BARE: [Operation; 2] = [Operation::Sand, Operation::GlueCheck];
/// Fewest steps worth putting in order.
const STEPS_LEAST: usize = 4;

/// Put the operations of this ticket in order. Misconceptions: colour after the clear, scraping last, inspection last.
const ORDER_TICKET: Question = Question {
    id: "order-ticket",
    settle: keep,
    ask: Ask::Order { items: steps, accepts: accepted },
    after: After::is("order-turned-round"),
};

/// The job of the ticket that is told.
pub(super) fn job(facts: &Facts, world: &World<'_>) -> Result<Job, CannotJudge> {
    world.job(world.ticket(facts.slug("ticket")?)?)
}

/// Gives the facts another ticket of this shop where theirs is not such a job.
pub(super) fn ticket_of(facts: &mut Facts, world: &World<'_>, dice: &mut Dice, fits: impl Fn(&Job) -> bool) {
    if job(facts, world).is_ok_and(|job| fits(&job)) {
        return;
    }
    let such = |ticket: &&Ticket| world.does(ticket) && world.job(ticket).is_ok_and(|job| fits(&job));
    let tickets: Vec<&Ticket> = world.content.tickets.iter().filter(such).collect();
    if let Some(ticket) = dice.pick(&tickets) {
        facts.set_term("ticket", &ticket.slug);
    }
}

/// Gives the facts a ticket whose gloss is levelled and buffed.
pub(super) fn gloss_ticket(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    ticket_of(facts, world, dice, |job| route::asks_for(job, world.sheet, Operation::Buff));
}

/// Operations of the job whose places are fixed, in the order of the shop.
fn fixed(job: &Job, world: &World<'_>) -> Vec<Operation> {
    let mut route = route::order(job, world.sheet);
    let short = route.iter().filter(|step| FIXED.contains(step)).count() < STEPS_LEAST;
    route.retain(|step| FIXED.contains(step) || (short && BARE.contains(step)));
    route
}

fn steps(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let Ok(job) = job(facts, world) else { return Vec::new() };
    let mut steps = fixed(&job, world);
    dice.shuffle(&mut steps);
    steps.truncate(STEPS_LEAST + usize::from(dice.one_in(2)));
    steps.into_iter().map(|step| Item::new(step.slug(), "")).collect()
}

fn operation(slug: &str) -> Result<Operation, CannotJudge> {
    Operation::from_slug(slug).ok_or_else(|| CannotJudge::without("next_step"))
}

fn accepted(facts: &Facts, world: &World<'_>, order: &[String]) -> Judged<bool> {
    let operations: Result<Vec<Operation>, CannotJudge> = order.iter().map(|slug| operation(slug)).collect();
    accepts_here(&job(facts, world)?, &Plan::order(&operations?), world.sheet)
}

/// What has to be done before this step? Misconceptions: later steps pulled forward, earlier ones forgotten, steps that
/// the ticket does not order.
const ORDER_BEFORE: Question = Question {
    id: "order-before",
    settle: pick_step,
    ask: Ask::All { items: around, holds: comes_before },
    after: After::is("order-turned-round"),
};

fn pick_step(facts: &mut Facts, world: &World<'_>, dice: &mut Dice) {
    let steps = job(facts, world).map(|job| fixed(&job, world)).unwrap_or_default();
    let later: Vec<Operation> = steps.into_iter().skip(1).collect();
    if let Some(step) = dice.pick(&later) {
        facts.set_term("next_step", step.slug());
    }
}

fn around(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let (Ok(job), Ok(next)) = (job(facts, world), facts.slug("next_step")) else { return Vec::new() };
    let route = fixed(&job, world);
    let place = |slug: &str| route.iter().position(|step| step.slug() == slug);
    let slip = |step: Operation| match (place(step.slug()), place(next)) {
        (None, _) => "step-not-ordered",
        (Some(step), Some(next)) if step < next => "earlier-step-forgotten",
        _ => "later-step-pulled-forward",
    };
    // A washcoat that the ticket does not order may still be laid against blotch: no card asks about it.
    let asked = |step: &Operation| *step != Operation::Washcoat || route.contains(step);
    let others = FIXED.into_iter().filter(|step| step.slug() != next && asked(step));
    let mut items: Vec<Item> = others.map(|step| Item::new(step.slug(), slip(step))).collect();
    dice.shuffle(&mut items);
    items
}

fn comes_before(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let job = job(facts, world)?;
    let (step, next) = (operation(slug)?, operation(facts.slug("next_step")?)?);
    if !route::asks_for(&job, world.sheet, step) {
        return Ok(route::need(&job, world.sheet, step).map(|_| false));
    }
    let here = |order: &[Operation]| accepts_here(&job, &Plan::order(order), world.sheet);
    let (straight, turned) = (here(&[step, next])?, here(&[next, step])?);
    Ok(turned.map(|accepted| straight.answer && !accepted))
}

/// Which of these steps does this ticket not ask for? Misconceptions: every body is filled, every job is coloured, every
/// finish is buffed.
const ORDER_NOT_NEEDED: Question = Question {
    id: "order-not-needed",
    settle: keep,
    ask: Ask::All { items: asked_or_not, holds: not_needed },
    after: After::is("step-for-nothing"),
};

/// Steps that one ticket asks for and another does not.
const CHANGING: [Operation; 9] = [
    Operation::Stain,
    Operation::Fill,
    Operation::Colour,
    Operation::Shade,
    Operation::Trim,
    Operation::Protect,
    Operation::Scrape,
    Operation::SolventWipe,
    Operation::Buff,
];

fn asked_or_not(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Vec<Item> {
    let Ok(job) = job(facts, world) else { return Vec::new() };
    let slip = |step| {
        if route::asks_for(&job, world.sheet, step) { "ordered-step-left-out" } else { "step-not-ordered" }
    };
    let mut items: Vec<Item> = CHANGING.into_iter().map(|step| Item::new(step.slug(), slip(step))).collect();
    dice.shuffle(&mut items);
    items
}

fn not_needed(facts: &Facts, world: &World<'_>, slug: &str) -> Judged<bool> {
    let job = job(facts, world)?;
    Ok(route::need(&job, world.sheet, operation(slug)?).map(|needed| !needed))
}
