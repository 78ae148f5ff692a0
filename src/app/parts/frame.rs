//! What every screen has: the top rail, the middle that scrolls, the next step, the cautions at the foot.

use super::rail::caution_rail;
use super::saved::{saved_mark, saved_strip};
use super::{Picture, icon};
use crate::app::hooks::{use_book, use_coming, use_crew, use_keys};
use crate::app::route::Route;
use crate::app::state::use_shop;
use crate::device::page;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct FrameProps {
    pub(in crate::app) title: AttrValue,
    /// Said smaller beside the title.
    #[prop_or_default]
    pub(in crate::app) note: AttrValue,
    /// Where back leads; none on the home screen.
    #[prop_or_default]
    pub(in crate::app) back: Option<Route>,
    /// Stands before the title.
    #[prop_or_default]
    pub(in crate::app) lead: Html,
    /// Stands before the saved state.
    #[prop_or_default]
    pub(in crate::app) marks: Html,
    /// Names the layout of the middle.
    pub(in crate::app) class: &'static str,
    /// Cautions, the one that matters most first.
    pub(in crate::app) cautions: Vec<AttrValue>,
    /// The block of buttons above the cautions.
    #[prop_or_default]
    pub(in crate::app) action: Html,
    pub(in crate::app) children: Html,
}

#[component]
pub(in crate::app) fn Frame(props: &FrameProps) -> Html {
    let shop = use_shop();
    let book = use_book();
    let save = use_crew().save;
    let coming = if use_coming() { shop.say("coming") } else { AttrValue::default() };
    let open = use_state(|| false);
    use_effect_with((), |()| page::to_top());
    let back = props.back.clone();
    let on_key = use_callback(back.clone(), |key: String, back| {
        let (Some(back), "Escape") = (back, key.as_str()) else { return false };
        back.go();
        true
    });
    use_keys(on_key);
    let to = back.clone().unwrap_or(Route::Home);
    html! {
        <div class={classes!("screen", props.class)}>
            <header class="top">
                <span key="back" class="top-back" hidden={back.is_none()}>
                    <a href={to.address()} class="plain">
                        { icon(Picture::Back) }<span class="spoken">{ shop.say("back") }</span>
                    </a>
                </span>
                <span key="lead" class="top-lead">{ props.lead.clone() }</span>
                <h1 key="title" class="top-title">{ &props.title }</h1>
                <span key="note" class="top-note">{ &props.note }</span>
                <span key="marks" class="top-marks">{ props.marks.clone() }</span>
                <span key="saved" class="top-saved">{ saved_mark(&shop, book.book.saved) }</span>
                <span key="menu" class="top-menu">
                    <a href={Route::Menu.address()} class="plain">
                        { icon(Picture::Menu) }<span class="spoken">{ shop.say("to-menu") }</span>
                    </a>
                </span>
            </header>
            <p class="coming" role="status"><span hidden={coming.is_empty()}>{ coming.clone() }</span></p>
            { saved_strip(&shop, &book, &save) }
            <main class="middle" tabindex="0">{ props.children.clone() }</main>
            <div class="action">{ props.action.clone() }</div>
            { caution_rail(&shop, &props.cautions, &open) }
        </div>
    }
}
