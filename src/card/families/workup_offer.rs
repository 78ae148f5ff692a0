//! What a card that asks for a diagnosis has at hand: tests, faults, causes and remedies, those of a look-alike among them.

use super::fault::{FIRST_LOOK, OF_LOOK_ALIKE, mends_tempts, rework_of, slug};
use super::fault_mend::likeliest_tempts;
use super::panel::{LOOKS_ALIKE, fault_tempts};
use crate::bench::Facts;
use crate::card::deal::OPTIONS_LEAST;
use crate::card::question::Tempt;
use crate::card::{Dice, Offered};
use crate::content::World;
use crate::rules::fault::{Fault, can_cause, first_cause, separates};
use crate::rules::sorted::sorted;

/// Things of each kind that a card has room for.
const OF_EACH: usize = 5;
/// Of the tests, those about which the fault says nothing.
const DUMB: usize = 2;
/// On one card in so many the test that would decide between twins is not at hand.
const LACKING_ONE_IN: u32 = 4;

/// The faults that look the same on a panel until a test tells them apart.
pub(super) fn twins<'a>(fault: &Fault, world: &World<'a>) -> Vec<&'a Fault> {
    let twins = world.content.panel(&fault.id).map(|panel| panel.twins.as_slice()).unwrap_or_default();
    twins.iter().filter_map(|twin| world.content.fault(twin)).collect()
}

/// Tests of which the fault speaks and some of which it says nothing, faults, causes and remedies.
pub(super) fn offer(facts: &Facts, world: &World<'_>, dice: &mut Dice) -> Option<Offered> {
    let fault = world.fault(facts.slug("fault").ok()?).ok()?;
    let twins = twins(fault, world);
    let tests = tests(fault, &twins, facts, world, dice);
    let (cause, rework) = (first_cause(fault, &[]).ok()?.answer, slug(rework_of(fault))?);
    // A list in which nothing of the twin stands would name the fault.
    let ids = twins.iter().map(|twin| twin.id.clone()).collect();
    let causes = twins.iter().filter_map(|twin| twin.causes.iter().find(|one| !can_cause(fault, one).answer));
    let reworks = twins.iter().filter_map(|twin| slug(rework_of(twin))).collect();
    Some(Offered {
        tests: tests.into_iter().map(str::to_owned).collect(),
        faults: among(&fault.id, ids, fault_tempts(facts, world), dice)?,
        causes: among(cause, causes.cloned().collect(), likeliest_tempts(facts, world), dice)?,
        remedies: among(&rework, reworks, mends_tempts(facts, world), dice)?,
    })
}

fn tests<'a>(
    fault: &Fault,
    twins: &[&Fault],
    facts: &Facts,
    world: &World<'a>,
    dice: &mut Dice,
) -> Vec<&'a str> {
    let lacking = dice.one_in(LACKING_ONE_IN);
    let decides = |key: &str| twins.iter().any(|twin| separates(fault, twin, key));
    let keys = world.content.probes().into_iter().map(|probe| probe.key).filter(|key| *key != FIRST_LOOK);
    let (mut telling, mut dumb): (Vec<_>, Vec<_>) = keys.partition(|key| facts.maybe_slug(key).is_some());
    dice.shuffle(&mut telling);
    dice.shuffle(&mut dumb);
    telling.retain(|key| !(lacking && decides(key)));
    telling = sorted(telling, |a, b| decides(b).cmp(&decides(a)));
    let mut tests: Vec<&str> = telling.into_iter().take(OF_EACH - DUMB).collect();
    tests.extend(dumb.into_iter().take(OF_EACH - tests.len()));
    dice.shuffle(&mut tests);
    tests
}

/// What names something of a look-alike comes first among what tempts.
const OF_LOOK_ALIKES: [&str; 3] = [LOOKS_ALIKE, "cause-of-its-look-alike", OF_LOOK_ALIKE];

/// The right one among tempting ones, of which some must be there.
fn among(right: &str, must: Vec<String>, mut tempts: Vec<Tempt>, dice: &mut Dice) -> Option<Vec<String>> {
    let mut all = vec![right.to_owned()];
    dice.shuffle(&mut tempts);
    let (alike, others): (Vec<Tempt>, Vec<Tempt>) =
        tempts.into_iter().partition(|tempt| OF_LOOK_ALIKES.contains(&tempt.slip));
    let tempts = alike.into_iter().chain(others).filter_map(|tempt| slug(tempt.answer));
    for slug in must.into_iter().chain(tempts) {
        if all.len() < OF_EACH && !all.contains(&slug) {
            all.push(slug);
        }
    }
    dice.shuffle(&mut all);
    (all.len() >= OPTIONS_LEAST).then_some(all)
}
