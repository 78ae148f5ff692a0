//! A rail that the lamp runs on: dragged by finger, pen or mouse, or walked by the arrow keys.

use super::place::percent;
use crate::picture::LampKind;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::Element;
use yew::prelude::*;

/// A step of the arrow keys, and with Shift; a long step.
pub(super) const STEP: f32 = 5.0;
const FINE_STEP: f32 = 1.0;
const LONG_STEP: f32 = 20.0;
/// Contacts wider than this are a palm, CSS pixels.
pub(super) const PALM: i32 = 40;

/// Which way a rail runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Along,
    Across,
}

/// How far the finger is from the middle of the lamp that it holds, mm.
pub(super) type Hold = Rc<Cell<Option<f32>>>;

pub(super) struct Rail {
    pub(super) way: Way,
    pub(super) label: AttrValue,
    /// Where the lamp stands, in words.
    pub(super) said: AttrValue,
    pub(super) kind: LampKind,
    /// Where it stands, and where its rail ends, mm.
    pub(super) value: f32,
    pub(super) end: f32,
    /// A lamp that lies low does not run on the rail.
    pub(super) still: bool,
    pub(super) track: NodeRef,
    pub(super) held: Hold,
    pub(super) on_value: Callback<f32>,
}

impl Rail {
    pub(super) fn draw(self) -> Html {
        let Self { way, value, end, .. } = self;
        let place = percent(if self.still && way == Way::Along { 0.0 } else { value }, end);
        let half = || "50%".to_owned();
        let (class, orientation, (x, y), far) = match way {
            Way::Along => ("along", "horizontal", (place, half()), ("100%", "50%")),
            Way::Across => ("across", "vertical", (half(), place), ("50%", "100%")),
        };
        let near = if way == Way::Along { ("0", "50%") } else { ("50%", "0") };
        let number = |value: f32| format!("{}", value.round());
        let [onpointerdown, onpointermove, onpointerup] = self.pointer();
        let onpointercancel = onpointerup.clone();
        html! {
            <div key={orientation} class={classes!("lamp-rail", class, self.still.then_some("still"))} ref={self.track.clone()} role="slider" tabindex="0"
                aria-label={self.label.clone()} aria-orientation={orientation} aria-disabled={self.still.then_some("true")}
                aria-valuemin="0" aria-valuemax={number(end)} aria-valuenow={number(value)} aria-valuetext={self.said.clone()}
                onkeydown={self.keys()} {onpointerdown} {onpointermove} {onpointerup} {onpointercancel}>
                <svg aria-hidden="true" focusable="false">
                    { scale(way, end) }
                    <line x1={near.0} y1={near.1} x2={far.0} y2={far.1} />
                    <svg {x} {y} class="at">{ lamp(way, self.kind) }</svg>
                </svg>
            </div>
        }
    }

    fn keys(&self) -> Callback<KeyboardEvent> {
        let (value, end, still, on_value) = (self.value, self.end, self.still, self.on_value.clone());
        Callback::from(move |event: KeyboardEvent| {
            let step = if event.shift_key() { FINE_STEP } else { STEP };
            // Down the rail is toward the one who looks, so that the lamp goes where the arrow points.
            let to = match event.key().as_str() {
                "ArrowLeft" | "ArrowUp" => value - step,
                "ArrowRight" | "ArrowDown" => value + step,
                "PageUp" => value - LONG_STEP,
                "PageDown" => value + LONG_STEP,
                "Home" => 0.0,
                "End" => end,
                _ => return,
            };
            event.prevent_default();
            if !still {
                on_value.emit(to.clamp(0.0, end));
            }
        })
    }

