//! The room and its lamps, mirrored in a panel that lies on a bench.
//!
//! Places are in mm: the panel at height 0, its upper left corner at the origin, x along the grain, y toward the one who
//! looks; the camera above and before the near edge; lamps and window in the plane of the ceiling. The picture is the panel
//! seen straight from above, while what is mirrored is seen from the camera, as it is when one stands at a bench.

use crate::bench::{ceiling, fresnel, slopes};
use crate::frost::{Frosted, RAKING};
use crate::lamp::{Lamp, LampKind};
use crate::light::{Colour, Light, inside, strip};
use crate::map::{Grid, Map};
use crate::number::{hypotenuse, smooth};
use crate::panel::{Arc, Layers, Paints, Recipe};
use crate::scratch::{self, Scratch, Shine};

/// From the panel to the ceiling along the mirrored ray, about: slope turns into a length there.
const REACH: f32 = 1_450.0;
/// A lamp is never sharper than this.
const SHARPEST: f32 = 4.0;
/// No body is darker than this.
const DARKEST: f32 = 1.0e-4;

/// Two tubes in a tray.
const TUBE_HALF: f32 = 13.0;
const TUBE_LONG: f32 = 620.0;
const TUBES_APART: f32 = 38.0;
const TUBE_LIGHT: f32 = 26.0;
const TRAY_HALF: f32 = 75.0;
const TRAY_LIGHT: f32 = 1.1;
/// The window, with bars between its panes.
const WINDOW: (f32, f32) = (95.0, 150.0);
const WINDOW_LIGHT: f32 = 5.2;
const WINDOW_TINT: Colour = [0.86, 0.95, 1.06];
const BAR: f32 = 4.8;
/// A bare bulb.
const BULB: f32 = 22.0;
const BULB_LIGHT: f32 = 80.0;
/// So many blurs beyond the edge of a lamp nothing of it is seen.
const FAR_BLURS: f32 = 3.2;
/// The room without lamps.
const ROOM: f32 = 0.35;
/// How wide a milky film scatters.
const VEIL: f32 = 190.0;
/// Less of it is not seen.
const LEAST_VEIL: f32 = 0.002;
/// Tubes and tray together: their spread across, mm, and their light over the root of a whole turn, the height of a normal curve.
const BAND: f32 = 40.0;
const BAND_LIGHT: f32 = 2.0 * (2.0 * TUBE_HALF * TUBE_LIGHT + TRAY_HALF * TRAY_LIGHT) * 0.398_94;
/// What a cloud sends back.
const CLOUD: f32 = 0.62;
/// Tilted fibre turns light with the lamp: on bare wood, and more under film.
const SHEEN: f32 = 0.11;
const SHEEN_FILM: f32 = 0.13;
/// Elevation of a raking lamp over the bench, its tangent, and its light: film is smoother than bare wood, and the lamp is
/// laid lower to see what is on it.
const RAKE: f32 = 0.14;
const RAKE_FILM: f32 = 0.05;
const RAKE_LIGHT: f32 = 0.9;

/// All of a panel that does not change with the lamp.
#[derive(Debug, Clone)]
pub(crate) struct Lit {
    grid: Grid,
    light: Light,
    pixels: Vec<Pixel>,
    scratches: Vec<Scratch>,
    frosted: Vec<Frosted>,
    film: bool,
}

/// A pixel that is ready to be lit.
#[derive(Debug, Clone, Copy, Default)]
struct Pixel {
    /// What it sends back of the light that falls on it.
    body: Colour,
    /// What it shows whatever the lamp.
    still: Colour,
    /// Where on the ceiling it looks.
    ceiling: (f32, f32),
    /// Blur of a lamp there, along the grain and across it.
    blur: (f32, f32),
    /// Share that is mirrored.
    mirror: f32,
    /// Share of it that is scattered wide.
    veil: f32,
    /// Tilt of the fibre.
    tilt: f32,
    /// Slope along the grain and across it: what a raking lamp sees.
    slope: (f32, f32),
}

/// A lamp as every pixel sees it: where it is mirrored, how far it leans to one side, and what scratches send of it.
struct Shone<'a> {
    aim: (f32, f32),
    lean: f32,
    scratched: &'a [f32],
}

impl Lit {
    pub(crate) fn blank(grid: Grid) -> Self {
        Self {
            grid,
            light: Light::new(),
            pixels: Vec::with_capacity(grid.len()),
            scratches: Vec::new(),
            frosted: Vec::new(),
            film: false,
        }
    }

