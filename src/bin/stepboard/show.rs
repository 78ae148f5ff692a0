//! What several sub-commands show as JSON: rules, working, measures.

use serde_json::{Value, json};
use stepboard::card::Voice;
use stepboard::quantity::Measure;
use stepboard::rules::verdict::{RuleId, Step};

/// A number with its unit.
pub(crate) fn measure(measure: Measure) -> Value {
    json!({ "value": measure.value, "unit": measure.unit, "text": measure.text() })
}

/// The rules that decided, with what they rest on.
pub(crate) fn rules(voice: &Voice<'_>, ids: &[RuleId]) -> Value {
    ids.iter()
        .map(|id| {
            let info = voice.content.rule(id.0);
            json!({
                "id": id.0,
                "sentence": voice.texts.get(&format!("rule.{}", id.0)),
                "kind": info.map(|info| info.kind),
                "severity": info.map(|info| info.severity),
                "source": info.map(|info| info.source.as_str()),
            })
        })
        .collect()
}

/// The calculation, line by line.
pub(crate) fn working(voice: &Voice<'_>, steps: &[Step]) -> Value {
    steps
        .iter()
        .map(|step| {
            let given = step.given.iter().map(|given| {
                json!({ "name": given.name, "value": given.value.value, "unit": given.value.unit, "text": voice.measure(given.value) })
            });
            json!({
                "label": step.label,
                "words": voice.texts.get(&format!("working.{}", step.label)),
                "formula": voice.formula(step),
                "given": given.collect::<Vec<Value>>(),
                "value": step.result.value,
                "unit": step.result.unit,
                "text": voice.measure(step.result),
            })
        })
        .collect()
}
