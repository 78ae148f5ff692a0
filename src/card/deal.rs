//! Deals a card from a seed: draws a situation, asks the question's options, sometimes leaves a fact untold.

use super::question::{Ask, Item, Kind, Question, Tempt};
use super::{Answer, Dice, Offered, families, tolerance};
use crate::bench::{FactValue, Facts};
use crate::content::{Binding, Draw, ENGLISH, FamilyInfo, PROBES, World};
use crate::quantity::Unit;
use crate::rules::sorted::sorted;
use crate::rules::term::Term;
use crate::rules::wood::{PoreSize, Wood, WoodTrouble};
use serde::{Deserialize, Serialize};

/// Least number of options on a choice card.
pub const OPTIONS_LEAST: usize = 4;
/// Greatest number of options or items on a card.
pub const OPTIONS_MOST: usize = 6;
/// Greatest number of wrong ones among them.
pub(super) const TEMPTS_MOST: usize = OPTIONS_MOST - 1;
/// One card in so many leaves a fact untold.
const HIDE_ONE_IN: u32 = 6;
/// Draws before a family is said to be unable to deal.
const ATTEMPTS: u32 = 64;

/// A dealt card. It holds no answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Card {
    /// Family.
    pub family: String,
    /// Version of the family.
    pub version: u32,
    /// Seed.
    pub seed: u32,
    /// Hash of the shop sheet it was dealt on.
    pub sheet: String,
    /// Kind of answer asked for.
    pub kind: Kind,
    /// Which wording of the story, from 1.
    pub story: u32,
    /// What is told.
    pub facts: Facts,
    /// Options or items in the order shown; empty where an answer is made and not picked.
    pub options: Vec<Answer>,
    /// Unit asked for; a number card only.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<Unit>,
    /// Tests at hand and what can be named after them; only a card that asks for a diagnosis.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub offered: Option<Offered>,
}

/// Why no card can be dealt.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum DealError {
    /// No such family.
    #[error("`{0}` is no card family")]
    Unknown(String),
    /// No situation could be drawn that gives enough options.
    #[error("family `{family}` gives no card for seed {seed} on sheet `{sheet}`")]
    Barren {
        /// Family.
        family: String,
        /// Seed.
        seed: u32,
        /// Shop sheet.
        sheet: String,
    },
}

/// Deals the card of a family and seed on a shop sheet.
///
/// # Errors
/// [`DealError`] when the family is unknown or cannot give a card on this sheet.
pub fn deal(world: &World<'_>, family: &str, seed: u32) -> Result<Card, DealError> {
    let unknown = || DealError::Unknown(family.to_owned());
    let info = world.content.family(family).ok_or_else(unknown)?;
    let question = families::find(family).ok_or_else(unknown)?;
    for attempt in 0..ATTEMPTS {
        let mut dice = Dice::new(&format!("{family}/{}/{seed}/{attempt}", info.version));
        if let Some(card) = attempt_deal(world, info, question, seed, &mut dice) {
            return Ok(card);
        }
    }
    Err(DealError::Barren { family: family.to_owned(), seed, sheet: world.sheet.slug.clone() })
}

fn attempt_deal(
    world: &World<'_>,
    info: &FamilyInfo,
    question: &Question,
    seed: u32,
    dice: &mut Dice,
) -> Option<Card> {
    let mut facts = Facts::default();
    for draw in info.facts.iter().filter(|draw| draw.fact != PROBES) {
        facts.0.insert(draw.fact.clone(), draw_fact(world, draw, dice)?);
    }
    (question.settle)(&mut facts, world, dice);
    let options = options(question, &facts, world, dice)?;
    let unit = if let Ask::Number { answer, unit, .. } = question.ask {
        answer(&facts, world).ok()?;
        Some(unit)
    } else {
        None
    };
    if let Ask::Spray { setup } = question.ask {
        setup(&facts, world).ok()?;
    }
    let offered = match question.ask {
        Ask::Diagnose { offer, .. } => Some(offer(&facts, world, dice)?),
        _ => None,
    };
    if dice.one_in(HIDE_ONE_IN) {
        hide(world, info, &mut facts, dice);
    }
    let card = Card {
        family: info.id.clone(),
        version: info.version,
        seed,
        sheet: world.sheet.hash().to_owned(),
        kind: question.kind(),
        story: 1 + dice.below(stories(world, &info.id)),
        facts,
        options,
        unit,
        offered,
    };
    let solution = super::solve(&card, world)?;
    // What is left untold may turn an answer, but never to one that is not offered.
    let sound = match &solution.right {
        Answer::Terms(right) => !right.is_empty(),
        Answer::NotEnough => turns(world, info, &card, &solution.missing),
        right => card.kind != Kind::ChooseOne || card.options.iter().any(|option| !distinct(option, right)),
    };
    sound.then_some(card)
}

