//! The protocol answer by answer, without a server.

use crate::drive::Tablet;
use stepboard::exchange::folder::{
    Answer, Aside, Ask, Folder, Heard, Method, Name, News, Place, Refusal, Shelves, Sort, State, Step, Stop,
};

const NOW: u64 = 1_800_000_000_000;

/// A folder that is proven, with files of these texts to go.
fn folder(texts: &[&str]) -> (Folder, Tablet) {
    let mut folder = Folder::new(Place::new("/a/b/").expect("a path"));
    let mut tablet = Tablet::default();
    says(&mut folder, &tablet, 412);
    for text in texts {
        let name = Name::of(Sort::Results, text);
        folder.add(name.clone());
        tablet.own.insert(name, (*text).to_owned());
    }
    (folder, tablet)
}

fn asks(folder: &mut Folder, tablet: &Tablet) -> Ask {
    match folder.next(NOW, tablet) {
        Step::Ask(ask) => ask,
        other => panic!("asks nothing: {other:?}"),
    }
}

fn answers(folder: &mut Folder, tablet: &Tablet, answer: Answer) -> (Ask, Vec<News>) {
    let ask = asks(folder, tablet);
    let news = folder.heard(NOW, 0, Heard::Answer(answer), tablet);
    (ask, news)
}

/// Answers the next request with a status; gives the request and what it led to.
fn says(folder: &mut Folder, tablet: &Tablet, status: u16) -> (Ask, Vec<News>) {
    answers(folder, tablet, Answer { status, ..Answer::default() })
}

fn listed(folder: &mut Folder, tablet: &Tablet, names: &[&Name]) -> Vec<News> {
    let responses: String = names
        .iter()
        .map(|name| format!("<response><href>/a/b/{name}</href><propstat><prop><resourcetype/></prop><status>HTTP/1.1 200 OK</status></propstat></response>"))
        .collect();
    let body = format!("<multistatus xmlns=\"DAV:\">{responses}</multistatus>").into_bytes();
    let (ask, news) = answers(folder, tablet, Answer { status: 207, retry_after: None, body });
    assert_eq!((ask.method, ask.path.as_str()), (Method::Propfind, "/a/b/"));
    assert!(ask.fields.contains(&("Depth", "1")));
    news
}

fn state(folder: &Folder, text: &str) -> State {
    folder.outbox().get(&Name::of(Sort::Results, text)).expect("a file").state
}

#[test]
fn nothing_is_sent_before_the_server_has_kept_what_is_there() {
    let tablet = Tablet::default();
    let mut new = Folder::new(Place::new("/a/").expect("a path"));
    let (ask, _) = says(&mut new, &tablet, 201);
    assert!(ask.method == Method::Put && ask.fields.contains(&("If-None-Match", "*")));
    let (again, news) = says(&mut new, &tablet, 412);
    assert_eq!((again, news), (ask, vec![News::Proven]));
    for status in [200, 201, 204] {
        let mut new = Folder::new(Place::new("/a/").expect("a path"));
        says(&mut new, &tablet, status);
        assert_eq!(says(&mut new, &tablet, status).1, [News::Stopped(Stop::Overwrites)]);
        assert_eq!(new.next(NOW, &tablet), Step::Stopped);
    }
}

#[test]
fn a_file_arrives_with_201_204_or_when_it_is_there_already() {
    for status in [201, 204] {
        let (mut folder, tablet) = folder(&["x"]);
        let (ask, news) = says(&mut folder, &tablet, status);
        assert_eq!(ask.path, format!("/a/b/{}", Name::of(Sort::Results, "x")));
        assert_eq!((ask.method, ask.body.as_deref()), (Method::Put, Some("x")));
        assert!(ask.fields.contains(&("If-None-Match", "*")), "never over another");
        assert_eq!(news, [News::Arrived(Name::of(Sort::Results, "x"))]);
    }
    for (body, arrived) in [("x", true), ("other", false), ("", false)] {
        let (mut folder, tablet) = folder(&["x"]);
        assert_eq!(says(&mut folder, &tablet, 412).1, []);
        let there = Answer { status: 200, retry_after: None, body: body.as_bytes().to_vec() };
        let (ask, _) = answers(&mut folder, &tablet, there);
        assert_eq!(ask.method, Method::Get);
        let state = state(&folder, "x");
        assert_eq!(state, if arrived { State::Arrived(NOW) } else { State::Refused(Refusal::Other) });
    }
}

