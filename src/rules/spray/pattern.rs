//! A test pattern that is heavier on one side: where the gun is put right.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// A standing test pattern on paper.
    TestPattern {
        /// The same on both sides.
        Even = "pattern-even",
        /// Heavier on one side.
        OneSided = "pattern-one-sided",
    }
    /// What the heavy side did when the air cap was turned by half.
    CapTurned {
        /// It went over to the other side.
        Followed = "heavy-side-followed",
        /// It stayed where it was.
        Stayed = "heavy-side-stayed",
        /// The cap was not turned.
        NotTurned = "cap-not-turned",
    }
    /// What is put right.
    GunFix {
        /// The air cap is cleaned.
        CleanCap = "clean-air-cap",
        /// The fluid tip is cleaned.
        CleanTip = "clean-fluid-tip",
        /// The gun is held square: nothing is wrong with it.
        HoldSquare = "hold-it-square",
    }
}

/// What is put right where stripes lie heavier on one side: a test pattern that is even clears the gun; one that is not
/// goes with the cap when the cap is to blame, and stays when the tip is.
///
/// Source: common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when the pattern, or what the heavy side did, is not known and decides.
pub fn heavy_side(pattern: Option<TestPattern>, cap: Option<CapTurned>) -> Judged<GunFix> {
    let pattern = pattern.ok_or_else(|| CannotJudge::without("test_pattern"))?;
    if pattern == TestPattern::Even {
        return Ok(Ruling::by("spray.even-pattern-clears-the-gun", GunFix::HoldSquare));
    }
    match cap {
        Some(CapTurned::Followed) => Ok(Ruling::by("spray.heavy-side-goes-with-the-cap", GunFix::CleanCap)),
        Some(CapTurned::Stayed) => Ok(Ruling::by("spray.heavy-side-stays-with-the-tip", GunFix::CleanTip)),
        Some(CapTurned::NotTurned) | None => Err(CannotJudge::without("cap_turned")),
    }
}
