//! How a card is shown: facts, options and answers in words, in a person's language and units.

use super::{Answer, Card};
use crate::bench::FactValue;
use crate::content::{Args, Content, Texts, Ticket, Units};
use crate::quantity::{Measure, Unit};
use crate::rules::term::Term;
use crate::rules::verdict::{Given, Step};
use crate::spraying::Run;

/// Language and units of a person.
#[derive(Debug, Clone, Copy)]
pub struct Voice<'a> {
    /// The checked content.
    pub content: &'a Content,
    /// Messages of the language.
    pub texts: &'a Texts,
    /// Units shown.
    pub units: Units,
}

impl<'a> Voice<'a> {
    /// A voice in a language and units.
    #[must_use]
    pub fn new(content: &'a Content, language: &str, units: Units) -> Self {
        Self { content, texts: content.texts(language), units }
    }

    /// How a line of working was got: the words `formula.<label>` where there are any, else its symbols.
    #[must_use]
    pub fn formula(&self, step: &Step) -> &str {
        self.texts.find(&format!("formula.{}", step.label)).unwrap_or(step.formula)
    }

    /// What was put into a line of working, each with its name and in the unit that the formula counts in, whatever units the
    /// person reads; empty where a value was only read.
    #[must_use]
    pub fn put_in(&self, step: &Step) -> String {
        let one = |given: &Given| {
            let name = self.texts.find(&format!("working.{}", given.name)).unwrap_or(given.name);
            format!("{name} = {}", self.texts.measure(given.value))
        };
        step.given.iter().map(one).collect::<Vec<_>>().join(", ")
    }

    /// A measure in the person's units.
    #[must_use]
    pub fn measure(&self, measure: Measure) -> String {
        self.texts.measure(self.units.show(measure))
    }

    /// A term: a wood, a fault, a cause, a probe, a ticket, a stage, or a text `card.<family>.<slug>` or `term.<slug>`.
    #[must_use]
    pub fn term(&self, family: &str, slug: &str) -> String {
        if let Some(wood) = self.content.wood(slug) {
            return self.texts.find(&format!("wood.{slug}")).unwrap_or(&wood.name).to_owned();
        }
        let shared = ["term", "solvent", "fault", "cause", "probe", "ticket", "app.stage", "spray.task"]
            .map(|list| format!("{list}.{slug}"));
        let keys = std::iter::once(format!("card.{family}.{slug}")).chain(shared);
        let found = keys.into_iter().find_map(|key| self.texts.find(&key));
        found.map_or_else(|| format!("term.{slug}"), str::to_owned)
    }

    /// The value of a fact in words.
    #[must_use]
    pub fn fact(&self, family: &str, key: &str, value: &FactValue) -> String {
        match value {
            FactValue::Number(number) => self
                .content
                .fact(key)
                .map_or_else(|| number.to_string(), |info| self.measure(info.measure(*number))),
            FactValue::Term(slug) => self.term(family, slug),
        }
    }

    /// The value of a fact inside a sentence: a wood by its everyday name.
    fn inline(&self, family: &str, key: &str, value: &FactValue) -> String {
        let everyday = match value {
            FactValue::Term(slug) => self.texts.find(&format!("wood.{slug}.inline")),
            FactValue::Number(_) => None,
        };
        everyday.map_or_else(|| self.fact(family, key, value), str::to_owned)
    }

