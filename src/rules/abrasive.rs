//! Abrasives: the two gradings, how far the next grit may jump, where a ladder ends, when levelling goes on.
//!
//! Grain sizes are those of three published charts of the P series and of the US grading, which agree within rounding;
//! the standard behind the P series (ISO 6344) was not read.

use super::sheet::{Setting, Sheet};
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::{Measure, Micrometres, Unit};
use crate::terms;

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

terms! {
    /// What is being sanded.
    Abrading {
        /// Bare wood, before stain or seal.
        BareWood = "bare-wood",
        /// The cured clear, before compound.
        Levelling = "levelling",
    }
    /// Which way the last strokes ran on the wood.
    Strokes {
        /// Along the grain.
        Along = "along-grain",
        /// Across the grain.
        Across = "across-grain",
    }
    /// Whether sanded wood may be stained.
    WoodReady {
        /// It may.
        Ready = "ready",
        /// Finer grades are still to come.
        GoFiner = "go-finer",
        /// Scratches across the grain are still to be taken out with the same grade.
        SandAlong = "sand-along",
        /// Both: finer grades, along the grain.
        FinerAlong = "finer-along",
        /// Finer than the shop's last grit: the wood takes stain paler.
        TooFine = "too-fine",
    }
    /// What the surface shows after a grade of levelling.
    Shine {
        /// Evenly dull.
        EvenDull = "even-dull",
        /// Shiny spots remain.
        ShinySpots = "shiny-spots",
    }
    /// What to do after a grade of levelling.
    LevelMove {
        /// Go on to the next grade.
        NextGrade = "next-grade",
        /// Stay on this grade.
        SameGrade = "same-grade",
        /// To the compound.
        Compound = "to-compound",
        /// Stop and build more clear.
        Recoat = "recoat-first",
    }
    /// Compounds from coarse to fine.
    Compound {
        /// Cutting compound.
        Cutting = "cutting",
        /// Medium compound.
        Medium = "medium",
        /// Polish.
        Polish = "polish",
    }
    /// What to do after a spell with one compound.
    BuffMove {
        /// The wheel is not this compound's: take its own wheel.
        OwnWheel = "own-wheel",
        /// Scratches of the step before remain: stay.
        StayOn = "stay-on",
        /// Clean the face; next compound on its own wheel.
        NextCompound = "next-compound",
        /// Done: wipe and look under the lamp.
        Done = "buff-done",
    }
    /// How fine lines behave when the lamp is moved.
    LampSign {
        /// Straight lines or single curls that keep their place.
        Stays = "lines-stay",
        /// Fine arcs that turn with the lamp.
        Turns = "arcs-turn",
    }
    /// What fine lines in a buffed gloss are.
    FineLines {
        /// Scratches of a sanding grade.
        SandingScratch = "sanding-scratch",
        /// Swirls of the compound.
        BuffSwirl = "buff-swirl",
    }
}

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

    /// The number, as shown.
    #[must_use]
    pub const fn measure(&self) -> Measure {
        Measure::new(self.number, Unit::Grit, 0)
    }

    const fn size(&self) -> Measure {
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

/// Whether a jump leaves scratches that the finer grade does not take out: its grain is smaller than the sheet's step
/// allows. The next grade of the series is always allowed.
#[must_use]
pub fn skips(from: &Grade, to: &Grade, sheet: &Sheet) -> Ruling<bool> {
    let ratio = to.median.get() / from.median.get();
    let neighbours = P_SERIES
        .windows(2)
        .any(|pair| matches!(pair, [a, b] if a.number == from.number && b.number == to.number));
    Ruling::by("abrasive.grit-step", ratio < sheet.get(Setting::GritStep) && !neighbours)
        .step("grain-now", "", from.size())
        .step("grain-next", "", to.size())
        .step("grain-ratio", "next / last", Measure::new(ratio, Unit::Ratio, 2))
}

/// The farthest grade that the next step may go to: its grain is at least the sheet's share of the last one's, and no
/// finer than the ladder's end. `None` when the ladder's end is reached.
#[must_use]
pub fn next_grade(from: &Grade, work: Abrading, sheet: &Sheet) -> Ruling<Option<&'static Grade>> {
    let (end, rule) = match work {
        Abrading::BareWood => (on_sheet(sheet, Setting::LastGrit), "abrasive.last-grit"),
        Abrading::Levelling => (on_sheet(sheet, Setting::CompoundGrit), "abrasive.compound-grit"),
    };
    if from.number >= end.number {
        return Ruling::by(rule, None).step("ladder-end", "", end.measure());
    }
    let finer = || P_SERIES.iter().filter(|grade| grade.number > from.number && grade.number <= end.number);
    let next = finer().rfind(|grade| !skips(from, grade, sheet).answer);
    let least = from.median.get() * sheet.get(Setting::GritStep);
    Ruling::by("abrasive.grit-step", next)
        .and(rule)
        .step("grain-now", "", from.size())
        .step("grain-least", "last × step", Measure::new(least, Unit::Micrometre, 1))
        .step("ladder-end", "", end.measure())
}

