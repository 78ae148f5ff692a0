//! Signs of a verdict. Their outlines alone tell them apart; the word stands beside them.

use crate::card::Mark;
use yew::prelude::*;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum SignKind {
    Right,
    Partly,
    Wrong,
    CannotJudge,
}

impl From<Mark> for SignKind {
    fn from(mark: Mark) -> Self {
        match mark {
            Mark::Right => Self::Right,
            Mark::Partly => Self::Partly,
            Mark::Wrong => Self::Wrong,
        }
    }
}

pub(in crate::app) fn sign(kind: SignKind) -> Html {
    let (class, drawing) = match kind {
        SignKind::Right => {
            ("ok", html! { <><circle cx="20" cy="20" r="16" /><path d="M12 21l6 6 11-13" /></> })
        }
        SignKind::Partly => (
            "partly",
            html! { <><circle cx="20" cy="20" r="16" /><path class="solid" d="M20 4a16 16 0 0 0 0 32z" /></> },
        ),
        SignKind::Wrong => {
            ("wrong", html! { <><path d="M4 4h32v32H4z" /><path d="M12 12l16 16M28 12 12 28" /></> })
        }
        SignKind::CannotJudge => {
            ("ok", html! { <><circle cx="20" cy="20" r="16" class="broken-ring" /><path d="M13 20h14" /></> })
        }
    };
    html! {
        <svg class={classes!("sign", class)} viewBox="0 0 40 40" aria-hidden="true" focusable="false">{ drawing }</svg>
    }
}
