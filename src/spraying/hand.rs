//! A hand that sprays: where it aims at which moment, as a screen tells it, made into the points of a path.
//!
//! Time between strokes counts, since film flashes off meanwhile, up to [`REST_MOST`] a rest: a tablet that was laid down
//! does not spray on. Longer waits are told by [`Hand::wait`].

use super::point::{NoPath, Path, Point};
use crate::quantity::MS_A_SECOND;

/// Longest rest between two strokes that counts by itself, s.
pub const REST_MOST: f64 = 60.0;
/// A hand that lets go of the trigger moves on as it went for so long, s: longer than any gun takes to close.
const FOLLOWS: f64 = 0.15;
/// How it went is read off its last stretch of so long, s.
const STRETCH: f64 = 0.05;
/// Points that a run leaves free for its end.
const SPARE: usize = 4;

/// Where a hand aims and how it holds the gun.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aim {
    /// Place on the work, mm to the right of its axis.
    pub x: f64,
    /// Place, mm from the top of the work downwards.
    pub y: f64,
    /// Distance of the gun, mm.
    pub distance: f64,
    /// Direction of the long side of the fan, degrees from the x axis towards the y axis.
    pub fan: f64,
    /// How wide the fan is set, over how wide the task sets it.
    pub wide: f64,
}

/// A run of a hand so far.
#[derive(Debug, Clone, Default)]
pub struct Hand {
    points: Vec<Point>,
    /// When the last point was taken, ms on the clock of the screen.
    seen: f64,
    /// Waited since the last point, s.
    waited: f64,
    /// The first point of this stroke.
    stroke: usize,
}

impl Hand {
    /// The trigger is pulled at a moment, ms on the clock of the screen. `None` where the run is full.
    pub fn pull(&mut self, at: f64, aim: Aim) -> Option<Point> {
        let rest = ((at - self.seen) / MS_A_SECOND).clamp(0.0, REST_MOST) + self.waited;
        let t = self.points.last().map_or(0.0, |last| last.t + rest);
        self.stroke = self.points.len();
        self.push(at, Self::point(t, aim, 1.0))
    }

    /// The gun is moved on with the trigger pulled. `None` for a moment not after the last one, or where the run is full.
    pub fn go(&mut self, at: f64, aim: Aim) -> Option<Point> {
        let last = *self.points.last().filter(|last| last.trigger > 0.0)?;
        let later = (at - self.seen) / MS_A_SECOND;
        if later <= 0.0 {
            return None;
        }
        self.push(at, Self::point(last.t + later, aim, 1.0))
    }

    /// The trigger is let go where the gun is. The gun moves on a little meanwhile: both points, none without a stroke.
    pub fn let_go(&mut self, at: f64) -> Option<[Point; 2]> {
        let last = *self.points.last().filter(|last| last.trigger > 0.0)?;
        let begun = self.points.get(self.stroke..).unwrap_or_default();
        let from = begun.iter().rfind(|point| point.t <= last.t - STRETCH).or(begun.first()).copied()?;
        let spent = last.t - from.t;
        let speed = |from: f64, to: f64| if spent > 0.0 { (to - from) / spent } else { 0.0 };
        let (vx, vy) = (speed(from.x, last.x), speed(from.y, last.y));
        let late = ((at - self.seen) / MS_A_SECOND).clamp(0.0, FOLLOWS);
        let on = |more: f64| Point {
            t: (last.t + more).min(Point::TIME_MOST),
            x: (last.x + vx * more).clamp(-Point::PLACE_MOST, Point::PLACE_MOST),
            y: (last.y + vy * more).clamp(-Point::PLACE_MOST, Point::PLACE_MOST),
            trigger: 0.0,
            ..last
        };
        let both = [on(late), on(late + FOLLOWS)];
        self.points.extend(both);
        self.seen = at + FOLLOWS * MS_A_SECOND;
        Some(both)
    }

    /// Waits with the trigger let go, s.
    pub fn wait(&mut self, seconds: f64) {
        if !self.points.is_empty() {
            self.waited += seconds;
        }
    }

    /// The moment of the run that is now, s: that of the last point, and what was waited since.
    #[must_use]
    pub fn now(&self) -> f64 {
        self.points.last().map_or(0.0, |last| last.t) + self.waited
    }

