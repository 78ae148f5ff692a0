//! The values of an operation as the shop sheet asks for them.

use super::super::at_hand::asked;
use super::super::decision::Work;
use super::super::story::Walk;
use crate::content::{Ask, Choice, Content};
use crate::rules::air::Thinner;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;
use crate::rules::shading::{self, distance};
use crate::rules::sheet::{Setting, Sheet};
use std::collections::BTreeMap;

/// Half a fan: by universal teaching (air-board tip sheet; TM 1-1500-344-23-2, A-8.3).
const OVERLAP: f64 = 0.5;

/// An operation on some parts with the values that the sheet asks for, in fit air.
#[must_use]
pub fn as_the_sheet_asks(walk: &Walk, content: &Content, operation: Operation, parts: Vec<usize>) -> Work {
    work(walk, content, operation, parts, Thinner::Fast)
}

pub(super) fn work(
    walk: &Walk,
    content: &Content,
    operation: Operation,
    parts: Vec<usize>,
    thinner: Thinner,
) -> Work {
    let start = walk.start();
    let at_hand = asked(content, &start.sheet, operation);
    let mut numbers: BTreeMap<Ask, f64> = BTreeMap::new();
    for number in &at_hand.numbers {
        let value = number_for(number.ask, operation, &start.sheet);
        let best = number.among.iter().copied().filter(|among| *among <= value).reduce(f64::max);
        numbers.insert(number.ask, best.unwrap_or(value).clamp(number.from, number.to));
    }
    let mut wanted = vec![Manner::Sample, Manner::Light, Manner::BallTest, Manner::WipedOn];
    wanted.extend(start.info.stain);
    wanted.extend((thinner == Thinner::Retarded).then_some(Manner::Retarder));
    let bare = parts.iter().any(|part| walk.part(*part).is_some_and(|lying| !lying.is_coated()));
    let barrier = |part: &usize| {
        start.job.parts.get(*part).is_some_and(|about| about.is_oily() || about.wants_barrier())
    };
    wanted.extend((bare && parts.iter().any(barrier)).then_some(Manner::Barrier));
    let picks =
        at_hand.choices.iter().filter_map(|choice| Some((choice.key.clone(), pick(choice, &wanted)?)));
    Work { operation, parts, numbers, picks: picks.collect() }
}

fn number_for(ask: Ask, operation: Operation, sheet: &Sheet) -> f64 {
    let pass = match operation {
        Operation::Shade => shading::Pass::Shading,
        _ => shading::Pass::Body,
    };
    match ask {
        Ask::LastGrit if operation == Operation::Level => sheet.get(Setting::CompoundGrit),
        Ask::LastGrit => sheet.get(Setting::LastGrit),
        Ask::Coats => 1.0,
        Ask::Between => sheet.wait(Setting::ClearWait),
        Ask::WetFilm => sheet.get(Setting::ClearWet),
        Ask::Distance => {
            let (near, far) = distance(sheet, pass);
            f64::midpoint(near.get(), far.get())
        }
        Ask::Overlap => OVERLAP,
        Ask::MixAge => 0.0,
    }
}

/// What is picked: what is wanted by name, else what is done with no remark.
fn pick(choice: &Choice, wanted: &[Manner]) -> Option<String> {
    let plain = |one: &&crate::content::Pick| one.manners.is_empty() && one.handling.is_none();
    let asked = choice
        .options
        .iter()
        .find(|one| !one.manners.is_empty() && one.manners.iter().all(|manner| wanted.contains(manner)));
    asked.or_else(|| choice.options.iter().find(plain)).map(|one| one.slug.clone())
}
