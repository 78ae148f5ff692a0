//! Against two real servers, with a network between that does its worst.

use crate::drive::{Restarts, Tablet, Told, work};
use crate::http::Client;
use crate::proxy::{Dice, Fault, between};
use crate::results::{assert_taken_in_once, result};
use crate::server::{BODY_MOST, Kind, PASSWORD, Server, USER};
use std::fs;
use std::path::Path;
use stepboard::exchange::folder::{
    Aside, Folder, Heard, Name, Place, Refusal, Sort, State, Step, Stop, basic,
};

/// Result files, unless `STEPBOARD_FOLDER_FILES` says otherwise; `make folder` says 10,000.
const FILES: usize = 1_000;
/// Names at which other bytes lie in the folder already.
const TAKEN: usize = 5;
/// In a folder that is not there, nor the one that it lies in.
const PLACE: &str = "/dav/year/shop%20floor/";

fn files() -> usize {
    std::env::var("STEPBOARD_FOLDER_FILES").map_or(FILES, |text| text.parse().expect("a number of files"))
}

fn tablet(numbers: impl Iterator<Item = usize>) -> (Folder, Tablet) {
    let mut folder = Folder::new(Place::new(PLACE).expect("a path"));
    let mut tablet = Tablet::default();
    for text in numbers.map(result) {
        let name = Name::of(Sort::Results, &text);
        assert!(folder.add(name.clone()), "two files of one name");
        tablet.own.insert(name, text);
    }
    (folder, tablet)
}

fn client(to: std::net::SocketAddr) -> Client {
    Client::new(to, basic(USER, PASSWORD))
}

fn bytes_in(folder: &Path, name: &Name) -> Vec<u8> {
    fs::read(folder.join(name.as_str())).expect("the file on the server's disk")
}

fn arrive_once_and_are_imported(kind: Kind, seed: u64) {
    let server = Server::start(kind);
    let many = files();
    let restarts = Restarts { one_in: 90, store_every: (many as u64 / 50).max(10) };
    let mut dice = Dice::new(seed);

    let (address, seen) = between(server.address, seed);
    let (mut folder, mut sender) = tablet(0..many);
    // The first files make the folder; then other bytes are laid where files are still to come, and what is no file of ours.
    let shop = server.dav().join("year/shop floor");
    let (mut first, mut first_tablet) = tablet(many..many + 1);
    work(&mut first, &mut first_tablet, &mut client(address), &mut dice, restarts);
    let taken: Vec<Name> = sender.own.keys().step_by(many / TAKEN).take(TAKEN).cloned().collect();
    for name in &taken {
        fs::write(shop.join(name.as_str()), "somebody else's").expect("a file of that name");
    }
    fs::write(shop.join("notes & <more>.txt"), "not ours").expect("a file that is not ours");
    fs::create_dir(shop.join("stepboard-results-00000000000000000000000000000000.json")).expect("a folder");

    let sent = work(&mut folder, &mut sender, &mut client(address), &mut dice, restarts);
    for (name, text) in &sender.own {
        let other = taken.contains(name);
        let state = folder.outbox().get(name).expect("a file").state;
        assert_eq!(state == State::Refused(Refusal::Other), other, "{name}: {state:?}");
        assert_eq!(matches!(state, State::Arrived(_)), !other, "{name}: {state:?}");
        let wanted: &[u8] = if other { b"somebody else's" } else { text.as_bytes() };
        assert_eq!(bytes_in(&shop, name), wanted, "{name}");
    }
    {
        let seen = seen.lock().expect("seen");
        assert!(seen.made.values().all(|times| *times == 1), "a file was written more than once");
        // Those of this tablet but for the names that are taken, one of the first tablet, the mark.
        assert_eq!(seen.made.len(), many - TAKEN + 2);
        assert!(!seen.methods.contains_key("DELETE"), "nothing is deleted");
        told("sent", kind, &sent, &seen.faults);
    }
    assert_eq!(fs::read_dir(&shop).expect("the folder").count(), many + 4);

    let (address, seen) = between(server.address, seed + 1);
    let (mut folder, mut second) = tablet(0..0);
    folder.take_results(true);
    let took = work(&mut folder, &mut second, &mut client(address), &mut dice, restarts);
    // Where the network forged an answer that makes no sense it was told, and is fetched when somebody asks for it.
    for (name, why) in &took.aside {
        assert!(matches!(why, Aside::NotItsName | Aside::NotGiven(403 | 409)), "{name}: {why:?}");
        if *why != Aside::NotItsName {
            folder.again(name);
        }
    }
    let direct = Restarts { one_in: u64::MAX, store_every: u64::MAX };
    work(&mut folder, &mut second, &mut client(server.address), &mut dice, direct);
    for (name, text) in &sender.own {
        if taken.contains(name) {
            assert!(folder.aside().any(|aside| aside == (name, &Aside::NotItsName)), "{name}");
        } else {
            assert_eq!(second.taken.get(name), Some(text), "{name}");
        }
    }
    assert_eq!(second.taken.len(), many - TAKEN + 1, "all that is in the folder is here");
    assert_taken_in_once(&second.taken);
    told("took", kind, &took, &seen.lock().expect("seen").faults);
}

