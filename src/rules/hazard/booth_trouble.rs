//! Troubles of a running booth, and the order of shutting it down.

use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is noticed at a booth.
    Trouble {
        /// The gauge stands past its mark.
        PastMark = "gauge-past-mark",
        /// The gauge stands near nothing with the fan on: a filter is missing or torn.
        NearZero = "gauge-near-zero",
        /// The fan stopped, or its alarm sounds.
        FanStopped = "fan-stopped",
        /// The gun still gets air with the fan off: the interlock does not hold.
        InterlockOpen = "interlock-open",
        /// The fan scrapes or smells hot.
        FanScrapes = "fan-scrapes",
        /// Nothing: gauge under its mark, air normal.
        Nothing = "booth-as-always",
    }
    /// What it calls for.
    TroubleMove {
        /// Spraying goes on.
        GoOn = "go-on-spraying",
        /// Gun down, filters changed under the running fan, gauge read again.
        NewFilters = "gun-down-new-filters",
        /// Gun down, out, reported; nothing is sprayed until it is put right.
        OutAndReport = "gun-down-out-report",
    }
    /// Steps of shutting a booth down.
    ShutStep {
        /// Cans shut and out of the booth.
        MaterialOut = "material-out",
        /// Air to the gun shut off and hose bled.
        AirOff = "gun-air-off",
        /// Gun cleaned in the booth.
        GunClean = "gun-clean",
        /// Wipes and overspray into their closed cans.
        ResidueOut = "residue-out",
        /// Fan off.
        FanLast = "fan-last",
    }
}

/// What a trouble calls for: past the mark nothing is sprayed; without sure air, or with an interlock that does not hold,
/// the gun is down until it is put right (29 CFR 1910.107(b)(5)(i), (d)(2), (j)(3)).
#[must_use]
pub fn trouble_move(trouble: Trouble) -> Ruling<TroubleMove> {
    match trouble {
        Trouble::Nothing => Ruling::by("hazard.filter-gauge", TroubleMove::GoOn),
        Trouble::PastMark => Ruling::by("hazard.filter-gauge", TroubleMove::NewFilters),
        Trouble::NearZero => {
            Ruling::by("hazard.gauge-near-zero", TroubleMove::NewFilters).and("hazard.filter-gauge")
        }
        Trouble::FanStopped | Trouble::InterlockOpen | Trouble::FanScrapes => {
            Ruling::by("hazard.no-spraying-without-air", TroubleMove::OutAndReport)
        }
    }
}

/// Whether the steps of shutting down stand in order: material, gun air, gun cleaned, residue out, fan last. Gun air may
/// go off before or after the cans go out; the gun is cleaned after both (order of work: common practice; fan last: 29
/// CFR 1910.107(d)(2)).
///
/// # Errors
/// [`CannotJudge`] when a word is no step.
pub fn shut_order(steps: &[String]) -> Judged<bool> {
    let mut found = Vec::with_capacity(steps.len());
    for step in steps {
        found.push(ShutStep::from_slug(step).ok_or_else(|| CannotJudge::without("steps"))?);
    }
    let rises = found.windows(2).all(|pair| match pair {
        [first, then] => level(*first) <= level(*then),
        _ => true,
    });
    Ok(Ruling::by("hazard.fan-last", rises).and("hazard.fan-round-the-gun"))
}

/// Steps of one level go in any order.
const fn level(step: ShutStep) -> u8 {
    match step {
        ShutStep::MaterialOut | ShutStep::AirOff => 0,
        ShutStep::GunClean => 1,
        ShutStep::ResidueOut => 2,
        ShutStep::FanLast => 3,
    }
}
