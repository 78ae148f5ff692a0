//! Keys that sign: those wrapped on this tablet, and the one that is open now.

use super::Keep;
use crate::signoff::{Person, PublicKey, SecretKey, WrappedKey};
use std::rc::Rc;
use yew::prelude::*;

/// A key that its passphrase has opened, and whose it is. It is wiped from memory when it is locked.
#[derive(Debug, Clone)]
pub(in crate::app) struct Unlocked {
    /// Whose it is, by the trust list.
    pub(in crate::app) person: Person,
    pub(in crate::app) key: Rc<SecretKey>,
}

impl PartialEq for Unlocked {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.key, &other.key) && self.person == other.person
    }
}

#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct KeysContext {
    /// Those on this tablet.
    pub(in crate::app) wrapped: Rc<Vec<WrappedKey>>,
    /// Whether what is stored can be read; else nothing is stored over it.
    pub(in crate::app) readable: bool,
    pub(in crate::app) put: Callback<Keep<Vec<WrappedKey>>>,
    /// The one that is open.
    pub(in crate::app) open: Option<Unlocked>,
    /// Opens one, or locks it.
    pub(in crate::app) set_open: Callback<Option<Unlocked>>,
}

impl KeysContext {
    /// The wrapped key with that public one.
    pub(in crate::app) fn wrapped(&self, key: &PublicKey) -> Option<&WrappedKey> {
        self.wrapped.iter().find(|wrapped| wrapped.public == *key)
    }

    /// Those on this tablet and one more.
    pub(in crate::app) fn with(&self, one: WrappedKey) -> Vec<WrappedKey> {
        let others = self.wrapped.iter().filter(|wrapped| wrapped.public != one.public).cloned();
        others.chain([one.clone()]).collect()
    }
}
