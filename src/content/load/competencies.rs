//! Checks of competencies: what they need exists and goes round in no circle, counts lie in their range, criteria stand once.

use super::Reader;
use super::names::nearest;
use crate::content::{Competency, Content};
use crate::rules::term::Term;
use std::collections::BTreeSet;

const LIST: &str = "competency";

/// Reports what does not fit in the competencies.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    let mut ids = BTreeSet::new();
    for (index, one) in content.competencies.iter().enumerate() {
        needs(content, index, "needs", &one.needs, reader);
        needs(content, index, "needs_knowledge", &one.needs_knowledge, reader);
        if reaches(content, &one.slug) {
            let key = if one.needs.is_empty() { "needs_knowledge" } else { "needs" };
            reader.at(LIST, index, key, format!("`{}` comes before itself", one.slug));
        }
        counts(index, one, reader);
        criteria(index, one, &mut ids, reader);
    }
}

fn needs(content: &Content, index: usize, key: &'static str, needs: &[String], reader: &mut Reader) {
    for (nth, slug) in needs.iter().enumerate() {
        let at = format!("{key}.{nth}");
        if content.competency(slug).is_none() {
            let names = nearest(slug, content.competencies.iter().map(|one| one.slug.as_str()));
            reader.at(LIST, index, &at, format!("`{slug}` is no competency; allowed: {names}"));
        }
        if needs.iter().take(nth).any(|before| before == slug) {
            reader.at(LIST, index, &at, format!("`{slug}` stands twice"));
        }
    }
}

/// Whether what a competency needs leads back to it.
fn reaches(content: &Content, slug: &str) -> bool {
    let (mut seen, mut next) = (BTreeSet::new(), vec![slug]);
    while let Some(one) = next.pop().and_then(|one| content.competency(one)) {
        for needed in one.needs.iter().chain(&one.needs_knowledge) {
            if needed == slug {
                return true;
            }
            if seen.insert(needed.as_str()) {
                next.push(needed);
            }
        }
    }
    false
}

fn counts(index: usize, one: &Competency, reader: &mut Reader) {
    let months = one.expires_most();
    for (key, value, most, of) in [
        ("demonstrations", one.demonstrations, Competency::DEMONSTRATIONS_MOST, "demonstrations"),
        ("days", one.days, one.demonstrations, "separate days, at most as many as demonstrations"),
        ("expires_months", one.expires_months, months, "months for a profile like this"),
    ] {
        if !(1..=most).contains(&value) {
            let message = format!("`{}`: {value} is not among 1 to {most} {of}", one.slug);
            reader.at(LIST, index, key, message);
        }
    }
}

fn criteria<'a>(index: usize, one: &'a Competency, ids: &mut BTreeSet<&'a str>, reader: &mut Reader) {
    for (nth, criterion) in one.criteria.iter().enumerate() {
        let at = format!("criteria.{nth}.id");
        let id = criterion.id.as_str();
        let number = id.strip_prefix(one.slug.as_str()).and_then(|rest| rest.strip_prefix('-'));
        if number.and_then(|number| number.parse::<u32>().ok()).is_none() {
            let message = format!("`{id}` is no name for a criterion of it; allowed: {}-1, -2, …", one.slug);
            reader.at(LIST, index, &at, message);
        }
        if !ids.insert(id) {
            reader.at(LIST, index, &at, format!("criterion `{id}` stands twice"));
        }
    }
    if !one.criteria.iter().any(|criterion| criterion.critical) {
        let slug = &one.slug;
        let message =
            format!("{} competency `{slug}` needs a critical criterion at least", one.profile.slug());
        reader.at(LIST, index, "criteria", message);
    }
}
