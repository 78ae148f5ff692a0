//! What assessors write down of work that they watched, and what it comes to. The rules are those of competence-based
//! assessment in general (29 CFR 29.5 asks for demonstrations that a sponsor has verified); counts, days, months and critical
//! marks are those of `content/competencies.toml`, which `tests/competence.rs` holds against its reference tables.

#[path = "../support/mod.rs"]
mod support;

mod agree;
mod begun;
mod demonstrations;
mod fit;
mod signing;
mod struck;
mod together;

use stepboard::content::Competency;
use stepboard::learn::observation::{Asked, Shown, shown};
use stepboard::record::{Event, LocalDate};
use support::log::date;
use support::watch::APPRENTICE;

/// Days after 1 January 2027 on which it is asked.
const TODAY: u32 = 60;

/// An ordinary competency: four demonstrations on three days; its second and sixth criterion are not critical.
fn levelled() -> Competency {
    let one = support::shop::competency("levelled");
    let critical: Vec<bool> = one.criteria.iter().map(|one| one.critical).collect();
    assert_eq!((one.demonstrations, one.days, one.expires_months), (4, 3, 24));
    assert_eq!(critical, [true, false, true, true, true, false]);
    one
}

fn ask<'a>(events: &'a [Event], competency: &'a Competency) -> Shown<'a> {
    ask_after(events, competency, None, date(TODAY))
}

fn ask_after<'a>(
    events: &'a [Event],
    competency: &'a Competency,
    after: Option<LocalDate>,
    today: LocalDate,
) -> Shown<'a> {
    shown(events, &Asked { subject: APPRENTICE, competency, after, today })
}
