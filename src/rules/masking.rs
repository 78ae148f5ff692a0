//! Masking: how tape is laid, and when and how it comes off.

use super::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Where a mask lies. The first four stay bare wood to the end, the others are covered with clear later.
    MaskPlace {
        /// Where the bridge is glued.
        BridgeSeat = "at-bridge-seat",
        /// The face of the fingerboard.
        Fingerboard = "at-fingerboard",
        /// Cavities in the body.
        Cavities = "at-cavities",
        /// The joint that is glued after the finish.
        NeckJoint = "at-neck-joint",
        /// Binding that keeps its own colour under the clear.
        Binding = "at-binding",
        /// The rosette.
        Rosette = "at-rosette",
        /// A rim of bare-looking wood at the edge of a coloured top.
        NaturalEdge = "at-natural-edge",
        /// The veneer of the headstock.
        Headstock = "at-headstock",
    }
    /// What is still to be sprayed.
    StillToCome {
        /// More colour.
        Colour = "colour-to-come",
        /// Colour is done; clear is next.
        Clear = "clear-to-come",
        /// Nothing: every coat is on.
        Nothing = "nothing-to-come",
    }
    /// The coat along the tape.
    TapeCoat {
        /// It still runs.
        Runs = "coat-runs",
        /// Soft, but it no longer runs.
        Soft = "coat-soft",
        /// Touch-dry.
        TouchDry = "coat-touch-dry",
        /// Hard.
        Hard = "coat-hard",
    }
    /// What is done with the tape.
    Lift {
        /// It stays where it is.
        Stay = "tape-stays",
        /// It comes off later, when the coat no longer runs.
        Wait = "tape-waits",
        /// It comes off now, slowly, back on itself.
        Pull = "tape-pulled",
        /// It is scored all round, then pulled slowly.
        Score = "tape-scored",
    }
    /// What the tape lies on.
    TapeGround {
        /// Dust of the last sanding.
        Dusty = "ground-dusty",
        /// A coat that takes a thumb print.
        SoftFilm = "ground-soft-film",
        /// Clean bare wood.
        CleanWood = "ground-clean-wood",
        /// A clean film that is dry.
        DryFilm = "ground-dry-film",
    }
    /// How the edge of the tape lies.
    TapeEdge {
        /// It spans a corner without touching it.
        Bridging = "edge-bridging",
        /// Laid on, not pressed down.
        Laid = "edge-laid",
        /// Pressed down along its whole length.
        Burnished = "edge-burnished",
    }
    /// What a fresh mask needs before colour.
    Tighten {
        /// Off with it, clean, lay new tape.
        CleanFirst = "tape-clean-first",
        /// Off with it; tape again when the coat is dry.
        DryFirst = "tape-dry-first",
        /// Cut it and lay it into the corner.
        IntoCorner = "tape-into-corner",
        /// Press the edge down along its whole length.
        Burnish = "tape-burnish",
        /// Spray: first passes thin, from the tape outward.
        Spray = "tape-spray-outward",
    }
}

impl MaskPlace {
    /// Whether the place stays bare to the end: something is glued or played there.
    #[must_use]
    pub const fn stays_bare(self) -> bool {
        matches!(self, Self::BridgeSeat | Self::Fingerboard | Self::Cavities | Self::NeckJoint)
    }
}

/// What is done with a mask now.
///
/// A mask on a place that stays bare stays to the end and is scored all round before it is lifted (an instrument-building
/// diary on unmasking). A mask against colour comes off before the clear, once the coat no longer runs: common practice,
/// no source.
///
/// # Errors
/// [`CannotJudge`] when what decides is not told.
pub fn lift(place: Option<MaskPlace>, next: StillToCome, coat: Option<TapeCoat>) -> Judged<Lift> {
    let coat = || coat.ok_or_else(|| CannotJudge::without("coat_at_tape"));
    Ok(match next {
        StillToCome::Colour => Ruling::by("masking.stays-while-colour-comes", Lift::Stay),
        StillToCome::Clear if place.ok_or_else(|| CannotJudge::without("mask_place"))?.stays_bare() => {
            Ruling::by("masking.bare-places-to-the-end", Lift::Stay)
        }
        StillToCome::Clear => match coat()? {
            TapeCoat::Runs => Ruling::by("masking.never-pulled-wet", Lift::Wait),
            TapeCoat::Soft | TapeCoat::TouchDry => {
                Ruling::by("masking.colour-mask-off-before-clear", Lift::Pull)
            }
            TapeCoat::Hard => Ruling::by("masking.scored-when-hard", Lift::Score),
        },
        StillToCome::Nothing => match coat()? {
            TapeCoat::Runs | TapeCoat::Soft => Ruling::by("masking.never-pulled-wet", Lift::Wait),
            TapeCoat::TouchDry | TapeCoat::Hard => Ruling::by("masking.scored-when-hard", Lift::Score),
        },
    })
}

/// What a fresh mask needs before colour: clean ground, then an edge that touches everywhere, then pressing down.
///
/// Clean ground and a pressed edge: a painter's note on bleed behind tape. Corners, soft films and thin passes from the
/// tape outward: common practice, no source.
///
/// # Errors
/// [`CannotJudge`] when what decides is not told.
pub fn tighten(ground: Option<TapeGround>, edge: Option<TapeEdge>) -> Judged<Tighten> {
    Ok(match ground.ok_or_else(|| CannotJudge::without("tape_ground"))? {
        TapeGround::Dusty => Ruling::by("masking.tape-on-clean-ground", Tighten::CleanFirst),
        TapeGround::SoftFilm => Ruling::by("masking.tape-on-dry-film", Tighten::DryFirst),
        TapeGround::CleanWood | TapeGround::DryFilm => {
            match edge.ok_or_else(|| CannotJudge::without("tape_pressed"))? {
                TapeEdge::Bridging => Ruling::by("masking.no-bridge-at-corner", Tighten::IntoCorner),
                TapeEdge::Laid => Ruling::by("masking.edge-pressed-down", Tighten::Burnish),
                TapeEdge::Burnished => Ruling::by("masking.thin-from-tape-outward", Tighten::Spray),
            }
        }
    })
}
