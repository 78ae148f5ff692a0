//! The questions of the card families, a file per topic. Facts, ranges and texts stand in `content/`.

use super::Question;

mod booth_air;
mod booth_run;
mod buff;
mod clean;
mod clear;
mod cup;
mod cure;
mod dry;
mod entry;
mod fault;
mod fault_mend;
mod fill;
mod finish_room;
mod gun;
mod inspect;
mod job_ticket;
mod level;
mod liquids;
#[allow(unreachable_pub, reason = "its closed list is declared as all are")]
mod log;
mod look;
mod mask;
mod masking;
mod material;
mod mix;
mod order;
mod panel;
mod panel_wood;
mod pass;
mod read_wood;
mod rub;
mod sand;
mod scrape;
mod seal;
mod shaded_edge;
mod solid_colour;
mod spray;
mod staged;
mod stain;
#[allow(unreachable_pub, reason = "its closed list is declared as all are")]
mod two_part;
mod vapour;
mod variant;
mod waiting;
mod waste;
mod workup;
mod workup_offer;

/// The questions by topic.
const TOPICS: &[&[&Question]] = &[
    booth_air::ALL,
    buff::ALL,
    clean::ALL,
    clear::ALL,
    cure::ALL,
    dry::ALL,
    entry::ALL,
    fill::ALL,
    gun::ALL,
    inspect::ALL,
    level::ALL,
    material::ALL,
    mix::ALL,
    log::ALL,
    look::ALL,
    order::ALL,
    pass::ALL,
    read_wood::ALL,
    rub::ALL,
    sand::ALL,
    scrape::ALL,
    seal::ALL,
    shaded_edge::ALL,
    solid_colour::ALL,
    spray::ALL,
    stain::ALL,
    waste::ALL,
    mask::ALL,
    masking::ALL,
    fault::ALL,
    fault_mend::ALL,
    panel::ALL,
    panel_wood::ALL,
    workup::ALL,
    two_part::ALL,
    cup::ALL,
    job_ticket::ALL,
    vapour::ALL,
    booth_run::ALL,
    finish_room::ALL,
    liquids::ALL,
    variant::ALL,
];

/// Every question.
#[must_use]
pub fn all() -> Vec<&'static Question> {
    TOPICS.concat()
}

/// The question of that id. Every deal and grade looks one up, so nothing is gathered for it.
#[must_use]
pub fn find(id: &str) -> Option<&'static Question> {
    TOPICS.iter().flat_map(|topic| topic.iter()).copied().find(|question| question.id == id)
}
