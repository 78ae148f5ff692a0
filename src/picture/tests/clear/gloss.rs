//! Gloss falls with roughness as optics has it: the edge of a mirrored tube is as wide as twice the roughness times the way to
//! the ceiling, and never narrower than what the eye and the lamp leave.

use crate::measure::{dark, draw, sound};
use stepboard_picture::{Finish, Lamp, LampKind, Panel};

/// A tube that runs across the grain.
const TUBE: Lamp = Lamp { kind: LampKind::Tubes, x: 60.0, y: 45.0, turn: 90.0 };
const AWAY: Lamp = Lamp { x: 600.0, ..TUBE };
/// Millimetres a pixel.
const FINE: f32 = 0.25;
/// The bench: from the panel to the ceiling, mm, and how many times larger a length is on the ceiling than on the panel, from
/// a camera 400 mm up and a ceiling at 1,300 mm.
const REACH: f32 = 1_450.0;
const LARGER: f32 = 1.0 + 1_300.0 / 400.0;
/// A normal curve passes a quarter and three quarters of an edge within so many deviations.
const QUARTERS: f32 = 1.349;

/// Linear light of a byte: the screen's coding undone (IEC 61966-2-1).
fn linear(byte: u8) -> f32 {
    let share = f32::from(byte) / 255.0;
    if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
}

/// Median width of the outer edge of a mirrored tube, mm, from a quarter of its light to three quarters.
fn edge(panel: &Panel) -> f32 {
    let light = |lamp: Lamp| {
        let mut pixels = Vec::new();
        panel.light(lamp, &mut pixels);
        pixels.chunks_exact(4).map(|pixel| linear(pixel[2])).collect::<Vec<f32>>()
    };
    let (with, without) = (light(TUBE), light(AWAY));
    let columns = panel.grid().columns;
    let width = |row: usize| {
        let line: Vec<f32> =
            (0..columns).map(|n| with[row * columns + n] - without[row * columns + n]).collect();
        let most = line.iter().copied().fold(0.0, f32::max);
        let pass = |share: f32| {
            let n = line.iter().position(|value| *value > share * most).unwrap_or(0).max(1);
            let step = (share * most - line[n - 1]) / (line[n] - line[n - 1]);
            (n as f32 - 1.0 + step) * FINE
        };
        pass(0.75) - pass(0.25)
    };
    let mut widths: Vec<f32> = (40..panel.grid().rows - 40).map(width).collect();
    widths.sort_by(f32::total_cmp);
    widths[widths.len() / 2]
}

#[test]
fn a_mirrored_edge_is_as_wide_as_the_film_is_rough() {
    let measured = [Finish::Buffed, Finish::Cleared, Finish::Coloured].map(|finish| {
        let panel = draw(&sound(dark(), finish, 5), FINE);
        let rough = panel.rough().iter().sum::<f32>() / panel.rough().len() as f32;
        (rough, edge(&panel))
    });
    for pair in measured.windows(2) {
        let [(smooth, narrow), (rough, wide)] = pair else { continue };
        assert!(rough > smooth && *wide > 1.15 * narrow, "{measured:?}");
    }
    // Where the edge stands by itself its width is what the rule says.
    for (rough, width) in measured.into_iter().take(2) {
        let blur = (4.0_f32.powi(2) + (2.0 * rough * REACH).powi(2)).sqrt() * QUARTERS / LARGER;
        assert!((0.6..1.5).contains(&(width / blur)), "rough {rough}: {width} mm, by the rule {blur} mm");
    }
}
