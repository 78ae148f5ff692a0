//! Settings that several screens offer: units, and the shop sheet in use.

use crate::app::route::Route;
use crate::app::state::{Settings, Shop};
use crate::content::Units;
use yew::prelude::*;

/// One thing to choose: its name, whether it is chosen, and the settings it leads to.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SettingChoice {
    pub(in crate::app) name: AttrValue,
    pub(in crate::app) chosen: bool,
    pub(in crate::app) leads_to: Settings,
}

/// A setting as a row of choices; the one in use is marked with tape.
pub(in crate::app) fn setting(
    change: &Callback<Settings>,
    title: AttrValue,
    group: &'static str,
    choices: &[SettingChoice],
) -> Html {
    let choice = |choice: &SettingChoice| {
        let next = choice.leads_to.clone();
        let onchange = change.reform(move |_: Event| next.clone());
        html! {
            <label key={choice.name.to_string()} class={classes!("unit", choice.chosen.then_some("picked"))}>
                <input type="radio" name={group} checked={choice.chosen} {onchange} /><span>{ &choice.name }</span>
            </label>
        }
    };
    html! {
        <fieldset key={group} class="setting">
            <legend>{ title }</legend>
            <div class="segments">{ for choices.iter().map(choice) }</div>
        </fieldset>
    }
}

pub(in crate::app) fn unit_settings(shop: &Shop, change: &Callback<Settings>) -> Html {
    let now = (*shop.settings).clone();
    let Units { fahrenheit, us } = now.units;
    let choice = |name: AttrValue, chosen: bool, fahrenheit, us| SettingChoice {
        name,
        chosen,
        leads_to: Settings { units: Units { fahrenheit, us }, ..now.clone() },
    };
    let temperature =
        vec![choice("°C".into(), !fahrenheit, false, us), choice("°F".into(), fahrenheit, true, us)];
    let measures = vec![
        choice(shop.say("menu.metric"), !us, fahrenheit, false),
        choice(shop.say("menu.us"), us, fahrenheit, true),
    ];
    html! {
        <div key="units" class="pair">
            { setting(change, shop.say("menu.temperature"), "temperature", &temperature) }
            { setting(change, shop.say("menu.measures"), "measures", &measures) }
        </div>
    }
}

/// The language, each by its own name, for whoever works.
pub(in crate::app) fn language_setting(shop: &Shop, change: &Callback<Settings>) -> Html {
    let choices = shop.content().texts.iter().map(|(language, texts)| SettingChoice {
        name: texts.get("language.name").to_owned().into(),
        chosen: shop.settings.speaks() == language,
        leads_to: (*shop.settings).clone().speaking(language),
    });
    html! {
        <div key="language">
            { setting(change, shop.say("menu.language"), "language", &choices.collect::<Vec<_>>()) }
            <div class="note"><a href={Route::Words.address()} class="text-link">{ shop.say("words.title") }</a></div>
        </div>
    }
}

pub(in crate::app) fn sheet_setting(shop: &Shop, change: &Callback<Settings>) -> Html {
    let in_use = shop.sheet().map(|sheet| sheet.slug.as_str());
    let sheets = shop.content().sheets.iter();
    // Of the shop's own the newest edition of a name, and the one in use.
    let own = |slug: &str| shop.content().own_sheets.get(slug);
    let newest = |slug: &str| {
        own(slug).is_none_or(|one| {
            let mut others = shop.content().own_sheets.values();
            others.all(|other| other.name != one.name || other.edition <= one.edition)
        })
    };
    let offered = sheets.filter(|sheet| newest(&sheet.slug) || in_use == Some(sheet.slug.as_str()));
    let choices = offered.map(|sheet| SettingChoice {
        name: shop.sheet_name(&sheet.slug),
        chosen: in_use == Some(sheet.slug.as_str()),
        leads_to: Settings { sheet: sheet.slug.clone(), ..(*shop.settings).clone() },
    });
    setting(change, shop.say("menu.sheet"), "sheet", &choices.collect::<Vec<_>>())
}
