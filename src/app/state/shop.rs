//! Content and settings together: how a screen says a thing, and which sheet it works on.

use super::settings::Settings;
use super::{AirContext, SettingsContext};
use crate::bench;
use crate::card::Voice;
use crate::content::{Args, Caution, CautionStage, Content, FamilyInfo, Texts, World};
use crate::device::clock;
use crate::exchange::Refused;
use crate::quantity::{Measure, Unit};
use crate::record::{FORMAT, MeasuredAir, Moment, Stamp};
use crate::rules::sheet::Sheet;
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use yew::prelude::*;

/// The calculation that judges air, and its verdict where nothing is wrong with it.
const SPRAY_GATE: &str = "spray-gate";
const FIT: &str = "spray";

/// The content; it never changes, so only its place is compared.
#[derive(Debug, Clone)]
pub(in crate::app) struct ContentContext(pub(in crate::app) Rc<Content>);

impl PartialEq for ContentContext {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// Content as this person reads it.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Shop {
    content: ContentContext,
    pub(in crate::app) settings: Rc<Settings>,
    /// The air of the room as it was measured last.
    pub(in crate::app) air: Option<Rc<MeasuredAir>>,
}

impl Shop {
    /// The same with other content, such as with the sheets that came with results.
    pub(in crate::app) fn on(&self, content: ContentContext) -> Self {
        Self { content, ..self.clone() }
    }

    /// The same with other settings, such as those that are being stored.
    pub(in crate::app) fn set_as(&self, settings: Settings) -> Self {
        Self { settings: Rc::new(settings), ..self.clone() }
    }

    /// Competencies by their names.
    pub(in crate::app) fn competencies(&self, slugs: &[String]) -> String {
        let name = |slug: &String| self.text(&format!("competency.{slug}")).to_string();
        slugs.iter().map(name).collect::<Vec<_>>().join(", ")
    }

    /// Where and when an event happens and about whom, without a number yet.
    pub(in crate::app) fn stamp(&self, person: &str) -> Stamp {
        Stamp {
            format: FORMAT,
            sequence: 0,
            device: self.settings.device.clone(),
            at: clock::now(),
            date: clock::today(),
            person: person.to_owned(),
        }
    }

    pub(in crate::app) fn content(&self) -> &Content {
        &self.content.0
    }

    pub(in crate::app) fn texts(&self) -> &Texts {
        self.content().texts(self.settings.speaks())
    }

    /// A message of the screens: the key without `app.`.
    pub(in crate::app) fn say(&self, key: &str) -> AttrValue {
        let key = format!("app.{key}");
        AttrValue::from(self.texts().get(&key).to_owned())
    }

    /// A message of the screens with names filled in.
    pub(in crate::app) fn say_with(&self, key: &str, named: &[(&str, String)]) -> AttrValue {
        let mut args = Args::new();
        for (name, value) in named {
            args.insert((*name).to_owned(), value.clone());
        }
        AttrValue::from(self.texts().fill(&format!("app.{key}"), &args))
    }

    /// Why a file was refused.
    pub(in crate::app) fn refused(&self, refused: &Refused) -> AttrValue {
        self.say_with(&format!("refused.{}", refused.slug()), &refused.told())
    }

    /// Any other message, by its whole key.
    pub(in crate::app) fn text(&self, key: &str) -> AttrValue {
        AttrValue::from(self.texts().get(key).to_owned())
    }

    /// A card family in a few words; what it asks where it has no title.
    pub(in crate::app) fn family_title(&self, id: &str) -> AttrValue {
        let [title, ask] = ["title", "ask"].map(|part| format!("card.{id}.{part}"));
        AttrValue::from(self.texts().first(&[&title, &ask]).to_owned())
    }

    pub(in crate::app) fn stage(&self, stage: Stage) -> AttrValue {
        self.say(&format!("stage.{}", stage.slug()))
    }

    /// A source as it is told: where it is common practice before all else, and there is none, in the language of the screen.
    pub(in crate::app) fn source(&self, source: &str) -> String {
        let Some(rest) = source.strip_prefix("common practice") else { return source.to_owned() };
        let practice = self.say("verdict.practice");
        match rest.strip_prefix(", no source") {
            Some(rest) => format!("{practice}, {}{rest}", self.say("verdict.no-source")),
            None => format!("{practice}{rest}"),
        }
    }

    /// Cautions of caution stages, then those shown everywhere.
    pub(in crate::app) fn cautions_for(&self, stages: &[CautionStage]) -> Vec<AttrValue> {
        self.cautions(&self.content().cautions_for(stages), stages.contains(&CautionStage::Spray))
    }

    /// Cautions that stand below a card while it is asked; below a question of the shop's own, of no family, those of every
    /// screen.
    pub(in crate::app) fn cautions_asked(
        &self,
        asked: Option<&FamilyInfo>,
        in_check: bool,
    ) -> Vec<AttrValue> {
        let cautions = self.content().cautions_asked(asked.as_slice(), in_check);
        self.cautions(&cautions, asked.is_some_and(|family| family.cautions.contains(&CautionStage::Spray)))
    }

