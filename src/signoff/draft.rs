//! What is about to be signed, and whether it may be.

use super::barred::{bars, one_day};
use super::{
    Achievement, Assessor, Barred, Credential, Demonstration, Evidence, Genre, Hash, Knowledge, NotSigned,
    PublicKey, Refusal, Request, SecretKey, Told, TrustList, Wording, canonical, hash, sign,
};
use crate::content;
use crate::learn::mastery::Call;
use serde_json::Value;

/// What will be signed, fixed to the byte: what is shown is what is signed.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft(Credential);

impl Draft {
    /// The draft of an assessor with that key.
    ///
    /// # Errors
    /// Everything that bars it.
    pub fn new(request: Request<'_>, list: &TrustList, key: &PublicKey) -> Result<Self, NotSigned> {
        let person = list.person(key).filter(|person| person.trusted_at(&request.at));
        let mut barred = bars(&request);
        if person.is_some_and(|person| person.number == request.subject) {
            barred.insert(0, Barred::OwnWork);
        }
        let Some(person) = person else {
            barred.insert(0, Barred::NotTrusted);
            return Err(NotSigned { barred, refusal: None });
        };
        if !barred.is_empty() {
            return Err(NotSigned { barred, refusal: None });
        }
        one_day(&request)?;
        let sufficient = request.call == Call::Sufficient;
        let told = |genre| move |told: Told| Evidence { genre, name: told.name, narrative: told.narrative };
        let mut evidence = vec![told(Genre::Knowledge)(request.knowledge)];
        evidence.extend(request.reason.filter(|_| !sufficient).map(told(Genre::Reason)));
        evidence.extend(request.observed.into_iter().map(Demonstration::dated).map(told(Genre::Observation)));
        let Wording { version, name, description, criteria } = request.wording;
        let in_order = |known: &content::Criterion| request.criteria.iter().find(|one| one.id == known.id);
        let criteria_met = request.competency.criteria.iter().filter_map(in_order);
        let criteria_met = criteria_met.map(|one| one.text.clone()).collect();
        let (slug, profile) = (request.competency.slug.clone(), request.competency.profile);
        let credential = Credential {
            id: request.id,
            shop: list.shop.clone(),
            assessor: Assessor { key: *key, number: person.number.clone(), name: person.name.clone() },
            subject: request.subject,
            achievement: Achievement { slug, version, profile, name, description, criteria },
            criteria: criteria_met,
            knowledge: if sufficient { Knowledge::Sufficient } else { Knowledge::Insufficient },
            evidence,
            from: request.at,
            until: request.until,
        };
        credential.fit()?;
        Ok(Self(credential))
    }

    /// What will be signed, to be shown.
    #[must_use]
    pub const fn credential(&self) -> &Credential {
        &self.0
    }

    /// The bytes that will be signed.
    ///
    /// # Errors
    /// None that a draft can have; see [`canonical`].
    pub fn text(&self) -> Result<String, Refusal> {
        canonical(&Value::Object(self.0.document()))
    }

    /// Their hash.
    ///
    /// # Errors
    /// As [`Draft::text`].
    pub fn hash(&self) -> Result<Hash, Refusal> {
        hash(&Value::Object(self.0.document()))
    }

    /// Signs it: the file, in its canonical form.
    ///
    /// # Errors
    /// [`Barred::OtherKey`].
    pub fn sign(&self, key: &SecretKey) -> Result<String, NotSigned> {
        if key.public() != self.0.assessor.key {
            return Err(Barred::OtherKey.into());
        }
        let signed = sign(&self.0.document(), key, &self.0.from)?;
        Ok(canonical(&Value::Object(signed))?)
    }
}
