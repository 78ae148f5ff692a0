//! What is at hand: every operation is there once with each of its values.

use super::Reader;
use super::check::{IN_SLUG, spelt};
use crate::content::{Ask, Content, Number, Tool};
use crate::rules::sequence::operation::Operation;
use crate::rules::term::Term;
use std::collections::BTreeSet;

/// Put away with the other duties of the room, not taken from a bench.
const OF_THE_ROOM: [Operation; 1] = [Operation::RagsAway];

/// Reports what does not fit in the tools.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    let mut asked: BTreeSet<(Operation, String)> = BTreeSet::new();
    for (index, tool) in content.tools.iter().enumerate() {
        spans(index, tool, reader);
        choices(index, tool, reader);
        let numbers = tool.numbers.iter().map(|number| number.ask.slug().to_owned());
        let keys: Vec<String> = numbers.chain(tool.choices.iter().map(|one| one.key.clone())).collect();
        for operation in &tool.operations {
            for key in &keys {
                if !asked.insert((*operation, key.clone())) {
                    let message = format!("`{}` is asked for `{key}` twice", operation.slug());
                    reader.at("tool", index, "operations", message);
                }
            }
        }
    }
    let there: BTreeSet<Operation> =
        content.tools.iter().flat_map(|tool| tool.operations.iter().copied()).chain(OF_THE_ROOM).collect();
    if reader.knows("tool") {
        for operation in Operation::ALL.iter().filter(|operation| !there.contains(*operation)) {
            reader.whole("at_hand.toml", format!("operation `{}` is nowhere at hand", operation.slug()));
        }
    }
}

fn spans(index: usize, tool: &Tool, reader: &mut Reader) {
    for (nth, number) in tool.numbers.iter().enumerate() {
        let rises = number.from < number.to && number.step > 0.0 && number.step.is_finite();
        let whole = number.among.iter().all(|value| (number.from..=number.to).contains(value));
        let gun = number.ask != Ask::Coats || number.from >= 1.0;
        if !(rises && whole && gun && starts(number)) {
            let message = format!(
                "`{}` needs from under to, a step over 0, and a start among its values; coats begin at 1",
                number.ask.slug()
            );
            reader.at("tool", index, &format!("numbers.{nth}"), message);
        }
    }
}

fn starts(number: &Number) -> bool {
    number.allows(number.start)
}

fn choices(index: usize, tool: &Tool, reader: &mut Reader) {
    for (nth, choice) in tool.choices.iter().enumerate() {
        let at = format!("choice.{nth}.key");
        spelt("tool", index, &at, &choice.key, IN_SLUG, reader);
        let mut names = BTreeSet::new();
        for pick in &choice.options {
            spelt("tool", index, &at, &pick.slug, IN_SLUG, reader);
            if !names.insert(pick.slug.as_str()) {
                reader.at("tool", index, &at, format!("`{}` stands twice", pick.slug));
            }
        }
        if names.len() < 2 {
            reader.at("tool", index, &at, format!("choice `{}` needs two options or more", choice.key));
        }
    }
}
