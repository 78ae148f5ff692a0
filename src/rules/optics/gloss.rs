//! Gloss on the standard scale: what a smooth film mirrors, over what polished black glass mirrors.

use crate::quantity::{Measure, RefractiveIndex, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Angles of a glossmeter, from square to the face.
    GlossAngle {
        /// 20 degrees: for what reads high at 60.
        Twenty = "20",
        /// 60 degrees: always read.
        Sixty = "60",
        /// 85 degrees: for what reads low at 60.
        EightyFive = "85",
    }
    /// What a gloss reading of a finished rub-out comes to.
    GlossCall {
        /// It meets the sheet's mark.
        Passes = "gloss-passes",
        /// It does not, and the film could give more.
        RubOn = "gloss-rub-on",
    }
    /// What a pass mark for gloss comes to.
    MarkCall {
        /// A smooth film can meet it.
        CanBeMet = "mark-can-be-met",
        /// No rub-out of this film meets it.
        OutOfReach = "mark-out-of-reach",
    }
}

/// Index of the polished black glass that reads 100: ISO 2813:2014 clause 3.3; ASTM D523-14(2018) 5.1.
const BLACK_GLASS: f64 = 1.567;
/// What black glass reads.
const FULL: f64 = 100.0;

impl GlossAngle {
    /// The angle in degrees.
    #[must_use]
    pub const fn degrees(self) -> f64 {
        /// The three angles of ISO 2813:2014.
        const ANGLES: [f64; 3] = [20.0, 60.0, 85.0];
        let [twenty, sixty, eighty_five] = ANGLES;
        match self {
            Self::Twenty => twenty,
            Self::Sixty => sixty,
            Self::EightyFive => eighty_five,
        }
    }
}

/// What a smooth face mirrors at an angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mirrored {
    /// Of light that swings across the plane of the beams (rs).
    pub across: f64,
    /// Of light that swings in that plane (rp).
    pub within: f64,
}

impl Mirrored {
    /// Of common, unpolarised light: the mean of both.
    #[must_use]
    pub const fn mean(self) -> f64 {
        f64::midpoint(self.across, self.within)
    }
}

/// Share of light that a smooth face mirrors, by the equations of Fresnel, for an angle in degrees from square (0 to 90).
#[must_use]
pub fn fresnel(index: RefractiveIndex, degrees: f64) -> Mirrored {
    let n = index.get();
    let (sin, cos) = libm::sincos(degrees.to_radians());
    let inside = (1.0 - sin * sin / (n * n)).sqrt();
    let across = (cos - n * inside) / (cos + n * inside);
    let within = (n * cos - inside) / (n * cos + inside);
    Mirrored { across: across * across, within: within * within }
}

fn shown(gloss: f64) -> Measure {
    Measure::new(gloss, Unit::Gloss, 1)
}

/// Gloss of a perfectly smooth film over black, in gloss units: the most that a rub-out of it can read. Over pale wood
/// light from below adds to the reading.
#[must_use]
pub fn ceiling(index: RefractiveIndex, angle: GlossAngle) -> Ruling<f64> {
    let degrees = angle.degrees();
    let film = fresnel(index, degrees).mean();
    let glass = fresnel(RefractiveIndex::saturating(BLACK_GLASS), degrees).mean();
    let gloss = FULL * film / glass;
    /// Decimals of a share of mirrored light.
    const FINE: u8 = 4;
    Ruling::by("optics.gloss-scale", gloss)
        .step("film-mirrors", "R = (rs + rp) / 2", Measure::new(film, Unit::Ratio, FINE))
        .given(&[
            ("n", Measure::new(index.get(), Unit::Ratio, 3)),
            ("θ", Measure::new(degrees, Unit::Degree, 0)),
        ])
        .step("glass-mirrors", "R₀", Measure::new(glass, Unit::Ratio, FINE))
        .given(&[
            ("n", Measure::new(BLACK_GLASS, Unit::Ratio, 3)),
            ("θ", Measure::new(degrees, Unit::Degree, 0)),
        ])
        .step("gloss", "100 R / R₀", shown(gloss))
        .given(&[
            ("R", Measure::new(film, Unit::Ratio, FINE)),
            ("R₀", Measure::new(glass, Unit::Ratio, FINE)),
        ])
}

/// The sheet's refractive index of the clear.
#[must_use]
pub fn clear_index(sheet: &Sheet) -> RefractiveIndex {
    RefractiveIndex::saturating(sheet.get(Setting::ClearIndex))
}

/// Whether a pass mark can be met by the sheet's clear over black. At 60 degrees lacquer reads about 90 at most, so a mark
/// of 100 fails every rub-out; at 85 degrees nearly everything smooth reads 99.
///
/// # Errors
/// [`CannotJudge`] when the angle is not told and decides.
pub fn judge_mark(mark: f64, angle: Option<GlossAngle>, sheet: &Sheet) -> Judged<MarkCall> {
    let index = clear_index(sheet);
    let call = |angle: GlossAngle| {
        let most = ceiling(index, angle);
        let call = if mark <= most.answer { MarkCall::CanBeMet } else { MarkCall::OutOfReach };
        Ruling::by("optics.gloss-ceiling", call).resting_on(&most)
    };
    if let Some(angle) = angle {
        return Ok(call(angle));
    }
    let at_sixty = call(GlossAngle::Sixty);
    let agree = GlossAngle::ALL.iter().all(|angle| call(*angle).answer == at_sixty.answer);
    if agree { Ok(at_sixty) } else { Err(CannotJudge::without("angle")) }
}

/// Whether a reading meets the sheet's pass mark, which is one at 60 degrees and is never set above what the film can give.
///
/// # Errors
/// [`CannotJudge`] when the angle is not told, or is not that of the mark.
pub fn judge(reading: f64, angle: Option<GlossAngle>, sheet: &Sheet) -> Judged<GlossCall> {
    if angle != Some(GlossAngle::Sixty) {
        return Err(CannotJudge::without("angle"));
    }
    let most = ceiling(clear_index(sheet), GlossAngle::Sixty);
    let mark = sheet.get(Setting::GlossPass).min(most.answer);
    let call = if reading >= mark { GlossCall::Passes } else { GlossCall::RubOn };
    Ok(Ruling::by("optics.gloss-mark", call).and("optics.gloss-ceiling").resting_on(&most).step(
        "gloss-mark",
        "",
        shown(mark),
    ))
}

/// The angle that tells finishes apart, by the reading at 60 degrees: 20 where it reads high, 85 where it reads low, the
/// sheet's limits between.
#[must_use]
pub fn angle_for(reading: f64, sheet: &Sheet) -> Ruling<GlossAngle> {
    let (low, high) = (sheet.get(Setting::GlossLow), sheet.get(Setting::GlossHigh));
    let angle = if reading > high {
        GlossAngle::Twenty
    } else if reading < low {
        GlossAngle::EightyFive
    } else {
        GlossAngle::Sixty
    };
    Ruling::by("optics.gloss-angle", angle).step("gloss-low", "", shown(low)).step(
        "gloss-high",
        "",
        shown(high),
    )
}
