//! Readers of what no screen takes as a file: what the tablet stores itself, a backup of all of it, a code out of a link or off
//! paper, the key file of who signs, what a server lists, and what the commands are told.

use super::valid::{self, AT};
use serde_json::json;
use stepboard::content::Content;
use stepboard::exchange::folder::listing;
use stepboard::exchange::link::{TAKE, code_in, pack, unpack};
use stepboard::exchange::paper::PaperCode;
use stepboard::exchange::{Backup, Key};
use stepboard::judge;
use stepboard::people::Crew;
use stepboard::record::Event;
use stepboard::signoff::WrappedKey;
use stepboard::spraying::told;
use stepboard::walk::{Kept, Mode, Start, Walk, right};

const CREW: &str = r#"{"members":[{"number":"a-07","name":"Ana","journal":"17"}]}"#;
/// The set of a worksheet on paper.
const SET: &str = "finish-room";
const KEY: &[u8] = include_bytes!("../data/signoff/key.json");
const JOB: &[u8] = include_bytes!("../../content/schema/judge.example.json");
const STORES: [&str; 2] = ["journal", "state"];
/// As RFC 4918, section 9.1.3 has a listing.
const LISTING: &str = r#"<?xml version="1.0" encoding="utf-8"?>
<D:multistatus xmlns:D="DAV:"><D:response><D:href>/shop/tablets/stepboard-results-0123456789abcdef0123456789abcdef.json</D:href>
<D:propstat><D:prop><D:getcontentlength>42</D:getcontentlength><D:resourcetype/></D:prop><D:status>HTTP/1.1 200 OK</D:status></D:propstat>
</D:response></D:multistatus>"#;

/// What a reader makes of bytes: what is written of it again, nothing where it is never written, or why it is refused.
pub(crate) type Taken = Result<Option<String>, String>;
pub(crate) type Reader = fn(&Content, &[u8]) -> Taken;

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
    let link = link(&code);
    let paper = PaperCode::of(SET, "Ana", 0).to_string();
    let line = json!([[-40, 0], [540, 0]]);
    let passes =
        json!([{ "line_mm": line, "distance_mm": 180, "speed_m_s": 0.4, "lead_mm": 30, "lag_mm": 30 }]);
    let run = json!({ "task": "sealer-panel", "passes": passes }).to_string();
    vec![
        ("event", event_again, event.into_bytes()),
        ("walk", walk_again, kept.into_bytes()),
        ("backup", backup_again, backup.into_bytes()),
        ("crew", crew_again, CREW.into()),
        ("code", code_again, code.into_bytes()),
        ("link", link_again, link.into_bytes()),
        ("paper", paper_again, paper.into_bytes()),
        ("key", key_again, KEY.into()),
        ("passes", passes_again, passes.to_string().into_bytes()),
        // They are never written.
        ("listing", |_, bytes| listing(bytes).map(|_| None).map_err(told_of), LISTING.into()),
        ("run", run_read, run.into_bytes()),
        ("job", job_judged, JOB.into()),
    ]
}

fn event_again(_: &Content, bytes: &[u8]) -> Taken {
    let event = Event::read(text(bytes)?).map_err(told_of)?;
    serde_json::to_string(&event).map(Some).map_err(told_of)
}

fn walk_again(_: &Content, bytes: &[u8]) -> Taken {
    let kept = Kept::read(text(bytes)?).ok_or("no walk")?;
    kept.write().map(Some).map_err(told_of)
}

fn backup_again(_: &Content, bytes: &[u8]) -> Taken {
    let backup = Backup::read(bytes, &STORES).map_err(told_of)?;
    backup.text().map(Some).map_err(told_of)
}

fn crew_again(_: &Content, bytes: &[u8]) -> Taken {
    let crew: Crew = serde_json::from_slice(bytes).map_err(told_of)?;
    serde_json::to_string(&crew).map(Some).map_err(told_of)
}

fn code_again(_: &Content, bytes: &[u8]) -> Taken {
    let packed = unpack(text(bytes)?).and_then(|file| pack(&file));
    packed.map(Some).map_err(told_of)
}

fn link_again(_: &Content, bytes: &[u8]) -> Taken {
    let packed = code_in(text(bytes)?).and_then(unpack).and_then(|file| pack(&file)).map_err(told_of)?;
    Ok(Some(link(&packed)))
}

fn link(code: &str) -> String {
    format!("https://example.org/{TAKE}{code}")
}

fn paper_again(_: &Content, bytes: &[u8]) -> Taken {
    PaperCode::read(text(bytes)?, SET).map(|code| Some(code.to_string())).map_err(told_of)
}

fn key_again(_: &Content, bytes: &[u8]) -> Taken {
    let key = WrappedKey::read(bytes).map_err(|locked| format!("{locked:?}"))?;
    key.text().map(Some).map_err(|refusal| format!("{refusal:?}"))
}

fn passes_again(_: &Content, bytes: &[u8]) -> Taken {
    let document = serde_json::from_slice(bytes).map_err(told_of)?;
    told::sets_of(&document).map(|sets| Some(told::passes(&sets).to_string())).map_err(lines)
}

fn run_read(content: &Content, bytes: &[u8]) -> Taken {
    let document = serde_json::from_slice(bytes).map_err(told_of)?;
    told::read(&document, content).map(|_| None).map_err(lines)
}

/// What can be read can be judged, too.
fn job_judged(content: &Content, bytes: &[u8]) -> Taken {
    let document = serde_json::from_slice(bytes).map_err(told_of)?;
    let account = judge::read(&document, content).map_err(lines)?;
    drop(judge::judge(&account, content));
    Ok(None)
}

fn text(bytes: &[u8]) -> Result<&str, String> {
    std::str::from_utf8(bytes).map_err(told_of)
}

fn told_of(why: impl std::fmt::Display) -> String {
    why.to_string()
}

fn lines(mistakes: Vec<String>) -> String {
    mistakes.join("\n")
}
