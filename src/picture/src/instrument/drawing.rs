//! A view that is grown once and painted again whenever a look changes.

use super::blank::{Blank, PartWood};
use super::dyes::HOLE;
use super::look::PartLook;
use super::paint::painted;
use super::part::Rosette;
use super::shape::View;
use crate::light::{Colour, LIGHT, screen};
use crate::map::Grid;
use crate::number::{byte, smooth};
use crate::pause::{Turns, pause};

/// Light in a hole: in the shadow of its edge, and away from it.
const HOLE_LIGHT: (f32, f32) = (0.5, 1.7);
/// Pixels that are put together between two stops.
const AT_ONCE: usize = 4_096;

/// A part with its look, if it has one yet.
#[derive(Debug, Clone)]
struct Painted {
    blank: Blank,
    look: Option<PartLook>,
    colours: Vec<Colour>,
}

/// A picture of a view.
#[derive(Debug, Clone)]
pub struct Drawing {
    view: View,
    grid: Grid,
    parts: Vec<Painted>,
    pixels: Vec<u8>,
}

impl Drawing {
    /// Cuts a view into pixels of `scale` mm and grows its wood, in turns. A part without a wood is left out, and its place
    /// is transparent. Nothing is seen before it is painted.
    #[must_use]
    pub fn begin(view: View, woods: Vec<PartWood>, scale: f32) -> Turns<Self> {
        Turns::of(async move {
            let grid = view.grid(scale);
            let mut parts = Vec::new();
            for part in view.parts.clone() {
                if let Some(wood) = woods.iter().find(|wood| wood.part == part.kind) {
                    let blank = Blank::grow(&view, part, wood.clone(), scale).await;
                    parts.push(Painted { blank, look: None, colours: Vec::new() });
                }
            }
            Self { view, grid, parts, pixels: vec![0; 4 * grid.columns * grid.rows] }
        })
    }

    /// Paints each part in its look, in turns; a part whose look is as it was is kept, and so is one without a look.
    #[must_use]
    pub fn paint(mut self, looks: Vec<PartLook>) -> Turns<Self> {
        Turns::of(async move {
            for part in &mut self.parts {
                let look = looks.iter().find(|look| look.part == part.blank.part.kind).copied();
                if look.is_none() || look == part.look {
                    continue;
                }
                if let Some(look) = &look {
                    part.colours = painted(&part.blank, look, self.view.size, self.grid.scale).await;
                }
                part.look = look;
            }
            self.put_together().await;
            self
        })
    }

    /// The view.
    #[must_use]
    pub const fn view(&self) -> &View {
        &self.view
    }

    /// Width and height in pixels.
    #[must_use]
    pub const fn size(&self) -> (usize, usize) {
        (self.grid.columns, self.grid.rows)
    }

    /// Rows of red, green, blue and alpha bytes, transparent outside the parts; colours are not multiplied with alpha.
    #[must_use]
    pub fn pixels(&self) -> &[u8] {
        &self.pixels
    }

    /// Adds up what the parts have of each pixel: where two meet, their shares make a whole one.
    async fn put_together(&mut self) {
        let mut sums = vec![[0.0_f32; 4]; self.grid.columns * self.grid.rows];
        for part in &self.parts {
            for (cell, colour) in part.blank.cells.iter().zip(&part.colours) {
                if let Some([red, green, blue, share]) = sums.get_mut(cell.pixel) {
                    let [r, g, b] = colour.map(|part| part * cell.cover);
                    *red += r;
                    *green += g;
                    *blue += b;
                    *share += cell.cover;
                }
            }
            pause().await;
            if let Some(rosette) = part.blank.part.rosette.filter(|_| part.look.is_some()) {
                self.open(rosette, &mut sums);
                pause().await;
            }
        }
        for (bytes, sums) in self.pixels.chunks_mut(4 * AT_ONCE).zip(sums.chunks(AT_ONCE)) {
            for (slots, [red, green, blue, share]) in bytes.chunks_exact_mut(4).zip(sums) {
                let whole = share.max(f32::EPSILON);
                let [r, g, b] = [red, green, blue].map(|part| LIGHT.byte((part / whole).max(0.0)));
                slots.copy_from_slice(&[r, g, b, byte(*share)]);
            }
            pause().await;
        }
    }

    /// The dark inside of a body, where a hole lets it be seen.
    fn open(&self, rosette: Rosette, sums: &mut [[f32; 4]]) {
        let dark = screen(HOLE);
        let (x, y) = rosette.middle;
        for (column, row, dx, dy) in crate::map::near(self.grid, x, y, rosette.radius + self.grid.scale) {
            let Some([red, green, blue, share]) = sums.get_mut(row * self.grid.columns + column) else {
                continue;
            };
            let left = (1.0 - *share).clamp(0.0, 1.0);
            let lit = smooth(-rosette.radius, 1.6 * rosette.radius, dx + dy);
            let light = HOLE_LIGHT.0 + (HOLE_LIGHT.1 - HOLE_LIGHT.0) * lit;
            let [r, g, b] = dark.map(|part| part * light * left);
            *red += r;
            *green += g;
            *blue += b;
            *share += left;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Drawing;
    use crate::dye::Dye;
    use crate::instrument::{
        Cover, Filled, Filler, PartLook, PartWood, Prepared, Shade, Shape, Sheen, Side, View,
    };
    use crate::pause::{Turns, counted};
    use crate::wood::{Growth, Pores, Species};

    /// What may lie between two stops: values of noise, and pixels that are looked up, as for panels.
    const MOST: usize = 6_000;

    fn held<T>(mut turns: Turns<T>, name: &str) -> T {
        let mut done = false;
        while !done {
            counted();
            done = turns.step(1);
            let values = counted();
            assert!(values <= MOST, "{name}: {values} values in a turn");
        }
        turns.finish()
    }

    #[test]
    fn little_is_done_between_two_stops() {
        let pores = Pores {
            count: 90.0,
            stand: Growth::Ring,
            length: 4.0,
            length_spread: 0.5,
            width: 0.2,
            width_spread: 0.05,
        };
        let species = Species { growth: Growth::Ring, pores: vec![pores], ..Species::plain() };
        for view in Shape::ALL.iter().filter_map(|shape| View::of(*shape, Side::Front)) {
            let name = view.shape.slug();
            let wood = |part| PartWood { part, species: species.clone(), face: species.face, seed: 1 };
            let parts: Vec<_> = view.parts.iter().map(|part| part.kind).collect();
            let woods = parts.iter().copied().map(wood).collect();
            let look = |part| PartLook {
                prepared: Prepared::Damped,
                filler: Some(Filler { colour: [60, 38, 24], state: Filled::Hazed }),
                shade: Some(Shade { dye: Dye::Black, build: 1.0, reach: 60.0 }),
                clear_um: 80.0,
                sheen: Sheen::Levelled,
                ..PartLook::bare(part)
            };
            let masked = |part| PartLook { cover: Cover::Paper, ..PartLook::bare(part) };
            let drawing = held(Drawing::begin(view, woods, 1.0), name);
            let drawing = held(drawing.paint(parts.iter().copied().map(look).collect()), name);
            held(drawing.paint(parts.into_iter().map(masked).collect()), name);
        }
    }
}
