//! Why nothing is signed, as a closed list.

use super::verdict::too_long;
use super::{Refusal, Request, Why};
use crate::content::{Competency, Profile};
use crate::learn::mastery::Call;
use crate::rules::term::Term;
use crate::terms;
use std::collections::BTreeSet;
use std::fmt;

terms! {
    /// Why nothing is signed. Text: `sign.<slug>`.
    Barred {
        /// The key stands on no entry of the trust list for this day.
        NotTrusted = "not-trusted",
        /// It would be their own work.
        OwnWork = "own-work",
        /// A competency that is signed for before it is not, or no longer.
        NeedsMissing = "needs-missing",
        /// The knowledge evidence that comes before it is not sufficient.
        NeedsKnowledge = "needs-knowledge",
        /// A critical mistake has not been lifted. No reason overrules this.
        CriticalOpen = "critical-open",
        /// A safety competency, and the knowledge evidence is not sufficient. No reason overrules this.
        SafetyNotShown = "safety-not-shown",
        /// The knowledge evidence is not sufficient, and no reason is given for signing all the same.
        ReasonMissing = "reason-missing",
        /// A criterion of the competency was not met or not judged, or one was judged twice or is none of its own.
        CriterionNotMet = "criterion-not-met",
        /// Nothing was observed: cards alone sign nobody off.
        NothingObserved = "nothing-observed",
        /// Fewer demonstrations than the competency asks for, on fewer days, or one on a day to come.
        TooFewShown = "too-few-shown",
        /// Assessors disagree on a critical criterion.
        Unsettled = "unsettled",
        /// What the employer must have on file is missing or not in force on this day.
        NotOnFile = "not-on-file",
        /// It would run longer than the competency may go without being shown anew.
        ValidTooLong = "valid-too-long",
        /// A text or a date that cannot be signed; the refusal says which.
        Unfit = "unfit",
        /// Another key than the one the draft was made for.
        OtherKey = "other-key",
    }
}

/// Days between the date in a shop and that of universal time: zones reach 12 hours behind and 14 ahead, and so at most one.
const ZONE_DAYS: u32 = 1;

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

/// What bars a request whoever makes it.
pub(super) fn bars(request: &Request<'_>) -> Vec<Barred> {
    let competency = request.competency;
    let sufficient = request.call == Call::Sufficient;
    let safety = competency.profile == Profile::Safety;
    let all = [
        (!competency.needs.iter().all(|slug| request.held.contains(slug)), Barred::NeedsMissing),
        (!competency.needs_knowledge.iter().all(|slug| knows(request, slug)), Barred::NeedsKnowledge),
        (request.open_critical > 0, Barred::CriticalOpen),
        (!sufficient && safety, Barred::SafetyNotShown),
        (!sufficient && !safety && request.reason.is_none(), Barred::ReasonMissing),
        (!all_met(request), Barred::CriterionNotMet),
        (request.observed.is_empty(), Barred::NothingObserved),
        (!request.observed.is_empty() && !shown_enough(request), Barred::TooFewShown),
        (request.unsettled > 0, Barred::Unsettled),
        (!all_on_file(request), Barred::NotOnFile),
        (too_long(&request.at, &request.until, competency), Barred::ValidTooLong),
    ];
    all.into_iter().filter(|(stands, _)| *stands).map(|(_, barred)| barred).collect()
}

/// Whether the day told for the shop can be that of the moment told.
pub(super) fn one_day(request: &Request<'_>) -> Result<(), Refusal> {
    let apart = request.at.date().map(|date| date.number().abs_diff(request.today.number()));
    let fits = apart.is_some_and(|days| days <= ZONE_DAYS);
    if fits { Ok(()) } else { Err(Why::DatesDisordered.at(request.today.to_string())) }
}

/// Whether the knowledge for a competency is shown: by its evidence, or since it is signed for.
fn knows(request: &Request<'_>, slug: &String) -> bool {
    request.known.contains(slug) || request.held.contains(slug)
}

/// Exactly the criteria of the competency, each once and each met.
fn all_met(request: &Request<'_>) -> bool {
    let Competency { criteria: asked, .. } = request.competency;
    let judged: BTreeSet<&str> =
        request.criteria.iter().filter(|one| one.met).map(|one| one.id.as_str()).collect();
    !asked.is_empty()
        && request.criteria.len() == asked.len()
        && asked.iter().all(|one| judged.contains(one.id.as_str()))
}

fn shown_enough(request: &Request<'_>) -> bool {
    let days: BTreeSet<_> = request.observed.iter().map(|one| one.on).collect();
    let least = |found: usize, asked: u32| u32::try_from(found).is_ok_and(|found| found >= asked);
    days.last().is_some_and(|last| *last <= request.today)
        && least(request.observed.len(), request.competency.demonstrations)
        && least(days.len(), request.competency.days)
}

fn all_on_file(request: &Request<'_>) -> bool {
    let filed = |what| request.on_file.iter().any(|one| one.what == what && one.in_force(request.today));
    request.competency.on_file.iter().all(|what| filed(*what))
}
