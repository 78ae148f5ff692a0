//! A rail that the lamp runs on: dragged by finger, pen or mouse, or walked by the arrow keys.

use super::lamp::TURN;
use super::place::percent;
use crate::picture::LampKind;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::Element;
use yew::prelude::*;

/// A step of the arrow keys, with Shift, and a long one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Steps {
    pub(super) step: f32,
    fine: f32,
    long: f32,
}

/// Steps of a lamp that hangs, mm, and of one that goes round the panel, degrees.
pub(super) const MILLIMETRES: Steps = Steps { step: 5.0, fine: 1.0, long: 20.0 };
pub(super) const DEGREES: Steps = Steps { step: TURN, fine: 3.0, long: 45.0 };
/// Contacts wider than this are a palm, CSS pixels.
pub(super) const PALM: i32 = 40;

/// Which way a rail runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Along,
    Across,
}

/// The part of a rail that a finger is on: where it begins on the screen and how long it is, CSS pixels, and how far the
/// finger is from the middle of the lamp that it holds.
#[derive(Debug, Clone, Copy)]
pub(super) struct Held {
    start: f64,
    long: f64,
    off: f64,
}

pub(super) type Hold = Rc<Cell<Option<Held>>>;

pub(super) struct Rail {
    pub(super) way: Way,
    pub(super) label: AttrValue,
    /// Where the lamp stands, in words.
    pub(super) said: AttrValue,
    pub(super) kind: LampKind,
    /// Where it stands, and where its rail ends, mm or degrees.
    pub(super) value: f32,
    pub(super) end: f32,
    pub(super) steps: Steps,
    /// The lamp goes round and comes back to where it was.
    pub(super) round: bool,
    /// A lamp that lies low does not run on the rail.
    pub(super) still: bool,
    /// Panels that lie under it: over each of them stands the same lamp.
    pub(super) panels: usize,
    pub(super) held: Hold,
    pub(super) on_value: Callback<f32>,
}

impl Rail {
    pub(super) fn draw(self) -> Html {
        let Self { way, value, end, .. } = self;
        let (class, orientation) = match way {
            Way::Along => ("along", "horizontal"),
            Way::Across => ("across", "vertical"),
        };
        let number = |value: f32| format!("{}", value.round());
        let [onpointerdown, onpointermove, onpointerup] = self.pointer();
        let onpointercancel = onpointerup.clone();
        html! {
            <div key={orientation} class={classes!("lamp-rail", class, self.still.then_some("still"))} role="slider" tabindex="0"
                aria-label={self.label.clone()} aria-orientation={orientation} aria-disabled={self.still.then_some("true")}
                aria-valuemin="0" aria-valuemax={number(end)} aria-valuenow={number(value)} aria-valuetext={self.said.clone()}
                onkeydown={self.keys()} {onpointerdown} {onpointermove} {onpointerup} {onpointercancel}>
                { for (0..self.panels).map(|part| self.part(part)) }
            </div>
        }
    }

    /// The rail beside one of the panels.
    fn part(&self, number: usize) -> Html {
        let place = percent(along_rail(self.value, self.end, self.round), 1.0);
        let half = || "50%".to_owned();
        let (near, far, (x, y)) = match self.way {
            Way::Along => (("0", "50%"), ("100%", "50%"), (place, half())),
            Way::Across => (("50%", "0"), ("50%", "100%"), (half(), place)),
        };
        html! {
            <div key={number} class="rail-part">
                <svg aria-hidden="true" focusable="false">
                    { scale(self.way, self.end, self.round) }
                    <line x1={near.0} y1={near.1} x2={far.0} y2={far.1} />
                    <svg {x} {y} class="at">{ lamp(self.way, self.kind) }</svg>
                </svg>
            </div>
        }
    }

    fn keys(&self) -> Callback<KeyboardEvent> {
        let (value, end, still, round) = (self.value, self.end, self.still, self.round);
        let (steps, on_value) = (self.steps, self.on_value.clone());
        Callback::from(move |event: KeyboardEvent| {
            let step = if event.shift_key() { steps.fine } else { steps.step };
            // Down the rail is toward the one who looks, so that the lamp goes where the arrow points.
            let to = match event.key().as_str() {
                "ArrowLeft" | "ArrowUp" => value - step,
                "ArrowRight" | "ArrowDown" => value + step,
                "PageUp" => value - steps.long,
                "PageDown" => value + steps.long,
                "Home" => 0.0,
                "End" => end,
                _ => return,
            };
            event.prevent_default();
            if !still {
                on_value.emit(if round { to.rem_euclid(end) } else { to.clamp(0.0, end) });
            }
        })
    }

