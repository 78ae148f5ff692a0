//! What people write: woods, shop sheets, job tickets, competencies, facts, card families, rules, cautions, consequences, texts.
//!
//! The files under `content/` are read and checked by the build script (and by `stepboard check`) with file, line and
//! what is allowed; the program gets them as one value, [`Content`], already checked. Adding a wood, a caution, a
//! ticket or a card of a known family touches only those files.

mod apart;
mod cautions;
mod competency;
mod family;
mod info;
mod look;
mod packed;
mod panel;
mod set;
mod spray;
mod stricter;
mod text;
mod ticket;
mod tool;
mod trade_word;
mod units;
mod walk;
mod world;

#[cfg(not(target_arch = "wasm32"))]
pub mod load;

pub use cautions::CLOSING_CAUTION;
pub use competency::{Competency, Criterion, OnFile, Profile};
pub use family::{Draw, FactInfo, FamilyInfo, PROBES, SPRAY_TASK, Topic};
pub use info::{
    Caution, CautionStage, Consequence, RuleInfo, SettingGroup, SettingInfo, SheetSource, SheetTitle,
};
pub use look::Look;
pub use panel::{Dress, Panel, View};
pub use set::{Allowed, Hard, PassRule, Purpose, ScenarioSet, Task, TaskProblem};
pub use spray::{Coat, EvenFilm, ShadedEdge, SprayGun, SprayLimits, SprayTask, WorkOutline};
pub use stricter::{NotStricter, OWN_CRITERIA_MOST, OWN_CRITERION_MOST, OwnCriterion, Stricter};
pub use text::{Args, Texts};
pub use ticket::{Part, Ticket};
pub use tool::{Ask, Choice, Handling, Number, Pick, Place, Tool};
pub use trade_word::{TradeWord, Translated};
pub use units::Units;
pub use walk::{Outline, RoomAir, WalkInfo, WalkPart};
pub use world::World;

pub use crate::rules::term::{Binding, ColourPlan};

use crate::rules::fault::{Fault, Pair, Probe};
use crate::rules::hazard::Solvent;
use crate::rules::mixing::Cup;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::wood::Wood;
use apart::apart;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// The language in which every message stands; it is shown where another language has none.
pub const ENGLISH: &str = "en";

/// Everything under `content/`, checked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Default)]
pub struct Content {
    /// What is known of each value on a shop sheet, in the order of the settings.
    #[serde(deserialize_with = "apart")]
    pub settings: Vec<SettingInfo>,
    /// The shop sheets that ship; the first is the base sheet.
    #[serde(deserialize_with = "apart")]
    pub sheets: Vec<Sheet>,
    /// What the shop calls sheets of its own, by their slugs.
    #[serde(skip)]
    pub own_sheets: BTreeMap<String, SheetTitle>,
    /// The woods.
    #[serde(deserialize_with = "apart")]
    pub woods: Vec<Wood>,
    /// What woods look like.
    #[serde(deserialize_with = "apart")]
    pub looks: Vec<Look>,
    /// Colours of panels.
    #[serde(deserialize_with = "apart")]
    pub dresses: Vec<Dress>,
    /// How faults are shown.
    #[serde(deserialize_with = "apart")]
    pub panels: Vec<Panel>,
    /// The solvents.
    #[serde(deserialize_with = "apart")]
    pub solvents: Vec<Solvent>,
    /// The scenario sets that ship.
    #[serde(deserialize_with = "apart")]
    pub sets: Vec<ScenarioSet>,
    /// The faults.
    #[serde(deserialize_with = "apart")]
    pub faults: Vec<Fault>,
    /// The efflux cups.
    #[serde(deserialize_with = "apart")]
    pub cups: Vec<Cup>,
    /// The look-alikes among them.
    #[serde(deserialize_with = "apart")]
    pub pairs: Vec<Pair>,
    /// The job tickets.
    #[serde(deserialize_with = "apart")]
    pub tickets: Vec<Ticket>,
    /// The walks, each with a ticket of its own.
    #[serde(deserialize_with = "apart")]
    pub walks: Vec<WalkInfo>,
    /// The spray tasks.
    #[serde(deserialize_with = "apart")]
    pub sprays: Vec<SprayTask>,
    /// What is at hand in the finish room.
    #[serde(deserialize_with = "apart")]
    pub tools: Vec<Tool>,
    /// Names, units and ranges of facts; last those that tell how much of a solvent is in the air, one for each.
    #[serde(deserialize_with = "apart")]
    pub facts: Vec<FactInfo>,
    /// The competencies, in the order of the work, as this shop asks for them.
    #[serde(deserialize_with = "apart")]
    pub competencies: Vec<Competency>,
    /// The competencies as they came, where the shop asks for more; see [`Content::shipped`].
    #[serde(skip)]
    pub came: Vec<Competency>,
    /// The card families.
    #[serde(deserialize_with = "apart")]
    pub families: Vec<FamilyInfo>,
    /// The rules' kinds, severities and sources.
    #[serde(deserialize_with = "apart")]
    pub rules: Vec<RuleInfo>,
    /// Words of the trade in several languages.
    #[serde(deserialize_with = "apart")]
    pub words: Vec<TradeWord>,
    /// Cautions by stage.
    #[serde(deserialize_with = "apart")]
    pub cautions: Vec<Caution>,
    /// What follows from mistakes.
    #[serde(deserialize_with = "apart")]
    pub consequences: Vec<Consequence>,
    /// Messages by language code; those of [`ENGLISH`] are complete.
    #[serde(with = "packed")]
    pub texts: BTreeMap<String, Texts>,
}

