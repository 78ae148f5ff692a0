//! A gun that is moved: takes points one after another and lays what leaves it.

use super::film::Film;
use super::grid::{Grid, Window};
use super::point::{Path, Point};
use super::setup::{FILM_A_ML, Setup};
use stepboard_picture::Spot;

/// Longest step while the flow follows the trigger, s: the flow is taken as even within one.
const RAMP_STEP: f64 = 0.01;
/// Longest step in time, s: solvent leaves meanwhile.
const TIME_STEP: f64 = 0.25;
/// Greatest change of the distance, and of the width of the fan, in a step, as a share of it.
const WIDTH_STEP: f64 = 0.02;
/// Greatest turn of the fan, and change of tilt, in a step, degrees.
const TURN_STEP: f64 = 2.0;
/// Most steps from one point to the next.
const STEPS_MOST: f64 = 4_096.0;

/// Where the material went, mL.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Paint {
    /// Left the gun.
    pub sprayed: f64,
    /// Never reached the face: bounced off or drifted away.
    pub lost: f64,
    /// Landed on the face or beside it.
    pub landed: f64,
}

/// A gun at work on a face.
#[derive(Debug, Clone)]
pub struct Sprayer {
    setup: Setup,
    spot: Spot,
    film: Film,
    at: Option<Point>,
    /// Share of the full flow that leaves the gun now.
    open: f64,
    paint: Paint,
}

impl Sprayer {
    /// A gun at rest before a bare face.
    #[must_use]
    pub fn new(setup: Setup, grid: Grid) -> Self {
        let film = Film::bare(grid, setup.task.flash_s.get());
        Self::over(setup, film)
    }

    /// A gun at rest before a face on which a film lies.
    #[must_use]
    pub fn over(setup: Setup, film: Film) -> Self {
        let spot = Spot::of_taper(setup.sheet.get(crate::rules::sheet::Setting::FanTaper));
        Self { setup, spot, film, at: None, open: 0.0, paint: Paint::default() }
    }

    /// Sprays a whole path on a bare face.
    #[must_use]
    pub fn spray(setup: &Setup, grid: Grid, path: &Path) -> Self {
        let mut sprayer = Self::new(setup.clone(), grid);
        for point in path.points() {
            sprayer.to(*point);
        }
        sprayer
    }

    /// Moves the gun on to a point and gives the cells that it may have touched. Points come in the order of time; the first
    /// one only tells where it begins.
    pub fn to(&mut self, point: Point) -> Window {
        self.at.replace(point).map_or_else(Window::default, |from| self.run(from, point))
    }

    /// From one point to the next: first as long as the flow follows the trigger, then evenly.
    fn run(&mut self, from: Point, to: Point) -> Window {
        let time = to.t - from.t;
        if time <= 0.0 {
            return Window::default();
        }
        let opens = self.setup.task.gun.opens_s.get();
        let ramp = ((from.trigger - self.open).abs() * opens).min(time);
        let until = from.towards(&to, ramp / time);
        let mut touched = Window::default();
        if ramp > 0.0 {
            let rise = (from.trigger - self.open).signum() * ramp / opens;
            touched = self.steps(from, until, rise, (ramp / RAMP_STEP).ceil());
        }
        self.open = if ramp < time { from.trigger } else { self.open };
        if self.open > 0.0 && ramp < time {
            touched = touched.with(&self.steps(until, to, 0.0, 1.0));
        }
        touched
    }

    /// Lays a way on which the flow rises by so much, in so many steps at least.
    fn steps(&mut self, from: Point, to: Point, rise: f64, least: f64) -> Window {
        let change = |from: f64, to: f64, step: f64| ((to - from).abs() / step).ceil();
        let count = least
            .max(change(from.t, to.t, TIME_STEP))
            .max(change(from.distance, to.distance, WIDTH_STEP * from.distance.min(to.distance)))
            .max(change(from.wide, to.wide, WIDTH_STEP * from.wide.min(to.wide)))
            .max(change(from.fan, to.fan, TURN_STEP))
            .max(change(from.tilt, to.tilt, TURN_STEP))
            .min(STEPS_MOST);
        let time = (to.t - from.t) / count;
        let mut begin = from;
        let mut step = 1.0;
        let mut touched = Window::default();
        while step <= count {
            let end = from.towards(&to, step / count);
            let open = self.open + rise / count / 2.0;
            let volume = self.setup.flow() * open * time;
            self.open += rise / count;
            let piece = self.setup.piece(&begin, &end, volume);
            let landed = piece.lands / FILM_A_ML;
            self.paint.sprayed += volume;
            self.paint.landed += landed;
            self.paint.lost += volume - landed;
            touched = touched.with(&self.film.lay(&self.spot, &piece));
            begin = end;
            step += 1.0;
        }
        touched
    }

    /// The film so far.
    #[must_use]
    pub const fn film(&self) -> &Film {
        &self.film
    }

    /// Where the material went so far.
    #[must_use]
    pub const fn paint(&self) -> Paint {
        self.paint
    }

    /// The task that is worked on.
    #[must_use]
    pub const fn setup(&self) -> &Setup {
        &self.setup
    }
}
