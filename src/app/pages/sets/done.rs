//! What an attempt at a set came to, against its pass rule, and handing the results on.

use super::answers::given;
use super::taken::latest;
use crate::app::hooks::{use_book, use_people, use_sheets};
use crate::app::parts::{Picture, SignKind, icon, pass, sign};
use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, use_shop};
use crate::device::{clock, files, page};
use crate::exchange::set::outcome;
use crate::exchange::{Named, OwnSheet, RESULTS, Results, save_name};
use std::rc::Rc;
use yew::prelude::*;

/// Id of the heading that takes the focus.
const HEADING: &str = "set-outcome";

#[derive(Properties, PartialEq)]
pub(super) struct DoneProps {
    pub(super) kept: KeptSet,
    pub(super) attempt: String,
}

#[component]
pub(super) fn Done(props: &DoneProps) -> Html {
    let shop = use_shop();
    let journal = use_book().book.journal.clone();
    let crew = use_people().crew;
    let editions = use_sheets().editions;
    let said = use_state(AttrValue::default);
    use_effect_with(props.attempt.clone(), |_| page::focus(HEADING));
    let kept = &props.kept;
    let answers = given(&shop, &journal, &kept.id, &props.attempt);
    let came = outcome(&kept.set, shop.content(), &answers);
    let (kind, class, head) = match came.passed {
        None => (SignKind::Right, "ok", "sets.outcome.done"),
        Some(true) => (SignKind::Right, "ok", "sets.outcome.passed"),
        Some(false) => (SignKind::Wrong, "wrong", "sets.outcome.not-passed"),
    };
    let figures = [("right", came.right.to_string()), ("of", came.answered.to_string())];
    let mut names: Vec<String> = came.dangerous.iter().map(|id| shop.family_title(id).to_string()).collect();
    names.dedup();
    let rule = [("rule", pass(&shop, &kept.set).to_string())];
    let few = kept.set.task.pass.is_some_and(|rule| came.right < rule.right);
    let latest = latest(&shop, &journal, &kept.id);
    let counts = latest.map(|one| one.competencies.to_vec()).unwrap_or_default();
    let counts: Vec<String> =
        counts.iter().map(|slug| shop.text(&format!("competency.{slug}")).to_string()).collect();
    let save = {
        let (shop, journal, said) = (shop.clone(), Rc::clone(&journal), said.setter());
        Callback::from(move |_: MouseEvent| {
            let person = &shop.settings.person;
            let sheets: Vec<OwnSheet> = editions.iter().cloned().collect();
            let member = crew.of_journal(person);
            let whose = member.map_or_else(|| person.clone(), |one| format!("{} {}", one.name, one.number));
            let name = save_name(RESULTS.format, &whose, clock::today(), "json");
            let people: Vec<Named> = member.map(Named::from).into_iter().collect();
            let (device, at) = (shop.settings.device.clone(), clock::now());
            let results =
                Results::of(shop.content(), &journal.of_person(person), &sheets, people, (&device, &at));
            let saved = results.text().ok().and_then(|text| files::save_json(&name, &text).ok());
            let what = if saved.is_some() { "sets.outcome.copied" } else { "sets.outcome.not-copied" };
            said.set(shop.say_with(what, &[("name", name)]));
        })
    };
    // Who made it elsewhere waits for the results.
    let wanted = kept.origin == Origin::Taken;
    let by = [("by", kept.set.by.clone())];
    let checks = !counts.is_empty();
    html! {
        <section class="set-done">
            <article key="came" class={classes!("verdict", class)}>
                <header key="head">{ sign(kind) }<h2 id={HEADING} tabindex="-1">{ shop.say(head) }</h2></header>
                <p key="figures" class="figure-line">{ shop.say_with("sets.outcome.right", &figures) }</p>
                <p key="few" hidden={!few}>{ shop.say("sets.outcome.few") }</p>
                <p key="dangerous" class="instructor" hidden={names.is_empty()}>{ shop.say_with("sets.outcome.dangerous", &[("names", names.join(", "))]) }</p>
                <p key="rule" class="note" hidden={came.passed.is_none()}>{ shop.say_with("sets.outcome.rule", &rule) }</p>
                <p key="on" hidden={!checks}>{ shop.say_with("sets.outcome.goes-on", &[("names", counts.join(", "))]) }</p>
            </article>
            <h3 key="next">{ shop.say("sets.outcome.next") }</h3>
            <p key="wanted" hidden={!wanted}>{ shop.say_with("sets.outcome.wanted", &by) }</p>
            <div key="ways" class="people">
                <a key="check" href={Route::Check.address()} class="next-step" hidden={!checks}>{ shop.say("sets.outcome.check") }{ icon(Picture::Go) }</a>
                <button key="save" type="button" class={if wanted && !checks { "next-step" } else { "control" }} onclick={save}>{ icon(Picture::Save) }{ shop.say("sets.outcome.copy") }</button>
            </div>
            <p key="said" role="status">{ (*said).clone() }</p>
        </section>
    }
}
