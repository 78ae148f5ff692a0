//! Withdraws a sign-off: a record more, with its reason, by whoever may sign.

use crate::app::hooks::{use_keys_held, use_signed};
use crate::app::pages::sign::broken_words;
use crate::app::parts::{Field, Picture, Unlock, icon, typed_into};
use crate::app::state::{Keep, use_shop};
use crate::device::{clock, page};
use crate::signoff::Act;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct WithdrawProps {
    /// Name of the sign-off.
    pub(super) id: String,
}

#[component]
pub(super) fn Withdraw(props: &WithdrawProps) -> Html {
    let shop = use_shop();
    let (keys, signed) = (use_keys_held(), use_signed());
    let (reason, sure) = (use_state(String::new), use_state(|| false));
    let (wrong, trouble) = (use_state(<[AttrValue; 2]>::default), use_state(AttrValue::default));
    let open = keys.open.clone();
    let locked = open.is_none();
    let onsubmit = {
        let (shop, reason, sure, id) = (shop.clone(), reason.clone(), sure.clone(), props.id.clone());
        let (wrong, trouble) = (wrong.clone(), trouble.clone());
        let (book, add) = (signed.book().cloned(), signed.add.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let (Some(open), Some(book)) = (&open, &book) else { return };
            let told = reason.trim().to_owned();
            let or = |fit: bool, key: &str| if fit { AttrValue::default() } else { shop.say(key) };
            let found = [or(!told.is_empty(), "book-entry.reason-wrong"), or(*sure, "book-entry.sure-first")];
            let fine = found.iter().all(|one| one.is_empty());
            wrong.set(found);
            if !fine {
                return;
            }
            let not = |why: String| shop.say_with("book-entry.failed", &[("why", why)]);
            let Some(at) = clock::when() else {
                return trouble.set(not(shop.say("sign-off.no-clock").to_string()));
            };
            let act = Act::Withdrawn { credential: id.clone(), reason: told };
            match book.append(act, &open.key, &at, &shop.content().competencies) {
                Err(broken) => trouble.set(not(broken_words(&shop, &broken))),
                Ok(what) => {
                    let (trouble, not_stored) = (trouble.clone(), shop.say("book.not-stored"));
                    let done = Callback::from(move |stored| {
                        trouble.set(if stored { AttrValue::default() } else { not_stored.clone() });
                        if stored {
                            page::once_drawn(|| page::bring("stands"));
                        }
                    });
                    add.emit(Keep { what, done });
                }
            }
        })
    };
    let on_sure = {
        let (sure, now) = (sure.setter(), *sure);
        Callback::from(move |_: Event| sure.set(!now))
    };
    html! {
        <details class="seen paper">
            <summary>{ shop.say("book-entry.withdraw") }</summary>
            <p>{ shop.say("book-entry.withdraw-why") }</p>
            <div key="unlock"><Unlock /></div>
            <form key="form" class="form" hidden={locked} {onsubmit}>
                <Field id="withdraw-reason" label={shop.say("book-entry.reason")} value={(*reason).clone()} on_input={typed_into(&reason)} hint={shop.say("book-entry.reason-hint")} wrong={wrong[0].clone()} />
                <label class={classes!("unit", "sure", (*sure).then_some("picked"))}><input type="checkbox" checked={*sure} onchange={on_sure} />{ icon(Picture::Tick) }<span>{ shop.say("book-entry.sure") }</span></label>
                <p class="wrong" role="alert" hidden={wrong[1].is_empty()}>{ wrong[1].clone() }</p>
                <button type="submit" class="control">{ shop.say("book-entry.go") }</button>
                <p class="wrong" role="alert" hidden={trouble.is_empty()}>{ (*trouble).clone() }</p>
            </form>
        </details>
    }
}