#[test]
fn some_answers_stop_until_somebody_does_something() {
    let stops = [
        (401, Stop::Unknown),
        (403, Stop::Forbidden),
        (507, Stop::Full),
        (301, Stop::Moved(301)),
        (405, Stop::NoWebdav(405)),
        (501, Stop::NoWebdav(501)),
    ];
    for (status, stop) in stops {
        let (mut folder, tablet) = folder(&["x", "y"]);
        assert_eq!(says(&mut folder, &tablet, status).1, [News::Stopped(stop.clone())]);
        assert_eq!(folder.next(NOW + 1_000_000_000, &tablet), Step::Stopped);
        let stored = serde_json::to_string(&folder).expect("state");
        let mut folder: Folder = serde_json::from_str(&stored).expect("state");
        assert_eq!((folder.stopped(), folder.outbox().waiting()), (Some(&stop), 2));
        folder.hurry();
        assert_eq!(asks(&mut folder, &tablet).method, Method::Put);
    }
}

#[test]
fn some_answers_are_waited_out_and_a_locked_file_holds_up_no_other() {
    for status in [408, 425, 429, 500, 502, 503, 504] {
        let (mut folder, tablet) = folder(&["x", "y"]);
        let answer = Answer { status, retry_after: Some("7".to_owned()), body: Vec::new() };
        answers(&mut folder, &tablet, answer);
        assert_eq!(folder.next(NOW, &tablet), Step::Wait(NOW + 7000), "{status}");
    }
    let (mut folder, tablet) = folder(&["x", "y"]);
    let (first, _) = says(&mut folder, &tablet, 423);
    let (second, _) = says(&mut folder, &tablet, 201);
    assert_ne!(first.path, second.path);
    listed(&mut folder, &tablet, &[]);
    assert_eq!(folder.next(NOW, &tablet), Step::Wait(NOW + 1000));
    let Step::Ask(again) = folder.next(NOW + 1000, &tablet) else { panic!("asks") };
    assert_eq!(again.path, first.path);
}

#[test]
fn the_folder_is_made_with_those_that_it_lies_in_and_only_once() {
    let (mut folder, tablet) = folder(&["x"]);
    let steps = [
        (Method::Put, "/a/b/", 409),
        (Method::Mkcol, "/a/b/", 409),
        (Method::Mkcol, "/a/", 201),
        (Method::Mkcol, "/a/b/", 405),
        (Method::Put, "/a/b/", 409),
    ];
    for (method, path, status) in steps {
        let (ask, _) = says(&mut folder, &tablet, status);
        assert_eq!(ask.method, method);
        assert!(ask.path.starts_with(path) && (method == Method::Put || ask.path == path));
    }
    assert_eq!(folder.stopped(), Some(&Stop::NoFolder(409)));
    folder.hurry();
    for status in [404, 409, 409] {
        says(&mut folder, &tablet, status);
    }
    assert_eq!(folder.stopped(), Some(&Stop::NoFolder(409)), "no folder further out");
}

#[test]
fn one_file_that_the_server_refuses_holds_up_no_other_and_may_be_tried_again() {
    for (status, why) in [(413, Refusal::TooLarge), (400, Refusal::Status(400)), (207, Refusal::Status(207))]
    {
        let (mut folder, tablet) = folder(&["x", "y"]);
        says(&mut folder, &tablet, status);
        says(&mut folder, &tablet, 201);
        let (name, _) = folder
            .outbox()
            .files()
            .find(|(_, filed)| filed.state == State::Refused(why))
            .map(|(name, filed)| (name.clone(), *filed))
            .expect("one refused");
        folder.again(&name);
        assert_eq!(asks(&mut folder, &tablet).path, format!("/a/b/{name}"));
    }
}

#[test]
fn what_was_on_its_way_when_the_tablet_died_is_sent_again() {
    let (mut folder, tablet) = folder(&["x"]);
    let ask = asks(&mut folder, &tablet);
    assert_eq!((state(&folder, "x"), folder.next(NOW, &tablet)), (State::OnItsWay, Step::Busy));
    let stored = serde_json::to_string(&folder).expect("state");
    let mut folder: Folder = serde_json::from_str(&stored).expect("state");
    assert_eq!(state(&folder, "x"), State::Waits);
    assert_eq!(asks(&mut folder, &tablet), ask);
}

