//! One file of each format that travels, and the hostile ones, for readers of other people.

use crate::hostile::{corpus, valid};
use crate::log::Log;
use crate::watch::{ILSE, Watch};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use stepboard::content::{Content, OnFile, OwnCriterion, Stricter, Units, World};
use stepboard::exchange::set::{Set, Withdrawal};
use stepboard::exchange::{
    Actors, Backup, CarriedSheet, Editions, Home, JobTicket, Key, Named, OwnSheet, Results, SHEET, WalkFile,
    framework, items, read, statements, write, zip,
};
use stepboard::people::{Member, told};
use stepboard::record::{
    AirKnown, CardKind, Event, Help, Inspected, Journal, Known, Ready, Step, Taking, WalkStep, Within, Wrong,
};
use stepboard::rules::term::Term;
use stepboard::signoff::ShopNumber;
use stepboard::walk::planted::planted;
use stepboard::walk::{Kept, Mode, Start, Walk};

/// Writes them: `<schema>.<what>.json` is what we write, `hostile/<schema>.<number>.json` what nobody may.
pub(crate) fn write_all(content: &Content, folder: &Path) {
    let save = |name: &str, text: &[u8]| fs::write(folder.join(name), text).expect("written");
    fs::create_dir_all(folder.join("hostile")).expect("a folder");
    let sheet: OwnSheet = read(valid::sheet(content).to_string().as_bytes(), SHEET).expect("valid");
    save("sheet.own.json", write(&sheet, SHEET).expect("json").as_bytes());
    let mut set = Set::read(valid::set(content).to_string().as_bytes(), content).expect("valid");
    save("set.ships.json", set.write().expect("json").as_bytes());
    (set.sheet, set.from, set.task.pass) = (CarriedSheet::Own(Box::new(sheet.clone())), None, None);
    save("set.own.json", set.write().expect("json").as_bytes());
    let withdrawal = Withdrawal::read(valid::withdrawal().to_string().as_bytes()).expect("valid");
    save("withdrawal.json", withdrawal.write().expect("json").as_bytes());
    save("walk.own.json", valid::walk(content).to_string().as_bytes());
    save("walk.inspect.json", inspected(content, &sheet).write().expect("json").as_bytes());
    let mut ticket = JobTicket::read(valid::ticket(content).to_string().as_bytes(), content).expect("valid");
    save("ticket.ships.json", ticket.write().expect("json").as_bytes());
    (ticket.sheet, ticket.seed, ticket.until) = (CarriedSheet::Own(Box::new(sheet.clone())), None, None);
    save("ticket.own.json", ticket.write().expect("json").as_bytes());
    let member = Member {
        number: ShopNumber::new("17").expect("a number"),
        name: "Ana".to_owned(),
        journal: "Ana".to_owned(),
        pin: None,
    };
    let journal = Journal::new(events(content));
    let mut results = Results::of(content, &journal, &[], vec![Named::from(&member)], ("t", valid::AT));
    results.sheets.push(sheet);
    save("results.all.json", results.text().expect("json").as_bytes());
    let state = vec![(Key::Name("settings".into()), "{}".into())];
    let kept = journal.events().iter().zip(1..);
    let kept = kept.map(|(event, nth)| (Key::Number(nth), serde_json::to_string(event).expect("json")));
    let stores = [("journal".to_owned(), kept.collect()), ("state".to_owned(), state)].into();
    let backup = Backup::of("t", valid::AT, stores).expect("json");
    save("backup.json", backup.text().expect("json").as_bytes());
    save("person.json", told(&member, &journal, None).to_string().as_bytes());
    let competency = &content.competencies[0];
    let own = OwnCriterion { text: "Wears the shop's own badge".to_owned(), critical: true };
    let stricter = Stricter {
        criteria: vec![own],
        by: "Ilse, i-1".to_owned(),
        at: valid::AT.to_owned(),
        ..Stricter::of(competency)
    };
    save("stricter.json", json!(stricter).to_string().as_bytes());
    let home = Home::new("https://example.org/shop").expect("an address");
    let all = statements(content, &home, &Actors::new(&results.people), journal.events()).all;
    save("xapi.json", Value::Array(all).to_string().as_bytes());
    save("case.json", framework(content, &home, "A shop", "2027-03-12T00:00:00Z").to_string().as_bytes());
    let cards: Vec<(String, u32)> =
        content.families.iter().take(9).map(|family| (family.id.clone(), 1)).collect();
    let world = World { content, sheet: &content.sheets[0] };
    save("items.zip", &zip(&items(&world, Units::METRIC, &cards).files).expect("small"));
    let hostile = corpus(content);
    let listed: Vec<Value> = hostile
        .iter()
        .enumerate()
        .filter(|(_, one)| one.bytes.len() < 1 << 20)
        .map(|(place, one)| {
            let file = format!("hostile/{place}.json");
            save(&file, &one.bytes);
            json!({ "file": file, "name": one.name, "schema": one.what.schema(), "shape": one.shape, "refused": !one.says.is_empty() })
        })
        .collect();
    save("hostile.json", Value::Array(listed).to_string().as_bytes());
}

