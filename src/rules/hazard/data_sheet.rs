//! What the figures of a safety data sheet mean in the room.

use super::dilution::vapour_at;
use super::solvent::Solvent;
use crate::quantity::{Celsius, Fraction, Measure, Unit};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// A hazard that the figures show.
    SheetHazard {
        /// Its vapour can be lit at the room's temperature.
        LightsInRoom = "lights-in-this-room",
        /// It goes through the skin.
        ThroughSkin = "goes-through-skin",
        /// It has a ceiling or short-term limit besides its average.
        HasCeiling = "has-a-ceiling",
        /// The recommended average is lower than the permissible one.
        RecommendedLower = "recommended-is-lower",
        /// At a quarter of the lower explosive limit the air is dangerous at once.
        FireAirDangerous = "fire-air-is-dangerous",
    }
}

/// The share of the lower explosive limit that the federal dilution rule allows: a quarter (29 CFR 1910.94(c)(6)(ii)).
pub const QUARTER: Fraction = Fraction::saturating(0.25);

/// Whether the figures of a solvent show a hazard.
///
/// # Errors
/// [`CannotJudge`] when the figure that decides is not published.
pub fn sheet_hazard(hazard: SheetHazard, solvent: &Solvent, room: Option<Celsius>) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let limits = solvent.limits;
    let ruling = match hazard {
        SheetHazard::LightsInRoom => {
            let flash = solvent.flash_c.ok_or_else(known("flash_c"))?;
            let room = room.ok_or_else(known("air_c"))?;
            Ruling::by("hazard.flash-under-room", flash.get() <= room.get()).step(
                "flash-point",
                "",
                Measure::new(flash.get(), Unit::Celsius, 1),
            )
        }
        SheetHazard::ThroughSkin => Ruling::by("hazard.skin-notation", solvent.skin),
        SheetHazard::HasCeiling => Ruling::by("hazard.ceiling-apart", solvent.lowest_ceiling().is_some()),
        SheetHazard::RecommendedLower => {
            let pel = limits.pel.ok_or_else(known("pel"))?;
            let rel = limits.rel.ok_or_else(known("rel"))?;
            Ruling::by("hazard.recommended-limit", rel.get() < pel.get())
        }
        SheetHazard::FireAirDangerous => {
            let lel = solvent.lowest_confirmed_lel().ok_or_else(known("lel"))?;
            let idlh = limits.idlh.ok_or_else(known("idlh"))?;
            let content = vapour_at(lel, QUARTER);
            Ruling::by("hazard.fire-air-is-no-breathing-air", content.get() > idlh.get())
                .step(
                    "vapour-at-quarter",
                    "LEL x 2,500",
                    Measure::new(content.get(), Unit::PartsPerMillion, 0),
                )
                .given(&[("LEL", Measure::new(lel.get(), Unit::Percent, 1))])
                .step("idlh", "", Measure::new(idlh.get(), Unit::PartsPerMillion, 0))
        }
    };
    Ok(ruling)
}
