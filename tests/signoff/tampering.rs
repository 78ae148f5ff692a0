//! What somebody could try with a signed file, and what is said of it.

use super::support::shop;
use serde_json::{Map, Value, json};
use stepboard::signoff::{PublicKey, SecretKey, When, Why, canonical, read, read_canonical, sign, verify};

fn verdict(file: &[u8]) -> Result<(), Vec<Why>> {
    let verdict = verify(file, &shop::list(), &shop::competencies(), &shop::day());
    if verdict.accepted() { Ok(()) } else { Err(verdict.reasons.iter().map(|reason| reason.why).collect()) }
}

/// Members of the signed demo file.
fn members() -> Map<String, Value> {
    read_canonical(shop::signed(shop::ORDINARY, 1).as_bytes()).expect("canonical")
}

fn file(members: &Map<String, Value>) -> Vec<u8> {
    canonical(&Value::Object(members.clone())).expect("canonical").into_bytes()
}

/// The file with a value put at a path.
fn with(path: &str, value: Value) -> Vec<u8> {
    let mut whole = Value::Object(members());
    *whole.pointer_mut(path).unwrap_or_else(|| panic!("{path} is there")) = value;
    canonical(&whole).expect("canonical").into_bytes()
}

/// The file with other members, signed anew by somebody.
fn forged(key: &SecretKey, change: impl Fn(&mut Value)) -> Vec<u8> {
    let mut document = members();
    document.remove("proof");
    let created = When::new(document["validFrom"].as_str().expect("text")).expect("a moment");
    let mut whole = Value::Object(document);
    change(&mut whole);
    file(&sign(whole.as_object().expect("an object"), key, &created).expect("signed"))
}

/// The changes tried on the published vector (W3C, Data Integrity EdDSA Cryptosuites v1.0, section 3.3): eight that the
/// standard notices, and the two that it lets pass, here refused.
#[test]
fn tampering_is_refused_where_the_standard_refuses_and_where_it_does_not() {
    let contexts = members()["@context"].as_array().expect("a list").clone();
    let swapped: Vec<Value> = contexts.iter().rev().cloned().collect();
    let more: Vec<Value> = contexts.iter().cloned().chain([json!("https://example.org/more")]).collect();
    let mut extra = members();
    extra.insert("note".to_owned(), json!("x"));
    let mut bare = members();
    bare["proof"].as_object_mut().expect("an object").remove("@context");
    let value = members()["proof"]["proofValue"].as_str().expect("text").to_owned();
    let last = if value.ends_with('Y') { "Z" } else { "Y" };
    let value = format!("{}{last}", &value[..value.len() - 1]);
    let told = shop::signed(shop::ORDINARY, 1);
    let (first, rest) = told.strip_prefix('{').expect("an object").split_once("],").expect("its contexts");
    let rest = rest.strip_suffix('}').expect("an object");
    let reordered = format!("{{{rest},{first}]}}");
    assert_eq!(read(reordered.as_bytes()), read(told.as_bytes()), "the same content");
    for (change, bytes, why) in [
        ("one letter", with("/name", json!("Film levelled without cutting througs")), Why::SignatureWrong),
        ("another member", file(&extra), Why::SignatureWrong),
        (
            "created a second later",
            with("/proof/created", json!("2026-03-02T15:04:06Z")),
            Why::SignatureWrong,
        ),
        ("another purpose", with("/proof/proofPurpose", json!("authentication")), Why::ProofUnknown),
        ("contexts of the proof left out", file(&bare), Why::ContextDiffers),
        ("contexts swapped", with("/@context", json!(swapped)), Why::ContextDiffers),
        ("a letter of the signature", with("/proof/proofValue", json!(value)), Why::SignatureWrong),
        ("members in another order", reordered.into_bytes(), Why::NotCanonical),
        ("a context behind the signed ones", with("/@context", json!(more)), Why::ContextDiffers),
    ] {
        assert_eq!(verdict(&bytes), Err(vec![why]), "{change}");
    }
    for (change, bytes) in [
        ("a blank behind a comma", told.replacen("\",\"", "\", \"", 1)),
        ("a line end behind it", format!("{told}\n")),
        ("a mark of byte order", format!("\u{feff}{told}")),
        ("a letter written as an escape", told.replacen("Demonstration", "\\u0044emonstration", 1)),
        ("a slash written as an escape", told.replacen("https://", "https:\\/\\/", 1)),
    ] {
        assert_ne!(bytes, told, "{change}");
        assert!(verdict(bytes.as_bytes()).is_err(), "{change}");
    }
}

