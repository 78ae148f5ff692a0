//! Film: from wet to dry, coats for a build, what counts as build, what levelling leaves over the colour.
//!
//! The formulas assume that volumes add and that no pores take film up: a coating dries a little thicker than this on a
//! flat panel and thinner over open grain, so a witness strip sprayed beside the work has the last word.

use super::drying::job::count_coats;
use super::mixing::{self, Thinning};
use super::sheet::{Setting, Sheet};
use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::{DUST, Fraction, Hours, Measure, Micrometres, Unit};
use crate::terms;

/// A light coat is 3 mil where the usual one is 4 mil: trade knowledge base, "Measuring finish thickness".
const LIGHT_SHARE: f64 = 3.0 / 4.0;
/// More coats than this are a mistake of reading, not a schedule.
const MOST_COATS: u32 = 1_000;

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
    /// How the face stands while it is sprayed.
    Facing {
        /// Upright: a heavy film runs.
        Standing = "standing",
        /// Level: a heavy film stays.
        Lying = "lying",
    }
    /// Layers that a finish is made of.
    Layer {
        /// Pore filler.
        Filler = "layer-filler",
        /// Thin coat that evens stain or locks filler.
        Washcoat = "layer-washcoat",
        /// Seal coat.
        Sealer = "layer-sealer",
        /// Coats that carry the colour.
        Colour = "layer-colour",
        /// Shading passes at the edge.
        Shade = "layer-shade",
        /// The thin clear over the colour before the binding is scraped.
        ProtectiveClear = "layer-protective-clear",
        /// A coat of the clear build.
        Clear = "layer-clear",
        /// Stain in the wood.
        Stain = "layer-stain",
        /// Clear that levelling already took off.
        LevelledOff = "layer-levelled-off",
    }
    /// What film and levelling together allow.
    Levelling {
        /// Enough film: level.
        Level = "level-now",
        /// Enough over the colour now, not after levelling: clear first.
        ClearFirst = "level-clear-first",
        /// Already under the reserve: nothing more may come off.
        UnderReserve = "level-under-reserve",
        /// Nothing left: the colour is cut.
        Through = "level-through",
    }
}

/// Volume solids of the clear as supplied, from the shop sheet.
#[must_use]
pub fn clear_solids(sheet: &Sheet) -> Fraction {
    mixing::fraction(sheet.get(Setting::ClearSolids))
}

fn um(value: f64) -> Measure {
    Measure::new(value, Unit::Micrometre, 0)
}

/// Dry film that a wet film leaves: wet film times the volume solids of the mix (gauge maker's formula sheet;
/// ASTM D4414 warns not to turn it round to prove solids).
#[must_use]
pub fn dry(wet: Micrometres, solids: Fraction, thinning: Thinning) -> Ruling<Micrometres> {
    let mix = mixing::thinned_solids(solids, thinning).answer;
    let dry = Micrometres::saturating(wet.get() * mix.get());
    Ruling::by("film.dry-is-wet-times-solids", dry)
        .and("mixing.solids-fall")
        .step("solids-of-mix", "", mixing::percent(mix))
        .step("dry-film", "", Measure::new(dry.get(), Unit::Micrometre, 1))
}

/// Wet film that leaves a wanted dry film.
///
/// # Errors
/// [`CannotJudge`] when the material holds no solids or the film is beyond any coat.
pub fn wet_for(wanted: Micrometres, solids: Fraction, thinning: Thinning) -> Judged<Micrometres> {
    let mix = mixing::thinned_solids(solids, thinning).answer;
    let wet =
        Micrometres::new(wanted.get() / mix.get()).map_err(|_| CannotJudge::without("volume_solids"))?;
    Ok(Ruling::by("film.dry-is-wet-times-solids", wet)
        .and("mixing.solids-fall")
        .step("solids-of-mix", "", mixing::percent(mix))
        .step("wet-film", "", um(wet.get())))
}

/// Dry film of one clear coat by the shop sheet.
#[must_use]
pub fn sheet_coat(sheet: &Sheet) -> Ruling<Micrometres> {
    dry(sheet.micrometres(Setting::ClearWet), clear_solids(sheet), mixing::clear_thinning(sheet))
}

/// Dry build of so many equal coats.
#[must_use]
pub fn build(coats: f64, coat: Micrometres) -> Ruling<Micrometres> {
    let build = Micrometres::saturating(coats * coat.get());
    Ruling::by("film.build-is-coats-times-dry", build).step("build", "", um(build.get()))
}

/// Coats that a dry build takes: rounded up, since a part of a coat is a coat.
///
/// # Errors
/// [`CannotJudge`] when a coat leaves no film.
pub fn coats_for(target: Micrometres, coat: Micrometres) -> Judged<u32> {
    let exact = target.get() / coat.get();
    let whole = (0..=MOST_COATS).find(|coats| f64::from(*coats) >= exact - DUST);
    let whole = whole.ok_or_else(|| CannotJudge::without("wet_um"))?;
    Ok(Ruling::by("film.coats-by-build", whole)
        .and("film.build-is-coats-times-dry")
        .step("coats-exact", "", Measure::new(exact, Unit::Count, 2))
        .step("coats-rounded-up", "", Measure::count(f64::from(whole))))
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
        .step("near-running-from", "", um(warn.get()))
        .step("sags-from", "", um(sag.get()))
}

