//! What was decided before, done once more the same: what was on and seen to before a coat leaves nothing undone at the next
//! (read, worn and seen to anew each day: 29 CFR 1910.107(b)(5)(i) and 1910.134(g)(1)(iii), as the rules of the room name
//! them).

use crate::steps::{begin, go, up_to, up_to_work};
use crate::support::content;
use stepboard::content::{Ask, Content, Place};
use stepboard::rules::contamination::Suit;
use stepboard::rules::hazard::mask_kind::Protection;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::again::{as_the_gun_is_set, done, last, ready_as_before};
use stepboard::walk::at_hand::{asked, place_of};
use stepboard::walk::decision::{Decision, Wait};
use stepboard::walk::{RoomAct, Walk, Worn, right};

#[test]
fn what_was_seen_to_before_the_last_coat_is_seen_to_again_in_the_morning_and_nothing_is_left() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    assert!(ready_as_before(&walk, &content, Place::Booth).is_empty(), "nothing was done yet");
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    go(&mut walk, [Decision::Work(seal), Decision::Room(vec![RoomAct::GunCleaned])], &content);
    let night = [Decision::Wait(Wait::Morning)];
    go(&mut walk, night, &content);
    let ready = ready_as_before(&walk, &content, Place::Booth);
    let seen_to = vec![RoomAct::FanOn, RoomAct::GaugeRead, RoomAct::AirRead, RoomAct::SourcesOut];
    assert_eq!(ready, [Decision::Wear(right::FOR_THE_GUN), Decision::Room(seen_to)]);
    go(&mut walk, ready, &content);
    assert!(ready_as_before(&walk, &content, Place::Booth).is_empty(), "it is so now");
    let coat = right::as_the_sheet_asks(&walk, &content, Op::Clear, vec![0]);
    go(&mut walk, [Decision::Work(coat)], &content);
    assert!(walk.turns().last().is_some_and(|turn| turn.lapses.is_empty()), "{:?}", walk.turns().last());
}

#[test]
fn what_was_left_undone_is_not_put_right_by_doing_it_the_same() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    let street = Decision::Wear(Worn::NOTHING);
    go(&mut walk, [street, Decision::Work(seal), Decision::Wait(Wait::Morning)], &content);
    assert!(!wear_is_offered(&walk, &content));
}

/// A respirator is worn all the time that one is in the area where it is wanted (29 CFR 1910.134(g)(2)): less of it, or
/// nothing, is never what is offered at one touch.
#[test]
fn what_is_worn_is_never_offered_to_be_taken_off() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    let dressed = Decision::Wear(right::FOR_THE_GUN);
    go(&mut walk, [Decision::Wear(Worn::NOTHING), Decision::Work(seal), dressed], &content);
    assert!(!wear_is_offered(&walk, &content), "nothing was worn, and now something is");
    let bare = [
        Worn { respirator: None, ..right::FOR_THE_GUN },
        Worn { respirator: Some(Protection::Particles), ..right::FOR_THE_GUN },
        Worn { respirator: Some(Protection::Vapour), ..right::FOR_THE_GUN },
        Worn { sealed: false, ..right::FOR_THE_GUN },
        Worn { suit: Suit::Street, ..right::FOR_THE_GUN },
        Worn { gloves: false, ..right::FOR_THE_GUN },
        Worn { eyes: false, ..right::FOR_THE_GUN },
    ];
    for less in bare {
        assert!(right::FOR_THE_GUN.guards_like(less) && !less.guards_like(right::FOR_THE_GUN), "{less:?}");
    }
    let air = Worn { respirator: Some(Protection::SuppliedAir), ..right::FOR_THE_GUN };
    assert!(air.guards_like(right::FOR_THE_GUN) && !right::FOR_THE_GUN.guards_like(air));
    let other = Worn { suit: Suit::Sanding, ..right::FOR_THE_GUN };
    assert!(other.guards_like(right::FOR_THE_GUN), "one suit for another takes none off");
}

fn wear_is_offered(walk: &Walk, content: &Content) -> bool {
    ready_as_before(walk, content, Place::Booth).iter().any(|one| matches!(one, Decision::Wear(_)))
}

#[test]
fn the_gun_keeps_how_it_was_held_and_nothing_of_the_coat_that_was_laid() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    go(&mut walk, [Decision::Work(seal.clone())], &content);
    assert_eq!(last(&walk, Op::Seal), Some(&seal));
    assert_eq!(done(&walk).next(), Some(&seal));
    let clear = asked(&content, &walk.start().sheet, Op::Clear);
    let set = as_the_gun_is_set(&walk, &content, &clear).expect("the gun was used");
    assert!(set.numbers.keys().copied().eq([Ask::Distance, Ask::Overlap]), "{:?}", set.numbers);
    assert!(set.numbers.iter().all(|(ask, number)| seal.numbers.get(ask) == Some(number)));
    assert!(set.picks.keys().eq(["edges", "held"]), "the coat and its mix are another's: {:?}", set.picks);
    assert!(set.picks.iter().all(|(key, pick)| seal.picks.get(key) == Some(pick)));
    let sand = asked(&content, &walk.start().sheet, Op::Level);
    assert_eq!(as_the_gun_is_set(&walk, &content, &sand), None, "no gun levels");
    up_to(&mut walk, &content, |walk, _| done(walk).next().is_some_and(|work| work.operation != Op::Seal));
    assert!(done(&walk).all(|work| place_of(&content, work.operation).is_some()));
}
