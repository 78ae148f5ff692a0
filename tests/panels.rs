//! Cards that are looked at, drawn: the mask is there, a place on it is right and a place far from it is wrong, and what a
//! panel says in words names nothing. `STEPBOARD_PANEL_SEEDS` asks for more seeds (`make panels`).

mod support;

use stepboard::card::{Answer, Kind, Mark, Place, Voice, deal, grade, scene, solve};
use stepboard::content::{Content, Units, World};
use stepboard::picture::{Grid, Panel, Recipe};
use support::content;

/// Seeds a family.
const SEEDS: u32 = 30;
/// Millimetres a pixel: nobody looks at these.
const SCALE: f32 = 0.5;

fn seeds() -> u32 {
    match std::env::var("STEPBOARD_PANEL_SEEDS") {
        Ok(text) => text.parse().expect("STEPBOARD_PANEL_SEEDS is a number"),
        Err(_) => SEEDS,
    }
}

fn drawn(recipe: &Recipe) -> Panel {
    Panel::draw(recipe.clone(), Grid::covering(scene::PANEL_MM.0, scene::PANEL_MM.1, SCALE))
}

/// Families whose cards show a panel.
fn families(content: &Content) -> Vec<&str> {
    let shows = content.families.iter().filter(|info| info.facts.iter().any(|draw| draw.on_panel));
    shows.map(|info| info.id.as_str()).collect()
}

#[test]
fn a_fault_that_is_asked_about_is_on_its_panel_and_no_other_is() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let mut panels = 0;
    for family in families(&content) {
        for seed in 0..seeds() {
            let card = deal(&world, family, seed).expect("a card");
            for recipe in scene::panels(&card, &content) {
                let marked = drawn(&recipe).mask().iter().any(|share| *share > 0.05);
                assert_eq!(marked, recipe.fault.is_some(), "{family} seed {seed}: {:?}", recipe.fault);
                panels += 1;
            }
        }
    }
    assert!(panels >= 6 * SEEDS, "{panels} panels");
}

#[test]
fn a_place_on_the_mask_is_right_and_one_far_from_it_is_wrong() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let (mut right, mut wrong) = (0, 0);
    for seed in 0..seeds() {
        let card = deal(&world, "panel-point", seed).expect("a card");
        assert_eq!(card.kind, Kind::Point);
        let recipe = scene::panels(&card, &content).remove(0);
        let panel = drawn(&recipe);
        let mark = |x_mm: f32, y_mm: f32| {
            grade(&card, &world, &Answer::Place(Place { x_mm, y_mm })).expect("a graded card").mark
        };
        let grid = panel.grid();
        let places = panel.mask().iter().enumerate().map(|(at, share)| {
            let place = |n: usize| (n as f32 + 0.5) * grid.scale;
            (place(at % grid.columns), place(at / grid.columns), *share)
        });
        let places: Vec<(f32, f32, f32)> = places.collect();
        let on: Vec<&(f32, f32, f32)> = places.iter().filter(|(_, _, share)| *share > 0.05).collect();
        let (x, y, _) = on[on.len() / 2];
        assert_eq!(mark(*x, *y), Mark::Right, "seed {seed}: {x} {y}");
        right += 1;
        // Far is twice the reach: nobody would call that pointing at it.
        let far =
            |x: f32, y: f32| on.iter().all(|(ox, oy, _)| (ox - x).hypot(oy - y) > 2.0 * scene::REACH_MM);
        if let Some((x, y, _)) = places.iter().step_by(97).find(|(x, y, _)| far(*x, *y)) {
            assert_eq!(mark(*x, *y), Mark::Wrong, "seed {seed}: {x} {y}");
            wrong += 1;
        }
        assert_eq!(solve(&card, &world).expect("a question").right, Answer::OnTheFault);
    }
    assert!(
        right > 0 && wrong * 4 >= right * 3,
        "{right} right, {wrong} wrong: a face full of fault is not asked about"
    );
}

#[test]
fn what_a_panel_says_in_words_names_neither_fault_nor_wood() {
    let content = content();
    let world = World { content: &content, sheet: &content.sheets[0] };
    let voice = Voice::new(&content, "en", Units::METRIC);
    for family in families(&content) {
        for seed in 0..500 {
            let card = deal(&world, family, seed).expect("a card");
            let right = voice.answer(family, &solve(&card, &world).expect("a question").right).to_lowercase();
            for number in 0..scene::panels(&card, &content).len() {
                for words in [voice.panel_words(&card, number), voice.cell_words(&card, number, 1.0)] {
                    assert!(!words.is_empty(), "{family} seed {seed}");
                    assert!(
                        !words.to_lowercase().contains(&right),
                        "{family} seed {seed}: `{words}` says `{right}`"
                    );
                }
            }
        }
    }
}
