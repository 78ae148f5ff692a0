//! How two sheets differ, as a table of two columns.

use super::shown;
use crate::app::state::Shop;
use crate::exchange::differences;
use crate::rules::sheet::Sheet;
use crate::rules::term::Term;
use yew::prelude::*;

/// One of the two sheets.
pub(in crate::app) struct Column<'a> {
    pub(in crate::app) name: AttrValue,
    pub(in crate::app) sheet: &'a Sheet,
}

pub(in crate::app) fn differ_table(shop: &Shop, one: &Column<'_>, other: &Column<'_>) -> Html {
    let found = differences(one.sheet, other.sheet);
    let row = |found: &crate::exchange::Difference| {
        let info = shop.content().setting(found.setting)?;
        let slug = info.key.slug();
        Some(html! {
            <tr key={slug}>
                <th scope="row">{ shop.text(&format!("setting.{slug}")) }</th>
                <td>{ shown(shop, info, found.one) }</td>
                <td>{ shown(shop, info, found.other) }</td>
            </tr>
        })
    };
    if found.is_empty() {
        return html! { <p key="differ" class="note">{ shop.say("own.no-difference") }</p> };
    }
    html! {
        <table key="differ" class="working differ">
            <thead><tr>
                <th scope="col">{ shop.say("own.value") }</th>
                <th scope="col">{ &one.name }</th>
                <th scope="col">{ &other.name }</th>
            </tr></thead>
            <tbody>{ for found.iter().filter_map(row) }</tbody>
        </table>
    }
}
