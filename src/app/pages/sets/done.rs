//! What an attempt at a set came to, against its pass rule, and handing the results on.

use super::taken::latest;
use crate::app::hooks::{save_results, use_book, use_people, use_sets, use_sheets};
use crate::app::pages::crew::{came_words, sets_done};
use crate::app::parts::{Picture, SignKind, icon, pass, sign};
use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, SetsContext, Shop, use_shop};
use crate::device::{clock, page};
use crate::exchange::crew::{Came, SetDone, Way};
use crate::exchange::{Named, OwnSheet, Results};
use crate::record::{Event, Journal};
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
    let sets = use_sets();
    let editions = use_sheets().editions;
    let said = use_state(AttrValue::default);
    use_effect_with(props.attempt.clone(), |_| page::focus(HEADING));
    let kept = &props.kept;
    let Some(one) = done_here(&shop, &sets, &journal, props) else { return Html::default() };
    let (kind, class, head) = match one.came {
        Came::Done => (SignKind::Right, "ok", shop.say("sets.outcome.done")),
        Came::Passed => (SignKind::Right, "ok", shop.say("sets.outcome.passed")),
        Came::NotPassed => (SignKind::Wrong, "wrong", shop.say("sets.outcome.not-passed")),
        _ => (SignKind::CannotJudge, "", came_words(&shop, &one)),
    };
    let figures = [("right", one.right.to_string()), ("of", one.of.to_string())];
    let left_out = [("n", one.void.to_string())];
    let void = one.came == Came::SetWrong;
    let mut names: Vec<String> = one.dangerous.iter().map(|id| shop.family_title(id).to_string()).collect();
    names.dedup();
    let rule = [("rule", pass(&shop, &kept.set).to_string())];
    let few = one.came == Came::NotPassed && kept.set.task.pass.is_some_and(|rule| one.right < rule.right);
    let latest = latest(&shop, &journal, &kept.id);
    let counts = latest.map(|one| one.competencies.to_vec()).unwrap_or_default();
    let counts: Vec<String> =
        counts.iter().map(|slug| shop.text(&format!("competency.{slug}")).to_string()).collect();
    let save = {
        let (shop, journal, said) = (shop.clone(), journal.clone(), said.setter());
        Callback::from(move |_: MouseEvent| {
            let person = &shop.settings.person;
            let sheets: Vec<OwnSheet> = editions.iter().cloned().collect();
            let people: Vec<Named> = crew.of_journal(person).map(Named::from).into_iter().collect();
            let (device, at) = (shop.settings.device.clone(), clock::now());
            let results =
                Results::of(shop.content(), &journal.of_person(person), &sheets, people, (&device, &at));
            said.set(match save_results(&results) {
                Ok(name) => shop.say_with("sets.outcome.copied", &[("name", name)]),
                Err(_) => shop.say("sets.outcome.not-copied"),
            });
        })
    };
    // Who made it elsewhere waits for the results.
    let wanted = kept.origin == Origin::Taken;
    let by = [("by", kept.set.by.clone())];
    let checks = !counts.is_empty();
    html! {
        <section class="set-done">
            <article key="came" class={classes!("verdict", class)}>
                <header key="head">{ sign(kind) }<h2 id={HEADING} tabindex="-1">{ head }</h2></header>
                <p key="figures" class="figure-line" hidden={void}>{ shop.say_with("sets.outcome.right", &figures) }</p>
                <p key="left-out" hidden={void || one.void == 0}>{ shop.say_with("crew.done.void", &left_out) }</p>
                <p key="void" class="note" hidden={one.void == 0}>{ shop.say("sets.outcome.void") }</p>
                <p key="few" hidden={!few}>{ shop.say("sets.outcome.few") }</p>
                <p key="dangerous" class="instructor" hidden={names.is_empty()}>{ shop.say_with("sets.outcome.dangerous", &[("names", names.join(", "))]) }</p>
                <p key="rule" class="note" hidden={void || kept.set.task.pass.is_none()}>{ shop.say_with("sets.outcome.rule", &rule) }</p>
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

/// What the attempt came to, by the same reckoning as on the crew page, but for what other tablets tell.
fn done_here(shop: &Shop, sets: &SetsContext, journal: &Journal, props: &DoneProps) -> Option<SetDone> {
    let (person, device) = (&shop.settings.person, &shop.settings.device);
    let own = |event: &Event| event.stamp().person == *person && event.stamp().device == *device;
    let counts = |event: &&Event| matches!(event, Event::Voided(_)) || own(event);
    let events: Vec<&Event> = journal.events().iter().filter(counts).collect();
    let it = |one: &SetDone| one.set == props.kept.id && one.name == props.attempt && one.way != Way::Paper;
    sets_done(shop, sets, &events).into_iter().find(it)
}
