//! The journal keeps what was answered, and a draft goes on where it stopped.
#![allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]

mod support;

use std::collections::BTreeMap;
use stepboard::card::{Answer, Kind, Mark, Slate, deal, grade};
use stepboard::content::World;
use stepboard::learn::evidence::{Asked, evidence};
use stepboard::learn::{Past, Round};
use stepboard::quantity::{Measure, Unit};
use stepboard::record::{
    Certainty, Draft, Entry, Erased, Event, FORMAT, Help, Journal, SheetName, Stamp, Within,
};
use support::log::date;

fn entry(sequence: u64, person: &str, mark: Mark, certainty: Certainty) -> Entry {
    let stamp = Stamp {
        format: FORMAT,
        sequence,
        device: "a1b2".into(),
        at: "2027-03-12T14:30:00.000Z".into(),
        date: Some(date(70)),
        person: person.into(),
    };
    Entry {
        stamp,
        family: "wants-filler".into(),
        version: 1,
        seed: 7,
        sheet: SheetName { slug: "nitrocellulose".into(), hash: "00".into() },
        answer: Answer::NotEnough,
        certainty,
        mark,
        guess: Some(0.2),
        active_seconds: Some(31),
        help: Help::None,
        within: Within::Check { attempt: "a1b2-1".into(), set: "room".into() },
    }
}

