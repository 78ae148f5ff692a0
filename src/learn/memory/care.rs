//! How well a card family must be kept in mind, and for how long at most nobody asks about it.

use crate::content::{Content, FamilyInfo, Profile};
use crate::quantity::Fraction;
use crate::rules::term::Severity;

/// How much hangs on a card family.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Care {
    /// A mistake costs work or time.
    Ordinary,
    /// A mistake can hurt people.
    Safety,
}

impl Care {
    /// The care that a family needs: safety where its severity is, or where a competency it speaks for is.
    #[must_use]
    pub fn of(content: &Content, family: &FamilyInfo) -> Self {
        let safety = |slug: &String| {
            content.competencies.iter().any(|one| one.slug == *slug && one.profile == Profile::Safety)
        };
        if family.severity == Severity::Safety || family.competencies.iter().any(safety) {
            Self::Safety
        } else {
            Self::Ordinary
        }
    }

    /// Chance of recall at which it is asked again. The usual one is that which defines stability; the higher one for
    /// safety is our choice, common practice, no source.
    #[must_use]
    pub fn target(self) -> Fraction {
        Fraction::saturating(match self {
            Self::Ordinary => 0.90,
            Self::Safety => 0.95,
        })
    }

    /// Days after which it is asked again however well it is held, during an apprenticeship: our choice, common practice,
    /// no source.
    #[must_use]
    pub const fn cap_days(self) -> u32 {
        match self {
            Self::Ordinary => 60,
            Self::Safety => 30,
        }
    }
}
