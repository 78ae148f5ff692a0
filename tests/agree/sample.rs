//! A sample of everything that is computed, a line for each calculation and each card family with the hash of all that it
//! gave. The same program runs natively and in WebAssembly (`tools/agree.mjs`); the lines must be the same.

#[path = "../support/told.rs"]
mod told;

use sha2::{Digest, Sha256};
use std::fmt::Write;
use stepboard::bench::calculations;
use stepboard::card::{Answer, Dice, deal, grade, solve};
use stepboard::content::{Content, World};

/// Inputs a calculation.
const INPUTS: u32 = 60;
/// Cards a family on each sheet.
const CARDS: u32 = 6;

/// Hashes what is given to it as JSON: every bit of a number is in its text.
#[derive(Default)]
struct Seal(Sha256);

impl Seal {
    fn add(&mut self, value: &impl serde::Serialize) {
        self.0.update(serde_json::to_vec(value).expect("plain data"));
    }

    fn line(self, kind: &str, name: &str) -> String {
        let mut line = format!("{kind} {name} ");
        for byte in self.0.finalize() {
            write!(line, "{byte:02x}").expect("a string takes it");
        }
        line
    }
}

fn lines(content: &Content) -> Vec<String> {
    let mut lines = Vec::new();
    for calculation in calculations() {
        let (mut seal, mut dice) = (Seal::default(), Dice::new(calculation.name));
        for _ in 0..INPUTS {
            let sheet = dice.pick(&content.sheets).expect("sheets ship");
            let facts = told::facts(content, calculation, &mut dice);
            match (calculation.run)(&facts, &World { content, sheet }) {
                Ok(ruling) => seal.add(&(facts, ruling.answer, ruling.rules, ruling.working)),
                Err(cannot) => seal.add(&(facts, cannot)),
            }
        }
        lines.push(seal.line("work", calculation.name));
    }
    for family in &content.families {
        let mut seal = Seal::default();
        for sheet in &content.sheets {
            let world = World { content, sheet };
            for seed in 0..CARDS {
                let card = deal(&world, &family.id, seed).expect("every family deals");
                seal.add(&(&card, solve(&card, &world)));
                for option in card.options.iter().chain([&Answer::NotEnough]) {
                    seal.add(&grade(&card, &world, option));
                }
            }
        }
        lines.push(seal.line("card", &family.id));
    }
    lines
}

fn main() {
    let content = Content::embedded().expect("the build script checked it");
    let lines = lines(&content);
    let text = format!("sample of {} lines\n{}\nend of the sample", lines.len(), lines.join("\n"));
    println!("{text}");
    // Printing does nothing in WebAssembly: the text is left in memory and read there.
    std::hint::black_box(text.leak());
}
