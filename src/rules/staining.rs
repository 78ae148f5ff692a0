//! Staining: what a stain wants under it, when its colour is judged, and the fuzz that water raises.

use super::sheet::{Setting, Sheet};
use super::verdict::{CannotJudge, Judged, Ruling};
use super::wood::{Wood, WoodTrouble};
use crate::quantity::{Measure, Unit};
use crate::terms;

terms! {
    /// How colour is put on.
    Method {
        /// By gun.
        Sprayed = "sprayed-on",
        /// By cloth.
        Wiped = "wiped-on",
    }
    /// What the stain would go on.
    Ground {
        /// Bare, sanded wood.
        Bare = "bare-wood",
        /// A washcoat.
        Washcoated = "washcoated",
        /// A full seal coat.
        Sealed = "full-seal",
    }
    /// How colour gets on the work.
    Way {
        /// Stain now.
        Stain = "stain-as-it-is",
        /// A washcoat first, then stain.
        WashcoatFirst = "washcoat-then-stain",
        /// Colour in the film, by gun.
        InFilm = "colour-in-film",
    }
    /// A whole route from sanded wood to colour.
    Route {
        /// Dye by gun on bare wood.
        SprayDyeBare = "spray-dye-bare",
        /// Dye by cloth on bare wood.
        WipeDyeBare = "wipe-dye-bare",
        /// Oil stain by cloth on bare wood.
        WipeOilBare = "wipe-oil-bare",
        /// Dye by cloth on a washcoat.
        WipeDyeWashcoat = "wipe-dye-washcoat",
        /// Dye by cloth on a full seal coat.
        WipeDyeSealed = "wipe-dye-sealed",
        /// Tinted film by gun over a seal coat.
        ToneOverSeal = "tone-over-seal",
    }
    /// State of the colour that is looked at.
    ColourState {
        /// Stain still wet.
        Wet = "wet-stain",
        /// Stain dry, nothing over it.
        Dry = "dry-stain",
        /// Under clear.
        UnderClear = "under-clear",
    }
    /// How colour compares with the sample.
    Seen {
        /// Paler than the sample.
        Lighter = "paler-than-sample",
        /// As the sample.
        Same = "like-sample",
        /// Darker than the sample.
        Darker = "darker-than-sample",
    }
    /// What follows from a look at the colour.
    ColourCall {
        /// Let it dry, then clear on a trial strip.
        DryFirst = "dry-then-trial-clear",
        /// Clear on a trial strip, then look.
        TrialClear = "trial-clear-now",
        /// Go on.
        GoOn = "colour-agrees",
        /// Deepen it with a weak tinted coat.
        Deepen = "deepen-with-tint",
        /// Hold the job: film does not make it paler.
        Hold = "hold-too-dark",
    }
    /// Where fuzz stands.
    Fuzz {
        /// On bare wood that was damped and is dry again.
        DampedBare = "damped-bare",
        /// Under the first thin seal coat over dye.
        Sealed = "first-seal-on-dye",
    }
}

fn blotches(wood: &Wood) -> bool {
    wood.trouble.contains(&WoodTrouble::Blotching)
}

/// How colour gets on this ground.
///
/// Sprayed dye needs no sealer; wiped stain on a wood that blotches wants a washcoat (a trade magazine, December 2000:
/// about 3 to 7 % solids); coarse woods need none (a trade magazine, November 2007: oak, ash, walnut, mahogany); a full
/// seal coat keeps wiped stain out of the wood (common practice, no source: advice differs and the method decides).
///
/// # Errors
/// [`CannotJudge`] when method or wood is not told and decides.
pub fn colour_on(ground: Ground, method: Option<Method>, wood: Option<&Wood>) -> Judged<Way> {
    match (ground, method) {
        (Ground::Sealed, _) => Ok(Ruling::by("staining.full-seal-shuts-wood", Way::InFilm)),
        (Ground::Washcoated, _) => Ok(Ruling::by("staining.washcoat-lets-stain-in", Way::Stain)),
        (Ground::Bare, None) => Err(CannotJudge::without("method")),
        (Ground::Bare, Some(Method::Sprayed)) => {
            Ok(Ruling::by("staining.sprayed-needs-no-sealer", Way::Stain))
        }
        (Ground::Bare, Some(Method::Wiped)) => {
            let wood = wood.ok_or_else(|| CannotJudge::without("wood"))?;
            Ok(wants_washcoat(wood, Method::Wiped)
                .map(|wants| if wants { Way::WashcoatFirst } else { Way::Stain }))
        }
    }
}

