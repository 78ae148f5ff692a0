//! What has to be there before a tight-fitting respirator is worn, and what a seal check calls for.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is still wanted before a mask is worn.
    MaskWant {
        /// Medical clearance of this person.
        Medical = "want-medical",
        /// A fit test of this mask on this face within the year.
        FitTest = "want-fit-test",
        /// A shave where the mask seals.
        Shave = "want-shave",
        /// Training, this year.
        Training = "want-training",
        /// A cartridge within its change plan.
        Cartridge = "want-cartridge",
    }
    /// The skin where the mask seals.
    Shaven {
        /// Clean-shaven.
        Clean = "clean-shaven",
        /// Stubble or a beard.
        Stubble = "stubble",
    }
    /// The mask that the fit test was made with.
    TestedMask {
        /// This one: same make, model and size.
        This = "tested-this-mask",
        /// Another one.
        Another = "tested-another-mask",
    }
    /// How a seal check ended.
    SealCheck {
        /// It held.
        Holds = "check-holds",
        /// Air came past the edge.
        Leaks = "check-leaks",
        /// It was not made.
        Skipped = "check-skipped",
    }
    /// What a seal check calls for.
    SealMove {
        /// The mask may be worn.
        Wear = "mask-goes-on",
        /// The check that is wanting is made.
        Check = "make-both-checks",
        /// Mask set anew and both checks made again.
        Reseat = "reseat-and-check",
        /// Another mask from the programme; the task is refused until then.
        Refuse = "refuse-the-task",
    }
}

/// Months that a fit test holds: it is made every year (29 CFR 1910.134(f)(2)).
pub const FIT_TEST_MONTHS: f64 = 12.0;

/// What is known of a person and a mask.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct AtMask {
    /// Whether a clearance is on file.
    pub medical: Option<bool>,
    /// Months since the last fit test.
    pub fit_months: Option<f64>,
    /// The mask it was made with.
    pub tested: Option<TestedMask>,
    /// The skin where it seals.
    pub shaven: Option<Shaven>,
    /// Whether the yearly training was had.
    pub trained: Option<bool>,
    /// Whether the cartridge is within its plan.
    pub cartridge_in_plan: Option<bool>,
}

/// Whether a thing is still wanted before this mask is worn (29 CFR 1910.134(c) to (k)). A seal check is no fit test, and
/// a fit test of another mask is none.
///
/// # Errors
/// [`CannotJudge`] when the fact that decides is not known.
pub fn mask_want(want: MaskWant, at: AtMask) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let wanting = match want {
        MaskWant::Medical => !at.medical.ok_or_else(known("medical"))?,
        MaskWant::Shave => at.shaven.ok_or_else(known("shaven"))? == Shaven::Stubble,
        MaskWant::Training => !at.trained.ok_or_else(known("trained"))?,
        MaskWant::Cartridge => !at.cartridge_in_plan.ok_or_else(known("cartridge"))?,
        MaskWant::FitTest => {
            let another = at.tested.ok_or_else(known("tested_mask"))? == TestedMask::Another;
            another || at.fit_months.ok_or_else(known("fit_months"))? > FIT_TEST_MONTHS
        }
    };
    let rule = match want {
        MaskWant::FitTest => "hazard.fit-test-yearly",
        MaskWant::Shave => "hazard.no-beard-under-seal",
        _ => "hazard.respirator-programme",
    };
    Ok(Ruling::by(rule, wanting))
}

/// What a seal check calls for. Both checks are made each time the mask goes on; one that leaks means setting the mask
/// anew, and one that leaks again means another mask. Hair under the seal ends it before any check.
///
/// # Errors
/// [`CannotJudge`] when it is not known how a check ended, and that decides.
pub fn seal_move(
    shaven: Shaven,
    positive: Option<SealCheck>,
    negative: Option<SealCheck>,
    leaked_before: bool,
) -> Judged<SealMove> {
    let ruled =
        |answer| Ok(Ruling::by("hazard.seal-check-each-time", answer).and("hazard.no-beard-under-seal"));
    if shaven == Shaven::Stubble {
        return ruled(SealMove::Refuse);
    }
    let known = [positive, negative];
    if known.contains(&Some(SealCheck::Leaks)) {
        return ruled(if leaked_before { SealMove::Refuse } else { SealMove::Reseat });
    }
    let positive = positive.ok_or_else(|| CannotJudge::without("positive_check"))?;
    let negative = negative.ok_or_else(|| CannotJudge::without("negative_check"))?;
    if positive == SealCheck::Skipped || negative == SealCheck::Skipped {
        return ruled(SealMove::Check);
    }
    ruled(SealMove::Wear)
}
