//! A sample of everything that is computed, a line for each calculation, card family, judged job and schedule with the
//! hash of all that it gave. The same program runs natively and in WebAssembly (`tools/agree.mjs`); the lines must be the
//! same.

#[path = "../support/told.rs"]
mod told;

use serde_json::json;
use sha2::{Digest, Sha256};
use std::fmt::Write;
use stepboard::bench::calculations;
use stepboard::card::{Answer, Dice, deal, grade, solve};
use stepboard::content::{Content, Ticket, World};
use stepboard::judge::{judge, read};
use stepboard::process::air::AirLog;
use stepboard::process::run::Run;
use stepboard::process::shortest::shortest;
use stepboard::rules::sequence::route;
use stepboard::rules::term::Term;

/// Inputs a calculation.
const INPUTS: u32 = 60;
/// Cards a family on each sheet.
const CARDS: u32 = 6;

/// Jobs a ticket.
const JOBS: u32 = 10;
/// One step in so many is left out, and one wait in so many is another one.
const LEFT_OUT: u32 = 8;

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
    for ticket in &content.tickets {
        lines.push(judged(content, ticket).line("job", &ticket.slug));
        lines.push(scheduled(content, ticket).line("schedule", &ticket.slug));
    }
    lines
}

/// The shortest schedule of a ticket on every sheet, with the films and faults of its run and of the replay.
fn scheduled(content: &Content, ticket: &Ticket) -> Seal {
    let mut seal = Seal::default();
    for sheet in &content.sheets {
        let job = World { content, sheet }.job(ticket).expect("its woods are known");
        let found = shortest(&job, ticket.clear_coats, sheet, &AirLog::default()).expect("a fit room");
        let replayed = Run::replay(found.run.saved().clone()).expect("everything is told");
        seal.add(&format!("{:?} {:?} {replayed:?}", found.steps, found.total));
    }
    seal
}

/// The route of a ticket with some steps left out and some waits cut short, judged.
fn judged(content: &Content, ticket: &Ticket) -> Seal {
    let sheet = content.sheet(&ticket.sheet).expect("the sheet ships");
    let job = World { content, sheet }.job(ticket).expect("its woods are known");
    let route = route::plan(&job, sheet).steps;
    let (mut seal, mut dice) = (Seal::default(), Dice::new(&ticket.slug));
    for _ in 0..JOBS {
        let mut steps = Vec::new();
        for step in &route {
            if dice.one_in(LEFT_OUT) {
                continue;
            }
            let mut told = json!({ "operation": step.operation.slug() });
            if dice.one_in(LEFT_OUT) {
                told["after_h"] = json!(dice.on_grid(0.0, 100.0, 0.1));
            }
            steps.push(told);
        }
        let account = read(&json!({ "ticket": ticket.slug, "steps": steps }), content);
        // What is found is plain data: its debug form has every bit of a number too.
        seal.add(&format!("{:?}", account.map(|account| judge(&account, content))));
    }
    seal
}

fn main() {
    let content = Content::embedded().expect("the build script checked it");
    let lines = lines(&content);
    let text = format!("sample of {} lines\n{}\nend of the sample", lines.len(), lines.join("\n"));
    println!("{text}");
    // Printing does nothing in WebAssembly: the text is left in memory and read there.
    std::hint::black_box(text.leak());
}
