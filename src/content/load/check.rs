//! Checks that reach across files: names that must exist, values in range, texts that must be there.

use super::Reader;
use crate::content::{Content, Draw, FactInfo, ScenarioSet};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use std::collections::BTreeSet;

/// Reports everything that does not fit together.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    settings(content, reader);
    doubles(reader, "wood", "slug", content.woods.iter().map(|wood| wood.slug.as_str()));
    doubles(reader, "fault", "id", content.faults.iter().map(|fault| fault.id.as_str()));
    doubles(reader, "ticket", "slug", content.tickets.iter().map(|ticket| ticket.slug.as_str()));
    doubles(reader, "fact", "key", content.facts.iter().map(|fact| fact.key.as_str()));
    doubles(reader, "family", "id", content.families.iter().map(|family| family.id.as_str()));
    doubles(reader, "rule", "id", content.rules.iter().map(|rule| rule.id.as_str()));
    doubles(reader, "caution", "id", content.cautions.iter().map(|caution| caution.id.as_str()));
    doubles(reader, "consequence", "id", content.consequences.iter().map(|one| one.id.as_str()));
    faults(content, reader);
    tickets(content, reader);
    families(content, reader);
    for (index, one) in content.sets.iter().enumerate() {
        set(content, index, one, reader);
    }
    texts(content, reader);
}

fn doubles<'a>(reader: &mut Reader, list: &str, key: &str, names: impl Iterator<Item = &'a str>) {
    let mut seen = BTreeSet::new();
    for (index, name) in names.enumerate() {
        if !seen.insert(name) {
            reader.at(list, index, key, format!("{list} `{name}` stands twice"));
        }
    }
}

fn settings(content: &Content, reader: &mut Reader) {
    for setting in Setting::ALL {
        let count = content.settings.iter().filter(|info| info.key == *setting).count();
        if count != 1 {
            reader.at(
                "setting",
                0,
                "key",
                format!("setting `{}` stands {count} times, must be once", setting.slug()),
            );
        }
    }
    for (index, info) in content.settings.iter().enumerate() {
        if !(info.floor <= info.default && info.default <= info.ceiling && info.step > 0.0) {
            reader.at(
                "setting",
                index,
                "default",
                format!("`{}` needs floor <= default <= ceiling and a step over 0", info.key.slug()),
            );
        }
    }
}

fn faults(content: &Content, reader: &mut Reader) {
    for (index, fault) in content.faults.iter().enumerate() {
        if fault.made.is_empty() {
            reader.at("fault", index, "made", format!("fault `{}` needs at least one stage", fault.id));
        }
    }
    for (index, one) in content.consequences.iter().enumerate() {
        if !one.fault.is_empty() && content.fault(&one.fault).is_none() {
            let message = format!("`{}` is no fault of content/faults.toml", one.fault);
            reader.at("consequence", index, "fault", message);
        }
    }
}

fn tickets(content: &Content, reader: &mut Reader) {
    for (index, ticket) in content.tickets.iter().enumerate() {
        if content.sheet(&ticket.sheet).is_none() {
            let names: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
            reader.at(
                "ticket",
                index,
                "sheet",
                format!("`{}` is no shop sheet; allowed: {}", ticket.sheet, names.join(", ")),
            );
        }
        if ticket.parts.is_empty() {
            reader.at("ticket", index, "slug", format!("ticket `{}` needs at least one part", ticket.slug));
        }
        for part in &ticket.parts {
            if content.wood(&part.wood).is_none() {
                reader.at(
                    "ticket",
                    index,
                    "wood",
                    format!("`{}` is no wood of content/woods.toml", part.wood),
                );
            }
        }
    }
}

/// Reports what does not fit in a scenario set.
pub(super) fn set(content: &Content, index: usize, set: &ScenarioSet, reader: &mut Reader) {
    if content.sheet(&set.sheet).is_none() {
        let names: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
        reader.at(
            "set",
            index,
            "sheet",
            format!("`{}` is no shop sheet; allowed: {}", set.sheet, names.join(", ")),
        );
    }
    let most = ScenarioSet::COUNT_MOST;
    if !(1..=most).contains(&set.count) {
        reader.at("set", index, "count", format!("a set has 1 to {most} cards, not {}", set.count));
    }
    for family in set.families.iter().filter(|id| content.family(id).is_none()) {
        reader.at("set", index, "families", format!("`{family}` is no card family"));
    }
    if set.families(&content.families).is_empty() {
        reader.at(
            "set",
            index,
            "stages",
            "a set needs at least one stage with cards, or a family".to_owned(),
        );
    }
}

