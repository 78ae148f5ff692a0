//! The answer to a card while it is being made: what is picked, the order so far, the figure typed.

use super::{Answer, Card, Kind, Named, Place};
use crate::quantity::{Measure, Unit};
use crate::spraying::Run;
use serde::{Deserialize, Serialize};

/// Longest figure that can be typed.
const FIGURE_MOST: usize = 8;

/// An answer in the making. Options are meant by their place on the card.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Slate {
    /// Options picked, or all options in the order so far.
    pub marks: Vec<usize>,
    /// Figure typed, with a decimal point.
    pub figure: String,
    /// Unit of the figure.
    pub unit: Option<Unit>,
    /// Place pointed at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Place>,
    /// Tests done and what is named so far.
    #[serde(default, skip_serializing_if = "Named::is_empty")]
    pub named: Named,
    /// The face as it was sprayed last.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub run: Option<Box<Run>>,
    /// Whether "not enough is told" is the answer.
    pub not_enough: bool,
}

impl Slate {
    /// An empty answer to a card; of things to place, the order in which they were dealt.
    #[must_use]
    pub fn for_card(card: &Card) -> Self {
        let marks = if card.kind == Kind::Order { (0..card.options.len()).collect() } else { Vec::new() };
        Self { marks, unit: card.unit, ..Self::default() }
    }

    /// An option picked; on cards that ask for several, picking it again takes it back.
    #[must_use]
    pub fn pick(mut self, kind: Kind, option: usize) -> Self {
        self.not_enough = false;
        match kind {
            Kind::ChooseOne => self.marks = vec![option],
            Kind::ChooseAll => match self.marks.iter().position(|mark| *mark == option) {
                Some(at) => {
                    self.marks.remove(at);
                }
                None => self.marks.push(option),
            },
            Kind::Order | Kind::Number | Kind::Point | Kind::Diagnose | Kind::Spray => {}
        }
        self
    }

    /// A place pointed at.
    #[must_use]
    pub fn pointed(mut self, place: Place) -> Self {
        self.not_enough = false;
        self.place = Some(place);
        self
    }

    /// A test done, or something named. Looking again at what a test showed takes nothing back.
    #[must_use]
    pub fn naming(mut self, named: Named) -> Self {
        self.not_enough &= self.named.answers_as(&named);
        self.named = named;
        self
    }

    /// A face sprayed; an earlier run is gone.
    #[must_use]
    pub fn sprayed(mut self, run: Run) -> Self {
        self.not_enough = false;
        self.run = Some(Box::new(run));
        self
    }

    /// "Not enough is told", or taken back.
    #[must_use]
    pub fn toggle_not_enough(mut self) -> Self {
        self.not_enough = !self.not_enough;
        self
    }

    /// The thing at a place moved one place up or down.
    #[must_use]
    pub fn moved(mut self, place: usize, down: bool) -> Self {
        let other = if down { place.checked_add(1) } else { place.checked_sub(1) };
        if let Some(other) = other.filter(|other| *other < self.marks.len() && place < self.marks.len()) {
            self.marks.swap(place, other);
        }
        self.not_enough = false;
        self
    }

    /// A key of the keypad: a digit, a point or comma, a minus, or backspace as `\u{8}`. Others change nothing.
    #[must_use]
    pub fn typed(mut self, key: char) -> Self {
        self.not_enough = false;
        match key {
            '\u{8}' => {
                self.figure.pop();
            }
            '-' => {
                self.figure = match self.figure.strip_prefix('-') {
                    Some(rest) => rest.to_owned(),
                    None => format!("-{}", self.figure),
                };
            }
            _ if self.figure.len() >= FIGURE_MOST => {}
            '.' | ',' if !self.figure.contains('.') => {
                if self.figure.is_empty() || self.figure == "-" {
                    self.figure.push('0');
                }
                self.figure.push('.');
            }
            digit if digit.is_ascii_digit() => self.figure.push(digit),
            _ => {}
        }
        self
    }

    /// The figure in another unit: the figure stays, only what it means changes.
    #[must_use]
    pub fn in_unit(mut self, unit: Unit) -> Self {
        self.unit = Some(unit);
        self
    }

    /// The answer to hand in; `None` while nothing is picked or typed.
    #[must_use]
    pub fn answer(&self, card: &Card) -> Option<Answer> {
        if self.not_enough {
            return Some(Answer::NotEnough);
        }
        let option = |mark: &usize| card.options.get(*mark).cloned();
        let slugs = || {
            let terms = self.marks.iter().filter_map(option);
            let slug = |answer| if let Answer::Term(slug) = answer { Some(slug) } else { None };
            terms.filter_map(slug).collect::<Vec<String>>()
        };
        match card.kind {
            Kind::ChooseOne => self.marks.first().and_then(option),
            Kind::ChooseAll => Some(Answer::Terms(slugs())).filter(|_| !self.marks.is_empty()),
            Kind::Order => Some(Answer::Order(slugs())),
            Kind::Point => self.place.map(Answer::Place),
            Kind::Diagnose => self.named.diagnosis().map(Answer::Diagnosis),
            Kind::Spray => self.run.as_deref().cloned().map(Answer::Run),
            Kind::Number => {
                let value = self.figure.parse().ok()?;
                let decimals = self.figure.split('.').nth(1).map_or(0, str::len);
                Some(Answer::Number(Measure::new(value, self.unit?, u8::try_from(decimals).ok()?)))
            }
        }
    }
}
