//! Gloss of computed panels, measured from their pixels, beside gloss as the rules of optics reckon it for the same roughness.
//!
//! The roughness that dulls a film is finer than a pixel: no height of a picture holds it, so the panel is asked for
//! it. What is checked is how the mirrored bar fades from film to film, in pixels; not how rough a film of some name is.

mod support;

use stepboard::picture::{Finish, Grid, Lamp, Panel, Recipe, Species};
use stepboard::quantity::Micrometres;
use stepboard::rules::optics::gloss::{self, GlossAngle};
use stepboard::rules::optics::roughness::kept;
use stepboard::rules::term::Term;
use support::base;

/// Films from glossy to dull.
const FILMS: [Finish; 5] =
    [Finish::Buffed, Finish::Cleared, Finish::Rubbed, Finish::Coloured, Finish::Sealed];
/// The lamp far aside: only the window is mirrored.
const ASIDE: Lamp = Lamp { x: 600.0, ..Lamp::OVERHEAD };
/// Millimetres a pixel.
const FINE: f32 = 0.25;
/// How far the two may differ, of a share of 0 to 1. The rule falls by a normal curve in roughness, since it drops all that
/// leaves the mirror direction; an image has some of that light still and fades by the width of its blur. Both begin at one
/// and end at nothing, and between, the two curves at their nearest are about 0.1 apart.
const TOLERANCE: f64 = 0.15;

/// A dark, even wood, so that the film is what is seen.
fn panel(finish: Finish) -> Panel {
    const DARK: [u8; 3] = [60, 36, 28];
    let species = Species { base: DARK, early: DARK, pore: DARK, streak: 0.0, fine: 0.0, ..Species::plain() };
    let whole = Grid::covering(120.0, 90.0, FINE);
    // The left half, where the window is mirrored.
    Panel::draw(Recipe { finish, ..Recipe::bare(species, 5) }, whole.window((40.0, 60.0), 240, FINE))
}

/// Linear light of a byte: the screen's coding undone (IEC 61966-2-1).
fn linear(byte: u8) -> f64 {
    let share = f64::from(byte) / 255.0;
    if share <= 0.04045 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
}

/// How dark the upright bar of the mirrored window is against its panes, 0 to 1: the middle of strips 2 mm high.
fn bar_seen(panel: &Panel) -> f64 {
    const STRIP: usize = 8;
    let columns = panel.grid().columns;
    let mut pixels = Vec::new();
    panel.light(ASIDE, &mut pixels);
    let light: Vec<f64> = pixels.chunks_exact(4).map(|pixel| linear(pixel[2])).collect();
    let line = |first: usize| -> Vec<f64> {
        let mean = |column: usize| {
            (first..first + STRIP).map(|row| light[row * columns + column]).sum::<f64>() / STRIP as f64
        };
        (0..columns).map(mean).collect()
    };
    let mean = |part: &[f64]| part.iter().sum::<f64>() / part.len() as f64;
    // Pixels: the bar stands somewhere in the middle of the window, 6 to 9 mm from it are panes, at the right there is none.
    let seen = |first: usize| {
        let line = line(first);
        let (bar, least) = (40..80)
            .map(|column| (column, mean(&line[column - 1..column + 2])))
            .min_by(|a, b| a.1.total_cmp(&b.1))
            .expect("columns");
        let panes = f64::midpoint(mean(&line[bar - 36..bar - 24]), mean(&line[bar + 24..bar + 36]));
        let dark = mean(&line[columns - 24..]);
        (panes - least) / (panes - dark)
    };
    // Between the two bars that lie across.
    let mut all: Vec<f64> = (80..200).step_by(STRIP).map(seen).collect();
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

/// Root mean square height of a film, micrometres, whose fine roughness has a slope and a length: for a normal autocorrelation
/// the slope is the height over the length, times the root of two.
fn height(slope: f64, length_um: f64) -> Micrometres {
    Micrometres::new(slope * length_um / core::f64::consts::SQRT_2).expect("a height")
}

fn slope(panel: &Panel) -> f64 {
    panel.rough().iter().map(|rough| f64::from(*rough)).sum::<f64>() / panel.rough().len() as f64
}

/// Length of the fine roughness along the film, micrometres, the same for all films: the rule speaks of heights, a picture of
/// slopes, and no source gives the length that stands between them for a sprayed film. Our choice, by eye: longer than light
/// waves, shorter than a pixel. It is fixed and not fitted: five films must fade by the rule with this one number.
const LENGTH_UM: f64 = 25.0;

#[test]
fn gloss_falls_with_roughness_as_the_rule_has_it() {
    let measured: Vec<(f64, f64)> = FILMS
        .iter()
        .map(|finish| {
            let panel = panel(*finish);
            (slope(&panel), bar_seen(&panel))
        })
        .collect();
    let index = gloss::clear_index(&base());
    // The picture and the rule put the films in one order, at every angle.
    for angle in GlossAngle::ALL {
        let reading = |slope: f64| {
            gloss::ceiling(index, *angle).answer * kept(height(slope, LENGTH_UM), *angle).answer.get()
        };
        for pair in measured.windows(2) {
            let [(smooth, sharp), (rough, dull)] = pair else { continue };
            assert!(rough > smooth && reading(*rough) <= reading(*smooth), "{angle:?}: {measured:?}");
            assert!(*dull < 0.9 * sharp, "{measured:?}");
        }
    }
    // The share of the bar that the sharpest film shows is what the lamp and the eye leave; the others fade from there.
    let ruled = |slope: f64| kept(height(slope, LENGTH_UM), GlossAngle::Sixty).answer.get();
    let (smoothest, sharpest) = measured[0];
    for (slope, seen) in &measured {
        let (picture, rule) = (seen / sharpest, ruled(*slope) / ruled(smoothest));
        assert!((picture - rule).abs() < TOLERANCE, "slope {slope}: {picture} seen, {rule} by the rule");
    }
}
