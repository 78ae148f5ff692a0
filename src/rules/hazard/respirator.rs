//! When a respirator is worn. The speed of a booth's air is a fire rule and never shows that none is needed.

use crate::quantity::MetresPerSecond;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is known of the air that the sprayer breathes.
    Evaluation {
        /// Nothing was measured.
        Nothing = "not-measured",
        /// A reading somewhere in the room.
        Room = "room-reading",
        /// Breathing-zone samples over a limit.
        Over = "zone-over",
        /// Breathing-zone samples of the worst job, sums and ceilings within limits, decided in writing by a competent
        /// person.
        ClearedInWriting = "zone-cleared-in-writing",
    }
    /// Where the sprayer stands.
    Standing {
        /// Upstream of the work: the air goes from the sprayer to the work to the filters.
        Upstream = "upstream",
        /// Beside the work.
        Beside = "beside",
        /// Between the work and the exhaust.
        Downstream = "downstream",
    }
    /// What is worn on the face.
    Demand {
        /// The respirator that the programme selects.
        Wear = "programme-respirator",
        /// None is required of this person for this job, as decided in writing.
        AsWritten = "as-decided-in-writing",
    }
    /// What the sprayer does about the place.
    PlaceMove {
        /// Stays there.
        Stay = "stay-there",
        /// Moves so that the air goes past before it meets the work.
        MoveUpstream = "move-upstream",
    }
}

/// What is worn on the face. The speed of the air is told because people tell it; it decides nothing (OSHA STD
/// 01-05-010: the 100 ft/min rule is about fire). Downstream of the work a respirator is worn in any case (29 CFR
/// 1910.94(c)(6)(iii)); elsewhere only breathing-zone samples and a written decision can drop it.
///
/// # Errors
/// [`CannotJudge`] when the air was cleared in writing and it is not known where the sprayer stands.
pub fn respirator_demand(
    air: MetresPerSecond,
    evaluation: Evaluation,
    standing: Option<Standing>,
) -> Judged<Demand> {
    let answer = match (evaluation, standing) {
        (Evaluation::Nothing | Evaluation::Room | Evaluation::Over, _) => Demand::Wear,
        (Evaluation::ClearedInWriting, Some(Standing::Downstream)) => Demand::Wear,
        (Evaluation::ClearedInWriting, Some(Standing::Upstream | Standing::Beside)) => Demand::AsWritten,
        (Evaluation::ClearedInWriting, None) => return Err(CannotJudge::without("standing")),
    };
    Ok(Ruling::by("hazard.draw-is-no-respirator", answer).and("hazard.never-downstream").step(
        "face-speed",
        "",
        super::booth_air::speed(air),
    ))
}

/// Whether the sprayer may stay: never between work and exhaust (29 CFR 1910.94(c)(6)(iii)).
#[must_use]
pub fn sprayer_place(standing: Standing) -> Ruling<PlaceMove> {
    let answer = match standing {
        Standing::Upstream | Standing::Beside => PlaceMove::Stay,
        Standing::Downstream => PlaceMove::MoveUpstream,
    };
    Ruling::by("hazard.never-downstream", answer).and("hazard.draw-is-no-respirator")
}
