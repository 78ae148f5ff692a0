//! What happened on a walk as a statement: a decision is one, whichever families it exercises. The job is a simulation
//! (activity types of the ADL vocabulary).

use super::{TYPES, Teller};
use crate::content::ENGLISH;
use crate::record::{Decided, Inspected, Stamp, WalkStep, Walked, Way};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

impl Teller<'_> {
    pub(super) fn walked(&self, walked: &Walked) -> Option<Value> {
        let stamp = &walked.stamp;
        let (verb, result, context) = match &walked.step {
            WalkStep::Decided(decided) => {
                ("interacted", Some(came(decided)), self.of_decision(stamp, decided))
            }
            WalkStep::Inspected(told) => ("completed", Some(named(told)), Map::new()),
            WalkStep::LetGo => ("exited", None, Map::new()),
        };
        let mut statement = self.begun("event", stamp, verb)?;
        let mut definition = json!({ "type": format!("{TYPES}/simulation") });
        if self.content.walk(&walked.job).is_some() {
            let name = format!("walk.name.{}", walked.job);
            definition["name"] = json!({ (ENGLISH): self.content.texts(ENGLISH).get(&name) });
        }
        let id = self.home.below(&["walks", &walked.job]);
        let object = json!({ "objectType": "Activity", "id": id, "definition": definition });
        statement.insert("object".to_owned(), object);
        if let Some(mut result) = result {
            if let WalkStep::Decided(decided) = &walked.step {
                result["extensions"] = json!({
                    self.extension("decision"): decided.decision, self.extension("rules"): decided.broke,
                });
            }
            statement.insert("result".to_owned(), result);
        }
        let mut context = context;
        context.insert("registration".to_owned(), json!(self.registration(&stamp.device, &walked.walk)));
        statement.insert("context".to_owned(), Value::Object(context));
        Some(Value::Object(statement))
    }

    fn of_decision(&self, stamp: &Stamp, decided: &Decided) -> Map<String, Value> {
        let families = decided.exercised.iter().filter_map(|one| self.content.family(&one.family));
        let competencies: BTreeSet<String> =
            families.flat_map(|family| family.competencies.iter().cloned()).collect();
        let competencies: Vec<String> = competencies.into_iter().collect();
        let mut context = Map::new();
        if !competencies.is_empty() {
            let grouping = self.activities("competencies", &competencies);
            context.insert("contextActivities".to_owned(), json!({ "grouping": grouping }));
        }
        let told = [
            ("kind", json!("walk")),
            ("guided", json!(decided.way == Way::Guided)),
            ("again", json!(decided.again)),
            ("nth", json!(decided.nth)),
            ("families", json!(decided.exercised.iter().map(|one| &one.family).collect::<Vec<_>>())),
            ("known", json!(decided.known)),
            ("sequence", json!(stamp.sequence)),
            ("local-date", json!(stamp.day())),
            ("sheet", json!(decided.sheet.slug)),
            ("sheet-hash", json!(decided.sheet.hash)),
        ];
        let told = told.into_iter().filter(|(_, value)| !value.is_null());
        let extensions: Map<String, Value> =
            told.map(|(name, value)| (self.extension(name), value)).collect();
        context.insert("extensions".to_owned(), Value::Object(extensions));
        context
    }
}

/// Whether a decision was right on what was known then; the last one completes the walk.
fn came(decided: &Decided) -> Value {
    let mut result = json!({ "success": decided.broke.is_empty() });
    if decided.over {
        result["completion"] = json!(true);
    }
    result
}

/// Mistakes that were named with their rule, of all that were planted.
fn named(told: &Inspected) -> Value {
    let missed = u32::try_from(told.missed.len()).unwrap_or(u32::MAX);
    let of = told.found.saturating_add(told.half).saturating_add(missed);
    json!({ "score": { "raw": told.found, "min": 0, "max": of }, "completion": true })
}
