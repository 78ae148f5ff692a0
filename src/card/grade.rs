//! Grades an answer: the model is asked anew, and the answer is judged alone.

use super::question::{Ask, Item, Question, Tempt};
use super::{Answer, Card, Dice, Offered, Weighed, families, scene, sprayed, tolerance};
use crate::content::World;
use crate::rules::sorted::sorted;
use crate::rules::verdict::{RuleId, Ruling, Step};
use crate::spraying::Outcome;
use serde::{Deserialize, Serialize};

/// The mark of an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mark {
    /// Right.
    Right,
    /// Partly right; counts as wrong in evidence.
    Partly,
    /// Wrong.
    Wrong,
}

/// What the model answers to a card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Solution {
    /// The right answer; one of several for an order.
    pub right: Answer,
    /// The facts that are missing, where nothing can be judged.
    pub missing: Vec<String>,
    /// The rules that decided it.
    pub rules: Vec<RuleId>,
    /// The calculation.
    pub working: Vec<Step>,
    /// The chance of guessing it.
    pub guess: f64,
}

/// A graded answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Graded {
    /// The mark.
    pub mark: Mark,
    /// What the model answers.
    #[serde(flatten)]
    pub solution: Solution,
    /// The misconception that the answer shows, where one is known: text `slip.<slip>`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slip: Option<&'static str>,
    /// What follows for the work: a consequence id. None for a right answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<&'static str>,
}

/// Chance that somebody who sees a fault and does not know it taps it: a convention, not a measured value.
const POINT_GUESS: f64 = 0.25;
/// Share of guessed numbers that come out right: a convention of the assessment design, not a measured value.
const NUMBER_GUESS: f64 = 0.05;

/// Chance that a face sprayed blindly passes: a convention, as for numbers.
const SPRAY_GUESS: f64 = NUMBER_GUESS;

/// What follows from asking for what was told: an hour passes and the work stays as it was.
const ASKED: &str = "asked-for-what-was-told";

/// Asks the model. `None` for a card whose family is unknown.
#[must_use]
pub fn solve(card: &Card, world: &World<'_>) -> Option<Solution> {
    solve_as(families::find(&card.family)?, card, world)
}

/// Asks the model as a question has it.
fn solve_as(question: &Question, card: &Card, world: &World<'_>) -> Option<Solution> {
    let slugs = || card.options.iter().filter_map(slug).map(str::to_owned).collect::<Vec<_>>();
    let answered = match question.ask {
        Ask::One { answer, .. } => {
            answer(&card.facts, world).map(|ruling| (ruling, 1.0 / options_and_not_enough(card)))
        }
        Ask::Number { answer, .. } => {
            answer(&card.facts, world).map(|ruling| (ruling.map(Answer::Number), NUMBER_GUESS))
        }
        Ask::All { holds, .. } => {
            let slugs = slugs();
            let guess = 1.0 / (libm::exp2(options_and_not_enough(card) - 1.0) - 1.0);
            all_that_hold(&slugs, |item| holds(&card.facts, world, item)).map(|ruling| (ruling, guess))
        }
        Ask::Point { there } => {
            there(&card.facts, world).map(|ruling| (ruling.map(|()| Answer::OnTheFault), POINT_GUESS))
        }
        Ask::Diagnose { answer, .. } => {
            let offered = card.offered.as_ref()?;
            let right = answer(&card.facts, world, offered);
            right.map(|ruling| (ruling.map(Answer::Diagnosis), offered.guess()))
        }
        Ask::Spray { setup } => setup(&card.facts, world)
            .and_then(|setup| sprayed::reckoned(&setup))
            .map(|ruling| (ruling, SPRAY_GUESS)),
        Ask::Order { accepts, .. } => orders(slugs(), |order| accepts(&card.facts, world, order)),
    };
    Some(match answered {
        Ok((ruling, guess)) => Solution {
            right: ruling.answer,
            missing: Vec::new(),
            rules: ruling.rules,
            working: ruling.working,
            guess,
        },
        Err(cannot) => Solution {
            right: Answer::NotEnough,
            missing: cannot.missing,
            rules: vec![RuleId("card.not-enough-told")],
            working: Vec::new(),
            guess: card.offered.as_ref().map_or(1.0 / options_and_not_enough(card), Offered::guess),
        },
    })
}

