//! A part painted in a look, pixel by pixel: its ground, its colours, its inlays, its masks, and the light on it.

use super::blank::{Blank, Cell, of};
use super::dyes::Inlays;
use super::gloss::Gloss;
use super::ground::Ground;
use super::inlay;
use super::look::PartLook;
use super::masking::{Mask, Masks};
use super::over::Over;
use super::path::Point;
use super::states::{Binding, Cover, Seat};
use crate::light::{Colour, LIGHT};
use crate::noise::cloud;
use crate::number::smooth;
use crate::pause::pause;
use crate::wood::{blend, layer};

/// So many pixels are painted between two stops.
const AT_ONCE: usize = 400;
/// A film of this thickness wets all of the wood, micrometres.
const WETS: f32 = 20.0;
/// A dark line between binding and wood, mm.
const PURFLING: f32 = 1.2;
/// Colour on what is inlaid shows so many times as much as over wood.
const ON_INLAY: f32 = 1.6;
/// How far tape reaches beyond what it covers, mm.
const TAPE_OVER: f32 = 1.6;
/// The edge of the film about bare wood throws a shadow: what is left of the light, and how far it falls, mm.
const STEP: (f32, f32) = (0.7, 1.2);
/// Tilted fibre turns light: on bare wood and under film; how that changes over the width of the work.
const SHEEN: (f32, f32) = (0.12, 0.26);
const TURNED: (f32, f32) = (0.3, 1.2);
/// Fine scratches: how long and how wide, mm, and what they send back.
const SCRATCH: (f32, f32) = (30.0, 1.3);
const SCRATCH_LIGHT: f32 = 0.55;
/// How single scratches differ.
const SCRATCHED: f32 = 0.3;

/// What paints one part.
struct Painter<'a> {
    blank: &'a Blank,
    look: &'a PartLook,
    ground: Ground<'a>,
    gloss: Option<Gloss>,
    over: Over,
    inlays: Inlays,
    masks: Masks,
    soaked: f32,
    size: Point,
    scale: f32,
    seed: u32,
}

/// The colours of the pixels of a part, in turns.
pub(super) async fn painted(blank: &Blank, look: &PartLook, size: Point, scale: f32) -> Vec<Colour> {
    let painter = Painter::new(blank, look, size, scale);
    let mut colours = Vec::with_capacity(blank.cells.len());
    for cells in blank.cells.chunks(AT_ONCE) {
        colours.extend(cells.iter().map(|cell| painter.cell(cell)));
        pause().await;
    }
    colours
}

impl<'a> Painter<'a> {
    fn new(blank: &'a Blank, look: &'a PartLook, size: Point, scale: f32) -> Self {
        let seed = layer(blank.grown.seed, 950 + blank.grown.part.number());
        Self {
            blank,
            look,
            ground: Ground::new(&LIGHT, blank, look),
            gloss: Gloss::of(look),
            over: Over::new(&LIGHT, look),
            inlays: Inlays::new(look.trim),
            masks: Masks::new(seed),
            soaked: smooth(0.0, WETS, look.film_um()),
            size,
            scale,
            seed,
        }
    }

    fn cell(&self, cell: &Cell) -> Colour {
        let lit = inlay::lit(self.size, cell, self.blank.part.bow);
        let (top, share) = self.on_top(cell);
        if share >= 1.0 {
            return top.map(|part| part * lit);
        }
        let finished = self.finished(cell, lit);
        if share > 0.0 { blend(finished, top.map(|part| part * lit), share) } else { finished }
    }

    /// The finished face of a pixel on which so much light falls.
    fn finished(&self, cell: &Cell, lit: f32) -> Colour {
        let body = self.body(cell).map(|part| part * lit);
        let Some(gloss) = self.gloss else { return body };
        let scratched = if gloss.veil > 0.0 {
            let (x, y) = cell.at;
            let scratch = cloud(self.seed ^ 5, (y + 0.3 * x) / SCRATCH.0, (x - 0.3 * y) / SCRATCH.1);
            gloss.veil * (1.0 + SCRATCHED * scratch)
        } else {
            0.0
        };
        let mirrored = gloss.mirrored(self.seed, self.size, cell, self.blank.part.bow);
        let kept = (1.0 - gloss.sent_back()) * (1.0 - scratched);
        body.map(|part| part * kept + scratched * SCRATCH_LIGHT * lit + mirrored)
    }

