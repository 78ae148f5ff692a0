//! Colour in the film: how many passes, how wet, in what order, and whether the colour may be scuffed.

use super::film::Facing;
use super::sheet::{Setting, Sheet};
use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::quantity::{DUST, Measure, Micrometres, Unit};
use crate::terms;

terms! {
    /// What a wet-film reading of a colour pass says.
    PassCall {
        /// Thin enough.
        Right = "pass-is-right",
        /// Too heavy for a colour pass, though it will not run.
        Heavy = "too-heavy-for-colour",
        /// Near running.
        NearRun = "near-running",
        /// It sags.
        Sags = "will-sag",
    }
    /// Kinds of colour in the film.
    ColourKind {
        /// Hides the wood.
        Opaque = "opaque-colour",
        /// Lets the wood show.
        Toner = "toner",
    }
    /// What disturbs on a colour coat.
    Blemish {
        /// Single specks.
        Nibs = "single-nibs",
        /// Texture all over.
        Texture = "rough-all-over",
    }
    /// What is done about it.
    ScuffCall {
        /// Scuff lightly, keep off the edges, wipe clean, go to clear.
        Scuff = "scuff-lightly",
        /// More colour first.
        MoreColour = "colour-until-hidden",
        /// Take off the single specks only.
        NibOnly = "nib-specks-only",
        /// Lock it under clear and level the clear.
        Lock = "lock-then-level",
    }
    /// Steps of one colour coat.
    ColourStep {
        /// Edges and inside corners.
        Edges = "edges-first",
        /// A pass along the body.
        Along = "pass-along",
        /// A pass across it.
        Across = "pass-across",
        /// A look for stripes under a low lamp.
        Look = "look-for-stripes",
        /// A thin protective clear.
        Protect = "protective-clear-coat",
        /// The binding scraped.
        Scrape = "scrape-colour-off-binding",
    }
}

/// What a wet-film reading of a colour pass says.
///
/// Sources: 5 mil is near running, 6 mil and over sags on a standing face (a trade adviser); the film of a colour pass is
/// the sheet's (common practice, no source).
///
/// # Errors
/// [`CannotJudge`] when it is not told how the face lies and that decides.
pub fn judge_pass(sheet: &Sheet, wet: Micrometres, facing: Option<Facing>) -> Judged<PassCall> {
    let wanted = sheet.micrometres(Setting::ColourWet);
    let standing =
        || facing.ok_or_else(|| CannotJudge::without("facing")).map(|facing| facing == Facing::Standing);
    let ruling = if wet <= wanted {
        Ruling::by("colouring.thin-passes", PassCall::Right)
    } else if wet < sheet.micrometres(Setting::WetWarn) || !standing()? {
        Ruling::by("colouring.thin-passes", PassCall::Heavy)
    } else if wet < sheet.micrometres(Setting::WetSag) {
        Ruling::by("film.near-running", PassCall::NearRun)
    } else {
        Ruling::by("film.sags", PassCall::Sags)
    };
    Ok(ruling.step("colour-wet", "", Measure::new(wanted.get(), Unit::Micrometre, 0)))
}

/// By how much the flow down a standing face grows against a pass at the sheet's film: with the cube of the wet film
/// (momentum balance of a thin film, textbook).
///
/// # Errors
/// [`CannotJudge`] when the sheet gives no film for a colour pass.
pub fn sag_growth(sheet: &Sheet, wet: Micrometres) -> Judged<f64> {
    let wanted = sheet.get(Setting::ColourWet);
    if wanted <= 0.0 {
        return Err(CannotJudge::without("colour-wet"));
    }
    let times = wet.get() / wanted;
    let growth = times * times * times;
    Ok(Ruling::by("colouring.sag-grows-with-cube", growth)
        .step("film-times", "h / h₀", Measure::new(times, Unit::Ratio, 2))
        .given(&[
            ("h", Measure::new(wet.get(), Unit::Micrometre, 0)),
            ("h₀", Measure::new(wanted, Unit::Micrometre, 0)),
        ])
        .step("sag-times", "(h / h₀)³", Measure::new(growth, Unit::Ratio, 1))
        .given(&[
            ("h", Measure::new(wet.get(), Unit::Micrometre, 0)),
            ("h₀", Measure::new(wanted, Unit::Micrometre, 0)),
        ]))
}

