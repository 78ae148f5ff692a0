//! A sign-off as JSON: an `AchievementCredential` of Open Badges 3.0, always of the same shape.
//!
//! Reading takes the values out, writes them anew and compares: what is not exactly what would be written is refused, so
//! that no member is there that nobody looks at.

use super::{
    Achievement, Assessor, CONTEXTS, Credential, Evidence, Genre, Knowledge, PublicKey, Refusal, ShopNumber,
    When, Why,
};
use crate::content::Profile;
use crate::rules::term::Term;
use serde_json::{Map, Value, json};

const PERSON: &str = "urn:stepboard:person:";
const COMPETENCY: &str = "urn:stepboard:competency:";
const CRITERION: &str = "urn:stepboard:criterion:";
/// The result that says whether the knowledge evidence was sufficient.
const KNOWLEDGE: &str = "urn:stepboard:result:knowledge";
/// What it is called in the file.
const KNOWLEDGE_NAME: &str = "Knowledge evidence";
/// Result status of a criterion that was seen to be met.
const MET: &str = "Completed";

const SUBJECT: &str = "/credentialSubject";

pub(super) fn written(one: &Credential) -> Map<String, Value> {
    let Credential { assessor, achievement, .. } = one;
    let criterion = |(place, text): (usize, &String)| described(&criterion_id(place), text);
    let mut described_all: Vec<Value> = one.criteria.iter().enumerate().map(criterion).collect();
    described_all.push(described(KNOWLEDGE, KNOWLEDGE_NAME));
    let mut results: Vec<Value> =
        (0..one.criteria.len()).map(|place| result(&criterion_id(place), MET)).collect();
    results.push(result(KNOWLEDGE, one.knowledge.slug()));
    let evidence: Vec<Value> = one
        .evidence
        .iter()
        .map(|one| {
            json!({ "type": ["Evidence"], "name": one.name, "genre": one.genre.slug(), "narrative": one.narrative })
        })
        .collect();
    let document = json!({
        "@context": CONTEXTS,
        "id": one.id,
        "type": ["VerifiableCredential", "OpenBadgeCredential"],
        "name": achievement.name,
        "issuer": { "id": assessor.key.did(), "type": ["Profile"], "name": one.shop },
        "validFrom": one.from,
        "validUntil": one.until,
        "credentialSubject": {
            "type": ["AchievementSubject"],
            "identifier": [{
                "type": "IdentityObject", "identityType": "identifier", "hashed": false,
                "identityHash": one.subject,
            }],
            "source": {
                "id": format!("{PERSON}{}", assessor.number), "type": ["Profile"], "name": assessor.name,
            },
            "achievement": {
                "id": format!("{COMPETENCY}{}", achievement.slug), "type": ["Achievement"],
                "achievementType": "Competency", "version": achievement.version,
                "name": achievement.name, "description": achievement.description,
                "criteria": { "narrative": achievement.criteria },
                "tag": [achievement.profile.slug()],
                "resultDescription": described_all,
            },
            "result": results,
        },
        "evidence": evidence,
    });
    match document {
        Value::Object(members) => members,
        _ => Map::new(),
    }
}

/// Criteria are numbered from 1.
fn criterion_id(place: usize) -> String {
    format!("{CRITERION}{}", place + 1)
}

fn described(id: &str, name: &str) -> Value {
    json!({ "id": id, "type": ["ResultDescription"], "name": name, "resultType": "Status" })
}

fn result(id: &str, status: &str) -> Value {
    json!({ "type": ["Result"], "resultDescription": id, "status": status })
}

