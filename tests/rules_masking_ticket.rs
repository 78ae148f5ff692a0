//! Masking and the job ticket: every arm of both tables. Published statements are named beside their checks; all others
//! are common practice, no source.

mod support;

use stepboard::rules::job_ticket::{Done, Entry, EntryMend, EntryTrouble, mend, must_stand};
use stepboard::rules::masking::{
    Lift, MaskPlace, StillToCome, TapeCoat, TapeEdge, TapeGround, Tighten, lift, tighten,
};
use stepboard::rules::term::Term;
use support::covered::{self, same};

fn lifted(place: MaskPlace, next: StillToCome, coat: TapeCoat) -> Lift {
    lift(Some(place), next, Some(coat)).expect("all is told").answer
}

/// Instrument-building diary on unmasking: glue seats, fingerboard face and cavities stay masked through all coats, and
/// the line is scored all round before the tape is lifted.
#[test]
fn a_place_that_stays_bare_is_masked_to_the_end_and_scored() {
    let bare: Vec<MaskPlace> = MaskPlace::ALL.iter().copied().filter(|place| place.stays_bare()).collect();
    let published =
        [MaskPlace::BridgeSeat, MaskPlace::Fingerboard, MaskPlace::Cavities, MaskPlace::NeckJoint];
    assert_eq!(bare, published);
    for place in bare {
        for coat in TapeCoat::ALL {
            assert_eq!(lifted(place, StillToCome::Clear, *coat), Lift::Stay);
        }
        same!(lifted(place, StillToCome::Nothing, TapeCoat::Hard), Lift::Score);
        assert_eq!(lifted(place, StillToCome::Nothing, TapeCoat::TouchDry), Lift::Score);
        assert_eq!(lifted(place, StillToCome::Nothing, TapeCoat::Soft), Lift::Wait);
        assert_eq!(lifted(place, StillToCome::Nothing, TapeCoat::Runs), Lift::Wait);
    }
    covered::values("masking", "instrument-building diary");
}

/// Common practice, no source; that it comes off before the clear, and soft rather than hard, are rows se-21 and sv-15 of
/// `sequence-errors.csv`.
#[test]
fn a_mask_against_colour_comes_off_before_the_clear() {
    let off = |coat| lifted(MaskPlace::Rosette, StillToCome::Clear, coat);
    assert_eq!(off(TapeCoat::Runs), Lift::Wait);
    assert_eq!(off(TapeCoat::Soft), Lift::Pull);
    assert_eq!(off(TapeCoat::TouchDry), Lift::Pull);
    assert_eq!(off(TapeCoat::Hard), Lift::Score);
    for place in MaskPlace::ALL {
        assert_eq!(lifted(*place, StillToCome::Colour, TapeCoat::Soft), Lift::Stay);
    }
}

#[test]
fn what_decides_on_tape_and_is_not_told_is_named() {
    let missing = |place, next, coat| lift(place, next, coat).expect_err("not told").missing;
    let (seat, rim) = (Some(MaskPlace::BridgeSeat), Some(MaskPlace::NaturalEdge));
    assert_eq!(missing(None, StillToCome::Clear, Some(TapeCoat::Soft)), ["mask_place"]);
    assert_eq!(missing(rim, StillToCome::Clear, None), ["coat_at_tape"]);
    assert_eq!(missing(seat, StillToCome::Nothing, None), ["coat_at_tape"]);
    assert_eq!(lift(seat, StillToCome::Clear, None).expect("told enough").answer, Lift::Stay);
    assert_eq!(lift(None, StillToCome::Colour, None).expect("told enough").answer, Lift::Stay);
}

/// Painter's note on bleed behind tape: clean ground, the edge rubbed down. Corner, soft film and thin passes: common
/// practice, no source.
#[test]
fn tape_is_made_tight_in_its_order() {
    let need = |ground, edge| tighten(Some(ground), Some(edge)).expect("all is told").answer;
    for edge in TapeEdge::ALL {
        same!(need(TapeGround::Dusty, *edge), Tighten::CleanFirst);
        assert_eq!(need(TapeGround::SoftFilm, *edge), Tighten::DryFirst);
    }
    for ground in [TapeGround::CleanWood, TapeGround::DryFilm] {
        assert_eq!(need(ground, TapeEdge::Bridging), Tighten::IntoCorner);
        same!(need(ground, TapeEdge::Laid), Tighten::Burnish);
        assert_eq!(need(ground, TapeEdge::Burnished), Tighten::Spray);
    }
    assert_eq!(tighten(None, Some(TapeEdge::Laid)).expect_err("not told").missing, ["tape_ground"]);
    assert_eq!(tighten(Some(TapeGround::DryFilm), None).expect_err("not told").missing, ["tape_pressed"]);
    assert_eq!(tighten(Some(TapeGround::Dusty), None).expect("enough").answer, Tighten::CleanFirst);
    covered::values("masking", "painter's note on bleed");
}

/// What must stand there: material, batch, ratio, air reading, coats, times and name after spraying, and so on for the
/// other kinds of work. Common practice, no source.
#[test]
fn each_kind_of_work_has_its_entries() {
    use Entry::{Air, Batch, Coats, Fault, FilmLeft, LastGrit, NextHour, PotEnd, Ratio};
    let wanted: [(Done, &[Entry]); 7] = [
        (Done::Sanded, &[LastGrit]),
        (Done::Filled, &[Batch, NextHour]),
        (Done::Mixed, &[Batch, Ratio]),
        (Done::MixedTwoPart, &[Batch, Ratio, PotEnd]),
        (Done::Sprayed, &[Batch, Ratio, Air, Coats, NextHour]),
        (Done::Levelled, &[LastGrit, FilmLeft]),
        (Done::Inspected, &[Fault]),
    ];
    for (done, entries) in wanted {
        for entry in Entry::ALL {
            let must = must_stand(*entry, Some(done)).expect("told").answer;
            let named = entries.contains(entry) || *entry == Entry::NameTime;
            assert_eq!(must, named, "{done:?}, {entry:?}");
        }
    }
    for entry in Entry::ALL {
        let untold = must_stand(*entry, None);
        match entry {
            Entry::NameTime => assert!(untold.expect("always").answer),
            Entry::OthersTime => assert!(!untold.expect("never").answer),
            _ => assert_eq!(untold.expect_err("not told").missing, ["done_last"]),
        }
    }
}

/// Common practice, no source.
#[test]
fn an_entry_is_put_right_by_the_one_who_made_it_and_nothing_is_rubbed_out() {
    let mended = |trouble, own| mend(trouble, Some(own)).expect("told").answer;
    assert_eq!(mended(EntryTrouble::Slip, true), EntryMend::NewEntry);
    assert_eq!(mended(EntryTrouble::LeftOut, true), EntryMend::NewEntry);
    assert_eq!(mended(EntryTrouble::NeverRead, true), EntryMend::SayNotRead);
    for trouble in [EntryTrouble::Slip, EntryTrouble::LeftOut, EntryTrouble::NeverRead] {
        assert_eq!(mended(trouble, false), EntryMend::TellWriter);
        assert_eq!(mend(trouble, None).expect_err("not told").missing, ["entry_own"]);
    }
    for own in [Some(true), Some(false), None] {
        let worked = mend(EntryTrouble::WorkedTo, own).expect("enough").answer;
        assert_eq!(worked, EntryMend::StopAndTell, "the work comes before the paper");
    }
}
