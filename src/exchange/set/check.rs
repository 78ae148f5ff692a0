//! Whether a set may be taken in: everything in it is known and within its limits.

use super::{OWN_CARDS_MOST, Set};
use crate::content::{Allowed, Content, TaskProblem};
use crate::exchange::fit::{line, moment};
use crate::exchange::{NAME_MOST, NOTE_MOST, Refused};

impl Set {
    /// Checks all of it.
    ///
    /// # Errors
    /// [`Refused::Value`] naming the first value that is not allowed.
    pub fn check(&self, content: &Content) -> Result<(), Refused> {
        line("title", &self.title, NAME_MOST, false)?;
        line("note", &self.note, NOTE_MOST, true)?;
        line("by", &self.by, NAME_MOST, false)?;
        moment("at", &self.at)?;
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
