//! A value of a shop sheet in words.

use crate::app::state::Shop;
use crate::content::SettingInfo;
use crate::rules::term::Term;
use yew::prelude::*;

/// The value with its unit; yes or no for a switch; what none of it means where that has words.
pub(in crate::app) fn shown(shop: &Shop, info: &SettingInfo, value: f64) -> AttrValue {
    let none =
        (value == 0.0).then(|| shop.texts().find(&format!("setting.{}.zero", info.key.slug()))).flatten();
    if let Some(none) = none {
        return none.to_owned().into();
    }
    match (info.is_switch(), value != 0.0) {
        (true, true) => shop.say("sheet.on"),
        (true, false) => shop.say("sheet.off"),
        _ => shop.texts().measure(info.shown(shop.settings.units, value)).into(),
    }
}

/// What a shop may set; nothing for a switch.
pub(in crate::app) fn limits(shop: &Shop, info: &SettingInfo) -> AttrValue {
    if info.is_switch() {
        return AttrValue::default();
    }
    let bound = |value| shop.texts().measure(info.shown(shop.settings.units, value));
    shop.say_with("own.limits", &[("floor", bound(info.floor)), ("ceiling", bound(info.ceiling))])
}

/// Where default and limits come from, and why sources disagree.
pub(in crate::app) fn origin(shop: &Shop, info: &SettingInfo) -> Html {
    let slug = info.key.slug();
    let kind = shop.say(&format!("own.provenance.{}", info.provenance.slug()));
    let limit = info.limit.clone();
    let held = limit.map(
        |limit| html! { <p key="limit">{ shop.say_with("own.limit-source", &[("source", shop.source(&limit))]) }</p> },
    );
    let why = shop.texts().find(&format!("setting.{slug}.why")).map(str::to_owned);
    html! {
        <>
            <p key="source">{ shop.say_with("own.source", &[("source", shop.source(&info.source))]) }{ " " }{ kind }</p>
            { for held }
            { for why.map(|why| html! { <p key="why">{ why }</p> }) }
        </>
    }
}
