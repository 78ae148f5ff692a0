//! The path of a gun: points in time, of any sampling.

use crate::content::SprayTask;
use crate::quantity::within;

/// Where the gun is at a moment and how it is held.
///
/// Between two points everything runs evenly but the trigger, which stays as it was at the first of them: whoever pulls or
/// lets go of it makes a point of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// Time from the beginning, s.
    pub t: f64,
    /// Where the gun aims on the work, mm to the right of its axis.
    pub x: f64,
    /// Where it aims, mm from the top of the work downwards.
    pub y: f64,
    /// Distance from the gun to where it aims, mm: along the slant where it is tilted.
    pub distance: f64,
    /// Tilt off square along the short side of the fan, to either side, degrees.
    pub tilt: f64,
    /// Direction of the long side of the fan: degrees from the x axis towards the y axis.
    pub fan: f64,
    /// How far the trigger is pulled, 0 to 1.
    pub trigger: f64,
    /// How wide the fan is set, over how wide the task sets it.
    pub wide: f64,
}

/// What a path may hold. Limits of this model, wide enough for every hand.
impl Point {
    /// Latest time: an hour at the work, s.
    pub const TIME_MOST: f64 = 3_600.0;
    /// Farthest from the origin, mm.
    pub const PLACE_MOST: f64 = 2_000.0;
    /// Nearest and farthest the gun is held, mm.
    pub const DISTANCE: (f64, f64) = (50.0, 1_000.0);
    /// Greatest tilt, degrees.
    pub const TILT_MOST: f64 = 60.0;
    /// Greatest angle of the fan, degrees: once round to either side.
    pub const FAN_MOST: f64 = 360.0;
    /// Narrowest and widest fan, over that of the task.
    pub const WIDE: (f64, f64) = SprayTask::FANS;
    /// Most points of a path: an hour at 30 a second.
    pub const COUNT_MOST: usize = 108_000;
}

/// The names of a point's values in files, with the least and the greatest that is allowed.
pub const LIMITS: [(&str, &str, f64, f64); 8] = [
    ("t_s", "s", 0.0, Point::TIME_MOST),
    ("x_mm", "mm", -Point::PLACE_MOST, Point::PLACE_MOST),
    ("y_mm", "mm", -Point::PLACE_MOST, Point::PLACE_MOST),
    ("distance_mm", "mm", Point::DISTANCE.0, Point::DISTANCE.1),
    ("tilt_deg", "°", -Point::TILT_MOST, Point::TILT_MOST),
    ("fan_deg", "°", -Point::FAN_MOST, Point::FAN_MOST),
    ("trigger", "", 0.0, 1.0),
    (FAN_SHARE, "", Point::WIDE.0, Point::WIDE.1),
];
/// The name of a fan's width in files, over that of the task.
pub const FAN_SHARE: &str = "fan_share";

/// Why points are no path.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoPath {
    /// A value of a point lies outside its range.
    #[error("point {0}: {1}")]
    Value(usize, crate::quantity::OutOfRange),
    /// A point comes before the one before it.
    #[error("point {0}: `t_s` is {1}; times do not fall, the point before is at {2}")]
    Falls(usize, f64, f64),
    /// There are too few points, or too many.
    #[error("{0} points; 2 to {most} are allowed", most = Point::COUNT_MOST)]
    Count(usize),
}

/// Points in the order of time, all within their limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Path(Vec<Point>);

impl Path {
    /// Checks points.
    ///
    /// # Errors
    /// [`NoPath`] naming the first point that does not fit, and what is allowed.
    pub fn new(points: Vec<Point>) -> Result<Self, NoPath> {
        if points.len() < 2 || points.len() > Point::COUNT_MOST {
            return Err(NoPath::Count(points.len()));
        }
        let mut last = 0.0;
        for (nth, point) in points.iter().enumerate() {
            for ((name, unit, min, max), value) in LIMITS.into_iter().zip(point.values()) {
                within(name, unit, min, max, value).map_err(|outside| NoPath::Value(nth, outside))?;
            }
            if point.t < last {
                return Err(NoPath::Falls(nth, point.t, last));
            }
            last = point.t;
        }
        Ok(Self(points))
    }

    /// The points.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.0
    }
}

impl Point {
    /// Its values in the order of [`LIMITS`].
    #[must_use]
    pub const fn values(&self) -> [f64; 8] {
        [self.t, self.x, self.y, self.distance, self.tilt, self.fan, self.trigger, self.wide]
    }

    /// The point of those values, in the order of [`LIMITS`].
    #[must_use]
    pub const fn of(values: [f64; 8]) -> Self {
        let [t, x, y, distance, tilt, fan, trigger, wide] = values;
        Self { t, x, y, distance, tilt, fan, trigger, wide }
    }

    /// A point on the way to another, by a share of the way; the trigger stays.
    #[must_use]
    pub fn towards(&self, other: &Self, share: f64) -> Self {
        let mix = |from: f64, to: f64| from + (to - from) * share;
        Self {
            t: mix(self.t, other.t),
            x: mix(self.x, other.x),
            y: mix(self.y, other.y),
            distance: mix(self.distance, other.distance),
            tilt: mix(self.tilt, other.tilt),
            fan: mix(self.fan, other.fan),
            trigger: self.trigger,
            wide: mix(self.wide, other.wide),
        }
    }

    /// Distance between where two points aim, mm.
    #[must_use]
    pub fn apart(&self, other: &Self) -> f64 {
        libm::hypot(other.x - self.x, other.y - self.y)
    }
}
