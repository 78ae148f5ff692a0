//! A run as an answer keeps it: programmed passes as they were told, or the path of a gun in whole numbers.
//!
//! A path is thinned: a point is left out where it lies within [`NEAR`] of the straight way between those that stay, at its
//! moment, or within [`NEAR_MOST`] of it where the run would be too long else. What stays is rounded to whole steps and told
//! as the change from the point before, so that a minute at the stand takes a few kB. In JSON it is `{"passes":[…]}`, sets as [`told`] has them, or `{"hand":[…]}`: lists of milliseconds and
//! tenths of a millimetre across and down, since the point before, then fan (degrees), trigger (per cent), distance (mm),
//! tilt (degrees) and the width of the fan (per cent of that of the task), the last of which are left out where they are as
//! before; the first point tells all but the width, which is that of the task where it is untold.

use super::point::{FAN_SHARE, NoPath, Path, Point};
use super::program::{self, Passes};
use super::setup::Setup;
use super::told;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

/// Bytes of a run in JSON, our own limit: with the rest of an answer it stays within what travels between tablets.
pub const BYTES_MOST: usize = 12 * 1_024;
/// A point may be left out that lies so near to the way without it, mm: a hundredth of a spot, or about that of a small one.
pub const NEAR: f64 = 0.5;
/// A run that is too long even so is thinned within twice that, and again up to this, mm.
pub const NEAR_MOST: f64 = 4.0;
/// How much may change in all on the path of a hand, by which a few bytes could else keep a tablet busy for minutes (our own
/// limits): the distance, mm, the directions of fan and gun, degrees, and the
/// width of the fan, over that of the task.
const CHANGES_MOST: [(&str, f64); 4] =
    [("distance_mm", 10_000.0), ("fan_deg", 20_000.0), ("tilt_deg", 7_200.0), (FAN_SHARE, 100.0)];
/// How near to that between the others its direction of the fan is then, degrees.
const FAN_NEAR: f64 = 2.0;
/// And its width, over that of the task.
const WIDE_NEAR: f64 = 0.01;
/// Steps of a point in the order in which it is told: in a second, twice in a millimetre, in a degree, in a whole trigger, in
/// a millimetre, in a degree, in a fan as wide as the task sets it.
const STEPS: Steps<f64> = [1_000.0, 10.0, 10.0, 1.0, 100.0, 1.0, 1.0, 100.0];
/// Values of a point in the order in which it is told.
type Steps<T> = [T; 8];
/// Values that the first point tells at least; the one behind them is as the task sets it until it is told.
const FIRST: usize = 7;
/// What is so before the first point.
const BEFORE: Steps<i64> = [0, 0, 0, 0, 0, 0, 0, 100];
/// Values of a point that are told as the change from the one before: time and place. The rest is told as it is.
const MOVED: usize = 3;
/// Points that are looked at for one way: a second or two of a fast pointer.
const LOOKED_AT: usize = 128;

/// A run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Stored", into = "Value")]
pub enum Run {
    /// Programmed passes.
    Passes(Vec<Passes>),
    /// The path of a hand, thinned and rounded.
    Hand(Path),
}

/// A run as it is stored: with every member, and none of them twice.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Stored {
    Passes(Vec<StoredSet>),
    Hand(Vec<Vec<i64>>),
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredSet {
    line_mm: Vec<[f64; 2]>,
    wide_mm: f64,
    distance_mm: f64,
    speed_m_s: f64,
    overlap: f64,
    lead_mm: f64,
    lag_mm: f64,
    wait_s: f64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    fan_share: Option<f64>,
}

