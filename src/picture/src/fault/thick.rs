//! Film that is thicker than meant: it stands up, and its colour is deeper there.

use crate::map::Map;
use crate::number::smooth;
use crate::panel::Layers;
use crate::pause::pause;

/// Wet film rounds off whatever is narrower than this, mm.
const ROUNDED: f32 = 0.8;
/// Extra thickness that doubles the colour, micrometres.
const DOUBLES: f32 = 26.0;
/// Most of the colour that is meant, however thick.
const DEEPEST: f32 = 5.0;
/// Lacquer is a little amber by itself: extra thickness that takes all but 1/e of the light, micrometres.
const SWALLOWS: f32 = 130.0;
/// Extra thickness that begins to be seen, and that is seen by everybody, micrometres.
const SEEN: (f32, f32) = (2.0, 5.0);

/// Lays extra film, in micrometres, and marks where it is seen.
pub(super) async fn lay(layers: &mut Layers, extra: &Map) {
    let rounded = extra.blurred(ROUNDED).await;
    let film = &mut layers.film;
    let maps = film.height.values.iter_mut().zip(&mut film.tint.values).zip(&mut film.body.values);
    let maps = maps.zip(&mut layers.mask.values).zip(&rounded.values);
    for ((((height, tint), body), mask), extra) in maps {
        *height += extra;
        *tint *= (1.0 + extra / DOUBLES).clamp(0.0, DEEPEST);
        *body *= libm::expf(-extra / SWALLOWS);
        *mask = mask.max(smooth(SEEN.0, SEEN.1, *extra));
    }
    pause().await;
}