    /// The same of cards on paper, which knows no air of today.
    pub(in crate::app) fn printed_cautions(&self, asked: &[&FamilyInfo]) -> Vec<AttrValue> {
        self.cautions(&self.content().cautions_asked(asked, false), false)
    }

    /// Cautions of a band, then those shown everywhere.
    pub(in crate::app) fn cautions_of_band(&self, band: Stage) -> Vec<AttrValue> {
        let cautions = self.content().cautions_of_band(band);
        let sprays = cautions.iter().any(|caution| caution.stages.contains(&CautionStage::Spray));
        self.cautions(&cautions, sprays)
    }

    /// Where lacquer is sprayed and today's air is not fit for it, that comes first.
    fn cautions(&self, cautions: &[&Caution], sprays: bool) -> Vec<AttrValue> {
        let air = sprays.then(|| self.air_caution()).flatten();
        let named = cautions.iter().map(|caution| self.text(&format!("caution.{}", caution.id)));
        air.into_iter().chain(named).collect()
    }

    /// The air of the room where it may still be gone by.
    pub(in crate::app) fn fresh_air(&self) -> Option<&MeasuredAir> {
        let now = Moment::of(&clock::now())?;
        self.air.as_deref().filter(|air| !air.is_old(now))
    }

    /// What is said of the air measured last where it was not fit for spraying as mixed. Old air may have become fit, which
    /// nobody knows before it is measured anew.
    fn air_caution(&self) -> Option<AttrValue> {
        let air = self.air.as_deref()?;
        let world = World { content: self.content(), sheet: self.sheet()? };
        let gate = bench::calculations().into_iter().find(|one| one.name == SPRAY_GATE)?;
        let ruling = (gate.run)(&air.facts(), &world).ok()?;
        let verdict = ruling.answer.terms.get("verdict").filter(|verdict| **verdict != FIT)?;
        let why = ruling.rules.first().map(|rule| self.text(&format!("rule.{}", rule.0)).to_string());
        let named = [("at", clock::local(&air.at)), ("why", why.unwrap_or_default())];
        let told = if self.fresh_air().is_some() { verdict.as_str() } else { "old" };
        Some(self.say_with(&format!("air.caution.{told}"), &named))
    }

    /// What was measured, in one line.
    pub(in crate::app) fn air_in_words(&self, air: &MeasuredAir) -> String {
        let voice = self.voice();
        let facts = air.facts();
        let told = facts
            .0
            .iter()
            .map(|(key, value)| format!("{} {}", voice.fact_name(key), voice.fact("", key, value)));
        told.collect::<Vec<_>>().join(", ")
    }

    /// A figure without a unit.
    pub(in crate::app) fn figure(&self, value: f64, decimals: u8) -> String {
        self.texts().figure(Measure::new(value, Unit::Ratio, decimals))
    }

    pub(in crate::app) fn voice(&self) -> Voice<'_> {
        Voice::new(self.content(), self.settings.speaks(), self.settings.units)
    }

    /// The sheet in use; the base sheet where the one chosen is gone.
    pub(in crate::app) fn sheet(&self) -> Option<&Sheet> {
        self.content().sheet(&self.settings.sheet).or_else(|| self.content().sheets.first())
    }

    /// Whether a sheet was chosen that is not here, so that the base sheet is in use.
    pub(in crate::app) fn sheet_gone(&self) -> bool {
        let chosen = self.settings.sheet.as_str();
        !chosen.is_empty() && self.content().sheet(chosen).is_none()
    }

    /// What a sheet is called, one that ships or one of the shop's own.
    pub(in crate::app) fn sheet_name(&self, slug: &str) -> AttrValue {
        self.content().sheet_name(self.settings.speaks(), slug).into()
    }

    /// What a set is called: one that ships in the language of whoever reads, by its id, any other as who made it called it.
    pub(in crate::app) fn set_title(&self, id: &str, title: &str) -> AttrValue {
        let ships = self.content().sets.iter().any(|ships| ships.slug == id);
        let own = ships.then(|| self.texts().find(&format!("set.{id}"))).flatten();
        AttrValue::from(own.unwrap_or(title).to_owned())
    }

    /// Content with a sheet by its slug.
    pub(in crate::app) fn world(&self, sheet: &str) -> Option<World<'_>> {
        let content = self.content();
        content.sheet(sheet).map(|sheet| World { content, sheet })
    }
}

/// The shop of this person.
///
/// The contexts stand around every screen; without them the program is put together wrongly and stops.
#[hook]
pub(in crate::app) fn use_shop() -> Shop {
    let content = use_context::<ContentContext>();
    let settings = use_context::<SettingsContext>();
    let air = use_context::<AirContext>();
    match (content, settings, air) {
        (Some(content), Some(settings), Some(air)) => Shop { content, settings: settings.now, air: air.now },
        _ => unreachable!("the root sets the contexts"),
    }
}