/// Why a value is no run, or a run no answer.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum NoRun {
    /// It is too long to be kept.
    #[error("a run of {0} bytes; up to {BYTES_MOST} are allowed")]
    Long(usize),
    /// It is told in another way than runs are.
    #[error("{}", .0.join("; "))]
    Told(Vec<String>),
    /// Its points are no path.
    #[error("`hand`: {0}")]
    Path(#[from] NoPath),
    /// Something changes more than any hand would change it.
    #[error("`hand`: `{0}` changes by {1:.0} in all; up to {2} are allowed")]
    Restless(&'static str, f64, f64),
}

impl Run {
    /// Programmed passes.
    ///
    /// # Errors
    /// [`NoRun::Long`] where there are too many.
    pub fn programmed(sets: Vec<Passes>) -> Result<Self, NoRun> {
        Self::Passes(sets).kept()
    }

    /// Programmed passes, or the path that they make where they take too much room, as along a curved edge.
    ///
    /// # Errors
    /// [`NoRun`] where they are no path, or both take too much.
    pub fn shortest(sets: Vec<Passes>, setup: &Setup) -> Result<Self, NoRun> {
        let path = program::path(&sets, setup)?;
        Self::programmed(sets).or_else(|_| Self::hand(&path))
    }

    /// The path of a hand, thinned no more than it must be.
    ///
    /// # Errors
    /// [`NoRun::Long`] where it is too long.
    pub fn hand(path: &Path) -> Result<Self, NoRun> {
        let mut near = NEAR;
        loop {
            let counted: Vec<Steps<i64>> = thinned(path.points(), near).into_iter().map(counted).collect();
            let run = quiet(Path::new(counted.into_iter().map(measured).collect())?)?.kept();
            if run.is_ok() || near >= NEAR_MOST {
                return run;
            }
            near *= 2.0;
        }
    }

    fn kept(self) -> Result<Self, NoRun> {
        fits(&self.told())?;
        Ok(self)
    }

    /// The path of the gun on the work of a task.
    ///
    /// # Errors
    /// [`NoPath`] where programmed passes take longer, or go farther, than a path may.
    pub fn path(&self, setup: &Setup) -> Result<Path, NoPath> {
        match self {
            Self::Passes(sets) => program::path(sets, setup),
            Self::Hand(path) => Ok(path.clone()),
        }
    }

    /// The run in JSON.
    #[must_use]
    pub fn told(&self) -> Value {
        match self {
            Self::Passes(sets) => json!({ "passes": told::passes(sets) }),
            Self::Hand(path) => {
                let mut last = None;
                let steps = path.points().iter().map(|point| {
                    let now = counted(point);
                    let step = step(last, now);
                    last = Some(now);
                    step
                });
                json!({ "hand": steps.collect::<Vec<_>>() })
            }
        }
    }
}

impl From<Run> for Value {
    fn from(run: Run) -> Self {
        run.told()
    }
}

impl TryFrom<Stored> for Run {
    type Error = NoRun;

    fn try_from(stored: Stored) -> Result<Self, NoRun> {
        serde_json::to_value(stored).map_err(|no| NoRun::Told(vec![no.to_string()]))?.try_into()
    }
}

impl TryFrom<Value> for Run {
    type Error = NoRun;

    fn try_from(told: Value) -> Result<Self, NoRun> {
        fits(&told)?;
        let one = told.as_object().filter(|map| map.len() == 1).and_then(|map| map.iter().next());
        match one {
            Some((key, sets)) if key == "passes" => {
                match told::sets_of(sets).map_err(NoRun::Told)?.as_slice() {
                    [] => Err(NoRun::Told(vec!["`passes` is empty; at least one set is allowed".to_owned()])),
                    sets => Ok(Self::Passes(sets.to_vec())),
                }
            }
            Some((key, steps)) if key == "hand" => quiet(Path::new(points(steps)?)?),
            _ => Err(NoRun::Told(vec!["one of `passes` and `hand` is needed, and nothing else".to_owned()])),
        }
    }
}

fn fits(told: &Value) -> Result<(), NoRun> {
    let bytes = told.to_string().len();
    if bytes > BYTES_MOST { Err(NoRun::Long(bytes)) } else { Ok(()) }
}

/// The path of a hand whose gun is not turned and moved to and fro beyond all use.
fn quiet(path: Path) -> Result<Run, NoRun> {
    let mut changes = [0.0; CHANGES_MOST.len()];
    for (one, next) in path.points().iter().zip(path.points().iter().skip(1)) {
        let by =
            [next.distance - one.distance, next.fan - one.fan, next.tilt - one.tilt, next.wide - one.wide];
        for (sum, by) in changes.iter_mut().zip(by) {
            *sum += f64::abs(by);
        }
    }
    match CHANGES_MOST.iter().zip(changes).find(|((_, most), sum)| sum > most) {
        Some(((name, most), sum)) => Err(NoRun::Restless(name, sum, *most)),
        None => Ok(Run::Hand(path)),
    }
}

/// What stays of points when those so near to the way between others are left out, mm.
fn thinned(points: &[Point], near: f64) -> Vec<&Point> {
    let mut stays = Vec::new();
    let mut from = 0;
    while let Some(first) = points.get(from) {
        stays.push(first);
        let farthest = points.len().min(from + LOOKED_AT);
        let beside =
            (from + 1..farthest).take_while(|to| straight(points.get(from..=*to).unwrap_or_default(), near));
        from = beside.last().unwrap_or(from + 1);
    }
    stays
}

/// Whether all points between the first and the last are so near to the way between both, mm.
fn straight(points: &[Point], near: f64) -> bool {
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return false };
    let whole = last.t - first.t;
    points.iter().skip(1).take(points.len().saturating_sub(2)).all(|point| {
        let share = if whole > 0.0 { (point.t - first.t) / whole } else { 0.0 };
        let way = first.towards(last, share);
        point.apart(&way) <= near
            && (point.distance - way.distance).abs() <= NEAR
            && (point.fan - way.fan).abs() <= FAN_NEAR
            && (point.wide - way.wide).abs() <= WIDE_NEAR
            && (point.tilt, point.trigger) == (way.tilt, way.trigger)
    })
}

