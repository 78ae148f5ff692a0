//! How the person who works stands by the sign-off book.

use super::{use_people, use_signed};
use crate::app::state::{SignedContext, use_shop};
use crate::content::Content;
use crate::device::clock;
use crate::signoff::{ShopNumber, Standing, When};
use yew::prelude::*;

/// The book of the shop, the number of the person and the moment.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Standings {
    signed: SignedContext,
    number: Option<ShopNumber>,
    pub(in crate::app) now: Option<When>,
}

impl Standings {
    /// In one competency; `None` where the person has no number or the shop no book that fits.
    pub(in crate::app) fn of(&self, content: &Content, slug: &str) -> Option<Standing<'_>> {
        // Nobody without a number holds anything: the book need not be opened for them.
        let (number, now) = self.number.as_ref().zip(self.now.as_ref())?;
        Some(self.signed.book()?.standing(number, slug, content.shipped(), now))
    }
}

#[hook]
pub(in crate::app) fn use_standings() -> Standings {
    let shop = use_shop();
    let (people, signed) = (use_people(), use_signed());
    let number = people.crew.of_journal(&shop.settings.person).map(|member| member.number.clone());
    // To the day: a memo that goes by it is not worked out anew each second.
    let now = use_memo(clock::today(), |_| clock::when());
    Standings { signed, number, now: (*now).clone() }
}
