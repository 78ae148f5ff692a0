//! One answer of the record as a row that leads to its verdict.

use super::{Picture, SignKind, icon, sign};
use crate::app::route::Route;
use crate::app::state::Shop;
use crate::card::Mark;
use crate::device::clock;
use crate::exchange::set::OWN_CARD;
use crate::record::Entry;
use crate::rules::term::Term;
use yew::prelude::*;

pub(in crate::app) fn answer_row(shop: &Shop, entry: &Entry, to: &Route) -> Html {
    let stage =
        shop.content().family(&entry.family).map(|family| shop.stage(family.stage)).unwrap_or_default();
    let title = if entry.family.starts_with(OWN_CARD) {
        shop.say("sets.take.own")
    } else {
        shop.family_title(&entry.family)
    };
    let mark = shop.say(match entry.mark {
        Mark::Right => "record.mark.right",
        Mark::Partly => "record.mark.partly",
        Mark::Wrong => "record.mark.wrong",
    });
    let certainty = shop.say(&format!("card.certainty.{}", entry.certainty.slug()));
    html! {
        <li key={format!("{}-{}", entry.stamp.device, entry.stamp.sequence)}>
            <a href={to.address()} class="row-link">
                { sign(SignKind::from(entry.mark)) }
                <span class="words"><b>{ title }</b><span>{ stage }{ ". " }{ mark }{ ". " }{ certainty }{ "." }</span>
                    <span class="note">{ clock::local(&entry.stamp.at) }</span></span>
                { icon(Picture::Go) }
            </a>
        </li>
    }
}
