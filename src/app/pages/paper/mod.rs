//! A set on paper: a worksheet for each person and the marked key, shown as they will be printed; and the answers typed in
//! afterwards.

mod answer_box;
mod enter;
mod head;
mod key;
mod nameless;
mod sheets;
mod values;
mod whom;
mod worksheet;

pub(in crate::app) use enter::PaperEnter;
pub(in crate::app) use sheets::SetPaper;

use super::sets::{Answers, use_answers};
use crate::app::hooks::use_sets;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::content::World;
use crate::exchange::paper::PaperCode;
use crate::exchange::set::{Set, SetCard};
use crate::rules::sheet::Sheet;
use std::rc::Rc;
use yew::prelude::*;

/// A set that is put on paper.
#[derive(Debug, Clone, PartialEq)]
struct OnPaper {
    id: String,
    set: Rc<Set>,
    /// The shop sheet that it is dealt on.
    sheet: Rc<Sheet>,
}

impl OnPaper {
    /// A set of this tablet; `None` where there is none of that id or its sheet is not known.
    fn of(shop: &Shop, id: &str, set: &Rc<Set>) -> Option<Self> {
        let sheet = set.sheet_of(shop.content()).ok()?;
        Some(Self { id: id.to_owned(), set: Rc::clone(set), sheet: Rc::new(sheet) })
    }

    fn world<'a>(&'a self, shop: &'a Shop) -> World<'a> {
        World { content: shop.content(), sheet: &self.sheet }
    }

    fn cards(&self, shop: &Shop, code: &PaperCode) -> Vec<SetCard<'_>> {
        code.cards(&self.set, &self.id, &self.world(shop))
    }
}

/// A worksheet.
#[derive(Debug, Clone, PartialEq)]
struct Worksheet {
    /// Whose it is; empty where nobody is named.
    whom: String,
    code: PaperCode,
}

/// The set of that id, as this tablet has it, and whether its answers are kept back.
#[hook]
fn use_set(id: &str) -> (Option<Rc<Set>>, Answers) {
    let sets = use_sets();
    let kept = sets.find(id);
    let answers = use_answers(kept);
    (kept.map(|kept| Rc::clone(&kept.set)), answers)
}

/// The screen of a set that is not here.
fn gone(shop: &Shop, id: &str) -> Html {
    html! {
        <Frame class="sheet" title={shop.say("worksheet.title")} back={Some(Route::Sets)} cautions={shop.cautions_for(&[])}>
            <p class="kraft">{ shop.say_with("worksheet.gone", &[("id", id.to_owned())]) }</p>
        </Frame>
    }
}

/// Where the worksheets of a set are.
fn paper(id: &str) -> Route {
    Route::SetPaper { id: id.to_owned() }
}

/// Where one comes from to its worksheets.
fn back(id: &str) -> Route {
    Route::SetOf { id: id.to_owned() }
}
