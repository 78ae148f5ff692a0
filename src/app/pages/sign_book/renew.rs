//! Puts withdrawals on the trust list: whoever checks a file elsewhere knows of them only by a new one.

use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::pages::sign::broken_words;
use crate::app::parts::{Field, opened, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::device::{clock, page};
use crate::signoff::Book;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct RenewProps {
    pub(super) book: Rc<Book>,
}

impl PartialEq for RenewProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.book, &other.book)
    }
}

#[component]
pub(super) fn Renew(props: &RenewProps) -> Html {
    let shop = use_shop();
    let (keys, signed) = (use_keys_held(), use_signed());
    let (typed, busy) = (use_state(String::new), use_state(|| false));
    let (wrong, said) = (use_state(AttrValue::default), use_state(AttrValue::default));
    let book = Rc::clone(&props.book);
    let behind =
        book.withdrawn().iter().filter(|one| book.list().withdrawal(&one.credential).is_none()).count();
    let root = keys.wrapped(&book.list().root).cloned();
    let here = root.is_some();
    let onsubmit = {
        let (shop, typed, busy, wrong, said) =
            (shop.clone(), typed.clone(), busy.clone(), wrong.clone(), said.clone());
        let add = signed.add.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (Some(root), false) = (root.clone(), *busy) else { return };
            busy.set(true);
            wrong.set(AttrValue::default());
            let (shop, typed, busy, wrong, said) =
                (shop.clone(), typed.clone(), busy.clone(), wrong.clone(), said.clone());
            let (book, add) = (Rc::clone(&book), add.clone());
            page::once_drawn(move || {
                busy.set(false);
                let opened = opened(&shop, &root, &typed);
                typed.set(String::new());
                let key = match opened {
                    Ok(key) => key,
                    Err(why) => return wrong.set(why),
                };
                let Some(at) = clock::when() else { return wrong.set(shop.say("sign-off.no-clock")) };
                match book.with_people(book.list().people.clone(), &key, &at) {
                    Err(broken) => wrong.set(broken_words(&shop, &broken).into()),
                    Ok(what) => {
                        let done = Callback::from(move |stored| {
                            said.set(shop.say(if stored { "book.list-done" } else { "book.not-stored" }));
                        });
                        add.emit(Keep { what, done });
                    }
                }
            });
        })
    };
    html! {
        <section class="paper form" hidden={behind == 0 && said.is_empty()}>
            <p key="said" role="status">{ (*said).clone() }</p>
            <form key="form" class="form" hidden={behind == 0} {onsubmit}>
                <h2>{ shop.say_with("book.list-behind", &[("n", behind.to_string())]) }</h2>
                <p>{ shop.say("book.list-behind-why") }</p>
                <p hidden={here}>{ shop.say("book.list-no-root") }</p>
                <div hidden={!here}>
                    <Field id="renew-root" kind="password" autocomplete="current-password" label={shop.say("book.list-root")} value={(*typed).clone()} on_input={typed_into(&typed)} wrong={(*wrong).clone()} />
                </div>
                <button type="submit" class="control" disabled={*busy || !here}>{ shop.say(if *busy { "book.busy" } else { "book.list-go" }) }</button>
            </form>
        </section>
    }
}
