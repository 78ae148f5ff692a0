//! The values of the shop sheet on paper: cards ask for them, and on a tablet they are one tap away.

use super::OnPaper;
use crate::app::parts::shown;
use crate::app::state::Shop;
use crate::card::solve;
use crate::content::{SettingGroup, SettingInfo, World};
use crate::exchange::CarriedSheet;
use crate::exchange::set::SetCard;
use crate::rules::term::Term;
use yew::prelude::*;

/// The values that the cards of a worksheet are answered by, by their groups; nothing where there are none.
pub(super) fn values(shop: &Shop, on: &OnPaper, cards: &[SetCard<'_>]) -> Option<Html> {
    let asked = on.sheet.asked_by(|sheet| {
        let world = World { content: shop.content(), sheet };
        for card in cards {
            if let SetCard::Computed(card) = card {
                // What comes of it stands in the key.
                drop(solve(card, &world));
            }
        }
    });
    if asked.is_empty() {
        return None;
    }
    let value = |info: &SettingInfo| {
        let slug = info.key.slug();
        let value = shown(shop, info, on.sheet.get(info.key));
        html! { <div key={slug}><dt>{ shop.text(&format!("setting.{slug}")) }</dt><dd>{ value }</dd></div> }
    };
    let group = |group: &SettingGroup| {
        let of_group = |info: &&SettingInfo| info.group == *group && asked.contains(&info.key);
        let of_group: Vec<&SettingInfo> = shop.content().settings.iter().filter(of_group).collect();
        html! {
            <div key={group.slug()} class="value-group" hidden={of_group.is_empty()}>
                <h4>{ shop.text(&format!("setting-group.{}", group.slug())) }</h4>
                <dl>{ for of_group.into_iter().map(value) }</dl>
            </div>
        }
    };
    Some(html! {
        <section class="values-on-paper">
            <h3>{ shop.say_with("worksheet.values", &[("sheet", named(shop, on))]) }</h3>
            <p class="small">{ shop.say("worksheet.values-why") }</p>
            <div class="value-groups">{ for SettingGroup::ALL.iter().map(group) }</div>
        </section>
    })
}

/// What the sheet is called, in a few words.
fn named(shop: &Shop, on: &OnPaper) -> String {
    match &on.set.sheet {
        CarriedSheet::Ships(name) => shop.text(&format!("sheet.{}", name.slug)).to_string(),
        CarriedSheet::Own(own) => {
            let told = [("name", own.name.clone()), ("edition", own.edition.to_string())];
            shop.say_with("worksheet.own-sheet", &told).to_string()
        }
    }
}
