//! What was laid on the work.

use crate::app::pages::walk::words;
use crate::app::state::Shop;
use crate::quantity::{Measure, Unit};
use crate::rules::term::Term;
use crate::walk::material::Laid;
use yew::prelude::*;

pub(super) fn material(shop: &Shop, all: &[Laid]) -> Html {
    let row = |laid: &Laid| {
        let volume = shop.voice().measure(Measure::new(laid.volume.get(), Unit::Millilitre, 0));
        html! {
            <tr key={laid.operation.slug()}>
                <th scope="row">{ words::operation(shop, laid.operation) }</th>
                <td>{ shop.say_with("walk.coats", &[("n", laid.coats.to_string())]) }</td><td>{ volume }</td>
            </tr>
        }
    };
    html! {
        <section key="material" hidden={all.is_empty()}>
            <h2>{ shop.say("walk.material") }</h2>
            <table class="working"><tbody>{ for all.iter().map(row) }</tbody></table>
            <p class="note">{ shop.say("walk.material-how") }</p>
        </section>
    }
}
