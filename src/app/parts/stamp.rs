//! The stamp of a sign-off.

use yew::prelude::*;

/// Drawn so that a photocopier keeps it; words beside it say the same.
pub(in crate::app) fn stamp(day: &str) -> Html {
    html! {
        <svg class="stamp" viewBox="0 0 60 60" aria-hidden="true" focusable="false">
            <circle cx="30" cy="30" r="28" /><circle cx="30" cy="30" r="23" class="thin" />
            <path d={if day.is_empty() { "M18 31l9 9 16-20" } else { "M21 23l7 7 12-15" }} />
            <text x="30" y="41">{ day.to_owned() }</text>
        </svg>
    }
}
