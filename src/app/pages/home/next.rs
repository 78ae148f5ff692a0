//! The next step, what is said of it, and what a touch of it does.

use super::waiting::{OpenCheck, Waiting};
use crate::app::hooks::{use_desk, use_enter, use_sets, use_told};
use crate::app::pages::deal;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shared, Shop, use_shop};
use crate::device::rest;
use crate::learn::check::Takings;
use crate::learn::memory::Reason;
use crate::learn::{Front, Known, Round};
use crate::record::Entry;
use crate::rules::term::{Stage, Term};
use std::rc::Rc;
use yew::prelude::*;

/// The words of the next step.
pub(super) struct Said {
    pub(super) title: AttrValue,
    /// Why it is the next one.
    pub(super) why: AttrValue,
    /// What its button says.
    pub(super) go: AttrValue,
}

/// What comes next.
enum Step {
    /// A card that was wrong and would have been done on the job, to be worked once more before anything else.
    Again(Stage),
    Waits(Waiting),
    /// The card on the desk, the so-manieth of its round.
    OnDesk(Stage, u32),
    /// A card that practice deals.
    Deal(Stage, Reason),
    /// No card is to be had.
    Nothing,
}

/// The next step of the person at work.
pub(super) struct Next {
    step: Step,
    /// Stage of the card of practice that comes next, or is worked once more.
    pub(super) stage: Option<Stage>,
    /// Whether nothing was answered so far.
    pub(super) is_first: bool,
    start: Callback<()>,
    /// A check that is open besides what comes next.
    also: Option<OpenCheck>,
}

/// `front` is what the journal leaves for the first screen, while it is still being read.
#[hook]
pub(super) fn use_next(known: &Known, front: Option<&Shared<Front>>) -> Next {
    let shop = use_shop();
    let told = use_told();
    let desk = use_desk();
    let sets = use_sets();
    let of = (told.journal.clone(), shop.settings.person.clone(), shop.settings.device.clone());
    let takings = use_memo(of, |(journal, person, device)| Takings::of(journal.events(), person, device));
    let takings = front.map_or(&*takings, |front| &front.takings);
    let check = use_memo((shop.clone(), Rc::clone(&told)), |(shop, told)| OpenCheck::of(shop, told));
    let check = (*check).clone();
    let waits = Waiting::of(&sets.all, takings);
    let stage_of = |family: &str| shop.content().family(family).map(|family| family.stage);
    let on_desk = desk.draft.filter(|draft| draft.person == shop.settings.person);
    let open = on_desk.as_ref().filter(|draft| draft.handed.is_none());
    let open = open.and_then(|draft| Some((stage_of(&draft.card.family)?, draft.done)));
    let was_wrong = |number: u64| match front {
        Some(front) => front.again == Some(number),
        None => told.journal.find(number).is_some_and(Entry::sure_and_wrong),
    };
    let again = on_desk.as_ref().filter(|draft| !draft.reworked && draft.handed.is_some_and(was_wrong));
    let next = deal::next(&shop, (known, &told.ends), None);
    let coming = next.as_ref().and_then(|(family, reason)| Some((stage_of(family)?, *reason)));
    let step = match (again.and_then(|draft| stage_of(&draft.card.family)), waits, open, coming) {
        (Some(stage), ..) => Step::Again(stage),
        // A set that somebody put together for whoever works here goes before what practice would ask.
        (_, Some(waits), ..) => Step::Waits(waits),
        (_, _, Some((stage, done)), _) => Step::OnDesk(stage, done),
        // A card of practice that lies there is done first.
        (.., coming) => match (&check, coming) {
            (Some(check), _) => Step::Waits(Waiting::Check(check.clone())),
            (None, Some((stage, reason))) => Step::Deal(stage, reason),
            (None, None) => Step::Nothing,
        },
    };
    let (begins, way) = match &step {
        Step::Waits(waits) => (false, Some(waits.clone())),
        Step::Deal(..) => (true, None),
        _ => (false, None),
    };
    let reading = front.is_some();
    let start = use_callback(
        (shop.clone(), told, desk.put, begins, way, reading),
        |(), (shop, told, put, begins, way, reading)| {
            if let Some(waits) = way {
                return waits.way_on(shop).go();
            }
            if *begins {
                // Practice deals the card once the journal and what deals are there.
                let wait = *reading || !rest::is_there();
                put.emit(if wait { None } else { deal::fresh(shop, told, None, None, 0) });
            }
            Route::Practise.go();
        },
    );
    use_enter(start.clone());
    let stage = match step {
        Step::Again(stage) => Some(stage),
        _ => open.map(|(stage, _)| stage).or(coming.map(|(stage, _)| stage)),
    };
    let also = check.filter(|_| !matches!(step, Step::Waits(Waiting::Check(_))));
    Next { step, stage, is_first: known.latest.is_empty(), start, also }
}

impl Next {
    /// The ticket on which it stands.
    pub(super) fn ticket(&self, shop: &Shop) -> Html {
        let Said { title, why, go } = self.said(shop);
        let waits = matches!(self.step, Step::Waits(_)).then_some("waits");
        html! {
            <div key="ticket" class={classes!("ticket", "next-ticket", waits)}>
                <span class="hole" aria-hidden="true"></span>
                <h2>{ title }</h2>
                <p>{ why }</p>
                <button type="button" class="next-step" hidden={go.is_empty()} onclick={self.start.reform(|_: MouseEvent| ())}>
                    { go }{ icon(Picture::Go) }
                </button>
            </div>
        }
    }

    /// The way to a check that is open besides.
    pub(super) fn also(&self, shop: &Shop) -> Html {
        let Some(check) = self.also.clone() else { return Html::default() };
        let go = shop.say_with("home.check-also", &[("n", check.next_card().to_string())]);
        let to = Waiting::Check(check).way_on(shop);
        html! { <a key="also" href={to.address()} class="control door under-way">{ icon(Picture::Check) }{ go }</a> }
    }

    fn said(&self, shop: &Shop) -> Said {
        let named = |stage: Stage| [("stage", shop.stage(stage).to_string())];
        match &self.step {
            Step::Again(stage) => Said {
                title: shop.say("verdict.rework-head"),
                why: shop.say_with("home.again-why", &named(*stage)),
                go: shop.say("verdict.again"),
            },
            Step::Waits(waits) => waits.said(shop),
            Step::OnDesk(stage, done) => Said {
                title: shop.say_with("home.next", &named(*stage)),
                why: shop.say_with("home.go-on-why", &named(*stage)),
                go: shop.say_with("home.go-on", &[("n", (done + 1).to_string())]),
            },
            Step::Deal(stage, reason) => {
                let minutes = Round::of(shop.content(), None).minutes.to_string();
                let key = if self.is_first {
                    "home.bare".to_owned()
                } else {
                    format!("home.next.{}", reason.slug())
                };
                Said {
                    title: shop.say("home.ten-minutes"),
                    why: shop.say_with(&key, &named(*stage)),
                    go: shop.say_with(
                        "home.start",
                        &[("stage", shop.stage(*stage).to_string()), ("minutes", minutes)],
                    ),
                }
            }
            Step::Nothing => {
                Said { title: shop.say("band.empty"), why: AttrValue::default(), go: AttrValue::default() }
            }
        }
    }
}
