//! What lies on a part: stain, filler, washcoat or coats, in the order in which they were laid.

use crate::quantity::{Fourier, Fraction, Micrometres};
use crate::rules::drying::release::{released, time_for};
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;

/// Share of its solvent that a film has given off when its stated wait is over: an assumption, since no published
/// measurement ties a stated wait to a share (memory). It ranks films, it decides nothing.
const SHARE_AT_WAIT: Fraction = Fraction::saturating(0.9);

/// One thing laid.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Layer {
    /// What was laid.
    pub(super) operation: Operation,
    /// Place of that operation in the run.
    pub(super) place: usize,
    /// Hours since the job began, at its first and its last coat.
    pub(super) begun: f64,
    pub(super) ended: f64,
    /// Coats of it.
    pub(super) coats: u32,
    /// Remarks on how it was laid.
    pub(super) manners: Vec<Manner>,
    /// Dry film of all its coats.
    pub(super) dry: Micrometres,
    /// Scuffed or levelled since.
    pub(super) abraded: bool,
    /// Filler: when its excess was wiped off.
    pub(super) wiped: Option<f64>,
    /// Filler: sanded off the flats since.
    pub(super) sanded: bool,
}

impl Layer {
    pub(super) fn is(&self, manner: Manner) -> bool {
        self.manners.contains(&manner)
    }

    /// From when on it dries.
    pub(super) fn since(&self) -> f64 {
        self.wiped.unwrap_or(self.ended)
    }

    /// Share of its solvent still in it after some hours, given the wait that its film needs (Crank 1975, p. 48).
    pub(super) fn solvent_left(&self, hours: f64, wait: f64) -> Fraction {
        if wait <= 0.0 {
            return Fraction::saturating(0.0);
        }
        let fo = time_for(SHARE_AT_WAIT).get() * hours.max(0.0) / wait;
        Fraction::saturating(1.0 - released(Fourier::saturating(fo)).answer.get())
    }
}
