//! Who takes which option of a card.

use super::Scores;
use super::item::number;
use super::moments::correlation;

/// What a person had before them, and took.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The option.
    pub took: String,
    /// All that were offered, that one among them.
    pub offered: Vec<String>,
}

/// What was found of an option.
#[derive(Debug, Clone, PartialEq)]
pub struct OptionUse {
    /// The option.
    pub option: String,
    /// Whether it is the right one.
    pub right: bool,
    /// People to whom it was offered: cards of a family need not all offer the same.
    pub offered: usize,
    /// People who took it.
    pub chosen: usize,
    /// Those of the upper group.
    pub upper: usize,
    /// People of the upper group to whom it was offered.
    pub upper_of: usize,
    /// Those of the lower group.
    pub lower: usize,
    /// Correlation of taking it with the rest of the answers, over those to whom it was offered: a wrong option's should be
    /// negative.
    pub with_rest: Option<f64>,
}

/// What was found of each option of an item. `taken` is what each person took, none where they were not asked or it is not
/// known; `options` are all that are told of, the right one named by `key`.
#[must_use]
pub fn option_uses(
    scores: &Scores,
    item: usize,
    taken: &[Option<Taken>],
    options: &[&str],
    key: &str,
) -> Vec<OptionUse> {
    let (upper, lower) = scores.groups();
    let of_person = |person: usize| taken.get(person).and_then(Option::as_ref);
    let of = |option: &&str| {
        let offered = |person: &usize| {
            of_person(*person).is_some_and(|one| one.offered.iter().any(|offered| offered == option))
        };
        let took = |person: &usize| of_person(*person).is_some_and(|one| one.took == *option);
        let people: Vec<usize> = (0..scores.people()).filter(offered).collect();
        let pairs = people
            .iter()
            .filter_map(|person| Some((number(took(person)), scores.rest(*person, Some(item))?)));
        let (own, rest): (Vec<f64>, Vec<f64>) = pairs.unzip();
        OptionUse {
            option: (*option).to_owned(),
            right: *option == key,
            offered: people.len(),
            chosen: people.iter().filter(|person| took(person)).count(),
            upper: upper.iter().filter(|person| took(person)).count(),
            upper_of: upper.iter().filter(|person| offered(person)).count(),
            lower: lower.iter().filter(|person| took(person)).count(),
            with_rest: correlation(&own, &rest),
        }
    };
    options.iter().map(of).collect()
}