#[test]
fn what_lies_on_the_tablet_waits_and_nothing_else() {
    let (mut folder, tablet) = folder(&["arrives", "another window sends", "stays"]);
    says(&mut folder, &tablet, 201);
    let there = ["stays", "another window adds"].map(|text| Name::of(Sort::Results, text));
    folder.waits(&there.clone().into());
    let waits: Vec<&Name> = folder
        .outbox()
        .files()
        .filter(|(_, filed)| filed.state == State::Waits)
        .map(|(name, _)| name)
        .collect();
    let mut wanted: Vec<&Name> = there.iter().collect();
    wanted.sort();
    assert_eq!((waits, state(&folder, "arrives")), (wanted, State::Arrived(NOW)));
    assert_eq!(folder.outbox().get(&Name::of(Sort::Results, "another window sends")), None);
}

#[test]
fn what_nobody_wants_is_not_fetched_again_after_a_restart() {
    let (mut folder, tablet) = folder(&[]);
    let set = Name::of(Sort::Set, "t");
    folder.leave(set.clone());
    let stored = serde_json::to_string(&folder).expect("state");
    let mut folder: Folder = serde_json::from_str(&stored).expect("state");
    assert_eq!(listed(&mut folder, &tablet, &[&set]), [News::Looked(0)]);
}

#[test]
fn a_file_that_is_not_its_name_any_more_is_not_sent() {
    let (mut folder, mut tablet) = folder(&["x"]);
    let name = Name::of(Sort::Results, "x");
    tablet.own.insert(name.clone(), "y".to_owned());
    assert_eq!(folder.next(NOW, &tablet), Step::Told(News::Refused(name.clone(), Refusal::NotItsName)));
    assert!(tablet.text(&name).is_some());
}

#[test]
fn what_is_new_is_fetched_in_order_and_checked() {
    let (mut folder, mut tablet) = folder(&["own"]);
    says(&mut folder, &tablet, 201);
    let (results, sheet, set) =
        (Name::of(Sort::Results, "r"), Name::of(Sort::Sheet, "s"), Name::of(Sort::Set, "t"));
    let own = Name::of(Sort::Results, "own");
    // Whoever does not take results takes sheets and sets.
    assert_eq!(listed(&mut folder, &tablet, &[&sheet, &results, &set, &own]), [News::Looked(2)]);
    folder.take_results(true);
    assert_eq!(listed(&mut folder, &tablet, &[&sheet, &results, &set, &own]), [News::Looked(3)]);
    let good = |text: &str| Answer { status: 200, retry_after: None, body: text.as_bytes().to_vec() };
    let (ask, news) = answers(&mut folder, &tablet, good("r"));
    assert_eq!((ask.method, ask.path), (Method::Get, format!("/a/b/{results}")));
    assert_eq!(news, [News::Come(results.clone(), "r".to_owned())]);
    tablet.taken.insert(results.clone(), "r".to_owned());
    let (_, news) = answers(&mut folder, &tablet, good("T"));
    assert_eq!(news, [News::SetAside(set.clone(), Aside::NotItsName)]);
    let (_, news) = says(&mut folder, &tablet, 403);
    assert_eq!(news, [News::SetAside(sheet.clone(), Aside::NotGiven(403))]);
    folder.hurry();
    assert_eq!(listed(&mut folder, &tablet, &[&sheet, &results, &set]), [News::Looked(0)]);
    assert!(matches!(folder.next(NOW, &tablet), Step::Wait(_)), "what is here is not fetched again");
    folder.again(&set);
    assert_eq!(listed(&mut folder, &tablet, &[&set]), [News::Looked(1)]);
    assert_eq!(answers(&mut folder, &tablet, good("t")).1, [News::Come(set, "t".to_owned())]);
}

#[test]
fn a_listing_that_cannot_be_read_stops_and_says_so() {
    let (mut folder, tablet) = folder(&[]);
    let body = b"<!DOCTYPE a><a/>".to_vec();
    let (_, news) = answers(&mut folder, &tablet, Answer { status: 207, retry_after: None, body });
    assert!(matches!(news.as_slice(), [News::Stopped(Stop::Listing(_))]));
    folder.hurry();
    assert_eq!(says(&mut folder, &tablet, 200).1, [News::Stopped(Stop::NoWebdav(200))]);
}
