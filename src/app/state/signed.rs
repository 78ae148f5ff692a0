//! The sign-off book of this tablet as the screens see it. It is opened, every record checked, when a screen first asks.

use super::Keep;
use crate::signoff::{Book, Broken, Record};
use std::cell::OnceCell;
use std::rc::Rc;
use yew::prelude::*;

/// What is stored of the book.
#[derive(Debug, Clone)]
pub(in crate::app) enum Signed {
    /// No book is begun.
    None,
    /// Every record fits.
    Open(Rc<Book>),
    /// One does not, with the text of all.
    Broken(Rc<Broken>, Rc<str>),
}

/// The records as they are stored, and the book once it was opened.
#[derive(Debug, Clone, Default)]
pub(in crate::app) struct Stored(Rc<(Vec<String>, OnceCell<Signed>)>);

impl PartialEq for Stored {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Stored {
    /// As they were read.
    pub(in crate::app) fn new(records: Vec<String>) -> Self {
        Self(Rc::new((records, OnceCell::new())))
    }

    /// A book whose every record is known to fit.
    pub(in crate::app) fn of(book: Book) -> Self {
        let records = book.records().iter().map(|record| record.text.clone()).collect();
        Self(Rc::new((records, OnceCell::from(Signed::Open(Rc::new(book))))))
    }

    /// The records that a book has more, where it goes on from these.
    pub(in crate::app) fn more_of(&self, book: &Book) -> Option<Vec<Record>> {
        let here = &self.0.0;
        let goes_on = here.iter().zip(book.records()).all(|(here, there)| *here == there.text);
        (goes_on && here.len() <= book.records().len())
            .then(|| book.records().iter().skip(here.len()).cloned().collect())
    }

    fn signed(&self) -> &Signed {
        let (records, signed) = &*self.0;
        signed.get_or_init(|| {
            if records.is_empty() {
                return Signed::None;
            }
            let text: String = records.iter().map(|record| format!("{record}\n")).collect();
            match Book::open(&text, None) {
                Ok(book) => Signed::Open(Rc::new(book)),
                Err(broken) => Signed::Broken(Rc::new(broken), text.into()),
            }
        })
    }
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SignedContext {
    pub(in crate::app) stored: Stored,
    /// Stores what a book has more than the stored one, which it goes on from.
    pub(in crate::app) add: Callback<Keep<Book>>,
    /// Reads what is stored anew: another window may have written.
    pub(in crate::app) reload: Callback<()>,
}

impl SignedContext {
    pub(in crate::app) fn signed(&self) -> &Signed {
        self.stored.signed()
    }

    /// The book, where there is one and every record of it fits.
    pub(in crate::app) fn book(&self) -> Option<&Rc<Book>> {
        match self.signed() {
            Signed::Open(book) => Some(book),
            Signed::None | Signed::Broken(..) => None,
        }
    }
}
