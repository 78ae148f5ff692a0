//! How many worksheets without a name are printed: a stack to hand round, each with a code and cards of its own.

use super::OnPaper;
use super::whom::MOST;
use crate::app::parts::{Field, Picture, icon};
use crate::app::state::Shop;
use crate::device::{clock, page};
use yew::prelude::*;

/// What was typed, if anything, and the number of the first copy.
pub(super) struct Nameless {
    pub(super) typed: UseStateHandle<Option<String>>,
    pub(super) first: UseStateHandle<u32>,
}

/// A first copy that hardly any stack began with before: of 4 294 967 296 numbers any may come.
pub(super) fn any_first() -> u32 {
    // Without random bytes the moment tells one stack from another.
    page::random_bytes().map_or_else(moment, u32::from_le_bytes)
}

/// The milliseconds of this moment, as many as fit.
fn moment() -> u32 {
    u32::try_from(clock::millis() & u64::from(u32::MAX)).unwrap_or_default()
}

impl Nameless {
    /// How many: what was typed; untouched, one while nobody is named and else none. `None` where that is not allowed.
    pub(super) fn count(&self, named: bool) -> Option<usize> {
        let least = usize::from(!named);
        let Some(typed) = &*self.typed else { return Some(least) };
        typed.trim().parse().ok().filter(|count| (least..=MOST).contains(count))
    }
}

pub(super) fn nameless(shop: &Shop, on: &OnPaper, asked: &Nameless, named: bool) -> Html {
    let same = on.set.task.same_seed;
    let limits = [("least", usize::from(!named).to_string()), ("most", MOST.to_string())];
    let count = asked.count(named);
    let wrong = match count {
        Some(_) => AttrValue::default(),
        None => shop.say_with("worksheet.nameless-wrong", &limits),
    };
    let value = (*asked.typed).clone().unwrap_or_else(|| usize::from(!named).to_string());
    let on_input = {
        let set = asked.typed.setter();
        Callback::from(move |typed: String| set.set(Some(typed)))
    };
    let others = {
        let first = asked.first.setter();
        Callback::from(move |_: MouseEvent| first.set(any_first()))
    };
    let seed = [("seed", same.map(|seed| seed.to_string()).unwrap_or_default())];
    html! {
        <div key="nameless" class="form">
            <p key="same" class="kraft" hidden={same.is_none()}>{ shop.say_with("worksheet.same-for-all", &seed) }</p>
            <div key="count" hidden={same.is_some()}>
                <Field id="nameless" inputmode="numeric" label={shop.say("worksheet.nameless")} hint={shop.say("worksheet.nameless-hint")}
                    {value} {on_input} {wrong} />
            </div>
            <div key="others" class="people" hidden={same.is_some() || count.unwrap_or(0) == 0}>
                <button type="button" class="control" onclick={others}>{ icon(Picture::TurnRight) }{ shop.say("worksheet.others") }</button>
            </div>
        </div>
    }
}
