//! What the strokes of a run come to, and what that says of how the gun was held and moved.

use super::{Advice, Better, Told, plain, told};
use crate::quantity::DUST;
use crate::rules::verdict::RuleId;
use crate::spraying::good::{TAUGHT_OVERLAP, fitted, lead, speeds};
use crate::spraying::setup::{AS_SET, Setup};
use crate::spraying::strokes::Stroke;

/// A gun that stands longer than this in a stroke leaves a heavy spot, s (an assumption, no source).
const STOOD: f64 = 0.15;
/// More tilt than this is told, degrees: from here on it costs over 3 % of the film (cosine).
const TILTED: f64 = 15.0;
/// A distance that changes by more than this over a stroke is told, as a share of it: an arc of 15 degrees from the elbow
/// does it (computed from the arc of `spray_check.csv`).
const ARCED: f64 = 0.15;
/// A speed that spreads by more than this is told (an assumption, no source).
const UNSTEADY: f64 = 0.2;
/// Overlaps between these lie even with a tapered fan (`spray_check.csv`: cv under 7.4 % from 40 to 60 %).
pub const OVERLAPS: (f64, f64) = (0.4, 0.6);
/// A fan is told that is set wider or narrower than the task sets it by more than this share (an assumption, no source).
const OFF_FAN: f64 = 0.1;
/// A speed is told where it is off by more than this share (an assumption, no source).
const OFF_SPEED: f64 = 0.1;
/// More than this share of a face is most of it (an assumption, no source).
const MOST: f64 = 0.5;
/// A lead of so many times the one needed wastes paint (an assumption, no source).
const LONG_LEAD: f64 = 2.0;

/// Means over the strokes of a run.
pub(super) struct Means<'r> {
    strokes: &'r [Stroke],
    setup: &'r Setup,
}

impl<'r> Means<'r> {
    pub(super) const fn of(strokes: &'r [Stroke], setup: &'r Setup) -> Self {
        Self { strokes, setup }
    }

    /// Mean of what strokes tell, each weighed by its length; `None` where none tells it.
    fn mean(&self, of: impl Fn(&Stroke) -> Option<f64>) -> Option<f64> {
        let (mut sum, mut weight) = (0.0, 0.0);
        for stroke in self.strokes {
            if let Some(value) = of(stroke) {
                sum += value * stroke.length;
                weight += stroke.length;
            }
        }
        (weight > 0.0).then(|| sum / weight)
    }

    fn most(&self, of: impl Fn(&Stroke) -> f64) -> f64 {
        self.strokes.iter().map(of).fold(0.0, f64::max)
    }

    pub(super) fn stood(&self) -> Option<Advice> {
        let stood = self.most(|stroke| stroke.stood);
        (stood > STOOD)
            .then(|| told(Better::KeepMoving, RuleId("spray.trigger-held"), Told::Seconds, stood, 0.0))
    }

    pub(super) fn near(&self) -> Option<Advice> {
        let (from, _) = self.setup.distances();
        let held = self.mean(|stroke| Some(stroke.distance)).filter(|held| *held < from)?;
        Some(told(Better::GoBack, RuleId("spray.distance-by-gun"), Told::Millimetres, held, from))
    }

    pub(super) fn far(&self) -> Option<Advice> {
        let (_, to) = self.setup.distances();
        let held = self.mean(|stroke| Some(stroke.distance)).filter(|held| *held > to)?;
        Some(told(Better::ComeNearer, RuleId("spray.distance-by-gun"), Told::Millimetres, held, to))
    }

    /// How wide the fan was set, and how wide the task sets it, mm, where they are apart.
    fn fans(&self) -> Option<(f64, f64)> {
        let wanted = self.setup.task.gun.fan_mm.get();
        let share = self.mean(|stroke| Some(stroke.wide)).filter(|share| (share - AS_SET).abs() > OFF_FAN)?;
        Some((share * wanted, wanted))
    }

