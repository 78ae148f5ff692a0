//! Results of many tablets taken together: each event once, whatever is read twice; everybody at a glance; who is stuck on what;
//! tables that a spreadsheet may open.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
#![allow(
    clippy::cast_possible_wrap,
    clippy::cast_possible_truncation,
    reason = "counts of the crowd are small"
)]

#[path = "made/crowd.rs"]
mod crowd;
mod support;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::{Mutex, PoisonError};
use std::time::Instant;
use stepboard::card::{Answer, Card, Kind, Mark, deal, solve};
use stepboard::content::{Content, World};
use stepboard::exchange::crew::{
    Field, Gathered, Looking, Misread, Person, Roll, Slipped, Slips, Stands, csv as written, days, finding,
    glance, practised, rests_on_void, stuck,
};
use stepboard::exchange::{Named, Results};
use stepboard::learn::evidence::{Asked, evidence};
use stepboard::learn::items::{RIGHT, Redealt, report};
use stepboard::record::{CardKind, Erased, Event, Journal, LocalDate, Voids, Within, Wrong, merge};
use stepboard::signoff::When;
use support::log::Log;

/// Results of so many people with so many answers each, ten on a tablet.
fn crowd(people: u32, answers: u32) -> Vec<Results> {
    texts(people, answers).iter().map(|text| Results::read(text.as_bytes()).unwrap()).collect()
}

/// Tests run beside each other, and some want the same files.
static WRITING: Mutex<()> = Mutex::new(());

fn texts(people: u32, answers: u32) -> Vec<String> {
    let _alone = WRITING.lock().unwrap_or_else(PoisonError::into_inner);
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("gathered-{people}-{answers}"));
    crowd::write(&support::content(), &folder, people, answers, 1);
    let files = fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path());
    let files: BTreeSet<PathBuf> = files.collect();
    files.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

fn some() -> Vec<Results> {
    crowd(24, 60)
}

fn count(results: &Results) -> usize {
    results.events.iter().filter(|event| event.answer().is_some()).count()
}

fn now() -> When {
    When::new("2027-06-01T12:00:00Z").unwrap()
}

fn gathered(files: &[Results]) -> Gathered {
    let mut all = Gathered::default();
    for file in files {
        all.take(file.clone()).unwrap();
    }
    all
}

fn people(all: &Gathered) -> Vec<Person> {
    let mut roll = Roll::begin(all);
    while roll.take_some(100) {}
    roll.people(&[])
}

fn theirs<'a>(all: &'a Gathered, person: &Person) -> Vec<std::borrow::Cow<'a, Event>> {
    let mut events = person.events(all, &person.key);
    events.extend(all.voided().map(std::borrow::Cow::Borrowed));
    events
}

/// The slips of those people.
fn slips(all: &Gathered, people: &[Person], content: &Content) -> Vec<Slipped> {
    let mut redealt = Redealt::new(content);
    let told = people.iter().flat_map(|person| {
        let mut slips = Slips::new(&person.key, &person.name);
        let events = theirs(all, person);
        events.iter().filter_map(|event| event.answer()).for_each(|entry| slips.take(&mut redealt, entry));
        slips.told().collect::<Vec<_>>()
    });
    told.collect()
}

#[test]
fn the_same_file_again_adds_nothing_and_a_longer_one_what_is_new() {
    let files = some();
    let mut all = Gathered::default();
    let mut half = files[0].clone();
    half.events.truncate(100);
    let added = all.take(half.clone()).unwrap();
    assert_eq!((added.events, added.answers, added.known), (100, count(&half), 0));
    let added = all.take(files[0].clone()).unwrap();
    assert_eq!((added.events, added.known), (files[0].events.len() - 100, 100));
    assert_eq!(added.changed, ["t0000"]);
    let before = all.clone();
    for again in [&half, &files[0]] {
        let added = all.take(again.clone()).unwrap();
        assert_eq!((added.events, added.changed.len()), (0, 0));
    }
    assert_eq!(all, before);
}

#[test]
fn the_order_of_files_changes_nothing_and_it_is_what_merging_journals_gives() {
    let files = some();
    let mut back = files.clone();
    back.reverse();
    let (one, other) = (gathered(&files), gathered(&back));
    assert_eq!(one, other);
    let journals: Vec<Journal> = files.iter().map(|file| Journal::new(file.events.clone())).collect();
    let merged = merge(&journals).unwrap();
    for person in people(&one) {
        let of = merged.iter().filter(|event| event.stamp().person == person.key);
        let here = person.events(&one, &person.key);
        assert!(of.eq(here.iter().map(|event| &**event)), "{}", person.key);
    }
}

