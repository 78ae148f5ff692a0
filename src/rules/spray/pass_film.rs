//! The film of a pass and of a set of passes, from what leaves the gun.
//!
//! dry film = flow × solids × share that lands / (speed × width), a volume balance: the width of the fan gives one pass,
//! the pitch from pass to pass gives the mean of a whole set.

use crate::quantity::{
    Fraction, GunSpeed, LiquidFlow, Measure, Micrometres, Millimetres, Overlap, SECONDS_A_MINUTE, Unit,
};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// Micrometres of film that 1 mL lays on 1 m of a stripe 1 mm wide.
const UM_PER_ML_A_M_MM: f64 = 1_000.0;

/// What leaves the gun and how much of it lands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spray {
    /// Fluid through the gun.
    pub flow: LiquidFlow,
    /// Solids by volume of the mix as sprayed.
    pub solids: Fraction,
    /// Share of the material that lands on the work (transfer efficiency).
    pub landing: Fraction,
}

/// Film on the work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Laid {
    /// As laid, before any solvent has left.
    pub wet: Micrometres,
    /// When all solvent has left.
    pub dry: Micrometres,
}

fn film(film: Micrometres) -> Measure {
    Measure::new(film.get(), Unit::Micrometre, 1)
}

/// Film averaged over a width: the fan's for one pass, the pitch for the mean of a set.
///
/// # Errors
/// [`CannotJudge`] naming `width` when it is 0.
fn over(spray: Spray, speed: GunSpeed, width: Millimetres, key: &str) -> Result<Laid, CannotJudge> {
    if width.get() <= 0.0 {
        return Err(CannotJudge::without(key));
    }
    let landed = spray.flow.get() / SECONDS_A_MINUTE * spray.landing.get();
    let wet = landed / (speed.get() * width.get()) * UM_PER_ML_A_M_MM;
    Ok(Laid { wet: Micrometres::saturating(wet), dry: Micrometres::saturating(wet * spray.solids.get()) })
}

/// Film of one pass, averaged over the width of the fan.
///
/// # Errors
/// [`CannotJudge`] when the width is 0.
pub fn of_pass(spray: Spray, speed: GunSpeed, width: Millimetres) -> Judged<Laid> {
    let laid = over(spray, speed, width, "width_mm")?;
    Ok(Ruling::by("spray.film-of-a-pass", laid)
        .step("wet-of-a-pass", "Q e / (v w)", film(laid.wet))
        .given(&[
            ("Q", Measure::new(spray.flow.get(), Unit::MillilitrePerMinute, 0)),
            ("e", Measure::new(spray.landing.get(), Unit::Ratio, 2)),
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("w", Measure::new(width.get(), Unit::Millimetre, 0)),
        ])
        .step("dry-of-a-pass", "Q S e / (v w)", film(laid.dry))
        .given(&[
            ("Q", Measure::new(spray.flow.get(), Unit::MillilitrePerMinute, 0)),
            ("S", Measure::new(spray.solids.get(), Unit::Ratio, 2)),
            ("e", Measure::new(spray.landing.get(), Unit::Ratio, 2)),
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("w", Measure::new(width.get(), Unit::Millimetre, 0)),
        ]))
}

/// Mean film of a whole set of passes that lie a pitch apart. It does not depend on the width of the fan.
///
/// # Errors
/// [`CannotJudge`] when the pitch is 0.
pub fn of_set(spray: Spray, speed: GunSpeed, pitch: Millimetres) -> Judged<Laid> {
    let laid = over(spray, speed, pitch, "pitch_mm")?;
    Ok(Ruling::by("spray.film-by-pitch", laid)
        .step("wet-of-set", "Q e / (v s)", film(laid.wet))
        .given(&[
            ("Q", Measure::new(spray.flow.get(), Unit::MillilitrePerMinute, 0)),
            ("e", Measure::new(spray.landing.get(), Unit::Ratio, 2)),
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("s", Measure::new(pitch.get(), Unit::Millimetre, 0)),
        ])
        .step("dry-of-set", "Q S e / (v s)", film(laid.dry))
        .given(&[
            ("Q", Measure::new(spray.flow.get(), Unit::MillilitrePerMinute, 0)),
            ("S", Measure::new(spray.solids.get(), Unit::Ratio, 2)),
            ("e", Measure::new(spray.landing.get(), Unit::Ratio, 2)),
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("s", Measure::new(pitch.get(), Unit::Millimetre, 0)),
        ]))
}

