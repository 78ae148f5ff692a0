//! The card families that decisions of a walk exercise, each with what makes a decision wrong in it.

use super::lapse::Lapse;
use crate::process::technique::Fumble;
use crate::rules::sequence::error::OrderError;
use crate::rules::term::Term;
use crate::rules::verdict::RuleId;

/// The family of days that are promised.
pub(super) const DELIVERY_DAY: &str = "delivery-day";
/// The rule by which a day can be promised.
pub(super) const THE_DAY: RuleId = RuleId("drying.longest-path");

/// Something that a decision exercises, and what makes it wrong.
pub(super) struct Asked {
    pub(super) family: &'static str,
    pub(super) errors: &'static [OrderError],
    pub(super) fumbles: &'static [Fumble],
    pub(super) lapses: &'static [Lapse],
}

const fn errors(family: &'static str, errors: &'static [OrderError]) -> Asked {
    Asked { family, errors, fumbles: &[], lapses: &[] }
}

const fn lapses(family: &'static str, lapses: &'static [Lapse]) -> Asked {
    Asked { family, errors: &[], fumbles: &[], lapses }
}

const fn fumbles(family: &'static str, fumbles: &'static [Fumble]) -> Asked {
    Asked { family, errors: &[], fumbles, lapses: &[] }
}

/// The order of the main steps.
pub(super) const ORDER: Asked = errors(
    "order-ticket",
    &[
        OrderError::FilledBeforeStain,
        OrderError::FillerOverRawStain,
        OrderError::ColourUnsealed,
        OrderError::WipedColourOverSeal,
        OrderError::Wood,
        OrderError::Fill,
        OrderError::Colour,
        OrderError::Clear,
        OrderError::Finish,
    ],
);

/// What each coat exercises.
pub(super) const AT_A_COAT: [Asked; 9] = [
    Asked {
        family: "spray-decision",
        errors: &[OrderError::AirOutsideWindow],
        fumbles: &[],
        lapses: &[Lapse::AirUnread],
    },
    lapses("mask-kind", &[Lapse::NoRespirator, Lapse::WrongRespirator]),
    lapses("draw-and-mask", &[Lapse::NoRespirator]),
    lapses("before-gun", &[Lapse::NoRespirator, Lapse::GaugeUnread, Lapse::FiltersLoaded]),
    lapses("at-the-door", &[Lapse::NoSuit]),
    lapses("spray-spell", &[Lapse::FanOff]),
    lapses("sparks-away", &[Lapse::SourcesIn]),
    fumbles("gun-distance", &[Fumble::DrySpray]),
    fumbles("sag-flow", &[Fumble::Run]),
];

/// The extraction stopped.
pub(super) const FAN_STOPPED: Asked = lapses("fan-stop", &[Lapse::FanOff]);
/// The respirator in dust.
pub(super) const MASK_IN_DUST: Asked = lapses("mask-kind", &[Lapse::DustBreathed, Lapse::WrongRespirator]);
/// The seal of a respirator.
pub(super) const SEAL_CHECK: Asked = lapses("seal-check", &[Lapse::SealUnchecked]);
/// The first coat on open pores.
pub(super) const WANTS_FILLER: Asked = errors("wants-filler", &[OrderError::PoresUnfilled]);
/// The first coat on oily wood.
pub(super) const OILY_FIRST: Asked = errors("first-coat-demand", &[OrderError::OilyWoodUnsealed]);
/// Sanding wood.
pub(super) const SANDED: Asked =
    errors("ready-for-stain", &[OrderError::SandedTooFine, OrderError::ScratchesUnderStain]);
/// Wiping filler off.
pub(super) const FILLER_WIPED: Asked = errors("fill-wipe", &[OrderError::FillerWipedOffTime]);
/// Scraping binding.
pub(super) const SCRAPED: Asked = errors(
    "when-to-scrape",
    &[OrderError::TrimAfterClear, OrderError::TrimOverOpenColour, OrderError::Clear],
);
/// Pulling a mask.
pub(super) const MASK_PULLED: Asked =
    errors("mask-off", &[OrderError::MaskPulledWet, OrderError::MaskLeftOn]);
/// Clear over a mask.
pub(super) const MASK_UNDER_CLEAR: Asked = errors("mask-off", &[OrderError::MaskLeftOn]);
/// When to level.
pub(super) const LEVEL_WHEN: Asked = errors("level-when", &[OrderError::LevelledTooSoon]);
/// What is levelled.
pub(super) const FILM_TO_LEVEL: Asked = errors("coats-for-build", &[OrderError::LevelledTooThin]);
/// The last paper before compound.
pub(super) const LAST_GRIT: Asked = errors("level-next", &[OrderError::CoarseBeforeCompound]);
/// When to buff.
pub(super) const BUFF_WHEN: Asked = errors("level-gate", &[OrderError::LevelledTooSoon]);
/// The wheel.
pub(super) const AT_THE_WHEEL: Asked = lapses("at-the-wheel", &[Lapse::WheelUnchecked]);
/// A coat over filler.
pub(super) const FILLER_WAIT: Asked = errors("filler-wait", &[OrderError::FillerNotDry]);
/// A coat over stain or washcoat.
pub(super) const STAIN_WAIT: Asked =
    errors("ready-yet", &[OrderError::StainNotDry, OrderError::RecoatTooSoon]);
/// A coat over a coat.
pub(super) const RECOAT: Asked = errors(
    "recoat-now",
    &[OrderError::RecoatTooSoon, OrderError::RecoatWindowClosed, OrderError::HardFilmUnscuffed],
);
/// Rags put away, or left lying.
pub(super) const RAGS: Asked = lapses("residue-place", &[Lapse::RagsLeft, Lapse::ClothsLeft]);

/// What is asked for beside the order of the steps and the gun.
const OTHERS: [Asked; 19] = [
    FAN_STOPPED,
    MASK_IN_DUST,
    SEAL_CHECK,
    WANTS_FILLER,
    OILY_FIRST,
    SANDED,
    FILLER_WIPED,
    SCRAPED,
    MASK_PULLED,
    MASK_UNDER_CLEAR,
    LEVEL_WHEN,
    FILM_TO_LEVEL,
    LAST_GRIT,
    BUFF_WHEN,
    AT_THE_WHEEL,
    FILLER_WAIT,
    STAIN_WAIT,
    RECOAT,
    RAGS,
];

impl Asked {
    fn rules(&self) -> impl Iterator<Item = RuleId> {
        let errors = self.errors.iter().map(|error| RuleId(error.slug()));
        let fumbles = self.fumbles.iter().map(|fumble| fumble.rule());
        errors.chain(fumbles).chain(self.lapses.iter().map(|lapse| lapse.rule()))
    }
}

/// Whether decisions that exercise a family may break a rule in it, and so are right by it.
#[must_use]
pub fn may_break(rule: &str, family: &str) -> bool {
    let all = OTHERS.iter().chain(&AT_A_COAT).chain([&ORDER]);
    let broken = all.filter(|one| one.family == family).flat_map(Asked::rules).any(|one| one.0 == rule);
    broken || family == DELIVERY_DAY && rule == THE_DAY.0
}