    /// When the last point was taken, ms on the clock of the screen.
    #[must_use]
    pub const fn seen(&self) -> f64 {
        self.seen
    }

    /// Whether nothing was sprayed yet.
    #[must_use]
    pub const fn is_bare(&self) -> bool {
        self.points.is_empty()
    }

    /// Whether no further stroke fits into the run.
    #[must_use]
    pub fn is_full(&self) -> bool {
        self.points.len() + SPARE > Point::COUNT_MOST || self.now() + REST_MOST > Point::TIME_MOST
    }

    /// The path of the run.
    ///
    /// # Errors
    /// [`NoPath`] where nothing was sprayed.
    pub fn path(&self) -> Result<Path, NoPath> {
        Path::new(self.points.clone())
    }

    fn point(t: f64, aim: Aim, trigger: f64) -> Point {
        let Aim { x, y, distance, fan, wide } = aim;
        let held = |value: f64, (least, most): (f64, f64)| value.clamp(least, most);
        Point {
            t,
            x: held(x, (-Point::PLACE_MOST, Point::PLACE_MOST)),
            y: held(y, (-Point::PLACE_MOST, Point::PLACE_MOST)),
            distance: held(distance, Point::DISTANCE),
            tilt: 0.0,
            fan: held(fan, (-Point::FAN_MOST, Point::FAN_MOST)),
            trigger,
            wide: held(wide, Point::WIDE),
        }
    }

    fn push(&mut self, at: f64, point: Point) -> Option<Point> {
        if self.points.len() + SPARE > Point::COUNT_MOST || point.t > Point::TIME_MOST - FOLLOWS * 2.0 {
            return None;
        }
        (self.seen, self.waited) = (at, 0.0);
        self.points.push(point);
        Some(point)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AIM: Aim = Aim { x: 0.0, y: 100.0, distance: 200.0, fan: 90.0, wide: 1.0 };

    fn stroke(hand: &mut Hand, begin: f64) {
        let pulled = hand.pull(begin, AIM);
        assert!(pulled.is_some());
        for step in [1.0, 2.0, 3.0] {
            let moved = hand.go(begin + step * 20.0, Aim { x: step * 6.0, ..AIM });
            assert!(moved.is_some());
        }
    }

    #[test]
    fn a_stroke_is_a_path_and_the_gun_moves_on_as_it_went() {
        let mut hand = Hand::default();
        stroke(&mut hand, 5_000.0);
        let [up, on] = hand.let_go(5_070.0).expect("a stroke");
        // 6 mm in 20 ms are 0.3 m/s.
        assert!((up.x - 21.0).abs() < 1e-9 && (on.x - up.x - 45.0).abs() < 1e-9);
        assert!((up.t - 0.07).abs() < 1e-9 && up.trigger == 0.0);
        let path = hand.path().expect("a path");
        assert_eq!(path.points().len(), 6);
    }

    #[test]
    fn a_moment_that_is_over_is_left_out() {
        let mut hand = Hand::default();
        stroke(&mut hand, 0.0);
        assert_eq!(hand.go(60.0, AIM), None);
        assert_eq!(hand.go(10.0, AIM), None);
        assert!(hand.go(61.0, AIM).is_some());
    }

    #[test]
    fn a_rest_counts_up_to_its_most_and_a_wait_as_it_is_told() {
        let mut hand = Hand::default();
        stroke(&mut hand, 0.0);
        hand.let_go(60.0);
        let end = hand.now();
        hand.wait(120.0);
        let next = hand.pull(1e9, AIM).expect("room for more");
        assert!((next.t - end - 120.0 - REST_MOST).abs() < 1e-9);
        assert!(!hand.is_full());
    }

    #[test]
    fn a_full_run_takes_no_more_and_is_a_path_still() {
        let mut hand = Hand::default();
        stroke(&mut hand, 0.0);
        hand.let_go(60.0);
        hand.wait(Point::TIME_MOST);
        assert!(hand.is_full());
        assert_eq!(hand.pull(100.0, AIM), None);
        assert!(hand.path().is_ok());
    }
}
