//! Everything on this tablet as one file.

use super::put_back::{PutBack, was_put_back};
use crate::app::hooks::use_everything;
use crate::app::parts::{Picture, icon};
use crate::app::state::{Everything, Shop, use_shop};
use crate::device::files::save_json;
use crate::device::{clock, page};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Id of what was said last.
const SAID: &str = "backup-said";

#[component]
pub(super) fn AllOfIt() -> Html {
    let shop = use_shop();
    let everything = use_everything();
    let said = use_state(AttrValue::default);
    use_effect_with((), {
        let (shop, said) = (shop.clone(), said.setter());
        move |()| {
            if was_put_back() {
                said.set(shop.say("backup.put-back"));
                page::once_drawn(|| page::bring(SAID));
            }
        }
    });
    let save = {
        let (shop, said) = (shop.clone(), said.setter());
        Callback::from(move |_: MouseEvent| {
            let (shop, everything, said) = (shop.clone(), everything.clone(), said.clone());
            spawn_local(async move {
                said.set(match saved(&shop, &everything).await {
                    Ok(name) => shop.say_with("backup.saved", &[("name", name)]),
                    Err(why) => shop.say_with("backup.not-saved", &[("why", why)]),
                });
            });
        })
    };
    html! {
        <section key="backup" class="setting form">
            <h2>{ shop.say("backup.title") }</h2>
            <p class="note">{ shop.say("backup.why") }</p>
            <button key="save" type="button" class="control" onclick={save}>{ icon(Picture::File) }{ shop.say("backup.save") }</button>
            <p key="said" id={SAID} tabindex="-1" role="status">{ (*said).clone() }</p>
            <PutBack key="put-back" />
        </section>
    }
}

/// Offers all as a file to save; gives its name.
async fn saved(shop: &Shop, everything: &Everything) -> Result<String, String> {
    let backup = everything.backup(&shop.settings.device).await?;
    let name = backup.save_name(clock::today());
    let text = backup.text().map_err(|refused| refused.to_string())?;
    save_json(&name, &text).map_err(|error| format!("{error:?}"))?;
    Ok(name)
}
