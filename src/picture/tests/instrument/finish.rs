//! What each state of the work looks like.

use super::measure::{Board, lightness, linear, luminance, mean, middle, uneven};
use stepboard_picture::instrument::{
    Binding, Colour, Cover, Dye, Filled, Filler, Paint, PartKind, PartLook, Prepared, Seat, Shade, Sheen,
    Stain,
};

const SCALE: f32 = 1.0;
/// A difference in lightness L* that is seen side by side (common practice, no source), and one that nobody overlooks.
const SEEN: f32 = 1.0;
const PLAIN: f32 = 4.0;

fn bare() -> PartLook {
    PartLook { binding: Binding::None, ..PartLook::bare(PartKind::Plate) }
}

fn sealed() -> PartLook {
    PartLook { seal_um: 22.0, ..bare() }
}

fn clear(build: f32) -> PartLook {
    PartLook { colour: Some(Colour { paint: Paint::Clear(Dye::Amber), build, um: 20.0 }), ..sealed() }
}

fn solid(build: f32) -> PartLook {
    let paint = Paint::Solid([196, 60, 44]);
    PartLook { colour: Some(Colour { paint, build, um: 20.0 }), ..sealed() }
}

fn field(look: PartLook) -> Vec<[f32; 3]> {
    Board::new("mahogany", SCALE).look(look).field()
}

#[test]
fn stain_darkens_and_its_pores_stay_darker_still() {
    for dye in Dye::ALL {
        let stained = field(PartLook { stain: Some(Stain { dye, build: 0.6 }), ..bare() });
        let wood = field(bare());
        assert!(lightness(&stained) < lightness(&wood) - PLAIN, "{dye:?}");
        let darkest = |pixels: &[[f32; 3]]| {
            let mut light: Vec<f32> = pixels.iter().map(luminance).collect();
            light.sort_by(f32::total_cmp);
            mean(&light[..light.len() / 50])
        };
        assert!(darkest(&stained) < 0.8 * darkest(&wood), "{dye:?}");
    }
}

#[test]
fn damp_wood_is_darker_and_rough_wood_greyer() {
    let wood = field(bare());
    let damped = field(PartLook { prepared: Prepared::Damped, ..bare() });
    let rough = field(PartLook { prepared: Prepared::Rough, ..bare() });
    assert!(lightness(&damped) < lightness(&wood) - PLAIN);
    let red = |pixels: &[[f32; 3]]| {
        mean(&pixels.iter().map(|pixel| pixel[0]).collect::<Vec<_>>())
            / mean(&pixels.iter().map(|pixel| pixel[2]).collect::<Vec<_>>())
    };
    assert!(red(&rough) < 0.8 * red(&wood), "{} and {}", red(&rough), red(&wood));
}

#[test]
fn filler_is_a_paste_until_it_is_wiped_and_a_pale_haze_when_it_was_left() {
    let filler = |state| PartLook { filler: Some(Filler { colour: [60, 38, 24], state }), ..bare() };
    let [laid, hazed, wiped] = [Filled::Laid, Filled::Hazed, Filled::Wiped].map(|state| field(filler(state)));
    let wood = field(bare());
    assert!(lightness(&laid) < lightness(&wood) - 2.0 * PLAIN, "the flats are under it");
    assert!((lightness(&wiped) - lightness(&wood)).abs() < PLAIN, "the flats are clean");
    assert!(lightness(&hazed) > lightness(&wiped) + PLAIN, "haze is pale");
}

#[test]
fn a_washcoat_changes_less_than_a_seal_coat() {
    let at = |seal_um| lightness(&field(PartLook { seal_um, ..bare() }));
    let (wood, wash, seal) = (at(0.0), at(6.0), at(22.0));
    assert!(wash < wood - 0.5 * SEEN && seal < wash - SEEN, "{wood}, {wash}, {seal}");
}

#[test]
fn three_passes_are_deeper_than_one_and_each_is_seen() {
    let lights = [0.0, 1.0, 2.0, 3.0].map(|passes: f32| {
        let blue: Vec<f32> = field(clear(passes / 3.0)).iter().map(|pixel| pixel[2]).collect();
        lightness(&blue.iter().map(|part| [*part; 3]).collect::<Vec<_>>())
    });
    assert!(lights.windows(2).all(|pair| pair[1] < pair[0] - SEEN), "{lights:?}");
}

/// Beer and Lambert's law: twice the colour passes the square of the share that it passed once. Green, on pale wood; what
/// the film mirrors is the least light that a film without colour and black ground could send back, and taken off.
#[test]
fn colour_adds_by_optical_thickness() {
    let light = |build| {
        let pixels = Board::new("hard-maple", SCALE).look(clear(build)).field();
        mean(&pixels.iter().map(|pixel| pixel[1]).collect::<Vec<_>>())
    };
    let black = |pixels: Vec<[f32; 3]>| mean(&pixels.iter().map(|pixel| pixel[1]).collect::<Vec<_>>());
    let hidden = PartLook {
        colour: Some(Colour { paint: Paint::Solid([0, 0, 0]), build: 2.0, um: 20.0 }),
        ..sealed()
    };
    let mirrored = black(Board::new("hard-maple", SCALE).look(hidden).field());
    let [none, once, twice] = [0.001, 0.5, 1.0].map(|build| light(build) - mirrored);
    let (half, whole) = (once / none, twice / none);
    assert!((half * half / whole - 1.0).abs() < 0.03, "{half} squared is not {whole}");
}

