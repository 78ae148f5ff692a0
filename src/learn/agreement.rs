//! Whether two judges agree beyond chance: Cohen's kappa (J. Cohen 1960; weighted 1968) with its standard error (J. L. Fleiss,
//! J. Cohen and B. S. Everitt 1969). It is told with the table and the share that agreed, since it falls where nearly all get
//! the same judgement. It decides nothing.
//!
//! The error takes the judgements for independent of each other; criteria of one demonstration are not quite, so that the true
//! range is somewhat wider.

/// Standard deviations on both sides within which 95 % of a normal distribution lie.
pub(super) const NORMAL_95: f64 = 1.959_963_984_540_054;
/// Fewest grades that can be told apart.
const GRADES_LEAST: usize = 2;

/// How often two judges gave each pair of grades: rows of the one, columns of the other, best first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table(Vec<Vec<u32>>);

/// How far apart grades lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// As far as they are steps apart.
    Linear,
    /// As the square of it.
    Quadratic,
}

impl Table {
    /// A table; `None` where it is not square, has fewer than two grades, or nothing was judged.
    #[must_use]
    pub fn new(rows: Vec<Vec<u32>>) -> Option<Self> {
        let square = rows.len() >= GRADES_LEAST && rows.iter().all(|row| row.len() == rows.len());
        let table = Self(rows);
        (square && table.total() > 0).then_some(table)
    }

    /// The rows.
    #[must_use]
    pub fn rows(&self) -> &[Vec<u32>] {
        &self.0
    }

    /// Judgements in all.
    #[must_use]
    pub fn total(&self) -> u64 {
        self.0.iter().flatten().map(|count| u64::from(*count)).sum()
    }

    fn row(&self, grade: usize) -> u64 {
        self.0.get(grade).into_iter().flatten().map(|count| u64::from(*count)).sum()
    }

    fn column(&self, grade: usize) -> u64 {
        self.0.iter().filter_map(|row| row.get(grade)).map(|count| u64::from(*count)).sum()
    }

    fn grades(&self) -> std::ops::Range<usize> {
        0..self.0.len()
    }

    /// Share of all.
    #[allow(clippy::cast_precision_loss, reason = "far fewer than 2^53 judgements")]
    fn share(&self, count: u64) -> f64 {
        count as f64 / self.total() as f64
    }

    /// Each cell: grade of the one, grade of the other, share.
    fn cells(&self) -> impl Iterator<Item = (usize, usize, f64)> {
        let row = |(i, row): (usize, &Vec<u32>)| {
            let cell = move |(j, count): (usize, &u32)| (i, j, u64::from(*count));
            row.iter().enumerate().map(cell).collect::<Vec<_>>()
        };
        self.0.iter().enumerate().flat_map(row).map(|(i, j, count)| (i, j, self.share(count)))
    }

    /// Kappa where disagreement weighs more the further grades lie apart; `None` where both always give the same one.
    #[must_use]
    pub fn weighted(&self, weight: Weight) -> Option<f64> {
        let apart = |i: usize, j: usize| {
            #[allow(clippy::cast_precision_loss, reason = "a handful of grades")]
            let part = i.abs_diff(j) as f64 / (self.0.len() - 1) as f64;
            match weight {
                Weight::Linear => part,
                Weight::Quadratic => part * part,
            }
        };
        let found: f64 = self.cells().map(|(i, j, share)| apart(i, j) * share).sum();
        let chance: f64 = self
            .cells()
            .map(|(i, j, _)| apart(i, j) * self.share(self.row(i)) * self.share(self.column(j)))
            .sum();
        (chance > 0.0).then(|| 1.0 - found / chance)
    }
}

/// Agreement beyond chance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kappa {
    /// Cohen's kappa: 1 where all agree, 0 where they agree as often as chance has it.
    pub value: f64,
    /// Its standard error.
    pub error: f64,
    /// Lower end of its range of 95 %, not below -1.
    pub low: f64,
    /// Upper end, not above 1.
    pub high: f64,
    /// The largest that it could be with these sums of rows and columns.
    pub largest: f64,
}

/// How far two judges agree.
#[derive(Debug, Clone, PartialEq)]
pub struct Agreement {
    /// What it is reckoned from.
    pub table: Table,
    /// Share of the judgements in which they agree.
    pub observed: f64,
    /// Share in which they would by chance.
    pub chance: f64,
    /// Agreement beyond chance; `None` where both always gave the same grade, so that chance alone explains it.
    pub kappa: Option<Kappa>,
}

impl Agreement {
    /// Of a table.
    #[must_use]
    pub fn of(table: Table) -> Self {
        let both = |grade: usize| table.share(table.row(grade)) * table.share(table.column(grade));
        let observed = table.cells().filter(|(i, j, _)| i == j).map(|(_, _, share)| share).sum();
        let chance = table.grades().map(both).sum();
        // Counted and not reckoned, so that no rounding decides.
        let all = |grade: usize| table.row(grade) == table.total() && table.column(grade) == table.total();
        let kappa = (!table.grades().any(all)).then(|| kappa(&table, observed, chance));
        Self { table, observed, chance, kappa }
    }

    /// Kappa as it would be if both judges used all grades equally often: what skewed tables hide.
    #[must_use]
    pub fn prevalence_adjusted(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a handful of grades")]
        let grades = self.table.0.len() as f64;
        (grades * self.observed - 1.0) / (grades - 1.0)
    }
}

fn kappa(table: &Table, observed: f64, chance: f64) -> Kappa {
    let value = (observed - chance) / (1.0 - chance);
    let (row, column) = (|grade| table.share(table.row(grade)), |grade| table.share(table.column(grade)));
    let square = |of: f64| of * of;
    let spread = |(i, j, share): (usize, usize, f64)| {
        if i == j {
            share * square(1.0 - (row(i) + column(i)) * (1.0 - value))
        } else {
            share * square((1.0 - value) * (column(i) + row(j)))
        }
    };
    let variance = table.cells().map(spread).sum::<f64>() - square(value - chance * (1.0 - value));
    #[allow(clippy::cast_precision_loss, reason = "far fewer than 2^53 judgements")]
    let error = (variance.max(0.0) / table.total() as f64).sqrt() / (1.0 - chance);
    let alike: f64 = table.grades().map(|grade| row(grade).min(column(grade))).sum();
    Kappa {
        value,
        error,
        low: (value - NORMAL_95 * error).max(-1.0),
        high: (value + NORMAL_95 * error).min(1.0),
        largest: (alike - chance) / (1.0 - chance),
    }
}
