//! Laws of signed files: whatever is changed in one is noticed, and only what is meant can be said.

mod support;

use proptest::prelude::*;
use serde_json::Value;
use std::sync::LazyLock;
use stepboard::signoff::{
    BYTES_MOST, Book, DEPTH_MOST, Locked, TrustList, When, Why, WrappedKey, canonical, credential_id, read,
    verify,
};
use support::any::laws;
use support::shop;

/// Files that differ from one in one byte: each bit of each byte turned, each byte left out, each byte doubled.
fn changed(file: &[u8]) -> impl Iterator<Item = (usize, Vec<u8>)> + '_ {
    const BITS: u32 = 8;
    (0..file.len()).flat_map(move |place| {
        let turned = (0..BITS).map(move |bit| {
            let mut other = file.to_vec();
            other[place] ^= 1 << bit;
            other
        });
        let mut without = file.to_vec();
        without.remove(place);
        let mut twice = file.to_vec();
        twice.insert(place, file[place]);
        turned.chain([without, twice]).map(move |other| (place, other))
    })
}

#[test]
fn every_change_of_one_byte_of_a_sign_off_is_refused() {
    let (list, competencies, day) = (shop::list(), shop::competencies(), shop::day());
    let file = shop::signed(shop::ORDINARY, 1);
    assert!(verify(file.as_bytes(), &list, &competencies, &day).accepted(), "unchanged");
    let mut tried = 0;
    for (place, other) in changed(file.as_bytes()).filter(|(_, other)| other != file.as_bytes()) {
        let verdict = verify(&other, &list, &competencies, &day);
        assert!(!verdict.accepted(), "byte {place}: {}", String::from_utf8_lossy(&other));
        tried += 1;
    }
    assert!(tried > 20_000, "{tried}");
}

#[test]
fn every_change_of_one_byte_of_a_trust_list_is_refused() {
    let file = shop::list().signed(&shop::root()).expect("signed");
    let root = shop::root().public();
    assert_eq!(TrustList::read(file.as_bytes(), Some(&root)), Ok(shop::list()));
    for (place, other) in changed(file.as_bytes()).filter(|(_, other)| other != file.as_bytes()) {
        assert!(TrustList::read(&other, Some(&root)).is_err(), "byte {place}");
    }
}

#[test]
fn what_readers_could_take_differently_is_not_read() {
    let why = |text: &str| read(text.as_bytes()).expect_err(text).why;
    assert_eq!(why(r#"{"a":1,"a":1}"#), Why::DuplicateMember);
    assert_eq!(why(r#"{"b":{"a":1,"\u0061":2}}"#), Why::DuplicateMember);
    for number in ["1.5", "1.0", "1e2", "-0", "9007199254740992", "-9007199254740992", "1e400"] {
        let found = why(&format!("[{number}]"));
        assert!(matches!(found, Why::NumberNotWhole | Why::NotJson), "{number}: {found:?}");
    }
    assert!(read(b"[9007199254740991,-9007199254740991]").is_ok());
    for text in ["", "{", "{}{}", "[1,]", "nul", "\"\\ud800\"", "[01]", "{\"a\"}", "// x"] {
        assert_eq!(why(text), Why::NotJson, "{text}");
    }
    assert_eq!(read(b"\"\xff\"").expect_err("no UTF-8").why, Why::NotJson);
    let deep = |levels: usize| format!("{}{}", "[".repeat(levels), "]".repeat(levels));
    assert!(read(deep(DEPTH_MOST).as_bytes()).is_ok());
    assert_eq!(why(&deep(DEPTH_MOST + 1)), Why::TooDeep);
    assert_eq!(why(&deep(100_000)), Why::TooDeep);
    let long = |bytes: usize| format!("\"{}\"", "x".repeat(bytes - 2));
    assert!(read(long(BYTES_MOST).as_bytes()).is_ok());
    assert_eq!(why(&long(BYTES_MOST + 1)), Why::TooLarge);
}

/// Any document without fractions.
fn document() -> impl Strategy<Value = Value> {
    let whole = -9_007_199_254_740_991_i64..=9_007_199_254_740_991;
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::Bool),
        whole.prop_map(Value::from),
        any::<String>().prop_map(Value::String),
    ];
    leaf.prop_recursive(4, 24, 6, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..6).prop_map(Value::Array),
            proptest::collection::btree_map(any::<String>(), inner, 0..6)
                .prop_map(|members| Value::Object(members.into_iter().collect())),
        ]
    })
}

static FILE: LazyLock<String> = LazyLock::new(|| shop::signed(shop::ORDINARY, 1));

