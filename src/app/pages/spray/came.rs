//! What a run that answers a card came to: sprayed in slices, so that the page goes on meanwhile, and once for the screens
//! that come after each other.

use super::asked::setup_of;
use super::outcome::CameOf;
use super::run;
use crate::app::hooks::use_wanted;
use crate::app::state::{Shop, use_shop};
use crate::card::{self, Answer, Card, Graded};
use crate::content::World;
use crate::device::{clock, once_drawn};
use crate::spraying::{Outcome, Run, Setup};
use std::cell::RefCell;
use std::rc::Rc;
use yew::prelude::*;

/// What an answer came to.
#[derive(Debug, Clone)]
pub(in crate::app) enum Came {
    /// It is no run.
    NoRun,
    /// Its film is being measured.
    Measuring,
    /// All that was measured of it; nothing where no gun can make it on this face.
    Measured(Option<Rc<Outcome>>),
}

impl PartialEq for Came {
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::NoRun, Self::NoRun) | (Self::Measuring, Self::Measuring) => true,
            (Self::Measured(one), Self::Measured(other)) => {
                one.as_ref().map(Rc::as_ptr) == other.as_ref().map(Rc::as_ptr)
            }
            _ => false,
        }
    }
}

impl Came {
    /// Grades the answer by it; `None` while its film is being measured.
    pub(in crate::app) fn graded(&self, card: &Card, world: &World<'_>, answer: &Answer) -> Option<Graded> {
        clock::measured("graded", || match self {
            Self::NoRun => card::grade(card, world, answer),
            Self::Measuring => None,
            Self::Measured(outcome) => card::grade_came(card, world, answer, outcome.as_deref()),
        })
    }
}

/// A face and the run on it.
type Sprayed = (Rc<Setup>, Run);
/// One that was measured, and what it came to.
type Measured = (Sprayed, Option<Rc<Outcome>>);

thread_local!(static LAST: RefCell<Option<Measured>> = const { RefCell::new(None) });

fn last(sprayed: &Sprayed) -> Option<Option<Rc<Outcome>>> {
    LAST.with_borrow(|last| {
        last.as_ref().filter(|(one, _)| one == sprayed).map(|(_, outcome)| outcome.clone())
    })
}

/// What an answer to a card that was dealt on a shop sheet came to.
#[hook]
pub(in crate::app) fn use_came(card: Option<&Rc<Card>>, sheet: &str, answer: Option<&Answer>) -> Came {
    let shop = use_shop();
    let setup = use_memo((shop, card.cloned(), sheet.to_owned()), |(shop, card, sheet)| {
        setup_of(shop, card.as_ref()?, sheet)
    });
    let sprayed = match (setup.as_ref(), answer) {
        (Some(setup), Some(Answer::Run(run))) => Some((Rc::clone(setup), run.clone())),
        _ => None,
    };
    let measured = use_state(|| None::<Measured>);
    let wanted = use_wanted();
    use_effect_with(sprayed.clone(), {
        let (measured, is_wanted) = (measured.setter(), wanted);
        move |sprayed: &Option<Sprayed>| {
            is_wanted.none();
            let Some(sprayed) = sprayed.clone() else { return };
            if let Some(outcome) = last(&sprayed) {
                return measured.set(Some((sprayed, outcome)));
            }
            let is_wanted = is_wanted.anew();
            once_drawn(async move |mut slices| {
                let (setup, run) = &sprayed;
                let outcome = match run.path(setup) {
                    Ok(path) => Some(Rc::new(run::sprayed(path, setup, &mut slices).await)),
                    Err(_) => None,
                };
                LAST.set(Some((sprayed.clone(), outcome.clone())));
                if is_wanted() {
                    measured.set(Some((sprayed, outcome)));
                }
            });
        }
    });
    let Some(sprayed) = sprayed else { return Came::NoRun };
    let own = measured.as_ref().filter(|(one, _)| *one == sprayed).map(|(_, outcome)| outcome.clone());
    own.or_else(|| last(&sprayed)).map_or(Came::Measuring, Came::Measured)
}

/// What came of a run, below the verdict on it.
pub(in crate::app) fn told(shop: &Shop, came: &Came) -> Html {
    match came {
        Came::NoRun => Html::default(),
        Came::Measuring => html! { <p key="sprayed" role="status">{ shop.say("spray.measuring") }</p> },
        Came::Measured(None) => html! { <p key="sprayed" role="status">{ shop.say("spray.no-path") }</p> },
        Came::Measured(Some(run)) => html! { <CameOf key="sprayed" run={Rc::clone(run)} /> },
    }
}