/// A point in steps.
#[allow(clippy::cast_possible_truncation, reason = "values of a path are within a few millions of steps")]
fn counted(point: &Point) -> Steps<i64> {
    let Point { t, x, y, distance, tilt, fan, trigger, wide } = *point;
    let mut steps = BEFORE;
    for (step, (value, each)) in
        steps.iter_mut().zip([t, x, y, fan, trigger, distance, tilt, wide].into_iter().zip(STEPS))
    {
        *step = libm::round(value * each) as i64;
    }
    steps
}

/// The point of so many steps.
#[allow(
    clippy::cast_precision_loss,
    reason = "whole numbers up to 2^53 are exact, and a path ends far below"
)]
fn measured(steps: Steps<i64>) -> Point {
    let mut values = STEPS;
    for (value, (step, each)) in values.iter_mut().zip(steps.into_iter().zip(STEPS)) {
        *value = step as f64 / each;
    }
    let [t, x, y, fan, trigger, distance, tilt, wide] = values;
    Point { t, x, y, distance, tilt, fan, trigger, wide }
}

/// A point as it is told after another.
fn step(last: Option<Steps<i64>>, now: Steps<i64>) -> Vec<i64> {
    let before = last.unwrap_or(BEFORE);
    let least = if last.is_none() { FIRST } else { MOVED };
    let pairs = now.iter().zip(before).enumerate();
    let changed = |(nth, (now, before)): &(usize, (&i64, i64))| *nth < least || **now != *before;
    let length = pairs.clone().rfind(changed).map_or(0, |(nth, _)| nth + 1);
    pairs.take(length).map(|(nth, (now, before))| if nth < MOVED { now - before } else { *now }).collect()
}

/// The points of steps in JSON.
fn points(told: &Value) -> Result<Vec<Point>, NoRun> {
    let refuse = |place: &str, found: &Value| {
        let lists =
            "lists of 3 to 8 whole numbers: ms, 0.1 mm, 0.1 mm since the point before, °, %, mm, °, %";
        NoRun::Told(vec![format!(
            "`hand{place}` is {found}; {lists} are allowed, the first one of {FIRST} at least"
        )])
    };
    let list = told.as_array().ok_or_else(|| refuse("", told))?;
    let mut last: Option<Steps<i64>> = None;
    let mut points = Vec::new();
    for (nth, step) in list.iter().enumerate() {
        let refused = || refuse(&format!("[{nth}]"), step);
        let values: Option<Vec<i64>> =
            step.as_array().and_then(|values| values.iter().map(Value::as_i64).collect());
        let mut now = last.unwrap_or(BEFORE);
        let least = if last.is_none() { FIRST } else { MOVED };
        match values.as_deref() {
            Some(values) if (least..=now.len()).contains(&values.len()) => {
                for (at, (now, value)) in now.iter_mut().zip(values).enumerate() {
                    *now = if at < MOVED { now.checked_add(*value).ok_or_else(refused)? } else { *value };
                }
            }
            _ => return Err(refused()),
        }
        points.push(measured(now));
        last = Some(now);
    }
    Ok(points)
}
