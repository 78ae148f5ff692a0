//! Check a sign-off: a signed file and the trust list of the shop, both picked from files, are believed or not. Nothing is
//! sent anywhere and nothing is kept. What a file says is text of somebody unknown and is only ever shown as text.

mod about;
mod code;
mod outcome;
mod pick;

pub(in crate::app) use about::VerifyAbout;

use crate::app::hooks::use_signed;
use crate::app::parts::{Frame, Picture, icon, paper};
use crate::app::route::{Paper, Route};
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::device::files::Picked;
use crate::rules::term::Term;
use crate::signoff::{Book, Refusal, TrustList, Verdict, When, verify};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct VerifyProps {
    /// What of the checked sign-off is to be printed; none for the check itself.
    pub(in crate::app) paper: Option<Paper>,
}

/// What was given so far.
#[derive(Debug, Clone, PartialEq, Default)]
struct Given {
    sign_off: Option<Rc<Picked>>,
    list: Option<Rc<Picked>>,
    /// Whether the list of this tablet's own book is taken in its place.
    own: bool,
    /// A day as the date field writes it; empty for today.
    day: String,
    /// A code typed off paper.
    code: String,
}

/// What is given.
#[derive(Debug)]
enum Give {
    SignOff(Picked),
    List(Picked),
    Own(bool),
    Day(String),
    Code(String),
}

impl Reducible for Given {
    type Action = Give;

    fn reduce(self: Rc<Self>, give: Give) -> Rc<Self> {
        let was = (*self).clone();
        Rc::new(match give {
            Give::SignOff(file) => Self { sign_off: Some(Rc::new(file)), code: String::new(), ..was },
            Give::List(file) => Self { list: Some(Rc::new(file)), own: false, ..was },
            Give::Own(own) => Self { own, ..was },
            Give::Day(day) => Self { day, ..was },
            Give::Code(code) => Self { code, ..was },
        })
    }
}

/// What came of the check.
#[derive(Debug, Clone, PartialEq)]
enum Outcome {
    /// A file is still missing or could not be read.
    Waiting,
    /// The trust list is none, so that nothing can be said of the sign-off.
    NoList(Refusal),
    /// No moment: the clock of the device stands outside of what a moment may be.
    NoDay,
    Judged {
        list: Box<TrustList>,
        verdict: Box<Verdict>,
        on: When,
    },
}

#[component]
pub(in crate::app) fn Verify(props: &VerifyProps) -> Html {
    let shop = use_shop();
    let given = use_reducer(Given::default);
    let signed = use_signed();
    let own = signed.book().filter(|_| given.own).map(|book| (**book).clone());
    let asked = (given.sign_off.clone(), given.list.clone(), given.day.clone(), own);
    let outcome = use_memo(asked, |(sign_off, list, day, own)| {
        let list = own.as_ref().map(Listed::Own).or(list.as_deref().map(Listed::Picked));
        judged(&shop, sign_off.as_deref(), list, day)
    });
    let give = given.dispatcher();
    let paper = props.paper.map_or_else(Html::default, |paper| printed(&shop, paper, &outcome));
    let title = props.paper.map_or("verify.title".to_owned(), |paper| format!("paper.{}", paper.slug()));
    let back = if props.paper.is_some() { Route::Verify } else { Route::Menu };
    let action = props.paper.map_or_else(Html::default, |_| paper::print_button(&shop));
    html! {
        <Frame key={title.clone()} class="sheet verify" title={shop.say(&title)} back={Some(back)} cautions={shop.cautions_for(&[])} {action}>
            <div key="check" class="checking" hidden={props.paper.is_some()}>
                <p key="lead" class="lead">{ shop.say("verify.lead") }</p>
                { pick::files(&shop, &given, &give, signed.book().is_some()) }
                <div key="outcome" class="outcome" aria-live="polite">{ outcome::shown(&shop, &given, &outcome) }</div>
                { code::typed(&shop, &given, &outcome, &give) }
                <p key="about" class="how">
                    <a href={Route::VerifyAbout.address()} class="text-link">{ shop.say("verify.to-about") }{ icon(Picture::Go) }</a>
                </p>
            </div>
            <div key="paper" hidden={props.paper.is_none()}>{ paper }</div>
        </Frame>
    }
}

/// The list that is asked.
enum Listed<'a> {
    /// That of the book of this tablet, with all that the book withdrew.
    Own(&'a Book),
    Picked(&'a Picked),
}

/// The check itself.
fn judged(shop: &Shop, sign_off: Option<&Picked>, list: Option<Listed<'_>>, day: &str) -> Outcome {
    let list = match list {
        Some(Listed::Own(book)) => Some(Ok(book.list_now())),
        Some(Listed::Picked(file)) => file.bytes.as_ref().ok().map(|bytes| TrustList::read(bytes, None)),
        None => None,
    };
    let (Some(Ok(sign_off)), Some(list)) = (sign_off.map(|file| &file.bytes), list) else {
        return Outcome::Waiting;
    };
    let today = clock::today().is_some_and(|today| today.to_string() == day);
    let on = if day.is_empty() || today { clock::when() } else { When::day_or_moment(day).ok() };
    let Some(on) = on else { return Outcome::NoDay };
    match list {
        Err(refusal) => Outcome::NoList(refusal),
        Ok(list) => {
            // By the competencies as they came with the program: what another shop asks for more binds that shop.
            let verdict = verify(sign_off, &list, shop.content().shipped(), &on);
            Outcome::Judged { list: Box::new(list), verdict: Box::new(verdict), on }
        }
    }
}

/// The paper of an accepted sign-off; why there is none of any other.
fn printed(shop: &Shop, paper: Paper, outcome: &Outcome) -> Html {
    let Outcome::Judged { list, verdict, on } = outcome else {
        return html! { <p class="kraft">{ shop.say("verify.pick-first") }</p> };
    };
    match (&verdict.credential, verdict.hash) {
        (Some(one), Some(hash)) if verdict.accepted() => {
            let checked = paper::Checked { one, hash, list, on };
            paper::paper(shop, paper, &checked)
        }
        _ => html! { <p class="kraft">{ shop.say("paper.not-accepted") }</p> },
    }
}
