//! The values of the shop sheet on paper: cards ask for them, and on a tablet they are one tap away.

use super::OnPaper;
use crate::app::parts::{set_sheet, shown};
use crate::app::state::Shop;
use crate::content::{SettingGroup, SettingInfo};
use crate::rules::term::Term;
use yew::prelude::*;

/// All values that a set is dealt on, by their groups.
pub(super) fn values(shop: &Shop, on: &OnPaper) -> Html {
    let value = |info: &SettingInfo| {
        let slug = info.key.slug();
        let value = shown(shop, info, on.sheet.get(info.key));
        html! { <div key={slug}><dt>{ shop.text(&format!("setting.{slug}")) }</dt><dd>{ value }</dd></div> }
    };
    let group = |group: &SettingGroup| {
        let of_group = shop.content().settings.iter().filter(|info| info.group == *group);
        html! {
            <div key={group.slug()} class="value-group">
                <h4>{ shop.text(&format!("setting-group.{}", group.slug())) }</h4>
                <dl>{ for of_group.map(value) }</dl>
            </div>
        }
    };
    html! {
        <section key="values" class="values-on-paper">
            <h3>{ shop.say_with("worksheet.values", &[("sheet", set_sheet(shop, &on.set).to_string())]) }</h3>
            <div class="value-groups">{ for SettingGroup::ALL.iter().map(group) }</div>
        </section>
    }
}
