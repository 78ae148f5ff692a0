//! How far a set of items agrees with itself, over those who were asked all of it.

use super::Scores;
use super::item::number;
use super::moments::{correlation, mean, real, spreads, variance};

/// Reliability that the factor of lengthening is told for. Common practice, no source.
const WANTED: f64 = 0.80;

/// What was found of a set. With everybody right nothing spreads, and what needs a spread is none.
#[derive(Debug, Clone, PartialEq)]
pub struct Reliability {
    /// People who were asked everything.
    pub people: usize,
    /// Items.
    pub items: usize,
    /// Mean of right answers.
    pub mean: f64,
    /// Their variance, divisor N.
    pub variance: f64,
    /// KR-20 (G. F. Kuder and M. W. Richardson 1937), which is Cronbach's alpha of right and wrong.
    pub kr20: Option<f64>,
    /// KR-21 of the same paper, from mean and variance alone; lower.
    pub kr21: Option<f64>,
    /// Standard error of a person's right answers, divisor N.
    pub standard_error: Option<f64>,
    /// Correlation of the items at odd and at even places.
    pub odd_even: Option<f64>,
    /// The same for the whole length (C. Spearman and W. Brown 1910).
    pub split_half: Option<f64>,
    /// How many times as long the set must be to reach 0.80.
    pub lengthen: Option<f64>,
    /// Reliability of passing at a cut (S. A. Livingston 1972).
    pub livingston: Option<f64>,
    /// The same by R. L. Brennan (1977).
    pub brennan: Option<f64>,
    /// KR-20 without each item, in their order.
    pub without: Vec<Option<f64>>,
}

/// What is found of a set; `cut` is how many right answers pass. `None` where nobody was asked everything, or there are fewer
/// than two items.
#[must_use]
pub fn reliability(scores: &Scores, cut: f64) -> Option<Reliability> {
    let whole = scores.whole();
    let (people, items) = (whole.people(), whole.items());
    if items < 2 {
        return None;
    }
    let totals: Vec<f64> = (0..people).map(|person| whole.total(person, |_| true)).collect();
    let (mean_total, spread) = (mean(&totals)?, variance(&totals)?);
    let k = real(items);
    let shares: Vec<f64> = (0..items).map(|item| share(&whole, item)).collect();
    let kr20 = kr20(&totals, &shares);
    let kr21 = spreads(spread).then(|| k / (k - 1.0) * (1.0 - mean_total * (k - mean_total) / (k * spread)));
    let half = |odd: bool| -> Vec<f64> {
        (0..people).map(|person| whole.total(person, |place| place % 2 == usize::from(!odd))).collect()
    };
    let odd_even = correlation(&half(true), &half(false));
    let away = (mean_total - cut) * (mean_total - cut);
    let livingston =
        kr20.filter(|_| spreads(spread + away)).map(|alpha| (alpha * spread + away) / (spread + away));
    Some(Reliability {
        people,
        items,
        mean: mean_total,
        variance: spread,
        kr20,
        kr21,
        standard_error: kr20.map(|alpha| libm::sqrt(spread * (1.0 - alpha).max(0.0))),
        odd_even,
        split_half: odd_even.filter(|r| *r > -1.0).map(|r| 2.0 * r / (1.0 + r)),
        lengthen: kr20
            .filter(|alpha| *alpha > 0.0)
            .map(|alpha| WANTED * (1.0 - alpha) / (alpha * (1.0 - WANTED))),
        livingston,
        brennan: brennan(mean_total / k, spread / (k * k), k, cut / k),
        without: (0..items).map(|item| without(&whole, item, &totals, &shares)).collect(),
    })
}

/// Of the shares that are right: their mean, their variance and the cut.
fn brennan(mean: f64, variance: f64, items: f64, cut: f64) -> Option<f64> {
    let below = (mean - cut) * (mean - cut) + variance;
    spreads(below).then(|| 1.0 - (mean * (1.0 - mean) - variance) / below / (items - 1.0))
}

fn share(whole: &Scores, item: usize) -> f64 {
    let right = whole.column(item).filter(|answer| *answer == Some(true)).count();
    real(right) / real(whole.people())
}

/// KR-20 of right answers in all and the share that was right of each item.
fn kr20(totals: &[f64], shares: &[f64]) -> Option<f64> {
    let spread = variance(totals).filter(|spread| spreads(*spread))?;
    let alone: f64 = shares.iter().map(|p| p * (1.0 - p)).sum();
    let k = real(shares.len());
    (k > 1.0).then(|| k / (k - 1.0) * (1.0 - alone / spread))
}

/// The same without one item.
fn without(whole: &Scores, item: usize, totals: &[f64], shares: &[f64]) -> Option<f64> {
    let column = whole.column(item).zip(totals);
    let totals: Vec<f64> = column.map(|(own, total)| total - number(own == Some(true))).collect();
    let others = shares.iter().enumerate().filter(|(place, _)| *place != item);
    kr20(&totals, &others.map(|(_, share)| *share).collect::<Vec<_>>())
}
