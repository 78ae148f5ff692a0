//! The least page that the framework of the app draws, beside which the start of the app is measured: a heading, marked as the
//! app marks its first screen.

use stepboard::device::clock;
use yew::prelude::*;

#[component]
fn Least() -> Html {
    use_effect_with((), |()| clock::mark_once("usable"));
    html! { <h1>{ "Stepboard" }</h1> }
}

fn main() {
    yew::Renderer::<Least>::new().render();
}