/// Grades one answer. `None` for a card whose family is unknown.
#[must_use]
pub fn grade(card: &Card, world: &World<'_>, given: &Answer) -> Option<Graded> {
    let came = match given {
        Answer::Run(run) => sprayed::outcome(card, world, run),
        _ => None,
    };
    grade_came(card, world, given, came.as_ref())
}

/// Grades one answer by what its run came to, which takes long to work out ([`sprayed::outcome`]); other answers have none.
#[must_use]
pub fn grade_came(card: &Card, world: &World<'_>, given: &Answer, came: Option<&Outcome>) -> Option<Graded> {
    let question = families::find(&card.family)?;
    let solution = solve_as(question, card, world)?;
    let found = match (question.ask, &card.offered, &solution.right, given) {
        (Ask::Diagnose { astray, .. }, Some(offered), Answer::Diagnosis(right), Answer::Diagnosis(given)) => {
            Some(astray(&card.facts, world, offered, right, given))
        }
        (Ask::Spray { .. }, _, Answer::GoodRun, Answer::Run(_)) => Some(sprayed::astray(came)),
        _ => None,
    };
    let right = match (question.ask, given) {
        (Ask::Order { accepts, .. }, Answer::Order(order)) => {
            let same_items = order.len() == card.options.len()
                && card.options.iter().filter_map(slug).all(|slug| order.iter().any(|item| item == slug));
            same_items && accepts(&card.facts, world, order).is_ok_and(|ruling| ruling.answer)
        }
        (Ask::Point { .. }, Answer::Place(place)) => {
            let panels = scene::panels(card, world.content);
            panels.first().is_some_and(|panel| scene::points_at(panel, (place.x_mm, place.y_mm)))
        }
        (Ask::Diagnose { .. }, Answer::Diagnosis(_)) | (Ask::Spray { .. }, Answer::Run(_)) => {
            found == Some(None)
        }
        _ => given.agrees(&solution.right),
    };
    let mark = match (&solution.right, given) {
        _ if right => Mark::Right,
        (Answer::Diagnosis(wanted), Answer::Diagnosis(given)) if given.fault == wanted.fault => Mark::Partly,
        (Answer::Terms(wanted), Answer::Terms(picked)) if picked.iter().any(|item| wanted.contains(item)) => {
            Mark::Partly
        }
        _ => Mark::Wrong,
    };
    if right {
        return Some(Graded { mark, solution, slip: None, after: None });
    }
    let (slip, after) = match found {
        Some(wrong) => wrong.unzip(),
        None => misconception(question, card, world, &solution, given),
    };
    let after =
        after.filter(|id| !id.is_empty()).unwrap_or_else(|| question.after.of(given, &solution.right));
    Some(Graded { mark, solution, slip: slip.filter(|id| !id.is_empty()), after: Some(after) })
}

/// What the tests of a diagnosis were worth, beside the right one; none on a card that asks for something else.
#[must_use]
pub fn weigh(card: &Card, world: &World<'_>, right: &Answer, given: &Answer) -> Vec<Weighed> {
    let ask = families::find(&card.family).map(|question| question.ask);
    match (ask, &card.offered, right, given) {
        (
            Some(Ask::Diagnose { weigh, .. }),
            Some(offered),
            Answer::Diagnosis(right),
            Answer::Diagnosis(given),
        ) if offered.holds(given) => weigh(&card.facts, world, offered, right, given),
        _ => Vec::new(),
    }
}

fn slug(answer: &Answer) -> Option<&str> {
    match answer {
        Answer::Term(slug) => Some(slug),
        _ => None,
    }
}

#[allow(clippy::cast_precision_loss, reason = "at most seven options")]
fn options_and_not_enough(card: &Card) -> f64 {
    card.options.len() as f64 + 1.0
}

