//! What the tests of walks share.

use stepboard::content::{Ask, Content};
use stepboard::quantity::Hours;
use stepboard::rules::sequence::operation::Operation;
use stepboard::walk::decision::{Decision, Wait, Work};
use stepboard::walk::right;
use stepboard::walk::saved::Mode;
use stepboard::walk::start::Start;
use stepboard::walk::{RoomAct, Walk};

/// A walk that ships, not begun.
pub(crate) fn begin(content: &Content, slug: &str) -> Walk {
    let info = content.walk(slug).unwrap_or_else(|| panic!("no walk {slug}"));
    let sheet = content.sheet(&info.ticket.sheet).expect("a sheet that ships");
    Walk::begin(Start::of(info, sheet, content).expect("woods that ship"), Mode::Own, 1)
}

/// Carries decisions out that can be.
pub(crate) fn go(walk: &mut Walk, decisions: impl IntoIterator<Item = Decision>, content: &Content) {
    for decision in decisions {
        let told = format!("{decision:?}");
        walk.decide(decision, content).unwrap_or_else(|no| panic!("{told}: {:?}", no.why));
    }
}

/// The right decisions of a walk from where it stands.
pub(crate) fn rest(walk: &Walk, content: &Content) -> Vec<Decision> {
    right::rest(walk, content).expect("a right way on")
}

/// Goes a right way until a decision comes next that is looked for; it is not carried out.
pub(crate) fn up_to(walk: &mut Walk, content: &Content, stop: impl Fn(&Walk, &Decision) -> bool) -> Decision {
    loop {
        let next = right::next(walk, content).expect("a right way on");
        if stop(walk, &next) {
            return next;
        }
        assert_ne!(next, Decision::HandOver, "what was looked for never came");
        go(walk, [next], content);
    }
}

/// Goes a right way until an operation comes next.
pub(crate) fn up_to_work(walk: &mut Walk, content: &Content, operation: Operation) -> Work {
    match up_to(walk, content, |_, next| next.operation() == Some(operation)) {
        Decision::Work(work) => work,
        other => panic!("{other:?}"),
    }
}

/// An operation on the whole work as the sheet asks, with other numbers and picks.
pub(crate) fn work(
    walk: &Walk,
    content: &Content,
    operation: Operation,
    numbers: &[(Ask, f64)],
    picks: &[(&str, &str)],
) -> Decision {
    let parts = (0..walk.start().parts()).collect();
    let mut work = right::as_the_sheet_asks(walk, content, operation, parts);
    work.numbers.extend(numbers.iter().copied());
    work.picks.extend(picks.iter().map(|(key, pick)| ((*key).to_owned(), (*pick).to_owned())));
    Decision::Work(work)
}

/// All that is put on and seen to before a coat.
pub(crate) fn ready_for_the_gun() -> [Decision; 2] {
    let duties = vec![RoomAct::FanOn, RoomAct::GaugeRead, RoomAct::SourcesOut, RoomAct::AirRead];
    [Decision::Wear(right::FOR_THE_GUN), Decision::Room(duties)]
}

/// Nothing is done for some hours.
pub(crate) fn wait(hours: f64) -> Decision {
    Decision::Wait(Wait::Hours(Hours::new(hours).expect("in range")))
}

/// Does an operation on the whole work as the sheet asks.
pub(crate) fn does(walk: &mut Walk, content: &Content, operation: Operation) {
    let work = work(walk, content, operation, &[], &[]);
    go(walk, [work], content);
}