#[test]
fn entries_survive_json_and_keep_their_order() {
    let journal = Journal::new(vec![
        entry(2, "Jo", Mark::Wrong, Certainty::OnTheJob).into(),
        entry(1, "Ana", Mark::Right, Certainty::TestBoard).into(),
    ]);
    let text = serde_json::to_string(&journal).unwrap();
    assert!(text.contains(r#""certainty":"on-the-job","mark":"wrong""#), "{text}");
    let back: Journal = serde_json::from_str(&text).unwrap();
    assert_eq!(back, journal);
    for part in [r#""format":6"#, r#""date":"2027-03-12""#, r#""event":"answered""#, r#""active_seconds":31"#]
    {
        assert!(text.contains(part), "{part} in {text}");
    }
    assert_eq!(back.next_sequence(), 3);
    assert_eq!(back.people(), ["Ana", "Jo"]);
    assert_eq!(back.of("Ana").map(Past::of).count(), 1);
    assert!(!back.find(2).unwrap().sure_and_wrong(), "whoever asks goes not ahead");
    let went_ahead = Entry { answer: Answer::term("koa"), ..back.find(2).unwrap().clone() };
    assert!(went_ahead.sure_and_wrong());
    assert!(!back.find(1).unwrap().sure_and_wrong());
    assert_eq!(Journal::default().next_sequence(), 1);
}

/// A later program wrote number 3, and this one cannot read it.
#[test]
fn what_cannot_be_read_keeps_its_number_and_is_counted() {
    let answered = |sequence| Event::from(entry(sequence, "Ana", Mark::Right, Certainty::TestBoard));
    let journal = Journal::stored(vec![answered(2), answered(1)], [1, 2, 3]);
    assert_eq!((journal.events().len(), journal.unreadable(), journal.next_sequence()), (2, 1, 4));
    assert!(journal.has(3) && journal.find(3).is_none() && !journal.has(4));
    let more = journal.clone().with(answered(4));
    assert_eq!((more.events().len(), more.unreadable(), more.next_sequence()), (3, 1, 5));
    // One in the middle takes its number alone.
    let middle = Journal::stored(vec![answered(3), answered(1)], [1, 2, 3]);
    assert_eq!((middle.has(2), middle.unreadable(), middle.next_sequence()), (true, 1, 4));
    let content = support::content();
    let asked = Asked::usual(&content, "Ana", &content.competencies[0]);
    assert_eq!(evidence(journal.events(), &asked).unreadable, 0);
    let told = evidence(journal.events(), &Asked { unreadable: journal.unreadable(), ..asked });
    assert_eq!(told.unreadable, 1);
    assert_eq!(Journal::stored(vec![answered(1)], [1]), Journal::new(vec![answered(1)]), "all can be read");
}

/// Whatever the order in which events come, one by one, they stand as if they had been read at once.
#[test]
fn events_that_are_added_stand_by_their_numbers() {
    let answered = |sequence| Event::from(entry(sequence, "Ana", Mark::Right, Certainty::TestBoard));
    for order in [[1, 2, 3], [3, 1, 2], [2, 3, 1]] {
        let added = order.into_iter().map(answered).fold(Journal::default(), Journal::with);
        assert_eq!(added, Journal::new(order.map(answered).to_vec()), "{order:?}");
    }
    let journal = Journal::stored([1, 2, 4].map(answered).to_vec(), [1, 2, 3, 4]);
    let Event::Answered(of) = answered(5) else { panic!("an answer") };
    let left =
        journal.after(Erased { stamp: of.stamp.clone(), numbers: vec![1, 4], earlier: BTreeMap::new() });
    let numbers: Vec<u64> = left.events().iter().map(|event| event.stamp().sequence).collect();
    assert_eq!((numbers, left.unreadable(), left.next_sequence()), (vec![2, 5], 1, 6));
}

#[test]
fn a_journal_catches_up_with_what_another_window_stored_and_erased() {
    let answered = |sequence, who: &str| Event::from(entry(sequence, who, Mark::Right, Certainty::TestBoard));
    let of = |events: &[(u64, &str)]| -> Vec<Event> {
        events.iter().map(|(sequence, who)| answered(*sequence, who)).collect()
    };
    // 3 waits here to be stored, and the other window has taken that number and the two behind it.
    let here = Journal::new(of(&[(1, "Ana"), (2, "Ben"), (3, "Ana")]));
    let mut stored: Vec<Event> = of(&[(1, "Ana"), (3, "Ben"), (4, "Ben")]);
    let stamp = Stamp { person: String::new(), ..answered(5, "Ana").stamp().clone() };
    stored.push(Erased { stamp, numbers: vec![2], earlier: BTreeMap::new() }.into());
    let now = here.caught_up(Journal::stored(stored, [1, 3, 4, 5, 6]));
    let told: Vec<(u64, &str)> =
        now.events().iter().map(|event| (event.stamp().sequence, event.stamp().person.as_str())).collect();
    assert_eq!(told, [(1, "Ana"), (3, "Ana"), (4, "Ben"), (5, "")]);
    assert_eq!((now.unreadable(), now.next_sequence()), (1, 7));
}

#[test]
fn an_entry_finds_its_card_again_and_the_mark_comes_out_the_same() {
    let content = support::content();
    let sheet = &content.sheets[0];
    let world = World { content: &content, sheet };
    for seed in support::seeds(50) {
        let family = &content.families[0];
        let card = deal(&world, &family.id, seed).unwrap();
        let mut one = entry(1, "Ana", Mark::Right, Certainty::OnTheJob);
        one.family.clone_from(&family.id);
        one.version = family.version;
        one.seed = seed;
        one.sheet = SheetName::of(sheet);
        one.mark = grade(&card, &world, &one.answer).unwrap().mark;
        let again = deal(&world, &one.family, one.seed).unwrap();
        assert!(one.is_of(&again));
        assert_eq!(grade(&again, &world, &one.answer).unwrap().mark, one.mark);
    }
}

#[test]
fn a_slate_gives_the_answer_that_was_made_on_it() {
    let content = support::content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut card = deal(&world, "wants-filler", 3).unwrap();
    let slate = Slate::for_card(&card);
    assert_eq!(slate.answer(&card), None);
    let slate = slate.pick(Kind::ChooseAll, 1).pick(Kind::ChooseAll, 0).pick(Kind::ChooseAll, 1);
    let Answer::Term(first) = card.options[0].clone() else { unreachable!("terms are dealt here") };
    assert_eq!(slate.answer(&card), Some(Answer::Terms(vec![first])));
    assert_eq!(slate.clone().toggle_not_enough().answer(&card), Some(Answer::NotEnough));

    card.kind = Kind::Number;
    card.unit = Some(Unit::Celsius);
    let typed = ['1', '2', ',', '5', '.', '5', '\u{8}', '-'].into_iter();
    let slate = typed.fold(Slate::for_card(&card), Slate::typed).in_unit(Unit::Fahrenheit);
    assert_eq!(slate.figure, "-12.5");
    assert_eq!(slate.answer(&card), Some(Answer::Number(Measure::new(-12.5, Unit::Fahrenheit, 1))));
    assert_eq!(Slate::for_card(&card).typed('.').figure, "0.");

    card.kind = Kind::Order;
    let slate = Slate::for_card(&card).moved(0, true).moved(9, true).moved(0, false);
    assert_eq!(slate.marks[..2], [1, 0]);
}

#[test]
fn a_draft_survives_json_half_way_through_a_card() {
    let content = support::content();
    let sheet = &content.sheets[0];
    let card = deal(&World { content: &content, sheet }, "wants-filler", 5).unwrap();
    let mut draft = Draft::new("Ana", &card, SheetName::of(sheet), None, 5);
    draft.slate = draft.slate.pick(card.kind, 2);
    draft.certainty = Some(Certainty::TestBoard);
    let back: Draft = serde_json::from_str(&serde_json::to_string(&draft).unwrap()).unwrap();
    assert_eq!(back, draft);
    assert!(!Round::of(&content, None).ends(back.done), "the round goes on after it");
}
