//! Knowledge evidence of somebody with what they did on other tablets, once their results were read.

use super::{use_book, use_crew, use_people};
use crate::exchange::crew::backing;
use crate::record::Event;
use std::rc::Rc;
use yew::prelude::*;

/// Events that knowledge evidence is taken from; none where this tablet's journal has all there is.
#[hook]
pub(in crate::app) fn use_backing(number: &str) -> Rc<Option<Vec<Event>>> {
    let (books, people, crew) = (use_book(), use_people(), use_crew());
    use_effect_with(crew.load.clone(), |load| load.emit(()));
    let journal = books.book.journal.clone();
    let member = people.crew.member(number).cloned();
    let called = crew.view.as_ref().map(|view| view.people.len());
    use_memo((journal.next_sequence(), member, crew.gathered.clone(), called), |(_, member, ..)| {
        let (member, view) = (member.as_ref()?, crew.view.as_ref()?);
        let key = |key: &str| key == member.number.text() || key == member.journal;
        let person = view.people.iter().find(|one| key(&one.key))?;
        backing(&journal, view.gathered.as_ref()?, person, member)
    })
}
