//! What other programs get by open standards, each rule named with the section of the standard that asks for it.

#[path = "standards/case.rs"]
mod case;
#[path = "standards/qti.rs"]
mod qti;
mod support;
#[path = "standards/xapi.rs"]
mod xapi;

use stepboard::exchange::{Home, uuid5, zip};

fn home() -> Home {
    Home::new("https://example.org/shop").expect("an address")
}

/// Python's `uuid.uuid5(uuid.NAMESPACE_URL, ...)`.
#[test]
fn names_are_those_of_rfc_9562() {
    for (address, name) in [
        ("https://example.org/shop/device/7/answer/42", "c8e4b661-ce73-5547-b0dc-9676ad8972d3"),
        ("http://www.example.com/", "fcde3c85-2270-590f-9e7c-ee003d65e0e2"),
        ("", "1b4db7eb-4057-5ddf-91e0-36dec72071f5"),
    ] {
        assert_eq!(uuid5(address).to_string(), name);
    }
}

#[test]
fn a_home_is_an_address() {
    assert_eq!(home().below(&["device", "7", "answer", "42"]), "https://example.org/shop/device/7/answer/42");
    // RFC 3986, section 2: whatever a part holds, it stays one part.
    assert_eq!(home().below(&["a/../b ü?#"]), "https://example.org/shop/a%2F..%2Fb%20%C3%BC%3F%23");
    for text in [
        "",
        "example.org",
        "https://",
        "https://a b",
        "https://a/?q",
        "https://a/",
        "ftp://a",
        "https://a\u{202e}",
        "javascript://a",
    ] {
        let refused = Home::new(text).expect_err(text).to_string();
        assert!(refused.contains("`home`") && refused.contains("https://"), "{refused}");
    }
}

/// PKWARE APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16; `tests/schema` has another reader try the check sums.
#[test]
fn archives_store_what_they_are_given() {
    let files = [("a.txt".to_owned(), b"hello".to_vec()), ("c".to_owned(), Vec::new())];
    let bytes = zip(&files).expect("small");
    assert_eq!(zip(&files).as_ref(), Some(&bytes), "the same files make the same archive");
    let places = |mark: &[u8]| bytes.windows(4).filter(|window| *window == mark).count();
    assert_eq!((places(b"PK\x03\x04"), places(b"PK\x01\x02"), places(b"PK\x05\x06")), (2, 2, 1));
    // CRC-32 of `hello`: `zlib.crc32` of Python.
    assert_eq!(bytes.get(14..18), Some(0x3610_a686_u32.to_le_bytes().as_slice()));
}
