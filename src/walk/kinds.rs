//! Kinds of mistakes, by which their rules are looked up where somebody else's walk is inspected.

use super::lapse::Lapse;
use crate::process::technique::Fumble;
use crate::rules::sequence::error::{Mend, OrderError};
use crate::rules::sorted::sorted;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;
use crate::terms;

terms! {
    /// A kind of mistake. Text: `app.walk.mistake.<slug>`.
    MistakeKind {
        /// Begun before a wait was over, or outside what the air allows.
        TooEarly = "too-early",
        /// In the wrong order.
        Order = "wrong-order",
        /// Something was left out.
        LeftOut = "left-out",
        /// Something was done that should not have been.
        TooMuch = "too-much",
        /// The right thing done in a wrong way.
        Way = "wrong-way",
        /// A pass of the gun.
        Gun = "at-the-gun",
        /// A duty of the room was left undone.
        Duty = "duty-left",
    }
}

impl MistakeKind {
    /// Its rules, each once: all there are, whether they were broken or not.
    #[must_use]
    pub fn rules(self) -> Vec<RuleId> {
        let order = |mend: Mend| {
            let those = OrderError::ALL.iter().filter(move |error| error.known().mend == mend);
            those.map(|error| RuleId(error.slug())).collect()
        };
        let mut rules: Vec<RuleId> = match self {
            Self::TooEarly => order(Mend::Wait),
            Self::Order => order(Mend::Reorder),
            Self::LeftOut => order(Mend::AddStep),
            Self::TooMuch => order(Mend::LeaveOut),
            Self::Way => order(Mend::Redo),
            Self::Gun => Fumble::ALL.iter().map(|fumble| fumble.rule()).collect(),
            Self::Duty => Lapse::ALL.iter().map(|lapse| lapse.rule()).collect(),
        };
        rules = sorted(rules, Ord::cmp);
        rules.dedup();
        rules
    }
}
