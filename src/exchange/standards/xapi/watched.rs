//! What an assessor watched: passed or failed, with the assessor as the instructor; struck out, it is voided (2.3.2).

use super::{Actors, TYPES, Teller, VERBS};
use crate::content::{Criterion, ENGLISH};
use crate::record::{EventName, Judged, Moment, Observed, Struck};
use serde_json::{Value, json};

impl Teller<'_> {
    /// `None` of what cannot be and counts for nothing.
    pub(super) fn observed(&self, observed: &Observed) -> Option<Value> {
        if !observed.unfit().is_empty() {
            return None;
        }
        let competency = self.content.competency(&observed.competency)?;
        let failed = |one: &Criterion| one.critical && observed.of(&one.id) == Judged::NotYet;
        let passed = observed.alone && !competency.criteria.iter().any(failed);
        let mut statement = self.begun("event", &observed.stamp, if passed { "passed" } else { "failed" })?;
        statement.insert("actor".to_owned(), Actors::account(self.home, &observed.subject));
        let name = format!("competency.{}", competency.slug);
        let name = self.content.texts(ENGLISH).get(&name);
        statement.insert(
            "object".to_owned(),
            json!({
                "objectType": "Activity",
                "id": self.home.below(&["competencies", &competency.slug]),
                "definition": { "type": format!("{TYPES}/performance"), "name": { (ENGLISH): name } },
            }),
        );
        let mut result = json!({ "success": passed });
        if let Some(seconds) = observed.seconds {
            result["duration"] = json!(format!("PT{seconds}S"));
        }
        statement.insert("result".to_owned(), result);
        statement.insert(
            "context".to_owned(),
            json!({
                "instructor": Actors::account(self.home, &observed.by.number),
                "extensions": {
                    self.extension("occasion"): observed.occasion, self.extension("alone"): observed.alone,
                    self.extension("day-of-work"): observed.on, self.extension("sequence"): observed.stamp.sequence,
                },
            }),
        );
        Some(Value::Object(statement))
    }

    /// Strikes out what was told before.
    pub(super) fn voided(&self, struck: &Struck) -> Value {
        let EventName { device, sequence } = &struck.strikes;
        let mut statement = json!({
            "id": self.id("event", &struck.stamp.device, struck.stamp.sequence),
            "actor": Actors::account(self.home, &struck.by.number),
            "verb": { "id": format!("{VERBS}/voided"), "display": { (ENGLISH): "voided" } },
            "object": { "objectType": "StatementRef", "id": self.id("event", device, *sequence) },
        });
        if let Some(moment) = Moment::of(&struck.stamp.at) {
            statement["timestamp"] = json!(moment.to_string());
        }
        statement
    }
}
