//! For whom worksheets are printed.

use super::Worksheet;
use crate::app::state::Shop;
use crate::exchange::paper::PaperCode;
use crate::people::{Crew, Member};
use crate::signoff::ShopNumber;
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

/// The worksheets for those names, then as many for nobody by name, copies from that number on. A number of the crew stands for
/// whoever has it; a code, for the worksheet that was printed with it before. None is printed twice.
pub(super) fn worksheets(set: &str, lines: &str, crew: &Crew, nameless: usize, from: u32) -> Vec<Worksheet> {
    let named = |line: &str| {
        if let Ok(code) = PaperCode::read_as_printed(line, set) {
            return Worksheet { whom: String::new(), code };
        }
        let whom = crew.member(line).map_or_else(|| line.to_owned(), written);
        Worksheet { code: PaperCode::of(set, &whom, 0), whom }
    };
    let nth = (0..u32::try_from(nameless).unwrap_or(u32::MAX)).map(|nth| from.wrapping_add(nth));
    let copy = |copy| Worksheet { whom: String::new(), code: PaperCode::of(set, "", copy) };
    let mut all: Vec<Worksheet> = Vec::new();
    for one in names(lines).into_iter().map(named).chain(nth.map(copy)) {
        if all.len() < MOST && all.iter().all(|other| other.code != one.code) {
            all.push(one);
        }
    }
    all
}

/// The name and the number on a worksheet, each empty where it is not told.
pub(super) fn name_and_number(whom: &str) -> (&str, &str) {
    let number =
        |text: &str| text.contains(|one: char| one.is_ascii_digit()) && ShopNumber::new(text).is_ok();
    match whom.strip_suffix(')').and_then(|whom| whom.rsplit_once(" (")) {
        Some((name, told)) if number(told) => (name, told),
        _ if number(whom) => ("", whom),
        _ => (whom, ""),
    }
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
