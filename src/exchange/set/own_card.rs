//! A card of the shop's own: fixed text, graded by comparing. The model knows nothing of it, so it is evidence for nothing.

use crate::card::{Answer, Mark};
use crate::exchange::Refused;
use crate::exchange::fit::line;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::ops::RangeInclusive;

/// Begins the family id of every card of a shop's own. No family of content begins so.
pub const OWN_CARD: &str = "own-card-";
/// How many options it may have.
pub const OWN_OPTIONS: RangeInclusive<usize> = 2..=8;
/// Characters of the question, of an option and of the reason, at most. Our own limits: a question stands on four lines of a
/// phone, an option on two, a reason on six.
pub const QUESTION_MOST: usize = 240;
/// See [`QUESTION_MOST`].
pub const OPTION_MOST: usize = 120;
/// See [`QUESTION_MOST`].
pub const WHY_MOST: usize = 400;
/// Bytes of the hash in its id: no two cards that anybody ever meets have the same.
const ID_BYTES: usize = 8;

/// The tag of a card that is not computed; there is no other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum NotComputed {
    /// Not computed.
    #[default]
    #[serde(rename = "not_computed")]
    NotComputed,
}

/// A card of the shop's own.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnCard {
    /// That it is not computed.
    pub tag: NotComputed,
    /// The question.
    pub question: String,
    /// What can be answered.
    pub options: Vec<String>,
    /// The right ones, by their place from 1. With more than one, all that apply are asked for.
    pub right: Vec<u32>,
    /// Why they are right.
    pub why: String,
}

impl OwnCard {
    /// The version under which it is answered: another text is another card, so there is no second one.
    pub const VERSION: u32 = 1;

    /// The family id under which it is answered: the same card is the same in every set.
    #[must_use]
    pub fn id(&self) -> String {
        let text = serde_json::to_vec(self).unwrap_or_default();
        let hash = Sha256::digest(&text);
        let hash: String = hash.iter().take(ID_BYTES).map(|byte| format!("{byte:02x}")).collect();
        format!("{OWN_CARD}{hash}")
    }

    /// Whether all that apply are asked for, and not one.
    #[must_use]
    pub fn asks_all(&self) -> bool {
        self.right.len() > 1
    }

    /// The answer that says the option at that place, from 1.
    #[must_use]
    pub fn term(place: u32) -> String {
        format!("option-{place}")
    }

    /// What picked options answer, by their places from 1; none where none is picked.
    #[must_use]
    pub fn answer(&self, picked: &[u32]) -> Option<Answer> {
        let first = picked.first()?;
        Some(if self.asks_all() {
            Answer::Terms(picked.iter().copied().map(Self::term).collect())
        } else {
            Answer::Term(Self::term(*first))
        })
    }

    /// The places that are picked after one more was touched: with one right answer that one alone, else it is picked or let
    /// go.
    #[must_use]
    pub fn pick(&self, picked: &[u32], place: u32) -> Vec<u32> {
        if !self.asks_all() {
            return vec![place];
        }
        let mut now: Vec<u32> = picked.iter().copied().filter(|one| *one != place).collect();
        if now.len() == picked.len() {
            now.push(place);
        }
        now
    }

    /// The right answer.
    #[must_use]
    pub fn right_answer(&self) -> Answer {
        self.answer(&self.right).unwrap_or_else(|| Answer::Terms(Vec::new()))
    }

    /// Chance to answer it right by luck: one of the options, or one of the ways to pick some of them.
    #[must_use]
    pub fn luck(&self) -> f64 {
        let options = f64::from(u32::try_from(self.options.len()).unwrap_or(u32::MAX));
        if self.asks_all() { 1.0 / (libm::exp2(options) - 1.0) } else { 1.0 / options }
    }

    /// The mark of an answer, by comparing: right is what is listed, no more and no less.
    #[must_use]
    pub fn grade(&self, answer: &Answer) -> Mark {
        if answer.agrees(&self.right_answer()) { Mark::Right } else { Mark::Wrong }
    }

    /// What an answer says, in the words of its options.
    #[must_use]
    pub fn said<'a>(&'a self, answer: &Answer) -> Vec<&'a str> {
        let said = |place: &u32| match answer {
            Answer::Term(term) => *term == Self::term(*place),
            Answer::Terms(terms) => terms.contains(&Self::term(*place)),
            _ => false,
        };
        let numbered = (1_u32..).zip(&self.options).filter(|(place, _)| said(place));
        numbered.map(|(_, option)| option.as_str()).collect()
    }

    /// Checks texts, options and which of them are right.
    ///
    /// # Errors
    /// [`Refused::Value`].
    pub fn check(&self) -> Result<(), Refused> {
        line("question", &self.question, QUESTION_MOST, false)?;
        line("why", &self.why, WHY_MOST, false)?;
        if !OWN_OPTIONS.contains(&self.options.len()) {
            let allowed = format!("{} to {} options are allowed", OWN_OPTIONS.start(), OWN_OPTIONS.end());
            return Err(Refused::value("options", self.options.len(), allowed));
        }
        for (nth, option) in self.options.iter().enumerate() {
            line(&format!("options.{nth}"), option, OPTION_MOST, false)?;
            if self.options.iter().take(nth).any(|before| before == option) {
                return Err(Refused::value(format!("options.{nth}"), option, "each option once"));
            }
        }
        let most = u32::try_from(self.options.len()).unwrap_or(u32::MAX);
        let rising = self.right.windows(2).all(|pair| pair.first() < pair.last());
        let within = self.right.iter().all(|place| (1..=most).contains(place));
        if self.right.is_empty() || !rising || !within {
            let found = format!("{:?}", self.right);
            return Err(Refused::value(
                "right",
                found,
                format!("places from 1 to {most} that rise, at least one"),
            ));
        }
        Ok(())
    }
}
