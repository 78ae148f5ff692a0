//! What a step of a right way is for, where leaving it out breaks nothing: the rule that it is there for.

use super::decision::{Decision, RoomAct};
use super::lapse::Lapse;
use crate::rules::sequence::operation::Operation;
use crate::rules::verdict::RuleId;

/// The rule that a step is there for; `None`: the order of the shop sheet alone puts it there.
pub(super) fn purpose(decisions: &[Decision]) -> Option<RuleId> {
    match decisions.first()? {
        Decision::Work(work) => of_work(work.operation).map(RuleId),
        Decision::Room(duties) => duties.iter().find_map(|duty| Some(of_duty(*duty)?.rule())),
        _ => None,
    }
}

const fn of_work(operation: Operation) -> Option<&'static str> {
    Some(match operation {
        Operation::Prefit => "se-29",
        Operation::Sand | Operation::Clear => "order.left-out",
        Operation::Damp => "se-05",
        Operation::GlueCheck => "se-02",
        Operation::Trim => "se-03",
        Operation::SolventWipe => "se-35",
        Operation::CleanOff => "se-18",
        Operation::Unmask => "se-21",
        Operation::Stain | Operation::Colour | Operation::Shade => "order.colour",
        Operation::Washcoat => "shop.washcoat",
        Operation::Fill => "se-34",
        Operation::WipeFiller => "se-08",
        Operation::SandFiller => "order.fill",
        Operation::Scuff => "se-17",
        Operation::Protect => "shop.protective-clear",
        Operation::Scrape => "se-04",
        Operation::Inspect => "order.clear",
        Operation::Level | Operation::Buff => "order.finish",
        _ => return None,
    })
}

/// The lapse that a duty keeps off.
const fn of_duty(duty: RoomAct) -> Option<Lapse> {
    Some(match duty {
        RoomAct::FanOn => Lapse::FanOff,
        RoomAct::GaugeRead => Lapse::GaugeUnread,
        RoomAct::FiltersChanged => Lapse::FiltersLoaded,
        RoomAct::AirRead => Lapse::AirUnread,
        RoomAct::SourcesOut => Lapse::SourcesIn,
        RoomAct::RagsAway => Lapse::RagsLeft,
        RoomAct::GunCleaned => Lapse::GunLeft,
        RoomAct::WheelChecked => Lapse::WheelUnchecked,
        RoomAct::FanOff | RoomAct::MeterRead => return None,
    })
}
