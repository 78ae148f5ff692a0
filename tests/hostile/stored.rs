//! Readers of what no screen takes as a file: what the tablet stores itself, a backup of all of it, a code out of a link, and
//! what a server lists.

use super::valid::{self, AT};
use stepboard::content::Content;
use stepboard::exchange::folder::listing;
use stepboard::exchange::link::{pack, unpack};
use stepboard::exchange::{Backup, Key};
use stepboard::people::Crew;
use stepboard::record::Event;
use stepboard::walk::{Kept, Mode, Start, Walk, right};

const CREW: &str = r#"{"members":[{"number":"a-07","name":"Ana","journal":"17"}]}"#;
const STORES: [&str; 2] = ["journal", "state"];
/// As RFC 4918, section 9.1.3 has a listing.
const LISTING: &str = r#"<?xml version="1.0" encoding="utf-8"?>
<D:multistatus xmlns:D="DAV:"><D:response><D:href>/shop/tablets/stepboard-results-0123456789abcdef0123456789abcdef.json</D:href>
<D:propstat><D:prop><D:getcontentlength>42</D:getcontentlength><D:resourcetype/></D:prop><D:status>HTTP/1.1 200 OK</D:status></D:propstat>
</D:response></D:multistatus>"#;

/// What a reader makes of bytes: what is written of it again, and nothing where it is refused or never written.
pub(crate) type Reader = fn(&[u8]) -> Option<String>;

/// Each reader with bytes that it takes.
pub(crate) fn readers(content: &Content) -> Vec<(&'static str, Reader, Vec<u8>)> {
    let event = valid::results(content)["events"][0].to_string();
    let info = content.walk("plain-plate").expect("ships");
    let start =
        Start::of(info, content.sheet(&info.ticket.sheet).expect("ships"), content).expect("known woods");
    let mut walk = Walk::begin(start, Mode::Own, 7);
    let first = right::rest(&walk, content).expect("a way").remove(0);
    walk.decide(first, content).expect("possible");
    let kept = Kept::begun("k".to_owned(), "17".to_owned(), AT.to_owned(), walk.saved());
    let kept = kept.write().expect("json");
    let journal = vec![(Key::Number(1), event.clone())];
    let state = vec![(Key::Name("crew".to_owned()), CREW.to_owned())];
    let stores = [("journal".to_owned(), journal), ("state".to_owned(), state)].into();
    let backup = Backup::of("5f0c1e9a", AT, stores).and_then(|backup| backup.text()).expect("json");
    let code = pack(&event).expect("short");
    vec![
        ("event", |bytes| serde_json::to_string(&Event::read(text(bytes)?).ok()?).ok(), event.into_bytes()),
        ("walk", |bytes| Kept::read(text(bytes)?)?.write().ok(), kept.into_bytes()),
        ("backup", |bytes| Backup::read(bytes, &STORES).ok()?.text().ok(), backup.into_bytes()),
        (
            "crew",
            |bytes| serde_json::to_string(&serde_json::from_slice::<Crew>(bytes).ok()?).ok(),
            CREW.into(),
        ),
        ("code", |bytes| pack(&unpack(text(bytes)?).ok()?).ok(), code.into_bytes()),
        // It is never written.
        ("listing", |bytes| listing(bytes).ok().and(None), LISTING.into()),
    ]
}

fn text(bytes: &[u8]) -> Option<&str> {
    std::str::from_utf8(bytes).ok()
}
