//! What was signed: the file to hand over, and the end of the book to note.

use crate::app::pages::sign_book::{head, save_entry};
use crate::app::parts::{Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::signoff::Book;
use yew::prelude::*;

pub(super) fn done(shop: &Shop, book: Option<&Book>, id: &str) -> Html {
    let found =
        book.and_then(|book| Some((book, book.sign_offs().iter().find(|entry| entry.credential.id == id)?)));
    let Some((book, entry)) = found else { return Html::default() };
    let one = &entry.credential;
    let named = [("number", one.subject.to_string()), ("competency", one.achievement.name.clone())];
    html! {
        <>
            <section key="done" class="verdict ok">
                <header>{ sign(SignKind::Right) }<h2 id="signed" tabindex="-1">{ shop.say("sign-off.done") }</h2></header>
                <p>{ shop.say_with("sign-off.done-why", &named) }</p>
                <div class="people">
                    <button type="button" class="control" onclick={save_entry(book, entry)}>{ icon(Picture::Save) }{ shop.say("book.save-file") }</button>
                    <a class="control" href={Route::sign_off(id).address()}>{ icon(Picture::Go) }{ shop.say("sign-off.show") }</a>
                </div>
            </section>
            { head(shop, book) }
        </>
    }
}
