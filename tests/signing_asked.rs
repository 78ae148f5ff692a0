//! From what a tablet knows of an apprentice to what is signed: cards, demonstrations and the book put together.
//!
//! How much is asked of “room-safe” and “air-read” is read from content; that nothing is signed without it is the rule that
//! `tests/signoff/signing.rs` holds for a request however it came about.

mod support;

use stepboard::content::{Competency, Content};
use stepboard::people::{Crew, Member, Own, Signing, Source};
use stepboard::record::{Event, Filed, Journal, LocalDate, Placed};
use stepboard::rules::term::Stage;
use stepboard::signoff::{Act, Barred, Book, Draft, Knowledge, Request, When, read_canonical, verify};
use support::log::{Log, date, families};
use support::shop;
use support::watch::{APPRENTICE, NAME, Watch};

const SAFETY: &str = "room-safe";
const ORDINARY: &str = "air-read";
/// Days after 1 January 2027: the check, the demonstrations, the day of signing.
const CHECKED: [u32; 4] = [2, 12, 20, 25];
const WATCHED: [u32; 3] = [30, 31, 32];
const SIGNED: u32 = 40;
const ANSWERS_A_DAY: usize = 24;

fn member() -> Member {
    let crew = Crew::default().with(shop::number(APPRENTICE), NAME, Some(NAME), &[]).expect("taken in");
    crew.members().first().expect("one").clone()
}

/// Cards for one competency, demonstrations for two.
fn journal(content: &Content) -> Vec<Event> {
    let mut log = Log::new("a", NAME);
    log.on(CHECKED[0]).open("one", &[SAFETY]);
    for day in CHECKED {
        log.on(day).answers(&families(content, SAFETY), ANSWERS_A_DAY, &[]);
    }
    let mut watch = Watch::new("a", "i-1");
    for slug in [SAFETY, ORDINARY] {
        let competency = content.competency(slug).expect("ships");
        for (nth, day) in WATCHED.into_iter().enumerate() {
            watch.saw(competency, &format!("{slug}-{nth}"), day, &[]);
        }
    }
    let mut events: Vec<Event> = log.events.into_iter().chain(watch.events).collect();
    for (sequence, event) in (1..).zip(&mut events) {
        event.stamp_mut().sequence = sequence;
    }
    events
}

struct Tablet {
    content: Content,
    journal: Journal,
    book: Book,
    member: Member,
    today: LocalDate,
    now: When,
}

impl Tablet {
    fn new() -> Self {
        let content = support::content();
        let events = journal(&content);
        let book = Book::begin(&shop::list(), &shop::root()).expect("a first record");
        let (today, now) = (date(SIGNED), shop::when(&format!("{}T10:00:00Z", date(SIGNED))));
        Self { journal: Journal::new(events), content, book, member: member(), today, now }
    }

    fn competency(&self, slug: &str) -> &Competency {
        self.content.competency(slug).expect("ships")
    }