    /// What is done when a pointer goes down, moves and goes up.
    fn pointer(&self) -> [Callback<PointerEvent>; 3] {
        /// Half the length of the lamp: who takes it there does not make it jump, CSS pixels.
        const GRIP: f64 = 36.0;
        let (way, value, end, still) = (self.way, self.value, self.end, self.still);
        let free = if self.round { f64::from(FREE) } else { 0.0 };
        let held = Rc::clone(&self.held);
        let down = {
            let (held, on_value) = (Rc::clone(&held), self.on_value.clone());
            Callback::from(move |event: PointerEvent| {
                let part = event.target_dyn_into::<Element>().and_then(|at| at.closest(".rail-part").ok()?);
                let (Some(part), false) = (part, still) else { return };
                if event.button() != 0 || event.width() > PALM {
                    return;
                }
                // Without capture the drag ends where the rail does.
                let _ = part.set_pointer_capture(event.pointer_id());
                let place = part.get_bounding_client_rect();
                let (start, long) = match way {
                    Way::Along => (place.left(), place.width()),
                    Way::Across => (place.top(), place.height()),
                };
                let (start, long) = (start + free * long, (1.0 - 2.0 * free) * long);
                let taken = Held { start, long: long.max(1.0), off: 0.0 };
                let off = taken.along(way, &event) - f64::from(value / end) * taken.long;
                let taken = Held { off: if off.abs() <= GRIP { off } else { 0.0 }, ..taken };
                held.set(Some(taken));
                on_value.emit(taken.value(way, &event, end));
            })
        };
        let go = {
            let (held, on_value) = (Rc::clone(&held), self.on_value.clone());
            Callback::from(move |event: PointerEvent| {
                if let Some(taken) = held.get() {
                    on_value.emit(taken.value(way, &event, end));
                }
            })
        };
        let up = Callback::from(move |_: PointerEvent| held.set(None));
        [down, go, up]
    }
}

impl Held {
    /// Where a pointer is on this part of the rail, CSS pixels.
    fn along(self, way: Way, event: &PointerEvent) -> f64 {
        let at = if way == Way::Along { event.client_x() } else { event.client_y() };
        f64::from(at) - self.start - self.off
    }

    #[allow(clippy::cast_possible_truncation, reason = "a place on a panel of some millimetres")]
    fn value(self, way: Way, event: &PointerEvent, end: f32) -> f32 {
        ((self.along(way, event) / self.long) as f32 * end).clamp(0.0, end)
    }
}

/// Share of a rail that is left free at each end where the lamp goes round the panel: nothing of it is cut off at its start.
/// A lamp that hangs runs to the very edges, since it stands over its place.
const FREE: f32 = 0.15;

/// Where a lamp stands on its rail, 0 to 1.
fn along_rail(value: f32, end: f32, round: bool) -> f32 {
    let free = if round { FREE } else { 0.0 };
    free + value / end * (1.0 - 2.0 * free)
}

/// Ticks of a rail for a lamp that hangs, mm.
const CENTIMETRE: f32 = 10.0;

/// A scale beside the picture: a tick each centimetre, longer ones at five; where the lamp goes round, at a quarter turn.
fn scale(way: Way, end: f32, round: bool) -> Html {
    let (apart, longer) = if round { (TURN, 6) } else { (CENTIMETRE, 5) };
    let tick = |(number, long): (u8, bool)| {
        let at = percent(along_rail(apart * f32::from(number), end, round), 1.0);
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
    let ticks = (1_u8..).map(|number| (number, number % longer == 0));
    html! { <g key="scale">{ for ticks.take_while(|(number, _)| apart * f32::from(*number) < end).map(tick) }</g> }
}

/// What hangs on the rail, its middle at the origin: the lamp, and beside the panel the grip that moves it away and near.
fn lamp(way: Way, kind: LampKind) -> Html {
    let (class, shone) = match kind {
        LampKind::Tubes => ("tubes", "M-17-6h34M-17 6h34"),
        LampKind::Point => ("bulb", "M0 0h.1"),
        LampKind::Raking => ("tubes", "M-20 8l40-16"),
    };
    match way {
        Way::Along => html! {
            <>
                <rect key="tray" class="tray" x="-44" y="-22" width="88" height="44" rx="4" />
                <path key="arrows" class="arrows" d="M-32-7l-6 7 6 7M32-7l6 7-6 7" />
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
