//! Faults: what mends them, where they can have been made, when and in which light they are seen.
//!
//! Which faults there are stands in `content/faults.toml`; the severity scale is by the smallest rework that cures a
//! fault, not the rating of a standard.

use super::observe::Seen;
use super::rework::Redo;
use crate::rules::inspection::Zone;
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::term::Stage;
use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;
use serde::{Deserialize, Serialize};

/// The smallest rework that cures a fault; 1 to 4 in files.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "u8", into = "u8")]
pub enum Rework {
    /// 1: rub, nib or polish.
    Rub = 1,
    /// 2: level and recoat locally.
    Local = 2,
    /// 3: recoat or recolour a whole face.
    Face = 3,
    /// 4: strip to wood or to a sound layer.
    Strip = 4,
}

impl TryFrom<u8> for Rework {
    type Error = &'static str;

    fn try_from(severity: u8) -> Result<Self, Self::Error> {
        [Self::Rub, Self::Local, Self::Face, Self::Strip]
            .into_iter()
            .find(|rework| u8::from(*rework) == severity)
            .ok_or("severity must be 1, 2, 3 or 4")
    }
}

impl From<Rework> for u8 {
    fn from(rework: Rework) -> Self {
        rework as Self
    }
}

terms! {
    /// How a fault gives itself away.
    Sign {
        /// It stands up or lies low: texture, specks, runs.
        Relief = "relief",
        /// It bends or dulls the reflection.
        Reflection = "reflection",
        /// Fine lines.
        Lines = "lines",
        /// It differs in colour.
        Colour = "colour",
    }
    /// What a job must have for a fault to occur on it.
    Need {
        /// A part that is filled.
        Filler = "filler",
        /// Stain in the wood.
        Stain = "stain",
        /// Colour in the film.
        Colour = "colour",
        /// A shaded edge.
        Shade = "shade",
        /// Wood with open pores.
        OpenPores = "open-pores",
        /// Wood whose colour or resin creeps.
        BleedingWood = "bleeding-wood",
        /// A mix that cures by catalyst.
        Catalyst = "catalyst",
    }
    /// What cures a fault that stands on a finished clear.
    Cure {
        /// The abrasive: rubbed or levelled out of enough film.
        Abrasive = "abrasive",
        /// The place is opened, mended and recoated.
        Spot = "spot",
        /// The whole face gets a new coat or its colour.
        Face = "face",
        /// The bad layer comes off; a coat on it would only hide it.
        Layer = "layer",
        /// Time; a coat would shut the solvent in.
        Time = "time",
        /// The wood under it is mended first.
        Wood = "wood",
    }
    /// How often a fault is met where nothing has been seen yet. Common practice, no source.
    Met {
        /// Every week in most shops.
        Often = "often",
        /// Neither often nor rarely.
        Usual = "usual",
        /// Only on some work or materials.
        Rare = "rare",
    }
    /// Lamps of the inspection.
    Light {
        /// One lamp held low beside the work.
        Raking = "light-raking",
        /// Strip lamps mirrored in the surface.
        Strip = "light-strip",
        /// A small bright lamp moved about.
        Point = "light-point",
        /// The lamp under which the sample was agreed.
        Sample = "light-sample",
    }
    /// What the surface is when it is looked at.
    Surface {
        /// Bare wood.
        Bare = "surface-bare",
        /// Sealer or colour that does not mirror.
        Matt = "surface-matt",
        /// Clear that mirrors.
        Gloss = "surface-gloss",
    }
}

