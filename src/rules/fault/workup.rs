//! A fault on the bench is worked up: tests are done until it can be named among those that are thought of.
//!
//! Which tests were done counts, not their order. A test is needless where the others that were done name the fault and rule
//! out what looks the same. One test is never too many, and a test that shows nothing here was worth trying.

use super::Fault;
use super::alike::separates;
use super::belief::{Certainty, belief};
use super::observe::Observation;
use super::probe::Probe;
use crate::rules::sorted::sorted;
use crate::rules::verdict::Ruling;

/// A test that can be done on the work, and what it would show; none where the fault says nothing of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Test<'a> {
    /// The test.
    pub probe: Probe<'a>,
    /// What it shows on this work.
    pub shows: Option<&'a str>,
}

/// Work with one fault on it, and the tests at hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Case<'a> {
    /// The faults that are thought of, the one that it has among them.
    pub faults: Vec<&'a Fault>,
    /// The fault that it has.
    pub fault: &'a Fault,
    /// Faults that look the same until a test tells them apart.
    pub twins: Vec<&'a Fault>,
    /// What is seen at a glance.
    pub seen: Vec<Observation<'a>>,
    /// The tests at hand.
    pub tests: Vec<Test<'a>>,
}

impl<'a> Case<'a> {
    /// Those of the tests done that were needless.
    #[must_use]
    pub fn needless(&self, done: &[&str]) -> Ruling<Vec<&'a str>> {
        let telling: Vec<&str> = self.telling().filter(|key| done.contains(key)).collect();
        let without = |key: &str| telling.iter().copied().filter(|one| *one != key).collect::<Vec<&str>>();
        let needless = self
            .telling()
            .filter(|key| telling.len() > 1 && telling.contains(key) && self.suffices(&without(key)));
        Ruling::by("fault.tested-only-while-it-tells", needless.collect())
    }

    /// A fault that looks the same and that no test done has ruled out.
    #[must_use]
    pub fn still_alike(&self, done: &[&str]) -> Option<&'a Fault> {
        self.twins.iter().copied().find(|twin| !done.iter().any(|key| self.rules_out(twin, key)))
    }

    /// The tests that take the fewest minutes of those that name the fault and rule out what looks the same; where all
    /// together do not name it, those that rule that out.
    #[must_use]
    pub fn enough(&self) -> Ruling<Vec<&'a str>> {
        let telling: Vec<&'a str> = self.telling().collect();
        let sets = (0..1_u32 << telling.len()).map(|set| {
            let chosen = telling.iter().enumerate().filter(move |(bit, _)| set >> bit & 1 == 1);
            chosen.map(|(_, key)| *key).collect::<Vec<&'a str>>()
        });
        let apart = sets.filter(|set| self.still_alike(set).is_none());
        let timed: Vec<(f64, Vec<&str>)> = apart.map(|set| (self.minutes(&set), set)).collect();
        let quickest_first = sorted(timed, |a, b| a.0.total_cmp(&b.0));
        let names = quickest_first.iter().find(|(_, set)| self.names(set));
        let tests = names.or_else(|| quickest_first.first()).map(|(_, set)| set.clone()).unwrap_or_default();
        let ruling = Ruling::by("fault.tested-only-while-it-tells", tests);
        if self.twins.is_empty() { ruling } else { ruling.and("fault.look-alike-ruled-out") }
    }

    /// Keys of the tests that show something here.
    fn telling(&self) -> impl Iterator<Item = &'a str> {
        self.tests.iter().filter(|test| test.shows.is_some()).map(|test| test.probe.key)
    }

    /// Whether tests name the fault and rule out what looks the same.
    fn suffices(&self, done: &[&str]) -> bool {
        self.still_alike(done).is_none() && self.names(done)
    }

    fn names(&self, done: &[&str]) -> bool {
        let tests = self.tests.iter().filter(|test| done.contains(&test.probe.key));
        let shown = tests.filter_map(|test| Some(Observation { probe: test.probe, answer: test.shows? }));
        let seen: Vec<Observation<'_>> = self.seen.iter().copied().chain(shown).collect();
        let now = belief(self.faults.iter().copied(), &seen);
        now.certainty() == Certainty::Named && now.first().is_some_and(|(first, _)| first.id == self.fault.id)
    }

    /// Whether a test shows what the twin would not.
    fn rules_out(&self, twin: &Fault, key: &str) -> bool {
        self.telling().any(|one| one == key) && separates(self.fault, twin, key)
    }

    fn minutes(&self, done: &[&str]) -> f64 {
        let tests = self.tests.iter().filter(|test| done.contains(&test.probe.key));
        tests.map(|test| test.probe.effort.all_minutes()).sum()
    }
}
