//! The floor: the work as it lies there, what is at hand, and what a decision came to.

mod act;
mod air;
mod choice;
mod guide;
mod hand;
mod list;
mod number;
mod offer;
mod once;
mod recall;
mod refused;
mod room;
mod seen;
mod shows;
mod task;
mod told;
mod values;

use super::words;
use crate::app::hooks::use_walks;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shared, Shop, use_shop};
use crate::content::CautionStage;
use crate::device::page;
use crate::rules::term::Stage;
use crate::walk::{Mode, Walk, Work};
use act::use_act;
use guide::{Guide, use_guide};
pub(super) use hand::{Change, Hand};
use recall::{earlier, recalled};
pub(super) use task::{Act, Spot, Task, Told};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct FloorProps {
    pub(super) walk: Shared<Walk>,
    /// Says that the last decision is not stored.
    pub(super) strip: Html,
    /// Keeps the walk as it is after a decision.
    pub(super) put: Callback<Shared<Walk>>,
}

/// What every piece of the floor is drawn from.
pub(super) struct Ground<'a> {
    pub(super) shop: &'a Shop,
    pub(super) walk: &'a Shared<Walk>,
    pub(super) hand: &'a Hand,
    /// Operations of earlier walks, the last first.
    earlier: &'a [Work],
    /// What a guide says of the walk as it stands.
    guide: Option<&'a Guide>,
    pub(super) change: Callback<Change>,
    pub(super) act: Callback<Act>,
    /// Takes the last decision back.
    pub(super) back: Callback<()>,
}

impl Ground<'_> {
    /// Changes what is in hand with what an event tells.
    pub(super) fn on<E: 'static>(&self, set: impl Fn(&mut Hand, E) + Clone + 'static) -> Callback<E> {
        self.change.reform(move |event: E| {
            let set = set.clone();
            Change::new(move |hand| set(hand, event))
        })
    }

    /// Opens something to be set, with what is recalled of it.
    fn pick(&self, task: Task) -> Callback<MouseEvent> {
        let values = recalled(self, task);
        self.on(move |hand, _: MouseEvent| hand.pick(task, values.clone()))
    }
}

/// The heading that takes the focus when something new is to be read, and that of what is picked.
pub(super) const TOLD: &str = "walk-told";
pub(super) const TASK: &str = "walk-task";

#[component]
pub(super) fn Floor(props: &FloorProps) -> Html {
    let shop = use_shop();
    let walk = &props.walk;
    let hand = use_reducer(|| Hand::new(walk));
    let change = {
        let dispatcher = hand.dispatcher();
        use_callback((), move |change: Change, ()| dispatcher.dispatch(change))
    };
    let act = use_act(&shop, walk, &props.put, &change);
    let walks = use_walks();
    let known = (shop.clone(), walks.all.clone(), walk.start().info.slug.clone());
    let before = use_memo(known, |(shop, ..)| earlier(shop, &walks, walk));
    let guide = use_guide(&shop, walk);
    let news = (hand.told.clone(), hand.news);
    use_effect_with(news, |(told, _)| {
        if !told.is_nothing() {
            page::bring(TOLD);
        }
    });
    use_effect_with(hand.task, |task| {
        if task.is_some() {
            page::bring(TASK);
        }
    });
    let back = use_callback((shop.clone(), walk.clone(), props.put.clone()), {
        let change = change.clone();
        move |(), (shop, walk, put)| {
            let before = Shared::new(walk.at(walk.turns().len().saturating_sub(1), shop.content()));
            change.emit(told::went_back(&before));
            put.emit(before);
        }
    });
    let ground = Ground {
        shop: &shop,
        walk,
        hand: &hand,
        earlier: before.as_slice(),
        guide: guide.as_deref(),
        change,
        act,
        back,
    };
    let clock = words::at(&shop, walk.clock());
    let spent = [("hours", words::hours(&shop, walk.bench_hours()))];
    let shows = matches!(hand.told, Told::Shows(_));
    let guided = walk.mode() == Mode::Guided;
    let cautions = cautions(&shop, &hand);
    let marks = html! {
        <span class="walk-clock"><b>{ clock }</b><span class="top-note">{ shop.say_with("walk.spent", &spent) }</span></span>
    };
    let right = if shows { shows::shows(&ground) } else { list::at_hand(&ground) };
    html! {
        <Frame class="walk" title={shop.text(&format!("walk.name.{}", walk.start().info.slug))} back={Some(Route::Walks)} {marks} {cautions}>
            <div key="left" class="walk-left">
                { props.strip.clone() }
                { air::air(&shop, walk) }
                { seen::work(&ground) }
                <div key="below" class="walk-below">
                    { super::cut::of_part(&shop, walk, hand.looked) }
                    { super::lines::lines(&shop, walk) }
                </div>
            </div>
            <div key="right" class="walk-right">
                <div key="scroll" class="walk-scroll">
                    { told::told(&ground) }
                    { if shows { Html::default() } else { guide::next(&ground) } }
                    { right }
                    { told::step_back(&ground, guided) }
                </div>
                { act::button(&ground) }
            </div>
        </Frame>
    }
}

/// The cautions of what is picked, else those of the place.
fn cautions(shop: &Shop, hand: &Hand) -> Vec<AttrValue> {
    match (hand.task.and_then(Task::stage), hand.at) {
        (_, Spot::Wheel) => shop.cautions_for(&[CautionStage::Buff]),
        (Some(stage), _) => shop.cautions_of_band(stage),
        (None, Spot::Room) => shop.cautions_of_band(Stage::Room),
        (None, Spot::Booth) => shop.cautions_for(&[CautionStage::Spray]),
        (None, _) => shop.cautions_for(&[]),
    }
}
