//! What a signature proves and what it does not, and what to do when a key is lost.

use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use yew::prelude::*;

/// Paragraphs under each heading, as keys of `app.verify-about`.
const PROVES: [&str; 3] = ["proves.bytes", "proves.trusted", "proves.anywhere"];
const NOT: [&str; 6] = ["not.person", "not.delete", "not.dates", "not.end", "not.later", "not.licence"];
const TO_DO: [&str; 4] = ["do.compare", "do.note", "do.copies", "do.passphrase"];

#[component]
pub(in crate::app) fn VerifyAbout() -> Html {
    let shop = use_shop();
    html! {
        <Frame class="sheet" title={shop.say("verify-about.title")} back={Some(Route::Verify)} cautions={shop.cautions_for(&[])}>
            { list(&shop, "proves", &PROVES) }
            { list(&shop, "not", &NOT) }
            { list(&shop, "do", &TO_DO) }
            <section key="lost" class="paper about">
                <h2>{ shop.say("verify-about.lost") }</h2>
                <p>{ shop.text("locked.lost-key") }</p>
                <p>{ shop.text("locked.lost-root") }</p>
            </section>
        </Frame>
    }
}

fn list(shop: &Shop, name: &'static str, keys: &[&'static str]) -> Html {
    let line =
        |key: &&'static str| html! { <li key={*key}>{ shop.say(&format!("verify-about.{key}")) }</li> };
    html! {
        <section key={name} class="paper about">
            <h2>{ shop.say(&format!("verify-about.{name}")) }</h2>
            <ul class="told">{ for keys.iter().map(line) }</ul>
        </section>
    }
}
