//! What a wet film calls for: too light to flow, sound, near running, sagging.

use super::um;
use crate::quantity::{Measure, Micrometres, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::Ruling;
use crate::terms;

/// A light coat is 3 mil where the usual one is 4 mil: trade knowledge base, "Measuring finish thickness".
const LIGHT_SHARE: f64 = 3.0 / 4.0;

terms! {
    /// What a wet film tells the person with the gun.
    WetFilm {
        /// Too light to flow out.
        LayMore = "wet-lay-more",
        /// Sound.
        CarryOn = "wet-carry-on",
        /// Near running.
        EaseOff = "wet-ease-off",
        /// It runs on a standing face.
        LayFlat = "wet-lay-flat",
    }
    /// Whether a wet film holds on a face.
    Sag {
        /// It holds.
        Holds = "ok",
        /// Near running.
        NearRunning = "near-running",
        /// It sags.
        Sags = "sags",
    }
    /// How the face stands while it is sprayed.
    Facing {
        /// Upright: a heavy film runs.
        Standing = "standing",
        /// Level: a heavy film stays.
        Lying = "lying",
    }
}

/// What a wet film calls for: the light end from the shop's own coat, the heavy end from its warning and its sag limit.
/// The sag limit holds on a standing face only; lying, a heavy film is eased off because it skins over wet solvent.
#[must_use]
pub fn wet_film(wet: Micrometres, facing: Facing, sheet: &Sheet) -> Ruling<WetFilm> {
    let (coat, warn) = (sheet.micrometres(Setting::ClearWet), sheet.micrometres(Setting::WetWarn));
    let sag = sheet.micrometres(Setting::WetSag);
    let light = LIGHT_SHARE * coat.get();
    let (rule, answer) = if wet.get() < light {
        ("film.light-coat-does-not-flow", WetFilm::LayMore)
    } else if wet < warn {
        ("film.wet-within-limits", WetFilm::CarryOn)
    } else if wet < sag || facing == Facing::Lying {
        ("film.near-running", WetFilm::EaseOff)
    } else {
        ("film.sags", WetFilm::LayFlat)
    };
    Ruling::by(rule, answer)
        .step("light-below", "", um(light))
        .given(&[("the shop’s coat", Measure::new(coat.get(), Unit::Micrometre, 0))])
        .step("near-running-from", "", um(warn.get()))
        .step("sags-from", "", um(sag.get()))
}

impl WetFilm {
    /// Whether the film holds: one too light to flow does.
    #[must_use]
    pub const fn sag(self) -> Sag {
        match self {
            Self::LayMore | Self::CarryOn => Sag::Holds,
            Self::EaseOff => Sag::NearRunning,
            Self::LayFlat => Sag::Sags,
        }
    }
}

/// How many times as much of a wet film flows down a standing face as of another: flow goes with the cube of the film
/// (momentum balance of a thin film, textbook). Real films stop as their solvent leaves, so this ranks and does not say how
/// long a run gets.
#[must_use]
pub fn sag_flow(wet: Micrometres, other: Micrometres) -> Ruling<f64> {
    let ratio = wet.get() / other.get().max(f64::MIN_POSITIVE);
    let times = ratio * ratio * ratio;
    Ruling::by("film.flow-goes-with-the-cube", times)
        .step("sag-flow", "(h / h0)^3", Measure::new(times, Unit::Ratio, 1))
        .given(&[
            ("h", Measure::new(wet.get(), Unit::Micrometre, 0)),
            ("h0", Measure::new(other.get(), Unit::Micrometre, 0)),
        ])
}
