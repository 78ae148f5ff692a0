//! The panels that a card shows, from the facts that are seen on them.

use super::Card;
use crate::bench::Facts;
use crate::content::Content;
use crate::picture::{Fault, Finish, Grid, Panel, Probe, Recipe, Severity};
use crate::rules::term::Term;
use crate::terms;

/// Whether so large a share of a part of a panel is told in words.
#[must_use]
pub fn is_told(share: f32) -> bool {
    share > TOLD_FROM
}

/// Width and height of a panel, mm.
pub const PANEL_MM: (f32, f32) = (120.0, 90.0);
/// A tap so far from a thin fault still points at it, mm.
pub const REACH_MM: f32 = 3.0;
/// Less of a part of a panel than this is nothing that would be told in words.
pub const TOLD_FROM: f32 = 0.002;
/// Millimetres a pixel of the panel that a place is judged on: nobody looks at it.
const JUDGED_AT: f32 = 0.5;
/// Millimetres between the places that are tried for the share of a panel.
const TRIED_EACH: f32 = 2.0;

terms! {
    /// How far a panel has come.
    PanelStage {
        /// Sanded.
        Bare = "bare-wood",
        /// Stained.
        Stained = "stained-wood",
        /// Filled.
        Filled = "filled-wood",
        /// Sealed.
        Sealed = "sealed-film",
        /// Under transparent colour.
        Coloured = "coloured-film",
        /// Clear coats as sprayed.
        Cleared = "cleared-film",
        /// Levelled and rubbed to an even satin.
        Rubbed = "rubbed-film",
        /// Levelled and buffed.
        Buffed = "buffed-film",
    }
}

impl Term for Severity {
    const ALL: &'static [Self] = &Self::ALL;

    fn slug(self) -> &'static str {
        self.slug()
    }
}

/// The panels that a card shows, from left to right; none on a card that is read.
#[must_use]
pub fn panels(card: &Card, content: &Content) -> Vec<Recipe> {
    let draws = content.family(&card.family).map(|info| info.facts.as_slice()).unwrap_or_default();
    let seen = |key: &str| draws.iter().any(|draw| draw.on_panel && draw.fact == key);
    let faults: &[&str] = match (seen(RIGHT), seen(LOOK)) {
        (true, _) => &[LEFT, RIGHT],
        (_, true) => &["fault"],
        _ => &[],
    };
    let panel = |(piece, key): (u32, &&str)| {
        let recipe = recipe(&card.facts, content, card.facts.maybe_slug(key))?;
        Some(Recipe { seed: recipe.seed.wrapping_add(piece * PIECES), ..recipe })
    };
    (0..).zip(faults).filter_map(panel).collect()
}

/// Panels side by side are never one piece of wood: so far apart are their seeds.
const PIECES: u32 = 1_000_000;
/// The wood of a panel, and whether a band of it was wiped.
pub(super) const LOOK: &str = "panel_look";
pub(super) const WIPED: &str = "panel_wiped";
/// Faults of two panels side by side; one that is not told is not there.
pub(super) const LEFT: &str = "one_fault";
pub(super) const RIGHT: &str = "other_fault";

/// The panel that facts describe, with a fault or with none.
pub(super) fn recipe(facts: &Facts, content: &Content, fault: Option<&str>) -> Option<Recipe> {
    let look = content.look(facts.maybe_slug(LOOK)?)?;
    let dress = content.dress(facts.maybe_slug("panel_dress")?)?;
    let stage = facts.term::<PanelStage>("panel_stage").ok()?;
    let amount = facts.term("panel_amount").unwrap_or(Severity::Plain);
    let mut recipe = dress.on(&look.species, stage.finish(), seed(facts)?);
    stage.undo(&mut recipe);
    recipe.fault = fault.and_then(Fault::from_slug).map(|fault| (fault, amount));
    if facts.yes(WIPED).unwrap_or(false) {
        recipe.probe = Probe::Wiped;
    }
    Some(recipe)
}

/// The piece of a panel as a number to choose by.
pub(super) fn piece(facts: &Facts) -> usize {
    seed(facts).and_then(|seed| usize::try_from(seed).ok()).unwrap_or(0)
}

/// The chance that facts name: a whole number of few digits.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "facts keep it within six digits")]
fn seed(facts: &Facts) -> Option<u32> {
    facts.maybe_number("panel_seed").map(|seed| seed as u32)
}

/// Whether a place, mm from the left and the top, points at the fault of a panel.
#[must_use]
pub fn points_at(recipe: &Recipe, (x, y): (f32, f32)) -> bool {
    let grid = Grid::covering(PANEL_MM.0, PANEL_MM.1, JUDGED_AT);
    Panel::draw(recipe.clone(), grid).is_on_fault(x, y, REACH_MM)
}

/// Those of some places that are on the fault of a panel itself.
#[must_use]
pub fn on_fault(recipe: &Recipe, places: &[(f32, f32)]) -> Vec<(f32, f32)> {
    let panel = Panel::draw(recipe.clone(), Grid::covering(PANEL_MM.0, PANEL_MM.1, JUDGED_AT));
    places.iter().copied().filter(|(x, y)| panel.is_on_fault(*x, *y, 0.0)).collect()
}

/// Share of a panel, 0 to 1, on which a tap points at its fault: what a blind tap hits.
#[must_use]
pub fn share_on_fault(recipe: &Recipe) -> f64 {
    let panel = Panel::draw(recipe.clone(), Grid::covering(PANEL_MM.0, PANEL_MM.1, JUDGED_AT));
    let places = |length: f32| {
        (0..u16::MAX).map(|n: u16| (f32::from(n) + 0.5) * TRIED_EACH).take_while(move |at| *at < length)
    };
    let (mut on, mut all) = (0_u32, 0_u32);
    for y in places(PANEL_MM.1) {
        for x in places(PANEL_MM.0) {
            all += 1;
            on += u32::from(panel.is_on_fault(x, y, REACH_MM));
        }
    }
    f64::from(on) / f64::from(all.max(1))
}

impl PanelStage {
    const fn finish(self) -> Finish {
        match self {
            Self::Bare | Self::Stained | Self::Filled => Finish::Bare,
            Self::Sealed => Finish::Sealed,
            Self::Coloured => Finish::Coloured,
            Self::Cleared => Finish::Cleared,
            Self::Rubbed => Finish::Rubbed,
            Self::Buffed => Finish::Buffed,
        }
    }

    /// The stage at which a finish stands, colour and all.
    #[must_use]
    pub const fn of(finish: Finish) -> Self {
        match finish {
            Finish::Bare => Self::Filled,
            Finish::Sealed => Self::Sealed,
            Finish::Coloured => Self::Coloured,
            Finish::Cleared => Self::Cleared,
            Finish::Rubbed => Self::Rubbed,
            Finish::Buffed => Self::Buffed,
        }
    }

    /// Takes away what has not been done at that stage: stain comes before filler, filler before colour.
    fn undo(self, recipe: &mut Recipe) {
        if self == Self::Bare {
            recipe.stain = 0.0;
        }
        if self < Self::Filled {
            recipe.filler = None;
        }
        if self < Self::Coloured {
            (recipe.amber, recipe.opaque, recipe.shaded) = (0.0, None, false);
        }
    }
}
