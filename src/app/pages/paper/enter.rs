//! The answers of a worksheet, typed in afterwards: the code, whose it is, then card by card. Each is graded at once and stands
//! in the journal of whoever answered, as practice on paper.

mod ask;
mod field;
mod typed;
mod whose;

use super::super::sets::kept_back;
use super::{OnPaper, Worksheet};
use crate::app::hooks::use_people;
use crate::app::parts::Frame;
use crate::app::state::use_shop;
use crate::exchange::paper::PaperCode;
use ask::Ask;
use whose::Whose;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct PaperEnterProps {
    pub(in crate::app) id: String,
}

/// A worksheet whose answers are typed in, and under whose name they are kept.
#[derive(Debug, Clone, PartialEq)]
struct Given {
    sheet: Worksheet,
    person: String,
}

#[component]
pub(in crate::app) fn PaperEnter(props: &PaperEnterProps) -> Html {
    let shop = use_shop();
    let crew = use_people().crew;
    let (set, answers) = super::use_set(&props.id);
    let given = use_state(|| None::<Given>);
    let on = use_memo((shop.clone(), props.id.clone(), set), |(shop, id, set)| {
        set.as_ref().and_then(|set| OnPaper::of(shop, id, set))
    });
    let Some(on) = (*on).clone() else { return super::gone(&shop, &props.id) };
    let on_given = {
        let set = given.setter();
        Callback::from(move |to: Option<Given>| set.set(to))
    };
    // Each is graded at once, and that tells the answer.
    let inside = match &*given {
        _ if answers.are_kept_back() => Html::default(),
        None => html! { <Whose key="whose" id={props.id.clone()} {crew} {on_given} /> },
        Some(now) => {
            html! { <Ask key={now.sheet.code.to_string()} {on} given={now.clone()} {on_given} /> }
        }
    };
    html! {
        <Frame class="sheet paper-enter" title={shop.say("worksheet.enter")} back={Some(super::paper(&props.id))} cautions={shop.cautions_for(&[])}>
            { kept_back(&shop, answers) }
            { inside }
        </Frame>
    }
}

/// Whose worksheet has that code, where they are of the crew.
fn member_of(crew: &crate::people::Crew, set: &str, code: &PaperCode) -> Option<usize> {
    crew.members().iter().position(|member| PaperCode::of(set, &super::whom::written(member), 0) == *code)
}
