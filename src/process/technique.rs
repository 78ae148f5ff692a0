//! Faults of technique: no order of work makes them, the pass, the edge and the room do.

use crate::quantity::{Fraction, Micrometres, Millimetres, Overlap};
use crate::rules::film::{clear_solids, dry};
use crate::rules::mixing::clear_thinning;
use crate::rules::sequence::operation::{COATS, Operation};
use crate::rules::shading::{self, distance};
use crate::rules::sheet::{Setting, Sheet};
use crate::rules::spray::fan::Section;
use crate::rules::spray::overlap::{Lay, lay};
use crate::rules::verdict::RuleId;
use crate::terms;
use serde::{Deserialize, Serialize};

/// Radius under which a coat draws back from an edge, millimetres: common practice, no source ("break every arris").
const SHARP_EDGE_MM: f64 = 0.5;
/// A gun held by hand is held to half an inch, where distances are told in whole ones: common practice, no source.
const BY_EYE_MM: f64 = 12.7;

/// Values of a pass, each as far as it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Pass {
    /// Wet film on the comb.
    pub wet_um: Option<Micrometres>,
    /// Gun to work.
    pub distance_mm: Option<Millimetres>,
    /// Overlap, as a share of the full fan.
    pub overlap: Option<Fraction>,
    /// Radius of the sharpest edge.
    pub edge_radius_mm: Option<Millimetres>,
    /// The face stands upright.
    pub standing: bool,
    /// Both faces were sprayed wet to their common edge.
    pub edge_sprayed_twice: bool,
    /// The extraction stood still, or its filters were full.
    pub extraction_off: bool,
    /// The mix was thicker than the gun takes.
    pub thick_mix: bool,
    /// The coat holds metal flake.
    pub metallic: bool,
    /// The scraper was held at one angle.
    pub scraper_square: bool,
}

terms! {
    /// What went wrong at the gun or with the edge. Text: `term.<slug>`.
    Fumble {
        /// Too thick for the gun, or from too far: it could not flow out.
        OrangePeel = "laid-without-flow",
        /// Droplets dried on the way.
        DrySpray = "dry-on-the-way",
        /// More wet film than a standing face holds.
        Run = "too-wet-standing",
        /// An edge that got the coat of two faces.
        FatEdge = "edge-coated-twice",
        /// A sharp edge that the coat drew back from.
        EdgePullback = "edge-left-sharp",
        /// Air that carried dust into the wet coat.
        DustNib = "dust-in-the-air",
        /// Passes that overlap too little to lie even.
        Stripe = "overlap-too-small",
        /// Flake that swam in a coat too wet.
        Mottle = "flake-too-wet",
        /// A scraper held at one angle.
        Chatter = "scraper-at-one-angle",
    }
}

impl Fumble {
    /// The rule that it breaks.
    #[must_use]
    pub const fn rule(self) -> RuleId {
        RuleId(match self {
            Self::OrangePeel => "technique.flow-out",
            Self::DrySpray => "technique.distance",
            Self::Run => "technique.wet-film",
            Self::FatEdge => "technique.edge-once",
            Self::EdgePullback => "technique.edge-eased",
            Self::DustNib => "technique.extraction",
            Self::Stripe => "technique.overlap",
            Self::Mottle => "technique.flake",
            Self::Chatter => "technique.scraper",
        })
    }

    /// Slugs of the faults it makes.
    #[must_use]
    pub const fn faults(self) -> &'static [&'static str] {
        match self {
            Self::OrangePeel => &["orange-peel"],
            Self::DrySpray => &["dry-spray"],
            Self::Run => &["run-sag"],
            Self::FatEdge => &["fat-edge"],
            Self::EdgePullback => &["edge-pullback"],
            Self::DustNib => &["dust-nib"],
            Self::Stripe => &["lap-stripe"],
            Self::Mottle => &["metallic-mottle"],
            Self::Chatter => &["chatter-mark"],
        }
    }

    /// Whether it first shows when light plays on the gloss.
    #[must_use]
    pub const fn shows_in_gloss(self) -> bool {
        matches!(self, Self::EdgePullback | Self::Chatter)
    }
}

impl Pass {
    /// Dry film of one coat, where the wet one was measured and the mix is the sheet's.
    #[must_use]
    pub fn dry_film(&self, sheet: &Sheet) -> Option<Micrometres> {
        self.wet_um.map(|wet| dry(wet, clear_solids(sheet), clear_thinning(sheet)).answer)
    }

    /// What went wrong in an operation done so.
    #[must_use]
    pub fn fumbles(&self, operation: Operation, sheet: &Sheet) -> Vec<Fumble> {
        if operation == Operation::Scrape || operation == Operation::Trim {
            return if self.scraper_square { vec![Fumble::Chatter] } else { Vec::new() };
        }
        if !COATS.contains(&operation) {
            return Vec::new();
        }
        let (near, far) = held_within(operation, sheet);
        let close = self.distance_mm.is_some_and(|held| held.get() < near.get() - BY_EYE_MM);
        let away = self.distance_mm.is_some_and(|held| held.get() > far.get() + BY_EYE_MM);
        let wet = self.wet_um.map(Micrometres::get);
        let over = |setting| wet.is_some_and(|um| um >= sheet.get(setting));
        let found = [
            (Fumble::OrangePeel, self.thick_mix || (close && !self.standing)),
            (Fumble::DrySpray, away),
            (Fumble::Run, self.standing && (over(Setting::WetSag) || close)),
            (Fumble::FatEdge, self.edge_sprayed_twice),
            (Fumble::EdgePullback, self.edge_radius_mm.is_some_and(|mm| mm.get() < SHARP_EDGE_MM)),
            (Fumble::DustNib, self.extraction_off),
            (Fumble::Stripe, self.overlap.is_some_and(|share| is_striped(share, sheet))),
            (Fumble::Mottle, self.metallic && over(Setting::WetWarn)),
        ];
        found.into_iter().filter(|(_, is)| *is).map(|(fumble, _)| fumble).collect()
    }
}

/// Nearest and farthest gun distance at which an operation is laid without a fault. A seal coat may be laid as a body coat
/// is or as a light pass, and all between.
fn held_within(operation: Operation, sheet: &Sheet) -> (Millimetres, Millimetres) {
    let of = |pass| distance(sheet, pass);
    match operation {
        Operation::Shade => of(shading::Pass::Shading),
        Operation::Seal => (of(shading::Pass::Body).0, of(shading::Pass::LightSeal).1),
        _ => of(shading::Pass::Body),
    }
}

/// Whether passes that overlap by a share of the full fan leave stripes, by the fan of the sheet and what it allows.
fn is_striped(share: Fraction, sheet: &Sheet) -> bool {
    lay(Section::of_sheet(sheet), Overlap::saturating(share.get()), sheet).answer == Lay::Stripes
}
