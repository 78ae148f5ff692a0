//! Asks whether the book still holds a record whose number and hash were noted on paper.

use crate::app::parts::{Field, SignKind, sign, typed_into};
use crate::app::state::use_shop;
use crate::signoff::Book;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties)]
pub(super) struct NotedProps {
    pub(super) book: Rc<Book>,
}

impl PartialEq for NotedProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.book, &other.book)
    }
}

#[component]
pub(super) fn Noted(props: &NotedProps) -> Html {
    let shop = use_shop();
    let (number, hash) = (use_state(String::new), use_state(String::new));
    let typed: String = hash.chars().filter(char::is_ascii_hexdigit).collect::<String>().to_ascii_lowercase();
    let asked = !number.trim().is_empty() && !typed.is_empty();
    let number_typed = number.trim().parse::<u32>().ok();
    let holds = props
        .book
        .records()
        .iter()
        .any(|record| Some(record.number) == number_typed && record.hash.to_string() == typed);
    let (class, kind, said) = if holds {
        ("ok", SignKind::Right, "book.noted-yes")
    } else {
        ("wrong", SignKind::Wrong, "book.noted-no")
    };
    html! {
        <section class="paper form">
            <h2>{ shop.say("book.noted") }</h2>
            <Field id="noted-number" inputmode="numeric" label={shop.say("book.noted-number")} value={(*number).clone()} on_input={typed_into(&number)} />
            <Field id="noted-hash" label={shop.say("book.noted-hash")} value={(*hash).clone()} on_input={typed_into(&hash)} />
            <p class={classes!("standing", "code-said", class)} role="status">{ for asked.then(|| html! { <>{ sign(kind) }{ shop.say(said) }</> }) }</p>
        </section>
    }
}
