//! The bands of which the person who works holds every competency today.

use super::{use_people, use_signed};
use crate::app::state::use_shop;
use crate::device::clock;
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use yew::prelude::*;

#[hook]
pub(in crate::app) fn use_stamped() -> Rc<Vec<Stage>> {
    let shop = use_shop();
    let (people, signed) = (use_people(), use_signed());
    let number = people.crew.of_journal(&shop.settings.person).map(|member| member.number.clone());
    use_memo((number, signed.stored.clone(), clock::today()), |(number, _, _)| {
        let (Some(number), Some(now)) = (number, clock::when()) else { return Vec::new() };
        // Nobody without a number holds anything: the book need not be opened for them.
        let Some(book) = signed.book() else { return Vec::new() };
        let all = shop.content().shipped();
        let held = |band: &&Stage| book.holds_band(number, **band, all, &now);
        Stage::ALL.iter().filter(held).copied().collect()
    })
}