/// What happens on walks: decisions with all that was known, somebody else's walk, one that was let go.
fn walked(log: &mut Log) {
    let says = [("seal-check", Some("hazard.seal-check-each-time")), ("recoat-now", None)];
    let mut one = crate::log::decided(&says);
    (one.again, one.over) = (true, true);
    one.known = Known {
        air: Some(AirKnown { air_c: 21.0, rh: 48.0, work_c: 19.5, hours_ago: 0.25 }),
        filters_past: Some(false),
        respirator: Some("particles".to_owned()),
        ready: Ready::ALL.iter().copied().collect(),
        parts: [(0, "seal-coat".to_owned())].into(),
        shown: vec!["se-01".to_owned()],
        offered: Some(12),
        ..one.known
    };
    let missed = vec!["se-09".to_owned()];
    let seen = Inspected { seed: 7, found: 1, half: 1, missed, wrong: 2 };
    log.decides("w", "plain-plate", &[]).walks("w", "plain-plate", WalkStep::LetGo);
    log.walks("v", "plain-plate", WalkStep::Decided(Box::new(one)));
    log.walks("i", "plain-plate", WalkStep::Inspected(seen));
}

/// Somebody else's walk with mistakes in it, on an edition of the shop's own, graded.
fn inspected(content: &Content, sheet: &OwnSheet) -> WalkFile {
    let editions = Editions::of([sheet.clone()]);
    let content = content.with_own_sheets(editions.iter());
    let info = content.walks.iter().find(|walk| walk.ticket.sheet == sheet.base).expect("a walk on its base");
    let start = Start::of(info, content.sheet(&sheet.slug()).expect("here"), &content).expect("known woods");
    let walk = planted(&Walk::begin(start, Mode::Inspect, 7), 7, &content).expect("a room that is fit");
    let named = vec![(0, "se-01".to_owned())];
    let begun = Kept::begun("k".to_owned(), String::new(), valid::AT.to_owned(), walk.saved());
    let kept = Kept { named, graded: true, ..begun };
    let who = Named { journal: String::new(), number: String::new(), name: String::new() };
    WalkFile::of(&kept, who, valid::AT, &editions, &content).expect("possible")
}

/// A journal with every kind of event.
fn events(content: &Content) -> Vec<Event> {
    let mut log = Log::new("t", "Ana");
    log.answer("wants-filler", true).open("one", &["room-safe"]);
    log.help = Help::Hint;
    log.answer("wants-filler", false);
    log.step("one", Step::Supervised { by: crate::watch::by(ILSE) })
        .step("one", Step::Left)
        .step("one", Step::Resumed);
    log.step("one", Step::Closed);
    let taking = Some(Taking { cards: 6, at_once: true });
    log.step("two", Step::Opened { set: "set-x".to_owned(), competencies: Vec::new(), taking });
    log.within = Within::Set { attempt: "two".to_owned(), set: "set-x".to_owned() };
    log.answer("wants-filler", true).taught("wants-filler");
    log.within = Within::Paper { set: "set-x".to_owned(), code: "7K2M".to_owned() };
    log.answer("wants-filler", true);
    log.within = Within::Walk { walk: "w".to_owned(), guided: false };
    log.guess = None;
    log.answer("wants-filler", true);
    walked(&mut log);
    log.voids(Wrong::Set { set: "set-x".to_owned() }, "Wrong picture");
    log.voids(Wrong::Cards(CardKind { family: "recoat".to_owned(), version: 1 }), "Wrong table");
    let competency = content.competency("mask-worn").expect("ships");
    let mut watch = Watch::new("w", ILSE);
    let name = watch.saw(competency, "o1", 30, &[]);
    watch.filed(OnFile::FitTest, 20, 300);
    watch.strikes(name, 32, "Typed in twice");
    [log.events, watch.events].concat()
}
