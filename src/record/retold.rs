//! Which decisions of walks are told for the first time: two windows may each have written one down.

use super::{Decided, Walked, Way};
use serde_json::Value;
use std::collections::BTreeMap;

/// The decisions that were told so far, by device and walk.
#[derive(Debug, Default)]
pub struct Retold<'a> {
    walks: BTreeMap<(&'a str, &'a str), BTreeMap<u32, &'a Value>>,
}

impl<'a> Retold<'a> {
    /// Takes a decision; gives whether it is told for the first time. What a guide takes back is decided anew at its place;
    /// without one nothing is taken back.
    pub fn is_new(&mut self, walked: &'a Walked, decided: &'a Decided) -> bool {
        let stands = self.walks.entry((&walked.stamp.device, &walked.walk)).or_default();
        let told = stands.get(&decided.nth);
        let again = match decided.way {
            Way::Own => told.is_some(),
            Way::Guided => told == Some(&&decided.decision),
        };
        if !again {
            stands.retain(|nth, _| *nth < decided.nth);
            stands.insert(decided.nth, &decided.decision);
        }
        !again
    }
}
