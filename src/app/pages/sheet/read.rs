//! A shop sheet to be read: every value that answers follow, how far a shop may change it, and where it comes from.

use crate::app::parts::{Frame, limits, origin, shown};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{SettingGroup, SettingInfo};
use crate::rules::sheet::Sheet;
use crate::rules::term::Term;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct ShopSheetProps {
    /// Where the reader came from.
    pub(in crate::app) back: Route,
    /// The sheet of the card that is looked at; the one in use where none is told.
    #[prop_or_default]
    pub(in crate::app) sheet: Option<String>,
}

#[component]
pub(in crate::app) fn ShopSheet(props: &ShopSheetProps) -> Html {
    let shop = use_shop();
    // A card's own sheet and no other: where it is not here, that is said.
    let sheet = match props.sheet.as_deref() {
        Some(slug) => shop.content().sheet(slug),
        None => shop.sheet(),
    };
    let gone = sheet.is_none();
    let name = sheet.map(|sheet| shop.sheet_name(&sheet.slug)).unwrap_or_default();
    html! {
        <Frame class="sheet" title={shop.say("sheet.title")} note={name} back={Some(props.back.clone())} cautions={shop.cautions_for(&[])}>
            <p key="lead" class="lead">{ shop.say(if gone { "sheet.gone" } else { "sheet.lead" }) }</p>
            { for sheet.map(|sheet| values(&shop, sheet)) }
        </Frame>
    }
}

/// Every value of a sheet, group by group.
pub(super) fn values(shop: &Shop, sheet: &Sheet) -> Html {
    html! { <div key="groups" class="groups">{ for SettingGroup::ALL.iter().map(|one| group(shop, sheet, *one)) }</div> }
}

fn group(shop: &Shop, sheet: &Sheet, group: SettingGroup) -> Html {
    html! {
        <section key={group.slug()} class="paper">
            <h2>{ shop.text(&format!("setting-group.{}", group.slug())) }</h2>
            { table(shop, sheet, group) }
        </section>
    }
}

/// One group of values as a table.
pub(in crate::app::pages) fn table(shop: &Shop, sheet: &Sheet, group: SettingGroup) -> Html {
    let infos = shop.content().settings.iter().filter(|info| info.group == group);
    let row = |info: &SettingInfo| {
        let slug = info.key.slug();
        html! {
            <tr key={slug}>
                <th scope="row">
                    { shop.text(&format!("setting.{slug}")) }<small>{ limits(shop, info) }</small>
                    <details class="origin"><summary>{ shop.say("own.why") }</summary>{ origin(shop, info) }</details>
                </th>
                <td>{ shown(shop, info, sheet.get(info.key)) }</td>
            </tr>
        }
    };
    html! { <table class="working"><tbody>{ for infos.map(row) }</tbody></table> }
}
