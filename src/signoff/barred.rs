//! Why nothing is signed, as a closed list.

use super::Refusal;
use crate::rules::term::Term;
use crate::terms;
use std::fmt;

terms! {
    /// Why nothing is signed. Text: `sign.<slug>`.
    Barred {
        /// The key stands on no entry of the trust list for this day.
        NotTrusted = "not-trusted",
        /// It would be their own work.
        OwnWork = "own-work",
        /// A critical mistake has not been lifted. No reason overrules this.
        CriticalOpen = "critical-open",
        /// A safety competency, and the knowledge evidence is not sufficient. No reason overrules this.
        SafetyNotShown = "safety-not-shown",
        /// The knowledge evidence is not sufficient, and no reason is given for signing all the same.
        ReasonMissing = "reason-missing",
        /// A criterion was not met.
        CriterionNotMet = "criterion-not-met",
        /// Nothing was observed: cards alone sign nobody off.
        NothingObserved = "nothing-observed",
        /// A text or a date that cannot be signed; the refusal says which.
        Unfit = "unfit",
        /// Another key than the one the draft was made for.
        OtherKey = "other-key",
    }
}

/// Everything that bars signing, and for [`Barred::Unfit`] what is unfit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotSigned {
    /// Why, in the order of the list.
    pub barred: Vec<Barred>,
    /// What is unfit.
    pub refusal: Option<Refusal>,
}

impl From<Refusal> for NotSigned {
    fn from(refusal: Refusal) -> Self {
        Self { barred: vec![Barred::Unfit], refusal: Some(refusal) }
    }
}

impl From<Barred> for NotSigned {
    fn from(barred: Barred) -> Self {
        Self { barred: vec![barred], refusal: None }
    }
}

impl fmt::Display for NotSigned {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let slugs: Vec<&str> = self.barred.iter().map(|one| one.slug()).collect();
        f.write_str(&slugs.join(", "))?;
        self.refusal.as_ref().map_or(Ok(()), |refusal| write!(f, ": {refusal}"))
    }
}

impl std::error::Error for NotSigned {}
