//! Walks: their tickets are like those of the shop, their parts stand on the ticket, their air is told from the first day on.

use super::Reader;
use super::check::{IN_SLUG, spelt, ticket};
use super::names::nearest;
use super::values;
use crate::content::{Content, WalkInfo};
use crate::quantity::HOURS_A_DAY;
use crate::rules::term::{ColourPlan, Term};

const LIST: &str = "walk";
/// Where the keys of its ticket stand.
const TICKET: &str = "ticket.";
/// Days of the air of a room: within a year, as on a ticket.
const DAYS: std::ops::RangeInclusive<u32> = 1..=366;

/// Reports what does not fit in the walks.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    for (index, one) in content.walks.iter().enumerate() {
        walk(content, index, one, reader);
        let before = content.walks.iter().take(index);
        if before.clone().any(|other| other.ticket.slug == one.ticket.slug) {
            let message = format!("ticket `{}` stands on two walks", one.ticket.slug);
            reader.at(LIST, index, "ticket.slug", message);
        }
        if before.into_iter().any(|other| other.ticket.number == one.ticket.number) {
            let message = format!("number {} stands on two tickets", one.ticket.number);
            reader.at(LIST, index, "ticket.number", message);
        }
    }
}

/// Reports what does not fit in one.
pub(super) fn walk(content: &Content, index: usize, walk: &WalkInfo, reader: &mut Reader) {
    let ticket_of = &walk.ticket;
    spelt(LIST, index, "ticket.slug", &ticket_of.slug, IN_SLUG, reader);
    ticket(LIST, index, TICKET, ticket_of, content, reader);
    values::ticket(LIST, index, TICKET, ticket_of, reader);
    if content.tickets.iter().any(|other| other.number == ticket_of.number) {
        let message = format!("number {} stands on a ticket of content/tickets.toml", ticket_of.number);
        reader.at(LIST, index, "ticket.number", message);
    }
    if !(1..=WalkInfo::HARDEST).contains(&walk.difficulty) {
        let message = format!("`difficulty` is {}; 1 to {} is allowed", walk.difficulty, WalkInfo::HARDEST);
        reader.at(LIST, index, "difficulty", message);
    }
    stain(index, walk, reader);
    parts(index, walk, reader);
    air(index, walk, reader);
}

fn stain(index: usize, walk: &WalkInfo, reader: &mut Reader) {
    let stained = walk.ticket.colour == ColourPlan::Stained;
    let names = || nearest("", WalkInfo::STAINS.into_iter().map(Term::slug));
    match walk.stain {
        Some(stain) if !WalkInfo::STAINS.contains(&stain) => {
            let message = format!("`{}` is no stain; allowed: {}", stain.slug(), names());
            reader.at(LIST, index, "stain", message);
        }
        Some(_) if !stained => {
            let message = "the ticket orders no stain in the wood; leave `stain` out".to_owned();
            reader.at(LIST, index, "stain", message);
        }
        None if stained => {
            let message = format!("a stained ticket names its `stain`; allowed: {}", names());
            reader.at(LIST, index, "ticket.colour", message);
        }
        _ => {}
    }
}

/// The parts of the ticket, each once and in its order.
fn parts(index: usize, walk: &WalkInfo, reader: &mut Reader) {
    let wanted: Vec<&str> = walk.ticket.parts.iter().map(|part| part.slug.as_str()).collect();
    let found: Vec<&str> = walk.parts.iter().map(|part| part.slug.as_str()).collect();
    if wanted != found {
        let message = format!("[[part]] entries are needed for {}, in this order", wanted.join(", "));
        reader.at(LIST, index, "part", message);
    }
    for (nth, part) in walk.parts.iter().enumerate() {
        if part.area_m2.get() <= 0.0 {
            let message = "`area_m2` is 0; over 0 is allowed".to_owned();
            reader.at(LIST, index, &format!("part.{nth}.area_m2"), message);
        }
    }
}

fn air(index: usize, walk: &WalkInfo, reader: &mut Reader) {
    if walk.air.is_empty() {
        reader.at(LIST, index, "air", "at least one [[air]] entry is needed".to_owned());
    }
    let mut last = None;
    for (nth, one) in walk.air.iter().enumerate() {
        let at = (one.day, one.hour);
        if !DAYS.contains(&one.day) {
            let message = format!("`day` is {}; {} to {} is allowed", one.day, DAYS.start(), DAYS.end());
            reader.at(LIST, index, &format!("air.{nth}.day"), message);
        }
        if !(0.0..HOURS_A_DAY).contains(&one.hour) {
            let message = format!("`hour` is {}; 0 to under 24 is allowed", one.hour);
            reader.at(LIST, index, &format!("air.{nth}.hour"), message);
        }
        if last.is_some_and(|last| at <= last) {
            let message = "readings rise in time".to_owned();
            reader.at(LIST, index, &format!("air.{nth}.day"), message);
        }
        last = Some(at);
    }
}
