//! A window on a panel shows what the panel shows there: a loupe draws nothing new, only finer.

use stepboard_picture::{Fault, Finish, Grid, Growth, Lamp, Panel, Pores, Recipe, Severity, Species};

const WIDTH: f32 = 120.0;
const HEIGHT: f32 = 90.0;
/// Millimetres a pixel.
const SCALE: f32 = 0.5;
/// The window: its middle, mm, its side and its upper left corner, pixels.
const AT: (f32, f32) = (70.0, 40.0);
const SIDE: usize = 60;
const LEFT: usize = 110;
const TOP: usize = 50;
/// What is blurred is cut off at the edge of a window, pixels.
const EDGE: usize = 6;
/// Difference on the mean that no eye sees, of 255.
const UNSEEN: f32 = 1.0;

fn wood() -> Species {
    let pores = Pores {
        count: 25.0,
        stand: Growth::Diffuse,
        length: 3.0,
        length_spread: 0.6,
        width: 0.16,
        width_spread: 0.04,
    };
    Species {
        base: [170, 110, 79],
        early: [146, 88, 60],
        pore: [70, 33, 20],
        contrast: 0.35,
        streak: 0.08,
        fine: 0.07,
        pores: vec![pores],
        telegraphs: true,
        ribbon: 0.45,
        ..Species::plain()
    }
}

fn lit(recipe: &Recipe, grid: Grid) -> Vec<u8> {
    let mut pixels = Vec::new();
    Panel::draw(recipe.clone(), grid).light(Lamp::OVERHEAD, &mut pixels);
    pixels
}

/// Mean difference of a panel and a window on it, which is cut `finer` times as fine.
fn difference(recipe: &Recipe, fineness: u8) -> f32 {
    let grid = Grid::covering(WIDTH, HEIGHT, SCALE);
    let (finer, share) = (usize::from(fineness), f32::from(fineness));
    let side = SIDE * finer;
    let whole = lit(recipe, grid);
    let window = lit(recipe, grid.window(AT, side, SCALE / share));
    let (mut sum, mut count) = (0.0, 0.0);
    for row in EDGE..SIDE - EDGE {
        for column in EDGE..SIDE - EDGE {
            for part in 0..3 {
                let there = f32::from(whole[4 * ((TOP + row) * grid.columns + LEFT + column) + part]);
                let fine = (0..finer * finer).map(|n| {
                    let (x, y) = (column * finer + n % finer, row * finer + n / finer);
                    f32::from(window[4 * (y * side + x) + part])
                });
                sum += (fine.sum::<f32>() / (share * share) - there).abs();
                count += 1.0;
            }
        }
    }
    sum / count
}

#[test]
fn a_window_shows_what_the_panel_shows() {
    for finish in [Finish::Bare, Finish::Sealed, Finish::Buffed] {
        let plain = Recipe { finish, amber: 0.35, ..Recipe::bare(wood(), 3) };
        assert!(difference(&plain, 1) < UNSEEN, "{finish:?}: {}", difference(&plain, 1));
    }
}

#[test]
fn every_fault_lies_in_a_window_where_it_lies_on_the_panel() {
    for &fault in Fault::ALL {
        let fault_of = Some((fault, Severity::Severe));
        let spoiled = Recipe { finish: Finish::Cleared, fault: fault_of, ..Recipe::bare(wood(), 3) };
        assert!(difference(&spoiled, 1) < UNSEEN, "{}: {}", fault.slug(), difference(&spoiled, 1));
    }
}

#[test]
fn a_finer_window_shows_the_same_with_more_in_it() {
    /// Pores and edges of the lamp are sharper there, so that single pixels differ.
    const SHARPER: f32 = 8.0;
    let recipe = Recipe { finish: Finish::Cleared, ..Recipe::bare(wood(), 3) };
    assert!(difference(&recipe, 4) < SHARPER, "{}", difference(&recipe, 4));
}
