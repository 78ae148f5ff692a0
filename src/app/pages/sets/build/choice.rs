//! Rows of things to choose: one of them, or as many as wanted.

use yew::prelude::*;

/// One thing to choose.
pub(super) struct Choice {
    pub(super) name: AttrValue,
    /// Said smaller under the name.
    pub(super) note: AttrValue,
    pub(super) chosen: bool,
    pub(super) on_pick: Callback<Event>,
}

/// Things to choose in a row of large targets; `group` names radios that belong together, none: any number may be chosen.
pub(super) fn choices(legend: AttrValue, group: Option<&'static str>, all: Vec<Choice>) -> Html {
    let row = |Choice { name, note, chosen, on_pick }: Choice| {
        let kind = if group.is_some() { "radio" } else { "checkbox" };
        html! {
            <label key={name.to_string()} class={classes!("unit", chosen.then_some("picked"))}>
                <input type={kind} name={group} checked={chosen} onchange={on_pick} />
                <span>{ name }<small hidden={note.is_empty()}>{ note.clone() }</small></span>
            </label>
        }
    };
    html! {
        <fieldset key={legend.to_string()} class="setting">
            <legend>{ legend }</legend>
            <div class="segments">{ for all.into_iter().map(row) }</div>
        </fieldset>
    }
}

/// Puts a thing into a list, or takes it out where it is in.
pub(super) fn toggle<T: PartialEq>(list: &mut Vec<T>, one: T) {
    let before = list.len();
    list.retain(|other| *other != one);
    if list.len() == before {
        list.push(one);
    }
}
