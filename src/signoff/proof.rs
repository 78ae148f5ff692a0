//! Data Integrity proofs of the suite `eddsa-jcs-2022` (W3C, Data Integrity EdDSA Cryptosuites v1.0, section 3.3).

use super::key::{decode, encode};
use super::{PublicKey, Refusal, SecretKey, When, Why, hash};
use serde_json::{Map, Value, json};

/// The suite.
pub const CRYPTOSUITE: &str = "eddsa-jcs-2022";
const TYPE: &str = "DataIntegrityProof";
/// What the key vouches for: that what the document says is so.
const PURPOSE: &str = "assertionMethod";
const PROOF: &str = "proof";
const CONTEXT: &str = "@context";
const VALUE: &str = "proofValue";
/// Members that a proof has; `@context` only where the document has one.
const MEMBERS: [&str; 7] =
    [CONTEXT, "created", "cryptosuite", "proofPurpose", VALUE, "type", "verificationMethod"];

/// The document with a proof by this key.
///
/// # Errors
/// As [`super::canonical`]; [`Why::ProofUnknown`] where the document has a proof already.
pub fn sign(
    document: &Map<String, Value>,
    key: &SecretKey,
    created: &When,
) -> Result<Map<String, Value>, Refusal> {
    if document.contains_key(PROOF) {
        return Err(Why::ProofUnknown.at("/proof"));
    }
    let mut options = Map::new();
    for (name, value) in [
        ("type", json!(TYPE)),
        ("cryptosuite", json!(CRYPTOSUITE)),
        ("created", json!(created)),
        ("verificationMethod", json!(key.public().method())),
        ("proofPurpose", json!(PURPOSE)),
    ] {
        options.insert(name.to_owned(), value);
    }
    if let Some(context) = document.get(CONTEXT) {
        options.insert(CONTEXT.to_owned(), context.clone());
    }
    let signature = key.sign(&to_sign(&options, document)?);
    options.insert(VALUE.to_owned(), json!(encode(&signature)));
    let mut signed = document.clone();
    signed.insert(PROOF.to_owned(), Value::Object(options));
    Ok(signed)
}

/// The 64 bytes that are signed: the hash of the proof without its value, then the hash of the document without its proof.
///
/// # Errors
/// As [`super::canonical`].
pub fn to_sign(options: &Map<String, Value>, document: &Map<String, Value>) -> Result<[u8; 64], Refusal> {
    let mut bytes = [0; 64];
    let (first, second) = bytes.split_at_mut(32);
    first.copy_from_slice(&hash(&Value::Object(options.clone()))?.0);
    second.copy_from_slice(&hash(&Value::Object(document.clone()))?.0);
    Ok(bytes)
}

/// What a proof proves.
#[derive(Debug, Clone, PartialEq)]
pub struct Proven {
    /// The document without its proof.
    pub document: Map<String, Value>,
    /// The key that signed it.
    pub by: PublicKey,
    /// When, as the signer told.
    pub created: When,
}

/// Checks the one proof of a document. Stricter than the standard: the contexts of the proof are exactly those of the
/// document, and a proof has no member that we do not know.
///
/// # Errors
/// The reasons of [`Why`] on proofs, the first that is found.
pub fn check(signed: &Map<String, Value>) -> Result<Proven, Refusal> {
    let mut document = signed.clone();
    let Some(Value::Object(mut options)) = document.remove(PROOF) else { return Err(Why::NoProof.at("")) };
    if let Some(unknown) = options.keys().find(|name| !MEMBERS.contains(&name.as_str())) {
        return Err(Why::ProofUnknown.at(format!("/proof/{unknown}")));
    }
    for (name, wanted) in [("type", TYPE), ("cryptosuite", CRYPTOSUITE), ("proofPurpose", PURPOSE)] {
        if text(&options, name)? != wanted {
            return Err(Why::ProofUnknown.at(format!("/proof/{name}")));
        }
    }
    if options.get(CONTEXT) != document.get(CONTEXT) {
        return Err(Why::ContextDiffers.at("/@context"));
    }
    let created = When::new(text(&options, "created")?)?;
    let by = PublicKey::from_method(text(&options, "verificationMethod")?)?;
    let value = text(&options, VALUE)?;
    let signature = decode(value).and_then(|bytes| <[u8; 64]>::try_from(bytes).ok());
    let signature = signature.ok_or_else(|| Why::SignatureUnreadable.at(format!("/proof/{VALUE}")))?;
    options.remove(VALUE);
    if !by.verifies(&to_sign(&options, &document)?, &signature) {
        return Err(Why::SignatureWrong.at(format!("/proof/{VALUE}")));
    }
    Ok(Proven { document, by, created })
}

fn text<'a>(options: &'a Map<String, Value>, name: &str) -> Result<&'a str, Refusal> {
    options.get(name).and_then(Value::as_str).ok_or_else(|| Why::ProofUnknown.at(format!("/proof/{name}")))
}
