//! What is measured on drawings: pixels of a part by where they lie, and lines by geometry of the tests' own.

use crate::looks::look;
use stepboard_picture::instrument::{
    Cover, Drawing, Part, PartKind, PartLook, PartWood, Path, Point, Shape, Side, View,
};

/// Every view that there is.
pub(crate) fn views() -> Vec<View> {
    Shape::ALL
        .into_iter()
        .flat_map(|shape| Side::ALL.into_iter().filter_map(move |side| View::of(shape, side)))
        .collect()
}

/// A view of the front.
pub(crate) fn front(shape: Shape) -> View {
    View::of(shape, Side::Front).expect("every shape has a front")
}

pub(crate) fn wood(part: PartKind, slug: &str, seed: u32) -> PartWood {
    let species = look(slug);
    PartWood { part, face: species.face, species, seed }
}

/// A view with all of its parts of one wood, each pixel so many mm.
pub(crate) fn grown(view: View, slug: &str, seed: u32, scale: f32) -> Drawing {
    let woods = view.parts.iter().map(|part| wood(part.kind, slug, seed)).collect();
    Drawing::begin(view, woods, scale).finish()
}

/// The same look on every part.
pub(crate) fn all(view: &View, look: PartLook) -> Vec<PartLook> {
    view.parts.iter().map(|part| PartLook { part: part.kind, ..look }).collect()
}

/// A board without a binding, of a wood, in a look, and what of its pixels is asked for.
pub(crate) struct Board {
    pub(crate) drawing: Drawing,
    pub(crate) scale: f32,
}

impl Board {
    pub(crate) fn new(slug: &str, scale: f32) -> Self {
        Self { drawing: grown(front(Shape::Plate), slug, 3, scale), scale }
    }

    pub(crate) fn look(self, look: PartLook) -> Self {
        let looks = all(self.drawing.view(), look);
        Self { drawing: self.drawing.paint(looks).finish(), ..self }
    }

    pub(crate) fn part(&self) -> &Part {
        &self.drawing.view().parts[0]
    }

    /// Linear light of the pixels of the board that lie so far from its edge, mm, red, green, blue.
    pub(crate) fn ring(&self, from: f32, to: f32) -> Vec<[f32; 3]> {
        let (columns, _) = self.drawing.size();
        let pixels = self.drawing.pixels().chunks(4).enumerate();
        pixels
            .filter(|(place, _)| {
                let at = middle(place % columns, place / columns, self.scale);
                let far = distance(&self.part().paths, at);
                within(&self.part().paths, at) && (from..to).contains(&far)
            })
            .map(|(_, pixel)| [linear(pixel[0]), linear(pixel[1]), linear(pixel[2])])
            .collect()
    }

    /// Those away from the edge and from where the lamp is mirrored: the lower right of the face.
    pub(crate) fn field(&self) -> Vec<[f32; 3]> {
        let (columns, _) = self.drawing.size();
        let pixels = self.drawing.pixels().chunks(4).enumerate();
        pixels
            .filter(|(place, _)| {
                let (x, y) = middle(place % columns, place / columns, self.scale);
                (190.0..225.0).contains(&x) && (150.0..230.0).contains(&y)
            })
            .map(|(_, pixel)| [linear(pixel[0]), linear(pixel[1]), linear(pixel[2])])
            .collect()
    }
}

/// The middle of a pixel, mm.
pub(crate) fn middle(column: usize, row: usize, scale: f32) -> Point {
    ((column as f32 + 0.5) * scale, (row as f32 + 0.5) * scale)
}

/// Linear light of a byte of the screen, IEC 61966-2-1.
pub(crate) fn linear(byte: u8) -> f32 {
    let share = f32::from(byte) / 255.0;
    if share <= 0.040_45 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
}

/// Lightness L* of CIE 1976 from linear light, 0 to 100; luminance by the weights of IEC 61966-2-1.
pub(crate) fn lightness(pixels: &[[f32; 3]]) -> f32 {
    let luminance = mean(&pixels.iter().map(luminance).collect::<Vec<_>>());
    if luminance > 0.008_856 { 116.0 * luminance.cbrt() - 16.0 } else { 903.3 * luminance }
}

pub(crate) fn luminance([red, green, blue]: &[f32; 3]) -> f32 {
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

pub(crate) fn mean(values: &[f32]) -> f32 {
    values.iter().sum::<f32>() / values.len() as f32
}

/// Standard deviation against the mean: how uneven pixels are.
pub(crate) fn uneven(pixels: &[[f32; 3]]) -> f32 {
    let values: Vec<f32> = pixels.iter().map(luminance).collect();
    let middle = mean(&values);
    (mean(&values.iter().map(|value| (value - middle).powi(2)).collect::<Vec<_>>())).sqrt() / middle
}

/// Sides of lines, each with the place where it ends.
fn sides(paths: &[Path]) -> impl Iterator<Item = (Point, Point)> + '_ {
    paths.iter().flat_map(|path| {
        let points = path.points();
        (0..points.len()).map(move |n| (points[n], points[(n + 1) % points.len()]))
    })
}

/// Whether a place lies within lines of which some are holes in others: by the angle that they turn round it.
pub(crate) fn within(paths: &[Path], (x, y): Point) -> bool {
    let winds = |path: &Path| {
        let turn: f32 = sides(core::slice::from_ref(path))
            .map(|((ax, ay), (bx, by))| {
                let (ax, ay, bx, by) = (ax - x, ay - y, bx - x, by - y);
                (ax * by - ay * bx).atan2(ax * bx + ay * by)
            })
            .sum();
        turn.abs() > core::f32::consts::PI
    };
    paths.iter().filter(|path| winds(path)).count() % 2 == 1
}

/// How far a place is from the nearest of lines, mm.
pub(crate) fn distance(paths: &[Path], (x, y): Point) -> f32 {
    sides(paths)
        .map(|((ax, ay), (bx, by))| {
            let long = (bx - ax).hypot(by - ay);
            let (u, v) = if long > 0.0 { ((bx - ax) / long, (by - ay) / long) } else { (0.0, 0.0) };
            let along = ((x - ax) * u + (y - ay) * v).clamp(0.0, long);
            (x - ax - along * u).hypot(y - ay - along * v)
        })
        .fold(f32::INFINITY, f32::min)
}

/// A part without anything over it.
pub(crate) fn plain(part: PartKind) -> PartLook {
    PartLook { cover: Cover::None, ..PartLook::bare(part) }
}
