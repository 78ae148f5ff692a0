//! The frames that the browser draws.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Something to be done before the next frame is drawn; dropped before, it is not done.
#[derive(Debug)]
pub struct NextFrame {
    number: i32,
    // Held until the browser has called it.
    _call: Closure<dyn FnMut()>,
}

impl NextFrame {
    /// Asks for it; `None` where the browser draws no frames.
    pub fn ask(call: impl FnOnce() + 'static) -> Option<Self> {
        let call = Closure::once(call);
        let number = gloo::utils::window().request_animation_frame(call.as_ref().unchecked_ref()).ok()?;
        Some(Self { number, _call: call })
    }
}

impl Drop for NextFrame {
    fn drop(&mut self) {
        // One that was called already is no longer known by its number.
        let _ = gloo::utils::window().cancel_animation_frame(self.number);
    }
}
