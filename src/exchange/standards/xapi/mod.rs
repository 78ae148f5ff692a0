//! The journal as statements of xAPI 1.0.3 (ADL, Experience API, part two). Sections named in comments are those of its text.
//!
//! Ids depend on the home, the tablet and the number of the event alone: sent again, a statement is the same statement
//! (2.3.1). People stand by shop number, never by name. Papers on file and what was erased are no part of it.
//!
//! What an assessor struck out is voided (2.3.2), by the same rules as everywhere. Answers to what was found wrong are left
//! out and not voided, and so are decisions of walks that rest on it: the finding can be taken back, a voided statement cannot be had again, and a mark would make another
//! statement of the same id. Those that a store has already stay there.

mod actors;
mod answer;
mod walked;
mod watched;

pub use actors::Actors;

use super::{Home, uuid5};
use crate::content::{Content, ENGLISH};
use crate::learn::observation::Strikes;
use crate::record::{Event, EventName, Moment, Stamp, Step, Struck, Voids, Walked};
use serde_json::{Map, Value, json};
use std::collections::BTreeMap;

/// Verbs of the ADL profile; those of passing and failing as the profile of cmi5 uses them.
const VERBS: &str = "http://adlnet.gov/expapi/verbs";
/// Activity types of the same.
const TYPES: &str = "http://adlnet.gov/expapi/activities";

/// Statements, and what none could be made of.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Statements {
    /// The statements, in the order of the events; what strikes one out comes behind it.
    pub all: Vec<Value>,
    /// Events of nobody, whom no actor can be named for (2.4.2).
    pub nobodys: usize,
    /// Answers and decisions of walks that are left out, as their card, rule or set was found wrong.
    pub void: usize,
}

/// Everything that statements are made with.
#[derive(Debug, Clone, Copy)]
pub(super) struct Teller<'a> {
    content: &'a Content,
    home: &'a Home,
    actors: &'a Actors,
}

/// Statements told event by event, for what takes long.
#[derive(Debug)]
pub struct Telling<'a> {
    teller: Teller<'a>,
    struck: BTreeMap<EventName, &'a Struck>,
    voids: Voids<'a>,
    /// Events of nobody that were met, whom no actor can be named for (2.4.2).
    pub nobodys: usize,
    /// Answers and decisions of walks that were left out, as their card, rule or set was found wrong.
    pub void: usize,
}

impl<'a> Telling<'a> {
    /// `about`: what strikes out, what it strikes out, and what voids; all events, or these alone.
    #[must_use]
    pub fn begin(content: &'a Content, home: &'a Home, actors: &'a Actors, about: &'a [Event]) -> Self {
        let (struck, voids) = (Strikes::of_observations(about), Voids::of(about));
        Self { teller: Teller { content, home, actors }, struck, voids, nobodys: 0, void: 0 }
    }

    /// What an event tells, and what strikes that out; one at most of each.
    pub fn tell(&mut self, event: &Event) -> impl Iterator<Item = Value> + use<> {
        let decided = event.walked().and_then(Walked::decided);
        let void = event.answer().is_some_and(|entry| self.voids.touches(entry).is_some())
            || decided.is_some_and(|decided| self.voids.touches_decided(decided).is_some());
        let statement = match event {
            _ if void => None,
            Event::Answered(entry) => self.teller.answered(entry),
            Event::Attempt(turn) => self.teller.turned(&turn.stamp, &turn.attempt, &turn.step),
            Event::Observed(observed) => self.teller.observed(observed),
            Event::Walked(walked) => self.teller.walked(walked),
            _ => None,
        };
        self.void += usize::from(void);
        let theirs = event.answer().is_some() || event.walked().is_some();
        let nobodys = !void && event.stamp().person.is_empty() && theirs;
        self.nobodys += usize::from(nobodys);
        let name = event.stamp().name();
        let struck = statement.as_ref().and_then(|_| self.struck.get(&name));
        let voided = struck.map(|one| self.teller.voided(one));
        statement.into_iter().chain(voided)
    }
}

/// The statements that events tell, those of several tablets as they were merged.
#[must_use]
pub fn statements(content: &Content, home: &Home, actors: &Actors, events: &[Event]) -> Statements {
    let mut telling = Telling::begin(content, home, actors, events);
    let all = events.iter().flat_map(|event| telling.tell(event)).collect();
    Statements { all, nobodys: telling.nobodys, void: telling.void }
}

impl Teller<'_> {
    /// The id of what an event tells: an answer, or something else.
    fn id(&self, kind: &str, device: &str, sequence: u64) -> String {
        uuid5(&self.home.below(&["device", device, kind, &sequence.to_string()])).to_string()
    }

    /// Id, actor and timestamp; the rest of a statement goes with them. `None` where there is no actor.
    fn begun(&self, kind: &str, stamp: &Stamp, verb: &str) -> Option<Map<String, Value>> {
        let mut statement = Map::new();
        statement.insert("id".to_owned(), json!(self.id(kind, &stamp.device, stamp.sequence)));
        statement.insert("actor".to_owned(), self.actors.of(self.home, &stamp.person)?);
        statement.insert(
            "verb".to_owned(),
            json!({ "id": format!("{VERBS}/{verb}"), "display": { (ENGLISH): verb } }),
        );
        // 2.4.7: where the clock told no moment there is none.
        if let Some(moment) = Moment::of(&stamp.at) {
            statement.insert("timestamp".to_owned(), json!(moment.to_string()));
        }
        Some(statement)
    }

    /// A step of an attempt; taking it up again and who sits beside have no verb.
    fn turned(&self, stamp: &Stamp, attempt: &str, step: &Step) -> Option<Value> {
        let verb = match step {
            Step::Opened { .. } => "attempted",
            Step::Left => "exited",
            Step::Closed => "completed",
            Step::Supervised { .. } | Step::Resumed => return None,
        };
        let mut statement = self.begun("event", stamp, verb)?;
        let id = self.home.below(&["device", &stamp.device, "attempts", attempt]);
        statement.insert("object".to_owned(), json!({ "objectType": "Activity", "id": id }));
        if verb == "completed" {
            statement.insert("result".to_owned(), json!({ "completion": true }));
        }
        let mut context = json!({ "registration": self.registration(&stamp.device, attempt) });
        if let Step::Opened { set, competencies, .. } = step {
            context["contextActivities"] = json!({ "parent": [self.activity("sets", set)] });
            if !competencies.is_empty() {
                context["contextActivities"]["grouping"] =
                    json!(self.activities("competencies", competencies));
            }
        }
        statement.insert("context".to_owned(), context);
        Some(Value::Object(statement))
    }

    /// What belongs to one attempt (2.4.6.1).
    fn registration(&self, device: &str, attempt: &str) -> String {
        uuid5(&self.home.below(&["device", device, "attempts", attempt])).to_string()
    }

    fn activity(&self, list: &str, slug: &str) -> Value {
        json!({ "objectType": "Activity", "id": self.home.below(&[list, slug]) })
    }

    fn activities(&self, list: &str, slugs: &[String]) -> Vec<Value> {
        slugs.iter().map(|slug| self.activity(list, slug)).collect()
    }

    /// The name of an extension, an IRI of the shop's own (4.1).
    fn extension(&self, name: &str) -> String {
        self.home.below(&["x", name])
    }
}
