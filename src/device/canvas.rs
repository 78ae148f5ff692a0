//! Pixels onto a canvas.

use wasm_bindgen::{Clamped, JsCast};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, ImageData};

/// Widest picture that is drawn; a wider place shows it enlarged.
const WIDEST: f64 = 900.0;

/// Paints a canvas with pixels drawn for the place that it takes on the page: red, green, blue and alpha bytes by row.
/// A place without size, or a browser without canvas, stays as it is.
pub fn paint(canvas: &HtmlCanvasElement, draw: impl FnOnce(u32, u32) -> Vec<u8>) {
    let place = canvas.get_bounding_client_rect();
    let scale = gloo::utils::window().device_pixel_ratio().min(WIDEST / place.width().max(1.0));
    let (width, height) = (whole(place.width() * scale), whole(place.height() * scale));
    if width == 0 || height == 0 {
        return;
    }
    let pixels = draw(width, height);
    canvas.set_width(width);
    canvas.set_height(height);
    let image = ImageData::new_with_u8_clamped_array_and_sh(Clamped(&pixels), width, height);
    let context = canvas.get_context("2d").ok().flatten();
    if let (Ok(image), Some(context)) = (image, context) {
        let context: CanvasRenderingContext2d = context.unchecked_into();
        // The picture says nothing that the words beside it do not.
        let _ = context.put_image_data(&image, 0.0, 0.0);
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a screen has far fewer pixels, and none below 0"
)]
fn whole(length: f64) -> u32 {
    length.round().clamp(0.0, 8192.0) as u32
}
