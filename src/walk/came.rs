//! What a walk came to, in a few figures and a hash: by them whoever walks it again knows whether the same came of it.
//!
//! The hash says nothing that can be read off it, so that it may travel with a walk whose hidden faults are not told yet. It
//! is no proof: whoever can run the program can make one.

use super::story::Walk;
use super::turn::{Read, Turn};
use crate::process::defect::Defect;
use crate::rules::term::Term;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::fmt::Write;

/// Bytes of the hash: enough that no walk comes by chance to what another came to.
const HASH_BYTES: usize = 16;

/// What a walk came to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Came {
    /// The day on which its clock stands, from 1.
    pub day: u32,
    /// Faults that came to light.
    pub faults: u32,
    /// Hash of all that came of its decisions, hidden or not: 32 hexadecimal digits.
    pub hash: String,
}

impl Came {
    /// What a walk came to so far.
    #[must_use]
    pub fn of(walk: &Walk) -> Self {
        let hash = Sha256::digest(told(walk).as_bytes());
        Self {
            day: super::clock::day(walk.clock()),
            faults: u32::try_from(walk.shown().len()).unwrap_or(u32::MAX),
            hash: hash.iter().take(HASH_BYTES).map(|byte| format!("{byte:02x}")).collect(),
        }
    }
}

/// All that came of it, a line each; by names and numbers that files use too, so that another edition of the program which
/// reckons the same tells the same.
fn told(walk: &Walk) -> String {
    let start = walk.start();
    let mut told = String::new();
    let head = (&start.info.slug, walk.mode().slug(), walk.seed(), start.sheet.hash());
    // A text takes whatever is written to it.
    let _ = writeln!(told, "{} {} {} {}", head.0, head.1, head.2, head.3);
    for turn in walk.turns() {
        let _ = writeln!(told, "{}", of_turn(turn));
    }
    for line in walk.lines() {
        let wet = line.wet.map_or(0.0, |wet| wet.get());
        let _ = writeln!(
            told,
            "{} {:?} {:.3} {:.3} {wet:.1}",
            line.operation.slug(),
            line.parts,
            line.begun,
            line.ended
        );
    }
    for defect in walk.run().defects() {
        let _ = writeln!(told, "{}", of_defect(defect));
    }
    for shown in walk.shown() {
        let _ = writeln!(told, "{} {} {:?}", of_defect(&shown.defect), shown.turn, shown.mended);
    }
    let _ = writeln!(told, "{} {:?} {:?}", walk.is_over(), walk.offered(), walk.stripped());
    told
}

fn of_turn(turn: &Turn) -> String {
    let lapses = turn.lapses.iter().map(|lapse| lapse.slug().to_owned());
    let read = turn.read.iter().map(|read| match read {
        Read::Air(air) => format!("{:.1} {:.1} {:.1}", air.air.get(), air.work.get(), air.humidity.get()),
        Read::Gauge { past } => past.to_string(),
        Read::Meter { part, moisture } => {
            format!("{part} {:.1}", moisture.map_or(0.0, |moisture| moisture.get()))
        }
        Read::Test(test) => test.slug().to_owned(),
    });
    let more: Vec<String> = lapses.chain(read).collect();
    format!("{:.3} {:.3} {}", turn.begun, turn.ended, more.join(" "))
}

fn of_defect(defect: &Defect) -> String {
    format!("{} {} {} {:?}", defect.rule().0, defect.made, defect.part, defect.met)
}
