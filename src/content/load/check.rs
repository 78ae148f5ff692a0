//! Checks that reach across files: names that must exist and stand once.

use super::names::{is_slug, nearest};
use super::{Reader, cautions, competencies, faults, languages, sprays, texts, tools, values, walks};
use crate::content::{
    Allowed, Content, Draw, FactInfo, FamilyInfo, PROBES, ScenarioSet, SettingInfo, TaskProblem, Ticket,
};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use std::collections::BTreeSet;

/// Reports everything that does not fit together.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    names(content, reader);
    values::check(content, reader);
    faults::check(content, reader);
    consequences(content, reader);
    looks(content, reader);
    panels(content, reader);
    tickets(content, reader);
    tools::check(content, reader);
    walks::check(content, reader);
    sprays::check(content, reader);
    competencies::check(content, reader);
    cautions::check(content, reader);
    families(content, reader);
    for (index, one) in content.sets.iter().enumerate() {
        set(content, index, one, reader);
    }
    texts::check(content, reader);
    languages::check(content, reader);
}

/// Marks that a slug may have besides small letters and digits, that of a fact (scripts write it) and of a rule.
pub(super) const IN_SLUG: &[char] = &['-'];
const IN_FACT: &[char] = &['_'];
const IN_RULE: &[char] = &['-', '.'];

fn names(content: &Content, reader: &mut Reader) {
    each(reader, "wood", "slug", IN_SLUG, content.woods.iter().map(|wood| wood.slug.as_str()));
    each(reader, "sheet", "slug", IN_SLUG, content.sheets.iter().map(|sheet| sheet.slug.as_str()));
    each(reader, "set", "slug", IN_SLUG, content.sets.iter().map(|set| set.slug.as_str()));
    each(reader, "fault", "id", IN_SLUG, content.faults.iter().map(|fault| fault.id.as_str()));
    each(reader, "dress", "slug", IN_SLUG, content.dresses.iter().map(|dress| dress.slug.as_str()));
    each(reader, "panel", "fault", IN_SLUG, content.panels.iter().map(|panel| panel.fault.as_str()));
    each(reader, "look", "slug", IN_SLUG, content.looks.iter().map(|look| look.slug.as_str()));
    each(reader, "cup", "slug", IN_SLUG, content.cups.iter().map(|cup| cup.slug.as_str()));
    each(reader, "pair", "id", IN_SLUG, content.pairs.iter().map(|pair| pair.id.as_str()));
    each(reader, "ticket", "slug", IN_SLUG, content.tickets.iter().map(|ticket| ticket.slug.as_str()));
    each(reader, "walk", "slug", IN_SLUG, content.walks.iter().map(|walk| walk.slug.as_str()));
    each(reader, "spray", "slug", IN_SLUG, content.sprays.iter().map(|task| task.slug.as_str()));
    each(reader, "tool", "slug", IN_SLUG, content.tools.iter().map(|tool| tool.slug.as_str()));
    each(reader, "solvent", "slug", IN_SLUG, content.solvents.iter().map(|solvent| solvent.slug.as_str()));
    each(reader, "fact", "key", IN_FACT, content.listed_facts().iter().map(|fact| fact.key.as_str()));
    each(reader, "competency", "slug", IN_SLUG, content.competencies.iter().map(|one| one.slug.as_str()));
    each(reader, "family", "id", IN_SLUG, content.families.iter().map(|family| family.id.as_str()));
    each(reader, "rule", "id", IN_RULE, content.rules.iter().map(|rule| rule.id.as_str()));
    each(reader, "caution", "id", IN_SLUG, content.cautions.iter().map(|caution| caution.id.as_str()));
    each(reader, "consequence", "id", IN_SLUG, content.consequences.iter().map(|one| one.id.as_str()));
    let mut numbers = BTreeSet::new();
    for (index, ticket) in content.tickets.iter().enumerate() {
        if !numbers.insert(ticket.number) {
            reader.at("ticket", index, "number", format!("number {} stands on two tickets", ticket.number));
        }
        for (nth, part) in ticket.parts.iter().enumerate() {
            spelt("ticket", index, &format!("parts.{nth}.slug"), &part.slug, IN_SLUG, reader);
        }
    }
    for (index, solvent) in content.solvents.iter().enumerate() {
        if content.listed_facts().iter().any(|fact| fact.key == solvent.slug) {
            let message = format!("`{}` is a fact of content/facts/ already", solvent.slug);
            reader.at("solvent", index, "slug", message);
        }
    }
    for (index, fact) in content.facts.iter().enumerate() {
        for (nth, term) in fact.terms.iter().enumerate().filter(|(_, term)| !term.starts_with('@')) {
            spelt("fact", index, &format!("terms.{nth}"), term, IN_RULE, reader);
        }
    }
}

