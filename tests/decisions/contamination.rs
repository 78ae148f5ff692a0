//! What gets onto the work. MIL-HDBK-1110 11.4.2.1 and a trade magazine on fish eye: grease, silicone, dirty air open
//! hollows; BS 2015 glossary, bittiness: specks stand up. The door of the finish room is common practice, no source.

use crate::support::content;
use stepboard::rules::contamination::{
    BareMove, CleanOff, CoatState, DoorMove, Entrant, FishEyeMove, Hands, Mark, MarkEdge, Stray, Suit, Under,
    at_the_door, bare_move, clean_off, fish_eye_move, makes,
};
use stepboard::rules::term::{Coating, Term};

/// MIL-HDBK-1110 11.4.2.1; BS 2015 glossary.
#[test]
fn grease_and_dirty_air_open_hollows_and_specks_stand_up() {
    for stray in Stray::ALL {
        let ruling = makes(*stray);
        let wanted = match stray {
            Stray::Silicone | Stray::HandCream | Stray::WaxCloth => {
                (Mark::FishEye, "contamination.grease-opens-the-coat")
            }
            Stray::LineOil | Stray::LineWater => (Mark::FishEye, "contamination.dirty-air"),
            _ => (Mark::DustNib, "contamination.specks-stand-up"),
        };
        assert_eq!((ruling.answer, ruling.rules[0].0), wanted, "{stray:?}");
    }
}

#[test]
fn only_a_clean_crew_comes_in() {
    let door = |who, suit, hands| at_the_door(who, suit, hands).map(|ruling| ruling.answer);
    let crew = |suit, hands| door(Entrant::Crew, Some(suit), Some(hands));
    assert_eq!(door(Entrant::Visitor, None, None), Ok(DoorMove::StayOut));
    assert_eq!(door(Entrant::Visitor, Some(Suit::Closed), Some(Hands::Washed)), Ok(DoorMove::StayOut));
    assert_eq!(crew(Suit::Closed, Hands::Washed), Ok(DoorMove::Enter));
    for hands in [Hands::Cream, Hands::Polish] {
        assert_eq!(crew(Suit::Closed, hands), Ok(DoorMove::WashFirst));
        assert_eq!(crew(Suit::Street, hands), Ok(DoorMove::WashAndSuit));
        assert_eq!(crew(Suit::Sanding, hands), Ok(DoorMove::WashAndSuit));
    }
    assert_eq!(crew(Suit::Street, Hands::Washed), Ok(DoorMove::SuitFirst));
    assert_eq!(crew(Suit::Sanding, Hands::Washed), Ok(DoorMove::SuitFirst));
    let missing = |suit, hands| door(Entrant::Crew, suit, hands).expect_err("untold").missing;
    assert_eq!(missing(None, Some(Hands::Washed)), ["suit"]);
    assert_eq!(missing(Some(Suit::Closed), None), ["hands"]);
}

/// The published table of faults: wet over bare wood the face is wiped off; dry, it is levelled, washed and sealed. No
/// wiping over colour: common practice, no source.
#[test]
fn fish_eyes_are_wiped_off_wet_bare_wood_only() {
    let found = |state, under| fish_eye_move(state, under).map(|ruling| ruling.answer);
    for under in [None, Some(Under::BareWood), Some(Under::ColourOrFinish)] {
        assert_eq!(found(CoatState::Dry, under), Ok(FishEyeMove::LevelWashBarrier));
    }
    assert_eq!(found(CoatState::Wet, Some(Under::BareWood)), Ok(FishEyeMove::WipeOff));
    assert_eq!(found(CoatState::Wet, Some(Under::ColourOrFinish)), Ok(FishEyeMove::LetDry));
    assert_eq!(found(CoatState::Wet, None).expect_err("untold").missing, ["coat_of"]);
}

/// An article on finishing oily woods: a solvent wipe just before the coat. No wax under water: common practice, no source.
#[test]
fn oily_wood_is_wiped_and_no_wax_goes_under_water() {
    let content = content();
    let found = |slug: &str, coating| clean_off(content.wood(slug).expect("a wood"), coating).answer;
    for coating in [Coating::Nitrocellulose, Coating::WaterBorne, Coating::Shellac] {
        assert_eq!(found("indian-rosewood", coating), CleanOff::SolventWipe, "{coating:?}");
    }
    assert_eq!(found("hard-maple", Coating::WaterBorne), CleanOff::VacuumDamp);
    assert_eq!(found("hard-maple", Coating::Nitrocellulose), CleanOff::VacuumTack);
    assert_eq!(found("hard-maple", Coating::Shellac), CleanOff::VacuumTack);
}

/// Popular Woodworking no. 122 (June 2001): sharp pale patches are glue. The other two: the published table of faults.
#[test]
fn a_mark_on_bare_wood_is_read_by_its_edge() {
    let found = |edge| {
        let ruling = bare_move(edge);
        (ruling.answer, ruling.rules[0].0)
    };
    assert_eq!(found(MarkEdge::Sharp), (BareMove::Scrape, "contamination.glue-blocks-stain"));
    assert_eq!(found(MarkEdge::Soft), (BareMove::Washcoat, "contamination.wood-takes-unevenly"));
    assert_eq!(found(MarkEdge::Lines), (BareMove::BackToGrit, "abrasive.along-grain"));
}
