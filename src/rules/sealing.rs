//! Sealing: what a wood wants before the first coat, how much sealer is enough, and the order over mixed woods.

use super::sheet::{Setting, Sheet};
use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use super::wood::{self, Demand, Wood, demands};
use crate::quantity::Measure;
use crate::terms;

terms! {
    /// The film that follows, told apart by how it dries.
    Film {
        /// Lacquer that dries by solvent release.
        Lacquer = "lacquer-film",
        /// Water-borne lacquer.
        WaterBorne = "water-borne-film",
        /// Shellac.
        Shellac = "shellac-film",
        /// Varnish that takes up oxygen.
        OilVarnish = "oil-varnish",
    }
    /// What is done on the wood before the film is built.
    FirstCoat {
        /// One thin seal coat.
        Seal = "thin-seal-coat",
        /// Mist coats of the film itself first; no wiping.
        Mist = "mist-then-seal",
        /// A barrier coat of dewaxed shellac, misted on; no wiping.
        Barrier = "misted-barrier",
        /// Wipe with a fast solvent, then a barrier coat of dewaxed shellac at once.
        WipeBarrier = "wipe-and-barrier",
        /// Wipe with a fast solvent, then the first thin coat of the film itself at once.
        WipeCoat = "wipe-and-coat",
    }
    /// Kinds of sealer.
    Sealer {
        /// Sanding sealer with stearate.
        Stearated = "stearated-sealer",
        /// Vinyl or other sealer without stearate.
        Plain = "plain-sealer",
    }
    /// What follows a look at the sealer.
    SealerCall {
        /// Lay one thin coat.
        Lay = "lay-one-thin-coat",
        /// Sand most of it back and build with the top coat.
        Build = "sand-back-and-build",
        /// Sand the surplus off first, down to one thin coat.
        TakeOff = "take-surplus-off",
    }
    /// Steps on a body where a bleeding wood meets a pale one.
    MixedStep {
        /// The last sanding.
        Sand = "sand-both-woods",
        /// Coloured dust drawn off.
        Vacuum = "vacuum-dust",
        /// The oily wood wiped with a fast solvent, away from the pale wood.
        Wipe = "wipe-oily-wood",
        /// A thin mist seal over both woods.
        Mist = "mist-both-woods",
        /// The mist flashes off.
        Flash = "let-mist-flash",
        /// The first wet coat.
        Wet = "first-wet-coat",
    }
}

/// What a wood wants before the film is built: what [`demands`] says of it, where a shellac film is its own barrier
/// (common practice, no source). An oily wood is wiped even where it bleeds, as the article on oily woods says; a wood
/// that only bleeds is misted and not wiped, since a wipe drags its colour (common practice, no source).
///
/// # Errors
/// [`CannotJudge`] when the wood is not told, or the film where it decides.
pub fn first_coat(wood: Option<&Wood>, film: Option<Film>) -> Judged<FirstCoat> {
    let wood = wood.ok_or_else(|| CannotJudge::without("wood"))?;
    let Some(film) = film else {
        let calm = demands(wood, wood::FirstCoat::OilCured).answer.is_empty()
            && demands(wood, wood::FirstCoat::Lacquer).answer.is_empty();
        return if calm {
            Ok(Ruling::by("sealing.one-thin-coat", FirstCoat::Seal))
        } else {
            Err(CannotJudge::without("film"))
        };
    };
    let demanded = demands(wood, film.as_first());
    let wants = |demand| demanded.answer.contains(&demand);
    let own_barrier = film == Film::Shellac;
    let way = match (wants(Demand::SolventWipe), wants(Demand::BarrierCoat)) {
        (true, _) if own_barrier => Ruling::by("sealing.shellac-is-the-barrier", FirstCoat::WipeCoat),
        (true, _) => Ruling::by("sealing.wiped-and-sealed-at-once", FirstCoat::WipeBarrier),
        (false, true) if own_barrier => Ruling::by("sealing.shellac-is-the-barrier", FirstCoat::Mist),
        (false, true) => Ruling::by("sealing.bleeding-wood-misted", FirstCoat::Barrier),
        (false, false) => Ruling::by("sealing.one-thin-coat", FirstCoat::Seal),
    };
    Ok(way.resting_on(&demanded))
}

impl Film {
    /// The first coat that this film begins with.
    const fn as_first(self) -> wood::FirstCoat {
        match self {
            Self::OilVarnish => wood::FirstCoat::OilCured,
            Self::Lacquer | Self::WaterBorne | Self::Shellac => wood::FirstCoat::Lacquer,
        }
    }
}

/// Whether a way that was not asked for would do no harm: a barrier of shellac under shellac, and lacquer straight on
/// oily wood that was wiped (solvent-drying coats dry on it; a published answer of 2008).
#[must_use]
pub const fn is_also_sound(way: FirstCoat, film: Film) -> bool {
    matches!(
        (way, film),
        (FirstCoat::WipeBarrier | FirstCoat::Barrier, Film::Shellac) | (FirstCoat::WipeCoat, Film::Lacquer)
    )
}

/// Most thin coats of a sealer: the sheet's number with stearate, one more without.
#[must_use]
pub fn most_coats(sheet: &Sheet, sealer: Sealer) -> f64 {
    /// A sealer without stearate may go one coat more: common practice, no source.
    const WITHOUT_STEARATE: f64 = 1.0;
    let most = sheet.get(Setting::SealerCoats);
    match sealer {
        Sealer::Stearated => most,
        Sealer::Plain => most + WITHOUT_STEARATE,
    }
}

/// What follows when so many coats of a sealer are on: film is built with top coat, never with sealer.
///
/// Source: a magazine article on sealers (any first coat seals, stearate weakens the film); the count is trade habit.
///
/// # Errors
/// [`CannotJudge`] when the sealer is not told and decides.
pub fn after_sealer(sheet: &Sheet, sealer: Option<Sealer>, coats: f64) -> Judged<SealerCall> {
    if coats <= 0.0 {
        return Ok(Ruling::by("sealing.one-thin-coat", SealerCall::Lay));
    }
    let least = most_coats(sheet, Sealer::Stearated);
    let most = match sealer {
        Some(sealer) => most_coats(sheet, sealer),
        None if coats <= least || coats > most_coats(sheet, Sealer::Plain) => least,
        None => return Err(CannotJudge::without("sealer")),
    };
    let ruling = if coats <= most {
        Ruling::by("sealing.never-build-with-sealer", SealerCall::Build)
    } else {
        Ruling::by("sealing.thick-sealer-comes-off", SealerCall::TakeOff)
    };
    Ok(ruling.step("sealer-coats-most", "", Measure::count(most)))
}

/// Whether steps over mixed woods stand in a sound order: sand, draw the dust off, wipe the oily wood, mist both at
/// once, let it flash, and only then a wet coat.
///
/// Sources: resin and colour rise from wood (BS 2015 glossary), oily wood is cleaned and sealed at once (an article on
/// oily woods); drawing dust off and misting both woods are common practice, no source.
#[must_use]
pub fn mixed_order(steps: &[MixedStep]) -> Ruling<bool> {
    let place = |step: &MixedStep| MixedStep::ALL.iter().position(|one| one == step);
    let rising = steps.windows(2).all(|pair| match pair {
        [first, second] => place(first) < place(second),
        _ => true,
    });
    Ruling::by("sealing.mist-before-wet-coat", rising).and("sealing.coloured-dust-drawn-off")
}
