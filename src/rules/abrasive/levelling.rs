//! Levelling the cured clear: when a grade is done, and what follows it.

use super::grades::{Grade, on_sheet};
use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
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
