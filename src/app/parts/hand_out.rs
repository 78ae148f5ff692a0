//! A file handed out without a server: as a link that holds it whole, as a square code of that link, by the device's own sheet,
//! and as a file.
//!
//! ```text
//! <HandOut name={file_name} text={file_text} title={what_it_is} />
//! ```

use super::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::device::files;
use crate::device::share::{self, Shared};
use crate::exchange::link::{QUIET, Square, pack};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct HandOutProps {
    /// Begins the ids of what it shows; several may stand on a page.
    #[prop_or("hand-out".into())]
    pub(in crate::app) id: AttrValue,
    /// Name of the file.
    pub(in crate::app) name: AttrValue,
    /// Its text.
    pub(in crate::app) text: AttrValue,
    /// What it is, in a few words.
    pub(in crate::app) title: AttrValue,
}

/// What was done last: the key of what is said of it.
type Said = Option<&'static str>;

#[component]
pub(in crate::app) fn HandOut(props: &HandOutProps) -> Html {
    let shop = use_shop();
    let said = use_state(|| Said::None);
    let link = use_memo(props.text.clone(), |text| {
        let code = pack(text).ok()?;
        Some(format!("{}{}", share::app_address(), Route::Take { code }.address()))
    });
    let square = use_memo((*link).clone(), |link| link.as_deref().and_then(Square::of));
    let sharing =
        use_memo(((*link).clone(), props.name.clone(), props.text.clone()), |(link, name, text)| {
            let file = Shared::File(name.to_string(), text.to_string());
            let link = link.clone().map(Shared::Link);
            (link.filter(share::can_share), Some(file).filter(share::can_share))
        });
    let on_copy = act(&said, {
        let link = (*link).clone().unwrap_or_default();
        move || {
            let link = link.clone();
            async move { if share::copy(&link).await { "copied" } else { "not-copied" } }
        }
    });
    let on_share = |what: Option<&Shared>, failed: &'static str| {
        let (what, title) = (what.cloned(), props.title.clone());
        act(&said, move || {
            let (what, title) = (what.clone(), title.clone());
            async move {
                let Some(what) = what else { return failed };
                if share::share(&title, &what).await { "" } else { failed }
            }
        })
    };
    let (share_link, share_file) = (sharing.0.as_ref(), sharing.1.as_ref());
    let (on_share_link, on_share_file) =
        (on_share(share_link, "link-not-shared"), on_share(share_file, "file-not-shared"));
    let on_save = act(&said, {
        let (name, text) = (props.name.clone(), props.text.clone());
        move || {
            let (name, text) = (name.clone(), text.clone());
            async move { if files::save_json(&name, &text).is_ok() { "saved" } else { "not-saved" } }
        }
    });
    let has_link = link.is_some();
    let told = said.filter(|said| !said.is_empty());
    html! {
        <section class="paper hand-out">
            <h2>{ shop.say("hand-out.title") }</h2>
            <p key="none" class="note" hidden={has_link}>{ shop.say("hand-out.no-link") }</p>
            <div key="link" class="hand-out-link" hidden={!has_link}>
                { drawn(&shop, (*square).as_ref()) }
                <div class="field">
                    <label for={format!("{}-link", props.id)}>{ shop.say("hand-out.link") }</label>
                    <textarea id={format!("{}-link", props.id)} rows="3" readonly=true value={(*link).clone().unwrap_or_default()} aria-describedby={format!("{}-hint", props.id)} />
                    <p id={format!("{}-hint", props.id)} class="note">{ shop.say("hand-out.link-hint") }</p>
                </div>
            </div>
            <div key="acts" class="people">
                <button key="copy" type="button" class="control" hidden={!has_link} onclick={on_copy}>{ icon(Picture::Words) }{ shop.say("hand-out.copy") }</button>
                <button key="share-link" type="button" class="control" hidden={share_link.is_none()} onclick={on_share_link}>{ icon(Picture::Up) }{ shop.say("hand-out.share-link") }</button>
                <button key="share-file" type="button" class="control" hidden={share_file.is_none()} onclick={on_share_file}>{ icon(Picture::Up) }{ shop.say("hand-out.share-file") }</button>
                <button key="save" type="button" class="control" onclick={on_save}>{ icon(Picture::Save) }{ shop.say("hand-out.save") }</button>
            </div>
            <p key="said" class="note" role="status">{ told.map(|said| shop.say(&format!("hand-out.{said}"))).unwrap_or_default() }</p>
        </section>
    }
}

/// The square code; where the link is too long for one, that it is.
fn drawn(shop: &Shop, square: Option<&Square>) -> Html {
    let Some(square) = square else {
        return html! { <p key="no-square" class="kraft">{ shop.say("hand-out.no-square") }</p> };
    };
    let side = square.side() + 2 * QUIET;
    html! {
        <figure key="square" class="square-code">
            <svg viewBox={format!("0 0 {side} {side}")} role="img" aria-label={shop.say("hand-out.square")} shape-rendering="crispEdges">
                <rect class="light" width={side.to_string()} height={side.to_string()} />
                <path class="dark" d={square.path()} />
            </svg>
            <figcaption class="note">{ shop.say("hand-out.square-hint") }</figcaption>
        </figure>
    }
}

/// A press that does something and says afterwards what became of it.
fn act<F>(said: &UseStateHandle<Said>, what: impl Fn() -> F + 'static) -> Callback<MouseEvent>
where
    F: Future<Output = &'static str> + 'static,
{
    let said = said.setter();
    Callback::from(move |_: MouseEvent| {
        let (said, done) = (said.clone(), what());
        spawn_local(async move { said.set(Some(done.await)) });
    })
}
