//! Viscosity: what a cup's seconds stand for, which cup fits, and what warmth does.

use super::cup::Cup;
use crate::quantity::{Celsius, Measure, Seconds, Unit, Viscosity};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};

/// What a reading of a cup says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading<'a, T> {
    /// The number that it stands for.
    Holds(T),
    /// Too thin for the cup: the finer one, where there is one.
    Finer(Option<&'a Cup>),
    /// Too thick for the cup: the coarser one, where there is one.
    Coarser(Option<&'a Cup>),
}

/// A viscosity as shown.
#[must_use]
pub const fn thickness_of(viscosity: Viscosity) -> Measure {
    Measure::new(viscosity.get(), Unit::SquareMillimetreASecond, 1)
}

/// A time by the stop watch as shown.
#[must_use]
pub const fn stop_watch(seconds: Seconds) -> Measure {
    Measure::new(seconds.get(), Unit::Second, 1)
}

/// A ruling with the range of a cup, and the temperature its constants hold at, as working.
fn ranged<'a, T>(cup: &Cup, reading: Reading<'a, T>) -> Ruling<Reading<'a, T>> {
    let (least, most) = cup.range();
    Ruling::by("mixing.cup-range", reading)
        .and("mixing.cup-temperature")
        .step("cup-least", "", stop_watch(least))
        .step("cup-most", "", stop_watch(most))
        .step("cup-at", "", Measure::new(cup.at_c, Unit::Celsius, 0))
}

/// What is put into a cup's equation. Slope and drag are shown without their units, mm²/s² and mm².
const fn constants(cup: &Cup, seconds: Seconds) -> [(&'static str, Measure); 4] {
    [
        ("slope", Measure::new(cup.slope, Unit::Ratio, 3)),
        ("t", stop_watch(seconds)),
        ("offset", Measure::new(cup.offset, Unit::Second, 2)),
        ("drag", Measure::new(cup.drag, Unit::Ratio, 0)),
    ]
}

/// Viscosity of a liquid that runs out of a cup in so long a time, at the cup's stated temperature. Outside the cup's
/// range there is no number: the reading asks for the finer or the coarser cup.
#[must_use]
pub fn reading<'a>(cup: &Cup, seconds: Seconds, cups: &'a [Cup]) -> Ruling<Reading<'a, Viscosity>> {
    match cup.viscosity(seconds) {
        Some(found) => ranged(cup, Reading::Holds(found))
            .and("mixing.cup-equation")
            .step("viscosity", "slope × (t − offset) − drag / t", thickness_of(found))
            .given(&constants(cup, seconds)),
        None if seconds < cup.range().0 => ranged(cup, Reading::Finer(cup.finer(cups))),
        None => ranged(cup, Reading::Coarser(cup.coarser(cups))),
    }
}

/// Time in which a liquid of that viscosity runs out of a cup, at the cup's stated temperature; outside the cup's range
/// it asks for the finer or the coarser cup.
#[must_use]
pub fn time_for<'a>(cup: &Cup, viscosity: Viscosity, cups: &'a [Cup]) -> Ruling<Reading<'a, Seconds>> {
    match cup.seconds(viscosity) {
        Some(found) => ranged(cup, Reading::Holds(found)).and("mixing.cup-equation").step(
            "cup-time",
            "",
            stop_watch(found),
        ),
        None if viscosity < cup.thinnest() => ranged(cup, Reading::Finer(cup.finer(cups))),
        None => ranged(cup, Reading::Coarser(cup.coarser(cups))),
    }
}

/// The finest cup of a series that reads a liquid of that viscosity, with its time.
#[must_use]
pub fn cup_for<'a>(series: &str, viscosity: Viscosity, cups: &'a [Cup]) -> Option<(&'a Cup, Seconds)> {
    let reads = |cup: &'a Cup| cup.seconds(viscosity).map(|time| (cup, time));
    let of = cups.iter().filter(|cup| cup.series == series).filter_map(reads);
    of.min_by(|(a, _), (b, _)| a.thinnest().get().total_cmp(&b.thinnest().get()))
}

/// How steeply a liquid thins with warmth: B in `ν = ν₀ · exp(B · (1/T − 1/T₀))`, T in kelvin (the Andrade form, from
/// memory), found from viscosities measured at two temperatures. In kelvin; two certified oils give 3542 and 5704, one
/// published nitrocellulose lacquer 5491.
///
/// # Errors
/// [`CannotJudge`] when both were measured at one temperature, or one of them is no viscosity.
pub fn steepness(cold: (Celsius, Viscosity), warm: (Celsius, Viscosity)) -> Result<f64, CannotJudge> {
    let inverse = 1.0 / cold.0.kelvin() - 1.0 / warm.0.kelvin();
    let steepness = libm::log(cold.1.get() / warm.1.get()) / inverse;
    if steepness.is_finite() { Ok(steepness) } else { Err(CannotJudge::without("warm_c")) }
}

/// Viscosity at another temperature, from two measured ones. An estimate: a mix is measured again after warming, before
/// any thinner goes in.
///
/// # Errors
/// As [`steepness`].
pub fn at_temperature(
    cold: (Celsius, Viscosity),
    warm: (Celsius, Viscosity),
    wanted: Celsius,
) -> Judged<Viscosity> {
    let steepness = steepness(cold, warm)?;
    let factor = libm::exp(steepness * (1.0 / wanted.kelvin() - 1.0 / cold.0.kelvin()));
    let found = Viscosity::saturating(cold.1.get() * factor);
    Ok(Ruling::by("mixing.warm-is-thinner", found)
        .step("viscosity-cold", "", thickness_of(cold.1))
        .step("viscosity-warm", "", thickness_of(warm.1))
        .step("viscosity", "ν₀ · exp(B · (1/(T + 273.15) − 1/(T₀ + 273.15)))", thickness_of(found))
        .given(&[
            ("ν₀", thickness_of(cold.1)),
            ("B in K", Measure::new(steepness, Unit::Ratio, 0)),
            ("T", Measure::new(wanted.get(), Unit::Celsius, 1)),
            ("T₀", Measure::new(cold.0.get(), Unit::Celsius, 1)),
        ]))
}
