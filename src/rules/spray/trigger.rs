//! The ends of a stroke: how far before the edge the trigger is pulled, and what a gun that stands still leaves.

use crate::quantity::{GunSpeed, MM_A_METRE, Measure, Millimetres, Overlap, Seconds, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What an end of a stroke comes to.
    End {
        /// Full film at the edge.
        Full = "end-full",
        /// Less than the full film at the edge.
        Thin = "end-thin",
        /// Heavier than a pass: the gun stood still with the trigger held.
        Heavy = "end-heavy",
    }
}

/// Share of its film that an edge has when the trigger opens just there: half of the spot has yet to come by.
const AT_THE_EDGE: f64 = 0.5;
/// Film in the middle of a parabolic spot, over its mean along the stroke, halved: the 3/4 of both formulas here.
const PARABOLA: f64 = 0.75;

/// Share of the full film at the edge when the trigger opens a lead before it, for a spot that is parabolic along the
/// stroke and reaches `reach` to either side: C = 1/2 + 3/4 (u - u³/3) with u = lead / reach; 1 from a whole reach on.
///
/// # Errors
/// [`CannotJudge`] when the reach is 0.
pub fn edge_share(lead: Millimetres, reach: Millimetres) -> Judged<f64> {
    if reach.get() <= 0.0 {
        return Err(CannotJudge::without("reach_mm"));
    }
    let lead_share = (lead.get() / reach.get()).min(1.0);
    /// The cube's share in the integral of a parabola.
    const CUBE: f64 = 3.0;
    let share = AT_THE_EDGE + PARABOLA * (lead_share - lead_share * lead_share * lead_share / CUBE);
    Ok(Ruling::by("spray.trigger-lead", share)
        .step("lead-share", "u = d / b", Measure::new(lead_share, Unit::Ratio, 2))
        .given(&[
            ("d", Measure::new(lead.get(), Unit::Millimetre, 0)),
            ("b", Measure::new(reach.get(), Unit::Millimetre, 0)),
        ])
        .step("edge-film", "1/2 + 3/4 (u − u³/3)", Measure::new(share, Unit::Ratio, 2))
        .given(&[("u", Measure::new(lead_share, Unit::Ratio, 2))]))
}

/// Passes' worth of film that a gun standing still lays on one spot besides: 3 v τ / (4 b).
///
/// # Errors
/// [`CannotJudge`] when the reach is 0.
pub fn dwell(speed: GunSpeed, stood: Seconds, reach: Millimetres) -> Judged<f64> {
    if reach.get() <= 0.0 {
        return Err(CannotJudge::without("reach_mm"));
    }
    let passes = PARABOLA * speed.get() * MM_A_METRE * stood.get() / reach.get();
    Ok(Ruling::by("spray.trigger-held", passes)
        .step("extra-passes", "3 v τ / (4 b)", Measure::new(passes, Unit::Ratio, 1))
        .given(&[
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("τ", Measure::new(stood.get(), Unit::Second, 1)),
            ("b", Measure::new(reach.get(), Unit::Millimetre, 0)),
        ]))
}

/// The lead that gives full film at the edge: the reach of the spot, and what the gun runs on while its valve opens.
#[must_use]
pub fn lead_for(reach: Millimetres, speed: GunSpeed, valve: Seconds) -> Ruling<Millimetres> {
    let lead = Millimetres::saturating(reach.get() + speed.get() * MM_A_METRE * valve.get());
    Ruling::by("spray.trigger-lead", lead)
        .step("lead-needed", "b + v t", Measure::new(lead.get(), Unit::Millimetre, 0))
        .given(&[
            ("b", Measure::new(reach.get(), Unit::Millimetre, 0)),
            ("v", Measure::new(speed.get(), Unit::MetrePerSecond, 2)),
            ("t", Measure::new(valve.get(), Unit::Second, 2)),
        ])
}

/// What an end of a stroke comes to: a gun that stood is heavy, a lead shorter than the reach is thin.
///
/// Sources: the trigger after the stroke starts, released before it ends (a public finishing manual, A-8.3 d; a
/// refinishing textbook, p. 689).
///
/// # Errors
/// [`CannotJudge`] when what decides is not told, or the reach is 0.
pub fn end(lead: Option<Millimetres>, reach: Option<Millimetres>, stood: Option<Seconds>) -> Judged<End> {
    if stood.ok_or_else(|| CannotJudge::without("stood_s"))?.get() > 0.0 {
        return Ok(Ruling::by("spray.trigger-held", End::Heavy));
    }
    let lead = lead.ok_or_else(|| CannotJudge::without("lead_mm"))?;
    let share = edge_share(lead, reach.ok_or_else(|| CannotJudge::without("reach_mm"))?)?;
    let end = if share.answer < 1.0 { End::Thin } else { End::Full };
    Ok(share.map(|_| end))
}

/// Passes that a face takes: the first centred on one edge, the last on or past the other.
///
/// Source: the first pass aims at the edge (an air-board refinish tip sheet; a public finishing manual, A-8.3).
///
/// # Errors
/// [`CannotJudge`] when the fan has no width.
pub fn passes_across(face: Millimetres, fan: Millimetres, overlap: Overlap) -> Judged<f64> {
    let pitch = super::pass_film::pitch(fan, overlap);
    if pitch.answer.get() <= 0.0 {
        return Err(CannotJudge::without("pattern_mm"));
    }
    let passes = libm::ceil(face.get() / pitch.answer.get() - crate::quantity::DUST) + 1.0;
    Ok(Ruling::by("spray.first-pass-on-edge", passes)
        .resting_on(&pitch)
        .step("passes-across", "⌈L / s⌉ + 1", Measure::count(passes))
        .given(&[
            ("L", Measure::new(face.get(), Unit::Millimetre, 0)),
            ("s", Measure::new(pitch.answer.get(), Unit::Millimetre, 0)),
        ]))
}
