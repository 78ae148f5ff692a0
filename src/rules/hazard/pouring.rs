//! Pouring a flammable liquid: the container, the bonding wire, the ground wire.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What a container is made of.
    Vessel {
        /// Metal.
        Metal = "metal",
        /// Plastic.
        Plastic = "plastic",
        /// Glass.
        Glass = "glass",
    }
    /// How two containers are joined to each other and to earth.
    Bonding {
        /// Neither.
        None = "no-wires",
        /// Grounded, not bonded to each other.
        GroundOnly = "ground-only",
        /// Bonded to each other, not grounded.
        BondOnly = "bond-only",
        /// Both.
        Both = "bonded-and-grounded",
    }
    /// What comes before pouring.
    PourMove {
        /// Pour, in the fan's draw.
        Pour = "pour",
        /// Take a metal container.
        MetalFirst = "metal-first",
        /// Bond the two containers.
        BondFirst = "bond-first",
        /// Ground them.
        GroundFirst = "ground-first",
        /// Bond and ground.
        BondAndGround = "bond-and-ground",
    }
}

/// What comes before pouring a flammable liquid: a container that can be grounded, bonded to the other and both
/// grounded (29 CFR 1910.107(e)(2)-(3), (e)(9)).
///
/// # Errors
/// [`CannotJudge`] when the container is metal and its wires are not known.
pub fn before_pour(into: Vessel, bonding: Option<Bonding>) -> Judged<PourMove> {
    let answer = if into == Vessel::Metal {
        match bonding.ok_or_else(|| CannotJudge::without("bonding"))? {
            Bonding::None => PourMove::BondAndGround,
            Bonding::GroundOnly => PourMove::BondFirst,
            Bonding::BondOnly => PourMove::GroundFirst,
            Bonding::Both => PourMove::Pour,
        }
    } else {
        PourMove::MetalFirst
    };
    Ok(Ruling::by("hazard.bond-before-pour", answer))
}
