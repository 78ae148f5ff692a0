//! A fault on the bench is worked up: tests are done one after another until it can be named.
//!
//! A test is needless where the fault could be named before it, or where another open test tells [`FOR_LITTLE`] times
//! more for its minutes. A test that rules out a fault which looks the same is never needless while that is open.

use super::Fault;
use super::alike::separates;
use super::belief::{Certainty, belief};
use super::observe::Observation;
use super::probe::Probe;
use super::telling::telling;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// A test that tells so many times less for its minutes than the best open one is done for little. Our choice: common
/// practice, no source.
pub const FOR_LITTLE: f64 = 4.0;

/// A test that can be done on the work, and what it would show; none where the fault says nothing of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Test<'a> {
    /// The test.
    pub probe: Probe<'a>,
    /// What it shows on this work.
    pub shows: Option<&'a str>,
}

impl<'a> Test<'a> {
    fn observation(&self) -> Option<Observation<'a>> {
        self.shows.map(|answer| Observation { probe: self.probe, answer })
    }
}

/// Work with one fault on it, and the tests at hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Case<'a> {
    /// All faults that are thought of.
    pub faults: &'a [Fault],
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
    /// Those of the tests done that were needless, in the order in which they were done.
    #[must_use]
    pub fn needless(&self, done: &[&str]) -> Ruling<Vec<&'a str>> {
        let mut seen = self.seen.clone();
        let mut needless = Vec::new();
        for (before, test) in done.iter().enumerate().filter_map(|(at, key)| Some((at, self.test(key)?))) {
            let earlier = done.get(..before).unwrap_or_default();
            let again = earlier.contains(&test.probe.key);
            if again || !self.tells(test, &seen, earlier) {
                needless.push(test.probe.key);
            }
            seen.extend(test.observation().filter(|_| !again));
        }
        Ruling::by("fault.tested-only-while-it-tells", needless)
    }

    /// A fault that looks the same and that no test done has ruled out.
    #[must_use]
    pub fn still_alike(&self, done: &[&str]) -> Option<&'a Fault> {
        self.twins.iter().copied().find(|twin| !done.iter().any(|key| self.rules_out(twin, key)))
    }

    /// The fewest tests that name the fault, each the most telling for its minutes when it is done.
    ///
    /// # Errors
    /// [`CannotJudge`] names the test that would tell it from a fault which looks the same, where that is not at hand.
    pub fn enough(&self) -> Judged<Vec<&'a str>> {
        let mut seen = self.seen.clone();
        let mut done: Vec<&'a str> = Vec::new();
        while let Some(best) = self.best(&seen, &done).filter(|_| !self.named(&seen)) {
            seen.extend(best.observation());
            done.push(best.probe.key);
        }
        while let Some(twin) = self.still_alike(&done) {
            let decides = |test: &&Test<'a>| self.rules_out(twin, test.probe.key);
            let test = self.tests.iter().filter(decides).min_by(|a, b| minutes(a).total_cmp(&minutes(b)));
            let key = test.ok_or_else(|| CannotJudge::without(self.wanted(twin)))?.probe.key;
            done.push(key);
        }
        Ok(Ruling::by("fault.look-alike-ruled-out", done).and("fault.tested-only-while-it-tells"))
    }

    fn test(&self, key: &str) -> Option<&Test<'a>> {
        self.tests.iter().find(|test| test.probe.key == key)
    }

    fn named(&self, seen: &[Observation<'a>]) -> bool {
        belief(self.faults, seen).certainty() == Certainty::Named
    }

    /// Whether a test can still tell something worth its minutes.
    fn tells(&self, test: &Test<'a>, seen: &[Observation<'a>], done: &[&str]) -> bool {
        if self.still_alike(done).is_some_and(|twin| self.rules_out(twin, test.probe.key)) {
            return true;
        }
        let best = self.best(seen, done).map_or(0.0, |best| worth(self.faults, seen, best));
        !self.named(seen) && worth(self.faults, seen, test) * FOR_LITTLE > best
    }

    /// The open test that tells most for its minutes, of those that show something here.
    fn best(&self, seen: &[Observation<'a>], done: &[&str]) -> Option<&Test<'a>> {
        let open = self.tests.iter().filter(|test| test.shows.is_some() && !done.contains(&test.probe.key));
        let worth = open.map(|test| (test, worth(self.faults, seen, test))).filter(|(_, worth)| *worth > 0.0);
        worth.reduce(|a, b| if b.1 > a.1 { b } else { a }).map(|(test, _)| test)
    }

    /// Whether a test shows what the twin would not.
    fn rules_out(&self, twin: &Fault, key: &str) -> bool {
        self.test(key).is_some_and(|test| test.shows.is_some()) && separates(self.fault, twin, key)
    }

    /// The test that would tell the fault from its twin.
    fn wanted(&self, twin: &Fault) -> &'a str {
        let mut keys = self.fault.seen.keys().map(String::as_str);
        keys.find(|key| separates(self.fault, twin, key)).unwrap_or("")
    }
}

fn minutes(test: &Test<'_>) -> f64 {
    test.probe.effort.all_minutes()
}

/// Bits for each minute of a test.
fn worth(faults: &[Fault], seen: &[Observation<'_>], test: &Test<'_>) -> f64 {
    telling(&belief(faults, seen), test.probe).bits_a_minute
}
