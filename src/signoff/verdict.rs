//! Whether a signed sign-off is to be believed, and why not.

use super::{Credential, Hash, Knowledge, Refusal, TrustList, When, Why, check, hash, read_canonical};
use crate::content::{Competency, Profile};
use serde_json::{Map, Value};

/// What came out.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// What the file says, where it could be read and its proof holds.
    pub credential: Option<Credential>,
    /// The hash of the document without its proof, as it is printed on paper; where the proof holds.
    pub hash: Option<Hash>,
    /// Why it is not accepted; none where it is.
    pub reasons: Vec<Refusal>,
}

impl Verdict {
    /// Whether it is accepted.
    #[must_use]
    pub const fn accepted(&self) -> bool {
        self.reasons.is_empty()
    }
}

/// Verifies the bytes of a file against a trust list, on a day. A file that is not what was signed has one reason; one
/// that is has all that speak against it.
#[must_use]
pub fn verify(bytes: &[u8], list: &TrustList, competencies: &[Competency], on: &When) -> Verdict {
    match read_canonical(bytes).and_then(|signed| proven(&signed)) {
        Err(reason) => Verdict { credential: None, hash: None, reasons: vec![reason] },
        Ok((credential, hash)) => {
            let mut reasons = against_signer(&credential, list);
            reasons.extend(against_content(&credential, competencies));
            reasons.extend(not_on(&credential, list, on));
            Verdict { credential: Some(credential), hash: Some(hash), reasons }
        }
    }
}

/// A sign-off whose proof holds, by the key of its issuer, and the hash of its document.
pub(super) fn proven(signed: &Map<String, Value>) -> Result<(Credential, Hash), Refusal> {
    let proven = check(signed)?;
    let credential = Credential::read(&proven.document)?;
    if credential.assessor.key != proven.by {
        return Err(Why::IssuerNotKey.at("/issuer/id"));
    }
    if credential.from != proven.created {
        return Err(Why::DatesDisordered.at("/validFrom"));
    }
    Ok((credential, hash(&Value::Object(proven.document))?))
}

/// What speaks against it on every day by a list: who signed, and for whom.
pub(super) fn against_signer(one: &Credential, list: &TrustList) -> Vec<Refusal> {
    let mut reasons = Vec::new();
    match list.person(&one.assessor.key) {
        None => reasons.push(Why::SignerUnknown.at(one.assessor.key.did())),
        Some(person) => {
            if !person.trusted_at(&one.from) {
                reasons.push(Why::SignerNotThen.at(one.from.text()));
            }
            let told = (&one.shop, &one.assessor.number, &one.assessor.name);
            if told != (&list.shop, &person.number, &person.name) {
                reasons.push(Why::SignerDiffers.at(format!("{} {}", person.number, person.name)));
            }
        }
    }
    if one.subject == one.assessor.number {
        reasons.push(Why::OwnWork.at(one.subject.text()));
    }
    reasons
}

/// What speaks against it on every day by the content: what it is for.
pub(super) fn against_content(one: &Credential, competencies: &[Competency]) -> Vec<Refusal> {
    let mut reasons = Vec::new();
    let slug = &one.achievement.slug;
    match competencies.iter().find(|known| known.slug == *slug) {
        None => reasons.push(Why::CompetencyUnknown.at(slug)),
        Some(known) => {
            if known.profile != one.achievement.profile {
                reasons.push(Why::ProfileDiffers.at(slug));
            }
            if known.profile == Profile::Safety && one.knowledge == Knowledge::Insufficient {
                reasons.push(Why::SafetyNotShown.at(slug));
            }
            if too_long(&one.from, &one.until, known) {
                reasons.push(Why::ValidTooLong.at(one.until.text()));
            }
        }
    }
    reasons
}

/// Whether it runs longer than the competency may go without being shown anew.
pub(super) fn too_long(from: &When, until: &When, competency: &Competency) -> bool {
    from.plus_months(competency.expires_months).is_none_or(|most| *until > most)
}

/// What speaks against it on one day.
fn not_on(one: &Credential, list: &TrustList, on: &When) -> Vec<Refusal> {
    let mut reasons = Vec::new();
    if *on < one.from {
        reasons.push(Why::NotYetValid.at(one.from.text()));
    }
    if one.until <= *on {
        reasons.push(Why::Expired.at(one.until.text()));
    }
    if let Some(withdrawal) = list.withdrawal(&one.id).filter(|withdrawal| withdrawal.at <= *on) {
        // The reason is the shop's own, held short by the list and told whole.
        let at = format!("{}: {}", withdrawal.at, withdrawal.reason);
        reasons.push(Refusal { why: Why::Withdrawn, at });
    }
    reasons
}
