//! Lists of the content that are each read by a function of their own.

use serde::{Deserialize, Deserializer};

/// Reads a value, in a function that stays one: the whole content read in one function is so long that browsers take a tenth of a
/// second to compile it well, beside the start of the app, and it runs once. The optimiser leaves it one too (`tools/dist.mjs`).
///
/// # Errors
/// Those of the reader.
#[inline(never)]
pub(super) fn apart<'de, D: Deserializer<'de>, T: Deserialize<'de>>(from: D) -> Result<T, D::Error> {
    T::deserialize(from)
}