/// Whether what is missing can turn the answer. Where each value of it gives the same one, enough is told, and a card on
/// which nobody could say so is not dealt.
fn turns(world: &World<'_>, info: &FamilyInfo, card: &Card, missing: &[String]) -> bool {
    let [key] = missing else { return true };
    let Some(fact) = world.content.fact(key) else { return true };
    let values: Vec<FactValue> = if fact.unit.is_some() {
        let draw = info.facts.iter().find(|draw| draw.fact == *key);
        let drawn = draw.and_then(|draw| draw.from.zip(draw.to)).unwrap_or((fact.min, fact.max));
        let ends = [fact.min, drawn.0, f64::midpoint(drawn.0, drawn.1), drawn.1, fact.max];
        ends.map(FactValue::Number).into()
    } else {
        fact.slugs(world.content).iter().map(|slug| FactValue::Term((*slug).to_owned())).collect()
    };
    let mut told = card.clone();
    let mut answers = values.into_iter().map(|value| {
        told.facts.0.insert(key.clone(), value);
        super::solve(&told, world).map_or(Answer::NotEnough, |solution| solution.right)
    });
    let first = answers.next();
    answers.any(|answer| answer == Answer::NotEnough || Some(&answer) != first.as_ref())
}

/// How many wordings a story has.
fn stories(world: &World<'_>, family: &str) -> u32 {
    let texts = world.content.texts(ENGLISH);
    let next = |n: &u32| texts.find(&format!("card.{family}.story.{n}")).is_some();
    (2..).take_while(next).last().unwrap_or(1)
}

fn hide(world: &World<'_>, info: &FamilyInfo, facts: &mut Facts, dice: &mut Dice) {
    let drawn = info.facts.iter().filter(|draw| draw.may_hide).flat_map(|draw| world.content.drawn(draw));
    let may: Vec<&str> = drawn.filter(|key| facts.0.contains_key(*key)).collect();
    if let Some(key) = dice.pick(&may) {
        facts.0.remove(*key);
    }
}

fn options(question: &Question, facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Option<Vec<Answer>> {
    match question.ask {
        Ask::One { answer, tempt } => {
            let right = answer(facts, world).ok()?.answer;
            choice(right, tempt(facts, world), dice)
        }
        Ask::All { items, .. } => placed(items(facts, world, dice), OPTIONS_LEAST, dice),
        Ask::Order { items, .. } => placed(items(facts, world, dice), 3, dice),
        Ask::Number { .. } | Ask::Point { .. } | Ask::Diagnose { .. } | Ask::Spray { .. } => Some(Vec::new()),
    }
}

/// The right answer among tempting ones: numbers rise, terms are shuffled, so that the place tells nothing.
fn choice(right: Answer, mut tempts: Vec<Tempt>, dice: &mut Dice) -> Option<Vec<Answer>> {
    dice.shuffle(&mut tempts);
    let mut options = vec![right];
    for tempt in tempts {
        if options.len() < OPTIONS_MOST && options.iter().all(|option| distinct(option, &tempt.answer)) {
            options.push(tempt.answer);
        }
    }
    if options.len() < OPTIONS_LEAST {
        return None;
    }
    dice.shuffle(&mut options);
    if options.iter().all(|option| matches!(option, Answer::Number(_))) {
        options = sorted(options, |a, b| match (a, b) {
            (Answer::Number(a), Answer::Number(b)) => a.base().total_cmp(&b.base()),
            _ => std::cmp::Ordering::Equal,
        });
    }
    Some(options)
}

fn distinct(a: &Answer, b: &Answer) -> bool {
    match (a, b) {
        (Answer::Number(a), Answer::Number(b)) => tolerance::apart(*a, *b),
        (a, b) => a != b,
    }
}

fn placed(mut items: Vec<Item>, least: usize, dice: &mut Dice) -> Option<Vec<Answer>> {
    dice.shuffle(&mut items);
    let mut slugs: Vec<Answer> = Vec::new();
    for item in items {
        let answer = Answer::Term(item.slug);
        if slugs.len() < OPTIONS_MOST && !slugs.contains(&answer) {
            slugs.push(answer);
        }
    }
    (slugs.len() >= least).then_some(slugs)
}

fn draw_fact(world: &World<'_>, draw: &Draw, dice: &mut Dice) -> Option<FactValue> {
    let info = world.content.fact(&draw.fact)?;
    if info.unit.is_some() {
        return Some(FactValue::Number(dice.on_grid(draw.from?, draw.to?, draw.step?)));
    }
    let mut slugs: Vec<&str> = if draw.among.is_empty() { info.slugs(world.content) } else { Vec::new() };
    for term in &draw.among {
        match term.strip_prefix('@') {
            Some("bound") => {
                let bound = world.content.tickets.iter().filter(|ticket| ticket.binding != Binding::None);
                slugs.extend(bound.map(|ticket| ticket.slug.as_str()));
            }
            Some(class) => {
                let members = world.content.woods.iter().filter(|wood| in_class(wood, class));
                slugs.extend(members.map(|wood| wood.slug.as_str()));
            }
            None => slugs.push(term),
        }
    }
    if info.terms.iter().any(|term| term == "@tickets") {
        let fits = |slug: &&str| world.content.ticket(slug).is_some_and(|ticket| world.does(ticket));
        slugs.retain(fits);
    }
    dice.pick(&slugs).map(|slug| FactValue::Term((*slug).to_owned()))
}

/// Whether a wood belongs to a class that families draw from: pore size, a trouble, or `movement`.
fn in_class(wood: &Wood, class: &str) -> bool {
    match class {
        "movement" => wood.movement.is_some(),
        class => {
            PoreSize::from_slug(class) == Some(wood.pores)
                || WoodTrouble::from_slug(class).is_some_and(|trouble| wood.trouble.contains(&trouble))
        }
    }
}
