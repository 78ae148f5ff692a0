//! How one person stands in every competency, at a glance.

use super::Person;
use crate::card::Mark;
use crate::content::Content;
use crate::learn::evidence::{Outcome, of_all};
use crate::record::{Event, LocalDate, Stamp, Voids};
use crate::rules::sorted::sorted;
use crate::signoff::{Book, SOON_DAYS, ShopNumber, Standing, When};
use crate::terms;
use std::collections::BTreeSet;

terms! {
    /// How somebody stands in a competency. Text: `app.crew.stands.<slug>`.
    Stands {
        /// It is signed for.
        Held = "held",
        /// It is signed for, and runs out within [`SOON_DAYS`].
        Soon = "soon",
        /// The cards suffice; the work is to be seen and signed for.
        Sufficient = "sufficient",
        /// An error about safety is open.
        Blocked = "blocked",
        /// Cards were answered in a check.
        Going = "going",
        /// It was signed for and counts no more.
        Ended = "ended",
        /// Cards were answered or jobs walked, none of which counts for it.
        Practised = "practised",
        /// Nothing.
        Nothing = "nothing",
    }
}

/// What everything is read from, now.
#[derive(Debug, Clone, Copy)]
pub struct Looking<'a> {
    /// The content.
    pub content: &'a Content,
    /// The sign-off book of this tablet, where one is begun.
    pub book: Option<&'a Book>,
    /// The moment.
    pub now: &'a When,
}

/// One competency of one person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// Slug of the competency.
    pub competency: String,
    /// How it stands.
    pub stands: Stands,
    /// The day on which the sign-off runs out, or ran out.
    pub until: Option<LocalDate>,
    /// Right answers that count in the check that is taken.
    pub right: u32,
    /// Answers that count in it.
    pub answers: u32,
}

/// One person at a glance.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Glance {
    /// See [`Person::key`].
    pub key: String,
    /// Shop number.
    pub number: Option<String>,
    /// Name.
    pub name: String,
    /// All competencies, in the order of content.
    pub cells: Vec<Cell>,
    /// Answers, but for those that were found void.
    pub answers: usize,
    /// Wholly right ones.
    pub right: usize,
    /// Wrong ones that would have been done on the job.
    pub sure_and_wrong: usize,
    /// Answers that no longer count.
    pub void: usize,
    /// The day of the last answer, or decision of a walk.
    pub last: Option<LocalDate>,
}

/// How a person stands; `events` are theirs, oldest first and under their key, and those that void something.
#[must_use]
pub fn glance(looking: &Looking<'_>, person: &Person, events: &[&Event]) -> Glance {
    let voids = Voids::of(events.iter().copied());
    let answers = || events.iter().filter_map(|event| event.answer());
    let counted = || answers().filter(|entry| voids.touches(entry).is_none());
    let done = || {
        let done = |event: &&&Event| event.answer().is_some() || event.walked().is_some();
        events.iter().filter(done).map(|event| event.stamp())
    };
    let number = person.number.as_deref().and_then(|number| ShopNumber::new(number).ok());
    // Only a family of content belongs to a competency; a card of the shop's own does not.
    let decided = || events.iter().filter_map(|event| event.walked()?.decided());
    let exercised = decided().flat_map(|one| &one.exercised);
    let exercised = exercised.filter(|one| voids.touches_exercised(one).is_none());
    let exercised = exercised.map(|one| one.family.as_str());
    let families: BTreeSet<&str> = counted().map(|entry| entry.family.as_str()).chain(exercised).collect();
    let infos = families.into_iter().filter_map(|family| looking.content.family(family));
    let practised: BTreeSet<&str> =
        infos.flat_map(|info| info.competencies.iter().map(String::as_str)).collect();
    let cells = of_all(looking.content, events, &person.key, 0).into_iter().map(|(competency, evidence)| {
        let slug = competency.slug.as_str();
        let signed = looking.signed(number.as_ref(), slug);
        let until = match &signed {
            Standing::Held(one) | Standing::Expired(one) => one.until.date(),
            _ => None,
        };
        let soon = |day: LocalDate| {
            looking.now.date().is_some_and(|today| day.number() - today.number() <= SOON_DAYS)
        };
        let stands = match (&signed, evidence.outcome()) {
            (Standing::Held(_), _) if until.is_some_and(soon) => Stands::Soon,
            (Standing::Held(_), _) => Stands::Held,
            (_, Outcome::Blocked) => Stands::Blocked,
            (_, Outcome::Suffices) => Stands::Sufficient,
            (_, outcome) if outcome != Outcome::NotBegun => Stands::Going,
            (Standing::Never, _) if practised.contains(slug) => Stands::Practised,
            (Standing::Never, _) => Stands::Nothing,
            _ => Stands::Ended,
        };
        let (right, answers) = (evidence.state.right, evidence.state.answers);
        Cell { competency: slug.to_owned(), stands, until, right, answers }
    });
    Glance {
        key: person.key.clone(),
        number: person.number.clone(),
        name: person.name.clone(),
        cells: cells.collect(),
        answers: counted().count(),
        right: counted().filter(|entry| entry.mark == Mark::Right).count(),
        sure_and_wrong: counted().filter(|entry| entry.sure_and_wrong()).count(),
        void: answers().count() - counted().count(),
        last: done().filter_map(Stamp::day).max(),
    }
}

impl<'a> Looking<'a> {
    fn signed(&self, number: Option<&ShopNumber>, slug: &str) -> Standing<'a> {
        match (self.book, number) {
            (Some(book), Some(number)) => book.standing(number, slug, self.content.shipped(), self.now),
            _ => Standing::Never,
        }
    }
}

/// A sign-off that runs out soon.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunsOut {
    /// Whose.
    pub key: String,
    /// Name.
    pub name: String,
    /// Slug of the competency.
    pub competency: String,
    /// The day.
    pub until: LocalDate,
}

/// What runs out within [`SOON_DAYS`], the soonest first.
#[must_use]
pub fn runs_out(all: &[Glance]) -> Vec<RunsOut> {
    let of = |one: &Glance| {
        let soon = one.cells.iter().filter(|cell| cell.stands == Stands::Soon);
        let told = soon.filter_map(|cell| {
            let (key, name) = (one.key.clone(), one.name.clone());
            Some(RunsOut { key, name, competency: cell.competency.clone(), until: cell.until? })
        });
        told.collect::<Vec<_>>()
    };
    let soon: Vec<RunsOut> = all.iter().flat_map(of).collect();
    sorted(soon, |a, b| (a.until, &a.name, &a.competency).cmp(&(b.until, &b.name, &b.competency)))
}
