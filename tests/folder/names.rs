//! Names, paths and who asks.

use stepboard::exchange::folder::{Name, Place, Sort, basic};

#[test]
fn a_name_is_its_content_and_nothing_else_is_a_name() {
    let name = Name::of(Sort::Results, "{}");
    // SHA-256 of `{}` begins with these 16 bytes; Python: hashlib.sha256(b"{}").hexdigest()[:32].
    assert_eq!(name.as_str(), "stepboard-results-44136fa355b3678a1146ad16f7e8649e.json");
    assert_eq!(Name::parse(name.as_str()).as_ref(), Some(&name));
    assert!(name.fits(b"{}") && !name.fits(b"{ }"));
    for other in [
        "",
        ".json",
        "stepboard-results-.json",
        "stepboard-results-44136fa355b3678a1146ad16f7e8649.json",
        "stepboard-results-44136FA355b3678a1146ad16f7e8649e.json",
        "stepboard-results-44136fa355b3678a1146ad16f7e8649e.json~",
        "../stepboard-results-44136fa355b3678a1146ad16f7e8649e.json",
        "stepboard-other-44136fa355b3678a1146ad16f7e8649e.json",
        "stepboard-results-44136fa355b3678a1146ad16f7e8649é.json",
    ] {
        assert_eq!(Name::parse(other), None, "{other}");
    }
}

#[test]
fn a_place_is_a_path_on_the_same_server() {
    for typed in ["shop", "/shop", "shop/", "/shop/", " /shop/ "] {
        assert_eq!(Place::new(typed).expect("a path").as_str(), "/shop/");
    }
    assert_eq!(Place::new("/dav/shop%20floor/").expect("a path").as_str(), "/dav/shop%20floor/");
    let long = "a".repeat(201);
    for other in [
        "",
        "/",
        "https://elsewhere/shop/",
        "//elsewhere/shop",
        "a/../b",
        "./a",
        "a?b",
        "a#b",
        "a b",
        "%2",
        "%zz",
        "ü",
        "a\\b",
        &long,
    ] {
        let refused = Place::new(other).expect_err(other);
        assert!(refused.to_string().starts_with("`address` is "), "{refused}");
    }
}

/// RFC 7617, sections 2 and 2.1, and RFC 4648, section 10 for the ends of base 64.
#[test]
fn who_asks_is_written_as_the_standards_have_it() {
    assert_eq!(basic("Aladdin", "open sesame"), "Basic QWxhZGRpbjpvcGVuIHNlc2FtZQ==");
    assert_eq!(basic("test", "123£"), "Basic dGVzdDoxMjPCow==");
    assert_eq!(basic("", "fooba"), "Basic OmZvb2Jh");
    assert_eq!(basic("f", ""), "Basic Zjo=");
}
