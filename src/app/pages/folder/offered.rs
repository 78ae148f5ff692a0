//! A set, a sheet or a withdrawal that came from the folder: it is looked at, and then taken or not wanted.

use super::named;
use crate::app::pages::open::{Opened, Taking, told, use_taking};
use crate::app::parts::{Picture, SheetOffer, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::exchange::folder::Name;
use crate::exchange::{Ours, OwnSheet, Refused};
use std::rc::Rc;
use yew::prelude::*;

/// What was taken: what it is called, and its screen.
pub(super) type Taken = (String, Route);

#[derive(Properties, PartialEq)]
pub(super) struct OfferedProps {
    pub(super) name: Name,
    pub(super) text: Rc<str>,
    /// Told once it is on this tablet, or with nothing once it is not wanted.
    pub(super) on_done: Callback<(Name, Option<Taken>)>,
}

/// Reads it once.
#[component]
pub(super) fn Offered(props: &OfferedProps) -> Html {
    let shop = use_shop();
    let OfferedProps { name, text, on_done } = props;
    let read = use_memo((shop.clone(), name.clone(), Rc::clone(text)), |(shop, name, text)| {
        Opened::read(shop, name.to_string(), text.as_bytes().to_vec()).map(Rc::new)
    });
    match &*read {
        Ok(opened) => {
            html! { <File name={name.clone()} opened={Rc::clone(opened)} on_done={on_done.clone()} /> }
        }
        Err(refused) => unread(&shop, name, refused, on_done),
    }
}

#[derive(Properties)]
struct FileProps {
    name: Name,
    opened: Rc<Opened>,
    on_done: Callback<(Name, Option<Taken>)>,
}

impl PartialEq for FileProps {
    fn eq(&self, other: &Self) -> bool {
        self.name == other.name && self.on_done == other.on_done && Rc::ptr_eq(&self.opened, &other.opened)
    }
}

#[component]
fn File(props: &FileProps) -> Html {
    let shop = use_shop();
    let FileProps { name, opened, on_done } = props;
    let open = use_state(|| false);
    let taking = use_taking(opened);
    let (title, by) = called(&shop, &opened.ours, &taking);
    let told = open.then(|| match &opened.ours {
        Ours::Sheet(own) => {
            let (name, on_done) = (name.clone(), on_done.clone());
            let on_taken = Callback::from(move |own: OwnSheet| {
                let to = Route::SheetOf { slug: own.slug() };
                on_done.emit((name.clone(), Some((own.name, to))));
            });
            html! { <SheetOffer own={(**own).clone()} {on_taken} /> }
        }
        ours => told(&shop, ours, &taking),
    });
    let Taking { had, taken, failed, may, take, next: (to, _), .. } = taking;
    use_effect_with(taken.is_some(), {
        let (name, on_done, title) = (name.clone(), on_done.clone(), title.clone());
        move |taken| {
            if *taken {
                on_done.emit((name, Some((title, to))));
            }
        }
    });
    let said = match (failed, had) {
        (true, _) => shop.say("open.not-taken"),
        (_, true) => shop.say("open.had"),
        _ => AttrValue::default(),
    };
    let look = {
        let (open, now) = (open.setter(), *open);
        Callback::from(move |_: MouseEvent| open.set(!now))
    };
    let leave = {
        let (name, on_done) = (name.clone(), on_done.clone());
        Callback::from(move |_: MouseEvent| on_done.emit((name.clone(), None)))
    };
    let by = if by.is_empty() {
        title
    } else {
        shop.say_with("folder.called", &[("title", title), ("by", by)]).to_string()
    };
    html! {
        <li class="filed">
            <span class="words">{ named(&shop, name) }<span>{ by }</span></span>
            <button type="button" class="control" aria-expanded={open.to_string()} onclick={look}>{ icon(Picture::Loupe) }{ shop.say("open.look") }</button>
            <button type="button" class="control" onclick={leave}>{ shop.say("folder.leave") }</button>
            <div class="offered" hidden={!*open}>
                { for told }
                <p key="said" role="status" class={classes!(failed.then_some("wrong"))} hidden={said.is_empty()}>{ said.clone() }</p>
                <button key="take" type="button" class="next-step" hidden={!may} onclick={take}>{ icon(Picture::Tick) }{ shop.say("folder.take") }</button>
            </div>
        </li>
    }
}

/// What the file calls itself, and who made it.
fn called(shop: &Shop, ours: &Ours, taking: &Taking) -> (String, String) {
    match ours {
        Ours::Sheet(own) => (own.name.clone(), own.by.clone()),
        Ours::Set(set) => (set.title.clone(), set.by.clone()),
        Ours::Withdrawal(withdrawal) => match &taking.about {
            Some(kept) => (kept.set.title.clone(), withdrawal.by.clone()),
            None => (shop.say("open.withdrawal.not-here").to_string(), String::new()),
        },
        Ours::Walk(_) | Ours::Ticket(_) | Ours::Results(_) => Default::default(),
    }
}

/// A file that an earlier program took from the folder and this one cannot use.
fn unread(shop: &Shop, name: &Name, refused: &Refused, on_done: &Callback<(Name, Option<Taken>)>) -> Html {
    let leave = on_done.reform({
        let name = name.clone();
        move |_: MouseEvent| (name.clone(), None)
    });
    html! {
        <li class="filed wrong">
            { icon(Picture::Caution) }
            <span class="words">{ named(shop, name) }<span>{ shop.refused(refused) }</span></span>
            <button type="button" class="control" onclick={leave}>{ shop.say("folder.leave") }</button>
        </li>
    }
}
