//! What was decided before, to be done the same again: an operation with its values, what was put on and seen to.

use super::at_hand::{AtHand, place_of};
use super::clock::day;
use super::decision::{Decision, RoomAct, Work, Worn};
use super::story::Walk;
use crate::content::{Ask, Choice, Content, Place};
use crate::rules::sequence::operation::Operation;
use std::collections::BTreeSet;

/// The operations of some decisions, the last first.
pub fn works<'a>(decisions: impl DoubleEndedIterator<Item = &'a Decision>) -> impl Iterator<Item = &'a Work> {
    decisions.rev().filter_map(|decision| match decision {
        Decision::Work(work) => Some(work),
        _ => None,
    })
}

/// The operations of a walk, the last first.
pub fn done(walk: &Walk) -> impl Iterator<Item = &Work> {
    works(walk.turns().iter().map(|turn| &turn.decision))
}

/// The last time that an operation was done on a walk.
#[must_use]
pub fn last(walk: &Walk, operation: Operation) -> Option<&Work> {
    done(walk).find(|work| work.operation == operation)
}

/// Numbers of how the gun is held: they stay from one material to the next. Coats, waits, the film and the age of the mix
/// do not.
const OF_THE_GUN: [Ask; 2] = [Ask::Distance, Ask::Overlap];

/// How the gun was last held for another operation, where this one asks for it and allows it.
#[must_use]
pub fn as_the_gun_is_set(walk: &Walk, content: &Content, asked: &AtHand<'_>) -> Option<Work> {
    let sprayed = |operation| place_of(content, operation) == Some(Place::Booth);
    let before = done(walk).find(|work| sprayed(work.operation)).filter(|_| sprayed(asked.operation))?;
    let number = |(ask, value): (&_, &f64)| {
        let kept = OF_THE_GUN.contains(ask);
        let number = asked.numbers.iter().find(|number| kept && number.ask == *ask)?;
        number.allows(*value).then_some((*ask, *value))
    };
    let pick = |(key, slug): (&String, &String)| {
        let choice = asked.choices.iter().find(|choice| choice.key == *key && is_of_handling(choice))?;
        let option = choice.options.iter().find(|option| option.slug == *slug)?;
        Some((key.clone(), option.slug.clone()))
    };
    Some(Work {
        operation: asked.operation,
        parts: before.parts.clone(),
        numbers: before.numbers.iter().filter_map(number).collect(),
        picks: before.picks.iter().filter_map(pick).collect(),
    })
}

/// Whether all that differs between its options is how the gun is held.
fn is_of_handling(choice: &Choice) -> bool {
    let options = &choice.options;
    options.iter().any(|one| one.handling.is_some()) && options.iter().all(|one| one.manners.is_empty())
}

/// What was on and seen to when there was last work at a place, as far as it is not so now: first what is worn, then the
/// duties. What would take protection off is not among it.
#[must_use]
pub fn ready_as_before(walk: &Walk, content: &Content, place: Place) -> Vec<Decision> {
    let Some((worn, seen_to)) = stood(walk, content, place) else { return Vec::new() };
    let room = walk.room();
    let stands = |duty: &RoomAct| match duty {
        RoomAct::FanOn => room.fan,
        RoomAct::GaugeRead => room.gauge_read,
        RoomAct::AirRead => room.air_read.is_some_and(|read| read >= walk.clock()),
        RoomAct::SourcesOut => room.sources_out,
        RoomAct::WheelChecked => room.wheel_checked,
        _ => true,
    };
    let duties: Vec<RoomAct> = seen_to.into_iter().filter(|duty| !stands(duty)).collect();
    let wear = (room.worn != worn && worn.guards_like(room.worn)).then_some(Decision::Wear(worn));
    wear.into_iter().chain((!duties.is_empty()).then_some(Decision::Room(duties))).collect()
}

/// What was worn and seen to that day when there was last work at a place.
fn stood(walk: &Walk, content: &Content, place: Place) -> Option<(Worn, BTreeSet<RoomAct>)> {
    let (mut worn, mut seen_to, mut found) = (Worn::NOTHING, BTreeSet::new(), None);
    for turn in walk.turns() {
        match &turn.decision {
            Decision::Wear(on) => worn = *on,
            Decision::Room(duties) => {
                seen_to.extend(duties.iter().copied());
                if duties.contains(&RoomAct::FanOff) {
                    seen_to.remove(&RoomAct::FanOn);
                }
            }
            Decision::Work(work) if place_of(content, work.operation) == Some(place) => {
                found = Some((worn, seen_to.clone()));
            }
            // At night everybody goes home.
            Decision::Wait(_) | Decision::Strip(_) if day(turn.ended) > day(turn.begun) => {
                (worn, seen_to) = (Worn::NOTHING, BTreeSet::new());
            }
            _ => {}
        }
    }
    found
}