fn told(what: &str, kind: Kind, told: &Told, faults: &std::collections::BTreeMap<Fault, u32>) {
    println!(
        "{kind:?} {what}: {} faults of {} sorts, {} restarts, {} stops, {} waits",
        faults.values().sum::<u32>(),
        faults.len(),
        told.restarts,
        told.stops.len(),
        told.waits
    );
    assert!(faults.len() >= 10 && told.restarts > 0, "the network was too kind: {faults:?}");
}

#[test]
fn files_arrive_once_at_apache_and_another_tablet_takes_them() {
    arrive_once_and_are_imported(Kind::Apache, 1);
}

#[test]
fn files_arrive_once_at_lighttpd_and_another_tablet_takes_them() {
    arrive_once_and_are_imported(Kind::Lighttpd, 2);
}

#[test]
fn a_file_beyond_the_server_s_limit_is_refused_alone() {
    for kind in [Kind::Apache, Kind::Lighttpd] {
        let server = Server::start(kind);
        let (mut folder, mut one) = tablet(0..2);
        let text = format!("{{\"format\":\"stepboard-results\",\"pad\":\"{}\"}}", "x".repeat(BODY_MOST));
        let large = Name::of(Sort::Results, &text);
        one.own.insert(large.clone(), text);
        folder.add(large.clone());
        let calm = Restarts { one_in: u64::MAX, store_every: u64::MAX };
        let told = work(&mut folder, &mut one, &mut client(server.address), &mut Dice::new(3), calm);
        assert_eq!(told.refused.into_iter().collect::<Vec<_>>(), [(large, Refusal::TooLarge)], "{kind:?}");
        assert_eq!(folder.outbox().waiting(), 0);
    }
}

#[test]
fn who_is_not_known_stops_everything_and_loses_nothing() {
    for kind in [Kind::Apache, Kind::Lighttpd] {
        let server = Server::start(kind);
        let (mut folder, one) = tablet(0..2);
        let mut stranger = Client::new(server.address, basic(USER, "guessed"));
        let Step::Ask(ask) = folder.next(0, &one) else { panic!("asks") };
        folder.heard(0, 0, stranger.carry(&ask), &one);
        assert_eq!(folder.stopped(), Some(&Stop::Unknown), "{kind:?}");
        assert_eq!(folder.outbox().waiting(), 2);
    }
}

/// A file that somebody has locked (RFC 4918, sections 7.3 and 9.10) waits, and the others go.
#[test]
fn what_is_locked_at_the_server_waits_and_holds_up_no_other() {
    let server = Server::start(Kind::Apache);
    let (mut folder, mut one) = tablet(0..3);
    let calm = Restarts { one_in: u64::MAX, store_every: u64::MAX };
    work(&mut folder, &mut one, &mut client(server.address), &mut Dice::new(4), calm);
    let text = result(3);
    let name = Name::of(Sort::Results, &text);
    one.own.insert(name.clone(), text);
    folder.add(name.clone());
    let place = folder.place().of(&name);
    let lock = "<?xml version=\"1.0\"?><lockinfo xmlns=\"DAV:\"><lockscope><exclusive/></lockscope>\
                <locktype><write/></locktype></lockinfo>";
    let mut other = client(server.address);
    let locked = other.ask("LOCK", &place, &[("Timeout", "Second-600")], Some(lock)).expect("an answer");
    assert!(matches!(locked.status(), 200 | 201), "{}", locked.line);
    let token = locked.field("lock-token").expect("a token").to_owned();
    let mut own = client(server.address);
    let Step::Ask(ask) = folder.next(1, &one) else { panic!("asks") };
    let heard = own.carry(&ask);
    assert!(matches!(&heard, Heard::Answer(answer) if answer.status == 423), "{heard:?}");
    assert_eq!(folder.heard(1, 0, heard, &one), []);
    assert_eq!(folder.outbox().get(&name).expect("a file").state, State::Waits);
    let freed = other.ask("UNLOCK", &place, &[("Lock-Token", &token)], None).expect("an answer");
    assert_eq!(freed.status(), 204);
    work(&mut folder, &mut one, &mut own, &mut Dice::new(5), calm);
    assert!(matches!(folder.outbox().get(&name).expect("a file").state, State::Arrived(_)));
}
