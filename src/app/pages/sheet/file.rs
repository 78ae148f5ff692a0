//! A shop sheet that comes as a file: read, shown, then taken.

use crate::app::parts::{FileField, SheetOffer, file_field};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::device::files::{self, Picked};
use crate::exchange::{OwnSheet, Refused, SHEET, read};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

#[component]
pub(super) fn FromFile() -> Html {
    let shop = use_shop();
    let picked = use_state(|| None::<Picked>);
    let onchange = {
        let picked = picked.setter();
        Callback::from(move |event: Event| {
            let Some(file) = files::picked_from(&event) else { return };
            let picked = picked.clone();
            spawn_local(async move { picked.set(Some(files::read(file, SHEET.most).await)) });
        })
    };
    let bytes = picked.as_ref().and_then(|file| file.bytes.as_ref().ok());
    let came: Option<Result<OwnSheet, Refused>> = bytes.map(|bytes| read(bytes, SHEET));
    let refused = came.as_ref().and_then(|came| came.as_ref().err());
    let refused = refused.map(|refused| shop.refused(refused));
    let offer = came.and_then(Result::ok).map(|own| {
        let on_taken = Callback::from(|own: OwnSheet| Route::SheetOf { slug: own.slug() }.go());
        html! { <SheetOffer key={own.hash.clone()} own={own.clone()} {on_taken} /> }
    });
    let field = FileField {
        id: "sheet-file",
        label: shop.say("own.pick"),
        hint: shop.say("own.pick-hint"),
        file: picked.as_ref(),
        onchange,
    };
    html! {
        <>
            { file_field(&shop, field) }
            <p key="refused" class="wrong" role="alert" hidden={refused.is_none()}>{ refused.clone().unwrap_or_default() }</p>
            { for offer }
        </>
    }
}
