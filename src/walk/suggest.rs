//! Guided: what comes next in a right way, and what leaving it out would break.

use super::decision::Decision;
use super::guided::{Warning, warnings};
use super::lapse::Lapse;
use super::purpose::purpose;
use super::right;
use super::story::Walk;
use super::{Work, at_hand::asked};
use crate::content::{Ask, Content};
use crate::rules::term::Severity;
use crate::rules::verdict::RuleId;

/// Why something comes next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// Left out, it breaks a rule of the work.
    Rule(RuleId),
    /// Left out, it is a duty left undone.
    Lapse(Lapse),
    /// Left out, it breaks nothing; this rule is what it is there for.
    Order(RuleId),
}

/// What comes next.
#[derive(Debug, Clone, PartialEq)]
pub struct Suggested {
    /// One decision, or what is put on and seen to together.
    pub decisions: Vec<Decision>,
    /// `None`: it comes next in the order of the shop sheet, and no rule says more.
    pub why: Option<Reason>,
}

/// What comes next in a right way; `None` where there is none: the room is never fit.
#[must_use]
pub fn suggest(walk: &Walk, content: &Content) -> Option<Suggested> {
    let done = right::to_the_end(walk, content)?;
    let rest = right::decisions_since(walk, &done);
    let of_room = |decision: &&Decision| matches!(decision, Decision::Wear(_) | Decision::Room(_));
    let together = rest.iter().take_while(of_room).count().max(1).min(rest.len());
    let (decisions, after) = rest.split_at(together);
    let why = reason(&done, &gone_on(walk, after, content)).or_else(|| purpose(decisions).map(Reason::Order));
    Some(Suggested { decisions: decisions.to_vec(), why })
}

/// What breaks first where something was left out and does not break where it was done: what endangers people before the
/// rest.
fn reason(done: &Walk, left_out: &Walk) -> Option<Reason> {
    let mut with = broken(done);
    let more: Vec<Reason> = broken(left_out)
        .into_iter()
        .filter(|(reason, part)| {
            let same = with.iter().position(|one| *one == (*reason, *part));
            same.map(|at| with.swap_remove(at)).is_none()
        })
        .map(|(reason, _)| reason)
        .collect();
    let endangers =
        |reason: &&Reason| matches!(reason, Reason::Lapse(lapse) if lapse.severity() == Severity::Safety);
    let lapse = |reason: &&Reason| matches!(reason, Reason::Lapse(_));
    more.iter().find(endangers).or_else(|| more.iter().find(lapse)).or(more.first()).copied()
}

/// The walk after decisions; what cannot be done is left out.
fn gone_on(walk: &Walk, decisions: &[Decision], content: &Content) -> Walk {
    let mut on = walk.clone();
    for decision in decisions {
        let _ = on.decide(decision.clone(), content);
    }
    on
}

/// All that a walk breaks, with the part where it is on the work.
fn broken(walk: &Walk) -> Vec<(Reason, Option<usize>)> {
    let lapses = walk.turns().iter().flat_map(|turn| &turn.lapses).map(|lapse| (Reason::Lapse(*lapse), None));
    let defects = walk.run().defects().iter().map(|one| (Reason::Rule(one.rule()), Some(one.part)));
    lapses.chain(defects).collect()
}

/// A value that could be set otherwise, and the rule that it would break.
#[derive(Debug, Clone, PartialEq)]
pub enum Otherwise {
    /// That option of a choice.
    Pick(String, String, RuleId),
    /// A number far below, or far above.
    Number(Ask, bool, RuleId),
}

/// What other values of an operation would break, each tried alone.
#[must_use]
pub fn otherwise(walk: &Walk, work: &Work, content: &Content) -> Vec<Otherwise> {
    let at_hand = asked(content, &walk.start().sheet, work.operation);
    let breaks = |work: Work| {
        let found = warnings(walk, &Decision::Work(work), content).unwrap_or_default();
        found.iter().find_map(|warning| match warning {
            Warning::Makes(defect) => Some(defect.rule()),
            _ => None,
        })
    };
    let picks = at_hand.choices.iter().flat_map(|choice| choice.options.iter().map(move |one| (choice, one)));
    let picks = picks.filter(|(choice, one)| work.picks.get(&choice.key) != Some(&one.slug));
    let picks = picks.filter_map(|(choice, one)| {
        let mut other = work.clone();
        other.picks.insert(choice.key.clone(), one.slug.clone());
        Some(Otherwise::Pick(choice.key.clone(), one.slug.clone(), breaks(other)?))
    });
    let ends = at_hand.numbers.iter().flat_map(|number| [(number, false), (number, true)]);
    let numbers = ends.filter_map(|(number, above)| {
        let mut other = work.clone();
        other.numbers.insert(number.ask, if above { number.to } else { number.from });
        Some(Otherwise::Number(number.ask, above, breaks(other)?))
    });
    picks.chain(numbers).collect()
}
