//! Which screen a route leads to.

use super::pages;
use super::route::Route;
use super::state::Shared;
use crate::learn::Front;
use yew::prelude::*;

/// Every screen is one keyed element, so that one replaces the other whole. `on_desk` is the sheet of the card that lies there.
pub(super) fn screen(route: Route, on_desk: Option<String>) -> Html {
    match route {
        Route::Home => html! { <pages::Home key="home" front={None::<Shared<Front>>} /> },
        Route::Band { stage } => {
            html! { <pages::Band key={format!("band-{stage}")} stage={stage.clone()} /> }
        }
        Route::Practise => html! { <pages::Practise key="practise" /> },
        Route::Bench => html! { <pages::Bench key="bench" /> },
        Route::Calculation { name } => {
            html! { <pages::Calculation key={format!("bench-{name}")} name={name.clone()} /> }
        }
        Route::Panel => html! { <pages::Panel key="panel" /> },
        Route::Words => html! { <pages::Words key="words" /> },
        Route::Check => html! { <pages::Check key="check" /> },
        Route::CheckFor { competency } => {
            html! { <pages::Check key={format!("check-{competency}")} competency={competency.clone()} /> }
        }
        // One screen: looking at the sheet leaves no check.
        Route::Sitting { attempt } => {
            html! { <pages::Sitting key={format!("sitting-{attempt}")} attempt={attempt.clone()} sheet=false /> }
        }
        Route::SittingSheet { attempt } => {
            html! { <pages::Sitting key={format!("sitting-{attempt}")} attempt={attempt.clone()} sheet=true /> }
        }
        Route::CheckAnswers { attempt } => {
            html! { <pages::CheckAnswers key={format!("answers-{attempt}")} attempt={attempt.clone()} /> }
        }
        Route::CheckAnswer { attempt, sequence } => {
            html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} {attempt} /> }
        }
        Route::Record => html! { <pages::Record key="record" /> },
        Route::Competency { slug } => {
            html! { <pages::Competency key={format!("competency-{slug}")} slug={slug.clone()} /> }
        }
        Route::Entry { sequence } => html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} /> },
        Route::Sheet => html! { <pages::Sheets key="sheets" /> },
        Route::SheetOf { slug } => {
            html! { <pages::SheetOf key={format!("sheet-{slug}")} slug={slug.clone()} /> }
        }
        Route::SheetBeside { slug, other } => html! {
            <pages::Beside key={format!("sheet-{slug}-{other}")} slug={slug.clone()} other={other.clone()} />
        },
        Route::SheetEdit => html! { <pages::SheetEdit key="sheet-edit" /> },
        Route::SheetChanges => html! { <pages::SheetChanges key="sheet-changes" /> },
        Route::Air => html! { <pages::Air key="air" /> },
        Route::CardSheet => {
            html! { <pages::ShopSheet key="card-sheet" back={Route::Practise} sheet={on_desk} /> }
        }
        Route::People => html! { <pages::People key="people" /> },
        Route::Person { number } => {
            html! { <pages::Person key={format!("person-{number}")} number={number.clone()} /> }
        }
        Route::Asked => html! { <pages::Asked key="asked" /> },
        Route::AskedOf { competency } => {
            html! { <pages::AskedOf key={format!("asked-{competency}")} competency={competency.clone()} /> }
        }
        Route::Assess => html! { <pages::Assess key="assess" /> },
        Route::AssessPerson { number } => {
            html! { <pages::AssessPerson key={format!("assess-{number}")} number={number.clone()} /> }
        }
        Route::Observe { number, slug } => html! {
            <pages::Observe key={format!("observe-{number}-{slug}")} number={number.clone()} slug={slug.clone()} />
        },
        Route::Folder => html! { <pages::Folder key="folder" /> },
        Route::Programs => html! { <pages::Programs key="programs" /> },
        Route::Crew => html! { <pages::Crew key="crew" /> },
        Route::CrewPerson { key } => {
            html! { <pages::CrewPerson key={format!("crew-{key}")} person={key.clone()} /> }
        }
        Route::CrewAnswer { device, sequence } => {
            html! { <pages::CrewAnswer key={format!("crew-{device}-{sequence}")} device={device.clone()} {sequence} /> }
        }
        Route::CrewCards => html! { <pages::CrewCards key="crew-cards" /> },
        Route::Menu => html! { <pages::Menu key="menu" /> },
        Route::Sign { number, slug } => {
            html! { <pages::Sign key={format!("sign-{number}-{slug}")} number={number.clone()} slug={slug.clone()} /> }
        }
        Route::Book => html! { <pages::SignOffBook key="book" /> },
        Route::SignOff { id } => {
            html! { <pages::SignOff key={format!("sign-off-{id}")} id={id.clone()} paper={None} /> }
        }
        Route::SignOffPaper { id, paper } => {
            html! { <pages::SignOff key={format!("sign-off-{id}")} id={id.clone()} paper={Some(paper)} /> }
        }
        Route::Open => html! { <pages::Open key="open" code={None::<String>} /> },
        Route::Take { code } => {
            html! { <pages::Open key={format!("take-{code}")} code={Some(code.clone())} /> }
        }
        Route::SetPaper { id } => html! { <pages::SetPaper key={format!("paper-{id}")} id={id.clone()} /> },
        Route::PaperEnter { id } => {
            html! { <pages::PaperEnter key={format!("enter-{id}")} id={id.clone()} /> }
        }
        Route::Sets => html! { <pages::Sets key="sets" /> },
        Route::NewSet => html! { <pages::NewSet key="new-set" /> },
        Route::SetOf { id } => html! { <pages::SetPage key={format!("set-{id}")} id={id.clone()} /> },
        // One screen: looking at the sheet leaves no set.
        Route::TakeSet { id } => {
            html! { <pages::TakeSet key={format!("take-set-{id}")} id={id.clone()} sheet=false /> }
        }
        Route::TakeSetSheet { id } => {
            html! { <pages::TakeSet key={format!("take-set-{id}")} id={id.clone()} sheet=true /> }
        }
        Route::SetAnswer { id, sequence } => {
            html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} set={id.clone()} /> }
        }
        Route::Walks => html! { <pages::Walks key="walks" /> },
        Route::WalkNew { slug } => {
            html! { <pages::WalkStart key={format!("walk-new-{slug}")} slug={slug.clone()} /> }
        }
        Route::WalkOut { id } => html! { <pages::WalkOut key={format!("walk-out-{id}")} id={id.clone()} /> },
        Route::WalkGive { slug } => {
            html! { <pages::WalkGive key={format!("walk-give-{slug}")} slug={slug.clone()} /> }
        }
        Route::WalkOf { id } => html! { <pages::WalkPage key={format!("walk-{id}")} id={id.clone()} /> },
        Route::Sprays => html! { <pages::Sprays key="sprays" /> },
        Route::SprayOf { task } => {
            html! { <pages::SprayPage key={format!("spray-{task}")} task={task.clone()} /> }
        }
        // One screen, so that its files stay picked while a paper of it is looked at.
        Route::Verify => html! { <pages::Verify key="verify" paper={None} /> },
        Route::VerifyPaper { paper } => html! { <pages::Verify key="verify" paper={Some(paper)} /> },
        Route::VerifyAbout => html! { <pages::VerifyAbout key="verify-about" /> },
    }
}
