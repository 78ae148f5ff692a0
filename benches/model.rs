//! How long the model takes: judging a job of 40 operations, dealing and grading cards, diagnosing a fault, picking the next
//! card after 100,000 answers.
#![allow(missing_docs, reason = "a benchmark is no interface")]

use divan::{Bencher, black_box};
use serde_json::json;
use stepboard::bench::{Facts, calculations};
use stepboard::card::{Answer, deal, grade};
use stepboard::content::{Content, FamilyInfo, World};
use stepboard::judge::{judge, read};
use stepboard::learn::memory::{Answered, Day, Remembered, candidates, pick};
use stepboard::record::Certainty;
use stepboard::rules::sequence::route;
use stepboard::rules::term::Term;

/// Operations of the job that is judged.
const OPERATIONS: usize = 40;

fn main() {
    divan::main();
}

fn content() -> Content {
    Content::embedded().expect("the build script checked it")
}

/// The ticket with the longest route, its last operations done again until there are 40.
fn job(content: &Content) -> serde_json::Value {
    let routes = content.tickets.iter().map(|ticket| {
        let sheet = content.sheet(&ticket.sheet).expect("the sheet ships");
        let job = World { content, sheet }.job(ticket).expect("its woods are known");
        (ticket, route::plan(&job, sheet).steps)
    });
    let (ticket, steps) = routes.max_by_key(|(_, steps)| steps.len()).expect("tickets ship");
    let again = steps.iter().rev().cycle().take(OPERATIONS - steps.len().min(OPERATIONS));
    let steps: Vec<_> = steps
        .iter()
        .take(OPERATIONS)
        .chain(again)
        .map(|step| json!({ "operation": step.operation.slug() }))
        .collect();
    assert_eq!(steps.len(), OPERATIONS);
    json!({ "ticket": ticket.slug, "steps": steps })
}

#[divan::bench]
fn judge_a_job_of_40_operations(bencher: Bencher<'_, '_>) {
    let content = content();
    let account = read(&job(&content), &content).expect("it is a job");
    bencher.bench(|| judge(black_box(&account), &content));
}

#[divan::bench]
fn read_and_judge_it_from_json(bencher: Bencher<'_, '_>) {
    let content = content();
    let text = job(&content).to_string();
    bencher.bench(|| {
        let document = serde_json::from_str(black_box(&text)).expect("it is JSON");
        judge(&read(&document, &content).expect("it is a job"), &content)
    });
}

/// One card of each family, by turns.
#[divan::bench]
fn deal_a_card(bencher: Bencher<'_, '_>) {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut turns = content.families.iter().cycle().zip(0_u32..);
    bencher
        .with_inputs(|| turns.next().expect("it goes round"))
        .bench_local_values(|(family, seed)| deal(&world, &family.id, seed));
}

#[divan::bench]
fn grade_a_card(bencher: Bencher<'_, '_>) {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut turns = content.families.iter().cycle().zip(0_u32..);
    bencher
        .with_inputs(|| {
            let (family, seed) = turns.next().expect("it goes round");
            let card = deal(&world, &family.id, seed).expect("every family deals");
            let answer = card.options.first().cloned().unwrap_or(Answer::NotEnough);
            (card, answer)
        })
        .bench_local_refs(|(card, answer)| grade(card, &world, answer));
}

/// Two observations, as a finisher tells them, and the probe to do next.
#[divan::bench]
fn diagnose_a_fault(bencher: Bencher<'_, '_>) {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut facts = Facts::default();
    for (key, answer) in [("mark", "pits"), ("came", "within-the-hour")] {
        facts.read(&content, key, answer).expect("a probe and its answer");
    }
    let diagnose = calculations().into_iter().find(|one| one.name == "diagnose").expect("an entry");
    bencher.bench(|| (diagnose.run)(black_box(&facts), &world));
}

#[divan::bench]
fn read_the_content() -> Content {
    content()
}

/// Answers of a long apprenticeship.
const ANSWERS: usize = 100_000;

/// Answers over all families by turns, one in seven wrong, fifty a day.
fn answers(content: &Content) -> Vec<Answered> {
    let turns = content.families.iter().cycle().zip(0_i32..).take(ANSWERS);
    let answered = |(family, nth): (&FamilyInfo, i32)| Answered {
        family: family.id.clone(),
        day: Day(nth / 50),
        right: nth % 7 != 0,
        certainty: Certainty::TestBoard,
        helped: false,
        active_seconds: Some(30),
    };
    turns.map(answered).collect()
}

#[divan::bench]
fn read_100_000_answers(bencher: Bencher<'_, '_>) {
    let history = answers(&content());
    bencher.bench(|| Remembered::of(black_box(&history)));
}

#[divan::bench]
fn pick_the_next_card_after_100_000_answers(bencher: Bencher<'_, '_>) {
    let content = content();
    let (all, past) = (candidates(&content, None, &|_| None), Remembered::of(&answers(&content)));
    bencher.bench(|| pick(black_box(&all), &past, Day(2_100)).map(|chosen| chosen.reason));
}
