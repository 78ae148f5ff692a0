//! The step board: one board, a band for each stage of the work, each finished as far as it is held.

mod surface;
mod tape;
mod wood;

pub use surface::Surface;

use crate::light::{Colour, Light, screen};
use crate::mirrored::strip_at;
use crate::noise::Noise;
use crate::number::{coordinate, mix, smooth};
use crate::soak;
use surface::{Binding, Coat, Film, Pores};
use tape::{Cover, Tape, dash};
use wood::{BOARD_WIDTH, Wood};

/// One band of the board.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// What its finished part looks like.
    pub surface: Surface,
    /// Share of its length that is finished, 0 to 1, from the left. Masking tape stands where it stops.
    pub finished: f32,
    /// Share of its length that was finished once, 0 to 1. Beyond `finished` it is shown dulled, up to a dashed line.
    pub once: f32,
}

const SEED: u32 = 20;

/// Screen colours.
const SAWN: [u8; 3] = [160, 147, 133];
const SANDED: [u8; 3] = [208, 162, 128];
const DARK_ZONE: [u8; 3] = [184, 134, 101];
const OPEN_PORE: [u8; 3] = [118, 76, 54];
const FILLER: [u8; 3] = [34, 17, 12];
const BINDING: [u8; 3] = [240, 226, 196];
const PURFLING: [u8; 3] = [24, 17, 13];
const INK: [u8; 3] = [27, 29, 31];

/// Absorbance of the dyes for each unit of build, in natural units.
const STAIN: Colour = [0.62, 1.25, 1.80];
const CHERRY: Colour = [0.55, 3.30, 3.70];
const SHADE: Colour = [2.0, 3.0, 3.4];
/// How much the stain takes differently in dark zones and along the fibre.
const STAIN_ZONE: f32 = 0.22;
const STAIN_FIBRE: f32 = 0.14;

/// How strongly the ribbon stripe turns light, bare and under film.
const CHATOYANCE: f32 = 0.11;
const CHATOYANCE_FILM: f32 = 0.14;
const STREAK: f32 = 0.07;
/// Relief of open pores.
const RELIEF: f32 = 0.30;

/// The lamp: a tube in a white tray, mirrored down the whole board; places and widths in mm on the board, light with
/// diffuse white as 1, times what a film sends back at that angle.
const LAMP: f32 = 27.0;
const LAMP_LEAN: f32 = -0.02;
const TUBE_HALF: f32 = 2.7;
const TUBE_LIGHT: f32 = 26.0;
const TRAY_HALF: f32 = 8.5;
const TRAY_LIGHT: f32 = 0.9;
const ROOM_LIGHT: f32 = 0.28;
const SENT_BACK: f32 = 0.041;
/// Beyond this many blurs from its edge the lamp cannot be seen.
const LAMP_REACH: f32 = 3.2;

/// Saw marks: shallow arcs across the board.
const SAW_PITCH: f32 = 2.6;
const SAW_BOW: f32 = 0.0022;
const SAW_DEPTH: f32 = 0.13;

/// The shaded end and the binding, mm from the left.
const SHADE_END: f32 = 25.0;
const BINDING_WIDTH: f32 = 2.4;
const PURFLING_WIDTH: f32 = 0.5;

/// How much of a finish that has slipped still shows.
const DULLED: f32 = 0.42;

/// Draws the board as rows of red, green, blue and alpha bytes, `width * height * 4` of them, alpha full.
///
/// The bands share the height evenly, first band on top, grain running down through all of them. Shares outside 0 to 1
/// count as the nearest of these. The same arguments give the same bytes. With no bands the board is as sawn.
#[must_use]
pub fn draw(width: u32, height: u32, bands: &[Band]) -> Vec<u8> {
    let (Ok(width), Ok(height)) = (usize::try_from(width), usize::try_from(height)) else {
        return Vec::new();
    };
    let noise = Noise::new(SEED);
    let painter =
        Painter { wood: Wood::new(width, height, &noise), noise, light: Light::new(), paint: Paint::new() };
    let mut pixels = Vec::with_capacity(width * height * 4);
    let mut start = 0;
    for number in 0..bands.len().max(1) {
        let end = (number + 1) * height / bands.len().max(1);
        let strip = Strip::new(number, bands.get(number), start, end, painter.wood.scale);
        for row in start..end {
            painter.row(&strip, row, &mut pixels);
        }
        start = end;
    }
    pixels
}

/// The rows of one band, lengths in mm.
struct Strip {
    coat: Coat,
    top: usize,
    bottom: usize,
    stop: f32,
    once: f32,
    tape: Option<Tape>,
}

