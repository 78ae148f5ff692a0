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
    /// Rings, colours, pores, figure.
    pub species: Species,
}