/// A fault. Texts: `fault.<id>` its name, `fault.<id>.looks` how it looks, `fault.<id>.now` what is done at once,
/// `fault.<id>.fix` the rework, `fault.<id>.prevent` what keeps it from coming back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fault {
    /// Id: kebab-case, from the trade term.
    pub id: String,
    /// Severity: the smallest rework that cures it.
    pub severity: Rework,
    /// Stages at which it can have been made.
    pub made: Vec<Stage>,
    /// Stage at which it first shows.
    pub shows: Stage,
    /// How it gives itself away, where one light is plainly the right one.
    #[serde(default)]
    pub sign: Option<Sign>,
    /// What a job must have, any one of them, for it to occur; empty: any job.
    #[serde(default)]
    pub needs: Vec<Need>,
    /// Where it always lies, if it does.
    #[serde(default)]
    pub lies: Option<Zone>,
    /// What cures it on a finished clear; none: it is not found on one, or no single cure is named.
    #[serde(default)]
    pub cure: Option<Cure>,
    /// How often it is met.
    pub met: Met,
    /// What it shows: by question, the answers that fit it. A question that it does not name tells nothing about it.
    pub seen: Seen,
    /// The questions of `seen` whose answer was read in the sources; the others are common practice, no source.
    #[serde(default)]
    pub read: Vec<String>,
    /// Its causes, the likeliest first: slugs with a text `cause.<slug>`. The ranking is ours.
    pub causes: Vec<String>,
    /// The rework that cures it, step by step.
    pub rework: Vec<Redo>,
    /// Codes of the sources, listed at the head of the file.
    pub source: String,
}

impl Fault {
    /// Whether it can have been made in the clear or after, and so lies in the film that is seen.
    #[must_use]
    pub fn in_the_clear(&self) -> bool {
        self.made.iter().any(|stage| *stage >= Stage::Clear)
    }

    /// Whether every stage that can make it lies before the clear build, or every one lies in it or after.
    #[must_use]
    pub fn one_side_of_clear(&self) -> bool {
        !self.in_the_clear() || self.made.iter().all(|stage| *stage >= Stage::Clear)
    }
}

/// Whether a fault can have been made at a stage.
#[must_use]
pub fn made_at(fault: &Fault, stage: Stage) -> Ruling<bool> {
    Ruling::by("fault.made-before-it-shows", fault.made.contains(&stage))
}

/// Whether a job that has these things can bring a fault.
#[must_use]
pub fn occurs(fault: &Fault, job: &[Need]) -> bool {
    fault.needs.is_empty() || fault.needs.iter().any(|need| job.contains(need))
}

/// Whether a fault can be found at the inspection before the clear build, on a job that has these things.
///
/// What first shows under clear is found there only where the shop lays a protective clear before it inspects.
#[must_use]
pub fn found_before_clear(fault: &Fault, job: &[Need], sheet: &Sheet) -> Ruling<bool> {
    if !occurs(fault, job) {
        return Ruling::by("fault.needs-its-cause", false);
    }
    let made_before = !fault.in_the_clear();
    if made_before && fault.shows == Stage::Clear {
        Ruling::by("fault.protective-clear-shows-it", sheet.is_on(Setting::ProtectiveClear))
    } else {
        Ruling::by("fault.found-once-it-shows", made_before && fault.shows < Stage::Clear)
    }
}

/// The light that shows a sign on a surface. Only a gloss mirrors a lamp: on wood or a matt film the low lamp serves.
/// The surface may be unknown where it does not decide.
///
/// # Errors
/// [`CannotJudge`] when the surface decides and is not known.
pub fn light(sign: Sign, surface: Option<Surface>) -> Judged<Light> {
    let (rule, light) = match (sign, surface) {
        (Sign::Colour, _) => ("fault.colour-under-sample-lamp", Light::Sample),
        (Sign::Relief, _) => ("fault.relief-under-raking-light", Light::Raking),
        (_, None) => return Err(CannotJudge::without("surface")),
        (Sign::Reflection, Some(Surface::Gloss)) => ("fault.flatness-in-strip-lamps", Light::Strip),
        (Sign::Lines, Some(Surface::Gloss)) => ("fault.lines-under-point-lamp", Light::Point),
        (_, Some(Surface::Bare | Surface::Matt)) => ("fault.matt-needs-raking-light", Light::Raking),
    };
    Ok(Ruling::by(rule, light))
}
