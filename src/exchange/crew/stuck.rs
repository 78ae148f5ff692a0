//! Who is stuck on what: wrong answers by the misconception that they show, wrong decisions of walks by the rule that they
//! broke.

use crate::card::Mark;
use crate::learn::items::Redealt;
use crate::record::{Decided, Entry, EventName, Moment, Retold, Stamp, Voids, Walked, Way};
use crate::rules::sorted::sorted;
use std::collections::BTreeMap;

/// What was misread.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misread {
    /// A misconception that has a name: text `slip.<id>`.
    Slip(String),
    /// The cards of a family, where the wrong answer shows no misconception that is known.
    Cards(String),
    /// A rule that was broken on a walk: text `rule.<id>`.
    Rule(String),
}

/// What one person misread.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slipped {
    /// What.
    pub misread: Misread,
    /// Whose, see [`super::Person::key`].
    pub key: String,
    /// Name.
    pub name: String,
    /// How often.
    pub count: usize,
    /// How often of that it would have been done on the job.
    pub sure: usize,
    /// When last.
    pub last: Option<Moment>,
    /// That answer.
    pub example: EventName,
    /// Right answers to cards of the same family since then.
    pub right_since: usize,
    /// The families of the cards, or those that the decisions exercise, and how often each.
    pub families: BTreeMap<String, usize>,
}

/// What the crew misreads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stuck {
    /// What.
    pub misread: Misread,
    /// How often.
    pub count: usize,
    /// How often of that it would have been done on the job.
    pub sure: usize,
    /// Those who do, whoever is most sure first.
    pub people: Vec<Slipped>,
    /// The families of the cards, the most frequent first.
    pub families: Vec<String>,
}

/// What a person misread, answer by answer.
#[derive(Debug)]
pub struct Slips<'a> {
    key: &'a str,
    name: &'a str,
    /// Each with the family of its latest answer.
    found: BTreeMap<Misread, (Slipped, String)>,
    /// The decisions of walks that were taken.
    told: Retold<'a>,
}

impl<'a> Slips<'a> {
    /// Of nobody's answers yet; see [`super::Person`].
    #[must_use]
    pub fn new(key: &'a str, name: &'a str) -> Self {
        Self { key, name, found: BTreeMap::new(), told: Retold::default() }
    }

    /// Takes the next answer, oldest first. A wrong one is dealt again; where it cannot be it stands under its family.
    pub fn take(&mut self, redealt: &mut Redealt<'_>, entry: &Entry) {
        if entry.mark == Mark::Right {
            return self.right(&entry.family);
        }
        let slip = redealt.of(entry).and_then(|dealt| dealt.slip);
        let misread =
            slip.map_or_else(|| Misread::Cards(entry.family.clone()), |slip| Misread::Slip(slip.to_owned()));
        self.wrong(misread, &entry.stamp, Some(&entry.family), entry.sure_and_wrong());
    }

    /// Takes the next decision of a walk, in its place among the answers; what rests on something void is passed over, and
    /// what was told before.
    pub fn take_decided(&mut self, walked: &'a Walked, decided: &'a Decided, voids: &Voids<'_>) {
        if !self.told.is_new(walked, decided) {
            return;
        }
        let exercised = || decided.exercised.iter().filter(|one| voids.touches_exercised(one).is_none());
        for one in exercised().filter(|one| one.is_right()) {
            self.right(&one.family);
        }
        for rule in decided.broke.iter().filter(|rule| voids.of_rule(rule).is_none()) {
            let family = exercised().find(|one| one.broke.contains(rule)).map(|one| one.family.as_str());
            // Whoever was warned and did it all the same was asked.
            self.wrong(Misread::Rule(rule.clone()), &walked.stamp, family, decided.way == Way::Own);
        }
    }

    fn right(&mut self, family: &str) {
        let same = self.found.values_mut().filter(|(_, latest)| latest == family);
        same.for_each(|(slipped, _)| slipped.right_since += 1);
    }

    fn wrong(&mut self, misread: Misread, stamp: &Stamp, of: Option<&str>, sure: bool) {
        let (key, name) = (self.key.to_owned(), self.name.to_owned());
        let (one, family) = self.found.entry(misread.clone()).or_insert_with(|| {
            let (last, example, families) = (None, stamp.name(), BTreeMap::new());
            let new =
                Slipped { misread, key, name, count: 0, sure: 0, last, example, right_since: 0, families };
            (new, String::new())
        });
        one.count += 1;
        one.sure += usize::from(sure);
        (one.last, one.example) = (Moment::of(&stamp.at), stamp.name());
        (one.right_since, *family) = (0, of.unwrap_or_default().to_owned());
        if let Some(of) = of {
            *one.families.entry(of.to_owned()).or_insert(0) += 1;
        }
    }

    /// What they misread.
    pub fn told(self) -> impl Iterator<Item = Slipped> {
        self.found.into_values().map(|(slipped, _)| slipped)
    }
}

impl Slipped {
    /// The families of the cards, the most frequent first.
    #[must_use]
    pub fn kinds(&self) -> Vec<String> {
        often(self.families.iter())
    }
}

/// What everybody misread together: what was sure and wrong most often first, then the most frequent, then the latest.
#[must_use]
pub fn stuck(all: impl IntoIterator<Item = Slipped>) -> Vec<Stuck> {
    let mut found: BTreeMap<Misread, Vec<Slipped>> = BTreeMap::new();
    for one in all {
        found.entry(one.misread.clone()).or_default().push(one);
    }
    let stuck: Vec<Stuck> = found
        .into_iter()
        .map(|(misread, people)| {
            let people = sorted(people, |a, b| {
                (b.sure, b.count, b.last, &a.name).cmp(&(a.sure, a.count, a.last, &b.name))
            });
            let count = people.iter().map(|one| one.count).sum();
            let sure = people.iter().map(|one| one.sure).sum();
            let families = often(people.iter().flat_map(|one| &one.families));
            Stuck { misread, count, sure, people, families }
        })
        .collect();
    let last = |one: &Stuck| one.people.iter().map(|one| one.last).max();
    sorted(stuck, |a, b| (b.sure, b.count, last(b), &a.misread).cmp(&(a.sure, a.count, last(a), &b.misread)))
}

/// Families by how often they stand there, the most frequent first.
fn often<'a>(counts: impl Iterator<Item = (&'a String, &'a usize)>) -> Vec<String> {
    let mut sums: BTreeMap<&String, usize> = BTreeMap::new();
    for (family, count) in counts {
        *sums.entry(family).or_insert(0) += count;
    }
    sorted(sums.into_iter().collect(), |(_, a), (_, b)| b.cmp(a))
        .into_iter()
        .map(|(family, _)| family.clone())
        .collect()
}
