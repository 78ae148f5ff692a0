//! One value while it is edited: what it is now, what is allowed, what is wrong with it, and where it comes from.

use crate::app::parts::{limits, origin, shown};
use crate::app::state::Shop;
use crate::content::SettingInfo;
use crate::exchange::{Bar, Barred, SheetDraft};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

pub(super) struct Row<'a> {
    pub(super) info: &'a SettingInfo,
    pub(super) draft: &'a SheetDraft,
    /// What was typed, where it was touched.
    pub(super) typed: Option<&'a str>,
    /// Whether it differs from the sheet that the draft was begun from.
    pub(super) changed: bool,
    pub(super) barred: Option<&'a Barred>,
    /// Whether what was typed is no number of this dimension.
    pub(super) unread: bool,
    pub(super) on_typed: &'a Callback<(Setting, String)>,
    pub(super) back_to: &'a Callback<Setting>,
}

pub(super) fn row(shop: &Shop, row: &Row<'_>) -> Html {
    let Row { info, draft, changed, unread, .. } = *row;
    let (slug, key) = (info.key.slug(), info.key);
    let id = format!("value-{slug}");
    let wrong = match (unread, row.barred) {
        (true, _) => shop.say("own.barred.unread"),
        (false, Some(barred)) => why(shop, info, barred),
        (false, None) => AttrValue::default(),
    };
    let told = format!("{id}-told");
    let onclick = row.back_to.reform(move |_: MouseEvent| key);
    let control = if info.is_switch() {
        switch(shop, row, &id)
    } else {
        field(shop, row, &id, &told, !wrong.is_empty())
    };
    html! {
        <div key={slug} class={classes!("own-row", changed.then_some("changed"))}>
            { control }
            <p id={told} class="note"><span hidden={!changed}><b>{ shop.say("own.changed") }</b>{ " " }</span>{ before(shop, info, draft) }{ limits(shop, info) }{ zero(shop, info) }</p>
            <p class="wrong" role="alert" hidden={wrong.is_empty()}>{ wrong.clone() }</p>
            <div class="own-more">
                <details class="origin"><summary>{ shop.say("own.why") }</summary>{ origin(shop, info) }</details>
                <button type="button" class="own-back" hidden={!changed && row.typed.is_none()} {onclick}>{ shop.say("own.back-to") }<span class="spoken">{ ": " }{ shop.text(&format!("setting.{slug}")) }</span></button>
            </div>
        </div>
    }
}

/// What the edition that it was begun from says, and what its base says.
fn before(shop: &Shop, info: &SettingInfo, draft: &SheetDraft) -> String {
    let content = shop.content();
    let mut slugs = vec![draft.from(), draft.base.clone()];
    slugs.dedup();
    let told = slugs.iter().filter_map(|slug| {
        let value = shown(shop, info, content.sheet(slug)?.get(info.key)).to_string();
        let named = [("value", value), ("sheet", shop.sheet_name(slug).to_string())];
        Some(format!("{} ", shop.say_with("own.base-value", &named)))
    });
    told.collect()
}

/// What 0 means where it is no amount.
fn zero(shop: &Shop, info: &SettingInfo) -> String {
    let words = shop.texts().find(&format!("setting.{}.zero", info.key.slug())).filter(|_| !info.is_switch());
    let said = words.map(|words| shop.say_with("own.zero", &[("words", words.to_owned())]));
    said.map(|said| format!(" {said}")).unwrap_or_default()
}

/// A number in the person's unit.
fn field(shop: &Shop, row: &Row<'_>, id: &str, told: &str, invalid: bool) -> Html {
    let (info, key) = (row.info, row.info.key);
    let now = info.shown(shop.settings.units, row.draft.value(shop.content(), key));
    let value = row.typed.map_or_else(|| shop.texts().figure(now), str::to_owned);
    let oninput = row.on_typed.reform(move |event: InputEvent| {
        let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        (key, input.map(|input| input.value()).unwrap_or_default())
    });
    html! {
        <div class="field">
            <label for={id.to_owned()}>{ shop.text(&format!("setting.{}", key.slug())) }</label>
            <span class="typed-unit">
                <input id={id.to_owned()} type="text" inputmode="decimal" autocomplete="off" {value} {oninput}
                    aria-describedby={told.to_owned()} aria-invalid={invalid.then_some("true")} />
                <span>{ now.unit.symbol() }</span>
            </span>
        </div>
    }
}

/// Yes or no.
fn switch(shop: &Shop, row: &Row<'_>, id: &str) -> Html {
    let (info, key) = (row.info, row.info.key);
    let now = row.draft.value(shop.content(), key);
    let choice = |value: f64| {
        let picked = (now != 0.0) == (value != 0.0);
        let onchange = row.on_typed.reform(move |_: Event| (key, value.to_string()));
        html! {
            <label key={value.to_string()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={id.to_owned()} checked={picked} {onchange} /><span>{ shown(shop, info, value) }</span>
            </label>
        }
    };
    html! {
        <fieldset class="setting own-switch">
            <legend>{ shop.text(&format!("setting.{}", key.slug())) }</legend>
            <div class="segments">{ choice(1.0) }{ choice(0.0) }</div>
        </fieldset>
    }
}

/// What bars a value, in the words of the shop: the limit, and what holds it.
fn why(shop: &Shop, info: &SettingInfo, barred: &Barred) -> AttrValue {
    let source = info.limit_source().to_owned();
    let value = |value: f64| shown(shop, info, value).to_string();
    let named = match barred.bar {
        Bar::Floor(limit) | Bar::Ceiling(limit) => vec![("limit", value(limit)), ("source", source)],
        Bar::Switch => Vec::new(),
        Bar::Clash(clash) => {
            let other = if clash.high == barred.setting { clash.low } else { clash.high };
            let other_value = if clash.high == barred.setting { clash.low_value } else { clash.high_value };
            let side = if clash.high == barred.setting { "above" } else { "below" };
            let told = shop.content().setting(other).map(|info| shown(shop, info, other_value).to_string());
            vec![
                ("side", shop.say(&format!("own.side.{side}")).to_string()),
                ("other", shop.text(&format!("setting.{}", other.slug())).to_string()),
                ("value", told.unwrap_or_default()),
            ]
        }
    };
    shop.say_with(&format!("own.barred.{}", barred.bar.slug()), &named)
}
