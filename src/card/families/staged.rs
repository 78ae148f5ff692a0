//! What can be told of a fault on a panel: nothing of a stage to which the panel has not come.

use crate::bench::Facts;
use crate::card::scene::PanelStage;
use crate::rules::fault::Fault;
use crate::rules::term::Stage;

/// Answers that speak of a stage of the work: the question, its answer (none: whatever it answers), and how far the panel has
/// come at least where that can be said.
const SPEAKS_OF: [(&str, Option<&str>, PanelStage); 3] = [
    ("first_clear", None, PanelStage::Cleared),
    ("came", Some("on-rubbing"), PanelStage::Rubbed),
    ("rubbed_before", Some("rubbed-yes"), PanelStage::Rubbed),
];

/// Whether an answer about a fault can be told of a panel that has come so far as its facts say.
///
/// A film that lies under the last coat can have been rubbed before that: where the fault can be made so early, it is told.
pub(super) fn is_told(fault: &Fault, facts: &Facts, key: &str, answer: &str) -> bool {
    let Ok(stage) = facts.term::<PanelStage>("panel_stage") else { return true };
    let rubbed_under = key == "rubbed_before"
        && stage >= PanelStage::Cleared
        && fault.made.iter().any(|made| (Stage::Seal..=Stage::Clear).contains(made));
    let mut speaks =
        SPEAKS_OF.iter().filter(|(of, said, _)| *of == key && said.is_none_or(|said| said == answer));
    rubbed_under || speaks.all(|(.., least)| stage >= *least)
}
