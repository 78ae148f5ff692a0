//! The lines of the parts.

use super::measure::{distance, views, within};
use stepboard_picture::Fault;
use stepboard_picture::instrument::{Acts, Part, PartKind, Point, Shape, Side, View};

/// From one place that is looked at to the next, mm.
const NET: f32 = 3.0;
/// Places nearer to a line than this are not asked on which side of it they lie, mm.
const ON_LINE: f32 = 0.2;

fn net(view: &View) -> Vec<Point> {
    let count = |length: f32| (1..).take_while(|n: &u16| f32::from(*n) * NET < length).count() as u16;
    let (columns, rows) = (count(view.size.0), count(view.size.1));
    (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (f32::from(column) * NET, f32::from(row) * NET)))
        .collect()
}

fn named(view: &View, part: &Part) -> String {
    format!("{} {}, {}", view.shape.slug(), view.side.slug(), part.kind.slug())
}

#[test]
fn every_shape_has_a_front_and_a_back() {
    for shape in Shape::ALL {
        for side in [Side::Front, Side::Back] {
            let view = View::of(shape, side).expect("a front and a back");
            assert!(!view.parts.is_empty(), "{shape:?} {side:?}");
        }
    }
}

#[test]
fn words_of_tickets_find_their_parts() {
    let called = |shape, side, slug: &str| View::of(shape, side).expect("that side").called(slug);
    assert_eq!(called(Shape::Lute, Side::Front, "top"), [PartKind::Top]);
    assert_eq!(called(Shape::Lute, Side::Back, "body"), [PartKind::Back]);
    assert_eq!(called(Shape::Lute, Side::Edge, "sides"), [PartKind::Sides]);
    assert_eq!(called(Shape::Box, Side::Front, "box"), [PartKind::Top, PartKind::Sides]);
    assert_eq!(called(Shape::Plate, Side::Back, "plate"), [PartKind::Plate]);
    assert_eq!(called(Shape::Lyre, Side::Front, "frame"), [PartKind::Top, PartKind::Arms, PartKind::Yoke]);
    assert!(called(Shape::Lute, Side::Front, "back").is_empty());
}

#[test]
fn no_line_leaves_its_view() {
    for view in views() {
        for part in &view.parts {
            let lines = part.paths.iter().chain(&part.edge).chain(&part.seat);
            for (x, y) in lines.flat_map(|path| path.points()) {
                let inside = (0.0..=view.size.0).contains(x) && (0.0..=view.size.1).contains(y);
                assert!(inside, "{}: {x}, {y}", named(&view, part));
            }
        }
    }
}

#[test]
fn no_part_lies_over_another() {
    for view in views() {
        for at in net(&view) {
            let clear = view.parts.iter().all(|part| distance(&part.paths, at) > ON_LINE);
            let on: Vec<_> = view.parts.iter().filter(|part| within(&part.paths, at)).collect();
            assert!(!clear || on.len() < 2, "{} and {} at {at:?}", named(&view, on[0]), named(&view, on[1]));
        }
    }
}

#[test]
fn a_touch_is_told_as_the_lines_are_drawn() {
    for view in views() {
        for part in &view.parts {
            for at in net(&view).into_iter().filter(|at| distance(&part.paths, *at) > ON_LINE) {
                assert_eq!(part.contains(at), within(&part.paths, at), "{} at {at:?}", named(&view, part));
            }
        }
    }
}

/// A place for a leader line is deep in its part: no other place of the net is much deeper.
#[test]
fn leader_lines_end_where_there_is_most_room() {
    for view in views() {
        for part in &view.parts {
            let lines: Vec<_> = part.paths.iter().chain(&part.seat).cloned().collect();
            let free = |at: Point| within(&part.paths, at) && !part.seat.iter().any(|seat| seat.contains(at));
            let anchor = part.anchor();
            assert!(free(anchor), "{}: {anchor:?}", named(&view, part));
            let room = distance(&lines, anchor);
            let most = net(&view).into_iter().filter(|at| free(*at)).map(|at| distance(&lines, at));
            let most = most.fold(0.0, f32::max);
            assert!(room > most - 4.0, "{}: {room} mm, elsewhere {most}", named(&view, part));
        }
    }
}

#[test]
fn binding_and_seat_are_pointed_at_where_they_are() {
    let mut seen = 0;
    for view in views() {
        for part in &view.parts {
            if let (Some(at), Some(wide)) = (part.binding_anchor(), part.binding) {
                let far = distance(&part.edge, at);
                assert!(within(&part.edge, at) && far < wide, "{}: {far} mm", named(&view, part));
                seen += 1;
            }
            if let (Some(at), Some(seat)) = (part.seat_anchor(), &part.seat) {
                assert!(within(core::slice::from_ref(seat), at), "{}: {at:?}", named(&view, part));
                seen += 1;
            }
        }
    }
    assert!(seen > 8, "{seen} places");
}

/// The net that contours are taken from rounds corners off: so much they may be off, mm.
const CONTOUR_OFF: f32 = 2.0;

#[test]
fn a_dotted_line_keeps_its_distance_and_its_part() {
    const FAR: f32 = 30.0;
    for view in views() {
        for part in &view.parts {
            for (acts, far) in [(Acts::Edge(FAR), FAR), (Acts::Binding, part.binding.unwrap_or(0.0))] {
                for at in part.acts(acts).iter().flat_map(|line| line.points().to_vec()) {
                    assert!(within(&part.paths, at), "{}: {at:?}", named(&view, part));
                    let (edge, own) = (distance(&part.edge, at), distance(&part.paths, at));
                    let right = (edge - far).abs() < CONTOUR_OFF || own < CONTOUR_OFF + 1.5;
                    assert!(right, "{}: {edge} mm from the edge at {at:?}", named(&view, part));
                }
            }
        }
    }
    let lute = View::of(Shape::Lute, Side::Front).expect("a lute");
    assert_eq!(lute.parts[0].acts(Acts::Edge(FAR)).len(), 1, "the line to which a top is shaded is one");
    assert_eq!(lute.parts[0].acts(Acts::Seat).len(), 1, "one seat");
}

#[test]
fn faults_lie_on_their_part_where_they_belong() {
    /// Faults of an edge lie so near to it, and what follows tape so near to the seat, mm.
    const AT_EDGE: f32 = 14.0;
    const AT_SEAT: f32 = 3.0;
    for view in views().into_iter().filter(|view| view.side == Side::Front) {
        for part in &view.parts {
            for (seed, fault) in (0..).zip(Fault::ALL) {
                let at = part.fault_at(*fault, seed);
                assert!(within(&part.paths, at), "{}: {fault:?} at {at:?}", named(&view, part));
                assert_eq!(at, part.fault_at(*fault, seed), "the same seed, the same place");
                if *fault == Fault::FatEdge && part.binding.is_some() {
                    assert!(distance(&part.edge, at) < AT_EDGE, "{}: {at:?}", named(&view, part));
                }
                if let (Fault::TapeBleed, Some(seat)) = (fault, &part.seat) {
                    let far = distance(core::slice::from_ref(seat), at);
                    assert!(far < AT_SEAT, "{}: {far} mm from the seat", named(&view, part));
                }
            }
        }
    }
    let lute = View::of(Shape::Lute, Side::Front).expect("a lute");
    let places: Vec<_> = (0..6).map(|seed| lute.parts[0].fault_at(Fault::FishEye, seed)).collect();
    assert!(places.windows(2).all(|pair| pair[0] != pair[1]), "another seed, another place: {places:?}");
}
