//! Something large that is never changed: two of them are the same where they are one.

use std::ops::Deref;
use std::rc::Rc;

#[derive(Debug, Default)]
pub(in crate::app) struct Shared<T>(Rc<T>);

impl<T> Shared<T> {
    pub(in crate::app) fn new(what: T) -> Self {
        Self(Rc::new(what))
    }
}

impl<T> Clone for Shared<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> PartialEq for Shared<T> {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl<T> Deref for Shared<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.0
    }
}
