//! How the work is drawn: what is seen is what lies there, and nothing that is hidden.

use crate::steps::{begin, go, rest, up_to_work};
use crate::support::content;
use stepboard::picture::Growth;
use stepboard::picture::instrument::{Binding, Paint, PartKind, PartLook, Prepared, Sheen, Side, Trim};
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::decision::Decision;
use stepboard::walk::look::{looks, part_of, views, woods};
use stepboard::walk::{Walk, right};

fn of(walk: &Walk, kind: PartKind) -> PartLook {
    looks(walk).into_iter().find(|look| look.part == kind).expect("every part has a look")
}

#[test]
fn each_part_of_each_ticket_has_a_wood_and_is_seen() {
    let content = content();
    for info in &content.walks {
        let walk = begin(&content, &info.slug);
        for part in &info.ticket.parts {
            assert!(content.look_of(&part.wood).is_some(), "{}: {}", info.slug, part.wood);
        }
        let seen: Vec<usize> = views(walk.start())
            .iter()
            .flat_map(|view| view.parts.iter().filter_map(|part| part_of(walk.start(), part.kind)))
            .collect();
        assert!((0..walk.start().parts()).all(|part| seen.contains(&part)), "{}: {seen:?}", info.slug);
        assert_eq!(views(walk.start())[0].side, Side::Front);
    }
}

/// Engelmann spruce is as Sitka spruce, and European sycamore a maple (`tests/data/woods.csv`).
#[test]
fn woods_that_nobody_tells_apart_are_drawn_alike() {
    let content = content();
    let drawn = |slug: &str, kind| {
        let all = woods(begin(&content, slug).start(), 1, &content);
        all.into_iter().find(|wood| wood.part == kind).expect("a wood").species
    };
    assert_eq!(drawn("dyed-lute", PartKind::Top).growth, Growth::Conifer);
    assert_eq!(drawn("dyed-lute", PartKind::Top), drawn("shaded-lute", PartKind::Top));
    let [red, green, blue] = drawn("mixed-lyre", PartKind::Arms).base;
    assert!(red > 2 * green && green > blue, "padauk is red");
}

#[test]
fn the_work_looks_as_far_as_it_has_come() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    let raw = of(&walk, PartKind::Top);
    assert_eq!((raw.prepared, raw.film_um(), raw.trim), (Prepared::Rough, 0.0, Trim::Wood));
    let look_before = |walk: &mut Walk, operation| {
        up_to_work(walk, &content, operation);
        of(walk, PartKind::Top)
    };
    assert_eq!(look_before(&mut walk, Op::CleanOff).prepared, Prepared::Damped, "just wet for glue");
    let sealed = look_before(&mut walk, Op::Colour);
    assert!(sealed.seal_um > 0.0 && sealed.colour.is_none() && sealed.prepared == Prepared::Sanded);
    let coloured = look_before(&mut walk, Op::Shade);
    assert!(coloured.colour.is_some_and(|colour| matches!(colour.paint, Paint::Clear(_))));
    assert_eq!((coloured.shade, coloured.binding), (None, Binding::Covered));
    let shaded = look_before(&mut walk, Op::Scrape);
    assert!(shaded.shade.is_some());
    let scraped = look_before(&mut walk, Op::Clear);
    assert_eq!((scraped.binding, scraped.sheen), (Binding::Scraped, Sheen::Sprayed));
    let levelled = look_before(&mut walk, Op::Buff);
    assert_eq!(levelled.sheen, Sheen::Levelled);
    let on = rest(&walk, &content);
    go(&mut walk, on, &content);
    assert_eq!(of(&walk, PartKind::Top).sheen, Sheen::Buffed);
}

/// The filler lies on the parts that it was laid on alone, and what is hidden in the work is not drawn.
#[test]
fn a_look_is_of_its_part_and_tells_nothing_hidden() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    up_to_work(&mut walk, &content, Op::Seal);
    assert!(of(&walk, PartKind::Top).filler.is_none() && of(&walk, PartKind::Back).filler.is_some());
    let wronged = |pick: &str| {
        let mut walk = begin(&content, "plain-plate");
        let mut sand = up_to_work(&mut walk, &content, Op::Sand);
        sand.picks.insert("strokes".to_owned(), pick.to_owned());
        go(&mut walk, [Decision::Work(sand)], &content);
        assert!(right::next(&walk, &content).is_some());
        looks(&walk)
    };
    assert_eq!(wronged("across-the-grain"), wronged("with-the-grain"));
}
