//! Dust and overspray: how they are taken up, and why compressed air never touches a person.

use crate::rules::verdict::Ruling;
use crate::terms;

terms! {
    /// Dust to be taken up.
    DustOn {
        /// Sanding dust on bench and floor.
        Bench = "dust-on-bench",
        /// Dust on clothes and arms.
        Person = "dust-on-person",
        /// Dry overspray on walls and floor of the booth.
        Overspray = "overspray-in-booth",
        /// Dust in the pores of the work.
        Work = "dust-on-work",
    }
    /// How it is taken up.
    DustMove {
        /// Vacuumed with a rated vacuum.
        Vacuum = "rated-vacuum",
        /// Damped, scraped with tools that cannot spark, fan on, kept wet.
        ScrapeDamp = "scrape-damp",
        /// Vacuumed, then a tack cloth.
        VacuumTack = "vacuum-and-tack",
    }
}

/// How dust is taken up: never with an air line, and never on a person (29 CFR 1910.242(b)); overspray damp, with tools
/// that cannot spark (1910.107(g)(2)).
#[must_use]
pub fn dust_move(on: DustOn) -> Ruling<DustMove> {
    match on {
        DustOn::Bench | DustOn::Person => Ruling::by("hazard.no-air-line-on-dust", DustMove::Vacuum),
        DustOn::Work => Ruling::by("hazard.no-air-line-on-dust", DustMove::VacuumTack),
        DustOn::Overspray => Ruling::by("hazard.overspray-damp", DustMove::ScrapeDamp),
    }
}
