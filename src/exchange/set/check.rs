//! Whether a set may be taken in: everything in it is known and within its limits.

use super::{OWN_CARDS_MOST, Set};
use crate::content::{Allowed, Content, TaskProblem};
use crate::exchange::{NAME_MOST, NOTE_MOST, Refused};
use crate::record::{Moment, is_plain};

impl Set {
    /// Checks all of it.
    ///
    /// # Errors
    /// [`Refused::Value`] naming the first value that is not allowed.
    pub fn check(&self, content: &Content) -> Result<(), Refused> {
        plain("title", &self.title, NAME_MOST, false)?;
        plain("note", &self.note, NOTE_MOST, true)?;
        plain("by", &self.by, NAME_MOST, false)?;
        if Moment::of(&self.at).is_none() {
            return Err(Refused::value("at", &self.at, "an instant like 2027-03-12T14:30:00Z is allowed"));
        }
        self.sheet_of(content)?;
        if self.own_cards.len() > OWN_CARDS_MOST {
            let allowed = format!("{OWN_CARDS_MOST} at most are allowed");
            return Err(Refused::value("own_cards", self.own_cards.len(), allowed));
        }
        if let Some(problem) = self.task.problems(content, self.own_count()).into_iter().next() {
            return Err(refused(problem));
        }
        for (nth, card) in self.own_cards.iter().enumerate() {
            card.check().map_err(|refused| refused.inside(&format!("own_cards.{nth}")))?;
            if self.own_cards.iter().take(nth).any(|before| before.id() == card.id()) {
                return Err(Refused::value(format!("own_cards.{nth}"), &card.question, "each card once"));
            }
        }
        match (self.from, self.until) {
            (Some(from), Some(until)) if until < from => Err(Refused::value(
                "until",
                until,
                format!("{from}, the first day, or a later one is allowed"),
            )),
            _ => Ok(()),
        }
    }
}

/// Refuses text that does not show as it is or is too long.
pub(super) fn plain(place: &str, text: &str, most: usize, may_be_empty: bool) -> Result<(), Refused> {
    if is_plain(text, most) && (may_be_empty || !text.is_empty()) {
        return Ok(());
    }
    let least = u32::from(!may_be_empty);
    let allowed = format!("text on one line that shows as it is, {least} to {most} characters");
    Err(Refused::value(place, text, allowed))
}

/// What is wrong with the task, as a file is refused for it.
fn refused(problem: TaskProblem) -> Refused {
    let allowed = match problem.allowed {
        Allowed::Span(from, to) => format!("{from} to {to} is allowed"),
        Allowed::Names(what, names) => format!("a {what} of this program, once: {}", names.join(", ")),
        Allowed::Something(stages) => {
            format!("a stage with cards, a competency or a family; stages with cards: {}", stages.join(", "))
        }
    };
    Refused::value(format!("task.{}", problem.place), problem.found, allowed)
}
