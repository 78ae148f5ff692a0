//! Files in links and square codes: against published vectors, an independent reader of square codes, and damage.

use miniz_oxide::deflate::compress_to_vec;
use rqrr::PreparedImage;
use std::collections::HashSet;
use stepboard::card::Dice;
use stepboard::exchange::link::{
    CODE_MOST, QUIET, SIDE_MOST, Square, TEXT_MOST, crc32, from_base64url, pack, to_base64url, unpack,
};
use stepboard::exchange::{OwnSheet, Refused, SHEET, write};

/// Letters of base64url, RFC 4648, table 2, and some that an address holds besides.
const LETTERS: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.~%+/=";
const ADDRESS: &str = "https://shop.example/stepboard/#/take/";

fn sheet() -> String {
    let sheet: OwnSheet = serde_json::from_value(serde_json::json!({
        "name": "Winter, north room", "edition": 3, "base": "nitrocellulose", "base_hash": "0f1e2d3c4b5a6978",
        "values": { "clear-wait": 3.0, "seal-wait": 2.0, "cold-stop": 17.0 }, "hash": "8899aabbccddeeff",
        "before": "7766554433221100", "by": "Ida (3)", "at": "2026-02-03T07:15:00.000Z", "note": "The heater is weak."
    }))
    .expect("a sheet");
    write(&sheet, SHEET).expect("text")
}

const FIRST_TEXT: &str = r#"{"format":"stepboard-set","version":1,"title":"Monday","task":{"count":12}}"#;
const FIRST: &str = "AUsAXdSxCQAwCADBXVKnMXtkiEBqrUXcXUFUsP72OSlQpieNCeyEZF3C_9hjfC15NBxVA-GEAhY";

/// Text that does not get smaller: seeded printable characters.
fn noise(name: &str, length: usize) -> String {
    let mut dice = Dice::new(name);
    (0..length).map(|_| char::from(b' ' + u8::try_from(dice.below(95)).expect("a byte"))).collect()
}

/// A code with a checksum that fits, whatever stands in it.
fn sealed(body: &[u8]) -> String {
    to_base64url(&[body, &crc32(body).to_le_bytes()].concat())
}

#[test]
fn base64url_is_the_standards() {
    // RFC 4648, section 10, and for the two letters that differ from base64 section 5.
    let vectors = [
        ("", ""),
        ("f", "Zg"),
        ("fo", "Zm8"),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg"),
        ("fooba", "Zm9vYmE"),
        ("foobar", "Zm9vYmFy"),
    ];
    for (bytes, text) in vectors {
        assert_eq!(to_base64url(bytes.as_bytes()), text);
        assert_eq!(from_base64url(text).as_deref(), Ok(bytes.as_bytes()));
    }
    assert_eq!(to_base64url(&[0xFB, 0xFF]), "-_8");
    // Section 3.5: bits left over are zero; section 3.3: no character outside of the alphabet.
    assert_eq!(from_base64url("Zh"), Err((2, 'h')));
    assert_eq!(from_base64url("Zm9v="), Err((5, '=')));
    assert_eq!(from_base64url("Zm9vY"), Err((5, 'Y')));
    assert_eq!(from_base64url("Z+9v"), Err((2, '+')));
}

#[test]
fn the_checksum_is_that_of_gzip() {
    // The check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms; the method is RFC 1952, section 8.
    assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
    assert_eq!(crc32(b""), 0);
}

#[test]
fn what_is_packed_comes_out_as_it_was() {
    let texts = [String::new(), "{}".into(), sheet(), "Öl, 20 °C".repeat(40), noise("noise", 4000)];
    for text in texts {
        let code = pack(&text).expect("short enough");
        assert_eq!(unpack(&code).as_deref(), Ok(text.as_str()));
        assert_eq!(pack(&text).as_deref(), Ok(code.as_str()), "the same text, the same code");
    }
}

