//! How far an apprentice is in a competency: from cards over demonstrations to a signature, and what comes before it.

mod support;

use stepboard::content::Content;
use stepboard::learn::mastery::Call;
use stepboard::learn::observation::Missing;
use stepboard::people::{Crew, Far, Member, Ready, Source, last_signed};
use stepboard::record::{Event, Journal, Placed};
use stepboard::signoff::{Act, Book, read_canonical};
use support::log::{Log, date, families};
use support::shop;
use support::watch::{APPRENTICE, ILSE, NAME, Watch};

/// Days after 1 January 2027 on which it is asked.
const TODAY: u32 = 60;

/// Number 17, who answered under her name before there were numbers.
fn member() -> Member {
    let crew = Crew::default().with(shop::number(APPRENTICE), NAME, Some(NAME), &[NAME]).expect("taken in");
    crew.members()[0].clone()
}

fn ask<R>(content: &Content, events: &[Event], slug: &str, look: impl Fn(&Ready<'_>) -> R) -> R {
    ask_with(content, events, slug, None, look)
}

fn ask_with<R>(
    content: &Content,
    events: &[Event],
    slug: &str,
    book: Option<&Book>,
    look: impl Fn(&Ready<'_>) -> R,
) -> R {
    let journal = Journal::new(events.to_vec());
    let (now, member) = (shop::when("2027-03-02T15:04:05Z"), member());
    let knowledge = &Placed::of(journal.events());
    let source = Source { content, journal: &journal, knowledge, book, today: date(TODAY), now: &now };
    look(&source.ready(&member, content.competency(slug).expect("ships")))
}

/// Cards enough, all right, on three days that lie a week apart in all.
fn cards(content: &Content, log: &mut Log, slug: &str) {
    let families = families(content, slug);
    log.on(20).open(slug, &[slug]);
    for day in [20, 24, 28] {
        log.on(day).answers(&families, families.len(), &[]);
    }
}

#[test]
fn cards_and_demonstrations_both_are_asked_for() {
    let content = support::content();
    let slug = "air-read";
    let competency = content.competency(slug).expect("ships");
    assert!(competency.needs.is_empty() && competency.needs_knowledge.is_empty());
    let (mut log, mut watch) = (Log::new("a", NAME), Watch::new("b", ILSE));
    let far = |events: &[Event]| ask(&content, events, slug, |ready| ready.far());
    assert_eq!(far(&[]), Far::Cards);
    watch.saw(competency, "o1", 30, &[]);
    assert_eq!(far(&watch.events), Far::Watched);
    cards(&content, &mut log, slug);
    assert_eq!(far(&log.events), Far::Known);
    for nth in 1..competency.demonstrations {
        watch.saw(competency, &format!("p{nth}"), 40 + nth, &[]);
    }
    assert_eq!(far(&watch.events), Far::Watched, "demonstrations alone");
    let both: Vec<Event> = log.events.into_iter().chain(renumbered(watch.events)).collect();
    assert_eq!(far(&both), Far::Ready);
}

/// Behind the numbers of the answers, as in one journal.
fn renumbered(mut events: Vec<Event>) -> Vec<Event> {
    for event in &mut events {
        event.stamp_mut().sequence += 1_000;
    }
    events
}

/// `buffed` needs `levelled` and `room-safe`; `plan-kept` needs the cards of `wood-ready`.
#[test]
fn what_comes_before_is_told() {
    let content = support::content();
    let needs = |slug: &str, events: &[Event]| {
        ask(&content, events, slug, |ready| {
            let told = |slugs: &[&str]| slugs.iter().map(|slug| (*slug).to_owned()).collect::<Vec<_>>();
            (told(&ready.needs), told(&ready.needs_knowledge))
        })
    };
    assert_eq!(needs("buffed", &[]), (vec!["levelled".to_owned(), "room-safe".to_owned()], vec![]));
    assert_eq!(needs("plan-kept", &[]), (vec![], vec!["wood-ready".to_owned()]));
    let mut log = Log::new("a", NAME);
    cards(&content, &mut log, "wood-ready");
    assert_eq!(needs("plan-kept", &log.events), (vec![], vec![]));
    ask(&content, &log.events, "wood-ready", |ready| {
        assert_eq!(ready.evidence.state.call, Call::Sufficient);
        assert!(ready.shown.missing.contains(&Missing::Demonstrations) && !ready.signed);
    });
}

/// `levelled` was signed for on 2 March 2026, for 24 months: what was shown until then counted for that.
#[test]
fn what_stands_signed_is_told_and_what_was_shown_for_it_is_used_up() {
    let content = support::content();
    let credential = read_canonical(shop::signed(shop::ORDINARY, 1).as_bytes()).expect("canonical");
    let begun = Book::begin(&shop::list(), &shop::root()).expect("a first record");
    let at = shop::when("2026-03-02T16:00:00Z");
    let book = begun
        .append(Act::SignedOff { credential }, &shop::assessor(), &at, &content.competencies)
        .expect("signed off");
    let mut watch = Watch::new("b", ILSE);
    let competency = content.competency(shop::ORDINARY).expect("ships");
    let mut before = watch.made(competency, "o1", 30, &[]);
    before.on = "2026-03-02".parse().expect("a date");
    before.paper = true;
    watch.put(before);
    watch.saw(competency, "o2", 31, &[]);
    let with = |book: Option<&Book>, slug: &str| {
        ask_with(&content, &watch.events, slug, book, |ready| (ready.signed, ready.shown.count, ready.far()))
    };
    assert_eq!(with(Some(&book), shop::ORDINARY), (true, 1, Far::Signed));
    assert_eq!(with(None, shop::ORDINARY), (false, 2, Far::Watched));
    let needs = ask_with(&content, &[], "buffed", Some(&book), |ready| ready.needs.len());
    assert_eq!(needs, 1, "of `levelled` and `room-safe`");
    assert_eq!(last_signed(&book, &member(), shop::ORDINARY), "2026-03-02".parse().ok());
    assert_eq!(last_signed(&book, &member(), shop::SAFETY), None);
}
