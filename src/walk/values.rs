//! The values of an operation, each checked against what is at hand.

use super::at_hand::asked;
use super::decision::{Decision, Work};
use super::impossible::{Impossible, Why};
use super::start::Start;
use crate::content::{Ask, Content, Handling, Pick};
use crate::process::technique::Pass;
use crate::quantity::{Fraction, Micrometres, Millimetres};
use crate::rules::term::Term;
use std::collections::BTreeMap;

/// The values of an operation, each checked.
pub(super) struct Values<'a> {
    pub(super) numbers: BTreeMap<Ask, f64>,
    pub(super) picks: Vec<&'a Pick>,
}

/// What is set and chosen, or what is wrong with it.
pub(super) fn values<'a>(
    start: &Start,
    content: &'a Content,
    what: &Decision,
    work: &Work,
) -> Result<Values<'a>, Box<Impossible>> {
    let at_hand = asked(content, &start.sheet, work.operation);
    let mut numbers: BTreeMap<Ask, f64> = at_hand.numbers.iter().map(|one| (one.ask, one.start)).collect();
    for (ask, value) in &work.numbers {
        let Some(number) = at_hand.numbers.iter().find(|one| one.ask == *ask) else {
            return Err(Impossible::new(what, Why::UnknownValue).at(ask.slug()));
        };
        if !number.allows(*value) {
            let refused = Impossible::new(what, Why::UnknownValue).at(ask.slug());
            return Err(refused.within(number.from, number.to));
        }
        numbers.insert(*ask, *value);
    }
    let strange = work.picks.keys().find(|key| !at_hand.choices.iter().any(|choice| choice.key == **key));
    if let Some(key) = strange {
        return Err(Impossible::new(what, Why::UnknownValue).at(key));
    }
    let mut picks = Vec::new();
    for choice in &at_hand.choices {
        let Some(picked) = work.picks.get(&choice.key) else {
            return Err(Impossible::new(what, Why::Unchosen).at(&choice.key));
        };
        let Some(pick) = choice.options.iter().find(|pick| pick.slug == *picked) else {
            return Err(Impossible::new(what, Why::UnknownValue).at(&choice.key));
        };
        picks.push(pick);
    }
    Ok(Values { numbers, picks })
}

impl Values<'_> {
    /// The pass of the gun; `draws_badly`: nothing takes dust and mist away.
    pub(super) fn pass(&self, draws_badly: bool) -> Pass {
        let number = |ask: Ask| self.numbers.get(&ask).copied();
        let is = |handling| self.picks.iter().any(|pick| pick.handling == Some(handling));
        Pass {
            wet_um: number(Ask::WetFilm).map(Micrometres::saturating),
            distance_mm: number(Ask::Distance).map(Millimetres::saturating),
            overlap: number(Ask::Overlap).map(Fraction::saturating),
            edge_radius_mm: None,
            standing: is(Handling::Standing),
            edge_sprayed_twice: is(Handling::EdgeTwice),
            extraction_off: draws_badly,
            thick_mix: is(Handling::ThickMix),
            metallic: false,
            scraper_square: is(Handling::ScraperSquare),
        }
    }
}
