//! What a card's panels show, in words that name neither the fault nor the wood nor the stage: a card that is looked at can
//! be worked without sight.

use super::scene::{self, LEFT, PanelStage, RIGHT};
use super::{Card, Voice};
use crate::content::Args;
use crate::picture::{Growth, Species};
use crate::rules::term::Term;

/// Brightness of wood, sum of the screen's red, green and blue, below which it is dark, and above which it is pale.
const DARK: u16 = 330;
const PALE: u16 = 540;
/// Diameter from which the naked eye sees vessels as holes, mm (FPL-GTR-190, ch. 3: large pores are plainly visible).
const LARGE: f32 = 0.1;

impl Voice<'_> {
    /// What a panel of a card shows as a whole; the first has the number 0.
    #[must_use]
    pub fn panel_words(&self, card: &Card, number: usize) -> String {
        match self.fault_words(card, number) {
            Some(words) => words,
            None => self.ground(card),
        }
    }

    /// What a part of a panel shows, of which the fault takes a share.
    #[must_use]
    pub fn cell_words(&self, card: &Card, number: usize, share: f32) -> String {
        let fault = if scene::is_told(share) { self.fault_words(card, number) } else { None };
        fault.unwrap_or_else(|| self.ground(card))
    }

    /// What a panel of a card is, named: its fault, its wood and how far it has come. Only for after the answer.
    #[must_use]
    pub fn panel_name(&self, card: &Card, number: usize) -> String {
        let fault = self.fault_name(card, number).unwrap_or_else(|| self.texts.get("seen.sound").to_owned());
        let look = card.facts.maybe_slug(scene::LOOK).and_then(|slug| self.content.look(slug));
        let stage = card.facts.term::<PanelStage>("panel_stage").unwrap_or(PanelStage::Cleared);
        let mut args = Args::new();
        for (name, value) in [
            ("fault", fault),
            ("wood", look.map(|look| self.term(&card.family, &look.wood)).unwrap_or_default()),
            ("stage", self.term(&card.family, stage.slug())),
        ] {
            args.insert(name.to_owned(), value);
        }
        self.texts.fill("seen.named", &args)
    }

    /// The name of the fault of a panel.
    #[must_use]
    pub fn fault_name(&self, card: &Card, number: usize) -> Option<String> {
        Some(self.term(&card.family, &self.fault_of(card, number)?))
    }

    /// How the fault of a panel looks before any test, and what a wipe made of it where that tells twins apart.
    fn fault_words(&self, card: &Card, number: usize) -> Option<String> {
        let fault = self.fault_of(card, number)?;
        let wiped = card.facts.yes(scene::WIPED).unwrap_or(false);
        let key = format!("seen.{fault}");
        let after = if wiped { self.texts.find(&format!("{key}.wiped")) } else { None };
        Some(after.unwrap_or_else(|| self.texts.get(&key)).to_owned())
    }

    /// The fault of a panel.
    fn fault_of(&self, card: &Card, number: usize) -> Option<String> {
        let two = self.content.family(&card.family)?.facts.iter().any(|draw| draw.fact == RIGHT);
        let key = match (two, number) {
            (false, _) => "fault",
            (true, 0) => LEFT,
            _ => RIGHT,
        };
        card.facts.maybe_slug(key).map(str::to_owned)
    }

    /// What the panel shows where there is no fault: its wood where that is bare, else the lie of its film.
    fn ground(&self, card: &Card) -> String {
        let stage = card.facts.term::<PanelStage>("panel_stage").unwrap_or(PanelStage::Cleared);
        let surface = self.texts.get(&format!("seen.{}", stage.slug())).to_owned();
        let look = card.facts.maybe_slug(scene::LOOK).and_then(|slug| self.content.look(slug));
        match look {
            Some(look) if stage == PanelStage::Bare => format!("{surface} {}", self.anatomy(&look.species)),
            _ => surface,
        }
    }

    /// A wood by its rings, vessels, rays and shade.
    fn anatomy(&self, species: &Species) -> String {
        let widest = species.pores.iter().map(|pores| pores.width).fold(0.0, f32::max);
        let growth = match species.growth {
            Growth::Ring => "seen.growth.ring",
            Growth::SemiRing => "seen.growth.semi-ring",
            Growth::Diffuse if widest >= LARGE => "seen.growth.diffuse-large",
            Growth::Diffuse => "seen.growth.diffuse-small",
            Growth::Conifer => "seen.growth.conifer",
        };
        let bright: u16 = species.base.into_iter().map(u16::from).sum();
        let shade = match bright {
            ..DARK => "seen.shade.dark",
            PALE.. => "seen.shade.pale",
            _ => "seen.shade.brown",
        };
        let marks = [
            (species.rays.is_some(), "seen.rays"),
            (!species.bands.is_empty(), "seen.streaks"),
            (species.ribbon > 0.0, "seen.ribbon"),
            (species.curl > 0.0, "seen.curl"),
        ];
        let marks = marks.into_iter().filter(|(there, _)| *there).map(|(_, key)| key);
        let told: Vec<&str> =
            [growth, shade].into_iter().chain(marks).map(|key| self.texts.get(key)).collect();
        told.join(" ")
    }
}
