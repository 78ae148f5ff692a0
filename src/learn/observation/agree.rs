//! How far assessors who watched the same work agree, and when a second one is due.

use super::Demonstration;
use crate::learn::agreement::{Agreement, Table};
use crate::record::{Event, Judged};

/// One in so many demonstrations is watched by two assessors. Practical rule, common practice, no source.
pub const SECOND_EVERY: u32 = 10;
/// The first so many of a new assessor are. Practical rule, common practice, no source.
pub const FIRST_OF_NEW: u32 = 5;

/// How far assessors agree on criteria that both saw, by what each said before it was talked over: at one competency, or at all
/// of them. Rows are of the assessor with the smaller number; met comes before not yet. `None` where no two saw the same.
#[must_use]
pub fn agreement(events: &[Event], competency: Option<&str>) -> Option<Agreement> {
    let mut counts = [[0_u32; 2]; 2];
    for one in Demonstration::of(events, |it| competency.is_none_or(|slug| it.competency == slug)) {
        for (nth, a) in one.said.iter().enumerate() {
            for b in one.said.iter().skip(nth + 1) {
                let (a, b) = if a.first.by.number <= b.first.by.number { (a, b) } else { (b, a) };
                for (criterion, judged) in &a.first.judged {
                    let place = place(*judged).zip(place(b.first.of(criterion)));
                    let cell = place.and_then(|(row, column)| counts.get_mut(row)?.get_mut(column));
                    if let Some(cell) = cell {
                        *cell += 1;
                    }
                }
            }
        }
    }
    Table::new(counts.iter().map(|row| row.to_vec()).collect()).map(Agreement::of)
}

/// The row or column of what was seen.
const fn place(judged: Judged) -> Option<usize> {
    match judged {
        Judged::Met => Some(0),
        Judged::NotYet => Some(1),
        Judged::NotSeen => None,
    }
}

/// How many demonstrations an assessor watched, and how many of them with another one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Seconded {
    /// Demonstrations watched.
    pub watched: u32,
    /// Of them with another assessor.
    pub with_another: u32,
}

impl Seconded {
    /// Whether the next one should be watched with another assessor.
    #[must_use]
    pub const fn wants_another(self) -> bool {
        let new = self.watched < FIRST_OF_NEW;
        new || self.with_another.saturating_mul(SECOND_EVERY) < self.watched.saturating_add(1)
    }
}

/// What an assessor of that number watched.
#[must_use]
pub fn seconded(events: &[Event], assessor: &str) -> Seconded {
    let mut told = Seconded::default();
    for one in Demonstration::of(events, |_| true) {
        if one.said.iter().any(|said| said.first.by.number == assessor) {
            told.watched += 1;
            told.with_another += u32::from(one.said.len() > 1);
        }
    }
    told
}
