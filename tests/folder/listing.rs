//! Listings, as servers write them and as nobody should.

use crate::proxy::Dice;
use stepboard::exchange::folder::{Name, NoListing, listing};

const A: &str = "stepboard-results-0123456789abcdef0123456789abcdef.json";
const B: &str = "stepboard-sheet-0123456789abcdef0123456789abcdef.json";

fn whole(responses: &str) -> String {
    format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<D:multistatus xmlns:D=\"DAV:\">{responses}</D:multistatus>\n"
    )
}

fn response(href: &str) -> String {
    format!(
        "<D:response><D:href>{href}</D:href><D:propstat><D:prop><D:resourcetype/>\
         <D:getcontentlength>12</D:getcontentlength></D:prop><D:status>HTTP/1.1 200 OK</D:status>\
         </D:propstat></D:response>"
    )
}

fn names(body: &str) -> Vec<String> {
    let entries = listing(body.as_bytes()).expect(body);
    entries.into_iter().map(|entry| entry.name.to_string()).collect()
}

/// The form of RFC 4918, sections 9.1.5 and 14, as Apache 2.4.71 writes it: prefixes of each response its own, a second
/// `propstat` for what a folder does not have.
#[test]
fn apache_s_listing_is_read() {
    let body = format!(
        "<?xml version=\"1.0\" encoding=\"utf-8\"?>\n<D:multistatus xmlns:D=\"DAV:\" xmlns:ns0=\"DAV:\">\n\
         <D:response xmlns:lp1=\"DAV:\" xmlns:g0=\"DAV:\">\n<D:href>/shop/</D:href>\n<D:propstat>\n<D:prop>\n\
         <lp1:resourcetype><D:collection/></lp1:resourcetype>\n</D:prop>\n<D:status>HTTP/1.1 200 OK</D:status>\n\
         </D:propstat>\n<D:propstat>\n<D:prop>\n<g0:getcontentlength/>\n</D:prop>\n\
         <D:status>HTTP/1.1 404 Not Found</D:status>\n</D:propstat>\n</D:response>\n\
         <D:response xmlns:lp1=\"DAV:\" xmlns:lp2=\"http://apache.org/dav/props/\">\n<D:href>/shop/{A}</D:href>\n\
         <D:propstat>\n<D:prop>\n<lp1:resourcetype/>\n<lp1:getcontentlength>6</lp1:getcontentlength>\n</D:prop>\n\
         <D:status>HTTP/1.1 200 OK</D:status>\n</D:propstat>\n</D:response>\n</D:multistatus>\n"
    );
    let entries = listing(body.as_bytes()).expect("a listing");
    let found: Vec<_> = entries.iter().map(|entry| (entry.name.as_str(), entry.bytes)).collect();
    assert_eq!(found, [(A, Some(6))]);
}

#[test]
fn addresses_are_absolute_or_not_and_escaped_or_not() {
    for href in [
        format!("/shop/{A}"),
        format!("http://127.0.0.1:8080/shop/{A}"),
        format!("/another/path/behind/a/proxy/{A}"),
        A.to_owned(),
        format!("/shop/{}", A.replace('-', "%2D").replace('.', "%2e")),
        format!("\n  /shop/{A}\n"),
        format!("/shop/<![CDATA[{A}]]>"),
        format!("/shop/{}", A.replacen('s', "&#115;", 1).replacen('0', "&#x30;", 1)),
    ] {
        assert_eq!(names(&whole(&response(&href))), [A], "{href}");
    }
    let bare = whole(&response(&format!("/shop/{A}"))).replace("xmlns:D", "xmlns").replace("D:", "");
    assert_eq!(names(&bare), [A], "no prefix at all");
}

#[test]
fn what_is_not_ours_is_left_out_and_each_is_told_once() {
    let foreign =
        ["/shop/", "/shop/notes%20&amp;%20more.txt", "", "/", "%", "%zz", "/shop/%ff.json", "..%2f..%2fx"];
    let mut all: String = foreign.iter().map(|href| response(href)).collect();
    for href in [format!("/shop/{B}"), format!("/shop/{A}"), format!("http://host/shop/{A}")] {
        all.push_str(&response(&href));
    }
    assert_eq!(names(&whole(&all)), [A, B]);
    // A folder of such a name, a file that is gone, a property of another namespace, an element that nobody knows.
    let folder = response(A).replace("<D:resourcetype/>", "<D:resourcetype><D:collection/></D:resourcetype>");
    let gone =
        format!("<D:response><D:href>{A}</D:href><D:status>HTTP/1.1 404 Not Found</D:status></D:response>");
    let other = format!("<x:response xmlns:x=\"urn:x\"><D:href>{A}</D:href></x:response>");
    for none in [folder, gone, other] {
        assert_eq!(names(&whole(&none)), [] as [&str; 0], "{none}");
    }
    let unknown = response(A).replace("<D:prop>", "<D:prop><e:e xmlns:e=\"urn:e\"><D:href>x</D:href></e:e>");
    assert_eq!(names(&whole(&unknown)), [A]);
}

#[test]
fn what_is_no_listing_is_refused_whole() {
    let good = whole(&response(A));
    let bomb = format!("<!DOCTYPE m [<!ENTITY a \"{A}\">]>{}", good.replace(A, "&a;"));
    let entity = |text: &str| matches!(listing(text.as_bytes()), Err(NoListing::Entity { .. }));
    assert!(entity(&bomb) && entity(&good.replace(A, "&a;")) && entity("<!DOCTYPE a><a/>"));
    for end in 0..good.trim_end().len() {
        if let Some(cut) = good.get(..end) {
            assert!(listing(cut.as_bytes()).is_err(), "cut at {end}");
        }
    }
    for other in [
        "",
        "{}",
        "<html><body>login</body></html>",
        "<multistatus/>",
        "<multistatus xmlns=\"urn:dav\"/>",
        &good.replace("</D:href>", "</D:other>"),
        &format!("{good}{good}"),
        &good.replace("D:response", "E:response").replace(A, "&#0;"),
    ] {
        assert!(listing(other.as_bytes()).is_err(), "{other}");
    }
    assert_eq!(listing(&[0xff, 0xfe, b'<']), Err(NoListing::Encoding));
    let deep = format!("{}{}", "<D:a>".repeat(40), "</D:a>".repeat(40));
    assert!(matches!(listing(whole(&deep).as_bytes()), Err(NoListing::TooMuch(_))));
}

/// A listing with bytes changed, left out and doubled is refused or read, and never more than names come of it.
#[test]
fn listings_with_mistakes_are_read_or_refused() {
    let good = whole(&format!("{}{}", response(&format!("/shop/{A}")), response(&format!("/shop/{B}"))))
        .into_bytes();
    let mut dice = Dice::new(5);
    let mut read = 0;
    for _ in 0..20_000 {
        let mut body = good.clone();
        for _ in 0..=dice.next() % 3 {
            let at = usize::try_from(dice.next()).unwrap_or(0) % body.len();
            match dice.next() % 3 {
                0 => body[at] = u8::try_from(dice.next() % 256).unwrap_or(0),
                1 => drop(body.remove(at)),
                _ => body.insert(at, body[at]),
            }
        }
        let Ok(entries) = listing(&body) else { continue };
        read += 1;
        assert!(entries.len() <= 2 && entries.iter().all(|entry| Name::parse(entry.name.as_str()).is_some()));
    }
    assert!(read > 1000, "most mistakes stand in text: {read}");
}
