//! Settings that several screens offer: units, and the shop sheet in use.

use crate::app::hooks::use_settings;
use crate::app::state::{Settings, use_shop};
use crate::content::Units;
use yew::prelude::*;

/// One thing to choose: its name, whether it is chosen, and the settings it leads to.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct SettingChoice {
    pub(in crate::app) name: AttrValue,
    pub(in crate::app) chosen: bool,
    pub(in crate::app) leads_to: Settings,
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SettingProps {
    pub(in crate::app) title: AttrValue,
    pub(in crate::app) group: &'static str,
    pub(in crate::app) choices: Vec<SettingChoice>,
}

/// A setting as a row of choices; the one in use is marked with tape.
#[component]
pub(in crate::app) fn Setting(props: &SettingProps) -> Html {
    let change = use_settings().change;
    let choice = |choice: &SettingChoice| {
        let next = choice.leads_to.clone();
        let onchange = change.reform(move |_: Event| next.clone());
        html! {
            <label key={choice.name.to_string()} class={classes!("unit", choice.chosen.then_some("picked"))}>
                <input type="radio" name={props.group} checked={choice.chosen} {onchange} /><span>{ &choice.name }</span>
            </label>
        }
    };
    html! {
        <fieldset class="setting">
            <legend>{ &props.title }</legend>
            <div class="segments">{ for props.choices.iter().map(choice) }</div>
        </fieldset>
    }
}

#[component]
pub(in crate::app) fn UnitSettings() -> Html {
    let shop = use_shop();
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
        <div class="pair">
            <Setting key="temperature" title={shop.say("menu.temperature")} group="temperature" choices={temperature} />
            <Setting key="measures" title={shop.say("menu.measures")} group="measures" choices={measures} />
        </div>
    }
}

#[component]
pub(in crate::app) fn SheetSetting() -> Html {
    let shop = use_shop();
    let in_use = shop.sheet().map(|sheet| sheet.slug.as_str());
    let sheets = shop.content().sheets.iter();
    let choices = sheets.map(|sheet| SettingChoice {
        name: shop.text(&format!("sheet.{}", sheet.slug)),
        chosen: in_use == Some(sheet.slug.as_str()),
        leads_to: Settings { sheet: sheet.slug.clone(), ..(*shop.settings).clone() },
    });
    html! { <Setting title={shop.say("menu.sheet")} group="sheet" choices={choices.collect::<Vec<_>>()} /> }
}
