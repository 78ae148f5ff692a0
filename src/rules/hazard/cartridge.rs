//! Cartridges and signs: when one is changed, and what a sign in the booth calls for.

use crate::quantity::{DUST, Hours, Measure, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What happens with the cartridges.
    CartridgeMove {
        /// They serve for this spell.
        Keep = "cartridges-serve",
        /// Both are changed before this spell.
        Change = "change-before-spell",
        /// Out of the booth with the mask on, then both are changed and it is reported.
        Leave = "leave-then-change",
    }
    /// Whether solvent is smelt through the mask.
    Smell {
        /// Nothing is smelt, which proves nothing.
        None = "no-smell",
        /// It is smelt.
        Solvent = "solvent-smelt",
    }
    /// A sign noticed while spraying.
    Sign {
        /// Solvent is smelt or tasted.
        Smell = "sign-smell",
        /// Dizzy, headache.
        Dizzy = "sign-dizzy",
        /// The edge lifts when the head turns.
        Lifts = "sign-edge-lifts",
        /// Breathing in gets hard.
        Hard = "sign-hard-to-breathe",
        /// The mask presses on the nose; nothing else.
        Presses = "sign-presses",
        /// Overspray settles on the visor.
        Visor = "sign-visor-misted",
    }
    /// What a sign calls for.
    SignMove {
        /// Out at once with the mask on, report it.
        Leave = "leave-mask-on",
        /// Stop at the end of the pass, out of the booth, new pre-filters.
        Prefilter = "new-prefilters-outside",
        /// It is put right outside at the end of the spell.
        AfterSpell = "after-the-spell",
    }
}

/// What happens with cartridges: they are changed by a plan made from data, whatever is smelt or not (29 CFR
/// 1910.134(d)(3)(iii)(B)). A spell that would go past the plan is not begun on them.
///
/// # Errors
/// [`CannotJudge`] when the plan, the hours used or the length of the spell is not known, and nothing is smelt.
pub fn cartridge_move(
    plan: Option<Hours>,
    used: Option<Hours>,
    spell: Option<Hours>,
    smell: Smell,
) -> Judged<CartridgeMove> {
    if smell == Smell::Solvent {
        return Ok(Ruling::by("hazard.smell-means-leave", CartridgeMove::Leave).and("hazard.cartridge-plan"));
    }
    let plan = plan.ok_or_else(|| CannotJudge::without("plan_h"))?.get();
    let used = used.ok_or_else(|| CannotJudge::without("used_h"))?.get();
    // Used up already: the spell need not be known.
    let spell = match spell {
        Some(spell) => spell.get(),
        None if used > plan => 0.0,
        None => return Err(CannotJudge::without("spell_h")),
    };
    let answer = if used + spell > plan + DUST { CartridgeMove::Change } else { CartridgeMove::Keep };
    let hours = |value| Measure::new(value, Unit::Hour, 1);
    Ok(Ruling::by("hazard.cartridge-plan", answer)
        .step("plan-hours", "", hours(plan))
        .step("hours-after-spell", "used + spell", hours(used + spell))
        .given(&[("used", hours(used)), ("spell", hours(spell))]))
}

/// What a sign calls for. Smell, dizziness and a leak mean out at once with the mask on; a filter that loads up is
/// changed outside; what only bothers waits.
#[must_use]
pub fn sign_move(sign: Sign) -> Ruling<SignMove> {
    match sign {
        Sign::Smell | Sign::Dizzy | Sign::Lifts => Ruling::by("hazard.smell-means-leave", SignMove::Leave),
        Sign::Hard => Ruling::by("hazard.prefilter-loads-up", SignMove::Prefilter),
        Sign::Presses | Sign::Visor => Ruling::by("hazard.prefilter-loads-up", SignMove::AfterSpell),
    }
}