fn all_that_hold(
    items: &[String],
    holds: impl Fn(&str) -> crate::rules::verdict::Judged<bool>,
) -> crate::rules::verdict::Judged<Answer> {
    let mut gathered = Ruling { answer: Vec::new(), rules: Vec::new(), working: Vec::new() };
    for item in items {
        let ruling = holds(item)?;
        for rule in &ruling.rules {
            gathered = gathered.and(rule.0);
        }
        for step in ruling.working {
            if !gathered.working.contains(&step) {
                gathered.working.push(step);
            }
        }
        if ruling.answer {
            gathered.answer.push(item.clone());
        }
    }
    Ok(gathered.map(Answer::Terms))
}

/// Tries every order: the first that is accepted, and the chance of hitting one.
fn orders(
    items: Vec<String>,
    accepts: impl Fn(&[String]) -> crate::rules::verdict::Judged<bool>,
) -> Result<(Ruling<Answer>, f64), crate::rules::verdict::CannotJudge> {
    let mut items = sorted(items, Ord::cmp);
    let (mut tried, mut accepted, mut first) = (0.0, 0.0, None);
    loop {
        tried += 1.0;
        let ruling = accepts(&items)?;
        if ruling.answer {
            accepted += 1.0;
            first.get_or_insert_with(|| ruling.map(|_| Answer::Order(items.clone())));
        }
        if !next_permutation(&mut items) {
            break;
        }
    }
    let none = Ruling { answer: Answer::Terms(Vec::new()), rules: Vec::new(), working: Vec::new() };
    Ok((first.unwrap_or(none), accepted / tried))
}

/// The next order in the alphabet of orders; false after the last.
fn next_permutation(items: &mut [String]) -> bool {
    let Some(rise) = items.windows(2).rposition(|pair| pair[0] < pair[1]) else { return false };
    let Some(swap) = items.iter().rposition(|item| *item > items[rise]) else { return false };
    items.swap(rise, swap);
    items[rise + 1..].reverse();
    true
}

/// The misconception behind a wrong answer and what follows from it.
fn misconception(
    question: &Question,
    card: &Card,
    world: &World<'_>,
    solution: &Solution,
    given: &Answer,
) -> (Option<&'static str>, Option<&'static str>) {
    let unknown = solution.right == Answer::NotEnough;
    if !unknown && *given == Answer::NotEnough {
        return (Some("enough-was-told"), Some(ASKED));
    }
    let tempts: Vec<Tempt> = match question.ask {
        Ask::One { tempt, .. } | Ask::Number { tempt, .. } => tempt(&card.facts, world),
        Ask::Point { .. } => return (Some("place-beside-the-fault"), None),
        Ask::Diagnose { .. } if unknown => return (Some("judged-without-knowing"), None),
        Ask::All { .. } | Ask::Order { .. } if unknown => Vec::new(),
        Ask::All { items, .. } => return astray(card, items, world, solution, given),
        Ask::Order { .. } | Ask::Diagnose { .. } | Ask::Spray { .. } => return (None, None),
    };
    let near = |tempt: &&Tempt| match (&tempt.answer, given) {
        (Answer::Number(a), Answer::Number(b)) => tolerance::agree(*b, *a),
        (a, b) => a == b,
    };
    let picked = tempts.iter().find(near);
    let after = picked.map(|tempt| tempt.after);
    if unknown { (Some("judged-without-knowing"), after) } else { (picked.map(|tempt| tempt.slip), after) }
}

/// The first item picked wrongly or left out: the misconception behind it and what follows.
fn astray(
    card: &Card,
    items: fn(&crate::bench::Facts, &World<'_>, &mut Dice) -> Vec<Item>,
    world: &World<'_>,
    solution: &Solution,
    given: &Answer,
) -> (Option<&'static str>, Option<&'static str>) {
    let (Answer::Terms(wanted), Answer::Terms(picked)) = (&solution.right, given) else {
        return (None, None);
    };
    // Which misconception an item stands for does not depend on the dice; only the selection does.
    let known = items(&card.facts, world, &mut Dice::new("slips"));
    let has = |slugs: &[String], slug: &str| slugs.iter().any(|one| one == slug);
    card.options
        .iter()
        .filter_map(slug)
        .find(|item| has(wanted, item) != has(picked, item))
        .and_then(|item| known.iter().find(|one| one.slug == item))
        .map_or((None, None), |item| {
            let after = if has(picked, &item.slug) { item.needless } else { item.missed };
            (Some(item.slip), Some(after))
        })
}
