//! What can be done to a panel shows on it what the facts of its fault say, and nothing where they say nothing
//! (`content/faults.toml`, with its sources; `content/facts/fault.toml` says how each test is seen).

mod support;

use stepboard::card::scene::PANEL_MM;
use stepboard::content::{Content, Panel as Shown, View};
use stepboard::picture::{Fault, Grid, Lamp, Panel, Probe, Recipe, Severity};
use stepboard::rules::term::Term;
use support::content;

/// Millimetres a pixel: nobody looks at these.
const SCALE: f32 = 0.5;
const COARSE: f32 = 1.0;

fn drawn(recipe: &Recipe, probe: Probe, scale: f32) -> Panel {
    let recipe = Recipe { probe, ..recipe.clone() };
    Panel::draw(recipe, Grid::covering(PANEL_MM.0, PANEL_MM.1, scale))
}

/// Its picture under the tubes and under a low lamp.
fn lit(recipe: &Recipe, probe: Probe) -> Vec<u8> {
    let panel = drawn(recipe, probe, COARSE);
    let (mut all, mut pixels) = (Vec::new(), Vec::new());
    for lamp in [Lamp::OVERHEAD, Lamp::RAKING] {
        panel.light(lamp, &mut pixels);
        all.extend_from_slice(&pixels);
    }
    all
}

/// The panels of a fault: one in each finish.
fn recipes(content: &Content, panel: &Shown) -> Vec<Recipe> {
    let look = content.look(&panel.looks[0]).expect("a look");
    let dress = content.dress(&panel.dresses[0]).expect("a dress");
    let fault = Fault::from_slug(&panel.fault).map(|fault| (fault, Severity::Plain));
    panel.finishes.iter().map(|finish| Recipe { fault, ..dress.on(&look.species, *finish, 3) }).collect()
}

fn seen<'a>(content: &'a Content, panel: &Shown, test: &str) -> &'a [String] {
    let fault = content.fault(&panel.fault).expect("a fault");
    fault.seen.get(test).map(Vec::as_slice).unwrap_or_default()
}

/// A test of which the facts of a fault say nothing leaves its panel as it was, in every finish that is shown.
#[test]
fn where_the_facts_are_silent_the_picture_stays() {
    let content = content();
    let mut silent = 0;
    for panel in &content.panels {
        for view in View::ALL.iter().filter(|view| view.probe() != Probe::None) {
            let mut facts = content.facts.iter().filter(|fact| fact.view == Some(*view));
            if facts.any(|fact| !seen(&content, panel, &fact.key).is_empty()) {
                continue;
            }
            for recipe in recipes(&content, panel) {
                let same = lit(&recipe, view.probe()) == lit(&recipe, Probe::None);
                assert!(same, "{} {}: `{}`", panel.fault, recipe.finish.slug(), view.slug());
                silent += 1;
            }
        }
    }
    assert!(silent > 100, "{silent}");
}

/// On the day of its last coat a panel has no fault that came days later, on rubbing or at unmasking, and has every other one
/// as it is now. Scratches that may come either way came with the stain where there is stain.
#[test]
fn the_day_of_the_last_coat_shows_what_had_come_by_then() {
    const LATER: [&str; 3] = ["days-later", "on-rubbing", "at-unmasking"];
    /// Along this strip of an edge a binding may lie that is no fault, pixels of [`COARSE`] mm.
    const STRIP: usize = 17;
    let grid = Grid::covering(PANEL_MM.0, PANEL_MM.1, COARSE);
    let content = content();
    let (mut came, mut stood) = (0, 0);
    for panel in &content.panels {
        let answers = seen(&content, panel, "came");
        assert!(!answers.is_empty(), "{}: nothing says when it came", panel.fault);
        let later = answers.iter().any(|answer| LATER.contains(&answer.as_str()));
        let with_stain = answers.iter().any(|answer| answer == "with-the-stain");
        for recipe in recipes(&content, panel) {
            let (now, then) = (lit(&recipe, Probe::None), lit(&recipe, Probe::Aged));
            let name = format!("{} {}", panel.fault, recipe.finish.slug());
            if later && !(with_stain && recipe.stain > 0.0) {
                let clean = lit(&Recipe { fault: None, ..recipe }, Probe::None);
                let taped = answers.iter().all(|answer| answer == "at-unmasking");
                let field = if taped { 4 * grid.columns * (grid.rows - STRIP) } else { clean.len() };
                assert!(now != then, "{name}: it came");
                assert!(then[..field] == clean[..field], "{name}: nothing was there before");
                came += 1;
            } else {
                assert!(now == then, "{name}: it was there");
                stood += 1;
            }
        }
    }
    assert!(came > 15 && stood > 15, "{came} {stood}");
}

/// Before it was unmasked a binding is as clean whichever way its tape will spoil it (T43; T44).
#[test]
fn a_binding_is_clean_until_its_tape_comes_off() {
    let content = content();
    let aged = |slug: &str| {
        let panel = content.panels.iter().find(|panel| panel.fault == slug).expect("a panel");
        lit(&recipes(&content, panel)[0], Probe::Aged)
    };
    assert!(aged("tape-bleed") == aged("tape-bridge"));
}

/// What a thumbnail, a damp cloth and one pressed on show of a fault in words they show on its panel: a dent or a weave or none,
/// a cloud that goes or one that stays. The words are those of the faults reference.
#[test]
fn a_thumbnail_and_cloths_show_on_a_panel_what_they_are_said_to() {
    /// A dent that a lamp shows, and what no eye sees, micrometres.
    const DENT: f32 = 5.0;
    /// A weave that dulls the gloss, micrometres.
    const WEAVE: f32 = 0.5;
    let content = content();
    let mut tried = [0; 6];
    for panel in &content.panels {
        let says = |test: &str, answer: &str| seen(&content, panel, test).iter().any(|one| one == answer);
        let recipe = recipes(&content, panel).remove(0);
        let heights = |probe: Probe| drawn(&recipe, probe, SCALE).height().to_vec();
        let sunk = |probe: Probe| {
            let pairs = heights(Probe::None).into_iter().zip(heights(probe));
            pairs.map(|(before, after)| before - after).fold(0.0, f32::max)
        };
        if says("thumbnail", "nail-dents") {
            assert!(sunk(Probe::Pressed) > DENT, "{}: it dents", panel.fault);
            tried[0] += 1;
        } else if says("thumbnail", "nail-holds") {
            assert!(sunk(Probe::Pressed) == 0.0, "{}: it holds", panel.fault);
            tried[1] += 1;
        }
        if says("cloth_press", "weave-prints") {
            assert!(sunk(Probe::Cloth) > WEAVE, "{}: it prints", panel.fault);
            tried[4] += 1;
        } else if says("cloth_press", "no-print") {
            assert!(sunk(Probe::Cloth) == 0.0, "{}: no print", panel.fault);
            tried[5] += 1;
        }
        let light = |probe: Probe| {
            let mut pixels = Vec::new();
            drawn(&recipe, probe, SCALE).light(Lamp::OVERHEAD, &mut pixels);
            pixels
        };
        if says("damp_wipe", "wipe-goes") || says("damp_wipe", "wipe-powder") {
            assert!(light(Probe::Wiped) != light(Probe::None), "{}: it wipes off", panel.fault);
            tried[2] += 1;
        } else if says("damp_wipe", "wipe-stays") {
            assert!(light(Probe::Wiped) == light(Probe::None), "{}: it stays", panel.fault);
            tried[3] += 1;
        }
    }
    assert!(tried.iter().all(|tried| *tried > 0), "{tried:?}");
}