#[test]
fn a_journal_that_was_copied_and_went_on_elsewhere_is_told_and_nothing_is_taken_in() {
    let files = some();
    let mut all = gathered(&files[..1]);
    let before = all.clone();
    let mut copied = files[0].clone();
    let last = copied.events.last_mut().unwrap();
    last.stamp_mut().at = "2027-05-01T10:00:00Z".to_owned();
    let clash = all.take(copied.clone()).unwrap_err();
    assert_eq!((clash.device.as_str(), clash.sequence), ("t0000", copied.events.len() as u64));
    assert_eq!(all, before);
}

#[test]
fn what_was_erased_on_its_tablet_goes_here_too_and_does_not_come_back() {
    let files = some();
    let mut all = gathered(&files[..1]);
    let mut later = files[0].clone();
    let first = later.events[0].stamp().person.clone();
    let (gone, left): (Vec<Event>, Vec<Event>) =
        later.events.into_iter().partition(|event| event.stamp().person == first);
    let numbers: Vec<u64> = gone.iter().map(|event| event.stamp().sequence).collect();
    let mut stamp = left.last().unwrap().stamp().clone();
    (stamp.sequence, stamp.person) = (stamp.sequence + 1, String::new());
    later.events = left;
    later.events.push(Erased { stamp, numbers, earlier: BTreeMap::new() }.into());
    all.take(later.clone()).unwrap();
    assert!(all.events().all(|event| event.stamp().person != first));
    all.take(files[0].clone()).unwrap();
    assert!(all.events().all(|event| event.stamp().person != first), "a copy does not bring it back");
}

#[test]
fn what_is_erased_after_a_backup_gave_the_tablet_another_name_goes_under_the_name_before_too() {
    let files = some();
    let gone = files[0].events[0].stamp().person.clone();
    let mut stamp = files[0].events.last().unwrap().stamp().clone();
    (stamp.device, stamp.sequence) = ("restored".to_owned(), stamp.sequence + 1);
    let erased: Event =
        stepboard::people::erased(&Journal::new(files[0].events.clone()), &gone, stamp).into();
    let mut later = files[0].clone();
    later.device = "restored".to_owned();
    later.events = vec![erased.clone()];
    for order in [[&files[0], &later], [&later, &files[0]]] {
        let mut all = gathered(&[]);
        for file in order {
            all.take(file.clone()).unwrap();
        }
        assert!(all.events().all(|event| event.stamp().person != gone));
    }
    let merged = merge(&[Journal::new(files[0].events.clone()), Journal::new(vec![erased.clone()])]).unwrap();
    assert!(merged.iter().all(|event| event.stamp().person != gone));
    assert_eq!(Event::read(&serde_json::to_string(&erased).unwrap()).unwrap(), erased);
}

#[test]
fn one_person_on_two_tablets_is_one_by_their_number() {
    let mut one = crowd(1, 20).remove(0);
    let number = "a-00000".to_owned();
    one.people = vec![Named { journal: number.clone(), number, name: "Ana".to_owned() }];
    let mut other = one.clone();
    for event in &mut one.events {
        event.stamp_mut().person = "Ana".to_owned();
    }
    one.people[0].journal = "Ana".to_owned();
    other.device = "tablet-b".to_owned();
    for event in &mut other.events {
        event.stamp_mut().device = "tablet-b".to_owned();
    }
    let all = gathered(&[one, other]);
    let people = people(&all);
    let [person] = people.as_slice() else { panic!("one person") };
    assert_eq!((person.key.as_str(), person.number.as_deref()), ("a-00000", Some("a-00000")));
    let events = person.events(&all, &person.key);
    assert_eq!(events.len(), all.events().count());
    assert!(events.iter().all(|event| event.stamp().person == "a-00000"));
}

