//! A demo shop that signs: people, keys and drafts. The seeds stand here for everybody to read, so that nothing real may
//! ever be signed with them.

use super::content;
use std::sync::OnceLock;
use stepboard::content::{Competency, Content, OnFile};
use stepboard::learn::mastery::Call;
use stepboard::record::{Filed, LocalDate};
use stepboard::signoff::{
    Criterion, Demonstration, Draft, Person, PublicKey, Request, Role, SecretKey, ShopNumber, Told,
    TrustList, When, Wording, credential_id,
};

/// Passphrase of the demo keys.
pub(crate) const PASSPHRASE: &str = "four words of oak and ash";
/// Slugs of an ordinary and of a safety competency.
pub(crate) const ORDINARY: &str = "levelled";
pub(crate) const SAFETY: &str = "mask-worn";

pub(crate) fn root() -> SecretKey {
    SecretKey::from_seed(&[1; 32])
}

/// Instructor i-1.
pub(crate) fn instructor() -> SecretKey {
    SecretKey::from_seed(&[2; 32])
}

/// Assessor a-2.
pub(crate) fn assessor() -> SecretKey {
    SecretKey::from_seed(&[3; 32])
}

/// Of nobody on the list.
pub(crate) fn stranger() -> SecretKey {
    SecretKey::from_seed(&[4; 32])
}

pub(crate) fn when(text: &str) -> When {
    When::new(text).expect("a moment")
}

pub(crate) fn number(text: &str) -> ShopNumber {
    ShopNumber::new(text).expect("a shop number")
}

pub(crate) fn person(number_text: &str, name: &str, role: Role, key: PublicKey) -> Person {
    let from = when("2026-01-05T08:00:00Z");
    Person { number: number(number_text), name: name.to_owned(), role, key, from, to: None }
}

pub(crate) fn people() -> Vec<Person> {
    vec![
        person("i-1", "Ilse Brandt", Role::Instructor, instructor().public()),
        person("a-2", "Tomás Øye", Role::Assessor, assessor().public()),
    ]
}

/// The list as it stood on the first day.
pub(crate) fn list() -> TrustList {
    TrustList::first("Finish room at the mill", root().public(), when("2026-01-05T08:00:00Z"), people())
}

/// The content, read once: laws ask often.
fn read() -> &'static Content {
    static READ: OnceLock<Content> = OnceLock::new();
    READ.get_or_init(content)
}

pub(crate) fn competencies() -> Vec<Competency> {
    read().competencies.clone()
}

pub(crate) fn competency(slug: &str) -> Competency {
    competencies().into_iter().find(|one| one.slug == slug).expect("a competency")
}

pub(crate) fn date(text: &str) -> LocalDate {
    text.parse().expect("a date")
}

/// The criteria of a competency, each met.
pub(crate) fn criteria(competency: &Competency) -> Vec<Criterion> {
    let texts = read().texts("en");
    let met = |id: &String| Criterion {
        id: id.clone(),
        text: texts.get(&format!("criterion.{id}")).to_owned(),
        met: true,
    };
    competency.criteria.iter().map(|one| met(&one.id)).collect()
}

/// As many demonstrations as the competency asks for, each on a day of its own.
fn observed(competency: &Competency) -> Vec<Demonstration> {
    let one = |nth: u32| Demonstration {
        on: date(&format!("2026-02-{:02}", 10 + nth)),
        told: told(&format!("Demonstration {nth}"), "Back and sides, alone; 21 °C – nothing to put right."),
    };
    (1..=competency.demonstrations).map(one).collect()
}

/// Everything that an employer may have to have on file, in force.
pub(crate) fn on_file() -> Vec<Filed> {
    let one = |what| Filed { what, on: date("2026-01-12"), until: date("2027-01-12") };
    [OnFile::MedicalClearance, OnFile::FitTest, OnFile::ExposureProgramme].map(one).to_vec()
}

fn told(name: &str, narrative: &str) -> Told {
    Told { name: name.to_owned(), narrative: narrative.to_owned() }
}

/// A request that nothing bars, for apprentice 17; `nth` gives it a name of its own.
pub(crate) fn request(competency: &Competency, nth: u8) -> Request<'_> {
    Request {
        id: credential_id([nth; 16]),
        subject: number("17"),
        competency,
        wording: Wording {
            version: "1".to_owned(),
            name: read().texts("en").get(&format!("competency.{}", competency.slug)).to_owned(),
            description: "Does the work alone, on an instrument.".to_owned(),
            criteria:
                "Knowledge evidence sufficient; demonstrations on several days; no critical mistake open."
                    .to_owned(),
        },
        held: competency.needs.clone(),
        known: competency.needs_knowledge.clone(),
        call: Call::Sufficient,
        open_critical: 0,
        knowledge: told("Cards", "32 of 33 answers right on 3 days."),
        reason: None,
        criteria: criteria(competency),
        observed: observed(competency),
        unsettled: 0,
        on_file: on_file(),
        at: when("2026-03-02T15:04:05Z"),
        today: date("2026-03-02"),
        until: when(&format!("{}-03-02T15:04:05Z", 2026 + competency.expires_months / 12)),
    }
}

/// The reason that some requests give.
pub(crate) fn reason() -> Told {
    told("Reason", "Worked six years in another shop; seen today.")
}

/// A sign-off by assessor a-2.
pub(crate) fn signed(slug: &str, nth: u8) -> String {
    let competency = competency(slug);
    let draft =
        Draft::new(request(&competency, nth), &list(), &assessor().public()).expect("nothing bars it");
    draft.sign(&assessor()).expect("the key is the assessor's")
}

/// A day on which it counts.
pub(crate) fn day() -> When {
    when("2026-06-01T12:00:00Z")
}