fn each<'a>(
    reader: &mut Reader,
    list: &'static str,
    key: &str,
    marks: &[char],
    names: impl Iterator<Item = &'a str>,
) {
    let mut seen = BTreeSet::new();
    for (index, name) in names.enumerate() {
        spelt(list, index, key, name, marks, reader);
        if !seen.insert(name) {
            reader.at(list, index, key, format!("{list} `{name}` stands twice"));
        }
    }
}

/// Reports a slug that is not spelt as slugs are.
pub(super) fn slug(list: &'static str, index: usize, key: &str, name: &str, reader: &mut Reader) {
    spelt(list, index, key, name, IN_SLUG, reader);
}

pub(super) fn spelt(
    list: &'static str,
    index: usize,
    key: &str,
    name: &str,
    marks: &[char],
    reader: &mut Reader,
) {
    if !is_slug(name, marks) {
        let marks: String = marks.iter().map(|mark| format!(" and `{mark}`")).collect();
        let message =
            format!("`{name}` is no name for a {list}; small letters a to z, digits{marks} are allowed");
        reader.at(list, index, key, message);
    }
}

/// Reports settings that are missing, stand twice or have no span; then sheets cannot be judged.
pub(super) fn settings(settings: &[SettingInfo], reader: &mut Reader) {
    if !reader.knows("setting") {
        return;
    }
    let before = reader.problems.len();
    let mut seen = BTreeSet::new();
    for (index, info) in settings.iter().enumerate() {
        if !seen.insert(info.key) {
            reader.at("setting", index, "key", format!("setting `{}` stands twice", info.key.slug()));
        }
        let finite = [info.floor, info.ceiling, info.step].iter().all(|value| value.is_finite());
        if !(finite && info.floor <= info.default && info.default <= info.ceiling && info.step > 0.0) {
            let key = info.key.slug();
            let message = format!("`{key}` needs floor <= default <= ceiling and a step over 0");
            reader.at("setting", index, "default", message);
        }
    }
    for setting in Setting::ALL.iter().filter(|setting| !seen.contains(*setting)) {
        reader.whole("settings.toml", format!("setting `{}` is missing", setting.slug()));
    }
    if reader.problems.len() > before {
        reader.broken.insert("setting");
    }
}

fn consequences(content: &Content, reader: &mut Reader) {
    if !reader.knows("fault") {
        return;
    }
    for (index, one) in content.consequences.iter().enumerate() {
        if !one.fault.is_empty() && content.fault(&one.fault).is_none() {
            let names = nearest(&one.fault, content.faults.iter().map(|fault| fault.id.as_str()));
            let message = format!("`{}` is no fault of content/faults.toml; allowed: {names}", one.fault);
            reader.at("consequence", index, "fault", message);
        }
    }
}

fn looks(content: &Content, reader: &mut Reader) {
    for (index, look) in content.looks.iter().enumerate() {
        let named = core::iter::once(("wood", &look.wood)).chain(look.also.iter().map(|wood| ("also", wood)));
        for (key, slug) in named.filter(|_| reader.knows("wood")).collect::<Vec<_>>() {
            if content.wood(slug).is_none() {
                let names = nearest(slug, content.woods.iter().map(|wood| wood.slug.as_str()));
                let message = format!("`{slug}` is no wood of content/woods.toml; allowed: {names}");
                reader.at("look", index, key, message);
            }
        }
    }
}

