//! Binding: what it needs before colour lies on it, when it is scraped, what closes the cut.
//!
//! Scraping is judged by what lies on the work, not by the clock: after the colour (and the protective clear, where the
//! shop sheet has one), before the clear build. Orders with and without a protective clear are both in use; the sheet
//! names the shop's (variants sv-06 and sv-23 of the published order errors).

use super::sheet::{Setting, Sheet};
use super::term::{Binding, Term};
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// The last thing laid over the binding.
    LastLaid {
        /// Colour or shading.
        Colour = "last-colour",
        /// The protective clear.
        Protective = "last-protective",
        /// Coats of the clear build.
        Build = "last-build",
    }
    /// What is to be done with the binding after the colour.
    Scraping {
        /// Scrape now.
        Now = "scrape-now",
        /// Lay the protective clear first.
        ProtectiveFirst = "scrape-protective-first",
        /// Wait until it is touch-dry.
        WaitDry = "scrape-wait-dry",
        /// Too late to scrape cleanly: the cut would stand in the clear.
        TooLate = "scrape-too-late",
        /// No colour lies on a binding.
        Nothing = "scrape-nothing",
    }
    /// What is to be done with the binding before the colour.
    Preparing {
        /// Spray over it: the colour is scraped off later.
        ColourOver = "trim-colour-over",
        /// Seal it first.
        SealFirst = "trim-seal-first",
        /// Scrape and level it first, while the wood is bare.
        LevelFirst = "trim-level-first",
        /// Nothing: no colour lies on a binding.
        Nothing = "trim-nothing",
    }
    /// Operations round the binding, in the order of the work.
    TrimStep {
        /// Scrape and level the binding while the wood is bare.
        Level = "step-level-binding",
        /// Seal coat.
        Seal = "step-seal",
        /// Colour and shading.
        Colour = "step-colour",
        /// Protective clear.
        Protective = "step-protective-clear",
        /// Scrape the colour off the binding.
        Scrape = "step-scrape",
        /// Inspect.
        Inspect = "step-inspect",
        /// First coat of the clear build.
        Build = "step-clear-build",
    }
}

/// Whether and when the binding is scraped. `coloured` tells whether stain, colour or shading lies on it.
#[must_use]
pub fn scraping(
    binding: Binding,
    coloured: bool,
    last: LastLaid,
    touch_dry: bool,
    sheet: &Sheet,
) -> Ruling<Scraping> {
    let protective = sheet.is_on(Setting::ProtectiveClear);
    match last {
        _ if binding == Binding::None || !coloured => {
            Ruling::by("binding.nothing-to-scrape", Scraping::Nothing)
        }
        LastLaid::Build => Ruling::by("binding.scrape-before-clear-build", Scraping::TooLate),
        _ if !touch_dry => Ruling::by("binding.scrape-touch-dry", Scraping::WaitDry),
        LastLaid::Colour if protective => {
            Ruling::by("binding.protective-clear-first", Scraping::ProtectiveFirst)
                .and("binding.protective-clear-shows-colour")
        }
        LastLaid::Colour | LastLaid::Protective => {
            Ruling::by("binding.scrape-after-colour", Scraping::Now).and("binding.next-clear-seals-cut")
        }
    }
}

/// What the binding needs before colour goes over it. `coloured` tells whether colour comes to lie on it: not on a job
/// without colour, not under tape.
#[must_use]
pub fn preparing(binding: Binding, coloured: bool, levelled: bool, sealed: bool) -> Ruling<Preparing> {
    if binding != Binding::None && !levelled {
        Ruling::by("binding.level-while-bare", Preparing::LevelFirst)
    } else if binding == Binding::None || !coloured {
        Ruling::by("binding.nothing-to-scrape", Preparing::Nothing)
    } else if binding == Binding::Wood && !sealed {
        Ruling::by("binding.wood-sealed-first", Preparing::SealFirst)
    } else {
        Ruling::by("binding.colour-over-sound-trim", Preparing::ColourOver)
    }
}

/// The operations round the binding: where no stain, colour or shading lies on it, nothing is laid over it as a guard
/// and nothing is scraped off.
#[must_use]
pub fn trim_steps(coloured: bool) -> Vec<TrimStep> {
    let colours =
        |step: &TrimStep| matches!(step, TrimStep::Colour | TrimStep::Protective | TrimStep::Scrape);
    TrimStep::ALL.iter().copied().filter(|step| coloured || !colours(step)).collect()
}

/// Whether an order of operations round the binding is accepted. Only operations that are listed are judged; where the
/// sheet lays no protective clear before scraping, that coat may go on before or after it.
///
/// # Errors
/// [`CannotJudge`] when one of them is no operation round the binding.
pub fn accepts(order: &[String], sheet: &Sheet) -> Judged<bool> {
    let steps = order.iter().map(|slug| TrimStep::from_slug(slug)).collect::<Option<Vec<_>>>();
    let steps = steps.ok_or_else(|| CannotJudge::without("order"))?;
    let free = |a: TrimStep, b: TrimStep| {
        [a, b].contains(&TrimStep::Protective)
            && [a, b].contains(&TrimStep::Scrape)
            && !sheet.is_on(Setting::ProtectiveClear)
    };
    let sound = steps
        .iter()
        .enumerate()
        .all(|(at, first)| steps.iter().skip(at + 1).all(|second| first <= second || free(*first, *second)));
    Ok(Ruling::by("binding.scrape-before-clear-build", sound)
        .and("binding.protective-clear-first")
        .and("binding.level-while-bare"))
}
