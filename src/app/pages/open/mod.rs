//! A file of ours, picked or standing in a link: what it is, before it is taken, and what comes next once it is.

mod given;
mod results;
mod shown;
mod taking;
mod ticket;
mod walk;

pub(super) use shown::told;
pub(super) use taking::{Taking, use_taking};

use crate::app::parts::{Frame, Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::exchange::{Ours, Refused};
use given::{Give, Given};
use shown::Shown;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct OpenProps {
    /// What stands in the address; none where a file is to be picked.
    pub(in crate::app) code: Option<String>,
}

/// A file that was read, and its text.
#[derive(Debug)]
pub(super) struct Opened {
    /// What it is called, or that it stood in a link.
    name: String,
    pub(super) ours: Ours,
    text: String,
}

impl Opened {
    /// Reads and checks a file of any kind.
    pub(super) fn read(shop: &Shop, name: String, bytes: Vec<u8>) -> Result<Self, Refused> {
        let ours = Ours::read(&bytes, shop.content())?;
        // What was read as JSON is text.
        Ok(Self { name, ours, text: String::from_utf8(bytes).unwrap_or_default() })
    }
}

/// What was given: nothing yet, something that is refused, or a file that was read.
#[derive(Debug, Clone)]
enum Outcome {
    Waiting,
    Refused(Refused),
    Found(Rc<Opened>),
}

impl PartialEq for Outcome {
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Waiting, Self::Waiting) => true,
            (Self::Refused(one), Self::Refused(other)) => one == other,
            (Self::Found(one), Self::Found(other)) => Rc::ptr_eq(one, other),
            _ => false,
        }
    }
}

impl Outcome {
    fn of(shop: &Shop, Given { name, bytes }: Given) -> Self {
        let opened = bytes.and_then(|bytes| Opened::read(shop, name, bytes));
        opened.map_or_else(Self::Refused, |opened| Self::Found(Rc::new(opened)))
    }
}

#[component]
pub(in crate::app) fn Open(props: &OpenProps) -> Html {
    let shop = use_shop();
    // Which of the files that were picked, from 1, and what it is.
    let picked = use_state(|| (0_u32, Outcome::Waiting));
    let count = use_mut_ref(|| 0_u32);
    let in_link = use_memo((shop.clone(), props.code.clone()), |(shop, code)| match code {
        Some(code) => Outcome::of(shop, Given::linked(shop, code)),
        None => Outcome::Waiting,
    });
    let on_given = {
        let (shop, set) = (shop.clone(), picked.setter());
        Callback::from(move |given: Given| {
            *count.borrow_mut() += 1;
            set.set((*count.borrow(), Outcome::of(&shop, given)));
        })
    };
    // What is gone through stands alone.
    let looked = use_state(|| None::<String>);
    let (key, outcome) = match &props.code {
        Some(code) => (code.clone(), &*in_link),
        None => (picked.0.to_string(), &picked.1),
    };
    let inside = match outcome {
        Outcome::Waiting => Html::default(),
        Outcome::Refused(refused) => refusal(&shop, refused, props.code.is_some()),
        // What became of one file is not said of the next.
        Outcome::Found(opened) => {
            let (looked, gone_through) = (looked.setter(), key.clone());
            let on_look = Callback::from(move |()| looked.set(Some(gone_through.clone())));
            html! { <Shown key={key.clone()} opened={Rc::clone(opened)} {on_look} /> }
        }
    };
    html! {
        <Frame class="sheet open-page" title={shop.say("open.title")} back={Some(Route::Menu)} cautions={shop.cautions_for(&[])}>
            <div key="given" hidden={props.code.is_some() || looked.as_ref() == Some(&key)}><Give {on_given} /></div>
            <div key="outcome" aria-live="polite">{ inside }</div>
        </Frame>
    }
}

/// Why something is not taken: what, where, what is allowed.
fn refusal(shop: &Shop, refused: &Refused, in_link: bool) -> Html {
    html! {
        <section class="verdict wrong">
            <header>{ sign(SignKind::Wrong) }<h2>{ shop.say("open.refused") }</h2></header>
            <p class="told why">{ shop.refused(refused) }</p>
            <p class="note">{ shop.say("open.refused-why") }</p>
            <p key="other" class="people" hidden={!in_link}><a href={Route::Open.address()} class="control">{ shop.say("open.other") }{ icon(Picture::Go) }</a></p>
        </section>
    }
}
