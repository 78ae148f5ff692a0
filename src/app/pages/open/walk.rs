//! A walk of somebody: what its file says, and then the walk itself. Nothing of it is kept on this tablet.

use super::shown::ShownProps;
use crate::app::pages::walk::{WalkLooked, walk_about};
use crate::app::parts::{Picture, icon};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::exchange::{Ours, WalkFile};
use std::rc::Rc;
use yew::prelude::*;

#[component]
pub(super) fn LookAtWalk(props: &ShownProps) -> Html {
    let shop = use_shop();
    let looked = use_state(|| None::<Rc<WalkFile>>);
    let Ours::Walk(file) = &props.opened.ours else { return Html::default() };
    if let Some(file) = (*looked).clone() {
        return html! { <WalkLooked {file} /> };
    }
    let look = {
        let (file, looked, on_look) = (file.clone(), looked.setter(), props.on_look.clone());
        Callback::from(move |_: MouseEvent| {
            looked.set(Some(Rc::new((*file).clone())));
            on_look.emit(());
        })
    };
    html! {
        <section class="paper opened">
            <p class="over">{ shop.say("open.kind.walk") }</p>
            { walk_about(&shop, file) }
            <p class="note">{ shop.say("walk-file.open-why") }</p>
            <div class="people">
                <button type="button" class="next-step" onclick={look}>{ icon(Picture::Loupe) }{ shop.say("walk-file.look") }</button>
                <a href={Route::Home.address()} class="control">{ shop.say("open.leave") }</a>
            </div>
        </section>
    }
}
