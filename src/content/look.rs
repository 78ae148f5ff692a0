//! What a wood looks like on a computed panel.

use crate::picture::Species;
use serde::{Deserialize, Serialize};

/// A look of a wood: the same wood may have one plain and one figured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Look {
    /// Its slug.
    pub slug: String,
    /// The wood, by its slug.
    pub wood: String,
    /// Woods that nobody tells from it by eye, drawn as it is where the work is of them.
    #[serde(default)]
    pub also: Vec<String>,
    /// Rings, colours, pores, figure.
    pub species: Species,
}