    fn narrow(&self) -> Option<Advice> {
        let (found, wanted) = self.fans().filter(|(found, wanted)| found < wanted)?;
        Some(told(Better::OpenFan, RuleId("spray.film-of-a-pass"), Told::Millimetres, found, wanted))
    }

    pub(super) fn wide(&self) -> Option<Advice> {
        let (found, wanted) = self.fans().filter(|(found, wanted)| found > wanted)?;
        Some(told(Better::CloseFan, RuleId("spray.film-of-a-pass"), Told::Millimetres, found, wanted))
    }

    fn tilted(&self) -> Option<Advice> {
        let tilt = self.mean(|stroke| Some(stroke.tilt)).filter(|tilt| *tilt > TILTED)?;
        Some(told(Better::HoldSquare, RuleId("spray.tilt"), Told::Degrees, tilt, 0.0))
    }

    fn arced(&self) -> Option<Advice> {
        let swing = |stroke: &Stroke| (stroke.distances.1 - stroke.distances.0) / stroke.distance.max(1.0);
        let swing = self.mean(|stroke| Some(swing(stroke))).filter(|swing| *swing > ARCED)?;
        Some(told(Better::KeepDistance, RuleId("spray.arc"), Told::Share, swing, 0.0))
    }

    /// How far before the edge the trigger has to be pulled at the mean speed, mm.
    fn lead_needed(&self) -> f64 {
        let held = self.setup.held(self.setup.middle_distance(), 0.0);
        let speed = self.mean(|stroke| Some(stroke.speed)).unwrap_or(0.0);
        lead(self.setup, held.half_thin, speed)
    }

    /// The trigger pulled too late, or let go too early: behind the edge the gun is open, so that half the spot is needed.
    fn short(&self) -> Option<Advice> {
        let (before, behind) =
            (self.lead_needed(), self.setup.held(self.setup.middle_distance(), 0.0).half_thin);
        let less = |found: Option<f64>, needed: f64| {
            found.filter(|found| *found < needed / 2.0).map(|found| (found, needed))
        };
        let late = less(self.mean(|stroke| stroke.lead), before);
        let (found, needed) = late.or_else(|| less(self.mean(|stroke| stroke.lag), behind))?;
        Some(told(Better::LeadMore, RuleId("spray.trigger-lead"), Told::Millimetres, found, needed))
    }

    fn apart(&self) -> Option<Advice> {
        let least = self.strokes.iter().filter_map(|stroke| stroke.overlap).fold(1.0, f64::min);
        let told = told(Better::OverlapMore, RuleId("spray.full-width"), Told::Share, least, TAUGHT_OVERLAP);
        (least < OVERLAPS.0).then_some(told)
    }

    fn close(&self) -> Option<Advice> {
        // What passes need to share the face evenly is not too close.
        let most = OVERLAPS.1.max(fitted(self.setup) + DUST);
        let mean = self.mean(|stroke| stroke.overlap).filter(|mean| *mean > most)?;
        Some(told(Better::OverlapLess, RuleId("spray.full-width"), Told::Share, mean, TAUGHT_OVERLAP))
    }

    fn unsteady(&self) -> Option<Advice> {
        (self.mean(|stroke| Some(stroke.unsteady))? > UNSTEADY).then(|| self.evenly())
    }

    pub(super) fn evenly(&self) -> Advice {
        let spread = self.mean(|stroke| Some(stroke.unsteady)).unwrap_or(0.0);
        told(Better::Evenly, RuleId("spraying.one-speed"), Told::Share, spread, 0.0)
    }

    /// The mean speed, and that of the good run, where an even film is asked for and they are apart.
    fn speeds(&self) -> Option<(f64, f64)> {
        let wanted = self.setup.task.film.and_then(|_| speeds(self.setup))?.mean;
        let found = self.mean(|stroke| Some(stroke.speed))?;
        ((found / wanted - 1.0).abs() > OFF_SPEED).then_some((found, wanted))
    }