/// Whether a layer counts as build over the colour, which levelling may draw on. The protective clear counts where the
/// shop lays one.
#[must_use]
pub fn counts_as_build(layer: Layer, sheet: &Sheet) -> Ruling<bool> {
    match layer {
        Layer::Clear => Ruling::by("film.only-clear-counts", true),
        Layer::ProtectiveClear => {
            Ruling::by("film.protective-clear-counts", sheet.is_on(Setting::ProtectiveClear))
        }
        Layer::Stain | Layer::Filler | Layer::Washcoat | Layer::Sealer => {
            Ruling::by("film.under-colour-is-no-build", false)
        }
        Layer::Colour | Layer::Shade => Ruling::by("film.colour-is-no-build", false),
        Layer::LevelledOff => Ruling::by("film.left-is-build-less-taken", false),
    }
}

/// Film left over the colour after so much came off; 0 when it is cut.
#[must_use]
pub fn left(build: Micrometres, taken: Micrometres) -> Ruling<Micrometres> {
    let left = Micrometres::saturating(build.get() - taken.get());
    Ruling::by("film.left-is-build-less-taken", left).step("left-over-colour", "", um(left.get()))
}

/// Whether a film may be levelled: the shop's take-off must leave the shop's reserve over the colour.
#[must_use]
pub fn levelling(build: Micrometres, taken: Micrometres, sheet: &Sheet) -> Ruling<Levelling> {
    let now = left(build, taken);
    let take_off = sheet.micrometres(Setting::LevelTakeOff);
    let reserve = sheet.micrometres(Setting::FilmReserve);
    let after = now.answer.get() - take_off.get();
    let (rule, answer) = if now.answer.get() <= 0.0 {
        ("film.cut-through", Levelling::Through)
    } else if now.answer < reserve {
        ("film.reserve-over-colour", Levelling::UnderReserve)
    } else if after < reserve.get() {
        ("film.level-leaves-reserve", Levelling::ClearFirst)
    } else {
        ("film.level-leaves-reserve", Levelling::Level)
    };
    Ruling::by(rule, answer)
        .step("take-off", "", um(take_off.get()))
        .step("left-after-levelling", "", um(after.max(0.0)))
        .step("reserve", "", um(reserve.get()))
        .resting_on(&now)
}

/// Thicknesses that a finisher keeps apart; each is read from, or computed with, the shop sheet.
#[must_use]
pub fn thickness(slug: &str, sheet: &Sheet) -> Option<Micrometres> {
    Some(match Thickness::from_slug(slug)? {
        Thickness::DryCoat => sheet_coat(sheet).answer,
        Thickness::TakeOff => sheet.micrometres(Setting::LevelTakeOff),
        Thickness::Reserve => sheet.micrometres(Setting::FilmReserve),
        Thickness::ColourWet => sheet.micrometres(Setting::ColourWet),
        Thickness::ClearWet => sheet.micrometres(Setting::ClearWet),
        Thickness::Warn => sheet.micrometres(Setting::WetWarn),
        Thickness::Sag => sheet.micrometres(Setting::WetSag),
    })
}

terms! {
    /// Thicknesses of the shop sheet that belong in one order.
    Thickness {
        /// Dry film of one clear coat.
        DryCoat = "thick-dry-coat",
        /// What levelling and buffing take.
        TakeOff = "thick-take-off",
        /// What must stay over the colour.
        Reserve = "thick-reserve",
        /// A wet pass of colour.
        ColourWet = "thick-colour-wet",
        /// A wet coat of clear.
        ClearWet = "thick-clear-wet",
        /// A wet film near running.
        Warn = "thick-warn",
        /// A wet film that sags.
        Sag = "thick-sag",
    }
}

/// Whether thicknesses are listed from the thinnest to the thickest; equal ones may stand either way.
///
/// # Errors
/// [`CannotJudge`] when one of them is no thickness of the sheet.
pub fn rises(order: &[String], sheet: &Sheet) -> Judged<bool> {
    let mut last = Micrometres::saturating(Micrometres::MIN);
    let mut rising = true;
    let mut ruling = Ruling::by("film.wet-films-by-sheet", true).and("film.dry-is-wet-times-solids");
    for slug in order {
        let next = thickness(slug, sheet).ok_or_else(|| CannotJudge::without("thickness"))?;
        rising &= next >= last;
        last = next;
    }
    ruling.answer = rising;
    Ok(ruling)
}

/// Clear coats that a job may still get today: what the order still wants, what the sheet allows a day, and what fits
/// between now and closing at the sheet's wait, the first going on now.
#[must_use]
pub fn coats_today(ordered: f64, laid: f64, laid_today: f64, now: Hours, sheet: &Sheet) -> Ruling<f64> {
    let wanted = (ordered - laid).max(0.0);
    let allowed = (sheet.get(Setting::CoatsADay) - laid_today).max(0.0);
    let fit = f64::from(count_coats(now.get(), sheet.get(Setting::ClearWait), sheet).coats);
    let coats = wanted.min(allowed).min(fit);
    let rule = if coats >= wanted {
        "film.coats-ordered"
    } else if allowed <= fit {
        "film.coats-a-day"
    } else {
        "film.coats-fit-the-day"
    };
    Ruling::by(rule, coats)
        .step("coats-ordered-left", "", Measure::count(wanted))
        .step("coats-allowed-left", "", Measure::count(allowed))
        .step("coats-that-fit", "", Measure::count(fit))
}