impl Strip {
    fn new(number: usize, band: Option<&Band>, top: usize, bottom: usize, scale: f32) -> Self {
        let held = |share: f32| if share.is_nan() { 0.0 } else { share.clamp(0.0, 1.0) * BOARD_WIDTH };
        let stop = band.map_or(0.0, |band| held(band.finished));
        let once = band.map_or(0.0, |band| held(band.once)).max(stop);
        let taped = stop > 0.0 && stop < BOARD_WIDTH;
        Self {
            coat: band.map_or(Surface::Sanded, |band| band.surface).coat(),
            top,
            bottom,
            stop,
            once,
            tape: taped.then(|| Tape::new(number, stop, coordinate(bottom - top) * scale)),
        }
    }
}

/// Colours in linear light.
struct Paint {
    sawn: Colour,
    sanded: Colour,
    dark_zone: Colour,
    open_pore: Colour,
    filler: Colour,
    binding: Colour,
    purfling: Colour,
    ink: Colour,
}

impl Paint {
    fn new() -> Self {
        Self {
            sawn: screen(SAWN),
            sanded: screen(SANDED),
            dark_zone: screen(DARK_ZONE),
            open_pore: screen(OPEN_PORE),
            filler: screen(FILLER),
            binding: screen(BINDING),
            purfling: screen(PURFLING),
            ink: screen(INK),
        }
    }
}

struct Painter {
    wood: Wood,
    noise: Noise,
    light: Light,
    paint: Paint,
}

/// A place on the board.
#[derive(Clone, Copy)]
struct Spot {
    x: f32,
    y: f32,
    zone: f32,
    tilt: f32,
    fibre: f32,
    pore: f32,
    /// How the pores rise or fall to the right here.
    relief: f32,
}

impl Painter {
    fn row(&self, strip: &Strip, row: usize, pixels: &mut Vec<u8>) {
        let y = coordinate(row) * self.wood.scale;
        let in_band = coordinate(row - strip.top) * self.wood.scale;
        let scored = row == strip.top || row + 1 == strip.bottom;
        for column in 0..self.wood.width {
            let x = coordinate(column) * self.wood.scale;
            let spot = self.spot(column, row, x, y);
            let mut colour = self.surface(strip, spot, in_band);
            if let Some(tape) = &strip.tape {
                let (from, to) = tape.reach();
                if x >= from && x <= to {
                    match tape.at(x, in_band, &self.noise) {
                        Cover::Nothing => {}
                        Cover::Shadow(share) => colour = colour.map(|part| part * share),
                        Cover::Tape(paper) => colour = paper,
                    }
                }
            }
            if scored {
                let share = if row == strip.top { 1.18 } else { 0.35 };
                colour = colour.map(|part| part * share);
            }
            pixels.extend(colour.map(|part| self.light.byte(part.max(0.0))));
            pixels.push(u8::MAX);
        }
    }

    fn spot(&self, column: usize, row: usize, x: f32, y: f32) -> Spot {
        let wood = &self.wood;
        let place = row * wood.width + column;
        let at = |map: &[f32]| map.get(place).copied().unwrap_or(0.0);
        let pore = at(&wood.pore);
        let right =
            if column + 1 < wood.width { wood.pore.get(place + 1).copied().unwrap_or(0.0) } else { pore };
        Spot {
            x,
            y,
            zone: at(&wood.zone),
            tilt: at(&wood.tilt),
            fibre: at(&wood.fibre),
            pore,
            relief: right - pore,
        }
    }

    fn surface(&self, strip: &Strip, spot: Spot, in_band: f32) -> Colour {
        if spot.x < strip.stop {
            return self.finished(&strip.coat, spot);
        }
        let sawn = self.sawn(spot);
        if spot.x >= strip.once {
            return sawn;
        }
        if strip.once - spot.x < 2.0 * self.wood.scale && strip.once < BOARD_WIDTH && dash(in_band) {
            return self.paint.ink;
        }
        let dull = self.body(&strip.coat, spot);
        [0, 1, 2].map(|part| mix(part_of(sawn, part), part_of(dull, part), DULLED))
    }

