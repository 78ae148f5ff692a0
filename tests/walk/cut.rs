//! A cut through a film: its layers in the order in which they were laid.

use crate::steps::{begin, go, up_to, up_to_work, work};
use crate::support::content;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::walk::Walk;
use stepboard::walk::cut::LayerKind::{self, Clear, Colour, Seal};
use stepboard::walk::cut::layers;
use stepboard::walk::decision::Decision;

fn kinds(walk: &Walk, part: usize) -> Vec<LayerKind> {
    layers(&walk.part(part).expect("a part")).iter().map(|layer| layer.kind).collect()
}

/// Wood up, as they were laid: shading over clear lies over it, and clear over that is a layer of its own.
#[test]
fn layers_lie_as_they_were_laid() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    assert!(kinds(&walk, 0).is_empty(), "bare wood has no film");
    up_to_work(&mut walk, &content, Op::Level);
    assert_eq!(kinds(&walk, 0), [Seal, Colour, Clear]);
    let mut late = walk.clone();
    for operation in [Op::Shade, Op::Clear] {
        let coat = work(&late, &content, operation, &[], &[]);
        go(&mut late, [coat], &content);
    }
    assert_eq!(kinds(&late, 0), [Seal, Colour, Clear, Colour, Clear]);
}

/// Thickness is that of the coats, and what levelling took is gone from the clear alone.
#[test]
fn levelling_takes_from_the_clear() {
    let content = content();
    let mut walk = begin(&content, "shaded-lute");
    up_to_work(&mut walk, &content, Op::Level);
    let um = |walk: &Walk, kind| -> f64 {
        let lying = walk.part(0).expect("a part");
        layers(&lying).iter().filter(|layer| layer.kind == kind).map(|layer| layer.um).sum()
    };
    let (before, colour) = (um(&walk, Clear), um(&walk, Colour));
    let laid: f64 = walk.part(0).expect("a part").laid.iter().map(|laid| laid.dry.get()).sum();
    assert!((before + colour + um(&walk, Seal) - laid).abs() < 1e-9, "{laid}");
    up_to(&mut walk, &content, |_, next| next.operation() == Some(Op::Buff) || *next == Decision::HandOver);
    let taken = walk.start().sheet.get(stepboard::rules::sheet::Setting::LevelTakeOff);
    assert!((before - um(&walk, Clear) - taken).abs() < 1e-9, "{before}");
    assert_eq!(um(&walk, Colour), colour);
}

#[test]
fn pores_are_seen_where_they_are_large() {
    let content = content();
    let walk = begin(&content, "shaded-lute");
    // Sitka spruce has none, mahogany large ones: tests/data/woods.csv.
    assert!(!walk.start().shows_pores(0) && walk.start().shows_pores(1));
    let maple = begin(&content, "plain-plate");
    assert!(!maple.start().shows_pores(0));
}
