//! What whoever builds a set should look at again. Nothing here keeps a set from being handed out.

use super::{Set, SetCard, cards, counts::bears_on, deal::barren, is_all_sprayed};
use crate::card::deal::OPTIONS_LEAST;
use crate::content::{FamilyInfo, World};
use crate::learn::check::COMPETENCIES_MOST;
use crate::learn::minutes;
use crate::rules::term::{Severity, Stage};
use crate::terms;
use std::collections::BTreeSet;

/// A set should take no longer, minutes: attention lasts ten to fifteen. Common practice, no source.
pub const MINUTES_MOST: u32 = 15;
/// A card of the shop's own takes so long, seconds: our estimate, common practice, no source.
const OWN_SECONDS: u32 = 30;

terms! {
    /// What should be looked at again. Text: `app.sets.warning.<slug>`.
    Warning {
        /// Cards of the shop's own with so few options that luck does much.
        FewOptions = "few-options",
        /// All cards are of one stage: nothing is told apart.
        OneStage = "one-stage",
        /// Families about safety, of its stages or drawn from, that no card asks.
        SafetyMissing = "safety-missing",
        /// It takes longer than a quarter of an hour.
        Long = "long",
        /// Families that give no card on that sheet.
        Barren = "barren",
        /// Fewer families than cards: families come again.
        FewFamilies = "few-families",
        /// Fewer cards could be dealt than it asks for.
        FewCards = "few-cards",
        /// Each of its cards is sprayed at a tablet: its worksheets are empty.
        AllSprayed = "all-sprayed",
        /// More competencies than one check takes: it counts for none.
        TooMany = "too-many",
    }
}

/// A warning and what it is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Warned {
    /// The warning.
    pub warning: Warning,
    /// How many.
    pub count: u32,
    /// Card families, where it is about some.
    pub families: Vec<String>,
}

/// Minutes that the cards of a set take with their verdicts, rounded up.
#[must_use]
pub fn minutes_of(dealt: &[SetCard<'_>], world: &World<'_>) -> u32 {
    minutes(dealt.iter().map(|card| match card {
        SetCard::Computed(card) => world.content.family(&card.family).map_or(OWN_SECONDS, |one| one.seconds),
        SetCard::Own(..) => OWN_SECONDS,
    }))
}

/// What should be looked at again in a set, as it is dealt to one person on its sheet.
#[must_use]
pub fn warnings(set: &Set, world: &World<'_>) -> Vec<Warned> {
    let dealt = cards(set, "", world, "", "");
    let asked: Vec<&FamilyInfo> = dealt
        .iter()
        .filter_map(|card| {
            if let SetCard::Computed(card) = card { world.content.family(&card.family) } else { None }
        })
        .collect();
    let ids: BTreeSet<&str> = asked.iter().map(|family| family.id.as_str()).collect();
    let stages: BTreeSet<Stage> = asked.iter().map(|family| family.stage).collect();
    let barren = barren(set, world);
    let drawn: Vec<&str> = set.task.families_of(world.content).iter().map(|one| one.id.as_str()).collect();
    let unasked = |family: &&FamilyInfo| {
        let wanted = set.task.stages.contains(&family.stage) || drawn.contains(&family.id.as_str());
        wanted && family.severity == Severity::Safety && !ids.contains(family.id.as_str())
    };
    let few_options = set.own_cards.iter().filter(|card| card.options.len() < OPTIONS_LEAST).count();
    let minutes = minutes_of(&dealt, world);
    let competencies = bears_on(set, world.content).len();
    let families = drawn.len().saturating_sub(barren.len());
    let mut found = Vec::new();
    let mut warn = |is_so: bool, warning, count, families: Vec<String>| {
        if is_so {
            found.push(Warned { warning, count, families });
        }
    };
    let names = |of: Vec<&FamilyInfo>| of.into_iter().map(|family| family.id.clone()).collect::<Vec<_>>();
    let missing = names(world.content.families.iter().filter(unasked).collect());
    warn(minutes > MINUTES_MOST, Warning::Long, minutes, Vec::new());
    warn(!missing.is_empty(), Warning::SafetyMissing, count(missing.len()), missing);
    warn(stages.len() == 1 && asked.len() > 1, Warning::OneStage, 1, Vec::new());
    warn(asked.len() > families && families > 0, Warning::FewFamilies, count(families), Vec::new());
    warn(!barren.is_empty(), Warning::Barren, count(barren.len()), names(barren));
    warn(count(asked.len()) < set.task.count, Warning::FewCards, count(asked.len()), Vec::new());
    warn(is_all_sprayed(set, world.content), Warning::AllSprayed, 0, Vec::new());
    warn(competencies > COMPETENCIES_MOST, Warning::TooMany, count(competencies), Vec::new());
    warn(few_options > 0, Warning::FewOptions, count(few_options), Vec::new());
    found
}

fn count(of: usize) -> u32 {
    u32::try_from(of).unwrap_or(u32::MAX)
}
