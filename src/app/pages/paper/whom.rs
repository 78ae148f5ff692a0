//! For whom worksheets are printed.

use super::Worksheet;
use crate::app::state::Shop;
use crate::exchange::paper::PaperCode;
use crate::people::{Crew, Member};
use wasm_bindgen::JsCast;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// Worksheets printed at once, our own limit: with four pictures each a tablet still holds them. `styles/pages.css` numbers the
/// pages of as many worksheets and keys.
pub(super) const MOST: usize = 12;

/// How somebody of the crew stands on a worksheet.
pub(super) fn written(member: &Member) -> String {
    format!("{} ({})", member.name, member.number)
}

/// The names that are written, one a line, each once.
pub(super) fn names(lines: &str) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for name in lines.lines().map(str::trim).filter(|name| !name.is_empty()) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// The worksheets for those names, then as many for nobody by name, copies from that number on.
pub(super) fn worksheets(set: &str, lines: &str, nameless: usize, from: u32) -> Vec<Worksheet> {
    let named = names(lines).into_iter().map(|name| (name, 0));
    let copies = (from..).take(nameless).map(|copy| ("", copy));
    let sheet =
        |(name, copy): (&str, u32)| Worksheet { whom: name.to_owned(), code: PaperCode::of(set, name, copy) };
    named.chain(copies).take(MOST).map(sheet).collect()
}

pub(super) fn whom(shop: &Shop, lines: &UseStateHandle<String>, crew: &Crew, nameless: usize) -> Html {
    let set = lines.setter();
    let oninput = Callback::from(move |event: InputEvent| {
        let field = event.target().and_then(|target| target.dyn_into::<HtmlTextAreaElement>().ok());
        if let Some(field) = field {
            set.set(field.value());
        }
    });
    let everybody = {
        let all: Vec<String> = crew.members().iter().map(written).collect();
        let set = lines.setter();
        Callback::from(move |_: MouseEvent| set.set(all.join("\n")))
    };
    let many = names(lines).len().saturating_add(nameless) > MOST;
    let limit = [("most", MOST.to_string())];
    html! {
        <div key="whom" class="field">
            <label for="whom">{ shop.say("worksheet.whom") }</label>
            <textarea id="whom" rows="3" autocomplete="off" spellcheck="false" value={(**lines).clone()} {oninput} aria-describedby="whom-hint whom-wrong" />
            <p id="whom-hint" class="note">{ shop.say("worksheet.whom-hint") }</p>
            <p id="whom-wrong" class="wrong" role="alert" hidden={!many}>{ shop.say_with("worksheet.whom-many", &limit) }</p>
            <div class="people">
                <button type="button" class="control" hidden={crew.members().is_empty()} onclick={everybody}>{ shop.say("worksheet.crew") }</button>
            </div>
        </div>
    }
}
