//! Whether a run passes its task, and if not, why: each finding with its rule, what was measured and what is allowed.

mod crossed;

use super::reading::film::FilmRead;
use super::reading::shade::{ShadeRead, Zone};
use super::reading::{PlaceKind, Reading};
use super::setup::Setup;
use crate::quantity::PERCENT_A_WHOLE;
use crate::rules::sheet::Setting;
use crate::rules::verdict::RuleId;
use crate::terms;

terms! {
    /// Why a run does not pass, the gravest first.
    Fault {
        /// The film runs on the standing face.
        Runs = "spray-runs",
        /// Places are as good as bare.
        Missed = "spray-missed",
        /// Too much landed dry.
        DrySpray = "spray-dry",
        /// Too much of the face is thinner than the window.
        Thin = "spray-thin",
        /// Too much of the face is thicker than the window.
        Heavy = "spray-heavy",
        /// The film lies in stripes.
        Stripes = "spray-stripes",
        /// Too much lies past where the film of a repaired place may fade out.
        Strayed = "spray-strayed",
        /// The layers do not cross.
        NotCrossed = "spray-not-crossed",
        /// Colour lies on the centre.
        CentreCovered = "spray-centre-covered",
        /// The edge is paler than wanted.
        Pale = "spray-pale",
        /// The edge is darker than wanted.
        Dark = "spray-dark",
        /// One side is darker than the other.
        Lopsided = "spray-lopsided",
        /// The colour changes along the edge.
        Banded = "spray-banded",
    }
    /// What a measured value and its limit count in.
    Counted {
        /// µm of wet film.
        Film = "um",
        /// A share of a whole, 0 to 1.
        Share = "share",
        /// Places.
        Places = "places",
        /// A colour difference, ΔE₀₀.
        Colour = "delta-e",
        /// Degrees.
        Angle = "deg",
    }
}

/// A reason not to pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finding {
    /// What is wrong.
    pub fault: Fault,
    /// The rule.
    pub rule: RuleId,
    /// What both numbers count in.
    pub counted: Counted,
    /// What was measured.
    pub found: f64,
    /// What is allowed at most, or at least.
    pub limit: f64,
}

/// The reasons not to pass, the gravest first; none for a run that passes.
#[must_use]
pub fn grade(reading: &Reading, setup: &Setup) -> Vec<Finding> {
    let mut found = common(reading, setup);
    if let Some(film) = setup.task.film {
        even(reading, setup, &mut found);
        if let Some(repair) = setup.task.repair {
            let (strayed, most) = (reading.paint.strayed(), repair.past.get());
            if strayed > most {
                found.push(share(Fault::Strayed, RuleId("spraying.repair-stays-local"), strayed, most));
            }
        }
        if film.crossing && film.layers > 1 {
            crossed::judge(&reading.strokes, film.layers, &mut found);
        }
    }
    if let Some(shade) = &reading.shade {
        shaded(shade, setup, &mut found);
    }
    found.sort_by_key(|finding| finding.fault);
    found
}

/// What holds for every task: nothing runs, little lands dry.
fn common(reading: &Reading, setup: &Setup) -> Vec<Finding> {
    let mut found = Vec::new();
    let film = &reading.film;
    if let Some(sag) = setup.sag().filter(|_| count(reading, PlaceKind::Run) > 0.0) {
        found.push(Finding {
            fault: Fault::Runs,
            rule: RuleId("film.sags"),
            counted: Counted::Film,
            found: film.wettest,
            limit: sag,
        });
    }
    let dry_most = setup.task.limits.dry.get();
    if film.dry > dry_most {
        found.push(share(Fault::DrySpray, RuleId("spray.dry-in-flight"), film.dry, dry_most));
    }
    found
}

fn count(reading: &Reading, kind: PlaceKind) -> f64 {
    super::grid::number(reading.places.iter().filter(|place| place.kind == kind).count())
}

const fn share(fault: Fault, rule: RuleId, found: f64, limit: f64) -> Finding {
    Finding { fault, rule, counted: Counted::Share, found, limit }
}

fn even(reading: &Reading, setup: &Setup, found: &mut Vec<Finding>) {
    let film: &FilmRead = &reading.film;
    let missed = count(reading, PlaceKind::Missed);
    if missed > 0.0 {
        found.push(Finding {
            fault: Fault::Missed,
            rule: RuleId("spraying.nothing-missed"),
            counted: Counted::Places,
            found: missed,
            limit: 0.0,
        });
    }
    let least = setup.task.limits.in_window.get();
    if film.in_window < least {
        // All that lies outside counts; it is told by the side on which more of it lies.
        let fault = if film.thin >= film.heavy { Fault::Thin } else { Fault::Heavy };
        found.push(share(fault, RuleId("spraying.film-in-window"), 1.0 - film.in_window, 1.0 - least));
    }
    let stripes = setup.sheet.get(Setting::StripesMost) / PERCENT_A_WHOLE;
    if film.cv > stripes {
        found.push(share(Fault::Stripes, RuleId("spray.stripes-by-sheet"), film.cv, stripes));
    }
}

/// The centre by the shop's colour band; zones, sides and bands by what is plainly another colour.
fn shaded(shade: &ShadeRead, setup: &Setup, found: &mut Vec<Finding>) {
    let (band, plain) = (setup.sheet.get(Setting::ColourBand), setup.sheet.get(Setting::DifferencePlain));
    let mut over = |fault: Fault, rule: RuleId, value: f64, limit: f64| {
        if value > limit {
            found.push(Finding { fault, rule, counted: Counted::Colour, found: value, limit });
        }
    };
    let of = |zone: Zone| shade.zones.iter().find(move |read| read.zone == zone);
    if let Some(centre) = of(Zone::Centre) {
        over(Fault::CentreCovered, RuleId("spraying.centre-stays-clear"), centre.difference, band);
    }
    let fade = || shade.zones.iter().filter(|read| read.zone != Zone::Centre);
    let worst = |darker: bool| {
        let side = fade().filter(|read| (read.lightness < read.wanted) == darker);
        side.map(|read| read.difference).fold(0.0, f64::max)
    };
    over(Fault::Pale, RuleId("spraying.fade-to-target"), worst(false), plain);
    over(Fault::Dark, RuleId("spraying.fade-to-target"), worst(true), plain);
    over(Fault::Lopsided, RuleId("spraying.both-sides-alike"), shade.sides, band);
    over(Fault::Banded, RuleId("spraying.no-bands-along-the-edge"), shade.banding, plain);
}
