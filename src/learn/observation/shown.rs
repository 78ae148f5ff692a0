//! What a person has shown of a competency, and what is missing.

use super::{Demonstration, Paper, Worth, on_file};
use crate::content::{Competency, Criterion};
use crate::record::{Event, Judged, LocalDate, Observed};
use crate::terms;
use std::collections::BTreeSet;

/// What is asked of the journal.
#[derive(Debug, Clone, Copy)]
pub struct Asked<'a> {
    /// Whose work, by shop number.
    pub subject: &'a str,
    /// What of.
    pub competency: &'a Competency,
    /// The day of the last sign-off for it, if there was one: what was shown until then counted for that one.
    pub after: Option<LocalDate>,
    /// The day in the shop.
    pub today: LocalDate,
}

terms! {
    /// What is missing before it can be signed. Text: `app.assess.missing.<slug>`.
    Missing {
        /// Assessors must talk over a critical criterion.
        Settling = "settling",
        /// Demonstrations.
        Demonstrations = "demonstrations",
        /// Days on which they lie.
        Days = "days",
        /// Criteria that were met at none.
        Criteria = "criteria",
        /// A paper in force.
        OnFile = "on-file",
    }
}

/// What a person has shown of a competency.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown<'a> {
    /// All demonstrations with their worth, in the order in which they were written down.
    pub demonstrations: Vec<(Demonstration<'a>, Worth)>,
    /// How many count.
    pub count: u32,
    /// Separate days on which these lie.
    pub days: u32,
    /// Criteria that were met at none of these, in the order of the competency.
    pub to_see: Vec<&'a Criterion>,
    /// Papers that the competency asks for.
    pub papers: Vec<Paper<'a>>,
    /// What is missing; nothing bars signing on this side where it is empty.
    pub missing: Vec<Missing>,
}

impl<'a> Shown<'a> {
    /// The demonstrations that count.
    pub fn counting(&self) -> impl Iterator<Item = &Demonstration<'a>> {
        self.of(Worth::Counts)
    }

    /// Demonstrations on which assessors disagree.
    pub fn unsettled(&self) -> impl Iterator<Item = &Demonstration<'a>> {
        self.of(Worth::Unsettled)
    }

    fn of(&self, wanted: Worth) -> impl Iterator<Item = &Demonstration<'a>> {
        self.demonstrations.iter().filter(move |(_, worth)| *worth == wanted).map(|(one, _)| one)
    }
}

/// What events tell of it: those of one journal, or of several merged ones.
#[must_use]
pub fn shown<'a>(events: &'a [Event], asked: &Asked<'a>) -> Shown<'a> {
    let Asked { subject, competency, after, today } = *asked;
    let theirs = |one: &Observed| one.subject == subject && one.competency == competency.slug;
    let valued = |one: Demonstration<'a>| {
        let worth = one.worth(competency, after, today);
        (one, worth)
    };
    let mut shown = Shown {
        demonstrations: Demonstration::of(events, theirs).into_iter().map(valued).collect(),
        count: 0,
        days: 0,
        to_see: Vec::new(),
        papers: on_file(events, subject, competency, today),
        missing: Vec::new(),
    };
    let days: BTreeSet<LocalDate> = shown.counting().map(|one| one.on).collect();
    let met = |one: &&Criterion| shown.counting().any(|it| it.judged(&one.id) == Judged::Met);
    let to_see: Vec<&Criterion> = competency.criteria.iter().filter(|one| !met(one)).collect();
    shown.count = count(shown.counting().count());
    shown.days = count(days.len());
    shown.to_see = to_see;
    shown.missing = missing(&shown, competency);
    shown
}

fn missing(shown: &Shown<'_>, competency: &Competency) -> Vec<Missing> {
    let filed = |what| shown.papers.iter().any(|paper| paper.in_force && paper.filing.filed.what == what);
    let all = [
        (shown.unsettled().next().is_some(), Missing::Settling),
        (shown.count < competency.demonstrations, Missing::Demonstrations),
        (shown.days < competency.days, Missing::Days),
        (!shown.to_see.is_empty(), Missing::Criteria),
        (!competency.on_file.iter().all(|what| filed(*what)), Missing::OnFile),
    ];
    all.into_iter().filter(|(stands, _)| *stands).map(|(_, missing)| missing).collect()
}

fn count(of: usize) -> u32 {
    u32::try_from(of).unwrap_or(u32::MAX)
}