pub(super) fn read(document: &Map<String, Value>) -> Result<Credential, Refusal> {
    if document.get("@context") != Some(&json!(CONTEXTS)) {
        return Err(Why::ContextUnknown.at("/@context"));
    }
    let whole = Value::Object(document.clone());
    let page = Page(&whole);
    let achievement = format!("{SUBJECT}/achievement");
    let told = |name: &str| page.text(&format!("{achievement}/{name}")).map(str::to_owned);
    let descriptions = page.list(&format!("{achievement}/resultDescription"))?;
    let criteria = descriptions.len().saturating_sub(1);
    let named =
        |place| page.text(&format!("{achievement}/resultDescription/{place}/name")).map(str::to_owned);
    let evidence = (0..page.list("/evidence")?.len()).map(|place| {
        let told = |name: &str| page.text(&format!("/evidence/{place}/{name}")).map(str::to_owned);
        let genre = page.term::<Genre>(&format!("/evidence/{place}/genre"))?;
        Ok(Evidence { genre, name: told("name")?, narrative: told("narrative")? })
    });
    let credential = Credential {
        id: page.text("/id")?.to_owned(),
        shop: page.text("/issuer/name")?.to_owned(),
        assessor: Assessor {
            key: PublicKey::from_did(page.text("/issuer/id")?)?,
            number: ShopNumber::new(page.behind(PERSON, &format!("{SUBJECT}/source/id"))?)?,
            name: page.text(&format!("{SUBJECT}/source/name"))?.to_owned(),
        },
        subject: ShopNumber::new(page.text(&format!("{SUBJECT}/identifier/0/identityHash"))?)?,
        achievement: Achievement {
            slug: page.behind(COMPETENCY, &format!("{achievement}/id"))?.to_owned(),
            version: told("version")?,
            profile: page.term::<Profile>(&format!("{achievement}/tag/0"))?,
            name: told("name")?,
            description: told("description")?,
            criteria: told("criteria/narrative")?,
        },
        criteria: (0..criteria).map(named).collect::<Result<_, Refusal>>()?,
        knowledge: page.term::<Knowledge>(&format!("{SUBJECT}/result/{criteria}/status"))?,
        evidence: evidence.collect::<Result<_, Refusal>>()?,
        from: When::new(page.text("/validFrom")?)?,
        until: When::new(page.text("/validUntil")?)?,
    };
    match difference(&whole, &Value::Object(written(&credential))) {
        None => Ok(credential),
        Some(at) => Err(Why::ShapeUnknown.at(at)),
    }
}

/// A document whose members are found by path (JSON Pointer, RFC 6901).
#[derive(Clone, Copy)]
struct Page<'a>(&'a Value);

impl<'a> Page<'a> {
    fn text(self, path: &str) -> Result<&'a str, Refusal> {
        self.0.pointer(path).and_then(Value::as_str).ok_or_else(|| Why::ShapeUnknown.at(path))
    }
    fn list(self, path: &str) -> Result<&'a [Value], Refusal> {
        let list = self.0.pointer(path).and_then(Value::as_array);
        list.map(Vec::as_slice).ok_or_else(|| Why::ShapeUnknown.at(path))
    }
    fn term<T: Term>(self, path: &str) -> Result<T, Refusal> {
        T::from_slug(self.text(path)?).ok_or_else(|| Why::ShapeUnknown.at(path))
    }
    /// What stands behind a beginning.
    fn behind(self, begin: &str, path: &str) -> Result<&'a str, Refusal> {
        self.text(path)?.strip_prefix(begin).ok_or_else(|| Why::ShapeUnknown.at(path))
    }
}

/// The path of the first member in which two documents differ.
fn difference(found: &Value, wanted: &Value) -> Option<String> {
    match (found, wanted) {
        (Value::Object(found), Value::Object(wanted)) => {
            let names = found.keys().chain(wanted.keys());
            names
                .filter_map(|name| match (found.get(name), wanted.get(name)) {
                    (Some(found), Some(wanted)) => difference(found, wanted).map(|at| format!("/{name}{at}")),
                    _ => Some(format!("/{name}")),
                })
                .next()
        }
        (Value::Array(found), Value::Array(wanted)) if found.len() == wanted.len() => {
            let pairs = found.iter().zip(wanted).enumerate();
            pairs
                .filter_map(|(place, (found, wanted))| {
                    difference(found, wanted).map(|at| format!("/{place}{at}"))
                })
                .next()
        }
        _ => (found != wanted).then(String::new),
    }
}
