//! What is done first where something cannot be done yet: it can be begun, and it leads on.

use crate::steps::{begin, go, ready_for_the_gun, up_to_work, wait, work};
use crate::support::content;
use stepboard::content::Content;
use stepboard::rules::drying::waits::DryTest;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::{Decision, Parts, Wait};
use stepboard::walk::{First, Impossible, RoomAct, Walk, Why};

fn refused(walk: &Walk, content: &Content, decision: Decision) -> Impossible {
    *walk.clone().decide(decision, content).expect_err("it cannot be done yet")
}

fn of_work(walk: &Walk, content: &Content, operation: Op) -> Impossible {
    refused(walk, content, work(walk, content, operation, &[], &[]))
}

/// Something that can be begun where a first step names it, on the whole work.
fn done_first(walk: &Walk, content: &Content, first: First) -> Decision {
    match first {
        // Clear work has no stain on its ticket: one is chosen.
        First::Work(Op::Stain) => work(walk, content, Op::Stain, &[], &[("stain", "spirit-dye")]),
        First::Work(operation) => work(walk, content, operation, &[], &[]),
        First::Strip => Decision::Strip(Parts { parts: (0..walk.start().parts()).collect() }),
        First::Room(duty) => Decision::Room(vec![duty]),
        First::Wait(time) => Decision::Wait(time),
        First::Offer | First::HandOver => panic!("{first:?}"),
    }
}

#[test]
fn what_lacks_something_below_it_names_that_first() {
    let content = content();
    let walk = begin(&content, "shaded-lute");
    let lacking = [
        (Op::WipeFiller, First::Work(Op::Fill)),
        (Op::SandFiller, First::Work(Op::Fill)),
        (Op::Unmask, First::Work(Op::Mask)),
        (Op::Level, First::Work(Op::Seal)),
        (Op::Scrape, First::Work(Op::Colour)),
        (Op::Buff, First::Work(Op::Clear)),
        (Op::SandBack, First::Work(Op::Stain)),
    ];
    for (operation, first) in lacking {
        let no = of_work(&walk, &content, operation);
        assert_eq!(no.first(), Some(first), "{operation:?}");
        assert!(no.is_of_work());
        let mut on = walk.clone();
        let done = done_first(&on, &content, first);
        on.decide(done, &content).unwrap_or_else(|no| panic!("{operation:?}: {:?}", no.why));
        let again = on.decide(work(&on, &content, operation, &[], &[]), &content);
        assert!(again.is_ok(), "{operation:?} can be done after {first:?}");
    }
}

#[test]
fn a_film_over_the_wood_is_stripped_and_a_closed_shop_waited_for() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    let seal = up_to_work(&mut walk, &content, Op::Seal);
    go(&mut walk, [Decision::Work(seal)], &content);
    assert_eq!(of_work(&walk, &content, Op::Sand).first(), Some(First::Strip));
    go(&mut walk, [wait(9.0)], &content);
    let closed = of_work(&walk, &content, Op::Inspect);
    assert_eq!((closed.why, closed.first()), (Why::Closed, Some(First::Wait(Wait::Morning))));
    go(&mut walk, [Decision::Wait(Wait::Morning)], &content);
    let strip = done_first(&walk, &content, First::Strip);
    go(&mut walk, ready_for_the_gun().into_iter().chain([strip]), &content);
    let sand = work(&walk, &content, Op::Sand, &[], &[]);
    go(&mut walk, [sand], &content);
}

#[test]
fn what_is_of_the_room_is_no_work_and_some_refusals_have_nothing_before_them() {
    let content = content();
    let walk = begin(&content, "plain-plate");
    let gauge = refused(&walk, &content, Decision::Room(vec![RoomAct::GaugeRead]));
    assert_eq!((gauge.first(), gauge.is_of_work()), (Some(First::Room(RoomAct::FanOn)), false));
    let test = refused(&walk, &content, Decision::Wait(Wait::Until(DryTest::Smell)));
    assert_eq!(test.first(), Some(First::Work(Op::Seal)));
    assert_eq!(refused(&walk, &content, Decision::HandOver).first(), Some(First::Offer));
    let rags = refused(&walk, &content, Decision::Room(vec![RoomAct::RagsAway]));
    assert_eq!(rags.first(), None);
}
