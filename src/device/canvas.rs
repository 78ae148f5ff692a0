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
    show(canvas, width, height, &draw(width, height));
}

/// Shows a picture of that many pixels on a canvas, whatever its place on the page.
pub fn show(canvas: &HtmlCanvasElement, width: u32, height: u32, pixels: &[u8]) {
    size(canvas, width, height);
    put(canvas, (0.0, 0.0), width, pixels);
}

/// Shows a piece of a picture on a canvas of a size that is clear otherwise, the piece's upper left corner at a place.
pub fn show_piece(
    canvas: &HtmlCanvasElement,
    (width, height): (u32, u32),
    corner: (f64, f64),
    side: u32,
    pixels: &[u8],
) {
    if (canvas.width(), canvas.height()) != (width, height) {
        canvas.set_width(width);
        canvas.set_height(height);
    } else if let Some(context) = context(canvas) {
        context.clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
    }
    put(canvas, corner, side, pixels);
}

/// Shows a part of a picture on a canvas that has its size already; the rest stays.
pub fn show_part(canvas: &HtmlCanvasElement, (left, top): (u32, u32), width: u32, pixels: &[u8]) {
    put(canvas, (f64::from(left), f64::from(top)), width, pixels);
}

/// Gives a canvas its size, unless it has it; what was on it is gone then.
pub fn size(canvas: &HtmlCanvasElement, width: u32, height: u32) {
    if (canvas.width(), canvas.height()) != (width, height) {
        canvas.set_width(width);
        canvas.set_height(height);
    }
}

fn put(canvas: &HtmlCanvasElement, (x, y): (f64, f64), width: u32, pixels: &[u8]) {
    let image = ImageData::new_with_u8_clamped_array(Clamped(pixels), width);
    if let (Ok(image), Some(context)) = (image, context(canvas)) {
        // The picture says nothing that the words beside it do not.
        let _ = context.put_image_data(&image, x, y);
    }
}

fn context(canvas: &HtmlCanvasElement) -> Option<CanvasRenderingContext2d> {
    canvas.get_context("2d").ok().flatten().map(JsCast::unchecked_into)
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a screen has far fewer pixels, and none below 0"
)]
fn whole(length: f64) -> u32 {
    length.round().clamp(0.0, 8192.0) as u32
}
