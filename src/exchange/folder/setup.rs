//! How the folder is used, as somebody set it. It is stored apart from how the folder stands: windows that work beside each
//! other write that over each other all the time, and none of them may bring back a password that was let go of in another.

use super::Place;
use crate::record::LocalDate;
use crate::terms;
use serde::{Deserialize, Serialize};

/// Days for which a password may rest on the tablet, our own limit: a year of training.
const REST_MOST_DAYS: i32 = 366;

terms! {
    /// How long the password rests on the tablet. Text: `app.folder.rest.<slug>`.
    Rest {
        /// Until the page is closed or loaded anew.
        Page = "page",
        /// Until the window of the browser is closed.
        Session = "session",
        /// Until the end of a day.
        Day = "day",
    }
}

/// How the folder is used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Setup {
    /// Whether it is used.
    pub on: bool,
    /// Where it is; none where none was ever set.
    pub place: Option<Place>,
    /// Whether results of other tablets are fetched.
    pub takes_results: bool,
    /// Who asks.
    pub user: String,
    /// How long the password rests.
    pub rest: Rest,
    /// The last day on which the password rests; none unless it rests until a day.
    pub until: Option<LocalDate>,
    /// The password, where it rests until a day.
    pub password: Option<String>,
    /// Whether results are handed in by themselves when a check or a set is finished.
    pub hands_in: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self {
            on: false,
            place: None,
            takes_results: false,
            user: String::new(),
            rest: Rest::Page,
            until: None,
            password: None,
            hands_in: false,
        }
    }
}

impl Setup {
    /// Whether a password may rest until that day: today or later, and within a year.
    #[must_use]
    pub fn may_rest(until: LocalDate, today: LocalDate) -> bool {
        (0..=REST_MOST_DAYS).contains(&until.number().saturating_sub(today.number()))
    }

    /// Whether the password rests on the tablet today.
    #[must_use]
    pub fn rests(&self, today: LocalDate) -> bool {
        self.rest == Rest::Day && self.until.is_some_and(|until| Self::may_rest(until, today))
    }

    /// Whether a password is here whose day is over: it must not be used any more, and is to be let go of.
    #[must_use]
    pub fn over(&self, today: LocalDate) -> bool {
        self.password.is_some() && !self.rests(today)
    }

    /// Whether a password that was typed for an earlier setup may go on being used: the folder is used at the same place by
    /// the same user, and nobody let go of the password.
    #[must_use]
    pub fn goes_on(&self, before: &Self) -> bool {
        let let_go = before.password.is_some() && self.password.is_none();
        let same = self.place == before.place && self.user == before.user && self.rest == before.rest;
        self.on && before.on && same && !let_go
    }
}
