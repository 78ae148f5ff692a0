//! Who takes which option of a card.

use super::Scores;
use super::item::number;
use super::moments::correlation;

/// What was found of an option.
#[derive(Debug, Clone, PartialEq)]
pub struct OptionUse {
    /// The option.
    pub option: String,
    /// Whether it is the right one.
    pub right: bool,
    /// People who took it.
    pub chosen: usize,
    /// Those of the upper group.
    pub upper: usize,
    /// People of the upper group who were asked.
    pub upper_of: usize,
    /// Those of the lower group.
    pub lower: usize,
    /// Correlation of taking it with the rest of the answers: a wrong option's should be negative.
    pub with_rest: Option<f64>,
}

/// What was found of each option of an item. `chosen` is what each person took, none where they were not asked; `options`
/// are all that there are, the right one named by `key`.
#[must_use]
pub fn option_uses(
    scores: &Scores,
    item: usize,
    chosen: &[Option<String>],
    options: &[&str],
    key: &str,
) -> Vec<OptionUse> {
    let (upper, lower) = scores.groups();
    let took =
        |person: &usize, option: &str| chosen.get(*person).is_some_and(|one| one.as_deref() == Some(option));
    let of = |option: &&str| {
        let pairs: Vec<(f64, f64)> = (0..scores.people())
            .filter(|person| chosen.get(*person).is_some_and(Option::is_some))
            .filter_map(|person| Some((number(took(&person, option)), scores.rest(person, Some(item))?)))
            .collect();
        let (own, rest): (Vec<f64>, Vec<f64>) = pairs.into_iter().unzip();
        OptionUse {
            option: (*option).to_owned(),
            right: *option == key,
            chosen: (0..scores.people()).filter(|person| took(person, option)).count(),
            upper: upper.iter().filter(|person| took(person, option)).count(),
            upper_of: upper.iter().filter(|person| chosen.get(**person).is_some_and(Option::is_some)).count(),
            lower: lower.iter().filter(|person| took(person, option)).count(),
            with_rest: correlation(&own, &rest),
        }
    };
    options.iter().map(of).collect()
}
