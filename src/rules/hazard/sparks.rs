//! Flames, sparks and hot things near the spraying area.

use crate::quantity::Millimetres;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// A thing that might light vapour.
    SparkSource {
        /// A flame or a tool that sparks.
        FlameOrSpark = "flame-or-spark",
        /// A hot surface: heater, steam pipe.
        HotSurface = "hot-surface",
        /// A portable lamp.
        PortableLamp = "portable-lamp",
        /// A telephone or other unrated battery device.
        Telephone = "telephone",
        /// A lamp rated for the place, fixed behind glass.
        RatedLamp = "rated-lamp",
    }
    /// Where it stands.
    SparkPlace {
        /// Inside the spraying area.
        Inside = "inside-the-area",
        /// Outside it, in the open.
        Open = "outside-open",
        /// Outside it, behind a partition.
        Partition = "behind-partition",
    }
    /// Whether spraying goes on.
    SprayPhase {
        /// Spraying.
        Spraying = "now-spraying",
        /// Before spraying, with no vapour in the room.
        Before = "before-spraying",
    }
}

/// Distance of flames and sparks from a spraying area where no partition stands between: 20 ft (29 CFR 1910.107(c)(2)).
/// It is no distance for smoking: that is forbidden by sign in the whole area and the paint store.
pub const SPARK_DISTANCE: Millimetres = Millimetres::saturating(6_096.0);

/// Whether a thing has to go before anyone sprays: sparks and flames inside or within 20 ft in the open; hot surfaces and
/// unrated devices inside; a portable lamp inside while spraying goes on (29 CFR 1910.107(c)(2), (3), (8)).
///
/// # Errors
/// [`CannotJudge`] when a flame stands in the open at a distance that is not known, or it decides whether spraying goes
/// on and that is not known.
pub fn has_to_go(
    source: SparkSource,
    place: SparkPlace,
    distance: Option<Millimetres>,
    phase: Option<SprayPhase>,
) -> Judged<bool> {
    let goes = match (source, place) {
        (SparkSource::RatedLamp, _) | (_, SparkPlace::Partition) => false,
        (SparkSource::FlameOrSpark, SparkPlace::Open) => {
            distance.ok_or_else(|| CannotJudge::without("distance_m"))?.get() < SPARK_DISTANCE.get()
        }
        (_, SparkPlace::Open) => false,
        (SparkSource::PortableLamp, SparkPlace::Inside) => {
            phase.ok_or_else(|| CannotJudge::without("spray_phase"))? == SprayPhase::Spraying
        }
        (
            SparkSource::FlameOrSpark | SparkSource::HotSurface | SparkSource::Telephone,
            SparkPlace::Inside,
        ) => true,
    };
    Ok(Ruling::by("hazard.sparks-kept-off", goes))
}
