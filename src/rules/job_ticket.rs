//! What is written on the job ticket after each kind of work, and how an entry is put right.
//!
//! That running data are written on the set form is a published task (O*NET 51-9124); which entries, and how a wrong one
//! is put right, is common practice, no source.

use super::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What was done last on a job.
    Done {
        /// Bare wood sanded.
        Sanded = "done-sanded",
        /// Pores filled.
        Filled = "done-filled",
        /// One-part material mixed.
        Mixed = "done-mixed",
        /// Two-part material mixed.
        MixedTwoPart = "done-two-part",
        /// Coats sprayed.
        Sprayed = "done-sprayed",
        /// Film levelled.
        Levelled = "done-levelled",
        /// Inspected, a fault found.
        Inspected = "done-inspected",
    }
    /// What can be written on a ticket.
    Entry {
        /// Date, time and name.
        NameTime = "write-name-time",
        /// Last grit.
        LastGrit = "write-last-grit",
        /// Material and its batch.
        Batch = "write-batch",
        /// Ratio of the mix.
        Ratio = "write-ratio",
        /// Air and work surface, as read.
        Air = "write-air",
        /// Coats laid.
        Coats = "write-coats",
        /// Earliest hour of the next step.
        NextHour = "write-next-hour",
        /// When the mix must be thrown away.
        PotEnd = "write-pot-end",
        /// Film left.
        FilmLeft = "write-film-left",
        /// Fault, place and decision.
        Fault = "write-fault",
        /// How long others took for the same.
        OthersTime = "write-others-time",
    }
    /// What is wrong with an entry.
    EntryTrouble {
        /// A wrong figure; the work was done by the right one.
        Slip = "slip-of-the-pen",
        /// Left out; the figure is known.
        LeftOut = "left-out-known",
        /// Left out; it was never read.
        NeverRead = "left-out-never-read",
        /// A wrong figure, and the work was done by it.
        WorkedTo = "wrong-and-worked-to",
    }
    /// What is done about it.
    EntryMend {
        /// A new entry beside the old one, with date and name.
        NewEntry = "mend-new-entry",
        /// The writer is told and corrects it.
        TellWriter = "mend-tell-writer",
        /// A new entry that says it was not read.
        SayNotRead = "mend-say-not-read",
        /// Work stops, the lead is told, then it is written down.
        StopAndTell = "mend-stop-and-tell",
    }
}

/// Whether an entry must stand on the ticket after a kind of work. Date, time and name always do.
///
/// # Errors
/// [`CannotJudge`] when the work is not told.
pub fn must_stand(entry: Entry, done: Option<Done>) -> Judged<bool> {
    let done = match (entry, done) {
        (Entry::NameTime, _) => return Ok(Ruling::by("job-ticket.date-and-name-always", true)),
        (Entry::OthersTime, _) => return Ok(Ruling::by("job-ticket.work-not-rivals", false)),
        (_, done) => done.ok_or_else(|| CannotJudge::without("done_last"))?,
    };
    let wanted: &[Entry] = match done {
        Done::Sanded => &[Entry::LastGrit],
        Done::Filled => &[Entry::Batch, Entry::NextHour],
        Done::Mixed => &[Entry::Batch, Entry::Ratio],
        Done::MixedTwoPart => &[Entry::Batch, Entry::Ratio, Entry::PotEnd],
        Done::Sprayed => &[Entry::Batch, Entry::Ratio, Entry::Air, Entry::Coats, Entry::NextHour],
        Done::Levelled => &[Entry::LastGrit, Entry::FilmLeft],
        Done::Inspected => &[Entry::Fault],
    };
    Ok(Ruling::by("job-ticket.what-the-next-needs", wanted.contains(&entry)))
}

/// How an entry is put right. `own` tells whether the finder wrote it.
///
/// # Errors
/// [`CannotJudge`] when what decides is not told.
pub fn mend(trouble: EntryTrouble, own: Option<bool>) -> Judged<EntryMend> {
    Ok(match trouble {
        EntryTrouble::WorkedTo => Ruling::by("job-ticket.worked-to-is-reported", EntryMend::StopAndTell),
        _ if !own.ok_or_else(|| CannotJudge::without("entry_own"))? => {
            Ruling::by("job-ticket.writer-corrects", EntryMend::TellWriter)
        }
        EntryTrouble::NeverRead => Ruling::by("job-ticket.not-read-is-said", EntryMend::SayNotRead),
        EntryTrouble::Slip | EntryTrouble::LeftOut => {
            Ruling::by("job-ticket.new-entry-nothing-rubbed-out", EntryMend::NewEntry)
        }
    })
}
