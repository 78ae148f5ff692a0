//! Canonical JSON, keys, signatures and proofs against the vectors of their standards, byte for byte.

mod support;

use serde_json::{Map, Value};
use std::fs;
use std::path::{Path, PathBuf};
use stepboard::signoff::{
    Code, Hash, PublicKey, SecretKey, When, Why, canonical, check, hash, read, read_canonical, sign, to_sign,
    verify,
};
use support::covered;
use support::covered::same;
use support::shop;

fn data(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data").join(name)
}

fn text(name: &str) -> String {
    fs::read_to_string(data(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// A published text without the line end that its file may have.
fn line(name: &str) -> String {
    text(name).trim_end().to_owned()
}

fn members(name: &str) -> Map<String, Value> {
    serde_json::from_str(&text(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn bytes<const N: usize>(hex: &str) -> [u8; N] {
    let digits = hex.as_bytes().chunks(2).map(|pair| std::str::from_utf8(pair).expect("ASCII"));
    let all: Vec<u8> = digits.map(|pair| u8::from_str_radix(pair, 16).expect("hexadecimal")).collect();
    all.try_into().expect("so many bytes")
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// Test data of RFC 8785 by its author: canonical texts, and their bytes in hexadecimal.
#[test]
fn json_takes_its_canonical_form() {
    for name in ["arrays", "french", "structures", "unicode", "values", "weird"] {
        let value: Value = serde_json::from_str(&text(&format!("jcs/input/{name}.json"))).expect("JSON");
        let found = canonical(&value).expect("a canonical form");
        same!(found, line(&format!("jcs/output/{name}.json")), "{name}");
        let wanted: Vec<String> =
            text(&format!("jcs/outhex/{name}.txt")).split_whitespace().map(str::to_owned).collect();
        let found: Vec<String> = found.bytes().map(|byte| format!("{byte:02x}")).collect();
        same!(found, wanted, "{name} in hexadecimal");
    }
    covered::values("signoff", "test data of RFC 8785");
}

/// The same files read as signed documents are: two of them have fractions.
#[test]
fn fractions_are_not_read_from_signed_documents() {
    for name in ["arrays", "french", "structures", "unicode", "values", "weird"] {
        let found = read(text(&format!("jcs/input/{name}.json")).as_bytes());
        match name {
            "values" | "structures" => assert_eq!(found.expect_err(name).why, Why::NumberNotWhole),
            _ => {
                let found = found.expect(name);
                assert_eq!(canonical(&found).expect(name), line(&format!("jcs/output/{name}.json")));
            }
        }
    }
}

/// RFC 8032 section 7.1, tests 1 to 3.
#[test]
fn signatures_are_those_of_the_standard() {
    let rows: Vec<Value> = serde_json::from_str(&text("rfc8032_ed25519.json")).expect("JSON");
    assert_eq!(rows.len(), 3);
    for row in &rows {
        let cell = |name: &str| row[name].as_str().expect("text");
        let key = SecretKey::from_seed(&bytes(cell("secret_seed")));
        let message = cell("message").as_bytes().chunks(2);
        let message: Vec<u8> = message
            .map(|pair| {
                u8::from_str_radix(std::str::from_utf8(pair).expect("ASCII"), 16).expect("hexadecimal")
            })
            .collect();
        same!(key.public(), PublicKey::new(bytes(cell("public"))).expect("a key"));
        same!(hex(&key.sign(&message)), cell("signature"));
    }
    covered::values("signoff", "RFC 8032 section 7.1");
    for row in &rows {
        let key = SecretKey::from_seed(&bytes(row["secret_seed"].as_str().expect("text"))).public();
        same!(key.did(), row["did_key"].as_str().expect("text"));
        same!(key.method(), row["verification_method"].as_str().expect("text"));
        assert_eq!(PublicKey::from_method(&key.method()), Ok(key));
    }
    covered::values("signoff", "did:key of the keys of RFC 8032, by the Python library `base58`");
}

/// The seed of the published key pair: prefix 80 26 before it (Data Integrity EdDSA Cryptosuites 2.1.1).
fn published_key() -> SecretKey {
    let pair = members("eddsa_jcs/keyPair.json");
    let secret = pair["privateKeyMultibase"].as_str().expect("text").strip_prefix('z').expect("base 58");
    let secret = bs58::decode(secret).into_vec().expect("base 58");
    let seed = secret.strip_prefix(&[0x80, 0x26]).expect("the prefix of a secret key");
    SecretKey::from_seed(seed.try_into().expect("32 bytes"))
}

/// W3C, Data Integrity EdDSA Cryptosuites v1.0, appendix B, every step.
#[test]
fn a_proof_is_made_and_checked_as_published() {
    let key = published_key();
    let pair = members("eddsa_jcs/keyPair.json");
    same!(key.public().multikey(), pair["publicKeyMultibase"].as_str().expect("text"));
    let (document, options) = (members("eddsa_jcs/unsigned.json"), members("eddsa_jcs/proofConfigJCS.json"));
    let (whole, config) = (Value::Object(document.clone()), Value::Object(options.clone()));
    same!(canonical(&whole).expect("canonical"), line("eddsa_jcs/canonDocJCS.txt"));
    same!(canonical(&config).expect("canonical"), line("eddsa_jcs/proofCanonJCS.txt"));
    same!(hash(&whole).expect("a hash").to_string(), line("eddsa_jcs/docHashJCS.txt"));
    same!(hash(&config).expect("a hash").to_string(), line("eddsa_jcs/proofHashJCS.txt"));
    let both = to_sign(&options, &document).expect("hashes");
    same!(hex(&both), line("eddsa_jcs/combinedHashJCS.txt"));
    same!(hex(&key.sign(&both)), line("eddsa_jcs/sigHexJCS.txt"));
    let created = When::new(options["created"].as_str().expect("text")).expect("a moment");
    let signed = sign(&document, &key, &created).expect("signed");
    same!(signed["proof"]["proofValue"].as_str().expect("text"), line("eddsa_jcs/sigBTC58JCS.txt"));
    same!(signed, members("eddsa_jcs/signedJCS.json"));
    let proven = check(&members("eddsa_jcs/signedJCS.json")).expect("it holds");
    same!((proven.by, proven.created, proven.document), (key.public(), created, document));
    covered::values("signoff", "W3C vectors of `eddsa-jcs-2022`");
}

/// The published document is signed by a key that has nothing to do with its issuer: a proof that holds is no sign-off.
#[test]
fn the_published_document_is_no_sign_off() {
    let signed = canonical(&Value::Object(members("eddsa_jcs/signedJCS.json"))).expect("canonical");
    let verdict = verify(signed.as_bytes(), &shop::list(), &shop::competencies(), &shop::day());
    assert_eq!(verdict.reasons.first().expect("refused").why, Why::ContextUnknown);
}

/// A document with text beyond ASCII, signed in Python (cryptography 50.0.2) and verified in JavaScript.
#[test]
fn a_document_signed_elsewhere_comes_out_alike() {
    let published = members("signoff/own_signoff_signed.json");
    let mut document = published.clone();
    document.remove("proof");
    let whole = Value::Object(document.clone());
    same!(canonical(&whole).expect("canonical"), text("signoff/own_signoff_canonical.txt"));
    same!(
        hash(&whole).expect("a hash").to_string(),
        "b4e1e7bd974df01674af0f01d6ea55d6ad9364b0948edb8e1bcf436e9b4fac95"
    );
    let created = When::new("2026-03-02T15:04:05Z").expect("a moment");
    same!(sign(&document, &published_key(), &created).expect("signed"), published);
    assert!(check(&published).is_ok());
    covered::values("signoff", "a document signed with the Python library `cryptography`");
}

/// What was signed with a library from elsewhere (`tests/signed/`) is accepted, and its code is that of the file.
#[test]
fn a_sign_off_signed_with_another_library_is_accepted() {
    let file = text("signoff/signed-elsewhere.json");
    let verdict = verify(file.as_bytes(), &shop::list(), &shop::competencies(), &shop::day());
    same!(verdict.reasons, Vec::new());
    let (credential, hash) = (verdict.credential.expect("read"), verdict.hash.expect("hashed"));
    let Hash(digest) = hash;
    let code = Code::new(&credential, hash);
    assert!(code.is(&format!(
        "{} {} {}",
        credential.id,
        hex(&digest[..16]).to_uppercase(),
        credential.assessor.key.fingerprint()
    )));
    assert!(!code.is(&format!("{} {}", credential.id, credential.assessor.key.fingerprint())));
    covered::values("signoff", "a sign-off signed with the npm package of `eddsa-jcs-2022`");
}

/// The demo files are what this program signs: a change of the format shows here first.
#[test]
fn the_demo_files_are_signed_alike_each_time() {
    assert_eq!(shop::list().signed(&shop::root()).expect("signed"), text("signoff/trust.json"));
    assert_eq!(shop::signed(shop::ORDINARY, 1), text("signoff/sign-off.json"));
    read_canonical(text("signoff/key.json").as_bytes()).expect("canonical");
}
