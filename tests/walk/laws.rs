//! Laws over random decisions, on each walk that ships.

use crate::steps::begin;
use crate::support::any::hold;
use crate::support::{asked as asked_for, content};
use proptest::prelude::*;
use stepboard::content::{Ask, Content};
use stepboard::quantity::Hours;
use stepboard::rules::contamination::Suit;
use stepboard::rules::drying::waits::DryTest;
use stepboard::rules::hazard::mask_kind::Protection;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::term::Term;
use stepboard::walk::at_hand::asked;
use stepboard::walk::decision::{Decision, Offer, Parts, RoomAct, Wait, Work, Worn};
use stepboard::walk::guided::{Warning, going_on, warnings};
use stepboard::walk::{Saved, Walk, right};

/// Random walks of each that ships, unless `STEPBOARD_WALKS` asks for others.
const WALKS: u32 = 5;

/// Numbers that a decision is made of.
type Raw = (u8, u32, u32, u32);

fn raw() -> impl Strategy<Value = Vec<Raw>> {
    proptest::collection::vec((any::<u8>(), any::<u32>(), any::<u32>(), any::<u32>()), 1..40)
}

/// A decision out of numbers: often what comes next in a right way, so that walks get on.
fn decision(walk: &Walk, content: &Content, (kind, a, b, c): Raw) -> Decision {
    let parts = walk.start().parts();
    let some = |bits: u32| (0..parts).filter(|part| bits >> part & 1 == 1).collect::<Vec<usize>>();
    match kind % 16 {
        0..=5 => right::next(walk, content).unwrap_or(Decision::Wait(Wait::Morning)),
        6..=9 => {
            let all: Vec<Operation> = Operation::ALL.to_vec();
            let operation = all[a as usize % all.len()];
            let at_hand = asked(content, &walk.start().sheet, operation);
            let number = |one: &&stepboard::content::Number| {
                let share = f64::from(c % 101) / 100.0;
                let value = one.from + share * (one.to - one.from);
                let value = if one.ask == Ask::Coats { value.round() } else { value };
                let among = one.among.get(c as usize % one.among.len().max(1)).copied();
                (one.ask, among.unwrap_or(value))
            };
            let pick = |one: &&stepboard::content::Choice| {
                (one.key.clone(), one.options[c as usize % one.options.len()].slug.clone())
            };
            Decision::Work(Work {
                operation,
                parts: if b % 3 == 0 { some(b >> 2) } else { (0..parts).collect() },
                numbers: at_hand.numbers.iter().map(number).collect(),
                picks: at_hand.choices.iter().map(pick).collect(),
            })
        }
        10 => Decision::Wait(Wait::Hours(Hours::saturating(f64::from(a % 400) / 8.0))),
        11 => Decision::Wait(Wait::Morning),
        12 => Decision::Wait(Wait::Until(DryTest::ALL[a as usize % 3])),
        13 => Decision::Wear(Worn {
            respirator: [None, Some(Protection::Both), Some(Protection::Particles)][a as usize % 3],
            sealed: a & 8 == 0,
            suit: [Suit::Closed, Suit::Sanding, Suit::Street][b as usize % 3],
            gloves: b & 8 == 0,
            eyes: b & 16 == 0,
        }),
        14 => Decision::Room(vec![RoomAct::ALL[a as usize % RoomAct::ALL.len()]]),
        _ if a % 4 == 0 => Decision::Strip(Parts { parts: some(b) }),
        _ => Decision::Offer(Offer { day: a % 60 }),
    }
}

/// Holds a law over random decisions on each walk that ships.
fn hold_on_each(content: &Content, law: impl Fn(&str, &[Raw])) {
    for info in &content.walks {
        hold(asked_for("STEPBOARD_WALKS", WALKS), &raw(), |raw| law(&info.slug, &raw));
    }
}

/// A random walk.
fn walked(content: &Content, slug: &str, raw: &[Raw], each: impl Fn(&Walk, &Decision)) -> Walk {
    let mut walk = begin(content, slug);
    for one in raw {
        let next = decision(&walk, content, *one);
        each(&walk, &next);
        let before = walk.clone();
        if walk.decide(next, content).is_err() {
            assert_eq!(walk, before, "a refusal changes nothing");
        }
    }
    walk
}

/// A right way leads from there to the hand-over.
fn ends(walk: &Walk, content: &Content) {
    /// More decisions than the longest job takes.
    const MOST: usize = 400;
    let mut on = walk.clone();
    for _ in 0..MOST {
        if on.is_over() {
            return;
        }
        let next = right::next(&on, content).expect("what comes next");
        on.decide(next.clone(), content).unwrap_or_else(|no| panic!("{next:?}: {:?}", no.why));
    }
    panic!("no end: {:?}", on.turns().iter().rev().take(8).map(|turn| &turn.decision).collect::<Vec<_>>());
}

#[test]
fn a_replay_is_the_walk_and_a_refusal_changes_nothing() {
    let content = content();
    hold_on_each(&content, |slug, raw| {
        let walk = walked(&content, slug, raw, |_, _| {});
        let text = serde_json::to_string(&walk.saved()).expect("plain data");
        let saved: Saved = serde_json::from_str(&text).expect("what was written");
        assert_eq!(saved.replay(&content).expect("possible once"), walk);
        let half = walk.turns().len() / 2;
        let mut again = walk.at(half, &content);
        assert_eq!(again.turns(), &walk.turns()[..half]);
        for turn in &walk.turns()[half..] {
            again.decide(turn.decision.clone(), &content).expect("possible once");
        }
        assert_eq!(again, walk);
    });
}

#[test]
fn no_walk_dead_ends() {
    let content = content();
    hold_on_each(&content, |slug, raw| {
        let mut walk = walked(&content, slug, raw, |walk, _| {
            if walk.is_over() {
                return;
            }
            let mut tried = walk.clone();
            let on = [Decision::Wait(Wait::Morning), Decision::HandOver];
            assert!(on.into_iter().any(|one| tried.decide(one, &content).is_ok()), "nothing can be done");
        });
        if walk.is_over() {
            return;
        }
        ends(&walk, &content);
        let worked = !walk.lines().is_empty();
        assert_eq!(walk.decide(Decision::HandOver, &content).is_ok(), worked || walk.offered().is_some());
    });
}

/// The defects that a warning is about are those that the same walk shows when it goes on, and they are all of them.
#[test]
fn a_guided_warning_stands_exactly_where_going_on_shows_a_defect_made_there() {
    let content = content();
    hold_on_each(&content, |slug, raw| {
        walked(&content, slug, raw, |walk, next| {
            if !matches!(next, Decision::Work(_)) {
                return;
            }
            let mut on = walk.clone();
            let Ok(turn) = on.decide(next.clone(), &content) else {
                assert!(warnings(walk, next, &content).is_err(), "what cannot be done gets no warning");
                return;
            };
            let (from, to) = turn.lines;
            let mut wanted = going_on(&on, &content);
            wanted.retain(|defect| (from..to).contains(&defect.made));
            let found: Vec<_> = warnings(walk, next, &content)
                .expect("possible")
                .into_iter()
                .filter_map(|one| if let Warning::Makes(defect) = one { Some(defect) } else { None })
                .collect();
            assert_eq!(found, wanted);
        });
    });
}
