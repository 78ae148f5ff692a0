//! Setups, paths and hands that the tests share.

use crate::support::content;
use stepboard::content::SprayTask;
use stepboard::rules::sheet::{Setting, Sheet};
use stepboard::spraying::{Path, Point, Setup};

/// A task that ships, on its own sheet.
pub(crate) fn setup(slug: &str) -> Setup {
    let content = content();
    let task = content.sprays.iter().find(|task| task.slug == slug).expect("the task ships");
    Setup::of(task, &content).expect("its sheet ships")
}

/// The flat panel with a gun that is open at once, of which all lands, and a fan of a taper: so that closed forms hold.
pub(crate) fn plain(taper: f64) -> Setup {
    let content = content();
    let sheet: Sheet = content.sheets.first().expect("a sheet ships").clone();
    let mut task: SprayTask = content.sprays.first().expect("a task ships").clone();
    task.gun.opens_s = second(0.0);
    task.gun.landing = share(1.0);
    let held = stepboard::rules::sheet::Held { value: taper, floor: 1.0, ceiling: 5.0 };
    let values = stepboard::rules::term::Term::ALL
        .iter()
        .map(|setting: &Setting| if *setting == Setting::FanTaper { held } else { sheet.held(*setting) });
    let sheet = Sheet::new(sheet.slug.clone(), sheet.coating(), values.collect());
    Setup::on(&task, &sheet)
}

pub(crate) fn second(value: f64) -> stepboard::quantity::Seconds {
    stepboard::quantity::Seconds::new(value).expect("a time")
}

pub(crate) fn share(value: f64) -> stepboard::quantity::Fraction {
    stepboard::quantity::Fraction::new(value).expect("a share")
}

/// A gun held square and open at 200 mm, its fan upright.
pub(crate) fn at(t: f64, x: f64, y: f64) -> Point {
    Point { t, x, y, distance: 200.0, tilt: 0.0, fan: 90.0, trigger: 1.0, wide: 1.0 }
}

pub(crate) fn path(points: &[Point]) -> Path {
    Path::new(points.to_vec()).expect("a path")
}

/// A hand that goes to and fro over the panel, never quite straight, even or steady: what it does at a time, s. It pulls
/// the trigger at 0.2 s and lets go at 7.8 s.
pub(crate) fn hand(t: f64) -> Point {
    use std::f64::consts::TAU;
    let turn = (TAU * t / 4.0).cos();
    Point {
        t,
        x: -260.0 * turn,
        y: 40.0 + 25.0 * t + 6.0 * (TAU * t / 1.7).sin(),
        distance: 190.0 + 25.0 * (TAU * t / 2.3).sin(),
        tilt: 8.0 * (TAU * t / 3.1).sin(),
        fan: 90.0 + 10.0 * (TAU * t / 2.9).sin(),
        trigger: if (0.2..7.8).contains(&t) { 1.0 } else { 0.0 },
        wide: 1.0,
    }
}

/// The hand, seen so many times a second, and at the moments at which the trigger changes.
pub(crate) fn seen(a_second: u32) -> Path {
    let count = 8 * a_second;
    let mut points: Vec<Point> = (0..=count).map(|nth| hand(f64::from(nth) / f64::from(a_second))).collect();
    points.extend([hand(0.2), hand(7.8)]);
    points.sort_by(|a, b| a.t.total_cmp(&b.t));
    path(&points)
}

/// How far before and behind a moment a hand looks that goes along a path, s, and at how many moments of it: it rounds the
/// corners.
const ROUNDED: (f64, u32) = (0.12, 12);

/// Where a path is at a moment.
fn on(path: &Path, moment: f64) -> Point {
    let points = path.points();
    let next = points.partition_point(|point| point.t <= moment).clamp(1, points.len() - 1);
    let (from, to) = (points[next - 1], points[next]);
    let share = if to.t > from.t { ((moment - from.t) / (to.t - from.t)).clamp(0.0, 1.0) } else { 0.0 };
    from.towards(&to, share)
}

/// A hand that goes along a path, rounds its corners and never quite keeps to it, seen so many times a second and at the
/// moments at which the trigger changes.
pub(crate) fn along(path: &Path, a_second: u32) -> Path {
    use std::f64::consts::TAU;
    let unsteady = |point: Point| {
        let swing = |size: f64, time: f64| size * (TAU * point.t / time).sin();
        let (far, count) = ROUNDED;
        let looked =
            (0..=count).map(|nth| on(path, point.t + far * (f64::from(2 * nth) / f64::from(count) - 1.0)));
        let (mut x, mut y, mut fan) = (0.0, 0.0, 0.0);
        for one in looked {
            let weight = 1.0 / f64::from(count + 1);
            (x, y, fan) = (x + one.x * weight, y + one.y * weight, fan + one.fan * weight);
        }
        Point {
            x: x + swing(4.0, 1.9),
            y: y + swing(3.0, 2.6),
            distance: point.distance + swing(8.0, 2.3),
            tilt: swing(6.0, 3.1),
            fan: fan + swing(8.0, 2.9),
            ..point
        }
    };
    let mut seen = Vec::new();
    let mut trigger = None;
    for pair in path.points().windows(2) {
        let (from, to) = (pair[0], pair[1]);
        if trigger != Some(from.trigger) {
            seen.push(unsteady(from));
            trigger = Some(from.trigger);
        }
        let mut moment = (from.t * f64::from(a_second)).floor() + 1.0;
        while from.trigger > 0.0 && moment / f64::from(a_second) < to.t {
            let share = (moment / f64::from(a_second) - from.t) / (to.t - from.t);
            seen.push(unsteady(from.towards(&to, share)));
            moment += 1.0;
        }
    }
    seen.extend(path.points().last().map(|last| unsteady(*last)));
    Path::new(seen).expect("a path")
}
