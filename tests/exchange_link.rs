//! Files in links and square codes: against published vectors, an independent reader of square codes, and damage.

mod support;

use miniz_oxide::deflate::compress_to_vec;
use rqrr::PreparedImage;
use std::collections::HashSet;
use stepboard::card::Dice;
use stepboard::exchange::link::{
    CODE_MOST, Faulty, QUIET, SIDE_MOST, Square, TEXT_MOST, code_in, crc32, from_base64url, pack,
    to_base64url, unpack,
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

/// Of so many that were changed, at most one may be taken for one that was cut short.
const CUT_OF: u32 = 10;

#[test]
fn one_wrong_character_never_passes() {
    let code = pack(&sheet()).expect("short enough");
    let (mut refused, mut cut) = (0, 0);
    // Every character, each with every letter that it is not.
    for (at, was) in code.char_indices() {
        for letter in LETTERS.chars().filter(|letter| *letter != was) {
            let damaged = format!("{}{letter}{}", &code[..at], &code[at + 1..]);
            let why = unpack(&damaged).expect_err(&damaged);
            cut += u32::from(matches!(why, Refused::Link(Faulty::Cut { .. })));
            refused += 1;
        }
    }
    assert!(refused > 10_000, "only {refused} were damaged");
    // Some end where they did not end before; the words for it say that more must follow, which is true of them.
    assert!(cut * CUT_OF < refused, "{cut} of {refused} that were changed are told to be cut short");
    for end in 0..code.len() {
        assert_eq!(unpack(&code[..end]), Err(Faulty::Cut { characters: end }.into()));
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

#[test]
fn what_is_pasted_is_a_link_of_ours_or_is_told_what_it_is() {
    // The code alone, the whole link, and messages as they hold one.
    for pasted in [
        FIRST.to_owned(),
        format!("take/{FIRST}"),
        format!(" #/take/{FIRST}\n"),
        format!("{ADDRESS}{FIRST}"),
        format!("For Monday: {ADDRESS}{FIRST}. Ask if the gun spits."),
        format!("<{ADDRESS}{FIRST}>"),
        format!("(“{ADDRESS}{FIRST}”)"),
    ] {
        assert_eq!(code_in(&pasted), Ok(FIRST), "{pasted}");
    }
    let refused = |pasted: &str| code_in(pasted).and_then(unpack).expect_err(pasted);
    let slug = |pasted: &str| refused(pasted).slug();
    assert_eq!([slug(""), slug(" \n ")], ["link-empty"; 2]);
    for elsewhere in [
        "https://shop.example/prices?list=3",
        "www.shop.example",
        "shop.example/take/abc",
        "https://shop.example/stepboard/#/crew",
        "see https://shop.example/ for it",
    ] {
        assert_eq!(slug(elsewhere), "link-elsewhere", "{elsewhere}");
        assert!(refused(elsewhere).told()[0].1.contains("shop.example"));
    }
    for none in ["Bring the gun on Monday", "holiday", "{\"format\": 1}", "QUJDREVGR0hJSktMTU5PUA"] {
        assert_eq!(slug(none), "link-none", "{none}");
    }
    assert_eq!(refused("caf\u{e9}"), Faulty::Letter { at: 4, found: "\u{e9}".into() }.into());
    // What does not show is told by its number.
    assert_eq!(refused("AU\u{202e}sA"), Faulty::Letter { at: 3, found: "\\u{202e}".into() }.into());
    assert_eq!(slug(ADDRESS), "link-cut");
    assert_eq!(slug(&format!("{ADDRESS}{}", &FIRST[..30])), "link-cut");
}

#[test]
fn each_reason_for_refusing_a_link_has_words_without_those_of_a_decoder() {
    let content = support::content();
    let texts = content.texts("en");
    let all = [
        Faulty::Empty,
        Faulty::Elsewhere { found: "www.shop.example".into() },
        Faulty::NoLink { found: "holiday".into() },
        Faulty::Letter { at: 3, found: "!".into() },
        Faulty::Cut { characters: 1 },
        Faulty::Changed { said: 1, found: 2 },
        Faulty::Packed { said: 3 },
        Faulty::NoText { at: 4 },
    ];
    for faulty in all {
        let refused = Refused::from(faulty);
        let args = refused.told().into_iter().map(|(key, told)| (key.to_owned(), told)).collect();
        let words = texts.fill(&format!("app.refused.{}", refused.slug()), &args);
        assert!(words.split_whitespace().count() > 8 && !words.contains(['{', '}']), "{refused:?}: {words}");
        for decoder in ["base64", "checksum", "UTF-8", "byte", "deflate", "expected"] {
            assert!(!words.contains(decoder), "{words}");
        }
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