    /// Makes one row ready, the rows one after another.
    pub(crate) fn row(&mut self, layers: &Layers, recipe: &Recipe, row: usize) {
        let grid = self.grid;
        let paints = Paints::of(recipe);
        self.film = recipe.finish.has_film();
        if row == 0 {
            let ready = |arc: &Arc| Scratch::new(*arc, ceiling(grid, arc.x, arc.y, (0.0, 0.0)));
            self.scratches = layers.film.arcs.iter().map(ready).collect();
            self.frosted.clear();
        }
        let reached = |place: usize| layers.film.frost.partition_point(|frost| frost.place < place);
        let pores = reached(row * grid.columns)..reached((row + 1) * grid.columns);
        for column in 0..grid.columns {
            let pixel = self.pixel(layers, &paints, (column, row), row * grid.columns + column);
            self.pixels.push(pixel);
        }
        for frost in layers.film.frost.get(pores).unwrap_or_default() {
            let plain = paints.body(layers, &self.light, frost.place);
            let silver = paints.with_pore(layers, &self.light, frost.place, frost.share);
            let shown = self.pixels.get(frost.place).copied().unwrap_or_default().body;
            let more = |part: usize| {
                let of = |colour: Colour| colour.get(part).copied().unwrap_or(0.0);
                of(shown) * (of(silver) / of(plain).max(DARKEST) - 1.0)
            };
            self.frosted.push(Frosted { frost: *frost, more: [more(0), more(1), more(2)] });
        }
    }

    fn pixel(&self, layers: &Layers, paints: &Paints, (column, row): (usize, usize), place: usize) -> Pixel {
        let (grid, film) = (self.grid, &layers.film);
        let at = |map: &Map| map.values.get(place).copied().unwrap_or(0.0);
        let body = paints.body(layers, &self.light, place);
        let (x, y) = grid.middle(column, row);
        let slope = slopes(&film.height, column, row);
        let there = if self.film { at(&film.there) } else { 0.0 };
        let ceiling = ceiling(grid, x, y, slope);
        let rough = at(&film.rough);
        let blurred = |rough: f32| hypotenuse(SHARPEST, 2.0 * rough * REACH);
        let blur =
            (blurred(rough), if film.rubbed > 0.0 { blurred(rough + film.rubbed) } else { blurred(rough) });
        let mirror = there * at(&film.mirror).max(0.0) * fresnel(grid, x, y);
        let veil = at(&film.veil).clamp(0.0, 1.0);
        let haze = at(&film.haze).clamp(0.0, 1.0);
        let cover = at(&film.cover.share);
        let window = self.window(ceiling, blur, veil) + ROOM * (1.0 - 0.2 * smooth(-300.0, 500.0, ceiling.0));
        let clear = (1.0 - mirror) * (1.0 - haze) * (1.0 - cover);
        let groove = if there > 0.0 { 1.0 } else { paints.groove(layers, column, row) };
        let still = |part: usize| {
            let of = |colour: Colour| colour.get(part).copied().unwrap_or(0.0);
            let laid = film.cover.colour.get(part).map_or(0.0, at);
            haze * CLOUD * of(film.haze_colour) * (1.0 - cover)
                + cover * laid
                + mirror * window * of(WINDOW_TINT)
        };
        Pixel {
            body: body.map(|part| part * clear * groove),
            still: [still(0), still(1), still(2)],
            ceiling,
            blur,
            mirror,
            veil,
            tilt: at(&layers.wood.tilt) * if self.film { SHEEN + SHEEN_FILM } else { SHEEN },
            slope,
        }
    }

    /// Light of the window at a place of the ceiling.
    fn window(&self, (x, y): (f32, f32), blur: (f32, f32), veil: f32) -> f32 {
        let centre = (-140.0 + 0.5 * self.grid.width(), -690.0 + 0.5 * self.grid.height());
        let (u, v) = (x - centre.0, y - centre.1);
        let seen = |(along, across): (f32, f32)| {
            if u.abs() > WINDOW.0 + FAR_BLURS * along || v.abs() > WINDOW.1 + FAR_BLURS * across {
                return 0.0;
            }
            let (wide, tall) = (strip(u, WINDOW.0, along), strip(v, WINDOW.1, across));
            let bar_up = strip(u, BAR, along) * tall;
            let bar = |share: f32| strip(v - share * WINDOW.1, BAR, across) * wide;
            let sky = 1.0 - 0.25 * smooth(-WINDOW.1, WINDOW.1, v);
            WINDOW_LIGHT * sky * (wide * tall - bar_up - bar(-0.333) - bar(0.333)).max(0.0)
        };
        if veil > 0.0 {
            seen(blur) * (1.0 - veil) + seen((blur.0 + VEIL, blur.1 + VEIL)) * veil
        } else {
            seen(blur)
        }
    }

