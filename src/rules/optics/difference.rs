//! How far two colours are apart: CIEDE2000, and whether that passes in the shop.

use super::lab::Lab;
use crate::quantity::{Measure, Unit};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::staining::Seen as Beside;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// Whether a colour passes against its sample.
    Match {
        /// Within the shop's band.
        Within = "match-within-band",
        /// Outside it.
        Outside = "match-outside-band",
    }
    /// What is done about transparent colour beside its sample.
    MatchCall {
        /// It goes on as it is.
        Accept = "match-accept",
        /// One more thin pass, then it is measured again.
        AddPass = "match-add-pass",
        /// Back to before the colour: it does not get paler.
        GoBack = "match-go-back",
    }
    /// How a difference looks, side by side.
    Seen {
        /// Not to be told apart.
        Same = "seen-same",
        /// To be seen when looked for.
        Slight = "seen-slight",
        /// Plainly another colour.
        Plain = "seen-plain",
    }
}

/// Turns degrees of a full circle.
const CIRCLE: f64 = 360.0;
const HALF_CIRCLE: f64 = 180.0;

fn seventh_power_share(chroma: f64) -> f64 {
    /// Chroma at which the paper's weights turn: 25.
    const TURN: f64 = 25.0;
    let power = |number: f64| {
        let cube = number * number * number;
        cube * cube * number
    };
    (power(chroma) / (power(chroma) + power(TURN))).sqrt()
}

/// Hue in degrees, 0 to 360; 0 for a grey, which has none.
fn hue(a: f64, b: f64) -> f64 {
    if a == 0.0 && b == 0.0 {
        return 0.0;
    }
    let degrees = libm::atan2(b, a).to_degrees();
    if degrees < 0.0 { degrees + CIRCLE } else { degrees }
}

/// CIEDE2000 with all three parametric factors 1: G. Sharma, W. Wu and E. Dalal, Color Research and Application 30(1),
/// 2005, pp. 21 to 30, equations 2 to 22. The constants are theirs, in the order of the paper.
#[must_use]
#[allow(clippy::similar_names, reason = "the letters of the paper")]
pub fn ciede2000(one: Lab, other: Lab) -> f64 {
    let plain = |lab: Lab| libm::hypot(lab.a(), lab.b());
    let stretch = 1.5 - 0.5 * seventh_power_share(f64::midpoint(plain(one), plain(other)));
    let (a1, a2) = (one.a() * stretch, other.a() * stretch);
    let (c1, c2) = (libm::hypot(a1, one.b()), libm::hypot(a2, other.b()));
    let (h1, h2) = (hue(a1, one.b()), hue(a2, other.b()));
    let grey = c1 * c2 == 0.0;
    let apart = (h1 - h2).abs() > HALF_CIRCLE;
    let turn = if grey {
        0.0
    } else if !apart {
        h2 - h1
    } else if h2 > h1 {
        h2 - h1 - CIRCLE
    } else {
        h2 - h1 + CIRCLE
    };
    let mean_hue = if grey {
        h1 + h2
    } else if !apart {
        f64::midpoint(h1, h2)
    } else if h1 + h2 < CIRCLE {
        f64::midpoint(h1, h2) + HALF_CIRCLE
    } else {
        f64::midpoint(h1, h2) - HALF_CIRCLE
    };
    let d_light = other.l() - one.l();
    let d_chroma = c2 - c1;
    let d_hue = 2.0 * (c1 * c2).sqrt() * libm::sin((turn / 2.0).to_radians());
    let light = f64::midpoint(one.l(), other.l()) - 50.0;
    let chroma = f64::midpoint(c1, c2);
    let wave = |times: f64, shift: f64| libm::cos((times * mean_hue + shift).to_radians());
    let t = 1.0 - 0.17 * wave(1.0, -30.0) + 0.24 * wave(2.0, 0.0) + 0.32 * wave(3.0, 6.0)
        - 0.20 * wave(4.0, -63.0);
    let s_light = 1.0 + 0.015 * light * light / (20.0 + light * light).sqrt();
    let s_chroma = 1.0 + 0.045 * chroma;
    let s_hue = 1.0 + 0.015 * chroma * t;
    let from_blue = (mean_hue - 275.0) / 25.0;
    let rotation = -2.0
        * seventh_power_share(chroma)
        * libm::sin((60.0 * libm::exp(-from_blue * from_blue)).to_radians());
    let (l, c, h) = (d_light / s_light, d_chroma / s_chroma, d_hue / s_hue);
    (l * l + c * c + h * h + rotation * c * h).max(0.0).sqrt()
}

/// A difference as shown.
#[must_use]
pub const fn shown(difference: f64) -> Measure {
    Measure::new(difference, Unit::Ratio, 2)
}

/// How a difference looks, by the limits of the sheet.
#[must_use]
pub fn seen(difference: f64, sheet: &Sheet) -> Ruling<Seen> {
    let seen = if difference < sheet.get(Setting::DifferenceNoticed) {
        Seen::Same
    } else if difference <= sheet.get(Setting::DifferencePlain) {
        Seen::Slight
    } else {
        Seen::Plain
    };
    Ruling::by("optics.difference-seen", seen)
}

/// Whether a colour passes against its sample: its difference against the shop's band.
#[must_use]
pub fn judge(sample: Lab, work: Lab, sheet: &Sheet) -> Ruling<Match> {
    let difference = ciede2000(sample, work);
    let band = sheet.get(Setting::ColourBand);
    let call = if difference <= band { Match::Within } else { Match::Outside };
    Ruling::by("optics.colour-band", call)
        .and("optics.ciede2000")
        .step("colour-difference", "ΔE₀₀", shown(difference))
        .step("colour-band", "", shown(band))
}

/// What is done about transparent colour whose difference to the sample was measured: nothing within the band; outside
/// it, one more pass where it is paler, and back to before the colour where it is darker (coats only add: Beer-Lambert).
///
/// # Errors
/// [`CannotJudge`] when the difference is not told, or decides and the side is not told or contradicts it.
pub fn judge_match(difference: Option<f64>, beside: Option<Beside>, sheet: &Sheet) -> Judged<MatchCall> {
    let difference = difference.ok_or_else(|| CannotJudge::without("delta_e"))?;
    let band = sheet.get(Setting::ColourBand);
    let ruling = if difference <= band {
        Ruling::by("optics.colour-band", MatchCall::Accept)
    } else {
        let call = match beside.ok_or_else(|| CannotJudge::without("seen"))? {
            Beside::Lighter => MatchCall::AddPass,
            Beside::Darker => MatchCall::GoBack,
            Beside::Same => return Err(CannotJudge::between(&["delta_e", "seen"])),
        };
        Ruling::by("optics.coats-add", call).and("optics.colour-band")
    };
    Ok(ruling.step("colour-band", "", shown(band)))
}
