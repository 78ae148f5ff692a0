//! The buffing wheel: what has to be put right before the work meets it.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What to put right at a buffing wheel.
    WheelFix {
        /// Move below the centre, to the half that runs away.
        LowerHalf = "go-lower",
        /// Turn the work so that its edge trails.
        TrailEdge = "trail-edge",
        /// Take off or tie back what is loose.
        TieBack = "tie-back",
        /// Stop and let the film cool.
        LetCool = "let-cool",
        /// Check wheel, nut and rated speed.
        CheckNut = "check-nut",
    }
    /// How the wheel was mounted.
    WheelNut {
        /// Nut and rated speed checked.
        Checked = "nut-checked",
        /// Changed, not checked.
        Unchecked = "nut-unchecked",
    }
    /// Where the work meets the wheel.
    WheelHalf {
        /// Above the centre.
        Upper = "above-centre",
        /// Below the centre.
        Lower = "below-centre",
    }
    /// How the work's edge meets the wheel.
    WheelEdge {
        /// The wheel runs onto the edge.
        Leading = "edge-leading",
        /// The wheel runs off the edge.
        Trailing = "edge-trailing",
    }
    /// What the buffer wears.
    Worn {
        /// Loose sleeve, lanyard or long hair.
        Loose = "something-loose",
        /// Nothing loose.
        Close = "nothing-loose",
    }
    /// How the film feels.
    FilmFeel {
        /// Cool.
        Cool = "film-cool",
        /// Warm.
        Warm = "film-warm",
    }
}

/// What is known of the work at a buffing wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct AtWheel {
    /// Where the work meets the wheel.
    pub half: Option<WheelHalf>,
    /// How its edge meets the wheel.
    pub edge: Option<WheelEdge>,
    /// What the buffer wears.
    pub worn: Option<Worn>,
    /// How the film feels.
    pub film: Option<FilmFeel>,
    /// How the wheel was mounted.
    pub nut: Option<WheelNut>,
}

/// Whether a thing has to be put right at the wheel: work below centre with the edge trailing, nothing loose, the wheel
/// checked (29 CFR 1910.94(b), 1910.212), and never on warm film: fresh nitrocellulose must not be buffed hot.
///
/// # Errors
/// [`CannotJudge`] when the fact that decides is not known.
pub fn wheel_fix(fix: WheelFix, at: AtWheel) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let (rule, wrong) = match fix {
        WheelFix::LowerHalf => {
            ("hazard.wheel-grabs", at.half.ok_or_else(known("wheel_half"))? == WheelHalf::Upper)
        }
        WheelFix::TrailEdge => {
            ("hazard.wheel-grabs", at.edge.ok_or_else(known("wheel_edge"))? == WheelEdge::Leading)
        }
        WheelFix::TieBack => ("hazard.nothing-loose", at.worn.ok_or_else(known("worn"))? == Worn::Loose),
        WheelFix::LetCool => {
            ("hazard.no-hot-buffing", at.film.ok_or_else(known("film_feel"))? == FilmFeel::Warm)
        }
        WheelFix::CheckNut => {
            ("hazard.wheel-checked", at.nut.ok_or_else(known("wheel_nut"))? == WheelNut::Unchecked)
        }
    };
    Ok(Ruling::by(rule, wrong))
}
