//! One item: how hard it is, and whether it goes with the rest.

use super::moments::{correlation, mean, real};
use super::{OptionUse, Scores};
use crate::learn::agreement::NORMAL_95;
use crate::terms;

/// Fewest people of whom a range of a correlation can be told: Fisher's scale divides by N - 3.
const PEOPLE_LEAST: usize = 4;
/// Below this the right answer hardly goes with the rest. R. L. Ebel 1954 calls under 0.19 poor; with a dozen people that is
/// noise: our own choice.
const GOES_LEAST: f64 = 0.10;
/// People who must have been asked before anything is told of an item, or of an option that was offered to them: what three
/// did or did not take says nothing. Our own choice.
pub const ASKED_LEAST: usize = 10;
/// A wrong option that so many of the upper group take: the card has two meanings, or the rule is wrong. Our own choice.
const TAKEN_BY_UPPER: f64 = 0.40;

/// What 95 % of samples would give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// Lower end.
    pub from: f64,
    /// Upper end.
    pub to: f64,
}

/// What was found of an item.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// People who were asked.
    pub asked: usize,
    /// Those who were right.
    pub right: usize,
    /// Share that was right: the higher, the easier.
    pub difficulty: f64,
    /// Its correlation with all items; none where one of the two does not spread.
    pub with_all: Option<f64>,
    /// Its correlation with all others.
    pub with_rest: Option<f64>,
    /// Range of that, told from four people on.
    pub range: Option<Range>,
    /// Share right of the upper group less that of the lower.
    pub upper_less_lower: f64,
}

impl Item {
    /// The share that knew it, if everybody else guessed with this luck: 0 to 1 less luck, and below 0 where fewer are right
    /// than by luck alone.
    #[must_use]
    pub fn known(&self, luck: f64) -> Option<f64> {
        (luck < 1.0).then(|| (self.difficulty - luck) / (1.0 - luck))
    }
}

/// What is found of each item, in their order; none of one that nobody was asked.
#[must_use]
pub fn items(scores: &Scores) -> Vec<Option<Item>> {
    let groups = scores.groups();
    (0..scores.items()).map(|item| of(scores, item, &groups)).collect()
}

fn of(scores: &Scores, item: usize, (upper, lower): &(Vec<usize>, Vec<usize>)) -> Option<Item> {
    let answers: Vec<(usize, bool)> =
        scores.column(item).enumerate().filter_map(|(person, answer)| Some((person, answer?))).collect();
    let right = answers.iter().filter(|(_, right)| *right).count();
    let difficulty = mean(&answers.iter().map(|(_, right)| number(*right)).collect::<Vec<_>>())?;
    let against = |without: Option<usize>| {
        let pairs: Vec<(f64, f64)> = answers
            .iter()
            .filter_map(|(person, right)| Some((number(*right), scores.rest(*person, without)?)))
            .collect();
        let (own, rest): (Vec<f64>, Vec<f64>) = pairs.into_iter().unzip();
        correlation(&own, &rest)
    };
    let with_rest = against(Some(item));
    let share = |group: &[usize]| {
        let asked = answers.iter().filter(|(person, _)| group.contains(person));
        mean(&asked.map(|(_, right)| number(*right)).collect::<Vec<_>>())
    };
    Some(Item {
        asked: answers.len(),
        right,
        difficulty,
        with_all: against(None),
        with_rest,
        range: with_rest.and_then(|r| range(r, answers.len())),
        upper_less_lower: share(upper).unwrap_or(difficulty) - share(lower).unwrap_or(difficulty),
    })
}

pub(super) const fn number(right: bool) -> f64 {
    if right { 1.0 } else { 0.0 }
}

/// The range of a correlation by Fisher's scale (R. A. Fisher 1915).
fn range(r: f64, people: usize) -> Option<Range> {
    let half = NORMAL_95 / libm::sqrt(real(people.checked_sub(PEOPLE_LEAST - 1).filter(|left| *left > 0)?));
    let z = libm::atanh(r);
    z.is_finite().then(|| Range { from: libm::tanh(z - half), to: libm::tanh(z + half) })
}

terms! {
    /// Why a card is to be looked at. Text: `items.<slug>`.
    Flag {
        /// Who knows more is not right more often: a wrong rule, unclear words, or taught wrongly.
        GoesNot = "goes-not",
        /// A wrong option goes with the rest better than the right one.
        WrongGoes = "wrong-goes",
        /// A wrong option is taken by the upper group as often as the right one, or by much of it.
        UpperTakesWrong = "upper-takes-wrong",
        /// Nobody takes an option: luck is higher than the number of options says.
        DeadOption = "dead-option",
    }
}

/// Why an item is to be looked at, by its own score and, for a card with options, by theirs.
#[must_use]
pub fn flags(item: &Item, options: &[OptionUse]) -> Vec<Flag> {
    let key = options.iter().find(|option| option.right);
    let wrong = || options.iter().filter(|option| !option.right && option.offered >= ASKED_LEAST);
    let better =
        |one: &OptionUse| one.with_rest > key.and_then(|key| key.with_rest) && one.with_rest.is_some();
    let upper = |one: &OptionUse| {
        let share = |one: &OptionUse| real(one.upper) / real(one.upper_of.max(1));
        let beats = key.is_some_and(|key| share(one) > share(key));
        beats || share(one) >= TAKEN_BY_UPPER
    };
    [
        (item.with_rest.is_some_and(|r| r < GOES_LEAST), Flag::GoesNot),
        (key.is_some_and(|key| key.with_rest.is_some()) && wrong().any(better), Flag::WrongGoes),
        (wrong().any(upper), Flag::UpperTakesWrong),
        (wrong().any(|option| option.chosen == 0), Flag::DeadOption),
    ]
    .into_iter()
    .filter_map(|(stands, flag)| stands.then_some(flag))
    .collect()
}
