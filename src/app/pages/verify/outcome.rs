//! Accepted or not, why, what the file says, and the fingerprint that is to be compared.

use super::{Given, Outcome};
use crate::app::parts::{Picture, SignKind, icon, refusal, refusals, says, sign};
use crate::app::route::{Paper, Route};
use crate::app::state::Shop;
use crate::device::clock;
use crate::rules::term::Term;
use crate::signoff::{TrustList, Verdict, When, grouped};
use yew::prelude::*;

pub(super) fn shown(shop: &Shop, given: &Given, outcome: &Outcome) -> Html {
    match outcome {
        Outcome::Waiting => html! { <p class="kraft">{ waits_for(shop, given) }</p> },
        Outcome::NoDay => html! { <p class="kraft">{ shop.say("verify.no-day") }</p> },
        Outcome::NoList(why) => html! {
            <section class="verdict wrong">
                <header>{ sign(SignKind::Wrong) }<h2>{ shop.say("verify.no-list") }</h2></header>
                <p>{ refusal(shop, why) }</p>
                <p class="note">{ shop.say("verify.no-list-hint") }</p>
            </section>
        },
        Outcome::Judged { list, verdict, on } => judged(shop, list, verdict, on, given.own),
    }
}

fn waits_for(shop: &Shop, given: &Given) -> AttrValue {
    let here = |file: &Option<_>| file.is_some();
    shop.say(match (here(&given.sign_off), given.own || here(&given.list)) {
        (false, false) => "verify.pick-both",
        (true, false) => "verify.pick-list",
        (false, true) => "verify.pick-sign-off",
        (true, true) => "verify.pick-again",
    })
}

fn judged(shop: &Shop, list: &TrustList, verdict: &Verdict, on: &When, own: bool) -> Html {
    let accepted = verdict.accepted();
    let (class, kind, word) =
        if accepted { ("ok", SignKind::Right, "accepted") } else { ("wrong", SignKind::Wrong, "refused") };
    let asked = shop.say_with("verify.asked", &[("day", clock::day(on))]);
    let file = verdict.credential.as_ref().zip(verdict.hash);
    html! {
        <>
            <section key="verdict" class={classes!("verdict", class)}>
                <header>{ sign(kind) }<h2>{ shop.text(&format!("verify.{word}")) }</h2></header>
                { refusals(shop, &verdict.reasons) }
                <p class="note">{ asked }</p>
            </section>
            { compare(shop, list, accepted, own) }
            { file.map(|(one, hash)| says(shop, one, hash)).unwrap_or_default() }
            <p key="nothing" class="note" hidden={file.is_some()}>{ shop.say("verify.says-nothing") }</p>
            <nav key="papers" class="doors papers" hidden={!accepted}>{ for Paper::ALL.iter().map(|one| door(shop, *one)) }</nav>
        </>
    }
}

/// The fingerprint of the root key: an accepted file is worth as much as this was compared.
fn compare(shop: &Shop, list: &TrustList, accepted: bool, own: bool) -> Html {
    let why = match (own, accepted) {
        (true, _) => "verify.compare-own",
        (false, true) => "verify.compare-accepted",
        (false, false) => "verify.compare-refused",
    };
    let args = [("issued", clock::local(list.issued.text()))].map(|(name, value)| (name.to_owned(), value));
    html! {
        <section key="compare" class="kraft compare">
            <h2>{ shop.say("verify.compare-title") }</h2>
            <p class="digits">{ grouped(&list.root.fingerprint()) }</p>
            <p>{ shop.say(why) }</p>
            <p class="note">{ shop.say_with("verify.list-of", &[("shop", list.shop.clone()), ("number", list.number.to_string())]) }
                { " " }{ shop.texts().fill("verify.unseen", &args.into()) }</p>
        </section>
    }
}

fn door(shop: &Shop, paper: Paper) -> Html {
    let to = Route::VerifyPaper { paper };
    html! {
        <a key={paper.slug()} href={to.address()} class="control door">
            { icon(Picture::Print) }{ shop.say(&format!("paper.{}", paper.slug())) }
        </a>
    }
}
