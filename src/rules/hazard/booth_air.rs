//! Air through a booth: flow from face and speed, whether readings meet the velocity rule, which flow governs.

use crate::quantity::{
    AirFlow, AirVolume, DUST, Measure, MetresPerSecond, Millimetres, SECONDS_A_MINUTE, Unit,
};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Where an air speed was read.
    ReadingPlace {
        /// In a grid over the open face.
        Face = "at-the-face",
        /// At the filters, where the air is faster.
        Filter = "at-the-filters",
        /// In the middle of the face, one reading.
        Middle = "middle-of-the-face",
    }
    /// What a reading of the air speed calls for.
    FaceMove {
        /// The velocity rule is met; the gun still waits for mask and gauge.
        Meets = "speed-met",
        /// Under the rule: nothing is sprayed.
        TooSlow = "speed-too-low",
        /// It shows nothing: a grid over the face is read.
        ReadAgain = "read-the-face",
    }
}

const MM2_A_M2: f64 = 1_000_000.0;

/// An air volume as shown.
#[must_use]
pub fn volume(air: AirVolume) -> Measure {
    Measure::new(air.get(), Unit::CubicMetre, 0)
}

/// An air flow as shown.
#[must_use]
pub fn flow(air: AirFlow) -> Measure {
    Measure::new(air.get(), Unit::CubicMetrePerMinute, 1)
}

/// An air speed as shown.
#[must_use]
pub fn speed(air: MetresPerSecond) -> Measure {
    Measure::new(air.get(), Unit::MetrePerSecond, 2)
}

/// Air through an open face: area times average speed (29 CFR 1910.107(b)(5)(i)). Average means a grid over the face.
#[must_use]
pub fn face_flow(width: Millimetres, height: Millimetres, average: MetresPerSecond) -> Ruling<AirFlow> {
    let area = width.get() * height.get() / MM2_A_M2;
    let answer = AirFlow::saturating(area * average.get() * SECONDS_A_MINUTE);
    Ruling::by("hazard.face-flow", answer)
        .and("hazard.draw-is-no-respirator")
        .step("face-width", "", Measure::new(width.get(), Unit::Millimetre, 0))
        .step("face-height", "", Measure::new(height.get(), Unit::Millimetre, 0))
        .step("face-speed", "", speed(average))
        .step("face-flow", "width x height x speed", flow(answer))
        .given(&[
            ("width", Measure::new(width.get(), Unit::Millimetre, 0)),
            ("height", Measure::new(height.get(), Unit::Millimetre, 0)),
            ("speed", speed(average)),
        ])
}

/// Least air through an open face: area times the sheet's least speed.
#[must_use]
pub fn least_flow(width: Millimetres, height: Millimetres, sheet: &Sheet) -> Ruling<AirFlow> {
    let least = MetresPerSecond::saturating(sheet.get(Setting::FaceSpeed));
    let mut ruling = face_flow(width, height, least).and("hazard.face-speed");
    for step in &mut ruling.working {
        if step.label == "face-speed" {
            step.label = "least-face-speed";
        }
    }
    ruling
}

/// Average of readings.
///
/// # Errors
/// [`CannotJudge`] when there is none.
pub fn average(readings: &[MetresPerSecond]) -> Result<MetresPerSecond, CannotJudge> {
    let count = u32::try_from(readings.len()).map_err(|_| CannotJudge::without("readings"))?;
    if count == 0 {
        return Err(CannotJudge::without("readings"));
    }
    let sum: f64 = readings.iter().map(|one| one.get()).sum();
    Ok(MetresPerSecond::saturating(sum / f64::from(count)))
}

/// Whether readings meet the velocity rule: their average over the open face is at least the sheet's, 100 ft/min in the
/// federal text. Air is faster at the filters, and one reading is no average: those show nothing.
///
/// # Errors
/// [`CannotJudge`] when there is no reading, or it is not known where they were taken.
pub fn face_speed(readings: &[MetresPerSecond], at: Option<ReadingPlace>, sheet: &Sheet) -> Judged<FaceMove> {
    let average = average(readings)?;
    let least = MetresPerSecond::saturating(sheet.get(Setting::FaceSpeed));
    let answer = match at.ok_or_else(|| CannotJudge::without("read_at"))? {
        _ if readings.len() < 2 => FaceMove::ReadAgain,
        ReadingPlace::Filter | ReadingPlace::Middle => FaceMove::ReadAgain,
        ReadingPlace::Face if average.get() < least.get() - DUST => FaceMove::TooSlow,
        ReadingPlace::Face => FaceMove::Meets,
    };
    Ok(Ruling::by("hazard.face-speed", answer)
        .and("hazard.draw-is-no-respirator")
        .step("face-speed", "", speed(average))
        .step("least-face-speed", "", speed(least)))
}

/// The flow that governs: the larger of what the velocity rule and what the dilution rule asks for (29 CFR
/// 1910.94(c)(6), 1910.107(b)(5)(i)).
#[must_use]
pub fn governing_flow(by_speed: AirFlow, by_dilution: AirFlow) -> Ruling<AirFlow> {
    let answer = if by_dilution.get() > by_speed.get() { by_dilution } else { by_speed };
    Ruling::by("hazard.larger-air-governs", answer)
        .step("face-flow", "", flow(by_speed))
        .step("dilution-flow", "", flow(by_dilution))
        .step("governing-flow", "the larger of the two", flow(answer))
        .given(&[("face-flow", flow(by_speed)), ("dilution-flow", flow(by_dilution))])
}