    /// Name of a fact.
    #[must_use]
    pub fn fact_name(&self, key: &str) -> &'a str {
        let solvent = || self.texts.find(&format!("solvent.{key}"));
        self.texts.find(&format!("fact.{key}")).or_else(solvent).unwrap_or("")
    }

    /// An answer in words.
    #[must_use]
    pub fn answer(&self, family: &str, answer: &Answer) -> String {
        let list = |slugs: &[String], between: &str| {
            slugs.iter().map(|slug| self.term(family, slug)).collect::<Vec<_>>().join(between)
        };
        match answer {
            Answer::NotEnough => self.texts.get("answer.not-enough").to_owned(),
            Answer::Term(slug) => self.term(family, slug),
            Answer::Number(measure) => self.measure(*measure),
            Answer::Terms(slugs) => list(slugs, "; "),
            Answer::Order(slugs) => list(slugs, " → "),
            Answer::Diagnosis(named) => {
                let tests = if named.tests.is_empty() {
                    self.texts.get("answer.no-test").to_owned()
                } else {
                    list(&named.tests, "; ")
                };
                let named = [
                    ("tests", tests),
                    ("fault", self.term(family, &named.fault)),
                    ("cause", self.term(family, &named.cause)),
                    ("remedy", self.term(family, &named.remedy)),
                ];
                self.texts.fill("answer.diagnosis", &named.map(|(key, words)| (key.to_owned(), words)).into())
            }
            Answer::GoodRun => self.texts.get("answer.good-run").to_owned(),
            Answer::Run(run) => self.run(run),
            Answer::OnTheFault => self.texts.get("answer.on-the-fault").to_owned(),
            Answer::Place(place) => {
                let mm = |value: f32| self.measure(Measure::new(f64::from(value), Unit::Millimetre, 0));
                let named = [("x".to_owned(), mm(place.x_mm)), ("y".to_owned(), mm(place.y_mm))];
                self.texts.fill("answer.place", &Args::from(named))
            }
        }
    }

    /// A run in one line: how many sets of passes, or how many strokes in which time.
    fn run(&self, run: &Run) -> String {
        let named = |key: &str, named: [(&str, String); 2]| {
            self.texts.fill(key, &named.map(|(key, words)| (key.to_owned(), words)).into())
        };
        match run {
            Run::Passes(sets) => {
                named("answer.run-passes", [("n", sets.len().to_string()), ("time", String::new())])
            }
            Run::Hand(path) => {
                let points = path.points();
                let pulled = points.iter().zip(points.iter().skip(1));
                let strokes = pulled.filter(|(one, next)| one.trigger == 0.0 && next.trigger > 0.0).count();
                let first = points.first().is_some_and(|point| point.trigger > 0.0);
                let time = points.last().map_or(0.0, |last| last.t);
                let time = self.measure(Measure::new(time, Unit::Second, 0));
                named("answer.run-hand", [("n", (strokes + usize::from(first)).to_string()), ("time", time)])
            }
        }
    }

    /// What a test of a card shows: how it comes out, or that it tells nothing of this work.
    #[must_use]
    pub fn shown_by(&self, card: &Card, test: &str) -> String {
        match card.facts.0.get(test) {
            Some(shown) => self.fact(&card.family, test, shown),
            None => self.texts.get("answer.tells-nothing").to_owned(),
        }
    }

    /// The story of a card.
    #[must_use]
    pub fn story(&self, card: &Card) -> String {
        let first = format!("card.{}.story", card.family);
        let key = if card.story <= 1 { first } else { format!("{first}.{}", card.story) };
        self.texts.fill(&key, &self.args(card))
    }

    /// The question of a card.
    #[must_use]
    pub fn ask(&self, card: &Card) -> String {
        self.texts.fill(&format!("card.{}.ask", card.family), &self.args(card))
    }

    /// The facts told as figures: name and value, in the family's order; those that the story tells are left out.
    #[must_use]
    pub fn facts(&self, card: &Card) -> Vec<(&'a str, String)> {
        let Some(info) = self.content.family(&card.family) else { return Vec::new() };
        let shown = info.facts.iter().filter(|draw| !draw.in_story && !draw.on_panel);
        shown
            .flat_map(|draw| self.content.drawn(draw))
            .filter_map(|key| {
                let value = card.facts.0.get(key)?;
                Some((self.fact_name(key), self.fact(&card.family, key, value)))
            })
            .collect()
    }

    fn args(&self, card: &Card) -> Args {
        let mut args = Args::new();
        for (key, value) in &card.facts.0 {
            args.insert(key.clone(), self.inline(&card.family, key, value));
        }
        if let Some(ticket) = card.facts.maybe_slug("ticket").and_then(|slug| self.content.ticket(slug)) {
            self.read_out(ticket, &mut args);
        }
        args
    }

    /// What stands on a job ticket, for stories: `{ticket.number}`, `{ticket.binding}`, `{ticket.colour}` with the
    /// shading, `{ticket.coats}`, `{ticket.look}`, `{ticket.class}` and `{ticket.woods}` by part.
    fn read_out(&self, ticket: &Ticket, args: &mut Args) {
        let shaded = if ticket.shaded { "shaded" } else { "plain" };
        let parts = ticket.parts.iter().map(|part| {
            let name = self.texts.find(&format!("part.{}", part.slug)).unwrap_or(&part.slug);
            format!("{name}: {}", self.term("", &part.wood))
        });
        let lines = [
            ("number", ticket.number.to_string()),
            ("coats", ticket.clear_coats.to_string()),
            ("binding", self.texts.get(&format!("on-ticket.binding.{}", ticket.binding.slug())).to_owned()),
            ("colour", self.texts.get(&format!("on-ticket.{shaded}.{}", ticket.colour.slug())).to_owned()),
            ("look", self.term("", ticket.look.slug())),
            ("class", self.term("", ticket.class.slug())),
            ("woods", parts.collect::<Vec<_>>().join(", ")),
        ];
        args.extend(lines.map(|(name, line)| (format!("ticket.{name}"), line)));
    }
}