    /// Share of a pixel that lies so far within a line, mm.
    fn within(&self, far: f32) -> f32 {
        (far / self.scale + 0.5).clamp(0.0, 1.0)
    }

    /// What lies on a pixel in the place of a finish, a mask or bare wood, and the share of the pixel that it takes.
    fn on_top(&self, cell: &Cell) -> (Colour, f32) {
        let sprayed =
            |mask: Mask| self.over.lay(mask.colour, self.over.at(cell)).map(|part| part * mask.light);
        match self.look.cover {
            Cover::Tape => return (sprayed(self.masks.strips(cell)), 1.0),
            Cover::Paper => return (sprayed(self.masks.paper(cell)), 1.0),
            Cover::None => {}
        }
        let seat = cell.seat + if self.look.seat == Seat::Taped { TAPE_OVER } else { 0.0 };
        if self.within(seat) > 0.0 {
            match self.look.seat {
                Seat::Taped => return (sprayed(self.masks.strip(cell, seat)), self.within(seat)),
                Seat::Bare => {
                    let step = STEP.0 + (1.0 - STEP.0) * smooth(0.0, STEP.1, seat);
                    return (self.ground.bare(cell).map(|part| part * step), self.within(seat));
                }
                Seat::None => {}
            }
        }
        match self.blank.part.binding.filter(|_| self.look.binding == Binding::Taped) {
            Some(wide) if self.within(wide + TAPE_OVER - cell.rim) > 0.0 => {
                let far = wide + TAPE_OVER - cell.rim;
                (sprayed(self.masks.strip(cell, far)), self.within(far))
            }
            _ => ([0.0; 3], 0.0),
        }
    }

    /// Light that comes back from below the surface.
    fn body(&self, cell: &Cell) -> Colour {
        let over = self.over.at(cell);
        let through = |below: Colour, over: Colour| self.over.lay(below, over);
        let inlaid = |below: Colour| through(below, over.map(|part| libm::powf(part, ON_INLAY)));
        let lay = |on: Colour, share: f32, colour: &dyn Fn() -> Colour| {
            if share > 0.0 { blend(on, colour(), share) } else { on }
        };
        let inlays = &self.inlays;
        let within = |far: f32| self.within(far - cell.rim);
        let wood = through(self.turned(cell, self.ground.seen(cell, self.soaked)), over);
        let (dark, pale) = inlay::rosette(&self.blank.part, cell, self.scale);
        let wood = lay(wood, dark, &|| inlaid(inlays.dark));
        let wood = lay(wood, pale, &|| inlaid(inlays.pale));
        let wood = lay(wood, inlay::fret(&self.blank.part, cell), &|| inlays.fret);
        let Some(wide) = self.blank.part.binding.filter(|_| self.look.binding != Binding::None) else {
            return wood;
        };
        let wood = lay(wood, within(wide + PURFLING), &|| inlaid(inlays.dark));
        lay(wood, within(wide), &|| match self.look.binding {
            Binding::Scraped => inlays.binding,
            Binding::None | Binding::Covered | Binding::Taped => inlaid(inlays.binding),
        })
    }

    /// Wood as its fibre turns the light.
    fn turned(&self, cell: &Cell, wood: Colour) -> Colour {
        let sheen = SHEEN.0 + (SHEEN.1 - SHEEN.0) * self.soaked;
        let lean = TURNED.0 + TURNED.1 * (1.0 - cell.at.0 / self.size.0.max(1.0));
        let tilt = of(&self.blank.wood.tilt, cell) * sheen * lean;
        let gain = (1.0 + tilt.max(0.0)) / (1.0 + (-tilt).max(0.0));
        wood.map(|part| part * gain)
    }
}
