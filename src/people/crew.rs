//! The apprentices of this tablet.

use super::Pin;
use crate::signoff::{ShopNumber, fit_name};
use crate::terms;
use serde::{Deserialize, Serialize};

/// An apprentice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Member {
    /// The number by which the shop knows them; what is signed for them names it and no name.
    pub number: ShopNumber,
    /// Name, as it is shown here.
    pub name: String,
    /// What their events in the journal stand under: the number, or the name under which they answered before they had one.
    pub journal: String,
    /// Their PIN, where they want one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pin: Option<Pin>,
}

/// All of them, in the order in which they came.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Crew {
    members: Vec<Member>,
}

terms! {
    /// Why somebody is not taken in or changed. Text: `app.people.not.<slug>`.
    NotTaken {
        /// The number is another's.
        NumberTaken = "number-taken",
        /// Answers of somebody else stand under the number or the name.
        JournalTaken = "journal-taken",
        /// The name is empty, too long, or has characters that do not show.
        NameUnfit = "name-unfit",
        /// Nobody here has that number.
        Unknown = "unknown",
    }
}

/// Characters of a name, our own limit: it stands on tape beside the title.
pub const NAME_MOST: usize = 40;

impl Crew {
    /// The members, in the order in which they came.
    #[must_use]
    pub fn members(&self) -> &[Member] {
        &self.members
    }

    /// Who has that number.
    #[must_use]
    pub fn member(&self, number: &str) -> Option<&Member> {
        self.members.iter().find(|one| one.number.text() == number)
    }

    /// Who goes by that name, in the order of the crew.
    pub fn named<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a Member> {
        self.members.iter().filter(move |one| one.name == name)
    }

    /// Whose events stand under that in the journal.
    #[must_use]
    pub fn of_journal(&self, journal: &str) -> Option<&Member> {
        self.members.iter().find(|one| one.journal == journal)
    }

    /// The name to show for what stands in the journal.
    #[must_use]
    pub fn shown<'a>(&'a self, journal: &'a str) -> &'a str {
        self.of_journal(journal).map_or(journal, |one| one.name.as_str())
    }

    /// The crew with one more. `formerly` is the name under which they answered so far, if they did; `known` are all under
    /// whom events stand in the journal.
    ///
    /// # Errors
    /// [`NotTaken`]; nothing is changed then.
    pub fn with(
        &self,
        number: ShopNumber,
        name: &str,
        formerly: Option<&str>,
        known: &[&str],
    ) -> Result<Self, NotTaken> {
        if self.member(number.text()).is_some() {
            return Err(NotTaken::NumberTaken);
        }
        let journal = formerly.unwrap_or(number.text());
        let new = formerly.is_none() && known.contains(&journal);
        if new || self.of_journal(journal).is_some() {
            return Err(NotTaken::JournalTaken);
        }
        let member = Member { name: named(name)?, journal: journal.to_owned(), number, pin: None };
        let mut crew = self.clone();
        crew.members.push(member);
        Ok(crew)
    }

    /// The crew with another name for one of them.
    ///
    /// # Errors
    /// [`NotTaken`].
    pub fn renamed(&self, number: &str, name: &str) -> Result<Self, NotTaken> {
        let name = named(name)?;
        self.changed(number, |member| member.name = name)
    }

    /// The crew with another PIN for one of them, or none.
    ///
    /// # Errors
    /// [`NotTaken::Unknown`].
    pub fn with_pin(&self, number: &str, pin: Option<Pin>) -> Result<Self, NotTaken> {
        self.changed(number, |member| member.pin = pin)
    }

    /// The crew without one of them.
    ///
    /// # Errors
    /// [`NotTaken::Unknown`].
    pub fn without(&self, number: &str) -> Result<Self, NotTaken> {
        let mut crew = self.clone();
        crew.members.retain(|one| one.number.text() != number);
        if crew == *self { Err(NotTaken::Unknown) } else { Ok(crew) }
    }

    fn changed(&self, number: &str, change: impl FnOnce(&mut Member)) -> Result<Self, NotTaken> {
        let mut crew = self.clone();
        let member = crew.members.iter_mut().find(|one| one.number.text() == number);
        change(member.ok_or(NotTaken::Unknown)?);
        Ok(crew)
    }
}

fn named(name: &str) -> Result<String, NotTaken> {
    let name = name.trim();
    fit_name(name, NAME_MOST).map(|()| name.to_owned()).map_err(|_| NotTaken::NameUnfit)
}
