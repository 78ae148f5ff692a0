//! What holds of every drawing.

use super::measure::{all, distance, front, grown, middle, plain, views, within, wood};
use stepboard_picture::instrument::{Colour, Drawing, Dye, Paint, PartKind, PartLook, Shape};

/// Millimetres a pixel: enough to tell parts.
const COARSE: f32 = 2.0;
/// A pixel that lies farther than this from every line is all of one part or of none, in pixels.
const CLEAR: f32 = 0.8;

#[test]
fn outside_the_outline_all_is_transparent_and_inside_nothing() {
    for view in views() {
        let name = format!("{:?} {:?}", view.shape, view.side);
        let drawing = grown(view, "mahogany", 1, COARSE);
        let looks = all(drawing.view(), plain(PartKind::Top));
        let drawing = drawing.paint(looks).finish();
        let (columns, rows) = drawing.size();
        assert_eq!(drawing.pixels().len(), 4 * columns * rows);
        let (mut out, mut on) = (0, 0);
        for (place, pixel) in drawing.pixels().chunks(4).enumerate() {
            let at = middle(place % columns, place / columns, COARSE);
            let parts = &drawing.view().parts;
            // Of a part with a hole the outer line alone: the inside of the body is seen through the hole.
            let outer = |n: usize| match parts[n].rosette {
                Some(_) => &parts[n].paths[..1],
                None => &parts[n].paths[..],
            };
            if (0..parts.len()).any(|n| distance(outer(n), at) < CLEAR * COARSE) {
                continue;
            }
            if (0..parts.len()).any(|n| within(outer(n), at)) {
                assert_eq!(pixel[3], u8::MAX, "{name}: {at:?} lies on a part");
                on += 1;
            } else {
                assert_eq!(pixel[3], 0, "{name}: {at:?} lies outside");
                out += 1;
            }
        }
        assert!(on > 500 && out > 500, "{name}: {on} pixels on it, {out} outside");
    }
}

#[test]
fn edges_are_smooth() {
    let drawing = grown(front(Shape::Lute), "mahogany", 1, COARSE);
    let looks = all(drawing.view(), plain(PartKind::Top));
    let drawing = drawing.paint(looks).finish();
    let between = drawing.pixels().chunks(4).filter(|pixel| (20..236).contains(&pixel[3])).count();
    assert!(between > 200, "{between} pixels are partly covered");
}

#[test]
fn where_two_parts_meet_nothing_is_seen_through() {
    for shape in [Shape::Lute, Shape::Lyre, Shape::Box] {
        let drawing = grown(front(shape), "mahogany", 1, 1.5);
        let looks = all(drawing.view(), plain(PartKind::Top));
        let drawing = drawing.paint(looks).finish();
        let (columns, _) = drawing.size();
        let mut met = 0;
        for (place, pixel) in drawing.pixels().chunks(4).enumerate() {
            let at = middle(place % columns, place / columns, 1.5);
            let parts = &drawing.view().parts;
            let near = parts.iter().filter(|part| distance(&part.paths, at) < 0.8);
            // Away from the outer line: all round it lies one part or the other.
            let round = [(4.0, 0.0), (-4.0, 0.0), (0.0, 4.0), (0.0, -4.0)];
            let inner = round
                .iter()
                .all(|(dx, dy)| parts.iter().any(|part| within(&part.paths, (at.0 + dx, at.1 + dy))));
            if near.count() >= 2 && inner {
                met += 1;
                assert!(pixel[3] > 250, "{shape:?}: {} at {at:?}", pixel[3]);
            }
        }
        assert!(met > 10, "{shape:?}: {met} places where parts meet");
    }
}

#[test]
fn the_same_seed_is_the_same_picture_and_another_one_is_not() {
    let draw = |seed| {
        let drawing = grown(front(Shape::Lyre), "mahogany", seed, COARSE);
        let looks = all(drawing.view(), plain(PartKind::Top));
        drawing.paint(looks).finish()
    };
    assert_eq!(draw(4).pixels(), draw(4).pixels());
    assert_ne!(draw(4).pixels(), draw(5).pixels());
}

#[test]
fn in_turns_as_at_once_and_again_as_before() {
    let view = front(Shape::Lute);
    let woods: Vec<_> = view.parts.iter().map(|part| wood(part.kind, "mahogany", 2)).collect();
    let bare = all(&view, plain(PartKind::Top));
    let amber = Colour { paint: Paint::Clear(Dye::Amber), build: 1.0, um: 20.0 };
    let mut coloured = bare.clone();
    coloured[0] = PartLook { colour: Some(amber), ..coloured[0] };
    let at_once =
        Drawing::begin(view.clone(), woods.clone(), COARSE).finish().paint(coloured.clone()).finish();
    let mut turns = Drawing::begin(view, woods, COARSE);
    let mut count = 0;
    while !turns.step(1) {
        count += 1;
    }
    assert!(count > 100, "{count} turns");
    let drawing = turns.finish().paint(bare.clone()).finish();
    let first = drawing.pixels().to_vec();
    let drawing = drawing.paint(coloured).finish();
    assert_eq!(drawing.pixels(), at_once.pixels());
    assert_ne!(drawing.pixels(), first, "colour is seen");
    assert_eq!(drawing.paint(bare).finish().pixels(), first, "and gone again");
}

#[test]
fn a_look_changes_no_part_but_its_own() {
    let drawing = grown(front(Shape::Lyre), "mahogany", 2, COARSE);
    let bare = all(drawing.view(), plain(PartKind::Top));
    let drawing = drawing.paint(bare.clone()).finish();
    let before = drawing.pixels().to_vec();
    let amber = Colour { paint: Paint::Clear(Dye::Cherry), build: 1.0, um: 20.0 };
    let yoke = PartLook { colour: Some(amber), ..PartLook::bare(PartKind::Yoke) };
    let drawing = drawing.paint(vec![yoke]).finish();
    let (columns, _) = drawing.size();
    let changed = before.chunks(4).zip(drawing.pixels().chunks(4)).enumerate();
    let (mut on, mut off) = (0, 0);
    for (place, _) in changed.filter(|(_, (a, b))| a != b) {
        let at = middle(place % columns, place / columns, COARSE);
        let part = drawing.view().parts.iter().find(|part| part.kind == PartKind::Yoke).expect("a yoke");
        if within(&part.paths, at) || distance(&part.paths, at) < COARSE { on += 1 } else { off += 1 }
    }
    assert!(on > 500 && off == 0, "{on} pixels on the yoke and {off} elsewhere have changed");
}

#[test]
fn a_part_without_wood_is_left_out() {
    let view = front(Shape::Lute);
    let woods = vec![wood(PartKind::Top, "mahogany", 2)];
    let looks = all(&view, plain(PartKind::Top));
    let drawing = Drawing::begin(view, woods, COARSE).finish().paint(looks).finish();
    let (columns, _) = drawing.size();
    let board = drawing.view().parts.iter().find(|part| part.kind == PartKind::Fingerboard).expect("a board");
    let mut seen = 0;
    for (place, pixel) in drawing.pixels().chunks(4).enumerate() {
        let at = middle(place % columns, place / columns, COARSE);
        if within(&board.paths, at) && distance(&board.paths, at) > COARSE {
            assert_eq!(pixel[3], 0, "{at:?}");
            seen += 1;
        }
    }
    assert!(seen > 100, "{seen} pixels");
}