    /// The panel under a lamp.
    pub(crate) fn under(&self, lamp: Lamp, pixels: &mut Vec<u8>) {
        pixels.resize(4 * self.grid.len(), u8::MAX);
        let aim = ceiling(self.grid, lamp.x, lamp.y, (0.0, 0.0));
        let turn = lamp.turn.to_radians();
        let (sine, cosine) = (libm::sinf(turn), libm::cosf(turn));
        let lean = 1.1 * (lamp.x - 0.5 * self.grid.width()) / 60.0;
        let scratched = match lamp.kind {
            LampKind::Tubes => scratch::lit(&self.scratches, self.grid, Shine::Tube(aim, (cosine, sine))),
            LampKind::Point => scratch::lit(&self.scratches, self.grid, Shine::Bulb(aim)),
            LampKind::Raking => Vec::new(),
        };
        let rake = if self.film { RAKE_FILM } else { RAKE };
        let shone = Shone { aim, lean, scratched: &scratched };
        match lamp.kind {
            LampKind::Tubes => self.lay(
                pixels,
                &shone,
                |pore, u| pore.seen(u),
                |pixel, u, v| {
                    let (along, across) = (u * cosine + v * sine, v * cosine - u * sine);
                    // What one tube is blurred by is the blur square to it.
                    let blur = if pixel.blur.0 < pixel.blur.1 {
                        hypotenuse(pixel.blur.0 * sine, pixel.blur.1 * cosine)
                    } else {
                        pixel.blur.0
                    };
                    (self.tubes(along, across, blur, pixel.veil), 0.92 + 0.10 * glow(u, v))
                },
            ),
            LampKind::Point => self.lay(
                pixels,
                &shone,
                |pore, u| pore.seen(u),
                |pixel, u, v| (self.bulb(u, v, pixel), 0.80 + 0.22 * glow(u, v)),
            ),
            LampKind::Raking => self.lay(
                pixels,
                &shone,
                |pore, _| pore.seen(RAKING * cosine),
                |pixel, _, _| {
                    let toward = pixel.slope.0 * cosine + pixel.slope.1 * sine;
                    (0.0, RAKE_LIGHT * (1.0 + toward / rake).clamp(0.05, 3.0))
                },
            ),
        }
    }

    /// Lays the light of a lamp on every pixel. `lit` gives what of the lamp is mirrored there and how much of it falls on
    /// what lies below, `aired` how far air in a pore is seen; both get the way from the lamp, mm. Each lamp has its own
    /// loop, so that none asks at every pixel which one it is.
    fn lay(
        &self,
        pixels: &mut [u8],
        shone: &Shone<'_>,
        aired: impl Fn(&Frosted, f32) -> f32,
        lit: impl Fn(&Pixel, f32, f32) -> (f32, f32),
    ) {
        let mut frosted = self.frosted.iter().peekable();
        for ((place, pixel), bytes) in self.pixels.iter().enumerate().zip(pixels.chunks_exact_mut(4)) {
            let (u, v) = (pixel.ceiling.0 - shone.aim.0, pixel.ceiling.1 - shone.aim.1);
            let (lamps, falls) = lit(pixel, u, v);
            let turned = pixel.tilt * (shone.lean + 0.8);
            // Fibre that leans away from the lamp grows darker, never black.
            let sheen = if turned < 0.0 { 1.0 / (1.0 - turned) } else { 1.0 + turned };
            let mirrored = pixel.mirror * lamps + shone.scratched.get(place).copied().unwrap_or(0.0);
            let mut whole = pixel.body;
            if let Some(pore) = frosted.next_if(|pore| pore.frost.place == place) {
                let seen = aired(pore, u);
                for (body, more) in whole.iter_mut().zip(pore.more) {
                    *body += seen * more;
                }
            }
            let colour = whole.into_iter().zip(pixel.still);
            let colour = colour.map(|(body, still)| self.light.byte(body * falls * sheen + still + mirrored));
            for (slot, byte) in bytes.iter_mut().zip(colour.chain([u8::MAX])) {
                *slot = byte;
            }
        }
    }

    fn tubes(&self, along: f32, across: f32, blur: f32, veil: f32) -> f32 {
        let sharp = if across.abs() > TRAY_HALF + FAR_BLURS * blur {
            0.0
        } else {
            let lit = |off: f32, half: f32| strip(off, half, blur);
            let tubes = lit(across + TUBES_APART, TUBE_HALF) + lit(across - TUBES_APART, TUBE_HALF);
            lit(along, TUBE_LONG) * (TUBE_LIGHT * tubes + TRAY_LIGHT * lit(across, TRAY_HALF))
        };
        if veil < LEAST_VEIL {
            return sharp;
        }
        // Blurred so wide, tubes and tray are one soft band.
        let wide = hypotenuse(blur + VEIL, BAND);
        let band = BAND_LIGHT / wide * self.light.pass(0.5 * (across / wide) * (across / wide));
        sharp * (1.0 - veil) + strip(along, TUBE_LONG, wide) * band * veil
    }

    fn bulb(&self, u: f32, v: f32, pixel: &Pixel) -> f32 {
        let seen = |(along, across): (f32, f32)| {
            let spread = along * across / (BULB * BULB);
            let distance = hypotenuse(u, v * (along + BULB) / (across + BULB));
            if distance > BULB + FAR_BLURS * along {
                return 0.0;
            }
            BULB_LIGHT / (1.0 + 2.0 * spread) * inside(distance - BULB, along)
        };
        let sharp = seen(pixel.blur);
        if pixel.veil > 0.0 {
            sharp * (1.0 - pixel.veil) + seen((pixel.blur.0 + VEIL, pixel.blur.1 + VEIL)) * pixel.veil
        } else {
            sharp
        }
    }
}

/// Light under a lamp falls off softly from below it.
fn glow(u: f32, v: f32) -> f32 {
    const WIDE: f32 = 300.0;
    let share = (u * u + v * v) / (WIDE * WIDE);
    1.0 / (1.0 + share)
}