/// Links that were handed out keep opening, and are made alike on every device: a text and its code in version 1.
#[test]
fn a_link_of_the_first_version_still_opens() {
    assert_eq!(pack(FIRST_TEXT).as_deref(), Ok(FIRST));
    assert_eq!(unpack(FIRST).as_deref(), Ok(FIRST_TEXT));
}

#[test]
fn one_wrong_character_never_passes() {
    let code = pack(&sheet()).expect("short enough");
    let mut refused = 0;
    // Every character, each with every letter that it is not.
    for (at, was) in code.char_indices() {
        for letter in LETTERS.chars().filter(|letter| *letter != was) {
            let damaged = format!("{}{letter}{}", &code[..at], &code[at + 1..]);
            assert!(unpack(&damaged).is_err(), "{damaged}");
            refused += 1;
        }
    }
    assert!(refused > 10_000, "only {refused} were damaged");
    for end in 0..code.len() {
        assert!(unpack(&code[..end]).is_err(), "cut off after {end} characters");
    }
    assert!(unpack(&format!("{code}A")).is_err(), "a character more");
}

#[test]
fn what_is_too_long_is_refused_before_it_is_unpacked() {
    assert_eq!(
        unpack(&"A".repeat(CODE_MOST + 1)),
        Err(Refused::TooLarge { bytes: CODE_MOST + 1, most: CODE_MOST })
    );
    assert!(matches!(pack(&"a".repeat(TEXT_MOST + 1)), Err(Refused::TooLarge { most: TEXT_MOST, .. })));
    assert!(matches!(pack(&noise("long", 9_000)), Err(Refused::TooLarge { most: CODE_MOST, .. })));
    pack(&"a".repeat(TEXT_MOST)).expect("as long as a text may be");
    // Some 5,000 bytes that would become 5,000,000: neither what they say nor one byte more than that is unpacked.
    let bomb = compress_to_vec(&vec![b'a'; 5_000_000], 10);
    for said in [u16::MAX, 0, 1, 40_000] {
        let code = sealed(&[&[1][..], &said.to_le_bytes(), &bomb].concat());
        let refused = unpack(&code).expect_err("a bomb");
        let early = matches!(refused, Refused::TooLarge { bytes: 65_535, most: TEXT_MOST });
        assert!(early || refused.to_string().contains(&format!("{said} bytes were said")), "{refused}");
    }
}

#[test]
fn what_is_packed_otherwise_is_refused_with_its_reason() {
    let plain = compress_to_vec(b"{}", 6);
    let says = |version: u8, length: u16, rest: &[u8]| {
        unpack(&sealed(&[&[version][..], &length.to_le_bytes(), rest].concat()))
            .map_err(|error| error.to_string())
    };
    assert_eq!(says(1, 2, &plain), Ok("{}".into()));
    assert!(says(2, 2, &plain).is_err_and(|why| why.contains("`version` is 2; 1 to 1")));
    assert!(says(1, 3, &plain).is_err_and(|why| why.contains("3 bytes were said")));
    assert!(says(1, 2, &[&plain[..], &[0]].concat()).is_err_and(|why| why.contains("2 bytes were said")));
    assert!(
        says(1, 2, &compress_to_vec(&[b'{', 0xFF], 6)).is_err_and(|why| why.contains("no text at byte 1"))
    );
    for code in ["", "AAAA", "AQAA"] {
        assert!(unpack(code).is_err_and(|why| why.to_string().contains("cut off")), "{code}");
    }
}

/// What an independent reader reads off a code that is drawn four pixels a module, with its quiet zone.
fn read_off(square: &Square) -> (String, char, usize) {
    const PIXELS: usize = 4;
    let side = (square.side() + 2 * QUIET) * PIXELS;
    let module = |at: usize| (at / PIXELS).wrapping_sub(QUIET);
    let mut image = PreparedImage::prepare_from_greyscale(side, side, |x, y| {
        if square.is_dark(module(x), module(y)) { 0 } else { 255 }
    });
    let grids = image.detect_grids();
    let (meta, text) = grids.first().expect("a code").decode().expect("it is read");
    let level = ['M', 'L', 'H', 'Q'][usize::from(meta.ecc_level)];
    (text, level, meta.version.0)
}