/// Every grade from the one in hand to the ladder's end, each as far as the sheet's step allows.
#[must_use]
pub fn ladder(from: &'static Grade, work: Abrading, sheet: &Sheet) -> Vec<&'static Grade> {
    let mut grades = vec![from];
    let mut last = from;
    while let Some(next) = next_grade(last, work, sheet).answer {
        grades.push(next);
        last = next;
    }
    grades
}

/// Whether sanded wood may be stained: the shop's last grit is reached, and no scratch runs across the grain.
#[must_use]
pub fn ready_for_stain(sanded: &Grade, strokes: Strokes, sheet: &Sheet) -> Ruling<WoodReady> {
    let last = on_sheet(sheet, Setting::LastGrit);
    let (rule, answer) = match strokes {
        _ if sanded.number > last.number => ("abrasive.last-grit", WoodReady::TooFine),
        Strokes::Along if sanded.number == last.number => ("abrasive.last-grit", WoodReady::Ready),
        Strokes::Along => ("abrasive.last-grit", WoodReady::GoFiner),
        Strokes::Across if sanded.number == last.number => ("abrasive.along-grain", WoodReady::SandAlong),
        Strokes::Across => ("abrasive.along-grain", WoodReady::FinerAlong),
    };
    Ruling::by(rule, answer).and("abrasive.last-grit").step("ladder-end", "", last.measure())
}

/// What to do after a grade of levelling. Shiny spots are low spots: the grade is not done until they are gone, and it
/// may only go on while more film is left than the sheet's reserve.
///
/// # Errors
/// [`CannotJudge`] when the shine decides and is not known.
pub fn level_move(
    on: &Grade,
    shine: Option<Shine>,
    film_left: Micrometres,
    sheet: &Sheet,
) -> Judged<LevelMove> {
    let reserve = sheet.micrometres(Setting::FilmReserve);
    let (rule, answer) = if film_left <= reserve {
        ("abrasive.film-reserve", LevelMove::Recoat)
    } else {
        match shine.ok_or_else(|| CannotJudge::without("shine"))? {
            Shine::ShinySpots => ("abrasive.shiny-is-low", LevelMove::SameGrade),
            Shine::EvenDull if on.number >= on_sheet(sheet, Setting::CompoundGrit).number => {
                ("abrasive.compound-grit", LevelMove::Compound)
            }
            Shine::EvenDull => ("abrasive.shiny-is-low", LevelMove::NextGrade),
        }
    };
    Ok(Ruling::by(rule, answer).step("film-reserve", "", Measure::new(reserve.get(), Unit::Micrometre, 0)))
}

/// What fine lines in a buffed gloss are, by how they behave when the lamp is moved.
#[must_use]
pub fn fine_lines(sign: LampSign) -> Ruling<FineLines> {
    let answer = match sign {
        LampSign::Stays => FineLines::SandingScratch,
        LampSign::Turns => FineLines::BuffSwirl,
    };
    Ruling::by("abrasive.lamp-test", answer)
}

/// What to do after a spell with one compound on a wheel that last carried another.
#[must_use]
pub fn buff_move(compound: Compound, wheel_had: Compound, scratches_left: bool) -> Ruling<BuffMove> {
    if compound != wheel_had {
        return Ruling::by("abrasive.own-wheel", BuffMove::OwnWheel);
    }
    if scratches_left {
        return Ruling::by("abrasive.compound-order", BuffMove::StayOn);
    }
    let answer = if compound == Compound::Polish { BuffMove::Done } else { BuffMove::NextCompound };
    Ruling::by("abrasive.compound-order", answer).and("abrasive.own-wheel")
}