    /// What is done when a pointer goes down, moves and goes up.
    fn pointer(&self) -> [Callback<PointerEvent>; 3] {
        /// Half the length of the lamp: who takes it there does not make it jump, CSS pixels.
        const GRIP: f64 = 36.0;
        let (way, value, end, still) = (self.way, self.value, self.end, self.still);
        let (track, held) = (self.track.clone(), Rc::clone(&self.held));
        let down = {
            let (track, held, on_value) = (track.clone(), Rc::clone(&held), self.on_value.clone());
            Callback::from(move |event: PointerEvent| {
                let (Some(element), false) = (track.cast::<Element>(), still) else { return };
                if event.button() != 0 || event.width() > PALM {
                    return;
                }
                // Without capture the drag ends where the rail does.
                let _ = element.set_pointer_capture(event.pointer_id());
                let (at, long) = along(way, &element, &event);
                let off = at - f64::from(value / end) * long;
                let off = if off.abs() <= GRIP { off } else { 0.0 };
                held.set(Some(millimetres(off, long, end)));
                on_value.emit((millimetres(at, long, end) - millimetres(off, long, end)).clamp(0.0, end));
            })
        };
        let go = {
            let (held, on_value) = (Rc::clone(&held), self.on_value.clone());
            Callback::from(move |event: PointerEvent| {
                let (Some(element), Some(off)) = (track.cast::<Element>(), held.get()) else { return };
                let (at, long) = along(way, &element, &event);
                on_value.emit((millimetres(at, long, end) - off).clamp(0.0, end));
            })
        };
        let up = Callback::from(move |_: PointerEvent| held.set(None));
        [down, go, up]
    }
}

/// Where a pointer is on the rail, and how long the rail is, CSS pixels.
fn along(way: Way, element: &Element, event: &PointerEvent) -> (f64, f64) {
    let place = element.get_bounding_client_rect();
    match way {
        Way::Along => (f64::from(event.client_x()) - place.left(), place.width().max(1.0)),
        Way::Across => (f64::from(event.client_y()) - place.top(), place.height().max(1.0)),
    }
}

#[allow(clippy::cast_possible_truncation, reason = "a place on a panel of some millimetres")]
fn millimetres(at: f64, long: f64, end: f32) -> f32 {
    (at / long) as f32 * end
}

/// A scale beside the picture: a tick each centimetre, longer ones at five.
fn scale(way: Way, end: f32) -> Html {
    const CENTIMETRE: f32 = 10.0;
    let tick = |(number, long): (u8, bool)| {
        let at = percent(CENTIMETRE * f32::from(number), end);
        let (along, across) = if long { ("76%", "24%") } else { ("88%", "12%") };
        match way {
            Way::Along => {
                html! { <line key={number} class="tick" x1={at.clone()} x2={at} y1={along} y2="100%" /> }
            }
            Way::Across => {
                html! { <line key={number} class="tick" y1={at.clone()} y2={at} x1="0" x2={across} /> }
            }
        }
    };
    let ticks = (1_u8..).map(|number| (number, number % 5 == 0));
    html! { <g key="scale">{ for ticks.take_while(|(number, _)| CENTIMETRE * f32::from(*number) < end).map(tick) }</g> }
}

/// What hangs on the rail, its middle at the origin: the lamp, and beside the panel the grip that moves it away and near.
fn lamp(way: Way, kind: LampKind) -> Html {
    let moves = "M-32-7l-6 7 6 7M32-7l6 7-6 7";
    // One that rakes lies whole beside the panel's edge and does not move.
    let (x, arrows, class, shone) = match kind {
        LampKind::Tubes => ("-44", moves, "tubes", "M-17-6h34M-17 6h34"),
        LampKind::Point => ("-44", moves, "bulb", "M0 0h.1"),
        LampKind::Raking => ("4", "", "tubes", "M26 8l40-16"),
    };
    match way {
        Way::Along => html! {
            <>
                <rect key="tray" class="tray" {x} y="-22" width="88" height="44" rx="4" />
                <path key="arrows" class="arrows" d={arrows} />
                <path key="shone" {class} d={shone} />
            </>
        },
        Way::Across => html! {
            <>
                <rect key="tray" class="tray" x="-20" y="-28" width="40" height="56" rx="4" />
                <path key="arrows" class="arrows" d="M-7-12l7-7 7 7M-7 12l7 7 7-7" />
                <path key="shone" class="arrows" d="M-8-3h16M-8 3h16" />
            </>
        },
    }
}
