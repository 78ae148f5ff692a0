//! One set: what it is, the way into it, what came of it, and handing it out.

use super::absent;
use super::answers::answers;
use super::begin::Begin;
use super::done::Done;
use super::hand::Hand;
use super::items::AsItems;
use super::kept_back::{Answers, kept_back, use_answers};
use super::taken::{latest, stand};
use crate::app::hooks::{use_book, use_sets};
use crate::app::pages::crew::WhoDid;
use crate::app::parts::{Frame, counts_told, set_about};
use crate::app::route::Route;
use crate::app::state::{KeptSet, Origin, use_shop};
use crate::device::clock;
use crate::learn::check::Stand;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SetPageProps {
    pub(in crate::app) id: String,
}

#[component]
pub(in crate::app) fn SetPage(props: &SetPageProps) -> Html {
    let shop = use_shop();
    let sets = use_sets();
    let journal = use_book().book.journal.clone();
    let answers_of_it = use_answers(sets.find(&props.id));
    let kept = sets.find(&props.id).cloned();
    let about = use_memo((shop.clone(), kept.clone(), clock::today()), |(shop, kept, today)| {
        let about = |one: &KeptSet| set_about(shop, &one.id, &one.set, one.validity(*today));
        kept.as_ref().map(about).unwrap_or_default()
    });
    let Some(kept) = kept else { return absent(&shop, &sets, &journal, &props.id) };
    let validity = kept.validity(clock::today());
    let counts = counts_told(&shop, &kept.set);
    let done = stand(&shop, &journal, &kept) == Stand::Done;
    let attempt = latest(&shop, &journal, &kept.id).filter(|_| done).map(|one| one.id.to_owned());
    let what =
        html! { <div key="what" class="paper">{ (*about).clone() }<p class="note">{ counts }</p></div> };
    let begin = html! { <Begin key="begin" kept={kept.clone()} {validity} /> };
    // Whoever took a set is asked it, and seldom hands it on; of one that is withdrawn nothing else is left.
    let folded = kept.origin == Origin::Taken && kept.withdrawn.is_none();
    // Of a set that is done the result and what comes next go first; of another one what it is.
    let parts = match attempt {
        Some(attempt) => {
            let answers = answers(&shop, &sets, &journal, &kept, &attempt);
            vec![html! { <Done key="done" kept={kept.clone()} {attempt} /> }, begin, answers, what]
        }
        None => vec![what, begin],
    };
    html! {
        <Frame class="sheet set-page" title={shop.say("sets.title")} back={Some(Route::Sets)} cautions={shop.cautions_for(&[])}>
            <h2 key="title" class="set-title">{ shop.set_title(&kept.id, &kept.set.title) }</h2>
            { for parts }
            <WhoDid key="who" id={kept.id.clone()} open={kept.origin == Origin::Made} />
            <details key="more" class="hand-on set-more" open={!folded}>
                <summary key="fold" hidden={!folded}>{ shop.say("sets.more") }</summary>
                <div key="kept-back" hidden={answers_of_it == Answers::Open}>{ kept_back(&shop, answers_of_it) }</div>
                <Hand key="hand" kept={kept.clone()} kept_back={answers_of_it.are_kept_back()} />
                <div key="items">{ for (!answers_of_it.are_kept_back()).then(|| html! { <AsItems kept={kept.clone()} /> }) }</div>
            </details>
        </Frame>
    }
}
