//! The job ticket: what must stand on it, and how an entry is put right.

use crate::bench::Facts;
use crate::card::question::{After, Ask, Item, Question, Tempt, keep};
use crate::card::{Answer, Dice};
use crate::content::World;
use crate::rules::job_ticket::{self, Entry, EntryMend, EntryTrouble};
use crate::rules::term::Term;
use crate::rules::verdict::{CannotJudge, Judged};

pub(super) const ALL: &[&Question] = &[&TICKET_ENTRIES, &TICKET_MEND];

/// Which entries must stand there? Misconceptions: the same list after every kind of work; others' times belong there.
const TICKET_ENTRIES: Question = Question {
    id: "ticket-entries",
    settle: keep,
    ask: Ask::All { items: entries, holds },
    after: After::is("ticket-tells-nothing"),
};

/// How is an entry put right? Misconceptions: rubbing out; filling gaps by guess; mending another's entry; writing first
/// where the work is wrong.
const TICKET_MEND: Question = Question {
    id: "ticket-mend",
    settle: keep,
    ask: Ask::One { answer: mended, tempt: mend_tempts },
    after: After::is("ticket-not-believed"),
};

fn entries(_: &Facts, _: &World<'_>, _: &mut Dice) -> Vec<Item> {
    let item = |entry: &Entry| {
        let slip = if *entry == Entry::OthersTime { "others-time-on-ticket" } else { "entry-for-other-work" };
        Item::new(entry.slug(), slip).costing("time-lost", "")
    };
    Entry::ALL.iter().map(item).collect()
}

fn holds(facts: &Facts, _: &World<'_>, slug: &str) -> Judged<bool> {
    let entry = Entry::from_slug(slug).ok_or_else(|| CannotJudge::without("entry"))?;
    job_ticket::must_stand(entry, facts.term("done_last").ok())
}

fn mended(facts: &Facts, _: &World<'_>) -> Judged<Answer> {
    let own = facts.yes("entry_own").ok();
    let ruling = job_ticket::mend(facts.term::<EntryTrouble>("entry_trouble")?, own)?;
    Ok(ruling.map(|answer| Answer::term(answer.slug())))
}

fn mend_tempts(_: &Facts, _: &World<'_>) -> Vec<Tempt> {
    vec![
        Tempt::term(EntryMend::NewEntry.slug(), "written-before-told", ""),
        Tempt::term(EntryMend::TellWriter.slug(), "own-entry-passed-on", "time-lost"),
        Tempt::term(EntryMend::SayNotRead.slug(), "known-said-unknown", ""),
        Tempt::term(EntryMend::StopAndTell.slug(), "stopped-for-ink", "time-lost"),
        Tempt::term("mend-rub-out", "rubbed-out", ""),
        Tempt::term("mend-by-guess", "filled-by-guess", ""),
    ]
}
