//! Who got what right.

use super::moments::real;

/// Right and wrong answers: a row a person, a column an item, none where the person was not asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Scores {
    rows: Vec<Vec<Option<bool>>>,
    items: usize,
    /// Of each person, right answers and answers.
    totals: Vec<(usize, usize)>,
}

/// Rows of different lengths, or none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("row {row} has {found} items where the first has {wanted}")]
pub struct Misshapen {
    /// The row, from 1.
    pub row: usize,
    /// Its items.
    pub found: usize,
    /// Those of the first row.
    pub wanted: usize,
}

/// Share of people in the upper and in the lower group: T. L. Kelley 1939.
const GROUP_SHARE: f64 = 0.27;

impl Scores {
    /// Scores of people, a row each.
    ///
    /// # Errors
    /// [`Misshapen`].
    pub fn new(rows: Vec<Vec<Option<bool>>>) -> Result<Self, Misshapen> {
        let items = rows.first().map_or(0, Vec::len);
        match rows.iter().position(|row| row.len() != items) {
            None => Ok(Self::even(rows, items)),
            Some(place) => {
                let found = rows.get(place).map_or(0, Vec::len);
                Err(Misshapen { row: place + 1, found, wanted: items })
            }
        }
    }

    /// Scores of rows that have so many items each.
    pub(super) fn even(rows: Vec<Vec<Option<bool>>>, items: usize) -> Self {
        let right = |row: &Vec<Option<bool>>| row.iter().filter(|answer| **answer == Some(true)).count();
        let asked = |row: &Vec<Option<bool>>| row.iter().flatten().count();
        let totals = rows.iter().map(|row| (right(row), asked(row))).collect();
        Self { rows, items, totals }
    }

    /// How many people.
    #[must_use]
    pub fn people(&self) -> usize {
        self.rows.len()
    }

    /// How many items.
    #[must_use]
    pub const fn items(&self) -> usize {
        self.items
    }

    /// Those who were asked everything.
    #[must_use]
    pub fn whole(&self) -> Self {
        let whole = |row: &&Vec<Option<bool>>| row.iter().all(Option::is_some);
        Self::even(self.rows.iter().filter(whole).cloned().collect(), self.items)
    }

    /// Answers to an item, none where it was not asked.
    pub(super) fn column(&self, item: usize) -> impl Iterator<Item = Option<bool>> {
        self.rows.iter().map(move |row| row.get(item).copied().flatten())
    }

    /// Share that a person got right of what they were asked, without one item.
    pub(super) fn rest(&self, person: usize, without: Option<usize>) -> Option<f64> {
        let (right, asked) = *self.totals.get(person)?;
        let own = without.and_then(|item| self.rows.get(person)?.get(item).copied().flatten());
        let right = right - usize::from(own == Some(true));
        let asked = asked - usize::from(own.is_some());
        (asked > 0).then(|| real(right) / real(asked))
    }

    /// Right answers of a person among these items.
    pub(super) fn total(&self, person: usize, among: impl Fn(usize) -> bool) -> f64 {
        let row = self.rows.get(person).into_iter().flatten().enumerate();
        real(row.filter(|(place, answer)| among(*place) && **answer == Some(true)).count())
    }

    /// The people with the highest and those with the lowest share of right answers: 27 % each, one at least, in their order
    /// where they are level.
    pub(super) fn groups(&self) -> (Vec<usize>, Vec<usize>) {
        let mut ranked: Vec<(usize, f64)> =
            (0..self.people()).filter_map(|person| Some((person, self.rest(person, None)?))).collect();
        ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a count")]
        let size = (libm::round(GROUP_SHARE * real(ranked.len())) as usize).max(1);
        let people: Vec<usize> = ranked.into_iter().map(|(person, _)| person).collect();
        let lower = people.get(people.len().saturating_sub(size)..).unwrap_or_default().to_vec();
        (people.into_iter().take(size).collect(), lower)
    }
}
