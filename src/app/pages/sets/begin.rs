//! The way into a set: whose answers they are, beginning it, going on with it, taking it again.

use super::super::check::Close;
use super::super::events::turn;
use super::named::Named;
use super::taken::{latest, stand};
use crate::app::hooks::use_book;
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{KeptSet, OnDesk, Shop, use_shop};
use crate::content::{Purpose, World};
use crate::device::page;
use crate::exchange::set::{Validity, cards, counts_for};
use crate::learn::check::{Stand, open_of};
use crate::record::{Journal, Step, Taking};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(super) struct BeginProps {
    pub(super) kept: KeptSet,
    pub(super) validity: Validity,
}

#[component]
pub(super) fn Begin(props: &BeginProps) -> Html {
    let shop = use_shop();
    let books = use_book();
    let kept = &props.kept;
    let person = shop.settings.person.clone();
    let counts = counts_of(&shop, kept);
    let stand = stand(&shop, &books.book.journal, kept);
    let open_one = latest(&shop, &books.book.journal, &kept.id).filter(|_| matches!(stand, Stand::Under(_)));
    let closing = open_one.map(|one| {
        let words = if one.competencies.is_empty() { "sets.take" } else { "check" };
        (one.id.to_owned(), words)
    });
    let attempt = closing.as_ref().map(|(attempt, _)| attempt.clone());
    let dealt = use_memo((shop.clone(), kept.clone(), attempt), |(shop, kept, attempt)| {
        count(shop, kept, attempt.as_deref()?)
    });
    let no_cards = use_state(|| false);
    let to = Route::TakeSet { id: kept.id.clone() };
    let refused = kept.set.sheet_of(shop.content()).err().map(|refused| refused.to_string());
    let begin = {
        let (kept, counts, to, hand_in) = (kept.clone(), counts.clone(), to.clone(), books.hand_in.clone());
        let no_cards = no_cards.setter();
        Callback::from(move |shop: Shop| {
            let attempt = page::random_name();
            let Some(cards) = count(&shop, &kept, &attempt) else { return };
            no_cards.set(cards == 0);
            if cards == 0 {
                return;
            }
            let taking = Some(Taking { cards, at_once: kept.set.task.purpose == Purpose::Practise });
            let step = Step::Opened { set: kept.id.clone(), competencies: counts.clone(), taking };
            hand_in.emit((turn(&shop, &attempt, step), OnDesk::NextOfCheck));
            to.go();
        })
    };
    let on_begin = {
        let shop = shop.clone();
        begin.reform(move |_: MouseEvent| shop.clone())
    };
    let ends = ended_by(&shop, &books.book.journal, kept);
    let done = stand == Stand::Done;
    let may = props.validity == Validity::Open && refused.is_none();
    let once = kept.set.is_done_once();
    let nobody = person.is_empty();
    let (new, under, again) = match stand {
        Stand::New => (may && !nobody, None, false),
        Stand::Under(at) => (false, Some(at), false),
        Stand::Done => (false, None, may && !once),
    };
    // What is under way goes on after its last day too. It cannot where fewer cards are dealt here than when it was begun.
    let no_more = under.zip(*dealt).is_some_and(|(at, cards)| at >= cards);
    let may_go_on = under.is_some() && refused.is_none() && !no_more;
    let go_on = [("n", (under.unwrap_or(0) + 1).to_string())];
    let close = closing.map(|(attempt, words)| {
        let key = attempt.clone();
        html! { <Close key={key} {attempt} over={no_more} {words} /> }
    });
    html! {
        <section class="set-begin">
            <div key="name" hidden={!nobody || !may}><Named kept={kept.clone()} {begin} /></div>
            <p key="sheet" class="wrong" hidden={refused.is_none()}>{ shop.say_with("sets.take.sheet", &[("why", refused.clone().unwrap_or_default())]) }</p>
            <p key="ends" class="kraft" hidden={!(new || again) || ends.is_empty()}>{ shop.say_with("sets.take.other-check", &[("names", ends.join(", "))]) }</p>
            <p key="more" class="note" hidden={!(new || again) || counts.is_empty()}>{ shop.say("sets.take.asks-more") }</p>
            <p key="no-cards" class="wrong" role="alert" hidden={!*no_cards}>{ shop.say("sets.take.no-cards") }</p>
            <div key="ways" class="people">
                <button key="new" type="button" class="next-step" hidden={!new} onclick={on_begin.clone()}>{ shop.say("sets.take.begin") }{ icon(Picture::Go) }</button>
                <a key="on" href={to.address()} class="next-step" hidden={!may_go_on}>{ shop.say_with("sets.take.go-on", &go_on) }{ icon(Picture::Go) }</a>
                <button key="again" type="button" class="control" hidden={!again} onclick={on_begin}>{ shop.say("sets.take.again") }</button>
                <a key="list" href={Route::Sets.address()} class="control" hidden={!done}>{ shop.say("sets.take.list") }</a>
            </div>
            { for close }
        </section>
    }
}

/// The competencies for which a set is evidence.
fn counts_of(shop: &Shop, kept: &KeptSet) -> Vec<String> {
    counts_for(&kept.set, shop.content()).iter().map(|one| one.slug.clone()).collect()
}

/// The competencies by name of which the person at work has a check open that ends with the first answer to this set.
pub(super) fn ended_by(shop: &Shop, journal: &Journal, kept: &KeptSet) -> Vec<String> {
    let counts = counts_of(shop, kept);
    let open = open_of(journal.events(), &shop.settings.person);
    let ends = open.iter().filter(|one| one.set != kept.id).flat_map(|one| one.competencies);
    let name = |slug: &String| shop.text(&format!("competency.{slug}")).to_string();
    ends.filter(|slug| counts.contains(slug)).map(name).collect()
}

/// How many cards the set deals to the person at work in an attempt; `None` where its sheet is not to be had.
fn count(shop: &Shop, kept: &KeptSet, attempt: &str) -> Option<u32> {
    let sheet = kept.set.sheet_of(shop.content()).ok()?;
    let world = World { content: shop.content(), sheet: &sheet };
    u32::try_from(cards(&kept.set, &kept.id, &world, &shop.settings.person, attempt).len()).ok()
}
