//! Words of the trade in several languages.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A word of the trade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TradeWord {
    /// In English.
    pub en: String,
    /// In other languages, by their codes.
    #[serde(rename = "in")]
    pub others: BTreeMap<String, Translated>,
}

/// A word in another language; several where the trade has several.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Translated {
    /// The word.
    pub is: String,
    /// Whether it stands in a source; from memory otherwise, for an instructor to confirm.
    pub read: bool,
}
