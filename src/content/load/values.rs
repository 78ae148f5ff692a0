//! Values in range: woods, tickets, facts, and sources that are not left empty.

use super::Reader;
use crate::content::{Content, FactInfo, Ticket};
use crate::quantity::{Micrometres, Millimetres};

/// No published coefficient of dimensional change per per cent of moisture comes near (FPL-GTR-190, table 13-5).
const MOVEMENT_UNDER: f64 = 0.01;
/// Coats of clear on a ticket: as many as a shop sheet may ask for.
const COATS: std::ops::RangeInclusive<u32> = 1..=14;
/// Days to delivery on a ticket: within a year.
const DAYS: std::ops::RangeInclusive<u32> = 1..=366;
/// Specific gravities of liquids in a finish room.
const GRAVITY: std::ops::RangeInclusive<f64> = 0.5..=2.0;
/// Lists that a fact's terms may stand for.
const LISTS: [&str; 8] =
    ["@woods", "@solvents", "@faults", "@cups", "@tickets", "@looks", "@dresses", "@sprays"];

/// Reports values out of range and sources left empty.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    woods(content, reader);
    cups(content, reader);
    tickets(content, reader);
    facts(content, reader);
    solvents(content, reader);
    looks(content, reader);
    sourced(reader, "setting", content.settings.iter().map(|info| info.source.as_str()));
    sourced(reader, "wood", content.woods.iter().map(|wood| wood.source.as_str()));
    sourced(reader, "solvent", content.solvents.iter().map(|solvent| solvent.source.as_str()));
    sourced(reader, "cup", content.cups.iter().map(|cup| cup.source.as_str()));
    sourced(reader, "fault", content.faults.iter().map(|fault| fault.source.as_str()));
    sourced(reader, "pair", content.pairs.iter().map(|pair| pair.source.as_str()));
    sourced(reader, "rule", content.rules.iter().map(|rule| rule.source.as_str()));
    sourced(reader, "caution", content.cautions.iter().map(|caution| caution.source.as_str()));
}

fn sourced<'a>(reader: &mut Reader, list: &'static str, sources: impl Iterator<Item = &'a str>) {
    for (index, source) in sources.enumerate() {
        if source.trim().is_empty() {
            let message = "a source is needed, or `common practice, no source`".to_owned();
            reader.at(list, index, "source", message);
        }
    }
}

fn woods(content: &Content, reader: &mut Reader) {
    for (index, wood) in content.woods.iter().enumerate() {
        for (key, name) in [("name", &wood.name), ("botanical", &wood.botanical)] {
            if name.trim().is_empty() {
                reader.at("wood", index, key, format!("wood `{}` needs a {key}", wood.slug));
            }
        }
        if let Some(movement) = wood.movement {
            for (key, value) in [("radial", movement.radial), ("tangential", movement.tangential)] {
                if !(value > 0.0 && value < MOVEMENT_UNDER) {
                    let message = format!("`{key}` is {value}; over 0 and under {MOVEMENT_UNDER} is allowed");
                    reader.at("wood", index, &format!("movement.{key}"), message);
                }
            }
        }
        if let Some(vessel) = wood.vessel_um
            && !(vessel > 0.0 && Micrometres::new(vessel).is_ok())
        {
            let most = Micrometres::MAX;
            let message = format!("`vessel_um` is {vessel}; over 0 and up to {most} is allowed");
            reader.at("wood", index, "vessel_um", message);
        }
    }
}

/// Lengths and counts that a drawn wood may have, mm and a square centimetre: outside them it could not be drawn, or not in
/// any time.
fn looks(content: &Content, reader: &mut Reader) {
    const THIN: (f32, f32) = (0.01, 5.0);
    const LONG: (f32, f32) = (0.05, 300.0);
    const COUNT: (f32, f32) = (0.0, 500.0);
    for (index, look) in content.looks.iter().enumerate() {
        let species = &look.species;
        let mut values = vec![("ring", species.ring, LONG), ("depth", species.depth, LONG)];
        for pores in &species.pores {
            let (thin, long) = (("pores", pores.width, THIN), ("pores", pores.length, LONG));
            values.extend([thin, long, ("pores", pores.count, COUNT)]);
        }
        if let Some(rays) = species.rays {
            values.extend([
                ("rays", rays.spacing, LONG),
                ("rays", rays.width, THIN),
                ("rays", rays.height, LONG),
            ]);
        }
        values.extend(species.bands.iter().map(|bands| ("bands", bands.count, LONG)));
        if let Some(gum) = species.gum {
            values.extend([("gum", gum.width, THIN), ("gum", gum.length, LONG), ("gum", gum.count, COUNT)]);
        }
        for (key, value, (least, most)) in values {
            if !(least..=most).contains(&value) {
                let message =
                    format!("look `{}`: {value} in `{key}`; {least} to {most} is allowed", look.slug);
                reader.at("look", index, &format!("species.{key}"), message);
            }
        }
    }
}

