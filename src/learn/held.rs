//! How well a stage is held: how many of its card families the latest answer held.
//!
//! This counts the latest answer only, also one whose card was found wrong since: it is no evidence, and whoever met the card
//! has met it. It knows nothing of forgetting: `memory` does, which says what comes next and not how much is held.

use super::Latest;
use crate::content::Content;
use crate::rules::term::Stage;

/// How much of a stage is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Held {
    /// Families whose latest answer holds.
    pub held: u32,
    /// Families of the stage that were answered at least once.
    pub begun: u32,
    /// Families of the stage.
    pub of: u32,
}

impl Held {
    /// Share of the stage that is held, 0 to 1; 0 for a stage without cards.
    #[must_use]
    pub fn share(self) -> f32 {
        let exact = |count: u32| f32::from(u16::try_from(count).unwrap_or(u16::MAX));
        if self.of == 0 { 0.0 } else { exact(self.held) / exact(self.of) }
    }
}

/// How much of a stage a person holds, from that person's latest answers.
#[must_use]
pub fn held(content: &Content, latest: &Latest, stage: Stage) -> Held {
    let mut sum = Held::default();
    for family in content.families.iter().filter(|family| family.stage == stage) {
        sum.of += 1;
        if let Some(latest) = latest.of(&family.id) {
            sum.begun += 1;
            sum.held += u32::from(latest.holds());
        }
    }
    sum
}
