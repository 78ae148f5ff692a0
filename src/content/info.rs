//! Settings, sheets, rules, cautions and consequences as they stand in files.

use super::Units;
use crate::quantity::{Measure, Unit};
use crate::rules::sheet::Setting;
use crate::rules::term::{Coating, Provenance, RuleKind, Severity, Stage};
use crate::terms;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

terms! {
    /// Groups of values on a shop sheet, as a finisher looks for them. Text: `setting-group.<slug>`.
    SettingGroup {
        /// Waits.
        Waits = "waits",
        /// How waits scale with cold and film.
        Scaling = "scaling",
        /// Air for spraying.
        Air = "air",
        /// Wood.
        Wood = "wood",
        /// Mixing.
        Mixing = "mixing",
        /// Film and coats.
        Film = "film",
        /// Abrasives.
        Abrasives = "abrasives",
        /// Gun distances.
        Distances = "distances",
        /// The fan and how passes lie.
        Pass = "pass",
        /// Gloss and colour as seen.
        Look = "look",
        /// The order of work in use.
        Order = "order",
        /// The working day.
        Day = "day",
    }
}

/// What is known of a value on the shop sheet. Texts: `setting.<key>` and, where sources disagree,
/// `setting.<key>.why`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SettingInfo {
    /// Which value.
    pub key: Setting,
    /// Group it is listed in.
    pub group: SettingGroup,
    /// Unit of the value.
    pub unit: Unit,
    /// Default.
    pub default: f64,
    /// Least value that a shop may set.
    pub floor: f64,
    /// Greatest value that a shop may set.
    pub ceiling: f64,
    /// Smallest change that makes sense.
    pub step: f64,
    /// Where the default comes from.
    pub provenance: Provenance,
    /// The source, or `common practice, no source`.
    pub source: String,
    /// What holds floor and ceiling, where it is not the source of the default.
    #[serde(default)]
    pub limit: Option<String>,
}

impl SettingInfo {
    /// What holds floor and ceiling.
    #[must_use]
    pub fn limit_source(&self) -> &str {
        self.limit.as_deref().unwrap_or(&self.source)
    }

    /// Whether it is a switch: 0 or 1 and nothing between.
    #[must_use]
    pub fn is_switch(&self) -> bool {
        self.unit == Unit::Count && self.floor == 0.0 && self.ceiling == 1.0
    }

    /// A value of this setting in a person's unit of it: hours stay hours, however few.
    #[must_use]
    pub fn shown(&self, units: Units, value: f64) -> Measure {
        self.measure(value).in_unit(units.shown(self.unit))
    }

    /// A value that somebody typed, with or without its unit, in the unit of the setting; `None` where it is no number of that
    /// dimension. Whoever types what is shown of the value so far, of default, floor or ceiling means that value, however it
    /// was rounded.
    #[must_use]
    pub fn read(&self, units: Units, now: f64, typed: &str) -> Option<f64> {
        /// A thousandth of a unit is finer than anything on a sheet is measured.
        const PARTS: f64 = 1000.0;
        let known = [now, self.default, self.floor, self.ceiling];
        if let Some(known) = known.into_iter().find(|one| self.shown(units, *one).figure() == typed.trim()) {
            return Some(known);
        }
        let bare = typed.trim().chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+'));
        let measure = Measure::parse(typed, self.unit.dimension())?;
        let from = if bare { units.shown(self.unit) } else { measure.unit };
        from.convert(measure.value, self.unit).map(|value| libm::round(value * PARTS) / PARTS)
    }

    /// A value of this setting as it is shown: with as many decimals as its step has.
    #[must_use]
    pub fn measure(&self, value: f64) -> Measure {
        let decimals = (0..=2_u8).find(|decimals| {
            let shown = libm::exp10(f64::from(*decimals)) * value;
            (shown - libm::round(shown)).abs() < 1e-6
        });
        Measure::new(value, self.unit, decimals.unwrap_or(2))
    }
}

/// A shop sheet as written: only what differs from the defaults.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetSource {
    /// Slug of the sheet; text `sheet.<slug>`.
    pub slug: String,
    /// What the film is made of.
    pub coating: Coating,
    /// Values that differ from the defaults, by setting.
    #[serde(default)]
    pub values: BTreeMap<String, f64>,
}

/// What a shop calls a sheet of its own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetTitle {
    /// Its name.
    pub name: String,
    /// Which edition of that name, from 1.
    pub edition: u32,
}

/// What is known of a rule. Text: `rule.<id>`, one sentence.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RuleInfo {
    /// Id of the rule.
    pub id: String,
    /// What it rests on.
    pub kind: RuleKind,
    /// What it guards.
    pub severity: Severity,
    /// Document and section, or `common practice, no source`.
    pub source: String,
}

terms! {
    /// Stages that cautions are written for.
    CautionStage {
        /// Shown on every screen.
        All = "all",
        /// Sanding, pore filling.
        Prep = "prep",
        /// Staining.
        Stain = "stain",
        /// Storage, thinning, transfer.
        Mix = "mix",
        /// Sealer, colour, shading, clear.
        Spray = "spray",
        /// Drying and curing.
        Cure = "cure",
        /// Wet sanding.
        Rub = "rub",
        /// Buffing.
        Buff = "buff",
        /// Inspecting.
        Inspect = "inspect",
        /// Cleaning booth and gun.
        Clean = "clean",
        /// Rags and residues.
        Waste = "waste",
    }
}

/// A caution. Text: `caution.<id>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// Id of the caution.
    pub id: String,
    /// Stages that show it.
    pub stages: Vec<CautionStage>,
    /// Families of cards that it would answer: below these it stands once they are answered, and in a check, where one card
    /// may serve for the next, below no card.
    #[serde(default)]
    pub gives_away: Vec<String>,
    /// What it rests on.
    pub source: String,
    /// Where that was read.
    pub provenance: Provenance,
}

/// What follows from a mistake. Texts: `after.<id>.now`, `.later` and `.fix`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Consequence {
    /// Id of the consequence.
    pub id: String,
    /// The fault it makes, a slug of the fault table; empty for harm to people or lost time alone.
    #[serde(default)]
    pub fault: String,
    /// Stage where it is made.
    pub made: Stage,
    /// Stage where it first shows.
    pub shows: Stage,
    /// Hours of rework. Our estimate: common practice, no source.
    pub rework_h: f64,
    /// Hours of waiting that the rework adds. Our estimate: common practice, no source.
    pub wait_h: f64,
}