impl Content {
    /// What is known of a value on the shop sheet.
    #[must_use]
    pub fn setting(&self, key: Setting) -> Option<&SettingInfo> {
        self.settings.get(key as usize).filter(|info| info.key == key)
    }

    /// What a sheet is called: one that ships by its text, one of the shop's own by its name and edition; a slug that is not
    /// known stays a slug.
    #[must_use]
    pub fn sheet_name(&self, language: &str, slug: &str) -> String {
        let texts = self.texts(language);
        let Some(title) = self.own_sheets.get(slug) else {
            return texts.find(&format!("sheet.{slug}")).unwrap_or(slug).to_owned();
        };
        let named =
            [("name".to_owned(), title.name.clone()), ("edition".to_owned(), title.edition.to_string())];
        texts.fill("app.own.edition", &named.into())
    }

    /// The wood with that slug.
    #[must_use]
    pub fn wood(&self, slug: &str) -> Option<&Wood> {
        self.woods.iter().find(|wood| wood.slug == slug)
    }

    /// How a fault is shown, where it can be drawn.
    #[must_use]
    pub fn panel(&self, fault: &str) -> Option<&Panel> {
        self.panels.iter().find(|panel| panel.fault == fault)
    }

    /// The colours with that slug.
    #[must_use]
    pub fn dress(&self, slug: &str) -> Option<&Dress> {
        self.dresses.iter().find(|dress| dress.slug == slug)
    }

    /// The look with that slug.
    #[must_use]
    pub fn look(&self, slug: &str) -> Option<&Look> {
        self.looks.iter().find(|look| look.slug == slug)
    }

    /// How a wood looks: as its own look, or as that of a wood that nobody tells it from.
    #[must_use]
    pub fn look_of(&self, wood: &str) -> Option<&Look> {
        let own = self.looks.iter().find(|look| look.wood == wood);
        own.or_else(|| self.looks.iter().find(|look| look.also.iter().any(|also| also == wood)))
    }

    /// The solvent with that slug.
    #[must_use]
    pub fn solvent(&self, slug: &str) -> Option<&Solvent> {
        self.solvents.iter().find(|solvent| solvent.slug == slug)
    }

    /// The facts that files list, without those that stand for solvents.
    #[must_use]
    pub fn listed_facts(&self) -> &[FactInfo] {
        let listed = self.facts.len().saturating_sub(self.solvents.len());
        self.facts.get(..listed).unwrap_or(&self.facts)
    }

    /// The fault with that id.
    #[must_use]
    pub fn fault(&self, id: &str) -> Option<&Fault> {
        self.faults.iter().find(|fault| fault.id == id)
    }

