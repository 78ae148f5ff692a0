//! Lapses: duties of the room left undone. Each is an event of the walk, however good the work is.

use crate::rules::term::Severity;
use crate::rules::verdict::RuleId;
use crate::terms;

terms! {
    /// A lapse. Text: `walk.lapse.<slug>`.
    Lapse {
        /// Sprayed with nothing before mouth and nose. However good the draw is, it is no respirator.
        NoRespirator = "no-respirator",
        /// The respirator does not stop what was in the air.
        WrongRespirator = "wrong-respirator",
        /// Wood or finish was sanded with nothing before mouth and nose.
        DustBreathed = "dust-breathed",
        /// The seal was not checked when the respirator went on.
        SealUnchecked = "seal-unchecked",
        /// Sprayed in street clothes or in the suit of the sanding bench.
        NoSuit = "no-clean-suit",
        /// Solvent, stain or a gun handled, or a wheel run, without gloves or eye protection.
        Uncovered = "eyes-or-skin-bare",
        /// Sprayed while the extraction stood still, or it was stopped over wet work.
        FanOff = "extraction-off",
        /// The filter gauge was not read that day.
        GaugeUnread = "gauge-unread",
        /// Sprayed with the filters past the mark.
        FiltersLoaded = "filters-loaded",
        /// The air was not measured in the hour before.
        AirUnread = "air-unread",
        /// Sources of ignition were not taken away that day.
        SourcesIn = "sources-in",
        /// Oily rags were left lying.
        RagsLeft = "oily-rags-left",
        /// Cloths wet with solvent were left lying.
        ClothsLeft = "solvent-cloths-left",
        /// The gun was left dirty until its mix had set, or at the end of the day.
        GunLeft = "gun-left-dirty",
        /// The wheel was run unchecked.
        WheelUnchecked = "wheel-unchecked",
    }
}

impl Lapse {
    /// The rule that was broken.
    #[must_use]
    pub const fn rule(self) -> RuleId {
        match self {
            Self::NoRespirator => RuleId("hazard.draw-is-no-respirator"),
            Self::WrongRespirator => RuleId("hazard.filter-by-what-is-breathed"),
            Self::DustBreathed => RuleId("hazard.dust-kept-out"),
            Self::SealUnchecked => RuleId("hazard.seal-check-each-time"),
            Self::NoSuit => RuleId("contamination.clean-suit"),
            Self::Uncovered => RuleId("hazard.eyes-and-skin-covered"),
            Self::FanOff => RuleId("hazard.fan-round-the-gun"),
            Self::GaugeUnread | Self::FiltersLoaded => RuleId("hazard.filter-gauge"),
            Self::AirUnread => RuleId("air.read-before-spraying"),
            Self::SourcesIn => RuleId("hazard.sparks-kept-off"),
            Self::RagsLeft => RuleId("hazard.oily-rag"),
            Self::ClothsLeft => RuleId("hazard.flammable-wipe"),
            Self::GunLeft => RuleId("hazard.fan-last"),
            Self::WheelUnchecked => RuleId("hazard.wheel-checked"),
        }
    }

    /// The caution that goes with it, by its id.
    #[must_use]
    pub const fn caution(self) -> &'static str {
        match self {
            Self::NoRespirator => "c14",
            Self::WrongRespirator | Self::SealUnchecked => "c15",
            Self::DustBreathed => "c04",
            Self::Uncovered => "c02",
            Self::FanOff => "c12",
            Self::GaugeUnread | Self::FiltersLoaded => "c13",
            Self::SourcesIn => "c18",
            Self::RagsLeft => "c07",
            Self::ClothsLeft => "c31",
            Self::GunLeft => "c27",
            Self::WheelUnchecked => "c24",
            Self::NoSuit | Self::AirUnread => "c30",
        }
    }

    /// What it endangers.
    #[must_use]
    pub const fn severity(self) -> Severity {
        match self {
            Self::NoSuit | Self::AirUnread => Severity::Work,
            _ => Severity::Safety,
        }
    }
}
