//! Checks: those that are open, those that are over, and choosing a new one.

mod answers;
mod card;
mod choose;
mod close;
mod elapsed;
mod presence;
mod sitting;
mod view;

pub(in crate::app) use answers::CheckAnswers;
pub(in crate::app::pages) use close::Close;
pub(in crate::app::pages) use presence::use_presence;
pub(in crate::app) use sitting::Sitting;

use crate::app::hooks::{Naming, use_naming, use_people, use_told};
use crate::app::parts::{Frame, NameField, Picture, icon, named};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::clock;
use crate::record::{Attempt, Attempts, Standing};
use choose::Choose;
use yew::prelude::*;

/// Checks that are over, as many as are listed.
const OVER: usize = 10;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct CheckProps {
    /// A competency that is chosen already.
    #[prop_or_default]
    pub(in crate::app) competency: String,
}

#[component]
pub(in crate::app) fn Check(props: &CheckProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let crew = use_people().crew;
    let Naming { on_name, said } = use_naming();
    let nobody = told.person.is_empty();
    let (attempts, _) = Attempts::of(told.journal.events());
    let mine = attempts.all().iter().rev().filter(|one| one.person == told.person && !nobody);
    // Sets that are evidence for nothing stand with the sets.
    let mine = mine.filter(|one| !one.competencies.is_empty());
    let (over, open): (Vec<&Attempt<'_>>, Vec<_>) = mine.partition(|one| one.standing == Standing::Closed);
    let over_row = |one: &&Attempt<'_>| {
        let to = Route::CheckAnswers { attempt: one.id.to_owned() };
        html! {
            <li key={one.id.to_owned()}><a href={to.address()} class="row-link">
                <span class="words"><b>{ shop.competencies(one.competencies) }</b><span class="note">{ begun(&shop, one) }</span></span>
                { icon(Picture::Go) }
            </a></li>
        }
    };
    html! {
        <Frame class="sheet check" title={shop.say("check.title")} note={crew.shown(&told.person).to_owned()} back={Some(Route::Home)} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("check.lead") }</p>
            <div key="name" class="kraft" hidden={!nobody}>
                <p>{ shop.say("check.whose") }</p>
                <NameField label={shop.say("home.name")} name="" {on_name} skip=false />
            </div>
            { named(&said) }
            <section key="open" hidden={open.is_empty()}>
                <h2>{ shop.say("check.open") }</h2>
                <ul class="rows">{ for open.iter().map(|one| open_row(&shop, one)) }</ul>
            </section>
            <div key="new" hidden={nobody}><Choose competency={props.competency.clone()} /></div>
            <section key="over" hidden={over.is_empty()}>
                <h2>{ shop.say("check.over") }</h2>
                <ul class="rows links">{ for over.iter().take(OVER).map(over_row) }</ul>
            </section>
        </Frame>
    }
}

fn begun(shop: &Shop, attempt: &Attempt<'_>) -> AttrValue {
    let named = [("n", attempt.answers.to_string()), ("at", clock::local(attempt.at))];
    shop.say_with("check.begun", &named)
}

/// A check that can be gone on with; one of another tablet only there.
fn open_row(shop: &Shop, attempt: &Attempt<'_>) -> Html {
    let here = attempt.device == shop.settings.device;
    let id = attempt.id.to_owned();
    let answers = Route::CheckAnswers { attempt: id.clone() };
    let go = if attempt.set_left() > 0 {
        Route::SetOf { id: attempt.set.to_owned() }
    } else {
        Route::Sitting { attempt: id.clone() }
    };
    html! {
        <li key={id}>
            <span class="words"><b>{ shop.competencies(attempt.competencies) }</b><span class="note">{ begun(shop, attempt) }</span></span>
            <span key="ways" class="ways" hidden={!here}>
                <a href={answers.address()} class="control">{ shop.say("check.look") }</a>
                <a href={go.address()} class="next-step">{ shop.say("check.go-on") }{ icon(Picture::Go) }</a>
            </span>
            <span key="elsewhere" class="note" hidden={here}>{ shop.say("check.elsewhere") }</span>
        </li>
    }
}
