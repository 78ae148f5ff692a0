//! Duties of the room: a lapse is told however good the work is; and what is said of the day that is asked for.

use crate::steps::{begin, go, ready_for_the_gun, rest, up_to, up_to_work, wait, work};
use crate::support::content;
use stepboard::content::{Ask, Content};
use stepboard::rules::hazard::mask_kind::Protection;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::clock::day;
use stepboard::walk::decision::{Decision, Offer, Wait, Worn};
use stepboard::walk::report::report;
use stepboard::walk::right::FOR_THE_GUN;
use stepboard::walk::{Lapse, Read, RoomAct, Walk};

/// Lapses of the last turn.
fn last(walk: &Walk) -> Vec<Lapse> {
    walk.turns().last().map(|turn| turn.lapses.clone()).unwrap_or_default()
}

/// A walk that stands before its seal coat, on which nobody is dressed and nothing seen to.
fn before_seal(content: &Content) -> Walk {
    let mut walk = begin(content, "plain-plate");
    up_to_work(&mut walk, content, Op::CleanOff);
    let clean = work(&walk, content, Op::CleanOff, &[], &[]);
    go(&mut walk, [clean, Decision::Wear(Worn::NOTHING)], content);
    walk
}

fn seals(content: &Content, before: impl IntoIterator<Item = Decision>) -> Vec<Lapse> {
    let mut walk = before_seal(content);
    go(&mut walk, before, content);
    let seal = work(&walk, content, Op::Seal, &[], &[]);
    go(&mut walk, [seal], content);
    last(&walk)
}

/// OSHA STD 01-05-010 and 29 CFR 1910.134: good draw is no respirator, and each of the others is a duty of its own.
#[test]
fn what_is_lacking_before_a_coat_is_told_each_by_itself() {
    let content = content();
    assert!(seals(&content, ready_for_the_gun()).is_empty());
    let all = seals(&content, []);
    let wanted = [
        Lapse::NoRespirator,
        Lapse::NoSuit,
        Lapse::Uncovered,
        Lapse::FanOff,
        Lapse::GaugeUnread,
        Lapse::AirUnread,
        Lapse::SourcesIn,
    ];
    assert_eq!(all, wanted);
    let [dressed, Decision::Room(duties)] = ready_for_the_gun() else { unreachable!() };
    for (gone, lapse) in [(RoomAct::AirRead, Lapse::AirUnread), (RoomAct::SourcesOut, Lapse::SourcesIn)] {
        let some = duties.iter().copied().filter(|duty| *duty != gone).collect();
        assert_eq!(seals(&content, [dressed.clone(), Decision::Room(some)]), [lapse]);
    }
    let worn = |worn: Worn| [Decision::Wear(worn), Decision::Room(duties.clone())];
    let bare = Worn { respirator: None, ..FOR_THE_GUN };
    assert_eq!(seals(&content, worn(bare)), [Lapse::NoRespirator], "the fan runs, and it is no respirator");
    let dust = Worn { respirator: Some(Protection::Particles), ..FOR_THE_GUN };
    assert_eq!(seals(&content, worn(dust)), [Lapse::WrongRespirator]);
    let loose = Worn { sealed: false, ..FOR_THE_GUN };
    assert_eq!(seals(&content, worn(loose)), [Lapse::SealUnchecked]);
    let late = ready_for_the_gun().into_iter().chain([wait(1.5)]);
    assert_eq!(seals(&content, late), [Lapse::AirUnread], "read more than an hour before");
}

/// OSHA wood-dust pages and 29 CFR 1910.134(a)(2): dust of wood and of finish is kept out of the lungs, whatever raises it;
/// a cartridge for vapour alone stops none of it, and water binds it.
#[test]
fn dust_is_kept_out_wherever_something_is_sanded() {
    let content = content();
    let sands = |operation: Op, picks: &[(&str, &str)], respirator: Option<Protection>| {
        let mut walk = begin(&content, "dyed-lute");
        up_to_work(&mut walk, &content, operation);
        let sanding = work(&walk, &content, operation, &[], picks);
        go(&mut walk, [Decision::Wear(Worn { respirator, ..FOR_THE_GUN }), sanding], &content);
        last(&walk)
    };
    for operation in [Op::Sand, Op::Scuff, Op::Level] {
        assert_eq!(sands(operation, &[], None), [Lapse::DustBreathed], "{operation:?}");
        assert_eq!(
            sands(operation, &[], Some(Protection::Vapour)),
            [Lapse::WrongRespirator],
            "{operation:?}"
        );
        assert!(sands(operation, &[], Some(Protection::Particles)).is_empty(), "{operation:?}");
    }
    assert!(sands(Op::Level, &[("lubricant", "water")], None).is_empty());
}

/// 29 CFR 1910.107(b)(5): loaded filters are changed. What the gauge says is told by reading it.
#[test]
fn a_coat_with_loaded_filters_is_told_until_they_are_changed() {
    let content = content();
    let mut walk = before_seal(&content);
    while !walk.room().filters_loaded() {
        go(&mut walk, ready_for_the_gun(), &content);
        let seal = work(&walk, &content, Op::Seal, &[], &[]);
        go(&mut walk, [seal], &content);
        assert!(last(&walk).is_empty(), "{:?}", last(&walk));
        go(&mut walk, [Decision::Room(vec![RoomAct::GunCleaned]), Decision::Wait(Wait::Morning)], &content);
    }
    go(&mut walk, ready_for_the_gun(), &content);
    let read = walk.turns().last().expect("a turn").read.clone();
    assert!(read.contains(&Read::Gauge { past: true }), "{read:?}");
    let seal = work(&walk, &content, Op::Seal, &[], &[]);
    let mut changed = walk.clone();
    go(&mut walk, [seal.clone()], &content);
    assert_eq!(last(&walk), [Lapse::FiltersLoaded]);
    go(&mut changed, [Decision::Room(vec![RoomAct::FiltersChanged]), seal], &content);
    assert!(last(&changed).is_empty());
}

