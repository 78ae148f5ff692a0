//! How the tablet is set: shop sheet, units, light, hand; and whether the answers are kept.

use crate::app::parts::{SettingChoice, language_setting, setting, sheet_setting, unit_settings};
use crate::app::route::Route;
use crate::app::state::{Light, Settings, SettingsContext, Shop};
use crate::device::page::Kept;
use crate::rules::term::Term;
use yew::prelude::*;

pub(super) fn settings(shop: &Shop, settings: &SettingsContext) -> Html {
    let now = (*settings.now).clone();
    let light = |light: &Light| SettingChoice {
        name: shop.say(&format!("menu.light.{}", light.slug())),
        chosen: *light == now.light,
        leads_to: Settings { light: *light, ..now.clone() },
    };
    let hand = |key: &str, left_hand: bool| SettingChoice {
        name: shop.say(key),
        chosen: now.left_hand == left_hand,
        leads_to: Settings { left_hand, ..now.clone() },
    };
    let (lights, hands) = (
        Light::ALL.iter().map(light).collect::<Vec<_>>(),
        [hand("menu.hand.right", false), hand("menu.hand.left", true)],
    );
    // The base sheet is in use where the chosen one is gone: that is said.
    let gone = shop.sheet_gone();
    html! {
        <section key="settings" class="setting menu-settings">
            <h2>{ shop.say("menu.settings") }</h2>
            { sheet_setting(shop, &settings.change) }
            <p key="gone" class="wrong" role="alert" hidden={!gone}>{ if gone { shop.say("own.gone") } else { AttrValue::default() } }</p>
            <div key="sheet-why" class="note">
                <p>{ shop.say("menu.sheet-why") }</p>
                <a href={Route::Sheet.address()} class="text-link">{ shop.say("sheet.open") }</a>
            </div>
            { unit_settings(shop, &settings.change) }
            { language_setting(shop, &settings.change) }
            { setting(&settings.change, shop.say("menu.light"), "light", &lights) }
            { setting(&settings.change, shop.say("menu.hand"), "hand", &hands) }
        </section>
    }
}

/// What the browser said when it was asked to keep the answers, and what this is not.
pub(super) fn about(shop: &Shop, kept: Kept) -> Html {
    let said = match kept {
        Kept::Yes => shop.say("saved.kept-yes"),
        Kept::No => shop.say("saved.kept-no"),
        Kept::Unknown => shop.say("saved.kept-unknown"),
    };
    html! {
        <section key="keeping" class="setting">
            <h2>{ shop.say("menu.keeping") }</h2>
            <p role="status">{ said }</p>
            <p class="note">{ shop.say("menu.licence") }</p>
        </section>
    }
}
