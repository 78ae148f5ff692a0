//! The JSON Schema with the lists that the model and the content hold.

use crate::Output;
use serde_json::{Value, json};
use stepboard::card::Voice;
use stepboard::rules::sequence::error::Mend;
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::variant::Variant;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{
    Binding, Coating, ColourPlan, Filler, Look, RuleKind, Severity, Stage, Term, WorkClass,
};

const SCHEMA: &str = include_str!("../../../../content/schema/judge.schema.json");

/// The schema with every list filled in, so that a new wood or setting stands in it by itself.
pub(super) fn filled(voice: &Voice<'_>) -> Output {
    let content = voice.content;
    let broken = |error: serde_json::Error| vec![format!("this build is broken: {error}")];
    let mut schema: Value = serde_json::from_str(SCHEMA).map_err(broken)?;
    let lists: [(&str, Vec<&str>); 15] = [
        ("sheet", content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect()),
        ("ticket", content.tickets.iter().map(|ticket| ticket.slug.as_str()).collect()),
        ("wood", content.woods.iter().map(|wood| wood.slug.as_str()).collect()),
        ("setting", slugs::<Setting>()),
        ("look", slugs::<Look>()),
        ("class", slugs::<WorkClass>()),
        ("colour", slugs::<ColourPlan>()),
        ("binding", slugs::<Binding>()),
        ("filler", slugs::<Filler>()),
        ("coating", slugs::<Coating>()),
        ("correction", slugs::<Mend>()),
        ("severity", slugs::<Severity>()),
        ("kind", slugs::<RuleKind>()),
        ("stage", slugs::<Stage>()),
        ("variant", slugs::<Variant>()),
    ];
    for (name, list) in lists {
        if let Some(definition) = schema.pointer_mut(&format!("/$defs/{name}")) {
            definition["enum"] = json!(list);
        }
    }
    for (name, group, list) in
        [("operation", "term", slugs::<Operation>()), ("remark", "remark", slugs::<Manner>())]
    {
        if let Some(definition) = schema.pointer_mut(&format!("/$defs/{name}")) {
            definition["oneOf"] = list.iter().map(|slug| said(voice, group, slug)).collect();
        }
    }
    Ok(schema.to_string())
}

/// One value of a list, with what it means.
fn said(voice: &Voice<'_>, group: &str, slug: &str) -> Value {
    json!({ "const": slug, "description": voice.texts.get(&format!("{group}.{slug}")) })
}

fn slugs<T: Term>() -> Vec<&'static str> {
    T::ALL.iter().map(|term| term.slug()).collect()
}
