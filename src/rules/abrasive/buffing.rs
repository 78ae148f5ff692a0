//! Buffing: compounds and their wheels, and what fine lines in the gloss are.

use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Compounds from coarse to fine.
    Compound {
        /// Cutting compound.
        Cutting = "cutting",
        /// Medium compound.
        Medium = "medium",
        /// Polish.
        Polish = "polish",
    }
    /// What to do after a spell with one compound.
    BuffMove {
        /// The wheel is not this compound's: take its own wheel.
        OwnWheel = "own-wheel",
        /// Scratches of the step before remain: stay.
        StayOn = "stay-on",
        /// Clean the face; next compound on its own wheel.
        NextCompound = "next-compound",
        /// Done: wipe and look under the lamp.
        Done = "buff-done",
    }
    /// How fine lines behave when the lamp is moved.
    LampSign {
        /// Straight lines or single curls that keep their place.
        Stays = "lines-stay",
        /// Fine arcs that turn with the lamp.
        Turns = "arcs-turn",
    }
    /// What fine lines in a buffed gloss are.
    FineLines {
        /// Scratches of a sanding grade.
        SandingScratch = "sanding-scratch",
        /// Swirls of the compound.
        BuffSwirl = "buff-swirl",
    }
}

/// What fine lines in a buffed gloss are, by how they behave when the lamp is moved.
#[must_use]
pub fn fine_lines(sign: LampSign) -> Ruling<FineLines> {
    let answer = match sign {
        LampSign::Stays => FineLines::SandingScratch,
        LampSign::Turns => FineLines::BuffSwirl,
    };
    Ruling::by("abrasive.lamp-test", answer)
}

/// What to do after a spell with one compound on a wheel that last carried another.
#[must_use]
pub fn buff_move(compound: Compound, wheel_had: Compound, scratches_left: bool) -> Ruling<BuffMove> {
    if compound != wheel_had {
        return Ruling::by("abrasive.own-wheel", BuffMove::OwnWheel);
    }
    if scratches_left {
        return Ruling::by("abrasive.compound-order", BuffMove::StayOn);
    }
    let answer = if compound == Compound::Polish { BuffMove::Done } else { BuffMove::NextCompound };
    Ruling::by("abrasive.compound-order", answer).and("abrasive.own-wheel")
}