fn families(content: &Content, reader: &mut Reader) {
    for (index, family) in content.families.iter().enumerate() {
        for draw in &family.facts {
            let Some(fact) = content.fact(&draw.fact) else {
                reader.at("family", index, "fact", format!("`{}` is no fact of content/facts/", draw.fact));
                continue;
            };
            if let Some(message) = draw_problem(content, draw, fact) {
                reader.at(
                    "family",
                    index,
                    "fact",
                    format!("family `{}`, fact `{}`: {message}", family.id, draw.fact),
                );
            }
        }
    }
}

fn draw_problem(content: &Content, draw: &Draw, fact: &FactInfo) -> Option<String> {
    if fact.unit.is_some() {
        let (Some(from), Some(to), Some(step)) = (draw.from, draw.to, draw.step) else {
            return Some("a number needs from, to and step".to_owned());
        };
        if !(fact.min <= from && from < to && to <= fact.max && step > 0.0) {
            return Some(format!("from and to must rise within {} to {}, step over 0", fact.min, fact.max));
        }
        return None;
    }
    draw.among
        .iter()
        .find(|term| !allowed(content, fact, term))
        .map(|term| format!("`{term}` is not among its terms"))
}

fn allowed(content: &Content, fact: &FactInfo, term: &str) -> bool {
    term.starts_with('@')
        || fact.terms.iter().any(|known| match known.as_str() {
            "@woods" => content.wood(term).is_some(),
            "@faults" => content.fault(term).is_some(),
            "@tickets" => content.ticket(term).is_some(),
            known => known == term,
        })
}

fn texts(content: &Content, reader: &mut Reader) {
    let Some(english) = content.texts.get("en") else {
        reader.at("text", 0, "", "content/text/en is missing".to_owned());
        return;
    };
    let need = |reader: &mut Reader, list: &str, index: usize, key: String| {
        if english.find(&key).is_none() {
            reader.at(list, index, "id", format!("text `{key}` is missing in content/text/en"));
        }
    };
    for (index, setting) in content.settings.iter().enumerate() {
        need(reader, "setting", index, format!("setting.{}", setting.key.slug()));
    }
    for (index, sheet) in content.sheets.iter().enumerate() {
        need(reader, "sheet", index, format!("sheet.{}", sheet.slug));
    }
    for (index, fault) in content.faults.iter().enumerate() {
        need(reader, "fault", index, format!("fault.{}", fault.id));
        need(reader, "fault", index, format!("fault.{}.looks", fault.id));
    }
    for (index, ticket) in content.tickets.iter().enumerate() {
        need(reader, "ticket", index, format!("ticket.{}", ticket.slug));
        for part in &ticket.parts {
            need(reader, "ticket", index, format!("part.{}", part.slug));
        }
    }
    for (index, set) in content.sets.iter().enumerate() {
        need(reader, "set", index, format!("set.{}", set.slug));
    }
    for (index, fact) in content.facts.iter().enumerate() {
        need(reader, "fact", index, format!("fact.{}", fact.key));
    }
    for (index, family) in content.families.iter().enumerate() {
        need(reader, "family", index, format!("card.{}.story", family.id));
        need(reader, "family", index, format!("card.{}.ask", family.id));
    }
    for (index, rule) in content.rules.iter().enumerate() {
        need(reader, "rule", index, format!("rule.{}", rule.id));
    }
    for (index, caution) in content.cautions.iter().enumerate() {
        need(reader, "caution", index, format!("caution.{}", caution.id));
    }
    for (index, one) in content.consequences.iter().enumerate() {
        for moment in ["now", "later", "fix"] {
            need(reader, "consequence", index, format!("after.{}.{moment}", one.id));
        }
    }
}