    /// The efflux cup with that slug.
    #[must_use]
    pub fn cup(&self, slug: &str) -> Option<&Cup> {
        self.cups.iter().find(|cup| cup.slug == slug)
    }

    /// The probes that tell faults apart: the facts that can be found out on the work.
    #[must_use]
    pub fn probes(&self) -> Vec<Probe<'_>> {
        let mut probes = Vec::new();
        for fact in &self.facts {
            if let Some(effort) = fact.probe {
                probes.push(Probe { key: &fact.key, answers: &fact.terms, effort });
            }
        }
        probes
    }

    /// The keys that a draw of a family stands for: of every probe, or its own.
    #[must_use]
    pub fn drawn<'a>(&'a self, draw: &'a Draw) -> Vec<&'a str> {
        if draw.fact == PROBES {
            self.probes().into_iter().map(|probe| probe.key).collect()
        } else {
            vec![draw.fact.as_str()]
        }
    }

    /// The ticket with that slug.
    #[must_use]
    pub fn ticket(&self, slug: &str) -> Option<&Ticket> {
        self.tickets.iter().find(|ticket| ticket.slug == slug)
    }

    /// The walk with that slug.
    #[must_use]
    pub fn walk(&self, slug: &str) -> Option<&WalkInfo> {
        self.walks.iter().find(|walk| walk.slug == slug)
    }

    /// The shop sheet with that slug.
    #[must_use]
    pub fn sheet(&self, slug: &str) -> Option<&Sheet> {
        self.sheets.iter().find(|sheet| sheet.slug == slug)
    }

    /// The fact with that key.
    #[must_use]
    pub fn fact(&self, key: &str) -> Option<&FactInfo> {
        self.facts.iter().find(|fact| fact.key == key)
    }

    /// The card family with that id.
    #[must_use]
    pub fn family(&self, id: &str) -> Option<&FamilyInfo> {
        self.families.iter().find(|family| family.id == id)
    }

    /// Card families that give knowledge evidence for a competency, in their order.
    pub fn evidence_for<'a>(&'a self, slug: &'a str) -> impl Iterator<Item = &'a FamilyInfo> {
        self.families.iter().filter(move |family| family.competencies.iter().any(|one| one == slug))
    }

    /// The competency with that slug.
    #[must_use]
    pub fn competency(&self, slug: &str) -> Option<&Competency> {
        self.competencies.iter().find(|competency| competency.slug == slug)
    }

    /// What is known of a rule.
    #[must_use]
    pub fn rule(&self, id: &str) -> Option<&RuleInfo> {
        self.rules.iter().find(|rule| rule.id == id)
    }

    /// What follows from a mistake.
    #[must_use]
    pub fn consequence(&self, id: &str) -> Option<&Consequence> {
        self.consequences.iter().find(|consequence| consequence.id == id)
    }

    /// The slugs that a term stands for: those of a list where it names one (`@woods`, `@solvents`, `@faults`, `@cups`, `@tickets`, `@sprays` among them),
    /// else itself.
    #[must_use]
    pub fn listed<'a>(&'a self, term: &'a str) -> Vec<&'a str> {
        match term {
            "@woods" => self.woods.iter().map(|wood| wood.slug.as_str()).collect(),
            "@solvents" => self.solvents.iter().map(|solvent| solvent.slug.as_str()).collect(),
            "@faults" => self.faults.iter().map(|fault| fault.id.as_str()).collect(),
            "@looks" => self.looks.iter().map(|look| look.slug.as_str()).collect(),
            "@dresses" => self.dresses.iter().map(|dress| dress.slug.as_str()).collect(),
            "@cups" => self.cups.iter().map(|cup| cup.slug.as_str()).collect(),
            "@tickets" => self.tickets.iter().map(|ticket| ticket.slug.as_str()).collect(),
            "@sprays" => self.sprays.iter().map(|task| task.slug.as_str()).collect(),
            slug => vec![slug],
        }
    }

    /// The messages of a language, English where the language is unknown.
    #[must_use]
    pub fn texts(&self, language: &str) -> &Texts {
        static NONE: LazyLock<Texts> = LazyLock::new(Texts::default);
        self.texts.get(language).or_else(|| self.texts.get(ENGLISH)).unwrap_or(&NONE)
    }
}