#[test]
fn a_glance_says_of_each_competency_what_the_evidence_of_all_tablets_says() {
    let content = support::content();
    let files = some();
    let all = gathered(&files);
    let journals: Vec<Journal> = files.iter().map(|file| Journal::new(file.events.clone())).collect();
    let merged = merge(&journals).unwrap();
    let now = now();
    let looking = Looking { content: &content, book: None, now: &now };
    for person in people(&all).iter().take(3) {
        let events = theirs(&all, person);
        let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
        let glance = glance(&looking, person, &events);
        for (cell, competency) in glance.cells.iter().zip(&content.competencies) {
            let whole = evidence(&merged, &Asked::usual(&content, &person.key, competency));
            assert_eq!((cell.answers, cell.right), (whole.state.answers, whole.state.right));
            assert_eq!(cell.stands == Stands::Sufficient, whole.suffices());
            assert_eq!(cell.stands == Stands::Blocked, !whole.hazards.is_empty());
        }
        assert_eq!(glance.answers, 60);
        let counted = days(events.iter().filter_map(|event| event.answer()));
        assert_eq!(counted.iter().map(|day| day.all()).sum::<u32>(), 60);
        let right: u32 = counted.iter().map(|day| day.right).sum();
        assert_eq!(right as usize, glance.right);
    }
}

#[test]
fn answers_that_count_for_nothing_are_told_from_none() {
    let content = support::content();
    let mut file = crowd(1, 6).remove(0);
    for event in &mut file.events {
        if let Event::Answered(entry) = event {
            let entry = Arc::make_mut(entry);
            entry.within = Within::Practice;
        }
    }
    let all = gathered(&[file]);
    let now = now();
    let looking = Looking { content: &content, book: None, now: &now };
    let people = people(&all);
    let events = theirs(&all, &people[0]);
    let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
    let touched: BTreeSet<&str> = events
        .iter()
        .filter_map(|event| event.answer())
        .flat_map(|entry| &content.family(&entry.family).unwrap().competencies)
        .map(String::as_str)
        .collect();
    assert!(!touched.is_empty() && touched.len() < content.competencies.len());
    for cell in glance(&looking, &people[0], &events).cells {
        let practised = touched.contains(cell.competency.as_str());
        let expected = if practised { Stands::Practised } else { Stands::Nothing };
        assert_eq!(cell.stands, expected, "{}", cell.competency);
    }
}

#[test]
fn who_is_stuck_on_what_is_told_sure_and_wrong_first() {
    let content = support::content();
    let all = gathered(&some());
    let slips = slips(&all, &people(&all), &content);
    let wrong = all.events().filter_map(Event::answer).filter(|entry| entry.mark != Mark::Right).count();
    let found = stuck(slips);
    assert_eq!(found.iter().map(|one| one.count).sum::<usize>(), wrong, "each wrong answer stands once");
    assert!(found.iter().any(|one| matches!(one.misread, Misread::Slip(_))), "some have a name");
    assert!(found.is_sorted_by_key(|one| std::cmp::Reverse((one.sure, one.count))));
    for one in &found {
        assert!(one.people.is_sorted_by_key(|who| std::cmp::Reverse(who.sure)));
        assert!(one.people.iter().all(|who| all.find(&who.example).is_some()));
    }
}

#[test]
fn an_order_of_what_nobody_could_order_is_told_like_any_answer_without_knowing() {
    let content = support::content();
    let world = World { content: &content, sheet: content.sheet("nitrocellulose").unwrap() };
    let families = content.families.iter().flat_map(|family| (0..200).map(|seed| (family.id.as_str(), seed)));
    let cards = families.filter_map(|(family, seed)| deal(&world, family, seed).ok());
    let untold = |card: &Card| solve(card, &world).is_some_and(|solved| solved.right == Answer::NotEnough);
    let card = cards.filter(|card| card.kind == Kind::Order).find(untold).expect("some order lacks a fact");
    let slugs = card.options.iter().filter_map(|option| match option {
        Answer::Term(slug) => Some(slug.clone()),
        _ => None,
    });
    let mut entry = crowd(1, 20)[0].events.iter().find_map(Event::answer).unwrap().clone();
    (entry.family, entry.version, entry.seed) = (card.family.clone(), card.version, card.seed);
    (entry.answer, entry.mark) = (Answer::Order(slugs.collect()), Mark::Wrong);
    let (mut redealt, mut slips) = (Redealt::new(&content), Slips::new("a-1", "Ana"));
    slips.take(&mut redealt, &entry);
    let misread: Vec<Misread> = slips.told().map(|one| one.misread).collect();
    assert_eq!(misread, [Misread::Slip("judged-without-knowing".to_owned())]);
}

