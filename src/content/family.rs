//! Facts and card families as they stand in files.

use super::panel::View;
use crate::quantity::{PartsPerMillion, Unit};
use crate::rules::fault::Effort;
use crate::rules::hazard::Solvent;
use crate::rules::term::{Severity, Stage};
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// What a card family is about, finer than the bands of the board.
    Topic {
        /// Reading the wood.
        ReadWood = "read-wood",
        /// Sanding.
        Sand = "sand",
        /// Cleaning off.
        Clean = "clean",
        /// Filling.
        Fill = "fill",
        /// Drying waits.
        Dry = "dry",
        /// Staining.
        Stain = "stain",
        /// Clean-room entry and contamination.
        Entry = "entry",
        /// Booth and air.
        BoothAir = "booth-air",
        /// Mixing and straining.
        Mix = "mix",
        /// Solid colour.
        SolidColour = "solid-colour",
        /// The shaded edge.
        ShadedEdge = "shaded-edge",
        /// Sealing.
        Seal = "seal",
        /// Scraping the binding.
        ScrapeBinding = "scrape-binding",
        /// Inspecting.
        Inspect = "inspect",
        /// Clear coats.
        Clear = "clear",
        /// Curing.
        Cure = "cure",
        /// Levelling.
        Level = "level",
        /// Buffing.
        Buff = "buff",
        /// What is breathed and what is worn against it.
        Breathing = "breathing",
        /// Waste and fire.
        WasteFire = "waste-fire",
        /// Faults told apart.
        Fault = "fault",
        /// Two-part materials.
        TwoPart = "two-part",
        /// From the cup to the gun.
        Cup = "cup",
        /// Masking and unmasking.
        Masking = "masking",
        /// What stands on the job ticket.
        JobTicket = "job-ticket",
        /// What is seen on a panel.
        Panel = "panel",
    }
}

/// A fact that a situation may tell. Text: `fact.<key>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FactInfo {
    /// Key, as scripts write it: `air_c`.
    pub key: String,
    /// Unit of a number; absent for a term.
    #[serde(default)]
    pub unit: Option<Unit>,
    /// Least value of a number.
    #[serde(default)]
    pub min: f64,
    /// Greatest value of a number.
    #[serde(default)]
    pub max: f64,
    /// Decimals shown.
    #[serde(default)]
    pub decimals: u8,
    /// Whether a number in per cent is a share of a whole, which scripts write from 0 to 1.
    #[serde(default)]
    pub share: bool,
    /// Allowed terms; `["@woods"]`, `["@solvents"]`, `["@faults"]`, `["@cups"]`, `["@tickets"]` and `["@sprays"]`
    /// stand for those lists.
    #[serde(default)]
    pub terms: Vec<String>,
    /// What it costs to find out on the work, where it is a probe that tells faults apart. Text: `probe.<key>`.
    #[serde(default)]
    pub probe: Option<Effort>,
    /// How that is seen on a computed panel, where a panel can show it.
    #[serde(default)]
    pub view: Option<View>,
}

impl FactInfo {
    /// How much of a solvent is in the air: its slug is the key.
    #[must_use]
    pub fn reading_of(solvent: &Solvent) -> Self {
        Self {
            key: solvent.slug.clone(),
            unit: Some(Unit::PartsPerMillion),
            min: PartsPerMillion::MIN,
            max: PartsPerMillion::MAX,
            decimals: 0,
            share: false,
            terms: Vec::new(),
            probe: None,
            view: None,
        }
    }
}

/// Stands for every fact that is a probe, in the draws of a family and among what a calculation takes.
pub const PROBES: &str = "@probes";

/// The fact that names the task of a face that is sprayed.
pub const SPRAY_TASK: &str = "spray_task";

/// How a family draws one fact.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Draw {
    /// Key of the fact; `@probes`: what the question's situation has found out by probes.
    pub fact: String,
    /// Least number drawn.
    #[serde(default)]
    pub from: Option<f64>,
    /// Greatest number drawn.
    #[serde(default)]
    pub to: Option<f64>,
    /// Grid of the numbers drawn.
    #[serde(default)]
    pub step: Option<f64>,
    /// Terms drawn; all the fact's terms when empty. For woods also `@large`, `@small`, `@none` (pores), `@oily`,
    /// `@resinous`, `@blotching`, `@bleeding`, `@movement` (coefficients known); for tickets also `@bound` (with binding). A term
    /// named twice is drawn twice as often.
    #[serde(default)]
    pub among: Vec<String>,
    /// Whether the fact may be left untold.
    #[serde(default)]
    pub may_hide: bool,
    /// Whether the fact is seen on the panel that the card shows and told nowhere else.
    #[serde(default)]
    pub on_panel: bool,
    /// Whether the fact is drawn but not shown as a figure (the story tells it, or an item list does).
    #[serde(default)]
    pub in_story: bool,
}

/// A card family: all cards that exercise one rule. Texts: `card.<id>.story` (and `.story.2` …), `card.<id>.ask`,
/// `card.<id>.title` (a few words, in `titles.toml`).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FamilyInfo {
    /// Id; the question of the same id in `src/card/families/` answers it.
    pub id: String,
    /// Version; raised when the same seed would deal another card.
    pub version: u32,
    /// Band of the board.
    pub stage: Stage,
    /// Topic.
    pub topic: Topic,
    /// What a mistake endangers.
    pub severity: Severity,
    /// Stages whose cautions the card shows.
    pub cautions: Vec<super::CautionStage>,
    /// Slugs of the competencies that it gives knowledge evidence for, one to three.
    pub competencies: Vec<String>,
    /// Seconds that a practised finisher needs.
    pub seconds: u32,
    /// The facts of its situations.
    #[serde(default, rename = "fact")]
    pub facts: Vec<Draw>,
}

impl FamilyInfo {
    /// Whether its cards are worked on a picture: a panel that is looked at, or a face that is sprayed.
    #[must_use]
    pub fn is_pictured(&self) -> bool {
        self.topic == Topic::Panel || self.is_sprayed()
    }

    /// Whether its cards are faces that are sprayed.
    #[must_use]
    pub fn is_sprayed(&self) -> bool {
        self.facts.iter().any(|draw| draw.fact == SPRAY_TASK)
    }
}
