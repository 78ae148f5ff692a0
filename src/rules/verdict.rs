//! What a rule answers: a result with the rules that decided it and the working, or what is missing.

use crate::quantity::Measure;
use serde::Serialize;

/// Name of a rule; its sentence, kind, severity and source stand in `content/rules/`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub struct RuleId(pub &'static str);

/// One line of working: what it is called, how it was got, what came out.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Key of its label: text `working.<label>`.
    pub label: &'static str,
    /// The formula in symbols, empty for a value that was read or that `formula.<label>` tells in words.
    pub formula: &'static str,
    /// What was put into the formula, in its order; none for a value that was read.
    pub given: Vec<Given>,
    /// The number.
    pub result: Measure,
}

/// A number that was put into a formula.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Given {
    /// Its symbol or words in the formula, or the label of the line of working in which it came out.
    pub name: &'static str,
    /// The number.
    pub value: Measure,
}

/// An answer with its reasons.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ruling<T> {
    /// What the model says.
    pub answer: T,
    /// The rules that decided it, the deciding one first.
    pub rules: Vec<RuleId>,
    /// The calculation, line by line.
    pub working: Vec<Step>,
}

/// The verdict "cannot be judged", with what is missing or does not go together.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, Serialize)]
#[error("cannot be judged: {} {}", missing.join(", "), if *contradicting { "contradict each other" } else { "missing" })]
pub struct CannotJudge {
    /// Keys of the facts that are missing, or that contradict each other.
    pub missing: Vec<String>,
    /// Whether the facts named were told and contradict each other.
    pub contradicting: bool,
}

/// An answer, or that it cannot be judged.
pub type Judged<T> = Result<Ruling<T>, CannotJudge>;

impl CannotJudge {
    /// One fact is missing.
    #[must_use]
    pub fn without(fact: &str) -> Self {
        Self::lacking(vec![fact.to_owned()])
    }

    /// Several facts are missing.
    #[must_use]
    pub const fn lacking(missing: Vec<String>) -> Self {
        Self { missing, contradicting: false }
    }

    /// Facts were told that contradict each other.
    #[must_use]
    pub fn between(facts: &[&str]) -> Self {
        Self { missing: facts.iter().map(|fact| (*fact).to_owned()).collect(), contradicting: true }
    }
}

impl<T> Ruling<T> {
    /// An answer decided by one rule.
    #[must_use]
    pub fn by(rule: &'static str, answer: T) -> Self {
        Self { answer, rules: vec![RuleId(rule)], working: Vec::new() }
    }

    /// Adds a rule that also bears on the answer.
    #[must_use]
    pub fn and(mut self, rule: &'static str) -> Self {
        if !self.rules.contains(&RuleId(rule)) {
            self.rules.push(RuleId(rule));
        }
        self
    }

    /// Adds a line of working.
    #[must_use]
    pub fn step(mut self, label: &'static str, formula: &'static str, result: Measure) -> Self {
        self.working.push(Step { label, formula, given: Vec::new(), result });
        self
    }

    /// Tells what was put into the formula of the last line of working.
    #[must_use]
    pub fn given(mut self, put_in: &[(&'static str, Measure)]) -> Self {
        if let Some(step) = self.working.last_mut() {
            step.given = put_in.iter().map(|(name, value)| Given { name, value: *value }).collect();
        }
        self
    }

    /// Takes over rules and working of a ruling that this one rests on; its working comes first, and what it shows already
    /// is not shown again.
    #[must_use]
    pub fn resting_on<U>(mut self, other: &Ruling<U>) -> Self {
        let mut working = other.working.clone();
        let known = |step: &Step| {
            other.working.iter().any(|known| known.label == step.label && known.result == step.result)
        };
        working.extend(self.working.into_iter().filter(|step| !known(step)));
        self.working = working;
        for rule in &other.rules {
            self = self.and(rule.0);
        }
        self
    }

    /// The same reasons for another form of the answer.
    #[must_use]
    pub fn map<U>(self, to: impl FnOnce(T) -> U) -> Ruling<U> {
        Ruling { answer: to(self.answer), rules: self.rules, working: self.working }
    }
}
