//! Guided: before something is done, what it will spoil and why. It is tried on a copy of the walk.

use super::decision::Decision;
use super::impossible::Impossible;
use super::lapse::Lapse;
use super::right;
use super::story::Walk;
use crate::content::Content;
use crate::process::defect::Defect;

/// What a decision would bring.
#[derive(Debug, Clone, PartialEq)]
pub enum Warning {
    /// It would make a defect, whether that shows at once or as the work goes on.
    Makes(Defect),
    /// It would bring to light a defect that something before it made.
    Uncovers(Defect),
    /// It would leave a duty undone.
    Leaves(Lapse),
}

/// What a decision would bring, if the work then went on in a right way.
///
/// # Errors
/// [`Impossible`] when it cannot be done.
pub fn warnings(
    walk: &Walk,
    decision: &Decision,
    content: &Content,
) -> Result<Vec<Warning>, Box<Impossible>> {
    let (state, turn) = walk.tried(decision.clone(), content)?;
    let known = walk.run().defects().len();
    let mut found: Vec<Warning> = turn.lapses.iter().map(|lapse| Warning::Leaves(*lapse)).collect();
    let (from, to) = turn.lines;
    let made_here = |defect: &Defect| (from..to).contains(&defect.made);
    for defect in state.run.defects().iter().skip(known) {
        found.push(if made_here(defect) { Warning::Makes(*defect) } else { Warning::Uncovers(*defect) });
    }
    if from < to {
        let shows_later = going_on(&walk.taken(state.clone(), turn), content);
        let new = shows_later.iter().skip(state.run.defects().len()).filter(|defect| made_here(defect));
        found.extend(new.map(|defect| Warning::Makes(*defect)));
    }
    Ok(found)
}

/// All defects of a walk that goes on in a right way until it is handed over.
#[must_use]
pub fn going_on(walk: &Walk, content: &Content) -> Vec<Defect> {
    let on = right::gone_on(walk, content);
    let mut run = on.run().clone();
    if !on.is_over() {
        run.hand_over();
    }
    run.defects().to_vec()
}
