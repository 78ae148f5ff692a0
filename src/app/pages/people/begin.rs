//! Begins the sign-off book of a shop: its root key, the first instructor, the first trust list.

use super::made::{Made, made};
use super::passphrase::{PassphraseFields, use_passphrase};
use super::save_key;
use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::parts::{Field, typed_into};
use crate::app::state::{Keep, KeysContext, Shop, SignedContext, use_shop};
use crate::device::{clock, page};
use crate::signoff::{Book, Person, Role, ShopNumber, TrustList, fit_name};
use yew::prelude::*;

/// Characters of the name of a shop and of a person, our own limit.
pub(super) const NAME_MOST: usize = 60;

#[derive(Properties, PartialEq)]
pub(super) struct BeginProps {
    /// The book is begun and stored.
    pub(super) on_begun: Callback<()>,
}

#[component]
pub(super) fn Begin(props: &BeginProps) -> Html {
    let shop = use_shop();
    let (keys, signed) = (use_keys_held(), use_signed());
    let (named, number, name) = (use_state(String::new), use_state(String::new), use_state(String::new));
    let wrong = use_state(<[AttrValue; 3]>::default);
    let (own, root) = (use_passphrase(), use_passphrase());
    let busy = use_state(|| false);
    let trouble = use_state(AttrValue::default);
    let onsubmit = {
        let (shop, named, number, name) = (shop.clone(), named.clone(), number.clone(), name.clone());
        let (wrong, own, root, busy, trouble) =
            (wrong.clone(), own.clone(), root.clone(), busy.clone(), trouble.clone());
        let on_begun = props.on_begun.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            if *busy {
                return;
            }
            let or = |fit: bool, key: &str| if fit { AttrValue::default() } else { shop.say(key) };
            let fit = |text: &str| fit_name(text.trim(), NAME_MOST).is_ok();
            let shop_number = ShopNumber::new(number.trim()).ok();
            let found = [
                or(fit(&named), "people.not.name-unfit"),
                or(shop_number.is_some(), "people.number-unfit"),
                or(fit(&name), "people.not.name-unfit"),
            ];
            let fine = found.iter().all(|one| one.is_empty());
            wrong.set(found);
            let passphrases = (own.checked(&shop), root.checked(&shop));
            let (true, Some(number), (Some(own_typed), Some(root_typed))) = (fine, shop_number, passphrases)
            else {
                return page::to_wrong_field();
            };
            if own_typed == root_typed {
                root.wrong.set((shop.say("people.root-same"), AttrValue::default()));
                return page::to_wrong_field();
            }
            busy.set(true);
            trouble.set(AttrValue::default());
            let first = First { shop: named.trim().to_owned(), number, name: name.trim().to_owned() };
            let (shop, keys, signed) = (shop.clone(), keys.clone(), signed.clone());
            let (own, root, busy, trouble) = (own.clone(), root.clone(), busy.clone(), trouble.clone());
            let on_begun = on_begun.clone();
            page::once_drawn(move || {
                let begun = first.begun(&shop, &own_typed, &root_typed);
                own.clear();
                root.clear();
                let done = {
                    let (busy, trouble, on_begun) = (busy.clone(), trouble.clone(), on_begun.clone());
                    Callback::from(move |said: AttrValue| {
                        busy.set(false);
                        if said.is_empty() {
                            on_begun.emit(());
                        }
                        trouble.set(said);
                    })
                };
                match begun {
                    Err(said) => done.emit(said),
                    Ok(begun) => store(&shop, &keys, &signed, begun, done),
                }
            });
        })
    };
    html! {
        <form class="form paper" {onsubmit}>
            <h2>{ shop.say("people.begin") }</h2>
            <p>{ shop.say("people.begin-why") }</p>
            <Field id="begin-shop" label={shop.say("people.shop")} value={(*named).clone()} on_input={typed_into(&named)} wrong={wrong[0].clone()} />
            <h3>{ shop.say("people.first") }</h3>
            <div class="pair">
                <Field id="begin-number" label={shop.say("people.number")} hint={shop.say("people.number-hint")} value={(*number).clone()} on_input={typed_into(&number)} wrong={wrong[1].clone()} />
                <Field id="begin-name" label={shop.say("people.name")} value={(*name).clone()} on_input={typed_into(&name)} wrong={wrong[2].clone()} />
            </div>
            <PassphraseFields id="begin-own" label={shop.say("people.own-passphrase")} of={own} />
            <h3>{ shop.say("people.root") }</h3>
            <p class="note">{ shop.say("people.root-why") }</p>
            <PassphraseFields id="begin-root" label={shop.say("people.root-passphrase")} of={root} />
            <button type="submit" class="next-step" disabled={*busy}>{ if *busy { shop.say("people.making") } else { shop.say("people.begin-go") } }</button>
            <p class="wrong" role="alert">{ (*trouble).clone() }</p>
        </form>
    }
}

/// The first person of a shop.
struct First {
    shop: String,
    number: ShopNumber,
    name: String,
}

/// What is stored when a book begins.
struct Begun {
    own: Made,
    root: Made,
    book: Book,
}

impl First {
    fn begun(self, shop: &Shop, own: &str, root: &str) -> Result<Begun, AttrValue> {
        let now = clock::when().ok_or_else(|| shop.say("people.no-clock"))?;
        let (own, root) = (made(shop, own)?, made(shop, root)?);
        let Self { number, name, .. } = self;
        let person = Person {
            number,
            name,
            role: Role::Instructor,
            key: own.key.public(),
            from: now.clone(),
            to: None,
        };
        let list = TrustList::first(&self.shop, root.key.public(), now, vec![person]);
        let book = Book::begin(&list, &root.key).map_err(|broken| AttrValue::from(broken.to_string()))?;
        Ok(Begun { own, root, book })
    }
}

/// Keys first: a book whose keys are lost is of no use, keys without a book do no harm.
fn store(shop: &Shop, keys: &KeysContext, signed: &SignedContext, begun: Begun, done: Callback<AttrValue>) {
    let Begun { own, root, book } = begun;
    let mut wrapped = keys.with(own.wrapped.clone());
    wrapped.push(root.wrapped.clone());
    let (shop, add, reload) = (shop.clone(), signed.add.clone(), signed.reload.clone());
    let then = Callback::from(move |stored: bool| {
        if !stored {
            reload.emit(());
            return done.emit(shop.say("people.not-stored"));
        }
        save_key(&root.wrapped, "root");
        let (shop, done) = (shop.clone(), done.clone());
        let book_done = Callback::from(move |stored: bool| {
            done.emit(if stored { AttrValue::default() } else { shop.say("people.not-stored") })
        });
        add.emit(Keep { what: book.clone(), done: book_done });
    });
    keys.put.emit(Keep { what: wrapped, done: then });
}
