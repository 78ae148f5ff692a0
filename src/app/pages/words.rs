//! Words of the trade in English and in another language, those to be confirmed marked.

use crate::app::hooks::use_before_menu;
use crate::app::parts::{Frame, Picture, icon};
use crate::app::state::{Shop, use_shop};
use crate::content::{ENGLISH, TradeWord};
use yew::prelude::*;

#[component]
pub(in crate::app) fn Words() -> Html {
    let shop = use_shop();
    let back = use_before_menu();
    let languages =
        shop.content().texts.keys().filter(|language| *language != ENGLISH).cloned().collect::<Vec<_>>();
    html! {
        <Frame class="sheet" title={shop.say("words.title")} back={Some(back)} cautions={shop.cautions_for(&[])}>
            <p>{ shop.say("words.why") }</p>
            { for languages.iter().map(|language| table(&shop, language)) }
        </Frame>
    }
}

fn table(shop: &Shop, language: &str) -> Html {
    let words = &shop.content().words;
    let open = words.iter().filter(|word| word.others.get(language).is_some_and(|one| !one.read)).count();
    let count = [("n", open.to_string()), ("all", words.len().to_string())];
    let name = |code: &str| AttrValue::from(shop.content().texts(code).get("language.name").to_owned());
    html! {
        <section key={language.to_owned()} class="paper">
            <h2>{ name(language) }</h2>
            <p class="note">{ shop.say_with("words.count", &count) }</p>
            <table class="working words-table">
                <thead><tr><th scope="col" lang={ENGLISH}>{ name(ENGLISH) }</th><th scope="col" lang={language.to_owned()}>{ name(language) }</th></tr></thead>
                <tbody>{ for words.iter().filter_map(|word| row(shop, word, language)) }</tbody>
            </table>
        </section>
    }
}

fn row(shop: &Shop, word: &TradeWord, language: &str) -> Option<Html> {
    let one = word.others.get(language)?;
    let mark = if one.read {
        Html::default()
    } else {
        html! { <span class="note">{ icon(Picture::Pencil) }{ shop.say("words.confirm") }</span> }
    };
    Some(html! {
        <tr key={word.en.clone()}><th scope="row" lang={ENGLISH}>{ &word.en }</th><td><span lang={language.to_owned()}>{ &one.is }</span>{ " " }{ mark }</td></tr>
    })
}