/// ISO/IEC 18004 (2015), table 7: bytes that versions 1, 10, 20 and 30 hold at level L.
const HOLDS: [(usize, usize); 4] = [(1, 17), (10, 271), (20, 858), (30, 1732)];

#[test]
fn another_reader_reads_the_square_code() {
    let link = format!("{ADDRESS}{}", pack(&sheet()).expect("short enough"));
    let square = Square::of(&link).expect("it fits");
    let (text, level, version) = read_off(&square);
    assert_eq!((text, level), (link, square.level()));
    assert_eq!(square.side(), 17 + 4 * version);
    for (version, holds) in HOLDS {
        let text = noise("full", holds).to_lowercase();
        let (read, level, found) = read_off(&Square::of(&text).expect("it fits"));
        assert_eq!((read, level, found), (text.clone(), 'L', version));
        // One byte more wants the next version.
        let more = Square::of(&format!("{text}a"));
        assert_eq!(more.as_ref().map(Square::side), (version < 30).then_some(17 + 4 * (version + 1)));
    }
    // Where there is room, more faults are corrected.
    assert_eq!(read_off(&Square::of("bench").expect("it fits")), ("bench".into(), 'H', 1));
    assert_eq!(SIDE_MOST, 137);
}

#[test]
fn the_drawing_is_the_code() {
    let square = Square::of(ADDRESS).expect("it fits");
    let mut drawn = HashSet::new();
    for run in square.path().split('M').skip(1) {
        let numbers: Vec<usize> =
            run.split(|c: char| !c.is_ascii_digit()).filter_map(|n| n.parse().ok()).collect();
        let [x, y, long, 1, back] = numbers[..] else { panic!("{run}") };
        assert_eq!(long, back);
        drawn.extend((x..x + long).map(|x| (x - QUIET, y - QUIET)));
    }
    let all = (0..square.side()).flat_map(|y| (0..square.side()).map(move |x| (x, y)));
    assert_eq!(drawn, all.filter(|(x, y)| square.is_dark(*x, *y)).collect());
}

#[test]
fn a_set_with_its_own_sheet_and_cards_fits_one_square_code() {
    let text = r#"{
  "format": "stepboard-set",
  "version": 1,
  "title": "Monday, spray side",
  "note": "Ask if the gun spits. The heater in the north room is weak.",
  "by": "Ines (12)",
  "at": "2027-03-12T08:00:00.000Z",
  "sheet": {
    "own": {
      "name": "Winter, north room",
      "edition": 3,
      "base": "nitrocellulose",
      "base_hash": "0f1e2d3c4b5a6978",
      "values": {
        "seal-wait": 2.0,
        "clear-wait": 3.0,
        "cold-stop": 17.0
      },
      "hash": "8899aabbccddeeff",
      "before": "7766554433221100",
      "by": "Ines (12)",
      "at": "2027-02-03T07:15:00.000Z",
      "note": "The heater is weak."
    }
  },
  "task": {
    "count": 12,
    "stages": [
      "room",
      "seal",
      "clear"
    ],
    "competencies": [],
    "families": [],
    "tickets": [],
    "no_pictures": false,
    "hard": "usual",
    "purpose": "check",
    "same_seed": null,
    "pass": {
      "right": 10,
      "safety": true
    }
  },
  "from": "2027-03-12",
  "until": "2027-03-19",
  "own_cards": [
    {
      "tag": "not_computed",
      "question": "Where does the key of the paint store hang?",
      "options": [
        "At the door",
        "In the office",
        "In the booth"
      ],
      "right": [
        2
      ],
      "why": "It is signed out in the office."
    }
  ]
}
"#;
    let link = format!("{ADDRESS}{}", pack(text).expect("short enough"));
    let square = Square::of(&link).expect("it fits");
    assert_eq!(read_off(&square).0, link);
    assert!(link.len() < 700 && square.side() <= 93, "{} characters, {} modules", link.len(), square.side());
}
