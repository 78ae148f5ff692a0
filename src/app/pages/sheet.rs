//! The shop sheet in use, to be read: every value that answers follow, and how far a shop may change it.

use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{SettingGroup, SettingInfo};
use crate::rules::sheet::Held;
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct ShopSheetProps {
    /// Where the reader came from.
    pub(in crate::app) back: Route,
}

#[component]
pub(in crate::app) fn ShopSheet(props: &ShopSheetProps) -> Html {
    let shop = use_shop();
    let name = shop.sheet().map(|sheet| shop.text(&format!("sheet.{}", sheet.slug))).unwrap_or_default();
    html! {
        <Frame class="sheet" title={shop.say("sheet.title")} note={name} back={Some(props.back.clone())} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say("sheet.lead") }</p>
            <div key="groups" class="groups">{ for SettingGroup::ALL.iter().map(|group| values(&shop, *group)) }</div>
        </Frame>
    }
}

/// One group of values as a table.
fn values(shop: &Shop, group: SettingGroup) -> Html {
    let infos = shop.content().settings.iter().filter(|info| info.group == group);
    let row = |info: &SettingInfo| {
        let held = shop.sheet().map(|sheet| sheet.held(info.key))?;
        let slug = info.key.slug();
        Some(html! {
            <tr key={slug}>
                <th scope="row">{ shop.text(&format!("setting.{slug}")) }<small>{ limit(shop, info, held) }</small></th>
                <td>{ shown(shop, info, held.value) }</td>
            </tr>
        })
    };
    html! {
        <section key={group.slug()} class="paper">
            <h2>{ shop.text(&format!("setting-group.{}", group.slug())) }</h2>
            <table class="working"><tbody>{ for infos.filter_map(row) }</tbody></table>
        </section>
    }
}

fn shown(shop: &Shop, info: &SettingInfo, value: f64) -> AttrValue {
    match (info.is_switch(), value != 0.0) {
        (true, true) => shop.say("sheet.on"),
        (true, false) => shop.say("sheet.off"),
        _ => shop.voice().measure(info.measure(value)).into(),
    }
}

/// The floor, where the value stands on it.
fn limit(shop: &Shop, info: &SettingInfo, held: Held) -> AttrValue {
    if info.is_switch() || held.floor <= 0.0 {
        return AttrValue::default();
    }
    shop.say_with("sheet.floor", &[("floor", shown(shop, info, held.floor).to_string())])
}
