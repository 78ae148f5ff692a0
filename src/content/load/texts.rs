//! Messages that must be there in English.

use super::Reader;
use super::files::ENGLISH_FOLDER;
use crate::content::{Content, ENGLISH, FactInfo, Texts};
use crate::rules::term::Term;

/// Reports English messages that are missing.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    if !reader.knows("text") {
        return;
    }
    let Some(english) = content.texts.get(ENGLISH) else {
        reader.whole(ENGLISH_FOLDER, "is missing; English is complete".to_owned());
        return;
    };
    let families = reader.knows("family");
    let mut need = |list: &'static str, index: usize, at: &str, key: String| {
        if english.find(&key).is_none() {
            reader.at(list, index, at, format!("text `{key}` is missing in content/{ENGLISH_FOLDER}"));
        }
    };
    for (index, setting) in content.settings.iter().enumerate() {
        need("setting", index, "key", format!("setting.{}", setting.key.slug()));
    }
    for (index, sheet) in content.sheets.iter().enumerate() {
        need("sheet", index, "slug", format!("sheet.{}", sheet.slug));
    }
    for (index, fault) in content.faults.iter().enumerate() {
        need("fault", index, "id", format!("fault.{}", fault.id));
        for more in ["looks", "now", "fix", "prevent"] {
            need("fault", index, "id", format!("fault.{}.{more}", fault.id));
        }
        for (nth, cause) in fault.causes.iter().enumerate() {
            need("fault", index, &format!("causes.{nth}"), format!("cause.{cause}"));
        }
    }
    for (index, panel) in content.panels.iter().enumerate() {
        need("panel", index, "fault", format!("seen.{}", panel.fault));
    }
    for (index, cup) in content.cups.iter().enumerate() {
        need("cup", index, "slug", format!("term.{}", cup.slug));
    }
    for (index, ticket) in content.tickets.iter().enumerate() {
        need("ticket", index, "slug", format!("ticket.{}", ticket.slug));
        for (nth, part) in ticket.parts.iter().enumerate() {
            need("ticket", index, &format!("parts.{nth}.slug"), format!("part.{}", part.slug));
        }
    }
    for (index, walk) in content.walks.iter().enumerate() {
        need("walk", index, "slug", format!("walk.name.{}", walk.slug));
        need("walk", index, "ticket.slug", format!("ticket.{}", walk.ticket.slug));
        for (nth, part) in walk.ticket.parts.iter().enumerate() {
            need("walk", index, &format!("ticket.parts.{nth}.slug"), format!("part.{}", part.slug));
        }
    }
    for (index, task) in content.sprays.iter().enumerate() {
        need("spray", index, "slug", format!("spray.task.{}", task.slug));
    }
    for (index, tool) in content.tools.iter().enumerate() {
        for (nth, number) in tool.numbers.iter().enumerate() {
            need("tool", index, &format!("numbers.{nth}"), format!("walk.ask.{}", number.ask.slug()));
        }
        for (nth, choice) in tool.choices.iter().enumerate() {
            let at = format!("choice.{nth}.key");
            need("tool", index, &at, format!("walk.choice.{}", choice.key));
            for pick in &choice.options {
                need("tool", index, &at, format!("walk.pick.{}.{}", choice.key, pick.slug));
            }
        }
    }
    for (index, set) in content.sets.iter().enumerate() {
        need("set", index, "slug", format!("set.{}", set.slug));
    }
    for (index, solvent) in content.solvents.iter().enumerate() {
        need("solvent", index, "slug", format!("solvent.{}", solvent.slug));
    }
    for (index, fact) in content.listed_facts().iter().enumerate() {
        need("fact", index, "key", format!("fact.{}", fact.key));
        if fact.probe.is_some() {
            need("fact", index, "key", format!("probe.{}", fact.key));
        }
        for (nth, term) in fact.terms.iter().enumerate().filter(|(_, term)| !term.starts_with('@')) {
            if families && !told(content, english, fact, term) {
                need("fact", index, &format!("terms.{nth}"), format!("term.{term}"));
            }
        }
    }
    for (index, competency) in content.competencies.iter().enumerate() {
        need("competency", index, "slug", format!("competency.{}", competency.slug));
        need("competency", index, "slug", format!("may.{}", competency.slug));
        for (nth, paper) in competency.on_file.iter().enumerate() {
            need("competency", index, &format!("on_file.{nth}"), format!("on-file.{}", paper.slug()));
        }
        for (nth, criterion) in competency.criteria.iter().enumerate() {
            need("competency", index, &format!("criteria.{nth}.id"), format!("criterion.{}", criterion.id));
        }
    }
    for (index, family) in content.families.iter().enumerate() {
        need("family", index, "id", format!("card.{}.story", family.id));
        need("family", index, "id", format!("card.{}.ask", family.id));
    }
    for (index, rule) in content.rules.iter().enumerate() {
        need("rule", index, "id", format!("rule.{}", rule.id));
    }
    for (index, caution) in content.cautions.iter().enumerate() {
        need("caution", index, "id", format!("caution.{}", caution.id));
    }
    for (index, one) in content.consequences.iter().enumerate() {
        for moment in ["now", "later", "fix"] {
            need("consequence", index, "id", format!("after.{}.{moment}", one.id));
        }
    }
}

/// Whether every family that draws a term has words of its own for it, and there is one.
fn told(content: &Content, english: &Texts, fact: &FactInfo, term: &str) -> bool {
    let draws = |draw: &&crate::content::Draw| {
        draw.fact == fact.key && (draw.among.is_empty() || draw.among.iter().any(|one| one == term))
    };
    let mut families = content.families.iter().filter(|family| family.facts.iter().any(|draw| draws(&draw)));
    let own = |id: &str| english.find(&format!("card.{id}.{term}")).is_some();
    families.next().is_some_and(|first| own(&first.id)) && families.all(|family| own(&family.id))
}