/// Reports faults that cannot be drawn, and looks, colours and twins that are not there.
fn panels(content: &Content, reader: &mut Reader) {
    use crate::picture::Fault;
    let looks: Vec<&str> = content.looks.iter().map(|look| look.slug.as_str()).collect();
    let dresses: Vec<&str> = content.dresses.iter().map(|dress| dress.slug.as_str()).collect();
    let drawn: Vec<&str> = Fault::ALL.iter().map(|fault| fault.slug()).collect();
    for (index, panel) in content.panels.iter().enumerate() {
        let fault = std::slice::from_ref(&panel.fault);
        let lists: [(&str, &[String], &[&str]); 5] = [
            ("fault", fault, &drawn),
            ("looks", &panel.looks, &looks),
            ("slight", &panel.slight, &looks),
            ("dresses", &panel.dresses, &dresses),
            ("twins", &panel.twins, &drawn),
        ];
        for (key, named, allowed) in lists {
            for name in named.iter().filter(|name| !allowed.contains(&name.as_str())) {
                let names = nearest(name, allowed.iter().copied());
                reader.at("panel", index, key, format!("`{name}` is not known here; allowed: {names}"));
            }
        }
        let needed = [
            ("finishes", panel.finishes.is_empty()),
            ("looks", panel.looks.is_empty()),
            ("dresses", panel.dresses.is_empty()),
        ];
        for (key, empty) in needed {
            if empty {
                reader.at("panel", index, key, format!("`{key}` needs one entry at least"));
            }
        }
    }
}

fn tickets(content: &Content, reader: &mut Reader) {
    for (index, one) in content.tickets.iter().enumerate() {
        ticket("ticket", index, "", one, content, reader);
    }
}

/// Reports a sheet and woods of a ticket that are not there; its keys stand behind `under`.
pub(super) fn ticket(
    list: &'static str,
    index: usize,
    under: &str,
    ticket: &Ticket,
    content: &Content,
    reader: &mut Reader,
) {
    sheet_of(list, index, &ticket.sheet, content, reader);
    if !reader.knows("wood") {
        return;
    }
    for (nth, part) in ticket.parts.iter().enumerate() {
        if content.wood(&part.wood).is_none() {
            let names = nearest(&part.wood, content.woods.iter().map(|wood| wood.slug.as_str()));
            let message = format!("`{}` is no wood of content/woods.toml; allowed: {names}", part.wood);
            reader.at(list, index, &format!("{under}parts.{nth}.wood"), message);
        }
    }
}

pub(super) fn sheet_of(list: &'static str, index: usize, slug: &str, content: &Content, reader: &mut Reader) {
    if reader.knows("sheet") && content.sheet(slug).is_none() {
        let names = nearest(slug, content.sheets.iter().map(|sheet| sheet.slug.as_str()));
        reader.at(list, index, "sheet", format!("`{slug}` is no shop sheet; allowed: {names}"));
    }
}

/// Reports what does not fit in a scenario set.
pub(super) fn set(content: &Content, index: usize, set: &ScenarioSet, reader: &mut Reader) {
    sheet_of("set", index, &set.sheet, content, reader);
    if !["family", "competency", "ticket"].iter().all(|list| reader.knows(list)) {
        return;
    }
    for TaskProblem { place, found, allowed } in set.task.problems(content, 0) {
        let message = match allowed {
            Allowed::Span(from, to) => format!("{from} to {to} is allowed, not {found}"),
            Allowed::Names(what, names) => {
                let names = nearest(&found, names.iter().map(String::as_str));
                format!("`{found}` is no {what}, or stands twice; allowed: {names}")
            }
            Allowed::Something(stages) => format!(
                "a set needs at least one stage with cards, a competency or a family; stages with cards: {}",
                stages.join(", ")
            ),
        };
        reader.at("set", index, &format!("task.{place}"), message);
    }
}

