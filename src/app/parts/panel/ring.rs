//! The ring of the loupe: it is dragged over the panel, and a tap inside points at what is seen there.

use super::loupe::ENLARGED;
use super::place::{HEIGHT, MIDDLE, Place, WIDTH, held, percent};
use super::rail::PALM;
use super::words::pointed;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::Element;
use yew::prelude::*;

/// Radius in a drawing that is as large as the panel: a share of its diagonal over the root of two.
const RING: &str = "23.57%";
/// A finger that moved less than this, mm, has tapped.
const TAPPED: f32 = 1.5;

/// The finger on the loupe: where it went down, and how far from the middle of the ring.
pub(super) type Hold = Rc<Cell<Option<(Place, Place)>>>;

/// The ring, which is dragged; a tap inside points at what is seen there.
pub(super) fn ring(
    eye: Option<Place>,
    hold: &Hold,
    on_eye: &Callback<Place>,
    on_place: &Callback<Place>,
) -> Html {
    let hidden = eye.is_none();
    let now = eye.unwrap_or(MIDDLE);
    let face = |event: &PointerEvent| {
        let target = event.target_dyn_into::<Element>()?;
        Some((target.closest(".panel-face").ok()??, target))
    };
    let onpointerdown = {
        let hold = Rc::clone(hold);
        Callback::from(move |event: PointerEvent| {
            let Some((face, target)) = face(&event) else { return };
            if event.button() == 0 && event.width() <= PALM {
                // Without capture the drag ends where the ring does.
                let _ = target.set_pointer_capture(event.pointer_id());
                let at = pointed(&face, &event);
                hold.set(Some((at, Place { x: at.x - now.x, y: at.y - now.y })));
            }
        })
    };
    let onpointermove = {
        let (hold, on_eye) = (Rc::clone(hold), on_eye.clone());
        Callback::from(move |event: PointerEvent| {
            let (Some((face, _)), Some((_, off))) = (face(&event), hold.get()) else { return };
            let at = pointed(&face, &event);
            on_eye.emit(held(Place { x: at.x - off.x, y: at.y - off.y }));
        })
    };
    let onpointerup = {
        let (hold, on_place) = (Rc::clone(hold), on_place.clone());
        Callback::from(move |event: PointerEvent| {
            let (Some((face, _)), Some((from, off))) = (face(&event), hold.take()) else { return };
            let at = pointed(&face, &event);
            if (at.x - from.x).abs().max((at.y - from.y).abs()) < TAPPED {
                let on = |eye: f32, off: f32| eye + off / ENLARGED;
                on_place.emit(held(Place { x: on(now.x, off.x), y: on(now.y, off.y) }));
            }
        })
    };
    let onpointercancel = {
        let hold = Rc::clone(hold);
        Callback::from(move |_: PointerEvent| hold.set(None))
    };
    html! {
        <svg key="ring" class="panel-ring" aria-hidden="true" focusable="false" {hidden}>
            <svg x={percent(now.x, WIDTH)} y={percent(now.y, HEIGHT)} class="at">
                <circle class="under" r={RING} />
                <circle class="over" r={RING} {onpointerdown} {onpointermove} {onpointerup} {onpointercancel} />
            </svg>
        </svg>
    }
}