/// Documents that are signed well and still no sign-off of this shop.
#[test]
fn a_good_signature_is_not_enough() {
    let put = |path: &'static str, value: Value| {
        move |whole: &mut Value| *whole.pointer_mut(path).expect("it is there") = value.clone()
    };
    let (assessor, stranger) = (shop::assessor(), shop::stranger());
    let told = |key: &SecretKey| json!(key.public().did());
    let subject = "/credentialSubject/identifier/0/identityHash";
    let competency = "/credentialSubject/achievement/id";
    for (what, bytes, why) in [
        ("nothing changed", forged(&assessor, |_| ()), vec![]),
        (
            "the key of somebody else",
            forged(&stranger, put("/issuer/id", told(&stranger))),
            vec![Why::SignerUnknown],
        ),
        ("another issuer than the key", forged(&stranger, |_| ()), vec![Why::IssuerNotKey]),
        (
            "the issuer an address",
            forged(&assessor, put("/issuer/id", json!("https://vc.example/issuers/5678"))),
            vec![Why::KeyUnreadable],
        ),
        (
            "another shop",
            forged(&assessor, put("/issuer/name", json!("Other shop"))),
            vec![Why::SignerDiffers],
        ),
        (
            "another assessor's name",
            forged(&assessor, put("/credentialSubject/source/name", json!("Ilse Brandt"))),
            vec![Why::SignerDiffers],
        ),
        ("for themselves", forged(&assessor, put(subject, json!("a-2"))), vec![Why::OwnWork]),
        ("their number in capitals", forged(&assessor, put(subject, json!("A-2"))), vec![Why::WordsUnfit]),
        (
            "an unknown competency",
            forged(&assessor, put(competency, json!("urn:stepboard:competency:flying"))),
            vec![Why::CompetencyUnknown],
        ),
        (
            "a safety competency told as an ordinary one",
            forged(&assessor, put(competency, json!("urn:stepboard:competency:booth-run"))),
            vec![Why::ProfileDiffers],
        ),
        (
            "another day than that of the proof",
            forged(&assessor, put("/validFrom", json!("2026-03-01T15:04:05Z"))),
            vec![Why::DatesDisordered],
        ),
        (
            "no end",
            forged(&assessor, |whole| drop(whole.as_object_mut().expect("one").remove("validUntil"))),
            vec![Why::ShapeUnknown],
        ),
        (
            "an end at its beginning",
            forged(&assessor, put("/validUntil", json!("2026-03-02T15:04:05Z"))),
            vec![Why::DatesDisordered],
        ),
        (
            "a second longer than the 24 months of its competency",
            forged(&assessor, put("/validUntil", json!("2028-03-02T15:04:06Z"))),
            vec![Why::ValidTooLong],
        ),
        (
            "another member",
            forged(&assessor, |whole| whole["credentialStatus"] = json!({})),
            vec![Why::ShapeUnknown],
        ),
        (
            "a criterion not met",
            forged(&assessor, put("/credentialSubject/result/0/status", json!("Failed"))),
            vec![Why::ShapeUnknown],
        ),
        (
            "nothing observed",
            forged(&assessor, |whole| whole["evidence"].as_array_mut().expect("one").truncate(1)),
            vec![Why::ShapeUnknown],
        ),
        (
            "a name turned round",
            forged(&assessor, |whole| {
                whole["name"] = json!("Film \u{202e}levelled");
                whole["credentialSubject"]["achievement"]["name"] = whole["name"].clone();
            }),
            vec![Why::WordsUnfit],
        ),
        (
            "contexts of another world",
            forged(&assessor, put("/@context", json!(["https://www.w3.org/ns/credentials/v2"]))),
            vec![Why::ContextUnknown],
        ),
    ] {
        let found = verdict(&bytes).err().unwrap_or_default();
        assert_eq!(found, why, "{what}");
    }
}

/// A safety competency signed though the cards did not show enough: no reason makes it good.
#[test]
fn a_safety_competency_without_its_evidence_is_refused_however_well_it_is_signed() {
    let document = |whole: &mut Value| {
        let results = whole["credentialSubject"]["result"].as_array_mut().expect("a list");
        results.last_mut().expect("the knowledge")["status"] = json!("InProgress");
        let reason = json!({
            "type": ["Evidence"], "name": "Reason", "genre": "Reason for signing without it",
            "narrative": "Knows it.",
        });
        whole["evidence"].as_array_mut().expect("a list").insert(1, reason);
    };
    assert_eq!(verdict(&forged(&shop::assessor(), document)), Ok(()), "an ordinary one may be");
    let safety = |whole: &mut Value| {
        document(whole);
        whole["credentialSubject"]["achievement"]["id"] = json!("urn:stepboard:competency:booth-run");
        whole["credentialSubject"]["achievement"]["tag"] = json!(["safety"]);
    };
    assert_eq!(verdict(&forged(&shop::assessor(), safety)), Err(vec![Why::SafetyNotShown]));
}

/// The order of the group, little-endian: 2^252 + 27742317777372353535851937790883648493 (RFC 8032 section 5.1).
const ORDER: [u8; 32] = [
    0xed, 0xd3, 0xf5, 0x5c, 0x1a, 0x63, 0x12, 0x58, 0xd6, 0x9c, 0xf7, 0xa2, 0xde, 0xf9, 0xde, 0x14, 0, 0, 0,
    0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x10,
];

#[test]
fn a_second_form_of_a_signature_is_refused() {
    // RFC 8032 section 5.1.7: S must be below the order; S and S plus the order are one number to whoever does not look.
    let whole = Value::Object(members());
    let text = whole.pointer("/proof/proofValue").and_then(Value::as_str).expect("a signature");
    let mut signature = bs58::decode(&text[1..]).into_vec().expect("base 58");
    let mut carry = 0;
    for (byte, order) in signature[32..].iter_mut().zip(ORDER) {
        carry += u16::from(*byte) + u16::from(order);
        *byte = carry.to_le_bytes()[0];
        carry >>= 8;
    }
    assert_eq!(carry, 0, "the sum has 32 bytes");
    let second = format!("z{}", bs58::encode(signature).into_string());
    assert_eq!(verdict(&with("/proof/proofValue", json!(second))), Err(vec![Why::SignatureWrong]));
}

#[test]
fn keys_under_which_one_signature_fits_many_files_are_no_keys() {
    // Points of order 1, 2 and 4: y is 1, -1 and 0 (RFC 8032 section 5.1, the curve equation), either sign of x.
    let y = |first: u8, rest: u8, last: u8| {
        let mut bytes = [rest; 32];
        (bytes[0], bytes[31]) = (first, last);
        bytes
    };
    for weak in [y(1, 0, 0), y(0xec, 0xff, 0x7f), y(0, 0, 0), y(0, 0, 0x80)] {
        let refused = PublicKey::new(weak).expect_err("a weak key");
        assert_eq!(refused.why, Why::KeyUnreadable, "{weak:02x?}");
    }
}