/// 29 CFR 1910.106(e)(9)(iii): cloths wet with solvent go into a covered metal container.
#[test]
fn cloths_wet_with_solvent_that_lie_until_the_morning_are_told() {
    let content = content();
    let mut walk = begin(&content, "oily-box");
    let wipe = up_to_work(&mut walk, &content, Op::SolventWipe);
    go(&mut walk, [Decision::Work(wipe)], &content);
    let mut tidy = walk.clone();
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(last(&walk), [Lapse::ClothsLeft]);
    go(&mut tidy, [Decision::Room(vec![RoomAct::RagsAway]), Decision::Wait(Wait::Morning)], &content);
    assert!(last(&tidy).is_empty());
}

/// 29 CFR 1910.215 and .243 ask guards and mounts of a wheel to be looked at before it runs; once a day is our own choice.
#[test]
fn a_wheel_that_nobody_checked_is_told() {
    let content = content();
    let mut walk = begin(&content, "rush-box");
    let check = up_to(
        &mut walk,
        &content,
        |_, next| matches!(next, Decision::Room(duties) if duties.contains(&RoomAct::WheelChecked)),
    );
    let buff = work(&walk, &content, Op::Buff, &[], &[]);
    let mut checked = walk.clone();
    go(&mut walk, [buff.clone()], &content);
    assert_eq!(last(&walk), [Lapse::WheelUnchecked]);
    go(&mut checked, [check, buff], &content);
    assert!(last(&checked).is_empty());
}

/// 29 CFR 1910.107(g)(3); the practitioner case of staining rags left overnight (common practice, no source).
#[test]
fn oily_rags_that_lie_until_the_morning_are_told_and_put_away_at_once_are_not() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    let wipe = up_to_work(&mut walk, &content, Op::WipeFiller);
    go(&mut walk, [Decision::Work(wipe)], &content);
    let mut tidy = walk.clone();
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(last(&walk), [Lapse::RagsLeft]);
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert!(last(&walk).is_empty(), "told once");
    go(&mut tidy, [Decision::Room(vec![RoomAct::RagsAway]), Decision::Wait(Wait::Morning)], &content);
    assert!(last(&tidy).is_empty());
}

/// 29 CFR 1910.107(g) and the order of shutting a booth down: gun cleaned, residue out, fan last.
#[test]
fn a_gun_left_overnight_and_a_fan_stopped_over_a_wet_coat_are_told() {
    let content = content();
    let mut walk = before_seal(&content);
    go(&mut walk, ready_for_the_gun(), &content);
    let seal = work(&walk, &content, Op::Seal, &[], &[]);
    go(&mut walk, [seal, Decision::Room(vec![RoomAct::FanOff])], &content);
    assert_eq!(last(&walk), [Lapse::FanOff]);
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(last(&walk), [Lapse::GunLeft]);
}

/// Coats of one operation that go on in the morning: what was done before the first is done before each, and the gun was
/// cleaned for the night.
#[test]
fn coats_of_one_operation_may_lie_on_two_days() {
    let content = content();
    let mut walk = before_seal(&content);
    go(&mut walk, ready_for_the_gun(), &content);
    let two = work(&walk, &content, Op::Seal, &[(Ask::Coats, 2.0), (Ask::Between, 8.0)], &[]);
    go(&mut walk, [two], &content);
    let days: Vec<u32> =
        walk.lines().iter().filter(|line| line.operation == Op::Seal).map(|line| day(line.begun)).collect();
    assert_eq!((days.as_slice(), last(&walk)), (&[1, 2][..], vec![]));
    assert!(walk.room().gun_dirty() && walk.room().fan);
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    assert_eq!(last(&walk), [Lapse::GunLeft]);
}

/// A wait of 48 h for the filler and two weeks before levelling (content/settings.toml) do not go into nine days.
#[test]
fn a_rush_order_is_met_by_saying_so_and_by_a_day_that_can_be_kept() {
    let content = content();
    let walk = begin(&content, "rush-box");
    let earliest = report(&walk, &content).promise.earliest.expect("a fit room");
    assert!(earliest > 14 + 2, "filler and the last wait alone");
    let said = |day: u32| {
        let mut walk = walk.clone();
        go(&mut walk, [Decision::Offer(Offer { day }), Decision::HandOver], &content);
        report(&walk, &content).promise
    };
    assert!(said(earliest).holds() && said(earliest + 5).holds() && !said(earliest - 1).holds());
    let mut kept = walk.clone();
    let on = rest(&kept, &content);
    go(&mut kept, on, &content);
    let told = report(&kept, &content);
    assert!(!told.promise.holds() && told.in_time == Some(false), "worked on without a word");
    let easy = begin(&content, "plain-plate");
    assert!(report(&easy, &content).promise.holds());
    let mut timid = easy.clone();
    go(&mut timid, [Decision::Offer(Offer { day: 30 })], &content);
    assert!(!report(&timid, &content).promise.holds(), "it could have been met");
}
