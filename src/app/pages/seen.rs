//! An answer as the card that was seen, dealt again on its own sheet.

use super::answered::Answered;
use super::card::{cautions, stage_name};
use super::deal;
use super::sets::OwnVerdict;
use crate::app::parts::{Frame, card_ticket};
use crate::app::route::Route;
use crate::app::state::{SetsContext, Shop};
use crate::device::clock;
use crate::exchange::set::OWN_CARD;
use crate::record::{CardName, Entry};
use std::rc::Rc;
use yew::prelude::*;

/// What stands beside the card: above it, below it, and how the screen is left.
#[derive(Default)]
pub(super) struct Beside {
    pub(super) back: Option<Route>,
    pub(super) action: Html,
    /// What to know before it is looked at.
    pub(super) above: Html,
    /// What can be done about it.
    pub(super) below: Html,
}

/// The whole screen; the answer alone, told plainly, where the card cannot be had.
pub(super) fn seen(
    shop: &Shop,
    sets: &SetsContext,
    entry: &Entry,
    title: &AttrValue,
    beside: Beside,
) -> Html {
    let Beside { back, action, above, below } = beside;
    let name = CardName {
        family: entry.family.clone(),
        version: entry.version,
        seed: entry.seed,
        sheet: entry.sheet.clone(),
    };
    let note = shop.say_with("record.answered", &[("at", clock::local(&entry.stamp.at))]);
    if let Some(card) = sets.own_card(entry).cloned().map(Rc::new) {
        return html! {
            <Frame class="handed" {title} {note} {back} cautions={shop.cautions_for(&[])} {action}>
                { above }
                <OwnVerdict {card} answer={entry.answer.clone()} certainty={entry.certainty} />
                { below }
            </Frame>
        };
    }
    if entry.family.starts_with(OWN_CARD) {
        return html! {
            <Frame class="sheet" {title} {note} {back} cautions={shop.cautions_for(&[])} {action}>
                { above }
                <p class="lead">{ shop.say("record.own-gone") }</p>
                <p>{ shop.say("record.own-gone-why") }</p>
                { below }
            </Frame>
        };
    }
    let Some(card) = deal::again(shop, &name).map(Rc::new) else {
        let sheet = shop.world(&entry.sheet.slug).filter(|world| world.sheet.hash() == entry.sheet.hash);
        let why = if sheet.is_some() { "record.gone" } else { "record.no-sheet" };
        // An edition that is not here has its slug alone.
        let slug = entry.sheet.slug.as_str();
        let known = shop.content().sheet(slug).map(|_| shop.sheet_name(slug).to_string());
        let sheet = [("sheet", known.unwrap_or_else(|| slug.to_owned()))];
        return html! {
            <Frame class="sheet" {title} {note} {back} cautions={shop.cautions_for(&[])} {action}>
                { above }
                <p class="lead">{ shop.say_with(why, &sheet) }</p>
                <p><b>{ shop.family_title(&entry.family) }</b></p>
                <p>{ shop.voice().answer(&entry.family, &entry.answer) }</p>
                { below }
            </Frame>
        };
    };
    html! {
        <Frame class="handed" title={stage_name(shop, &card)} {note} {back} cautions={cautions(shop, &card)} {action}>
            { above }
            { card_ticket(shop, &card) }
            <h2 key="ask">{ shop.voice().ask(&card) }</h2>
            <Answered key="verdict" {card} entry={Rc::new(entry.clone())} />
            { below }
        </Frame>
    }
}
