//! The room and who works in it: what is worn, what runs, what was read today, what lies about.

use super::clock::day;
use super::decision::Worn;
use super::lapse::Lapse;
use crate::quantity::DUST;
use crate::rules::contamination::Suit;
use crate::rules::hazard::mask_kind::Protection;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::sheet::{Setting, Sheet};

/// Hours for which a reading of the air holds before a coat: common practice, no source.
pub const AIR_READING_HOLDS_H: f64 = 1.0;
/// Hours that rags may lie and still count as put away at once (29 CFR 1910.107(g)(3)); the figure is common practice, no
/// source.
pub const RAGS_AT_ONCE_H: f64 = 0.5;
/// Coats after which the filters are past the mark. Our own choice, so that it comes up in a job: no source.
pub const COATS_A_FILTER: u32 = 8;

/// Cloths that lie open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rags {
    /// Since when, in hours after the first midnight.
    since: f64,
    lapse: Lapse,
    /// It was told already that they lie about.
    told: bool,
}

/// The room.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// What is worn.
    pub worn: Worn,
    /// Whether the extraction runs.
    pub fan: bool,
    /// Whether the filter gauge was read today.
    pub gauge_read: bool,
    /// When the air was last measured today.
    pub air_read: Option<f64>,
    /// Whether sources of ignition were taken away today.
    pub sources_out: bool,
    /// Whether the wheel was checked today.
    pub wheel_checked: bool,
    /// Coats since the filters were changed.
    pub coats_on_filters: u32,
    /// Since when there is mix in the gun.
    pub(super) gun: Option<f64>,
    pub(super) rags: Vec<Rags>,
}

/// Operations done with the gun.
pub(super) fn sprays(operation: Operation) -> bool {
    COATS.contains(&operation) || operation == Operation::Washcoat
}

/// Operations that raise dust of wood or of finish; levelling does where it is done dry.
pub(super) const DUSTY: [Operation; 5] =
    [Operation::Sand, Operation::Damp, Operation::SandBack, Operation::SandFiller, Operation::Scuff];

impl Room {
    pub(super) const fn new() -> Self {
        Self {
            worn: Worn::NOTHING,
            fan: false,
            gauge_read: false,
            air_read: None,
            sources_out: false,
            wheel_checked: false,
            coats_on_filters: 0,
            gun: None,
            rags: Vec::new(),
        }
    }

    /// Whether the gauge stands past the mark.
    #[must_use]
    pub const fn filters_loaded(&self) -> bool {
        self.coats_on_filters >= COATS_A_FILTER
    }

    /// Whether the gun has mix in it.
    #[must_use]
    pub const fn gun_dirty(&self) -> bool {
        self.gun.is_some()
    }

    /// Whether cloths lie about.
    #[must_use]
    pub fn rags_about(&self) -> bool {
        !self.rags.is_empty()
    }

    /// Whether no draw takes dust and mist away.
    pub(super) const fn draws_badly(&self) -> bool {
        !self.fan || self.filters_loaded()
    }

    /// What is lacking when a coat is begun.
    pub(super) fn before_coat(&self, clock: f64) -> Vec<Lapse> {
        let fresh = self.air_read.is_some_and(|read| clock - read <= AIR_READING_HOLDS_H + DUST);
        let mut found = self.breathing(Protection::Both);
        found.extend((self.worn.suit != Suit::Closed).then_some(Lapse::NoSuit));
        found.extend((!self.covered()).then_some(Lapse::Uncovered));
        found.extend((!self.fan).then_some(Lapse::FanOff));
        found.extend((!self.gauge_read).then_some(Lapse::GaugeUnread));
        found.extend(self.filters_loaded().then_some(Lapse::FiltersLoaded));
        found.extend((!fresh).then_some(Lapse::AirUnread));
        found.extend((!self.sources_out).then_some(Lapse::SourcesIn));
        found
    }

    /// What is lacking when something else is done.
    pub(super) fn before_work(&self, operation: Operation, manners: &[Manner]) -> Vec<Lapse> {
        match operation {
            Operation::SolventWipe | Operation::Stain => {
                (!self.covered()).then_some(Lapse::Uncovered).into_iter().collect()
            }
            Operation::Buff => {
                let unchecked = (!self.wheel_checked).then_some(Lapse::WheelUnchecked);
                unchecked.into_iter().chain((!self.worn.eyes).then_some(Lapse::Uncovered)).collect()
            }
            Operation::Level if !manners.contains(&Manner::WithWater) => {
                self.breathing(Protection::Particles)
            }
            op if DUSTY.contains(&op) => self.breathing(Protection::Particles),
            _ => Vec::new(),
        }
    }

    /// Whether the respirator stops what is in the air.
    fn breathing(&self, wanted: Protection) -> Vec<Lapse> {
        let Some(worn) = self.worn.respirator else {
            let dust = wanted == Protection::Particles;
            return vec![if dust { Lapse::DustBreathed } else { Lapse::NoRespirator }];
        };
        let unchecked = !self.worn.sealed;
        let wrong = (!worn.covers(wanted)).then_some(Lapse::WrongRespirator);
        wrong.into_iter().chain(unchecked.then_some(Lapse::SealUnchecked)).collect()
    }

    /// Whether hands and eyes are covered.
    pub(super) const fn covered(&self) -> bool {
        self.worn.gloves && self.worn.eyes
    }

    /// The room is made ready as it was before.
    pub(super) fn made_ready_as(&mut self, before: &Self) {
        let (gun, coats_on_filters) = (self.gun, self.coats_on_filters);
        let rags = std::mem::take(&mut self.rags);
        *self = Self { gun, coats_on_filters, rags, ..before.clone() };
    }

    /// Cloths fall to the ground.
    pub(super) fn drop_rags(&mut self, clock: f64, lapse: Lapse) {
        self.rags.push(Rags { since: clock, lapse, told: false });
    }

    /// Time goes by: what was left too long. At night everybody goes home, and what was read no longer holds.
    pub(super) fn pass(&mut self, from: f64, to: f64, sheet: &Sheet) -> Vec<Lapse> {
        let mut found = Vec::new();
        let night = day(to) > day(from);
        for rags in self.rags.iter_mut().filter(|rags| !rags.told) {
            if night || to - rags.since > RAGS_AT_ONCE_H + DUST {
                rags.told = true;
                found.push(rags.lapse);
            }
        }
        let life = sheet.get(Setting::PotLife);
        if let Some(since) = self.gun
            && (night || (life > 0.0 && to - since > life + DUST))
        {
            self.gun = None;
            found.push(Lapse::GunLeft);
        }
        if night {
            let kept = (self.coats_on_filters, std::mem::take(&mut self.rags));
            *self = Self { coats_on_filters: kept.0, rags: kept.1, ..Self::new() };
        }
        found
    }
}