/// Passes at the sheet's film that lay as much colour as a sample did with its own: the same mix, the same film in all.
///
/// Source: the depth of a colour goes with the film that carries it (Beer-Lambert law); thin passes are common practice,
/// no source.
///
/// # Errors
/// [`CannotJudge`] when the sheet gives no film for a colour pass.
pub fn passes(sheet: &Sheet, sample_passes: f64, sample_film: Micrometres) -> Judged<f64> {
    let wanted = sheet.get(Setting::ColourWet);
    if wanted <= 0.0 {
        return Err(CannotJudge::without("colour-wet"));
    }
    let film = sample_passes * sample_film.get();
    let count = libm::ceil(film / wanted - DUST);
    Ok(Ruling::by("colouring.same-film-same-colour", count)
        .step("sample-film", "n h", Measure::new(film, Unit::Micrometre, 0))
        .given(&[
            ("n", Measure::count(sample_passes)),
            ("h", Measure::new(sample_film.get(), Unit::Micrometre, 0)),
        ])
        .step("colour-wet", "", Measure::new(wanted, Unit::Micrometre, 0))
        .step("passes-needed", "⌈n h / h₀⌉", Measure::count(count))
        .given(&[
            ("n h", Measure::new(film, Unit::Micrometre, 0)),
            ("h₀", Measure::new(wanted, Unit::Micrometre, 0)),
        ]))
}

/// What is done about roughness on a colour coat.
///
/// Source: a published instrument schedule scuffs opaque colour at 320 before clear, with care at the edges; that
/// transparent colour is locked under clear first is common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when what decides is not told.
pub fn scuff(kind: ColourKind, hides: Option<bool>, blemish: Option<Blemish>) -> Judged<ScuffCall> {
    Ok(match kind {
        ColourKind::Opaque if hides.ok_or_else(|| CannotJudge::without("hides"))? => {
            Ruling::by("colouring.opaque-may-be-scuffed", ScuffCall::Scuff)
        }
        ColourKind::Opaque => Ruling::by("colouring.hide-before-scuff", ScuffCall::MoreColour),
        ColourKind::Toner => match blemish.ok_or_else(|| CannotJudge::without("blemish"))? {
            Blemish::Nibs => Ruling::by("colouring.toner-not-scuffed", ScuffCall::NibOnly),
            Blemish::Texture => Ruling::by("colouring.toner-not-scuffed", ScuffCall::Lock),
        },
    })
}

/// The steps of one colour coat on this sheet; only a body with binding has something to scrape.
#[must_use]
pub fn colour_steps(sheet: &Sheet, bound: bool) -> Vec<ColourStep> {
    let belongs = |step: &ColourStep| match step {
        ColourStep::Protect => sheet.is_on(Setting::ProtectiveClear),
        ColourStep::Scrape => bound,
        _ => true,
    };
    ColourStep::ALL.iter().copied().filter(belongs).collect()
}

/// Whether the steps of a colour coat stand in a sound order: edges first, one direction and then across it in either
/// order, a look, the protective clear where the sheet has one, the binding scraped last.
///
/// Sources: band the edges first (a refinish tip sheet); the rest is common practice, no source.
#[must_use]
pub fn colour_order(steps: &[ColourStep]) -> Ruling<bool> {
    let rank = |step: ColourStep| match step {
        ColourStep::Edges => 0,
        ColourStep::Along | ColourStep::Across => 1,
        ColourStep::Look => 2,
        ColourStep::Protect => 3,
        ColourStep::Scrape => 4,
    };
    let sound = steps.windows(2).all(|pair| match pair {
        [first, second] => rank(*first) <= rank(*second),
        _ => true,
    });
    Ruling::by("colouring.edges-then-crossed-passes", sound).and("colouring.protect-before-scraping")
}
