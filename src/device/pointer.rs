//! A pointer on the page in full fineness: every place that the browser knows of, with its moment.

use js_sys::Reflect;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, PointerEvent};

/// Where a pointer was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Pixels of the page from the left edge of the window.
    pub x: f64,
    /// Pixels from its upper edge.
    pub y: f64,
    /// When, milliseconds on the clock of [`super::clock::ticks`].
    pub at: f64,
}

/// Where the pointer is at an event.
#[must_use]
pub fn sample(event: &PointerEvent) -> Sample {
    // The generated getters cut places to whole pixels.
    let fine = |name: &str, whole: i32| {
        let read = Reflect::get(event, &JsValue::from_str(name)).ok().and_then(|value| value.as_f64());
        read.unwrap_or_else(|| f64::from(whole))
    };
    Sample {
        x: fine("clientX", event.client_x()),
        y: fine("clientY", event.client_y()),
        at: event.time_stamp(),
    }
}

/// Gives each place that an event stands for, the earliest first: browsers tell of several at once.
pub fn each_sample(event: &PointerEvent, mut take: impl FnMut(Sample)) {
    // A browser that does not know them tells of one at a time.
    if !Reflect::has(event, &JsValue::from_str("getCoalescedEvents")).unwrap_or(false) {
        return take(sample(event));
    }
    let all = event.get_coalesced_events();
    if all.length() == 0 {
        return take(sample(event));
    }
    for one in all.iter() {
        take(sample(one.unchecked_ref()));
    }
}

/// Keeps what the pointer does to an element until it is let go.
pub fn capture(element: &Element, event: &PointerEvent) {
    // Without it a stroke ends where the element does.
    let _ = element.set_pointer_capture(event.pointer_id());
}