    fn signing<R>(&self, slug: &str, look: impl FnOnce(&Signing<'_>) -> R) -> R {
        let (content, journal, now) = (&self.content, &self.journal, &self.now);
        let knowledge = &Placed::of(journal.events());
        let source = Source { content, journal, knowledge, book: Some(&self.book), today: self.today, now };
        look(&Signing::of(&source, &self.member, self.competency(slug)))
    }

    fn draft(&self, slug: &str, nth: u8, reason: &str) -> Result<Draft, Vec<Barred>> {
        let until = self.now.plus_months(self.competency(slug).expires_months).expect("a moment");
        let id = stepboard::signoff::credential_id([nth; 16]);
        let own = Own { id, at: self.now.clone(), today: self.today, until, reason: reason.to_owned() };
        self.signing(slug, |signing| {
            let request = signing.request(own, self.content.texts("en"));
            Draft::new(request, self.book.list(), &shop::assessor().public()).map_err(|not| not.barred)
        })
    }

    fn sign(&mut self, draft: &Draft, replaces: Option<String>) -> String {
        let file = draft.sign(&shop::assessor()).expect("signed");
        let credential = read_canonical(file.as_bytes()).expect("canonical");
        let act = match replaces {
            None => Act::SignedOff { credential },
            Some(replaces) => Act::Reassessed { credential, replaces },
        };
        let added = self.book.append(act, &shop::assessor(), &self.now, &self.content.competencies);
        self.book = added.expect("it fits");
        file
    }
}

#[test]
fn what_a_tablet_knows_is_signed_and_believed_elsewhere() {
    let mut tablet = Tablet::new();
    let draft = tablet.draft(SAFETY, 1, "").expect("nothing bars it");
    let one = draft.credential();
    assert_eq!((one.subject.text(), one.knowledge), (APPRENTICE, Knowledge::Sufficient));
    assert_eq!(one.criteria.len(), tablet.competency(SAFETY).criteria.len());
    assert!(one.achievement.description.starts_with("The holder may enter the finish room"), "{one:?}");
    assert!(one.evidence[0].narrative.contains("Sufficient since 2027-01-"), "{:?}", one.evidence[0]);
    assert!(
        !one.document().values().any(|value| value.to_string().contains(NAME)),
        "a name is no part of it"
    );
    let file = tablet.sign(&draft, None);
    let verdict = verify(file.as_bytes(), tablet.book.list(), &tablet.content.competencies, &tablet.now);
    assert!(verdict.accepted(), "{:?}", verdict.reasons);
}

#[test]
fn a_reason_makes_up_for_cards_of_an_ordinary_one_alone() {
    let tablet = Tablet::new();
    assert_eq!(tablet.draft(ORDINARY, 1, "  ").expect_err("blank is no reason"), [Barred::ReasonMissing]);
    let draft = tablet.draft(ORDINARY, 1, " Six years in another shop. ").expect("a reason");
    assert_eq!(draft.credential().knowledge, Knowledge::Insufficient);
    assert_eq!(draft.credential().evidence[1].narrative, "Six years in another shop.");
    let mut without = Tablet::new();
    without.journal = Journal::new(
        without.journal.events().iter().filter(|one| !matches!(one, Event::Answered(_))).cloned().collect(),
    );
    let barred = without.draft(SAFETY, 1, "Six years in another shop.").expect_err("no cards");
    assert_eq!(barred, [Barred::SafetyNotShown]);
}

#[test]
fn what_comes_before_is_looked_up_in_the_book() {
    let mut tablet = Tablet::new();
    let needs = |tablet: &Tablet| tablet.signing("booth-run", |signing| signing.ready.needs.len());
    assert_eq!(needs(&tablet), 1);
    let draft = tablet.draft(SAFETY, 1, "").expect("nothing bars it");
    tablet.sign(&draft, None);
    assert_eq!(needs(&tablet), 0);
}

#[test]
fn a_second_one_takes_the_place_of_the_first() {
    let mut tablet = Tablet::new();
    assert_eq!(tablet.signing(ORDINARY, |signing| signing.replaces.clone()), None);
    let first = tablet.draft(ORDINARY, 1, "Seen.").expect("a reason");
    tablet.sign(&first, None);
    let (replaces, shown) =
        tablet.signing(ORDINARY, |signing| (signing.replaces.clone(), signing.ready.shown.count));
    assert_eq!(replaces.as_ref(), Some(&first.credential().id));
    // What was shown before the sign-off counted for that one.
    assert_eq!(shown, 0);
    assert_eq!(tablet.book.stands_for(&tablet.member.number, ORDINARY).map(|entry| entry.record), Some(2));
    assert_eq!(tablet.book.stands_for(&tablet.member.number, SAFETY), None);
}

/// A tablet on which number 17 was signed off for everything of a band, one after the other.
fn signed_for_band(band: Stage, after_each: impl Fn(&Tablet)) -> Tablet {
    let mut tablet = Tablet::new();
    let of_band: Vec<Competency> =
        tablet.content.competencies.iter().filter(|one| one.band == band).cloned().collect();
    for (nth, one) in (10_u8..).zip(&of_band) {
        after_each(&tablet);
        let request = Request {
            subject: tablet.member.number.clone(),
            held: one.needs.clone(),
            known: one.needs_knowledge.clone(),
            on_file: shop::on_file()
                .into_iter()
                .map(|paper| Filed { on: date(10), until: date(300), ..paper })
                .collect(),
            at: tablet.now.clone(),
            today: tablet.today,
            until: tablet.now.plus_months(one.expires_months).expect("a moment"),
            ..shop::request(one, nth)
        };
        let draft = Draft::new(request, tablet.book.list(), &shop::assessor().public());
        tablet.sign(&draft.expect("nothing bars it"), None);
    }
    tablet
}

/// A band is stamped once all its competencies are signed for, and as long as all are.
#[test]
fn a_band_is_held_with_its_last_competency() {
    let holds = |tablet: &Tablet, on: &When| {
        tablet.book.holds_band(&tablet.member.number, Stage::Room, &tablet.content.competencies, on)
    };
    let tablet =
        signed_for_band(Stage::Room, |tablet| assert!(!holds(tablet, &tablet.now), "one is missing"));
    assert!(holds(&tablet, &tablet.now));
    let all = &tablet.content.competencies;
    let months = all.iter().filter(|one| one.band == Stage::Room).map(|one| one.expires_months).min();
    let end = tablet.now.plus_months(months.expect("one at least")).expect("a moment");
    assert!(!holds(&tablet, &end), "the first of them has run out");
    let none: Vec<Competency> = all.iter().filter(|one| one.band != Stage::Room).cloned().collect();
    let held = tablet.book.holds_band(&tablet.member.number, Stage::Room, &none, &tablet.now);
    assert!(!held, "a band with nothing to sign");
}

/// The book that a browser test opens; signatures leave nothing to chance (RFC 8032), so that it comes out the same each time.
#[test]
fn the_demo_book_is_as_it_stands_in_its_file() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/signoff/book.jsonl");
    let (text, made) = (std::fs::read_to_string(path), concat!(env!("CARGO_TARGET_TMPDIR"), "/book.jsonl"));
    let book = signed_for_band(Stage::Room, |_| ()).book.text();
    std::fs::write(made, &book).expect("written");
    assert!(text.is_ok_and(|text| text == book), "content changed: copy {made} to {path}");
}

/// What the book withdrew counts for whoever has the book, before a list says so.
#[test]
fn the_books_own_list_has_every_withdrawal() {
    let mut tablet = Tablet::new();
    let draft = tablet.draft(SAFETY, 1, "").expect("nothing bars it");
    let file = tablet.sign(&draft, None);
    let act = Act::Withdrawn {
        credential: draft.credential().id.clone(),
        reason: "Shown in another room.".to_owned(),
    };
    tablet.book = tablet.book.append(act, &shop::instructor(), &tablet.now, &[]).expect("withdrawn");
    let reasons =
        |list| verify(file.as_bytes(), list, &tablet.content.competencies, &tablet.now).reasons.len();
    assert_eq!((reasons(tablet.book.list()), reasons(&tablet.book.list_now())), (0, 1));
}
