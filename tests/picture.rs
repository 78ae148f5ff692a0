//! The drawn step board: the same bytes for the same bands, and a surface of its own for each of them. What it looks
//! like is for the eye; these are the laws that hold whatever the tuning.

use stepboard::picture::{Band, Surface, draw};

const WIDTH: u32 = 220;
const HEIGHT: u32 = 320;
const PIXEL: usize = 4;

fn board(finished: f32, once: f32) -> Vec<u8> {
    let bands: Vec<Band> = Surface::ALL.map(|surface| Band { surface, finished, once }).to_vec();
    draw(WIDTH, HEIGHT, &bands)
}

/// Mean of red, green and blue over the part of a band between two shares of its length.
fn mean(pixels: &[u8], band: usize, from: f32, to: f32) -> [f32; 3] {
    let width = usize::try_from(WIDTH).expect("small");
    let tall = usize::try_from(HEIGHT).expect("small") / Surface::ALL.len();
    let mut sum = [0.0; 3];
    let mut count = 0.0;
    for row in pixels.chunks(width * PIXEL).skip(band * tall + 2).take(tall - 4) {
        for (column, pixel) in row.chunks(PIXEL).enumerate() {
            let share = column as f32 / width as f32;
            if (from..to).contains(&share) {
                count += 1.0;
                for (part, value) in sum.iter_mut().zip(pixel) {
                    *part += f32::from(*value);
                }
            }
        }
    }
    sum.map(|part| part / count)
}

fn brightness([red, green, blue]: [f32; 3]) -> f32 {
    red + green + blue
}

#[test]
fn a_picture_has_its_size_and_no_holes() {
    for (width, height) in [(1, 1), (3, 100), (434, 642), (1, 7), (0, 5), (5, 0)] {
        let pixels = draw(width, height, &[Band { surface: Surface::Buffed, finished: 0.5, once: 0.7 }]);
        assert_eq!(pixels.len(), usize::try_from(width * height).expect("small") * PIXEL);
        assert!(pixels.chunks(PIXEL).all(|pixel| pixel[3] == u8::MAX));
    }
    assert_eq!(draw(20, 20, &[]).len(), 20 * 20 * PIXEL);
}

#[test]
fn the_same_bands_give_the_same_bytes() {
    assert_eq!(board(0.6, 0.8), board(0.6, 0.8));
}

#[test]
fn shares_outside_the_board_count_as_its_ends() {
    assert_eq!(board(-3.0, f32::NAN), board(0.0, 0.0));
    assert_eq!(board(9.0, 0.0), board(1.0, 1.0));
}

#[test]
fn every_surface_can_be_told_from_the_one_before_it() {
    /// A difference that an eye beside the board sees, in steps of 0 to 255, summed over the three colours.
    const SEEN: f32 = 4.0;
    let pixels = board(1.0, 1.0);
    for band in 1..Surface::ALL.len() {
        // Somewhere along the band: the change may be at the end, under the lamp or all over.
        let difference = (0..20).map(|part| {
            let (from, to) = (part as f32 / 20.0, (part + 1) as f32 / 20.0);
            let (before, now) = (mean(&pixels, band - 1, from, to), mean(&pixels, band, from, to));
            before.iter().zip(now).map(|(a, b)| (a - b).abs()).sum::<f32>()
        });
        let most = difference.fold(0.0, f32::max);
        assert!(most > SEEN, "{:?}: {most}", Surface::ALL[band]);
    }
}

#[test]
fn what_is_not_finished_is_the_same_on_every_band() {
    let pixels = board(0.3, 0.3);
    for band in 1..Surface::ALL.len() {
        let (first, here) = (mean(&pixels, 0, 0.5, 1.0), mean(&pixels, band, 0.5, 1.0));
        for (a, b) in first.iter().zip(here) {
            assert!((a - b).abs() < 12.0, "{:?}: {first:?} {here:?}", Surface::ALL[band]);
        }
    }
}

#[test]
fn the_lamp_stands_in_the_film_and_gets_sharper() {
    let pixels = board(1.0, 1.0);
    // The steepest step from dark to light along a band.
    let steepest = |band: usize| {
        let columns: Vec<f32> = (20..100)
            .map(|column| {
                brightness(mean(&pixels, band, column as f32 / 220.0, (column as f32 + 1.0) / 220.0))
            })
            .collect();
        columns.windows(3).map(|pair| (pair[2] - pair[0]).abs()).fold(0.0, f32::max)
    };
    let at = |surface: Surface| steepest(Surface::ALL.iter().position(|s| *s == surface).expect("listed"));
    assert!(at(Surface::Sealed) < at(Surface::Cleared));
    assert!(at(Surface::Cleared) < at(Surface::Cured));
    assert!(at(Surface::Cured) < at(Surface::Buffed));
}

#[test]
fn a_finish_that_slipped_lies_between_finished_and_sawn() {
    let (held, bare, slipped) = (board(1.0, 1.0), board(0.0, 0.0), board(0.0, 1.0));
    let sanded = |pixels: &[u8]| brightness(mean(pixels, 0, 0.6, 0.9));
    assert!(sanded(&held) > sanded(&slipped) && sanded(&slipped) > sanded(&bare));
}
