//! Which answers of a person belong to which set that they did.

use super::{Came, Way};
use crate::record::{Attempts, Entry, Event, LocalDate, Standing, Step, Within};
use crate::rules::sorted::sorted;
use std::collections::{BTreeMap, BTreeSet};

/// A set that somebody sat down to.
#[derive(Debug)]
pub(super) struct Sat<'a> {
    pub(super) set: &'a str,
    /// The attempt, or the code of the worksheet.
    pub(super) name: &'a str,
    pub(super) way: Way,
    /// How many cards it has; none where nothing tells.
    pub(super) cards: Option<u32>,
    /// When it was begun, and on which local day; none on paper.
    pub(super) begun: Option<(&'a str, Option<LocalDate>)>,
    /// The day of the last answer, or on which it was begun.
    pub(super) day: Option<LocalDate>,
    /// What there is to say of one that has cards left.
    pub(super) left: Option<Came>,
    pub(super) answers: Vec<&'a Entry>,
}

/// Answers on their way.
#[derive(Debug, Default)]
struct Given<'a> {
    begun: Option<LocalDate>,
    day: Option<LocalDate>,
    /// Place of the last event.
    last: usize,
    answers: Vec<&'a Entry>,
}

impl<'a> Given<'a> {
    fn take(&mut self, place: usize, entry: &'a Entry) {
        (self.day, self.last) = (entry.stamp.day(), place);
        self.answers.push(entry);
    }
}

/// All sets that the events of a person tell of, the latest first.
pub(super) fn sat<'a>(events: &[&'a Event]) -> Vec<Sat<'a>> {
    let mut all: Vec<(usize, Sat<'a>)> = taken(events);
    all.extend(on_paper(events));
    sorted(all, |(a, _), (b, _)| b.cmp(a)).into_iter().map(|(_, one)| one).collect()
}

/// Those taken on a tablet.
fn taken<'a>(events: &[&'a Event]) -> Vec<(usize, Sat<'a>)> {
    let (mut attempts, mut given) = (Attempts::default(), Vec::<Given<'a>>::new());
    for (place, event) in events.iter().copied().enumerate() {
        let Ok(Some(nth)) = attempts.take(event) else { continue };
        given.resize_with(attempts.all().len(), Given::default);
        let cards = attempts.all().get(nth).and_then(|one| one.taking).map_or(0, |taking| taking.cards);
        let Some(given) = given.get_mut(nth) else { continue };
        match event {
            Event::Attempt(turn) if matches!(turn.step, Step::Opened { .. }) => {
                let day = turn.stamp.day();
                (given.begun, given.day, given.last) = (day, day, place);
            }
            // What a check asks behind the cards of its set is no card of the set.
            Event::Answered(entry) if super::count(given.answers.len()) < cards => given.take(place, entry),
            _ => {}
        }
    }
    let of = |(one, given): (&crate::record::Attempt<'a>, Given<'a>)| {
        let taking = one.taking?;
        let left = if one.standing == Standing::Closed { Came::Closed } else { Came::UnderWay };
        let sat = Sat {
            set: one.set,
            name: one.id,
            way: if taking.at_once { Way::Practise } else { Way::Check },
            cards: Some(taking.cards),
            begun: Some((one.at, given.begun)),
            day: given.day,
            left: (one.set_left() > 0).then_some(left),
            answers: given.answers,
        };
        Some((given.last, sat))
    };
    attempts.all().iter().zip(given).filter_map(of).collect()
}

/// Those typed in from paper.
fn on_paper<'a>(events: &[&'a Event]) -> impl Iterator<Item = (usize, Sat<'a>)> {
    let mut papers = BTreeMap::<(&'a str, &'a str), Given<'a>>::new();
    let mut seen = BTreeSet::new();
    for (place, event) in events.iter().copied().enumerate() {
        let Some(entry) = event.answer() else { continue };
        let Within::Paper { set, code } = &entry.within else { continue };
        // Typed in on two tablets, an answer is still one.
        if seen.insert((set, code, &entry.family, entry.seed)) {
            papers.entry((set, code)).or_default().take(place, entry);
        }
    }
    let of = |((set, name), given): ((&'a str, &'a str), Given<'a>)| {
        let Given { day, last, answers, .. } = given;
        let way = Way::Paper;
        (last, Sat { set, name, way, cards: None, begun: None, day, left: None, answers })
    };
    papers.into_iter().map(of)
}
