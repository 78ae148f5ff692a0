//! What a finish room has at hand for the work: every operation, what it asks for, and the spans of a shop.

use crate::quantity::Unit;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// Where in the finish room something is done. Text: `walk.place.<slug>`.
    Place {
        /// The sanding and filling bench.
        Bench = "bench",
        /// The spray booth.
        Booth = "booth",
        /// The drying rack.
        Rack = "rack",
        /// The buffing wheel.
        Wheel = "wheel",
    }
    /// A number that an operation asks for. Text: `walk.ask.<slug>`.
    Ask {
        /// Last paper used, P grade.
        LastGrit = "last-grit",
        /// Coats.
        Coats = "coats",
        /// Hours from the end of a coat to the next.
        Between = "between",
        /// Wet film on the comb.
        WetFilm = "wet-film",
        /// Gun to work.
        Distance = "distance",
        /// Overlap of the passes, as a share of the full fan.
        Overlap = "overlap",
        /// Age of the mix.
        MixAge = "mix-age",
    }
    /// A way of using the gun or the blade that no number tells.
    Handling {
        /// The face stands upright.
        Standing = "standing",
        /// Both faces are sprayed wet to their common edge.
        EdgeTwice = "edge-twice",
        /// The mix is thicker than the gun takes.
        ThickMix = "thick-mix",
        /// The scraper is held at one angle.
        ScraperSquare = "scraper-square",
    }
}

/// What some operations ask for. An operation may stand in several entries; it then asks for all that they name.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tool {
    /// Name of the entry.
    pub slug: String,
    /// The operations.
    pub operations: Vec<Operation>,
    /// Where they are done.
    pub place: Place,
    /// Numbers that they ask for.
    #[serde(default)]
    pub numbers: Vec<Number>,
    /// Choices that they ask for.
    #[serde(default, rename = "choice")]
    pub choices: Vec<Choice>,
}

/// A number with the span in which it can be set. It begins in the middle of what shops use, right or wrong.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Number {
    /// What it is.
    pub ask: Ask,
    /// Its unit.
    pub unit: Unit,
    /// Least value.
    pub from: f64,
    /// Greatest value.
    pub to: f64,
    /// From one value to the next.
    pub step: f64,
    /// The value that it begins with.
    pub start: f64,
    /// The only values there are, where they lie on no even steps.
    #[serde(default)]
    pub among: Vec<f64>,
}

/// A choice; nothing is chosen to begin with. Text: `walk.choice.<key>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// Its name.
    pub key: String,
    /// What can be chosen.
    pub options: Vec<Pick>,
}

/// Something that can be chosen. Text: `walk.pick.<key>.<slug>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pick {
    /// Its name.
    pub slug: String,
    /// Remarks that hold then.
    #[serde(default)]
    pub manners: Vec<Manner>,
    /// How gun or blade are used then.
    #[serde(default)]
    pub handling: Option<Handling>,
}

impl Number {
    /// Whether a value can be set.
    #[must_use]
    pub fn allows(&self, value: f64) -> bool {
        let inside = value >= self.from && value <= self.to;
        inside && (self.among.is_empty() || self.among.contains(&value))
    }
}