proptest! {
    #![proptest_config(laws())]

    #[test]
    fn any_other_byte_anywhere_in_a_sign_off_is_refused(place in 0..FILE.len(), byte in any::<u8>()) {
        let mut other = FILE.clone().into_bytes();
        let same = other[place] == byte;
        other[place] = byte;
        let verdict = verify(&other, &shop::list(), &shop::competencies(), &shop::day());
        prop_assert_eq!(verdict.accepted(), same, "byte {}: {}", place, byte);
    }

    #[test]
    fn the_canonical_form_is_read_back_and_stays(value in document()) {
        let text = canonical(&value).expect("canonical");
        let back = read(text.as_bytes());
        prop_assert_eq!(back.as_ref(), Ok(&value));
        prop_assert_eq!(canonical(&value).expect("canonical"), text);
    }

    #[test]
    fn nothing_that_is_read_makes_the_reader_fail(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        prop_assert!(!verify(&bytes, &shop::list(), &shop::competencies(), &shop::day()).accepted());
        prop_assert!(Book::open(&String::from_utf8_lossy(&bytes), None).is_err());
    }

    /// RFC 9562 section 5.4: four bits of version, two of variant, the rest random.
    #[test]
    fn names_of_sign_offs_are_random_uuids(random in any::<[u8; 16]>()) {
        let id = credential_id(random);
        let digits: String = id.trim_start_matches("urn:uuid:").replace('-', "");
        prop_assert_eq!(digits.len(), 32);
        prop_assert_eq!(digits.as_bytes()[12], b'4');
        prop_assert!(b"89ab".contains(&digits.as_bytes()[16]));
        let kept: String = random.iter().map(|byte| format!("{byte:02x}")).collect();
        prop_assert_eq!(&digits[..12], &kept[..12]);
        prop_assert_eq!(&digits[17..], &kept[17..]);
    }

    #[test]
    fn moments_are_those_of_the_calendar(
        (year, month, day) in (1900..2101_u32, 0..14_u32, 0..33_u32),
        (hour, minute, second) in (0..26_u32, 0..62_u32, 0..62_u32),
    ) {
        let text = format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}Z");
        // The calendar of the TOML library, another implementation; a leap second is not taken here.
        let other = text.parse::<toml::value::Datetime>().is_ok() && second < 60;
        prop_assert_eq!(When::new(&text).is_ok(), other, "{}", text);
    }
}

/// By the Python library `dateutil` 2.9.0 (`relativedelta`): a day that the month does not have becomes its last.
#[test]
fn months_later_is_the_same_day_or_the_last_of_the_month() {
    for (from, months, to) in [
        ("2000-03-31", 1, "2000-04-30"),
        ("2026-03-02", 24, "2028-03-02"),
        ("2024-02-29", 12, "2025-02-28"),
        ("2023-11-30", 3, "2024-02-29"),
        ("2026-12-15", 1, "2027-01-15"),
    ] {
        let moment = |day: &str| When::new(&format!("{day}T15:04:05Z")).expect("a moment");
        assert_eq!(moment(from).plus_months(months), Some(moment(to)), "{from} and {months} months");
    }
}

#[test]
fn moments_have_one_form() {
    for text in [
        "2026-02-29T00:00:00Z",
        "1900-02-29T00:00:00Z",
        "2026-3-02T15:04:05Z",
        "2026-03-02t15:04:05Z",
        "2026-03-02T15:04:05z",
        "2026-03-02 15:04:05Z",
        "2026-03-02T15:04:05",
        "2026-03-02T15:04:05.0Z",
        "2026-03-02T15:04:05+00:00",
        "2026-03-02T24:00:00Z",
        " 2026-03-02T15:04:05Z",
        "２026-03-02T15:04:05Z",
    ] {
        assert_eq!(When::new(text).expect_err(text).why, Why::DateUnreadable);
    }
    assert!(When::new("2000-02-29T23:59:59Z").is_ok());
    assert!(
        When::day_or_moment("2026-03-02").expect("a day") > When::new("2026-03-02T15:04:05Z").expect("one")
    );
    assert!(When::day_or_moment("2026-03-32").is_err());
}

/// Every byte beside the sealed seed: the file is not read. Bytes of salt, nonce and seal: the passphrase no longer opens it.
#[test]
fn a_changed_key_file_does_not_open() {
    let wrapped = WrappedKey::wrap(&shop::assessor(), shop::PASSPHRASE, &[9; 32]).expect("wrapped");
    let text = wrapped.text().expect("a file");
    let mut readable = Vec::new();
    for (_, other) in changed(text.as_bytes()).filter(|(_, other)| other != text.as_bytes()) {
        readable.extend(WrappedKey::read(&other).ok());
    }
    // Deriving takes long: some of those that are still read.
    const TRIED: usize = 8;
    let step = (readable.len() / TRIED).max(1);
    let tried: Vec<&WrappedKey> = readable.iter().step_by(step).collect();
    assert!(tried.len() >= TRIED, "{}", tried.len());
    for other in tried {
        let opened = other.open(shop::PASSPHRASE).map(|key| key.public());
        assert_eq!(opened, Err(Locked::WrongPassphrase), "{other:?}");
    }
}
