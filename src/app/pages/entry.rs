//! One answer of the record, as the card that was seen.

use super::crew::void_mark;
use super::decided_told;
use super::seen::{Beside, seen};
use crate::app::hooks::{use_sets, use_told};
use crate::app::parts::{Frame, Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Told, use_shop};
use crate::device::clock;
use crate::learn::check::{answers_of, in_order};
use crate::record::{Entry as Answered, Voids};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct EntryProps {
    pub(in crate::app) sequence: u64,
    /// The check whose answers are gone through; none from the record.
    #[prop_or_default]
    pub(in crate::app) attempt: Option<String>,
    /// The set whose answers are looked at; none from elsewhere.
    #[prop_or_default]
    pub(in crate::app) set: Option<String>,
}

#[component]
pub(in crate::app) fn Entry(props: &EntryProps) -> Html {
    let shop = use_shop();
    let told = use_told();
    let attempt = props.attempt.clone();
    let back = Some(match (&attempt, &props.set) {
        (Some(attempt), _) => Route::CheckAnswers { attempt: attempt.clone() },
        (None, Some(set)) => Route::SetOf { id: set.clone() },
        (None, None) => Route::Record,
    });
    let sets = use_sets();
    let plain = |key: &str| {
        html! {
            <Frame class="sheet" title={shop.say("record.title")} back={back.clone()} cautions={shop.cautions_for(&[])}><p class="lead">{ shop.say(key) }</p></Frame>
        }
    };
    if let Some((walked, decided)) = told.walked(props.sequence).and_then(|one| Some((one, one.decided()?))) {
        if told.hides_walked(walked) {
            return plain("walked.not-yet");
        }
        let title = shop.say("walked.title");
        let note = clock::local(&walked.stamp.at);
        return html! {
            <Frame class="sheet" {title} {note} {back} cautions={shop.cautions_for(&[])}>{ decided_told(&shop, walked, decided) }</Frame>
        };
    }
    let Some(entry) = told.journal.find(props.sequence) else { return plain("record.empty") };
    if told.hides(entry) {
        return plain("check.not-yet");
    }
    let next = attempt.as_ref().and_then(|attempt| after(&told, attempt, entry));
    let next = next.zip(attempt).map(|(sequence, attempt)| Route::CheckAnswer { attempt, sequence });
    let action = html! {
        <div class="onward" hidden={next.is_none()}>
            <a href={next.unwrap_or(Route::Record).address()} class="next-step">{ shop.say("check.next-answer") }{ icon(Picture::Go) }</a>
        </div>
    };
    let voids = Voids::of(told.journal.events());
    let above = void_mark(&shop, &sets, voids.touches(entry));
    let beside = Beside { back, action, above, ..Beside::default() };
    seen(&shop, &sets, entry, &shop.say("record.title"), beside)
}

/// Number of the answer that is looked at after this one.
fn after(told: &Told, attempt: &str, entry: &Answered) -> Option<u64> {
    let answers = in_order(answers_of(told.journal.events(), &entry.stamp.device, attempt));
    let mut rest = answers.into_iter().skip_while(|one| one.stamp.sequence != entry.stamp.sequence);
    rest.nth(1).filter(|one| !told.hides(one)).map(|one| one.stamp.sequence)
}