/// Pitch from pass to pass: s = w (1 - o), the overlap counted on the full width.
#[must_use]
pub fn pitch(width: Millimetres, overlap: Overlap) -> Ruling<Millimetres> {
    let pitch = Millimetres::saturating(width.get() * (1.0 - overlap.get()));
    Ruling::by("spray.full-width", pitch)
        .step("pitch", "s = w (1 − o)", Measure::new(pitch.get(), Unit::Millimetre, 0))
        .given(&[
            ("w", Measure::new(width.get(), Unit::Millimetre, 0)),
            ("o", Measure::new(overlap.get(), Unit::Ratio, 2)),
        ])
}

/// Mean over a whole set of passes, in films of one pass averaged over its fan: 1 / (1 - o) (volume balance).
#[must_use]
pub fn set_over_pass(overlap: Overlap) -> f64 {
    1.0 / (1.0 - overlap.get())
}

/// Speed of the gun for a wanted mean wet film at a pitch: the film goes as one over the speed.
///
/// # Errors
/// [`CannotJudge`] when pitch or film is 0, or the speed would be none that a gun is moved at.
pub fn speed_for(spray: Spray, pitch: Millimetres, wet: Micrometres) -> Judged<GunSpeed> {
    let across = pitch.get() * wet.get();
    if across <= 0.0 {
        return Err(CannotJudge::lacking(vec!["pitch_mm".to_owned(), "wet_um".to_owned()]));
    }
    let landed = spray.flow.get() / SECONDS_A_MINUTE * spray.landing.get();
    let speed =
        GunSpeed::new(landed * UM_PER_ML_A_M_MM / across).map_err(|_| CannotJudge::without("flow_ml_min"))?;
    Ok(Ruling::by("spray.film-by-pitch", speed)
        .step("gun-speed", "v = Q e / (s h)", Measure::new(speed.get(), Unit::MetrePerSecond, 2))
        .given(&[
            ("Q", Measure::new(spray.flow.get(), Unit::MillilitrePerMinute, 0)),
            ("e", Measure::new(spray.landing.get(), Unit::Ratio, 2)),
            ("s", Measure::new(pitch.get(), Unit::Millimetre, 0)),
            ("h", film(wet)),
        ]))
}

/// Speed that turns a wet film that was read into the one wanted, at the same flow and pitch: v h₁ / h₂.
///
/// # Errors
/// [`CannotJudge`] when no film is wanted, or the speed would be none that a gun is moved at.
pub fn speed_by_comb(held: GunSpeed, read: Micrometres, wanted: Micrometres) -> Judged<GunSpeed> {
    if wanted.get() <= 0.0 {
        return Err(CannotJudge::without("clear-wet"));
    }
    let speed =
        GunSpeed::new(held.get() * read.get() / wanted.get()).map_err(|_| CannotJudge::without("wet_um"))?;
    Ok(Ruling::by("spray.film-of-a-pass", speed)
        .step("film-wanted", "", film(wanted))
        .step("gun-speed", "v h₁ / h₂", Measure::new(speed.get(), Unit::MetrePerSecond, 2))
        .given(&[
            ("v", Measure::new(held.get(), Unit::MetrePerSecond, 2)),
            ("h₁", film(read)),
            ("h₂", film(wanted)),
        ]))
}

/// Film of a pass at another distance, over what it was, at the same speed and before any loss: the fan widens in
/// proportion (fixed fan angle), so the film falls as h₀ / h.
///
/// # Errors
/// [`CannotJudge`] when the new distance is 0.
pub fn at_distance(held: Millimetres, new: Millimetres) -> Judged<f64> {
    if new.get() <= 0.0 {
        return Err(CannotJudge::without("gun_mm"));
    }
    let share = held.get() / new.get();
    Ok(Ruling::by("shading.fan-grows-with-distance", share)
        .step("film-share", "h₁ / h₂", Measure::new(share, Unit::Ratio, 2))
        .given(&[
            ("h₁", Measure::new(held.get(), Unit::Millimetre, 0)),
            ("h₂", Measure::new(new.get(), Unit::Millimetre, 0)),
        ]))
}
