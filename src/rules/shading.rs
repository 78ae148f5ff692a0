//! The shaded edge: gun distance by kind of pass, width of the pattern, what is masked, and an edge that is too dark.

use super::sheet::{Setting, Sheet};
use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::{Measure, Millimetres, Unit};
use crate::terms;

terms! {
    /// Kinds of pass, told apart by the distance of the gun.
    Pass {
        /// A full body coat.
        Body = "body-coat",
        /// A light seal pass.
        LightSeal = "light-seal-pass",
        /// A shading pass.
        Shading = "shading-pass",
    }
    /// What follows from a gun distance.
    DistanceCall {
        /// The distance is right.
        Keep = "keep-distance",
        /// Too near for the pass.
        GoBack = "go-back",
        /// Too far for the pass.
        ComeNearer = "come-nearer",
    }
    /// What a shaded edge lies on.
    ShadeUnder {
        /// A sealed film.
        Sealed = "shade-over-seal",
        /// Bare wood.
        Raw = "shade-on-wood",
    }
    /// What can be done about an edge shaded too dark.
    ShadeCall {
        /// Wipe it back with thinner.
        WipeBack = "wipe-back",
        /// Widen the fade; paler only by going back to the seal coat.
        WidenToSeal = "widen-or-back-to-seal",
        /// Widen the fade; paler only by going back to bare wood.
        WidenToWood = "widen-or-back-to-wood",
    }
    /// Parts of the work at shading.
    ShadeFace {
        /// Wood that gets the finish.
        Sprayed = "finished-face",
        /// What stays bare.
        Bare = "bare-seat",
        /// Binding.
        Binding = "binding-face",
    }
    /// Binding, told apart by whether colour can be scraped off it.
    Trim {
        /// Plastic, coloured through.
        Plastic = "plastic-binding",
        /// Pale wood.
        PaleWood = "pale-wood-binding",
    }
}

/// Nearest and farthest gun distance of a pass, from the sheet.
///
/// Sources: conventional gun 8 to 10 in (a refinishing textbook); 12 to 18 in for shading and light seal passes is
/// common practice, no source.
#[must_use]
pub fn distance(sheet: &Sheet, pass: Pass) -> (Millimetres, Millimetres) {
    match pass {
        Pass::Body => {
            (sheet.millimetres(Setting::BodyDistanceFrom), sheet.millimetres(Setting::BodyDistanceTo))
        }
        Pass::LightSeal | Pass::Shading => {
            (sheet.millimetres(Setting::ShadeDistanceFrom), sheet.millimetres(Setting::ShadeDistanceTo))
        }
    }
}

/// What a gun distance calls for. Too near lays heavy and runs, too far lands dry (a refinishing textbook).
///
/// # Errors
/// [`CannotJudge`] when the pass is not told and passes differ at this distance.
pub fn judge_distance(sheet: &Sheet, pass: Option<Pass>, held: Millimetres) -> Judged<DistanceCall> {
    distance_call("shading.distance-by-pass", "pass", pass, held, |pass| distance(sheet, pass))
}

/// What a gun distance calls for by the nearest and farthest one of a kind, of guns or of passes; where the kind is not
/// told, what every kind calls for.
///
/// # Errors
/// [`CannotJudge`] naming the key when the kind is not told and kinds differ at this distance.
pub(super) fn distance_call<K: Term>(
    rule: &'static str,
    key: &str,
    kind: Option<K>,
    held: Millimetres,
    band: impl Fn(K) -> (Millimetres, Millimetres),
) -> Judged<DistanceCall> {
    let call = |kind: K| {
        let (from, to) = band(kind);
        if held < from {
            DistanceCall::GoBack
        } else if held > to {
            DistanceCall::ComeNearer
        } else {
            DistanceCall::Keep
        }
    };
    let Some(kind) = kind else {
        let mut calls = K::ALL.iter().map(|kind| call(*kind));
        let first = calls.next().filter(|first| calls.all(|other| other == *first));
        return first.map(|first| Ruling::by(rule, first)).ok_or_else(|| CannotJudge::without(key));
    };
    let (from, to) = band(kind);
    Ok(Ruling::by(rule, call(kind))
        .step("distance-from", "", Measure::new(from.get(), Unit::Millimetre, 0))
        .step("distance-to", "", Measure::new(to.get(), Unit::Millimetre, 0)))
}

/// Width of the spray pattern at another distance: a fan of fixed angle widens in proportion, and the film of a pass
/// falls in the same proportion (spray geometry; before any loss of efficiency).
///
/// # Errors
/// [`CannotJudge`] when the distance told is 0.
pub fn pattern_at(width: Millimetres, held: Millimetres, new: Millimetres) -> Judged<Millimetres> {
    if held.get() <= 0.0 {
        return Err(CannotJudge::without("gun_mm"));
    }
    let wide = Millimetres::saturating(width.get() * new.get() / held.get());
    Ok(Ruling::by("shading.fan-grows-with-distance", wide)
        .step("new-distance", "", Measure::new(new.get(), Unit::Millimetre, 0))
        .step("pattern-width", "w₂ = w₁ h₂ / h₁", Measure::new(wide.get(), Unit::Millimetre, 0))
        .given(&[
            ("w₁", Measure::new(width.get(), Unit::Millimetre, 0)),
            ("h₁", Measure::new(held.get(), Unit::Millimetre, 0)),
            ("h₂", Measure::new(new.get(), Unit::Millimetre, 0)),
        ]))
}

/// What can be done about an edge that was shaded too dark.
///
/// Over a sealed film shade that thinner still lifts is wiped back; otherwise, and on bare wood, colour goes darker, not
/// paler. Source: common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when what decides is not told.
pub fn too_dark(under: ShadeUnder, lifts: Option<bool>) -> Judged<ShadeCall> {
    Ok(match under {
        ShadeUnder::Raw => Ruling::by("shading.shade-on-wood-stays", ShadeCall::WidenToWood),
        ShadeUnder::Sealed if lifts.ok_or_else(|| CannotJudge::without("shade_lifts"))? => {
            Ruling::by("shading.shade-over-seal-wipes-back", ShadeCall::WipeBack)
        }
        ShadeUnder::Sealed => Ruling::by("shading.set-shade-stays", ShadeCall::WidenToSeal),
    })
}

/// Whether a part is masked before shading: what stays bare is; binding that is scraped later is not, unless colour
/// would soak into it.
///
/// Source: a published procedure sprays over the binding and scrapes it; seats and boards masked to the end are common
/// practice, no source.
///
/// # Errors
/// [`CannotJudge`] when the binding, or whether it is sealed, decides and is not told.
pub fn is_masked(face: ShadeFace, trim: Option<Trim>, sealed: Option<bool>) -> Judged<bool> {
    match face {
        ShadeFace::Sprayed => Ok(Ruling::by("shading.finished-faces-open", false)),
        ShadeFace::Bare => Ok(Ruling::by("shading.bare-seats-masked", true)),
        ShadeFace::Binding => match (trim, sealed) {
            (Some(Trim::Plastic), _) | (_, Some(true)) => {
                Ok(Ruling::by("shading.scraped-binding-open", false))
            }
            (None, _) => Err(CannotJudge::without("trim")),
            (Some(Trim::PaleWood), None) => Err(CannotJudge::without("trim_sealed")),
            (Some(Trim::PaleWood), Some(false)) => Ok(Ruling::by("shading.raw-wood-binding-masked", true)),
        },
    }
}
