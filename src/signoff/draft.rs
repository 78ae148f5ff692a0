//! What is about to be signed, and whether it may be.

use super::{
    Achievement, Assessor, Barred, Credential, Criterion, Evidence, Genre, Hash, Knowledge, NotSigned,
    PublicKey, Refusal, SecretKey, ShopNumber, TrustList, When, canonical, hash, sign,
};
use crate::content::{Competency, Profile};
use crate::learn::mastery::Call;
use serde_json::Value;

/// A heading and what is told under it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// The heading.
    pub name: String,
    /// The text.
    pub narrative: String,
}

/// A competency in words, as they will stand on the sign-off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wording {
    /// Which wording of its criteria, such as `1`.
    pub version: String,
    /// What it is called.
    pub name: String,
    /// What it is.
    pub description: String,
    /// When it is reached.
    pub criteria: String,
}

/// What an assessor wants to sign.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request<'a> {
    /// Name of the sign-off, see [`super::credential_id`].
    pub id: String,
    /// Whose work.
    pub subject: ShopNumber,
    /// What for; how strictly it is asked is read from here and not from the words.
    pub competency: &'a Competency,
    /// How the competency is worded.
    pub wording: Wording,
    /// What the knowledge evidence comes to.
    pub call: Call,
    /// Critical mistakes that are not lifted.
    pub open_critical: u32,
    /// The knowledge evidence in words.
    pub knowledge: Told,
    /// Why it is signed though the knowledge evidence is not sufficient.
    pub reason: Option<Told>,
    /// Criteria, each judged.
    pub criteria: Vec<Criterion>,
    /// Work that was watched.
    pub observed: Vec<Told>,
    /// Now.
    pub at: When,
    /// When it runs out.
    pub until: When,
}

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
        let sufficient = request.call == Call::Sufficient;
        let told = |genre| move |told: Told| Evidence { genre, name: told.name, narrative: told.narrative };
        let mut evidence = vec![told(Genre::Knowledge)(request.knowledge)];
        evidence.extend(request.reason.filter(|_| !sufficient).map(told(Genre::Reason)));
        evidence.extend(request.observed.into_iter().map(told(Genre::Observation)));
        let Wording { version, name, description, criteria } = request.wording;
        let (slug, profile) = (request.competency.slug.clone(), request.competency.profile);
        let credential = Credential {
            id: request.id,
            shop: list.shop.clone(),
            assessor: Assessor { key: *key, number: person.number.clone(), name: person.name.clone() },
            subject: request.subject,
            achievement: Achievement { slug, version, profile, name, description, criteria },
            criteria: request.criteria.into_iter().map(|one| one.text).collect(),
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

/// What bars a request whoever makes it.
fn bars(request: &Request<'_>) -> Vec<Barred> {
    let sufficient = request.call == Call::Sufficient;
    let safety = request.competency.profile == Profile::Safety;
    let met = request.criteria.iter().all(|one| one.met) && !request.criteria.is_empty();
    let all = [
        (request.open_critical > 0, Barred::CriticalOpen),
        (!sufficient && safety, Barred::SafetyNotShown),
        (!sufficient && !safety && request.reason.is_none(), Barred::ReasonMissing),
        (!met, Barred::CriterionNotMet),
        (request.observed.is_empty(), Barred::NothingObserved),
    ];
    all.into_iter().filter(|(stands, _)| *stands).map(|(_, barred)| barred).collect()
}
