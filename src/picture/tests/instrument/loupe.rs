//! The panel that shows a part near.

use super::measure::{linear, mean, wood};
use stepboard_picture::instrument::{
    Colour, Dye, Filled, Filler, Paint, PartKind, PartLook, Shade, Sheen, Stain,
};
use stepboard_picture::{Fault, Finish, Grid, Lamp, LampKind, Panel, Severity};

/// A difference in a colour, of 1, that nobody overlooks side by side (common practice, no source).
const PLAIN: f32 = 0.03;

fn whole() -> PartLook {
    PartLook {
        stain: Some(Stain { dye: Dye::Tobacco, build: 0.6 }),
        filler: Some(Filler { colour: [60, 38, 24], state: Filled::Wiped }),
        seal_um: 22.0,
        colour: Some(Colour { paint: Paint::Clear(Dye::Cherry), build: 1.0, um: 18.0 }),
        clear_um: 90.0,
        ..PartLook::bare(PartKind::Top)
    }
}

#[test]
fn the_panel_near_a_fault_is_finished_as_the_part_is() {
    let mahogany = wood(PartKind::Top, "mahogany", 1);
    let near = |look: PartLook| look.near(&mahogany, Some((Fault::FishEye, Severity::Plain)));
    let finish = |look: PartLook| near(look).finish;
    assert_eq!(finish(PartLook::bare(PartKind::Top)), Finish::Bare);
    assert_eq!(finish(PartLook { colour: None, clear_um: 0.0, ..whole() }), Finish::Sealed);
    assert_eq!(finish(PartLook { clear_um: 0.0, ..whole() }), Finish::Coloured);
    assert_eq!(finish(whole()), Finish::Cleared);
    assert_eq!(finish(PartLook { sheen: Sheen::Levelled, ..whole() }), Finish::Rubbed);
    assert_eq!(finish(PartLook { sheen: Sheen::Buffed, ..whole() }), Finish::Buffed);
    let recipe = near(whole());
    assert_eq!(recipe.fault, Some((Fault::FishEye, Severity::Plain)));
    assert_eq!((recipe.filler, recipe.opaque), (Some([60, 38, 24]), None));
    let solid = Colour { paint: Paint::Solid([1, 2, 3]), build: 1.0, um: 18.0 };
    assert_eq!(near(PartLook { colour: Some(solid), ..whole() }).opaque, Some([1, 2, 3]));
}

/// Mean linear light at the left edge of the panel near a part.
fn edge(look: PartLook) -> [f32; 3] {
    const WIDE: usize = 6;
    let grid = Grid::covering(120.0, 90.0, 1.0);
    let mut pixels = Vec::new();
    let lamp = Lamp { kind: LampKind::Point, ..Lamp::OVERHEAD };
    Panel::draw(look.near(&wood(PartKind::Top, "hard-maple", 1), None), grid).light(lamp, &mut pixels);
    let rows = pixels.chunks(4 * grid.columns);
    let at_edge: Vec<&[u8]> = rows.flat_map(|row| row.chunks(4).take(WIDE)).collect();
    [0, 1, 2].map(|part| mean(&at_edge.iter().map(|pixel| linear(pixel[part])).collect::<Vec<_>>()))
}

/// Each dye is told from each other, in the wood, in the film and at the edge.
#[test]
fn dyes_are_told_apart_near_as_on_the_whole() {
    let bare = PartLook::bare(PartKind::Top);
    let sealed = PartLook { seal_um: 22.0, clear_um: 60.0, ..bare };
    let stained = |dye| PartLook { stain: Some(Stain { dye, build: 0.6 }), ..bare };
    let coloured =
        |dye| PartLook { colour: Some(Colour { paint: Paint::Clear(dye), build: 1.0, um: 20.0 }), ..sealed };
    let shaded = |dye| PartLook { shade: Some(Shade { dye, build: 1.0, reach: 40.0 }), ..sealed };
    let states: [&dyn Fn(Dye) -> PartLook; 3] = [&stained, &coloured, &shaded];
    for state in states {
        let seen: Vec<[f32; 3]> = Dye::ALL.iter().map(|dye| edge(state(*dye))).collect();
        for (place, one) in seen.iter().enumerate() {
            for other in &seen[place + 1..] {
                let apart = one.iter().zip(other).map(|(a, b)| (a - b).abs()).fold(0.0, f32::max);
                assert!(apart > PLAIN, "{one:?} and {other:?}");
            }
        }
    }
}