#[test]
fn solid_colour_hides_the_grain_and_a_thin_pass_of_it_less() {
    let [none, thin, full] = [sealed(), solid(0.25), solid(1.0)].map(|look| uneven(&field(look)));
    assert!(full < 0.2 * none, "{full} against {none}");
    assert!(thin > 1.5 * full && thin < 0.95 * none, "{thin} between {full} and {none}");
}

#[test]
fn a_shaded_edge_is_dark_and_its_middle_clean() {
    let shade = Some(Shade { dye: Dye::Black, build: 1.0, reach: 40.0 });
    let [plain, shaded] =
        [clear(0.6), PartLook { shade, ..clear(0.6) }].map(|look| Board::new("mahogany", SCALE).look(look));
    let change = |from, to| lightness(&plain.ring(from, to)) - lightness(&shaded.ring(from, to));
    let rings: Vec<f32> = [(4.0, 12.0), (12.0, 20.0), (20.0, 28.0), (28.0, 36.0)]
        .into_iter()
        .map(|(from, to)| change(from, to))
        .collect();
    assert!(rings[0] > 3.0 * PLAIN, "{rings:?}");
    assert!(rings.windows(2).all(|pair| pair[0] > pair[1]), "it fades: {rings:?}");
    assert!(change(45.0, 200.0).abs() < 0.1, "the middle is as it was");
}

#[test]
fn a_scraped_binding_is_clean_a_covered_one_is_not_and_a_taped_one_is_tape() {
    let [scraped, covered, taped] = [Binding::Scraped, Binding::Covered, Binding::Taped]
        .map(|binding| Board::new("mahogany", SCALE).look(PartLook { binding, ..clear(1.0) }).ring(1.5, 3.2));
    assert!(lightness(&scraped) > lightness(&covered) + 2.0 * PLAIN);
    let blue =
        |pixels: &[[f32; 3]]| mean(&pixels.iter().map(|pixel| pixel[2] / pixel[0]).collect::<Vec<_>>());
    assert!(blue(&covered) < 0.5 * blue(&scraped), "amber takes the blue");
    assert!(blue(&taped) < 0.9 * blue(&scraped), "tape is yellower than binding, and is sprayed on");
}

#[test]
fn masks_hide_the_wood_and_the_seat_is_bare_after_them() {
    let hidden = |cover| uneven(&field(PartLook { cover, ..bare() }));
    let wood = uneven(&field(bare()));
    for cover in [Cover::Tape, Cover::Paper] {
        assert!(hidden(cover) < 0.6 * wood, "{cover:?}: {} against {wood}", hidden(cover));
    }
    let seat = |seat| {
        let board = Board::new("mahogany", SCALE).look(PartLook { seat, ..clear(1.0) });
        let (x, y) = board.part().seat_anchor().expect("a seat");
        let (columns, _) = board.drawing.size();
        let pixels = board.drawing.pixels().chunks(4).enumerate();
        let near = |place: usize| {
            let at = middle(place % columns, place / columns, SCALE);
            (at.0 - x).abs() < 30.0 && (at.1 - y).abs() < 8.0
        };
        pixels
            .filter(|(place, _)| near(*place))
            .map(|(_, pixel)| [linear(pixel[0]), linear(pixel[1]), linear(pixel[2])])
            .collect::<Vec<_>>()
    };
    let [none, taped, bare] = [Seat::None, Seat::Taped, Seat::Bare].map(|state| lightness(&seat(state)));
    assert!(bare > none + PLAIN && taped > bare + PLAIN, "{none}, {bare}, {taped}");
}

/// The steepest step of light from a pixel to the next on a face that shows no wood.
fn sharpest(look: PartLook) -> f32 {
    let board = Board::new("mahogany", SCALE).look(look);
    let (columns, _) = board.drawing.size();
    let light: Vec<f32> = board
        .drawing
        .pixels()
        .chunks(4)
        .map(|pixel| luminance(&[linear(pixel[0]), linear(pixel[1]), linear(pixel[2])]))
        .collect();
    let inner = |place: usize| {
        let (x, y) = middle(place % columns, place / columns, SCALE);
        (30.0..230.0).contains(&x) && (30.0..230.0).contains(&y)
    };
    (1..light.len())
        .filter(|place| inner(*place) && inner(place - 1))
        .map(|place| (light[place] - light[place - 1]).abs())
        .fold(0.0, f32::max)
}

#[test]
fn the_lamp_is_the_sharper_the_further_the_finish_has_come() {
    let clear = |sheen| PartLook { clear_um: 80.0, sheen, ..solid(2.0) };
    let [levelled, coloured, sprayed, buffed] =
        [clear(Sheen::Levelled), solid(2.0), clear(Sheen::Sprayed), clear(Sheen::Buffed)].map(sharpest);
    let told = format!("{levelled}, {coloured}, {sprayed}, {buffed}");
    assert!(coloured < sprayed && sprayed < buffed && levelled < sprayed, "{told}");
    assert!(buffed > 3.0 * levelled);
}

#[test]
fn a_levelled_face_is_greyer_than_a_buffed_one() {
    let face = |sheen| lightness(&field(PartLook { clear_um: 80.0, sheen, ..clear(1.0) }));
    assert!(face(Sheen::Levelled) > face(Sheen::Buffed) + PLAIN);
    assert!(face(Sheen::Scuffed) > face(Sheen::Buffed) + SEEN);
}
