//! Which cautions stand below a card and on a band of the step board.

use super::{Caution, CautionStage, Content, FamilyInfo};
use crate::rules::term::Stage;

/// The caution that closes every screen: if unsure, stop and ask; others overrule this program.
pub const CLOSING_CAUTION: &str = "c30";

/// The stages of `content/cautions.toml` that a band stands for.
const fn stages(band: Stage) -> &'static [CautionStage] {
    match band {
        Stage::Room => &[CautionStage::Mix, CautionStage::Clean, CautionStage::Waste],
        Stage::Sand => &[CautionStage::Prep],
        Stage::Fill => &[CautionStage::Prep, CautionStage::Waste],
        Stage::Stain => &[CautionStage::Stain],
        Stage::Seal | Stage::Colour | Stage::Shade | Stage::Clear => &[CautionStage::Spray],
        Stage::Scrape => &[CautionStage::Inspect],
        Stage::Cure => &[CautionStage::Cure],
        Stage::Buff => &[CautionStage::Rub, CautionStage::Buff],
    }
}

impl Caution {
    /// Whether it is written for one of those stages.
    #[must_use]
    pub fn is_of(&self, stages: &[CautionStage]) -> bool {
        self.stages.iter().any(|stage| stages.contains(stage))
    }

    /// Whether every screen shows it.
    #[must_use]
    pub fn is_everywhere(&self) -> bool {
        self.is_of(&[CautionStage::All])
    }
}

impl Content {
    /// The cautions of caution stages, then those shown everywhere; the closing one is left out.
    #[must_use]
    pub fn cautions_for(&self, wanted: &[CautionStage]) -> Vec<&Caution> {
        let open = || self.cautions.iter().filter(|caution| caution.id != CLOSING_CAUTION);
        let own = |caution: &&Caution| caution.is_of(wanted);
        let everywhere = |caution: &&Caution| caution.is_everywhere();
        open().filter(own).chain(open().filter(|caution| everywhere(caution) && !own(caution))).collect()
    }

    /// The cautions that stand below cards while they are asked: none that would answer one of them and, in a check, where
    /// what is read below one card may serve for the next, none that would answer any.
    #[must_use]
    pub fn cautions_asked(&self, asked: &[&FamilyInfo], in_check: bool) -> Vec<&Caution> {
        let wanted: Vec<CautionStage> = asked.iter().flat_map(|family| &family.cautions).copied().collect();
        let tells = |caution: &Caution| match in_check {
            true => !caution.gives_away.is_empty(),
            false => asked.iter().any(|family| caution.gives_away.contains(&family.id)),
        };
        self.cautions_for(&wanted).into_iter().filter(|caution| !tells(caution)).collect()
    }

    /// The cautions of a band, then those shown everywhere; the closing one is left out.
    #[must_use]
    pub fn cautions_of_band(&self, band: Stage) -> Vec<&Caution> {
        self.cautions_for(stages(band))
    }
}
