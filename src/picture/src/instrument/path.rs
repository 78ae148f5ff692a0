//! Closed lines in mm, and how far a place is from them.

/// A place, mm from the left and from the top of its view.
pub type Point = (f32, f32);

/// A closed line through points: the last is joined to the first.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    points: Vec<Point>,
}

impl Path {
    /// Its points, one after another along it.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// Whether a place lies within it.
    #[must_use]
    pub fn contains(&self, at: Point) -> bool {
        self.sides().filter(|side| crosses(*side, at)).count() % 2 == 1
    }

    /// Its least and its greatest coordinates.
    #[must_use]
    pub fn bounds(&self) -> (Point, Point) {
        self.points.iter().fold(
            ((f32::INFINITY, f32::INFINITY), (f32::NEG_INFINITY, f32::NEG_INFINITY)),
            |(least, most), (x, y)| ((least.0.min(*x), least.1.min(*y)), (most.0.max(*x), most.1.max(*y))),
        )
    }

    pub(super) const fn through(points: Vec<Point>) -> Self {
        Self { points }
    }

    /// A straight strip from one place to another.
    pub(super) fn strip(from: Point, to: Point, width: f32) -> Self {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let half = 0.5 * width / libm::hypotf(dx, dy).max(f32::EPSILON);
        let (u, v) = (-dy * half, dx * half);
        Self::through(vec![
            (from.0 + u, from.1 + v),
            (to.0 + u, to.1 + v),
            (to.0 - u, to.1 - v),
            (from.0 - u, from.1 - v),
        ])
    }

    /// A circle.
    pub(super) fn circle(middle: Point, radius: f32) -> Self {
        const SIDES: u8 = 40;
        let turn = |side: u8| core::f32::consts::TAU * f32::from(side) / f32::from(SIDES);
        let at = |turn: f32| (middle.0 + radius * libm::cosf(turn), middle.1 + radius * libm::sinf(turn));
        Self::through((0..SIDES).map(|side| at(turn(side))).collect())
    }

    /// The same line on the other side of an upright axis.
    pub(super) fn mirrored(&self, axis: f32) -> Self {
        Self::through(self.points.iter().rev().map(|(x, y)| (2.0 * axis - x, *y)).collect())
    }

    fn sides(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let next = self.points.iter().cycle().skip(1);
        self.points.iter().copied().zip(next.copied())
    }
}

/// A line that is drawn point by point.
pub(super) struct Pen {
    points: Vec<Point>,
}

impl Pen {
    pub(super) fn at(point: Point) -> Self {
        Self { points: vec![point] }
    }

    pub(super) fn line(mut self, to: Point) -> Self {
        self.points.push(to);
        self
    }

    /// A cubic curve by Bézier, with two points that draw it to themselves.
    pub(super) fn curve(mut self, first: Point, second: Point, to: Point) -> Self {
        const STEPS: u8 = 12;
        let Some(from) = self.points.last().copied() else { return self.line(to) };
        for step in 1..=STEPS {
            let t = f32::from(step) / f32::from(STEPS);
            let s = 1.0 - t;
            let mixed = |part: fn(Point) -> f32| {
                s * s * s * part(from)
                    + 3.0 * s * s * t * part(first)
                    + 3.0 * s * t * t * part(second)
                    + t * t * t * part(to)
            };
            self.points.push((mixed(|point| point.0), mixed(|point| point.1)));
        }
        self
    }

    pub(super) fn closed(self) -> Path {
        Path::through(self.points)
    }

    /// Closed by its image on the other side of an upright axis, on which it must begin or end, or be joined straight across.
    pub(super) fn both_sides(self, axis: f32) -> Path {
        let back: Vec<Point> =
            self.points.iter().rev().filter(|(x, _)| *x != axis).map(|(x, y)| (2.0 * axis - x, *y)).collect();
        Path::through(self.points.into_iter().chain(back).collect())
    }
}

/// How far a place lies within lines of which some may be holes in others, mm; below 0 outside.
pub(super) fn within(paths: &[Path], at: Point) -> f32 {
    let (mut nearest, mut inside) = (f32::INFINITY, false);
    for side in paths.iter().flat_map(Path::sides) {
        nearest = nearest.min(square_to(side, at));
        inside ^= crosses(side, at);
    }
    if inside { nearest.sqrt() } else { -nearest.sqrt() }
}

/// Whether a ray from a place to the right crosses a side.
fn crosses(((ax, ay), (bx, by)): (Point, Point), (x, y): Point) -> bool {
    (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax)
}

/// Square of the distance from a side.
fn square_to(((ax, ay), (bx, by)): (Point, Point), (x, y): Point) -> f32 {
    let (dx, dy) = (bx - ax, by - ay);
    let long = dx * dx + dy * dy;
    let share = if long > 0.0 { (((x - ax) * dx + (y - ay) * dy) / long).clamp(0.0, 1.0) } else { 0.0 };
    let (u, v) = (x - ax - share * dx, y - ay - share * dy);
    u * u + v * v
}
