//! Edges that film left, and cracks on dark wood.

use crate::from_edge;
use crate::measure::{changed, named, panel, recipe};
use stepboard_picture::{Grid, Lamp, Panel, Recipe, Severity, Species};

/// Film draws back in bays (appearance of edge pull-back): it holds here and leaves there, so that even at its worst bare wood is
/// no frame round the face.
#[test]
fn film_draws_back_in_bays_and_is_no_frame() {
    for seed in [1, 2, 3, 4] {
        let panel = panel(Some((named("edge-pullback"), Severity::Severe)), seed, 0.5);
        let rim: Vec<bool> = (0..panel.mask().len())
            .filter(|place| from_edge(&panel, *place) < 0.25)
            .map(|place| panel.mask()[place] > 0.5)
            .collect();
        let bare = rim.iter().filter(|bare| **bare).count() as f32 / rim.len() as f32;
        assert!((0.15..0.75).contains(&bare), "seed {seed}: {bare} of the rim");
        let deep = |place: &usize| panel.mask()[*place] > 0.5 && from_edge(&panel, *place) > 2.5;
        assert!((0..panel.mask().len()).any(|place| deep(&place)), "seed {seed}: deep bays");
    }
}

/// Cracks show on dark wood as on pale wood: there their edges are the paler.
#[test]
fn cracks_show_on_dark_wood_too() {
    const DARK: [u8; 3] = [90, 52, 38];
    let dark = |fault: Option<&str>, severity| {
        let species = Species { base: DARK, early: DARK, pore: DARK, ..Species::plain() };
        let recipe = Recipe { species, ..recipe(fault.map(|slug| (named(slug), severity)), 3) };
        Panel::draw(recipe, Grid::covering(120.0, 90.0, 0.25))
    };
    let aside = Lamp { x: 600.0, ..Lamp::OVERHEAD };
    let clean = dark(None, Severity::Plain);
    for (slug, least) in [("cold-check", 0.04), ("crows-foot", 0.003), ("substrate-crack", 0.003)] {
        let share = changed(&dark(Some(slug), Severity::Severe), &clean, aside);
        assert!(share > least, "{slug}: {share}");
    }
}
