//! The next trust list: a key that ends, a person with a new one.

use super::made::{Made, made};
use crate::app::state::Shop;
use crate::signoff::{Book, Person, Role, SecretKey, ShopNumber, When};
use yew::AttrValue;

/// Somebody who gets a key: number, name and role.
pub(super) type Holder = (ShopNumber, String, Role);

/// What is asked of the root key.
pub(super) struct Wanted<'a> {
    /// Whose key ends.
    pub(super) ends: Option<&'a Person>,
    /// When it ends.
    pub(super) end: When,
    /// Who gets a new key.
    pub(super) new: Option<Holder>,
    /// What wraps it.
    pub(super) passphrase: String,
}

/// The book with the new list, and the new key.
pub(super) struct Next {
    pub(super) made: Option<Made>,
    pub(super) book: Book,
}

pub(super) fn next(
    shop: &Shop,
    book: &Book,
    wanted: &Wanted<'_>,
    root: &SecretKey,
    now: &When,
) -> Result<Next, AttrValue> {
    let mut people = book.list().people.clone();
    for person in people.iter_mut().filter(|one| wanted.ends.is_some_and(|ends| ends.key == one.key)) {
        // A key cannot end before it began: then nothing that it signed counts.
        person.to = Some(wanted.end.clone().max(person.from.clone()));
    }
    let made = match &wanted.new {
        None => None,
        Some((number, name, role)) => {
            let made = made(shop, &wanted.passphrase)?;
            let (number, name, key) = (number.clone(), name.clone(), made.key.public());
            people.push(Person { number, name, role: *role, key, from: now.clone(), to: None });
            Some(made)
        }
    };
    let book = book.with_people(people, root, now).map_err(|broken| AttrValue::from(broken.to_string()))?;
    Ok(Next { made, book })
}