    fn faster(&self) -> Option<Advice> {
        let (found, wanted) = self.speeds().filter(|(found, wanted)| found < wanted)?;
        Some(told(Better::Faster, RuleId("spray.film-of-a-pass"), Told::Speed, found, wanted))
    }

    fn slower(&self) -> Option<Advice> {
        let (found, wanted) = self.speeds().filter(|(found, wanted)| found > wanted)?;
        Some(told(Better::Slower, RuleId("spray.film-of-a-pass"), Told::Speed, found, wanted))
    }

    pub(super) fn runs(&self) -> Advice {
        let ways = self.stood().or_else(|| self.near()).or_else(|| self.narrow()).or_else(|| self.faster());
        let layered = self.setup.task.film.is_some_and(|film| film.layers > 1);
        if layered {
            return ways.unwrap_or(plain(Better::Wait, RuleId("spraying.flash-off-between-layers")));
        }
        ways.or_else(|| self.close()).unwrap_or(plain(Better::OnceLess, RuleId("film.sags")))
    }

    pub(super) fn missed(&self) -> Advice {
        let ways = self.narrow().or_else(|| self.apart()).or_else(|| self.short()).or_else(|| self.far());
        ways.unwrap_or(plain(Better::CoverAll, RuleId("spraying.nothing-missed")))
    }

    pub(super) fn dry(&self) -> Advice {
        self.far().unwrap_or(plain(Better::ComeNearer, RuleId("spray.dry-in-flight")))
    }

    /// `share` of the face is thin. Where most of it is, the ends of the strokes are not why.
    pub(super) fn thin(&self, share: f64) -> Advice {
        let ways = self.far().or_else(|| self.wide()).or_else(|| self.tilted());
        let ways = ways.or_else(|| (share > MOST).then(|| self.slower()).flatten());
        let ways = ways.or_else(|| self.short()).or_else(|| self.apart()).or_else(|| self.slower());
        ways.unwrap_or(plain(Better::CoverAll, RuleId("spraying.film-in-window")))
    }

    pub(super) fn heavy(&self) -> Advice {
        let ways = self.stood().or_else(|| self.near()).or_else(|| self.narrow());
        let ways = ways.or_else(|| self.close()).or_else(|| self.faster());
        ways.unwrap_or(plain(Better::OnceLess, RuleId("spraying.film-in-window")))
    }

    pub(super) fn striped(&self) -> Advice {
        let ways = self
            .stood()
            .or_else(|| self.arced())
            .or_else(|| self.narrow())
            .or_else(|| self.apart())
            .or_else(|| self.close());
        let ways = ways.or_else(|| self.unsteady()).or_else(|| self.short());
        ways.unwrap_or_else(|| self.evenly())
    }

    pub(super) fn strayed(&self) -> Advice {
        let ways = self.far().or_else(|| self.wide()).or_else(|| self.wasteful());
        ways.unwrap_or(plain(Better::LeadLess, RuleId("spraying.repair-stays-local")))
    }

    pub(super) fn pale(&self) -> Advice {
        let ways = self.far().or_else(|| self.wide());
        ways.unwrap_or(plain(Better::OnceMore, RuleId("spraying.fade-to-target")))
    }

    pub(super) fn dark(&self) -> Advice {
        let ways = self.near().or_else(|| self.narrow());
        ways.unwrap_or(plain(Better::OnceLess, RuleId("spraying.fade-to-target")))
    }

    /// A run that passes can still save paint.
    pub(super) fn wasteful(&self) -> Option<Advice> {
        let needed = self.lead_needed();
        let lead = self.mean(|stroke| stroke.lead).filter(|lead| *lead > LONG_LEAD * needed)?;
        Some(told(Better::LeadLess, RuleId("spraying.lead-wastes"), Told::Millimetres, lead, needed))
    }
}
