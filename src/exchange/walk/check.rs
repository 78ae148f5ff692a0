//! Whether the file of a walk may be opened: everything in it is known, within its limits and possible.

use super::WalkFile;
use crate::content::{Content, ENGLISH};
use crate::exchange::fit::{line, moment};
use crate::exchange::{NAME_MOST, Refused};
use crate::rules::term::Term;
use crate::walk::saved::DECISIONS_MOST;
use crate::walk::{Mode, NotKept};

/// Mistakes that may be named in one walk, our own limit: many times those that are planted in one.
const NAMED_MOST: usize = 100;

impl WalkFile {
    pub(super) fn check(&self, content: &Content) -> Result<(), Refused> {
        line("who.journal", &self.who.journal, NAME_MOST, true)?;
        line("who.number", &self.who.number, NAME_MOST, true)?;
        line("who.name", &self.who.name, NAME_MOST, true)?;
        moment("begun", &self.begun)?;
        moment("at", &self.at)?;
        self.check_named(content)?;
        self.walked(content).map(drop)
    }

    /// Mistakes are named of somebody else's walk alone, each at a decision that is there and with a rule that is known.
    fn check_named(&self, content: &Content) -> Result<(), Refused> {
        let most = if self.mode == Mode::Inspect { NAMED_MOST } else { 0 };
        if self.named.len() > most {
            return Err(Refused::value("named", self.named.len(), format!("{most} at most are allowed")));
        }
        if self.graded && most == 0 {
            return Err(Refused::value("graded", self.graded, "false is allowed in a walk of one's own"));
        }
        for (nth, (turn, rule)) in self.named.iter().enumerate() {
            if *turn >= self.decisions.len() {
                let allowed = "the place of a decision, from 0, is allowed";
                return Err(Refused::value(format!("named.{nth}.0"), turn, allowed));
            }
            if content.rule(rule).is_none() {
                return Err(Refused::value(format!("named.{nth}.1"), rule, "the id of a rule is allowed"));
            }
        }
        Ok(())
    }
}

/// Why a walk cannot be walked again, as a file is refused for it.
#[must_use]
pub fn not_kept(not: &NotKept, content: &Content) -> Refused {
    let place = not.place();
    match not {
        NotKept::Walk(slug, known) => Refused::value(place, slug, format!("{} are known", known.join(", "))),
        NotKept::Sheet(name, known) => {
            let allowed = format!("one of {} with its values here is allowed", known.join(", "));
            Refused::value(place, format!("{} {}", name.slug, name.hash), allowed)
        }
        NotKept::Wood => {
            Refused::value(place, "a walk with an unknown wood", "woods of this program are allowed")
        }
        NotKept::TooLong(count) => {
            Refused::value(place, count, format!("{DECISIONS_MOST} at most are allowed"))
        }
        NotKept::Decision(_, no) => {
            let say = |key: &str| {
                let key = format!("walk.{key}.{}", no.why.slug());
                content.texts(ENGLISH).find(&key).unwrap_or(no.why.slug()).to_owned()
            };
            let found = serde_json::to_string(&no.what).unwrap_or_default();
            Refused::value(place, found, format!("{} {}", say("why"), say("now")))
        }
    }
}
