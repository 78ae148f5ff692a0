//! Defects that are in the work and do not show: what cures each, and what brings it to light.

use super::before::Now;
use super::part::PartState;
use crate::rules::sequence::error::OrderError;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, FILM_COLOUR, LAID, Operation};

/// What is hidden.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum What {
    /// Scratches in the bare wood. New sanding takes them out; whatever is laid shows them.
    Scratches,
    /// Wax of a tack cloth. A coat shows it.
    Wax,
    /// Polish. A solvent wipe takes it off; a coat shows it.
    Polish,
    /// Open pores under a level gloss. Filler, or coats enough to fill them, cure it.
    OpenPores,
    /// Stained wood that was sanded. Dyed again it is a manner of colouring, where it was sanded evenly for that.
    StainCut { to_dye_again: bool },
    /// Colour on unsealed wood that one protective coat may still save.
    BareColour,
    /// A mask under the clear. Scored before it is lifted, it does no harm.
    MaskUnderClear,
    /// Levelled before its wait or with coats to come; by what it may still prove right.
    EarlyCut { early: bool, late_buff: Late, to_be_built_on: bool },
    /// Levelled: colour or wood work after it takes the levelling away.
    Levelled { over_clear: bool },
    /// Buffed: nothing may be laid or levelled any more.
    Buffed,
    /// A protective coat: the colour must be done.
    Protected,
    /// Inspected: colour and scraping must be done.
    Inspected,
    /// Scraped: the colour must be done.
    Scraped,
    /// Filler wiped or sanded that was not laid yet.
    NothingToTidy,
}

/// Whether an early cut may be saved by a buffing that had the whole wait.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Late {
    /// It cannot.
    No,
    /// It may still.
    Awaited,
    /// It was.
    Done,
}

/// A hidden defect.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Hidden {
    pub(super) what: What,
    /// The operation that made it, by place in the run.
    pub(super) made: usize,
}

/// What becomes of a hidden defect.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Fate {
    /// It stays hidden.
    Stays,
    /// It was cured, or can do no harm any more.
    Gone,
    /// It shows.
    Shows,
}

impl What {
    /// The error it comes from.
    pub(super) const fn error(self) -> OrderError {
        match self {
            Self::Scratches => OrderError::ScratchesUnderStain,
            Self::Wax => OrderError::WaxyTackCloth,
            Self::Polish => OrderError::PolishUnderCoat,
            Self::OpenPores => OrderError::PoresUnfilled,
            Self::StainCut { .. } => OrderError::StainSandedBare,
            Self::BareColour => OrderError::ColourUnsealed,
            Self::MaskUnderClear => OrderError::MaskLeftOn,
            Self::EarlyCut { .. } => OrderError::LevelledTooSoon,
            Self::Levelled { .. } | Self::Buffed => OrderError::Finish,
            Self::Protected | Self::Inspected | Self::Scraped => OrderError::Clear,
            Self::NothingToTidy => OrderError::Fill,
        }
    }

    /// What an operation does to it, before the operation changes the part.
    fn meets(&mut self, part: &PartState, now: &Now<'_>) -> Fate {
        use Fate::{Gone, Shows, Stays};
        let op = now.operation();
        let is = |ops: &[Operation]| ops.contains(&op);
        match self {
            Self::Scratches if op == Operation::Sand => Gone,
            Self::Scratches if is(LAID) => Shows,
            Self::Wax if is(COATS) => Shows,
            Self::Polish if op == Operation::SolventWipe => Gone,
            Self::Polish if is(COATS) => Shows,
            Self::OpenPores if op == Operation::Fill => Gone,
            Self::OpenPores if is(COATS) && now.is(Manner::BuildsFill) => Gone,
            Self::StainCut { to_dye_again } if is(LAID) => {
                if *to_dye_again && op == Operation::Stain {
                    Gone
                } else {
                    Shows
                }
            }
            Self::BareColour if op == Operation::Seal => Shows,
            Self::BareColour if op == Operation::Scrape => {
                if part.only_protected() {
                    Gone
                } else {
                    Shows
                }
            }
            Self::MaskUnderClear if op == Operation::Unmask => {
                if now.is(Manner::Scored) {
                    Gone
                } else {
                    Shows
                }
            }
            Self::EarlyCut { to_be_built_on, .. } if is(CLEARS) => {
                if *to_be_built_on {
                    Gone
                } else {
                    Shows
                }
            }
            Self::EarlyCut { late_buff, to_be_built_on, early } if op == Operation::Buff => {
                if *late_buff == Late::Awaited {
                    *late_buff = if now.is_hard(part) { Late::Done } else { Late::No };
                }
                let lost = *early && *late_buff == Late::No && !*to_be_built_on;
                if lost { Shows } else { Stays }
            }
            Self::EarlyCut { late_buff, .. } if is(COATS) => {
                *late_buff = Late::No;
                Stays
            }
            Self::Levelled { over_clear } if is(LAID) && !CLEARS.contains(&op) => {
                if *over_clear && is(COATS) { Stays } else { Shows }
            }
            Self::Levelled { over_clear: false } if is(CLEARS) => Shows,
            Self::Buffed if is(LAID) || op == Operation::Level => Shows,
            Self::Protected if is(FILM_COLOUR) => Shows,
            Self::Inspected if is(FILM_COLOUR) || op == Operation::Scrape => Shows,
            Self::Scraped if is(FILM_COLOUR) => Shows,
            Self::NothingToTidy if op == Operation::Fill => Shows,
            _ => Stays,
        }
    }

    /// Whether it shows once the work is handed over.
    const fn shows_later(self) -> bool {
        match self {
            Self::Scratches | Self::OpenPores | Self::StainCut { .. } | Self::BareColour => true,
            Self::EarlyCut { early, late_buff, .. } => early && !matches!(late_buff, Late::Done),
            _ => false,
        }
    }
}

/// Takes out of a part what an operation cures or brings to light; gives what shows.
pub(super) fn uncover(part: &mut PartState, now: &Now<'_>) -> Vec<Hidden> {
    let (mut shown, mut kept) = (Vec::new(), Vec::new());
    for mut hidden in std::mem::take(&mut part.hidden) {
        match hidden.what.meets(part, now) {
            Fate::Stays => kept.push(hidden),
            Fate::Gone => {}
            Fate::Shows => shown.push(hidden),
        }
    }
    part.hidden = kept;
    shown
}

/// What is still hidden in a part and will show after the work was handed over.
pub(super) fn left(part: &PartState) -> impl Iterator<Item = Hidden> {
    part.hidden.iter().copied().filter(|hidden| hidden.what.shows_later())
}
