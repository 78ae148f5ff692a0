//! A cut through the film.

use super::measure::wood;
use stepboard_picture::instrument::{
    Colour, Dye, Filled, Filler, Paint, PartKind, PartLook, Sheen, Stain, StratumKind,
};
use stepboard_picture::{Fault, Finish, Severity};

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
fn layers_lie_in_their_order_and_only_those_that_are_there() {
    let mahogany = wood(PartKind::Top, "mahogany", 1);
    let kinds = |look: PartLook| look.strata(&mahogany).iter().map(|layer| layer.kind).collect::<Vec<_>>();
    assert_eq!(kinds(whole()), StratumKind::ALL);
    assert_eq!(kinds(PartLook::bare(PartKind::Top)), [StratumKind::Wood]);
    let sealed = PartLook { colour: None, clear_um: 0.0, filler: None, stain: None, ..whole() };
    assert_eq!(kinds(sealed), [StratumKind::Wood, StratumKind::Seal]);
}

#[test]
fn what_lies_over_the_wood_is_as_thick_as_the_film() {
    let layers = whole().strata(&wood(PartKind::Top, "mahogany", 1));
    let over = [StratumKind::Seal, StratumKind::Colour, StratumKind::Clear];
    let thick: f32 =
        layers.iter().filter(|layer| over.contains(&layer.kind)).filter_map(|layer| layer.um).sum();
    assert!((thick - 130.0).abs() < 1.0e-3, "{thick}");
    assert!((whole().film_um() - 130.0).abs() < 1.0e-3);
}

/// Filler goes as deep as vessels are cut open: half of the widest of the wood, as content has it; spruce has none.
#[test]
fn filler_is_as_deep_as_the_pores() {
    let deep = |slug: &str| {
        let layers = whole().strata(&wood(PartKind::Top, slug, 1));
        layers.iter().find(|layer| layer.kind == StratumKind::Filler).and_then(|layer| layer.um)
    };
    assert!(deep("mahogany").is_some_and(|um| (um - 80.0).abs() < 0.1), "{:?}", deep("mahogany"));
    assert_eq!(deep("sitka-spruce"), None);
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
