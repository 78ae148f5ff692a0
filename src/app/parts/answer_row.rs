//! One answer of the record as a row that leads to its verdict.

use super::{Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::card::Mark;
use crate::device::clock;
use crate::exchange::set::{OWN_CARD, OwnCard};
use crate::record::Entry;
use crate::rules::term::Term;
use yew::prelude::*;

/// `own` is the card where it is one of the shop's own whose set is here: such a row says its question and what was answered.
/// `void` says that it no longer counts.
pub(in crate::app) fn answer_row(
    shop: &Shop,
    entry: &Entry,
    own: Option<&OwnCard>,
    to: &Route,
    void: bool,
) -> Html {
    let of_shop = entry.family.starts_with(OWN_CARD);
    let stage = shop.content().family(&entry.family).map(|family| shop.stage(family.stage));
    let kind = stage.or_else(|| of_shop.then(|| shop.say("sets.take.own")));
    let title = match own {
        Some(card) => AttrValue::from(card.question.clone()),
        None if of_shop => shop.say("record.own-gone"),
        None => shop.family_title(&entry.family),
    };
    let chosen = own.map(|card| card.said(&entry.answer).join(", ")).unwrap_or_default();
    let chosen = [("answer", chosen)];
    let mark = shop.say(match entry.mark {
        Mark::Right => "record.mark.right",
        Mark::Partly => "record.mark.partly",
        Mark::Wrong => "record.mark.wrong",
    });
    let certainty = shop.say(&format!("card.certainty.{}", entry.certainty.slug()));
    let told: Vec<String> =
        kind.into_iter().chain([mark, certainty]).map(|part| format!("{part}.")).collect();
    html! {
        <li key={format!("{}-{}", entry.stamp.device, entry.stamp.sequence)}>
            <a href={to.address()} class="row-link">
                { sign(SignKind::from(entry.mark)) }
                <span class="words"><b>{ title }</b>
                    <span key="chosen" hidden={own.is_none()}>{ shop.say_with("record.chosen", &chosen) }</span>
                    <span key="told">{ told.join(" ") }</span>
                    <span key="void" class="struck-out" hidden={!void}>{ shop.say("record.void") }</span>
                    <span key="at" class="note">{ clock::local(&entry.stamp.at) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
