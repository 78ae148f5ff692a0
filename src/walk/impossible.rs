//! What cannot be done: what, why, and what can be done now. Nothing is changed then.

use super::decision::Decision;
use crate::terms;

terms! {
    /// Why something cannot be done. Texts: `walk.why.<slug>` and `walk.now.<slug>`.
    Why {
        /// The walk is over.
        Over = "over",
        /// No part was named.
        NoPart = "no-part",
        /// A part is not on the ticket, or was named twice.
        UnknownPart = "unknown-part",
        /// A value is not asked for by the operation, or is not among those that can be set.
        UnknownValue = "unknown-value",
        /// Something has to be chosen first.
        Unchosen = "unchosen",
        /// The shop is closed.
        Closed = "closed",
        /// What is left of the day is too short for it.
        DayTooShort = "day-too-short",
        /// No filler was laid, or coats lie over it.
        NoFiller = "no-filler",
        /// The filler was wiped off before.
        FillerWiped = "filler-wiped",
        /// No mask is there.
        NoMask = "no-mask",
        /// No coat is there.
        NoFilm = "no-film",
        /// A coat lies over the wood.
        FilmOverWood = "film-over-wood",
        /// No stained wood is uppermost.
        NoStain = "no-stain",
        /// There is no binding.
        NoTrim = "no-trim",
        /// Nothing lies on the binding.
        NothingOnTrim = "nothing-on-trim",
        /// No clear is there to buff.
        NoClear = "no-clear",
        /// No finish is there to strip, and nothing in the wood.
        NothingToStrip = "nothing-to-strip",
        /// There are no rags.
        NoRags = "no-rags",
        /// The gun is clean.
        GunClean = "gun-clean",
        /// The fan stands still: the gauge shows nothing.
        FanStill = "fan-still",
        /// Not so long, or no time at all.
        WaitSpan = "wait-span",
        /// No film is there that a test could be made on.
        NothingToTest = "nothing-to-test",
        /// In this air the film never gets that far.
        NeverReady = "never-ready",
        /// That day lies no later than the one that is asked for, or beyond a year.
        DaySpan = "day-span",
        /// Nothing was done, and no other day was offered.
        NothingDone = "nothing-done",
        /// A duty was named twice, or none.
        NoDuty = "no-duty",
        /// The year is over; no job goes on so long.
        YearOver = "year-over",
    }
}

/// A decision that is refused.
#[derive(Debug, Clone, PartialEq)]
pub struct Impossible {
    /// What was asked for.
    pub what: Decision,
    /// Why it cannot be done.
    pub why: Why,
    /// The part that it fails on.
    pub part: Option<usize>,
    /// The name of the value that is wrong or missing.
    pub key: Option<String>,
    /// The least and the greatest value that are allowed.
    pub allowed: Option<(f64, f64)>,
    /// From when on it can be done, in hours after the first midnight.
    pub when: Option<f64>,
}

impl Impossible {
    /// Boxed, since it is what seldom comes of a decision.
    pub(super) fn new(what: &Decision, why: Why) -> Box<Self> {
        Box::new(Self { what: what.clone(), why, part: None, key: None, allowed: None, when: None })
    }

    pub(super) fn on(mut self: Box<Self>, part: usize) -> Box<Self> {
        self.part = Some(part);
        self
    }

    pub(super) fn at(mut self: Box<Self>, key: &str) -> Box<Self> {
        self.key = Some(key.to_owned());
        self
    }

    pub(super) fn within(mut self: Box<Self>, from: f64, to: f64) -> Box<Self> {
        self.allowed = Some((from, to));
        self
    }

    pub(super) fn from(mut self: Box<Self>, when: f64) -> Box<Self> {
        self.when = Some(when);
        self
    }
}
