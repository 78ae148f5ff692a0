//! A sign-off: an assessor vouches that one person can do one thing alone.

use super::words::fit;
use super::{Evidence, Genre, Knowledge, PublicKey, Refusal, ShopNumber, When, Why, shape};
use crate::content::Profile;
use serde_json::{Map, Value};

/// The contexts of a sign-off, in this order and no others: Verifiable Credentials 2.0, Open Badges 3.0. They name the
/// vocabulary and are fetched by nobody.
pub const CONTEXTS: [&str; 2] =
    ["https://www.w3.org/ns/credentials/v2", "https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json"];

/// What is signed, before the proof.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Credential {
    /// `urn:uuid:…`, see [`credential_id`].
    pub id: String,
    /// Name of the shop.
    pub shop: String,
    /// Who assessed; their key signs.
    pub assessor: Assessor,
    /// Whose work was assessed. A number and no name: whoever is shown the file need not learn more.
    pub subject: ShopNumber,
    /// What they can do.
    pub achievement: Achievement,
    /// Criteria that were seen to be met, at least one.
    pub criteria: Vec<String>,
    /// Whether the knowledge evidence was sufficient.
    pub knowledge: Knowledge,
    /// What it rests on: the knowledge first, the reason where there must be one, and something observed.
    pub evidence: Vec<Evidence>,
    /// Day and time of signing.
    pub from: When,
    /// From then on it has run out.
    pub until: When,
}

/// Who assessed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assessor {
    /// Their key.
    pub key: PublicKey,
    /// Their shop number.
    pub number: ShopNumber,
    /// Their name.
    pub name: String,
}

/// A competency as it is worded on a sign-off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Achievement {
    /// Slug of the competency.
    pub slug: String,
    /// Which wording of its criteria.
    pub version: String,
    /// How strictly its knowledge is asked.
    pub profile: Profile,
    /// What it is called.
    pub name: String,
    /// What it is.
    pub description: String,
    /// When it is reached.
    pub criteria: String,
}

/// Where the version and the variant of a random UUID stand: bits of bytes 6 and 8 (RFC 9562 section 5.4).
const UUID_VERSION: (usize, u8, u8) = (6, 0x0f, 0x40);
const UUID_VARIANT: (usize, u8, u8) = (8, 0x3f, 0x80);
const URN: &str = "urn:uuid:";
/// Places of the hyphens in a UUID.
const HYPHENS: [usize; 4] = [8, 13, 18, 23];
const UUID_LENGTH: usize = 36;

/// A new name for a sign-off: a random UUID (RFC 9562 section 5.4) as a URN, from 16 random bytes.
#[must_use]
pub fn credential_id(random: [u8; 16]) -> String {
    let mut text = URN.to_owned();
    for (place, byte) in random.into_iter().enumerate() {
        let set =
            |(at, keep, bits): (usize, u8, u8), byte| if place == at { byte & keep | bits } else { byte };
        let byte = set(UUID_VARIANT, set(UUID_VERSION, byte));
        if HYPHENS.contains(&(text.len() - URN.len())) {
            text.push('-');
        }
        text.push_str(&format!("{byte:02x}"));
    }
    text
}

/// Whether this is a name of a sign-off as [`credential_id`] gives one, whatever its bits.
pub(super) fn is_id(text: &str) -> bool {
    let hex = |byte: u8| byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte);
    text.strip_prefix(URN).is_some_and(|uuid| {
        let fits =
            |(place, byte): (usize, u8)| if HYPHENS.contains(&place) { byte == b'-' } else { hex(byte) };
        uuid.len() == UUID_LENGTH && uuid.bytes().enumerate().all(fits)
    })
}

impl Credential {
    /// The document to be signed.
    #[must_use]
    pub fn document(&self) -> Map<String, Value> {
        shape::written(self)
    }

    /// Reads a document without its proof: every member known, none missing, and all of it as [`Credential::fit`] asks.
    ///
    /// # Errors
    /// [`Why::ContextUnknown`], [`Why::ShapeUnknown`] with the member, and those of [`Credential::fit`].
    pub fn read(document: &Map<String, Value>) -> Result<Self, Refusal> {
        let credential = shape::read(document)?;
        credential.fit()?;
        Ok(credential)
    }

    /// Whether this is something that can be signed, whoever signs it.
    ///
    /// # Errors
    /// [`Why::WordsUnfit`], [`Why::DatesDisordered`], [`Why::ShapeUnknown`] with where.
    pub fn fit(&self) -> Result<(), Refusal> {
        if !is_id(&self.id) {
            return Err(Why::ShapeUnknown.at("/id"));
        }
        let Achievement { slug, version, name, description, criteria, .. } = &self.achievement;
        for (text, at) in [
            (&self.shop, "/issuer/name"),
            (&self.assessor.name, "/credentialSubject/source/name"),
            (slug, "/credentialSubject/achievement/id"),
            (version, "/credentialSubject/achievement/version"),
            (name, "/credentialSubject/achievement/name"),
            (description, "/credentialSubject/achievement/description"),
            (criteria, "/credentialSubject/achievement/criteria/narrative"),
        ] {
            fit(text, at)?;
        }
        for text in &self.criteria {
            fit(text, "/credentialSubject/achievement/resultDescription")?;
        }
        for one in &self.evidence {
            fit(&one.name, "/evidence")?;
            fit(&one.narrative, "/evidence")?;
        }
        if self.until <= self.from {
            return Err(Why::DatesDisordered.at("/validUntil"));
        }
        if self.criteria.is_empty() {
            return Err(Why::ShapeUnknown.at("/credentialSubject/result"));
        }
        if self.rests_on_enough() { Ok(()) } else { Err(Why::ShapeUnknown.at("/evidence")) }
    }

    /// The knowledge first, then the reason where and only where it was not sufficient, then what was observed.
    fn rests_on_enough(&self) -> bool {
        let reason = self.knowledge == Knowledge::Insufficient;
        let first = [Genre::Knowledge, Genre::Reason];
        let first = if reason { &first[..] } else { &first[..1] };
        let genres: Vec<Genre> = self.evidence.iter().map(|one| one.genre).collect();
        genres.strip_prefix(first).is_some_and(|observed| {
            !observed.is_empty() && observed.iter().all(|genre| *genre == Genre::Observation)
        })
    }
}