#[test]
fn options_are_told_of_cards_dealt_again() {
    let content = support::content();
    let all = gathered(&crowd(60, 100));
    let events: Vec<Event> = all.events().cloned().collect();
    let found = report(&content, &events);
    let with: Vec<_> = found.families.iter().filter(|one| !one.options.is_empty()).collect();
    assert!(with.len() > 10, "{} families have options", with.len());
    // A number of the crowd's own making is no option that was offered.
    let typed = |family: &str| {
        let mut theirs = all.events().filter_map(Event::answer).filter(|entry| entry.family == family);
        theirs.any(|entry| matches!(entry.answer, Answer::Number(_)))
    };
    for one in with.into_iter().filter(|one| !typed(&one.family)) {
        assert_eq!(one.options[0].option, RIGHT);
        assert_eq!(one.options[0].chosen, one.item.right, "{}", one.family);
        let chosen: usize = one.options.iter().map(|option| option.chosen).sum();
        assert_eq!(chosen, one.item.asked, "{}: everybody took one", one.family);
    }
    assert!(
        found.families.iter().any(|one| one.flags.len() > 1),
        "more than one of the four flags is raised"
    );
}

#[test]
fn a_sign_off_points_at_what_it_rested_on_and_was_found_void() {
    let content = support::content();
    let competency = &content.competencies[0].slug;
    let families = support::log::families(&content, competency);
    let mut log = Log::new("t", "p-001");
    log.open("one", &[competency]).answers(&families, 10, &[]);
    let kind = CardKind { family: families[0].clone(), version: 1 };
    log.voids(Wrong::Cards(kind), "Wrong edge");
    let events: Vec<&Event> = log.events.iter().collect();
    let day = |text: &str| text.parse::<LocalDate>().unwrap();
    let touched = log.events.iter().filter_map(Event::answer).filter(|one| one.family == families[0]).count();
    let (answers, voids) = rests_on_void(&content, competency, day("2027-02-01"), &events);
    assert_eq!((answers, voids.len()), (touched, 1));
    assert_eq!(rests_on_void(&content, competency, day("2026-12-31"), &events).0, 0, "signed before");
}

#[test]
fn what_is_misread_names_the_kinds_of_card_most_frequent_first() {
    let content = support::content();
    let mut log = Log::new("t", "p-001");
    let families = [&content.families[0].id, &content.families[1].id, &content.families[1].id];
    for family in families {
        log.answer(family, false);
    }
    let (mut redealt, mut slips) = (Redealt::new(&content), Slips::new("p-001", "Ana"));
    log.events.iter().filter_map(Event::answer).for_each(|entry| slips.take(&mut redealt, entry));
    // Cards on a sheet that is not known stand under their family.
    let found = stuck(slips.told());
    assert_eq!(found.iter().map(|one| (one.families.len(), one.count)).collect::<Vec<_>>(), [(1, 2), (1, 1)]);
    assert_eq!(found[0].families, [content.families[1].id.clone()]);
    assert_eq!(found[0].people[0].kinds(), found[0].families);
    let mut person = found[0].people[0].clone();
    person.families.extend([("rare".to_owned(), 1), ("often".to_owned(), 3)]);
    assert_eq!(person.kinds(), ["often", content.families[1].id.as_str(), "rare"]);
}

#[test]
fn kinds_that_nobody_was_asked_in_a_check_are_told_apart_with_an_answer_to_look_at() {
    let mut log = Log::new("t", "p-001");
    log.answer("only-practised", true).answer("only-practised", false).answer("only-practised", true);
    log.answer("own-card-0011223344556677", true).answer("both", false);
    log.open("one", &["pores-filled"]).answer("both", true);
    log.within = Within::Practice;
    log.answer("right-always", true);
    let found = practised(&log.events);
    let told: Vec<_> = found.iter().map(|one| (one.kind.family.as_str(), one.answers, one.right)).collect();
    let own = ("own-card-0011223344556677", 1, 1);
    assert_eq!(told, [("only-practised", 3, 2), own, ("right-always", 1, 1)]);
    assert_eq!(found[0].example.sequence, 2, "the wrong one");
}

