//! The two gradings: the median grain behind the number on a sheet, and which sheet of one grading stands for one of the
//! other.
//!
//! Grain sizes are those of three published charts of the P series and of the US grading, which agree within rounding;
//! the standard behind the P series (ISO 6344) was not read.

use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;

/// A grade of abrasive and the median size of its grain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// Number printed on the sheet.
    pub number: f64,
    /// Median grain size in micrometres.
    pub median: Micrometres,
}

const fn grade(number: f64, median_um: f64) -> Grade {
    Grade { number, median: Micrometres::saturating(median_um) }
}

/// The P series from coarse to fine: three published charts of ISO 6344 grades, agreeing within rounding.
pub const P_SERIES: [Grade; 19] = [
    grade(80.0, 201.0),
    grade(100.0, 162.0),
    grade(120.0, 125.0),
    grade(150.0, 100.0),
    grade(180.0, 82.0),
    grade(220.0, 68.0),
    grade(240.0, 58.5),
    grade(280.0, 52.2),
    grade(320.0, 46.2),
    grade(360.0, 40.5),
    grade(400.0, 35.0),
    grade(500.0, 30.2),
    grade(600.0, 25.8),
    grade(800.0, 21.8),
    grade(1000.0, 18.3),
    grade(1200.0, 15.3),
    grade(1500.0, 12.6),
    grade(2000.0, 10.3),
    grade(2500.0, 8.4),
];

/// The US grading (CAMI) from coarse to fine, from the same charts.
pub const US_SERIES: [Grade; 15] = [
    grade(80.0, 190.0),
    grade(100.0, 140.0),
    grade(120.0, 115.0),
    grade(150.0, 92.0),
    grade(180.0, 82.0),
    grade(220.0, 68.0),
    grade(240.0, 53.0),
    grade(280.0, 42.0),
    grade(320.0, 36.0),
    grade(360.0, 28.0),
    grade(400.0, 23.0),
    grade(500.0, 20.0),
    grade(600.0, 16.0),
    grade(800.0, 12.6),
    grade(1000.0, 10.3),
];

impl Grade {
    /// The published P grade of exactly that number.
    #[must_use]
    pub fn p(number: f64) -> Option<&'static Self> {
        P_SERIES.iter().find(|grade| grade.number == number)
    }

    /// The published US grade of exactly that number.
    #[must_use]
    pub fn us(number: f64) -> Option<&'static Self> {
        US_SERIES.iter().find(|grade| grade.number == number)
    }

    /// The next coarser and the next finer P grade, where the series has one.
    #[must_use]
    pub fn beside(&self) -> (Option<&'static Self>, Option<&'static Self>) {
        let coarser = P_SERIES.iter().rfind(|grade| grade.number < self.number);
        (coarser, P_SERIES.iter().find(|grade| grade.number > self.number))
    }

    /// The number, as shown.
    #[must_use]
    pub const fn measure(&self) -> Measure {
        Measure::new(self.number, Unit::Grit, 0)
    }

    /// Its median grain, as shown.
    #[must_use]
    pub const fn size(&self) -> Measure {
        Measure::new(self.median.get(), Unit::Micrometre, 1)
    }
}

/// The P grade that a sheet's setting means: the one of that number, else the nearest in number.
#[must_use]
pub fn on_sheet(sheet: &Sheet, setting: Setting) -> &'static Grade {
    let wanted = sheet.get(setting);
    nearest(&P_SERIES, |grade| (grade.number - wanted).abs())
}

fn nearest(series: &'static [Grade], distance: impl Fn(&Grade) -> f64) -> &'static Grade {
    let mut best = &P_SERIES[0];
    let mut least = f64::INFINITY;
    for grade in series {
        if distance(grade) < least {
            least = distance(grade);
            best = grade;
        }
    }
    best
}

/// The grade of a series whose grain is nearest in size, by ratio.
fn neighbour(size: Micrometres, series: &'static [Grade]) -> &'static Grade {
    nearest(series, |other| libm::log(other.median.get() / size.get()).abs())
}

/// The US grade nearest in grain size to a P grade. Check: P400 is about 320, P800 about 400 (Boedigheimer, American
/// Lutherie no. 86, 2006, and the published charts).
#[must_use]
pub fn us_neighbour(grade: &Grade) -> Ruling<&'static Grade> {
    let found = neighbour(grade.median, &US_SERIES);
    Ruling::by("abrasive.two-gradings", found).step("grain-here", "", grade.size()).step(
        "grain-there",
        "",
        found.size(),
    )
}

/// The P grade that stands for a US grade: of those whose own neighbour it is, the nearest in grain size; else the
/// nearest of all. So both ways agree with the charts, which pair US 500 with P1000 although P800 is as near.
#[must_use]
pub fn p_neighbour(us: &Grade) -> Ruling<&'static Grade> {
    let apart = |grade: &Grade| libm::log(grade.median.get() / us.median.get()).abs();
    let paired = P_SERIES.iter().filter(|grade| neighbour(grade.median, &US_SERIES).number == us.number);
    let found = paired
        .min_by(|a, b| apart(a).total_cmp(&apart(b)))
        .unwrap_or_else(|| neighbour(us.median, &P_SERIES));
    Ruling::by("abrasive.two-gradings", found).step("grain-here", "", us.size()).step(
        "grain-there",
        "",
        found.size(),
    )
}