fn solvents(content: &Content, reader: &mut Reader) {
    for (index, solvent) in content.solvents.iter().enumerate() {
        if let Some(gravity) = solvent.gravity
            && !GRAVITY.contains(&gravity)
        {
            let message =
                format!("`gravity` is {gravity}; {} to {} is allowed", GRAVITY.start(), GRAVITY.end());
            reader.at("solvent", index, "gravity", message);
        }
        let limits = solvent.limits;
        let all =
            [limits.pel, limits.pel_ceiling, limits.rel, limits.rel_short, limits.rel_ceiling, limits.idlh];
        let by_mass = [limits.rel_mg, limits.rel_ceiling_mg];
        let least = all.into_iter().flatten().map(|limit| limit.get());
        let least = least.chain(by_mass.into_iter().flatten().map(|limit| limit.get())).reduce(f64::min);
        if least.is_some_and(|least| least <= 0.0) {
            reader.at(
                "solvent",
                index,
                "limits",
                "a limit is over 0; leave out what is not published".to_owned(),
            );
        }
    }
}

fn cups(content: &Content, reader: &mut Reader) {
    for (index, cup) in content.cups.iter().enumerate() {
        let (least, most) = cup.range();
        let rises = cup.slope > 0.0 && cup.offset >= 0.0 && cup.drag >= 0.0;
        if !(rises && least < most && cup.thinnest() < cup.thickest() && cup.thinnest().get() > 0.0) {
            let message = format!(
                "cup `{}` needs a slope over 0, least_s under most_s, and a viscosity over 0 at least_s",
                cup.slug
            );
            reader.at("cup", index, "slope", message);
        }
    }
}

fn tickets(content: &Content, reader: &mut Reader) {
    for (index, one) in content.tickets.iter().enumerate() {
        ticket("ticket", index, "", one, reader);
    }
}

/// Reports values of a ticket out of range; its keys stand behind `under`.
pub(super) fn ticket(list: &'static str, index: usize, under: &str, ticket: &Ticket, reader: &mut Reader) {
    let counts = [("clear_coats", ticket.clear_coats, COATS), ("days", ticket.days, DAYS)];
    for (key, value, span) in counts.into_iter().filter(|(_, value, span)| !span.contains(value)) {
        let message = format!("`{key}` is {value}; {} to {} is allowed", span.start(), span.end());
        reader.at(list, index, &format!("{under}{key}"), message);
    }
    if ticket.parts.is_empty() {
        let message = format!("ticket `{}` needs at least one part", ticket.slug);
        reader.at(list, index, &format!("{under}parts"), message);
    }
    for (nth, part) in ticket.parts.iter().enumerate() {
        let width = part.width_mm;
        if !(width > 0.0 && Millimetres::new(width).is_ok()) {
            let most = Millimetres::MAX;
            let message = format!("`width_mm` is {width}; over 0 and up to {most} is allowed");
            reader.at(list, index, &format!("{under}parts.{nth}.width_mm"), message);
        }
    }
}

fn facts(content: &Content, reader: &mut Reader) {
    for (index, fact) in content.facts.iter().enumerate() {
        if let Some((key, message)) = fact_problem(fact) {
            reader.at("fact", index, &key, message);
        }
    }
}

fn fact_problem(fact: &FactInfo) -> Option<(String, String)> {
    let key = &fact.key;
    if fact.unit.is_some() {
        let spans = fact.min.is_finite() && fact.max.is_finite() && fact.min < fact.max;
        let message = format!("`{key}` is a number; it needs min under max and no terms");
        return (!spans || !fact.terms.is_empty()).then(|| ("min".to_owned(), message));
    }
    if fact.terms.is_empty() {
        return Some(("key".to_owned(), format!("`{key}` needs a unit with min and max, or terms")));
    }
    let nth = fact.terms.iter().position(|term| term.starts_with('@') && !LISTS.contains(&term.as_str()))?;
    Some((format!("terms.{nth}"), format!("`{key}` names no list; allowed: {}", LISTS.join(", "))))
}