#[test]
fn a_finding_handed_out_voids_on_another_tablet_what_it_voids_here() {
    let mut log = Log::new("t", "p-001");
    log.answer("mask-wants", true);
    log.voids(Wrong::Cards(CardKind { family: "mask-wants".to_owned(), version: 1 }), "Wrong edge");
    log.voids(Wrong::Set { set: "a-set".to_owned() }, "Another one");
    let origin = log.events[1].stamp().name();
    let made = finding(&Journal::new(log.events.clone()), &origin).unwrap();
    assert_eq!(made.events, [log.events[1].clone()], "nobody's answers go with it");
    let read = Results::read(made.text().unwrap().as_bytes()).unwrap();
    let mut other = Gathered::default();
    other.take(read).unwrap();
    assert!(Voids::of(other.voided()).of_cards("mask-wants", 1).is_some());
    // Taken back it goes with what takes it back.
    log.voids(Wrong::Void { void: origin.clone() }, "It was right");
    other.take(finding(&Journal::new(log.events.clone()), &origin).unwrap()).unwrap();
    assert!(Voids::of(other.voided()).is_empty());
    assert_eq!(finding(&Journal::new(log.events[..1].to_vec()), &origin), None);
}

/// RFC 4180: CRLF after each line, quotes doubled, quoted where comma, quote or line end stand (section 2, rules 1, 6, 7). A
/// formula gets an apostrophe (OWASP, "CSV Injection").
#[test]
fn tables_are_written_as_the_standard_has_it_and_no_text_is_a_formula() {
    let row = |texts: &[&str]| texts.iter().map(|text| Field::text(*text)).collect::<Vec<_>>();
    assert_eq!(written(&[row(&["aaa", "bbb"]), row(&["zzz", ""])]), "aaa,bbb\r\nzzz,\r\n");
    assert_eq!(written(&[row(&["aaa", "b\"bb", "c,c", "d\nd"])]), "aaa,\"b\"\"bb\",\"c,c\",\"d\nd\"\r\n");
    for formula in ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "=HYPERLINK(\"http://x\")"] {
        let text = written(&[row(&[formula])]);
        assert!(text.trim_start_matches('"').starts_with('\''), "{text}");
    }
    let numbers =
        vec![Field::Number(Some(-0.5)), Field::Number(None), Field::count(3), Field::Number(Some(f64::NAN))];
    assert_eq!(written(&[numbers]), "-0.5,,3,\r\n");
    let read = written(&[row(&["a\r\nb", "=x,\"y\""])]);
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(read.as_bytes());
    let back: Vec<String> = reader.records().next().unwrap().unwrap().iter().map(str::to_owned).collect();
    assert_eq!(back, ["a\r\nb", "'=x,\"y\""], "another library reads the same");
}

/// As many people as `STEPBOARD_CROWD` asks for, else few: `make long` asks for 200, who have to be done in the same time on an
/// idle machine.
#[test]
#[allow(clippy::disallowed_methods, reason = "what is measured is time")]
fn many_people_with_many_answers_are_read_and_reported_quickly() {
    const SECONDS_MOST: f64 = 2.0;
    let people_asked = std::env::var("STEPBOARD_CROWD").map_or(10, |asked| asked.parse().expect("a count"));
    let content = support::content();
    let texts = texts(people_asked, 500);
    let begun = Instant::now();
    let mut all = Gathered::default();
    for text in &texts {
        all.take(Results::read(text.as_bytes()).unwrap()).unwrap();
    }
    let read = begun.elapsed().as_secs_f64();
    let people = people(&all);
    assert_eq!(people.len(), people_asked as usize);
    let now = now();
    let looking = Looking { content: &content, book: None, now: &now };
    for person in &people {
        let events = theirs(&all, person);
        let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
        assert_eq!(glance(&looking, person, &events).answers, 500);
    }
    let seen = begun.elapsed().as_secs_f64();
    assert!(!stuck(slips(&all, &people, &content)).is_empty());
    let slipped = begun.elapsed().as_secs_f64();
    let events: Vec<Event> = all.events().cloned().collect();
    assert_eq!(report(&content, &events).people.len(), people_asked as usize);
    let whole = begun.elapsed().as_secs_f64();
    let (stuck, cards) = (slipped - seen, whole - slipped);
    println!("read {read:.2} s, at a glance {:.2} s, stuck {stuck:.2} s, cards {cards:.2} s", seen - read);
    assert!(whole < SECONDS_MOST, "{whole:.1} s");
}
