//! Content and settings together: how a screen says a thing, and which sheet it works on.

use super::SettingsContext;
use super::settings::Settings;
use crate::card::Voice;
use crate::content::{Args, Caution, CautionStage, Content, Texts, World};
use crate::rules::sheet::Sheet;
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use yew::prelude::*;

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
}

impl Shop {
    pub(in crate::app) fn new(content: ContentContext, settings: Rc<Settings>) -> Self {
        Self { content, settings }
    }

    pub(in crate::app) fn content(&self) -> &Content {
        &self.content.0
    }

    pub(in crate::app) fn texts(&self) -> &Texts {
        self.content().texts(&self.settings.language)
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

    /// Cautions of caution stages, then those shown everywhere.
    pub(in crate::app) fn cautions_for(&self, stages: &[CautionStage]) -> Vec<AttrValue> {
        self.cautions(&self.content().cautions_for(stages))
    }

    /// Cautions of a band, then those shown everywhere.
    pub(in crate::app) fn cautions_of_band(&self, band: Stage) -> Vec<AttrValue> {
        self.cautions(&self.content().cautions_of_band(band))
    }

    fn cautions(&self, cautions: &[&Caution]) -> Vec<AttrValue> {
        cautions.iter().map(|caution| self.text(&format!("caution.{}", caution.id))).collect()
    }

    pub(in crate::app) fn voice(&self) -> Voice<'_> {
        Voice::new(self.content(), &self.settings.language, self.settings.units)
    }

    /// The sheet in use; the base sheet where the one chosen is gone.
    pub(in crate::app) fn sheet(&self) -> Option<&Sheet> {
        self.content().sheet(&self.settings.sheet).or_else(|| self.content().sheets.first())
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
    match (content, settings) {
        (Some(content), Some(settings)) => Shop::new(content, settings.now),
        _ => unreachable!("the root sets both contexts"),
    }
}