    fn sawn(&self, spot: Spot) -> Colour {
        let off = spot.x - 0.5 * BOARD_WIDTH;
        let stroke = spot.y + SAW_BOW * off * off;
        let marks = self.noise.at(spot.x / 60.0, stroke / SAW_PITCH)
            + 0.4 * self.noise.at(spot.x / 25.0, stroke / 0.9);
        let shade =
            (1.0 + SAW_DEPTH * marks) * (1.0 - 0.10 * spot.zone + 0.05 * spot.tilt + 0.05 * spot.fibre);
        let groove = 1.0 - 0.35 * spot.pore;
        self.paint.sawn.map(|part| part * shade * groove)
    }

    /// The wood with what has soaked into it and lies on it, before the lamp is mirrored.
    fn body(&self, coat: &Coat, spot: Spot) -> Colour {
        let paint = &self.paint;
        let zone = spot.zone.clamp(-0.5, 1.0);
        let stain = coat.stain * (1.0 + STAIN_ZONE * zone + STAIN_FIBRE * spot.fibre);
        let film = if coat.wet { CHATOYANCE_FILM } else { 0.0 };
        let turned = (1.0 + (CHATOYANCE + film) * spot.tilt) * (1.0 + STREAK * spot.fibre);
        let relief = if coat.pores == Pores::Filled { 1.0 } else { 1.0 - RELIEF * spot.relief };
        let shade = coat.shade * self.shade(spot);
        let strip = if coat.binding == Binding::None { BindingPart::Wood } else { binding_part(spot.x) };
        [0, 1, 2].map(|part| {
            let dye = |dyes: Colour, build: f32| {
                if build > 0.0 { self.light.pass(part_of(dyes, part) * build) } else { 1.0 }
            };
            let over = dye(CHERRY, coat.colour) * dye(SHADE, shade);
            match strip {
                BindingPart::Binding if coat.binding == Binding::Bare => return part_of(paint.binding, part),
                BindingPart::Binding => return part_of(paint.binding, part) * over * over,
                BindingPart::Purfling => return part_of(paint.purfling, part),
                BindingPart::Wood => {}
            }
            let wood = mix(part_of(paint.sanded, part), part_of(paint.dark_zone, part), zone) * turned;
            let stained = wood * dye(STAIN, stain);
            let pore = match coat.pores {
                Pores::Open => part_of(paint.open_pore, part),
                Pores::Pale => part_of(paint.sanded, part),
                Pores::Filled => part_of(paint.filler, part),
            };
            let share = if coat.pores == Pores::Pale { 0.6 } else { 0.92 };
            let wood = mix(stained, pore, share * spot.pore) * relief;
            let wood = if coat.wet { soak::wet(wood) } else { wood };
            wood * over
        })
    }

    /// Share of the full shading at a place: several passes, each held further out than the last.
    fn shade(&self, spot: Spot) -> f32 {
        let edge = spot.x + 1.6 * self.noise.at(spot.y / 12.0, spot.x / 10.0);
        let near = 1.0 - smooth(BINDING_WIDTH, SHADE_END, edge);
        near * (0.35 + 0.65 * near)
    }

    fn finished(&self, coat: &Coat, spot: Spot) -> Colour {
        let body = self.body(coat, spot);
        let Some(film) = coat.film else { return body };
        let mirrored = film.clear * SENT_BACK * self.mirrored(film, spot);
        body.map(|part| part * (1.0 - SENT_BACK) + mirrored)
    }

    /// The light of what the film mirrors at a place.
    fn mirrored(&self, film: Film, spot: Spot) -> f32 {
        let off = spot.x - LAMP - LAMP_LEAN * spot.y;
        let reach = TRAY_HALF + LAMP_REACH * film.blur + 2.0 * film.wave + film.pore;
        if off.abs() > reach {
            return ROOM_LIGHT;
        }
        let length = film.wave_length;
        let wave = self.noise.at(spot.y / (1.3 * length), spot.x / length)
            + 0.5 * self.noise.at(spot.y / (0.6 * length) + 3.0, spot.x / (0.45 * length));
        let off = off + film.wave * wave + film.pore * spot.relief;
        ROOM_LIGHT
            + TRAY_LIGHT * strip_at(off, TRAY_HALF, film.blur.max(0.5))
            + TUBE_LIGHT * strip_at(off, TUBE_HALF, film.blur)
    }
}

enum BindingPart {
    Binding,
    Purfling,
    Wood,
}

fn binding_part(x: f32) -> BindingPart {
    if x < BINDING_WIDTH {
        BindingPart::Binding
    } else if x < BINDING_WIDTH + PURFLING_WIDTH {
        BindingPart::Purfling
    } else {
        BindingPart::Wood
    }
}

fn part_of(colour: Colour, part: usize) -> f32 {
    colour.get(part).copied().unwrap_or(0.0)
}
