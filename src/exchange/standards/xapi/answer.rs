//! An answer as a statement: a card is an interaction (2.4.4.1).

use super::{TYPES, Teller};
use crate::card::{Answer, Kind, Mark, families};
use crate::content::ENGLISH;
use crate::learn::calibration::points;
use crate::record::{Certainty, Entry, Within};
use crate::rules::term::Term;
use serde_json::{Map, Value, json};

/// Stands between the parts of a response, and within a pair (2.4.4.1).
const BETWEEN: &str = "[,]";
const WITHIN: &str = "[.]";

impl Teller<'_> {
    pub(super) fn answered(&self, entry: &Entry) -> Option<Value> {
        let mut statement = self.begun("answer", &entry.stamp, "answered")?;
        statement.insert("object".to_owned(), self.card(entry));
        statement.insert("result".to_owned(), self.result(entry));
        statement.insert("context".to_owned(), self.context(entry));
        Some(Value::Object(statement))
    }

    /// The card family in its version. Right answers are computed for each card and cannot be listed: the pattern of correct
    /// responses is left out.
    fn card(&self, entry: &Entry) -> Value {
        let kind = families::find(&entry.family).map(|question| question.kind());
        let texts = self.content.texts(ENGLISH);
        let titles = [format!("card.{}.title", entry.family), format!("card.{}.ask", entry.family)];
        let mut definition = json!({
            "type": format!("{TYPES}/cmi.interaction"), "interactionType": interaction(kind, &entry.answer),
        });
        let name = texts.first(&[&titles[0], &titles[1]]);
        if self.content.family(&entry.family).is_some() {
            definition["name"] = json!({ (ENGLISH): name });
        }
        let version = format!("v{}", entry.version);
        let id = self.home.below(&["cards", &entry.family, &version]);
        json!({ "objectType": "Activity", "id": id, "definition": definition })
    }

    fn result(&self, entry: &Entry) -> Value {
        let right = entry.mark == Mark::Right;
        let raw = points(entry.certainty, right);
        let ends = Certainty::ALL.iter().flat_map(|one| [points(*one, true), points(*one, false)]);
        let (min, max) = (ends.clone().min(), ends.max());
        let mut result = Map::new();
        result.insert("success".to_owned(), json!(right));
        result.insert("score".to_owned(), json!({ "raw": raw, "min": min, "max": max }));
        if let Some(response) = response(&entry.answer) {
            result.insert("response".to_owned(), json!(response));
        }
        if let Some(seconds) = entry.active_seconds {
            result.insert("duration".to_owned(), json!(format!("PT{seconds}S")));
        }
        let told = [
            ("certainty", json!(entry.certainty.slug())),
            ("mark", json!(entry.mark)),
            ("guess", json!(entry.guess)),
            ("unit", json!(if let Answer::Number(given) = &entry.answer { Some(given.unit) } else { None })),
        ];
        let told = told.into_iter().filter(|(_, value)| !value.is_null());
        let extensions: Map<String, Value> =
            told.map(|(name, value)| (self.extension(name), value)).collect();
        result.insert("extensions".to_owned(), Value::Object(extensions));
        Value::Object(result)
    }

    fn context(&self, entry: &Entry) -> Value {
        let stamp = &entry.stamp;
        let mut activities = Map::new();
        let mut context = Map::new();
        let kind = match &entry.within {
            Within::Practice => "practice",
            Within::Check { attempt, set } | Within::Set { attempt, set } => {
                context.insert("registration".to_owned(), json!(self.registration(&stamp.device, attempt)));
                activities.insert("parent".to_owned(), json!([self.activity("sets", set)]));
                if matches!(entry.within, Within::Check { .. }) { "check" } else { "set" }
            }
            Within::Paper { set, .. } => {
                activities.insert("parent".to_owned(), json!([self.activity("sets", set)]));
                "paper"
            }
            Within::Walk { walk, .. } => {
                context.insert("registration".to_owned(), json!(self.registration(&stamp.device, walk)));
                "walk"
            }
        };
        let family = self.content.family(&entry.family);
        if let Some(family) = family.filter(|family| !family.competencies.is_empty()) {
            activities
                .insert("grouping".to_owned(), json!(self.activities("competencies", &family.competencies)));
        }
        if !activities.is_empty() {
            context.insert("contextActivities".to_owned(), Value::Object(activities));
        }
        let told = [
            ("kind", json!(kind)),
            ("sequence", json!(stamp.sequence)),
            ("local-date", json!(stamp.day())),
            ("seed", json!(entry.seed)),
            ("sheet", json!(entry.sheet.slug)),
            ("sheet-hash", json!(entry.sheet.hash)),
            ("help", json!(entry.help)),
        ];
        let told = told.into_iter().filter(|(_, value)| !value.is_null());
        let extensions: Map<String, Value> =
            told.map(|(name, value)| (self.extension(name), value)).collect();
        context.insert("extensions".to_owned(), Value::Object(extensions));
        Value::Object(context)
    }
}

/// The interaction type: by what the family asks for, else by what was answered.
const fn interaction(kind: Option<Kind>, answer: &Answer) -> &'static str {
    match (kind, answer) {
        (Some(Kind::ChooseOne | Kind::ChooseAll), _) => "choice",
        (Some(Kind::Order), _) => "sequencing",
        (Some(Kind::Number), _) => "numeric",
        (Some(Kind::Diagnose), _) => "performance",
        // A path is no sequence of named steps.
        (Some(Kind::Spray), _) => "other",
        (Some(Kind::Point), _) => "other",
        (None, Answer::NotEnough | Answer::Term(_) | Answer::Terms(_)) => "choice",
        (None, Answer::Order(_)) => "sequencing",
        (None, Answer::Number(_)) => "numeric",
        (None, Answer::Diagnosis(_)) => "performance",
        (None, Answer::Place(_) | Answer::OnTheFault | Answer::Run(_) | Answer::GoodRun) => "other",
    }
}

/// What was answered, in the form of its interaction type; none where a part could be taken for what stands between parts.
fn response(answer: &Answer) -> Option<String> {
    let parts = |parts: &[String], between: &str| {
        let plain = |part: &String| !part.contains(BETWEEN) && !part.contains(WITHIN);
        parts.iter().all(plain).then(|| parts.join(between))
    };
    match answer {
        Answer::NotEnough => Some("not-enough".to_owned()),
        Answer::Term(term) => parts(std::slice::from_ref(term), BETWEEN),
        Answer::Terms(terms) | Answer::Order(terms) => parts(terms, BETWEEN),
        Answer::Number(given) => Some(given.value.to_string()),
        Answer::Place(place) => Some(format!("{},{}", place.x_mm, place.y_mm)),
        Answer::Run(run) => Some(run.told().to_string()),
        Answer::OnTheFault | Answer::GoodRun => None,
        Answer::Diagnosis(named) => {
            let tests = parts(&named.tests, "+")?;
            let steps = [
                ("tests", &tests),
                ("fault", &named.fault),
                ("cause", &named.cause),
                ("remedy", &named.remedy),
            ];
            let steps = steps.map(|(step, answer)| format!("{step}{WITHIN}{answer}"));
            Some(steps.join(BETWEEN))
        }
    }
}