/// Whether a wood wants a washcoat before colour is put on that way. Sources as for [`colour_on`].
#[must_use]
pub fn wants_washcoat(wood: &Wood, method: Method) -> Ruling<bool> {
    match method {
        Method::Sprayed => Ruling::by("staining.sprayed-needs-no-sealer", false),
        Method::Wiped if blotches(wood) => Ruling::by("staining.blotching-wants-washcoat", true),
        Method::Wiped => Ruling::by("staining.even-wood-takes-stain", false),
    }
}

/// Whether a route gives sound, even colour on a wood.
///
/// Sources as for [`colour_on`]; toner is colour in a film coat (a trade magazine, December 2000).
#[must_use]
pub fn route_holds(route: Route, wood: &Wood) -> Ruling<bool> {
    let wiped_bare = || wants_washcoat(wood, Method::Wiped).map(|wants| !wants);
    match route {
        Route::SprayDyeBare => Ruling::by("staining.sprayed-needs-no-sealer", true),
        Route::WipeDyeBare | Route::WipeOilBare => wiped_bare(),
        Route::WipeDyeWashcoat => Ruling::by("staining.washcoat-lets-stain-in", true),
        Route::WipeDyeSealed => Ruling::by("staining.full-seal-shuts-wood", false),
        Route::ToneOverSeal => Ruling::by("staining.tone-lies-in-film", true),
    }
}

/// What a look at the colour beside a sample under clear tells.
///
/// A stain dries paler than it looks wet, and clear brings the depth back: only colour under clear is compared. Film can
/// make colour deeper, not paler. Source: common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when the comparison decides and is not told.
pub fn judge_colour(state: ColourState, seen: Option<Seen>) -> Judged<ColourCall> {
    match state {
        ColourState::Wet => {
            Ok(Ruling::by("staining.dries-paler", ColourCall::DryFirst).and("staining.judged-under-clear"))
        }
        ColourState::Dry => Ok(Ruling::by("staining.judged-under-clear", ColourCall::TrialClear)),
        ColourState::UnderClear => Ok(match seen.ok_or_else(|| CannotJudge::without("seen"))? {
            Seen::Same => Ruling::by("staining.judged-under-clear", ColourCall::GoOn),
            Seen::Lighter => Ruling::by("staining.darker-not-paler", ColourCall::Deepen),
            Seen::Darker => Ruling::by("staining.darker-not-paler", ColourCall::Hold),
        }),
    }
}

/// The grit that takes fuzz off: bare wood that was damped gets the sheet's last grit again; over dye the first seal
/// coat is scuffed, never the dye.
///
/// Sources: water swells the cut fibres (trade articles); damp, dry and sand again with the same paper (a published
/// schedule). Sanding only what is sealed is from a trade text: sanding through stain is hard to patch.
#[must_use]
pub fn fuzz_grit(sheet: &Sheet, fuzz: Fuzz) -> Ruling<Measure> {
    let (rule, setting) = match fuzz {
        Fuzz::DampedBare => ("staining.damp-dry-last-grit", Setting::LastGrit),
        Fuzz::Sealed => ("staining.scuff-seal-not-dye", Setting::ScuffGrit),
    };
    let grit = Measure::new(sheet.get(setting), Unit::Grit, 0);
    Ruling::by(rule, grit).step(setting_label(fuzz), "", grit)
}

const fn setting_label(fuzz: Fuzz) -> &'static str {
    match fuzz {
        Fuzz::DampedBare => "last-grit",
        Fuzz::Sealed => "scuff-grit",
    }
}