fn families(content: &Content, reader: &mut Reader) {
    for (index, family) in content.families.iter().enumerate() {
        speaks_for(content, index, family, reader);
        for (nth, draw) in family.facts.iter().enumerate().filter(|(_, draw)| draw.fact != PROBES) {
            let Some(fact) = content.fact(&draw.fact) else {
                if reader.knows("fact") {
                    let names = nearest(&draw.fact, content.facts.iter().map(|fact| fact.key.as_str()));
                    let message = format!("`{}` is no fact of content/facts/; allowed: {names}", draw.fact);
                    reader.at("family", index, &format!("fact.{nth}.fact"), message);
                }
                continue;
            };
            if let Some((key, message)) = draw_problem(content, draw, fact, reader) {
                let message = format!("family `{}`, fact `{}`: {message}", family.id, draw.fact);
                reader.at("family", index, &format!("fact.{nth}.{key}"), message);
            }
        }
    }
}

/// Competencies that one family may give evidence for: beyond that it is evidence for none.
const COMPETENCIES_MOST: usize = 3;

fn speaks_for(content: &Content, index: usize, family: &FamilyInfo, reader: &mut Reader) {
    if !reader.knows("competency") {
        return;
    }
    let named = &family.competencies;
    for (nth, slug) in named.iter().enumerate() {
        let at = format!("competencies.{nth}");
        if content.competency(slug).is_none() {
            let names = nearest(slug, content.competencies.iter().map(|one| one.slug.as_str()));
            let message = format!("`{slug}` is no competency of content/competencies.toml; allowed: {names}");
            reader.at("family", index, &at, message);
        }
        if named.iter().take(nth).any(|before| before == slug) {
            reader.at("family", index, &at, format!("competency `{slug}` stands twice"));
        }
    }
    if !(1..=COMPETENCIES_MOST).contains(&named.len()) {
        let message = format!("a family names one to {COMPETENCIES_MOST} competencies, not {}", named.len());
        reader.at("family", index, "competencies", message);
    }
}

/// The key at fault and what is wrong with it.
fn draw_problem(
    content: &Content,
    draw: &Draw,
    fact: &FactInfo,
    reader: &Reader,
) -> Option<(&'static str, String)> {
    if fact.unit.is_some() {
        let (Some(from), Some(to), Some(step)) = (draw.from, draw.to, draw.step) else {
            return Some(("fact", "a number needs from, to and step".to_owned()));
        };
        if !(fact.min <= from && from < to && to <= fact.max && step > 0.0) {
            let message = format!("from and to must rise within {} to {}, step over 0", fact.min, fact.max);
            return Some(("from", message));
        }
        return None;
    }
    let known = terms(content, fact, reader)?;
    let wrong = draw.among.iter().find(|term| !term.starts_with('@') && !known.contains(&term.as_str()))?;
    Some(("among", format!("`{wrong}` is not among its terms; allowed: {}", nearest(wrong, known))))
}

/// Every term of a fact; `None` where a list it stands for could not be read.
fn terms<'a>(content: &'a Content, fact: &'a FactInfo, reader: &Reader) -> Option<Vec<&'a str>> {
    let mut all = Vec::new();
    for term in &fact.terms {
        match term.as_str() {
            "@woods" if reader.knows("wood") => {
                all.extend(content.woods.iter().map(|wood| wood.slug.as_str()))
            }
            "@solvents" if reader.knows("solvent") => {
                all.extend(content.solvents.iter().map(|solvent| solvent.slug.as_str()));
            }
            "@cups" if reader.knows("cup") => all.extend(content.cups.iter().map(|cup| cup.slug.as_str())),
            "@faults" if reader.knows("fault") => {
                all.extend(content.faults.iter().map(|fault| fault.id.as_str()))
            }
            "@looks" if reader.knows("look") => {
                all.extend(content.looks.iter().map(|look| look.slug.as_str()));
            }
            "@dresses" if reader.knows("dress") => {
                all.extend(content.dresses.iter().map(|dress| dress.slug.as_str()));
            }
            "@tickets" if reader.knows("ticket") => {
                all.extend(content.tickets.iter().map(|ticket| ticket.slug.as_str()));
            }
            "@sprays" if reader.knows("spray") => {
                all.extend(content.sprays.iter().map(|task| task.slug.as_str()));
            }
            list if list.starts_with('@') => return None,
            term => all.push(term),
        }
    }
    Some(all)
}
