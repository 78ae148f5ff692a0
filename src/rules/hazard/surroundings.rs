//! What stands round a booth: clear space, other work, the deflector over its face, whose exhaust it is.

use crate::quantity::Millimetres;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What is wrong round a booth.
    BoothFault {
        /// Storage or combustible building stands too near.
        NoClearSpace = "no-clear-space",
        /// Other work goes on too near, with no partition between.
        OtherWork = "other-work-too-near",
        /// A deflector is missing over a large face.
        NoDeflector = "no-deflector",
        /// It shares an exhaust that it must have to itself.
        SharedExhaust = "exhaust-shared",
    }
    /// Whose exhaust it is.
    Exhaust {
        /// Its own, to the outdoors.
        Own = "exhaust-own",
        /// Shared with another booth that sprays the same material.
        SharedSame = "exhaust-shared-same",
        /// Shared with one that sprays another material.
        SharedOther = "exhaust-shared-other",
    }
}

/// What is known of a booth's surroundings.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Around {
    /// Space kept free on all sides.
    pub clear: Option<Millimetres>,
    /// Distance of other work.
    pub other_work: Option<Millimetres>,
    /// Whether a partition stands between.
    pub partition: Option<bool>,
    /// Width and height of the open face.
    pub face: Option<(Millimetres, Millimetres)>,
    /// Whether a deflector hangs at its upper edge.
    pub deflector: Option<bool>,
    /// Whose exhaust it is.
    pub exhaust: Option<Exhaust>,
}

/// Least space kept free, and least distance of other work without a partition: 3 ft (29 CFR 1910.107(b)(8), (b)(9)).
pub const CLEAR_SPACE: Millimetres = Millimetres::saturating(914.4);
const MM2_A_FT2: f64 = 304.8 * 304.8;
/// A face over this needs a deflector: 9 ft2 (29 CFR 1910.107(b)(6)).
pub const DEFLECTOR_OVER_FT2: f64 = 9.0;
/// Cabinets of one material may share an exhaust up to this face: 18 ft2 (29 CFR 1910.107(d)(3)).
pub const SHARED_UP_TO_FT2: f64 = 18.0;

/// Area of a face in square feet.
fn square_feet(face: Option<(Millimetres, Millimetres)>) -> Result<f64, CannotJudge> {
    let (width, height) = face.ok_or_else(|| CannotJudge::without("width_m"))?;
    Ok(width.get() * height.get() / MM2_A_FT2)
}

/// Whether a fault is there. For a shared exhaust the face told is that of all cabinets together.
///
/// # Errors
/// [`CannotJudge`] when the fact that decides is not known.
pub fn booth_fault(fault: BoothFault, at: Around) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let wrong = match fault {
        BoothFault::NoClearSpace => at.clear.ok_or_else(known("clear_m"))?.get() < CLEAR_SPACE.get(),
        BoothFault::OtherWork => {
            !at.partition.ok_or_else(known("partition"))?
                && at.other_work.ok_or_else(known("other_work_m"))?.get() < CLEAR_SPACE.get()
        }
        BoothFault::NoDeflector => {
            !at.deflector.ok_or_else(known("deflector"))? && square_feet(at.face)? > DEFLECTOR_OVER_FT2
        }
        BoothFault::SharedExhaust => match at.exhaust.ok_or_else(known("exhaust"))? {
            Exhaust::Own => false,
            Exhaust::SharedSame => square_feet(at.face)? > SHARED_UP_TO_FT2,
            Exhaust::SharedOther => true,
        },
    };
    Ok(Ruling::by("hazard.room-round-the-booth", wrong))
}
