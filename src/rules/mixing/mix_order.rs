//! From can to gun: the order of stirring, hardener, thinner, cup, strainer and rest.

use super::PotKind;
use crate::rules::term::Term;
use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Steps from can to gun.
    MixStep {
        /// Read what the data sheet allows.
        ReadSheet = "read-sheet",
        /// Bond and ground both containers.
        Bond = "bond",
        /// Stir up what has settled.
        StirBase = "stir-base",
        /// Add the measured hardener: a two-part mix only.
        AddHardener = "add-hardener-measured",
        /// Add the measured thinner.
        AddThinner = "add-thinner-measured",
        /// Stir the mix.
        StirMix = "stir-mix",
        /// Time it through the cup.
        CupTest = "cup-test",
        /// Strain it.
        Strain = "strain",
        /// Let bubbles rise.
        Rest = "rest",
        /// Spray a test card.
        TestCard = "test-card",
    }
}

/// Pairs of steps whose first must come before the second: containers are bonded before anything is poured, the
/// sheet read before anything goes in, hardener goes into the stirred base and before the thinner, straining follows thinning and stirring, and bubbles rise before the gun.
const BEFORE: [(MixStep, MixStep); 25] = [
    (MixStep::ReadSheet, MixStep::AddHardener),
    (MixStep::Bond, MixStep::AddHardener),
    (MixStep::StirBase, MixStep::AddHardener),
    (MixStep::AddHardener, MixStep::AddThinner),
    (MixStep::AddHardener, MixStep::StirMix),
    (MixStep::AddHardener, MixStep::CupTest),
    (MixStep::AddHardener, MixStep::Strain),
    (MixStep::AddHardener, MixStep::Rest),
    (MixStep::AddHardener, MixStep::TestCard),
    (MixStep::ReadSheet, MixStep::AddThinner),
    (MixStep::Bond, MixStep::AddThinner),
    (MixStep::StirBase, MixStep::AddThinner),
    (MixStep::StirBase, MixStep::Strain),
    (MixStep::AddThinner, MixStep::StirMix),
    (MixStep::AddThinner, MixStep::CupTest),
    (MixStep::AddThinner, MixStep::Strain),
    (MixStep::AddThinner, MixStep::Rest),
    (MixStep::AddThinner, MixStep::TestCard),
    (MixStep::StirMix, MixStep::CupTest),
    (MixStep::StirMix, MixStep::Strain),
    (MixStep::StirMix, MixStep::Rest),
    (MixStep::CupTest, MixStep::Strain),
    (MixStep::Strain, MixStep::Rest),
    (MixStep::Strain, MixStep::TestCard),
    (MixStep::Rest, MixStep::TestCard),
];

/// The steps from can to gun for that kind of mix: hardener goes into a two-part one only.
#[must_use]
pub fn mix_steps(kind: PotKind) -> Vec<MixStep> {
    let hardens = kind == PotKind::TwoPart;
    MixStep::ALL.iter().copied().filter(|step| hardens || *step != MixStep::AddHardener).collect()
}

/// Whether steps stand in an order that gives a clean mix.
#[must_use]
pub fn mix_order(steps: &[MixStep]) -> Ruling<bool> {
    let place = |step| steps.iter().position(|one| *one == step);
    let kept = |(first, then): &(MixStep, MixStep)| match (place(*first), place(*then)) {
        (Some(first), Some(then)) => first < then,
        _ => true,
    };
    let ruling = Ruling::by("mixing.strain-last", BEFORE.iter().all(kept)).and("hazard.bond-before-pour");
    if steps.contains(&MixStep::AddHardener) { ruling.and("mixing.hardener-before-thinner") } else { ruling }
}
