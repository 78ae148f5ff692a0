//! A run as it is told in JSON: a task and a path or programmed passes; every mistake with its place and what is allowed.

use super::good;
use super::outline::Place;
use super::point::{self, FAN_SHARE, NoPath, Path, Point};
use super::program::{self, Passes};
use super::setup::{AS_SET, Setup};
use crate::content::Content;
use crate::judge::document::{At, Fields, Mistakes};
use serde_json::{Value, json};

/// Keys of a run.
const KEYS: [&str; 4] = ["task", "sheet", "path", "passes"];
/// The key of a set's line.
const LINE: &str = "line_mm";
/// Most sets of passes, and most places of a line.
const SETS_MOST: usize = 1_000;
const LINE_MOST: usize = 1_000;
/// What is taken where it is not told: a gun held square, its fan upright and as wide as the task sets it.
const UNTOLD: [(&str, f64); 3] = [("tilt_deg", 0.0), ("fan_deg", 90.0), (FAN_SHARE, AS_SET)];
/// What is taken of a set where it is not told: one pass, at half an overlap, without a wait, the fan as the task sets it.
const UNTOLD_OF_SET: [(&str, f64); 4] =
    [("wide_mm", 0.0), ("overlap", good::TAUGHT_OVERLAP), ("wait_s", 0.0), (FAN_SHARE, AS_SET)];

/// A number's name, its least and its greatest.
type Limit = (&'static str, f64, f64);
/// Narrowest and widest fan, over that of the task.
type Fans = (f64, f64);

/// Reads a run.
///
/// # Errors
/// Every mistake with its place in the document, what stands there and what is allowed.
pub fn read(document: &Value, content: &Content) -> Result<(Setup, Path), Vec<String>> {
    let mut mistakes = Mistakes::default();
    let run = run(document, content, &mut mistakes);
    match run {
        Some(run) if mistakes.0.is_empty() => Ok(run),
        _ => Err(mistakes.0),
    }
}

/// A task by its name, on its own sheet.
///
/// # Errors
/// The names that are known.
pub fn task(slug: &str, content: &Content) -> Result<Setup, Vec<String>> {
    let mut mistakes = Mistakes::default();
    setup(&json!({ "task": slug }), content, &mut mistakes).ok_or(mistakes.0)
}

/// Programmed passes as a run tells them.
#[must_use]
pub fn passes(sets: &[Passes]) -> Value {
    let set = |set: &Passes| {
        // A fan as the task sets it is not told: passes were told before it could be set.
        let numbers = program::LIMITS.iter().zip(set.numbers());
        let numbers = numbers.filter(|((key, ..), value)| *key != FAN_SHARE || *value != AS_SET);
        let numbers = numbers.map(|((key, ..), value)| (*key, json!(value)));
        let line = set.line.iter().map(|(x, y)| json!([x, y])).collect();
        let line = core::iter::once((LINE, Value::Array(line)));
        line.chain(numbers).map(|(key, value)| (key.to_owned(), value)).collect::<serde_json::Map<_, _>>()
    };
    sets.iter().map(|one| Value::Object(set(one))).collect()
}

/// Programmed passes as a run tells them, read.
///
/// # Errors
/// Every mistake with its place among them.
pub fn sets_of(told: &Value) -> Result<Vec<Passes>, Vec<String>> {
    let mut mistakes = Mistakes::default();
    let sets = sets(&At::whole(told), Point::WIDE, &mut mistakes);
    if mistakes.0.is_empty() { Ok(sets) } else { Err(mistakes.0) }
}

fn setup(document: &Value, content: &Content, mistakes: &mut Mistakes) -> Option<Setup> {
    let fields = At::whole(document).fields(&KEYS, mistakes)?;
    let slugs: Vec<&str> = content.sprays.iter().map(|task| task.slug.as_str()).collect();
    let task = content.sprays.get(fields.need("task", mistakes)?.among(&slugs, mistakes)?)?;
    let sheets: Vec<&str> = content.sheets.iter().map(|sheet| sheet.slug.as_str()).collect();
    match fields.get("sheet") {
        None => Setup::of(task, content),
        Some(at) => Some(Setup::on(task, content.sheets.get(at.among(&sheets, mistakes)?)?)),
    }
}

fn run(document: &Value, content: &Content, mistakes: &mut Mistakes) -> Option<(Setup, Path)> {
    let setup = setup(document, content, mistakes)?;
    let fields = At::whole(document).fields(&KEYS, mistakes)?;
    let (key, path) = match (fields.get("path"), fields.get("passes")) {
        (Some(at), None) => ("path", Path::new(points(&at, setup.fans(), mistakes))),
        (None, Some(at)) => ("passes", program::path(&sets(&at, setup.fans(), mistakes), &setup)),
        _ => {
            mistakes.0.push("one of `path` and `passes` is needed, and no more".to_owned());
            return None;
        }
    };
    // Where a value was refused already, what is missing for it tells nothing more.
    if mistakes.0.is_empty()
        && let Err(no) = &path
    {
        mistakes.0.push(refused(key, no));
    }
    path.ok().map(|path| (setup, path))
}

/// Why there is no path; passes have no points that whoever told them could count.
fn refused(key: &str, no: &NoPath) -> String {
    match no {
        NoPath::Value(_, outside) if key == "passes" => format!("`passes`: on their way {outside}"),
        NoPath::Count(count) if key == "passes" && *count > 0 => {
            format!(
                "`passes`: {count} changes of the gun on their way; up to {} are allowed",
                Point::COUNT_MOST
            )
        }
        NoPath::Count(_) if key == "passes" => "`passes`: none; one set is needed at least".to_owned(),
        _ => format!("`{key}`: {no}"),
    }
}

fn points(at: &At<'_>, fans: Fans, mistakes: &mut Mistakes) -> Vec<Point> {
    let list = at.list(mistakes);
    if list.len() > Point::COUNT_MOST {
        at.refuse(&format!("2 to {} points", Point::COUNT_MOST), mistakes);
        return Vec::new();
    }
    let keys = point::LIMITS.map(|(key, ..)| key);
    let read = |one: &At<'_>, mistakes: &mut Mistakes| {
        let fields = one.fields(&keys, mistakes)?;
        let limits = point::LIMITS.map(|(key, _, min, max)| (key, min, max));
        numbers(&fields, of_gun(limits, fans), &UNTOLD, mistakes).map(Point::of)
    };
    list.iter().filter_map(|one| read(one, mistakes)).collect()
}

/// Limits with the narrowest and the widest fan of a gun.
fn of_gun<const N: usize>(limits: [Limit; N], (narrowest, widest): Fans) -> [Limit; N] {
    limits.map(
        |(key, least, most)| {
            if key == FAN_SHARE { (key, narrowest, widest) } else { (key, least, most) }
        },
    )
}

/// Numbers within their limits, in their order; those that may be untold are taken as given.
fn numbers<const N: usize>(
    fields: &Fields<'_>,
    limits: [Limit; N],
    untold: &[(&str, f64)],
    mistakes: &mut Mistakes,
) -> Option<[f64; N]> {
    let found = limits.map(|(key, min, max)| {
        let taken = untold.iter().find(|(name, _)| *name == key).map(|(_, value)| *value);
        match (fields.get(key), taken) {
            (None, Some(value)) => Some(value),
            _ => fields.need(key, mistakes).and_then(|at| at.number(min, max, mistakes)),
        }
    });
    found.iter().all(Option::is_some).then(|| found.map(Option::unwrap_or_default))
}

fn sets(at: &At<'_>, fans: Fans, mistakes: &mut Mistakes) -> Vec<Passes> {
    let list = at.list(mistakes);
    if list.len() > SETS_MOST {
        mistakes.0.push(format!("`{}` has {} sets; up to {SETS_MOST} are allowed", at.path(), list.len()));
        return Vec::new();
    }
    let mut keys = vec![LINE];
    keys.extend(program::LIMITS.map(|(key, ..)| key));
    let read = |one: &At<'_>, mistakes: &mut Mistakes| {
        let fields = one.fields(&keys, mistakes)?;
        let values = numbers(&fields, of_gun(program::LIMITS, fans), &UNTOLD_OF_SET, mistakes);
        let line = line(&fields.need(LINE, mistakes)?, mistakes)?;
        values.map(|values| Passes::of(line, values))
    };
    list.iter().filter_map(|one| read(one, mistakes)).collect()
}

fn line(at: &At<'_>, mistakes: &mut Mistakes) -> Option<Vec<Place>> {
    let places = at.list(mistakes);
    if !(2..=LINE_MOST).contains(&places.len()) {
        at.refuse(&format!("2 to {LINE_MOST} places [x, y] in mm"), mistakes);
        return None;
    }
    let place = |one: &At<'_>, mistakes: &mut Mistakes| {
        let both = one.list(mistakes);
        let [x, y] = both.as_slice() else {
            one.refuse("a place [x, y] in mm", mistakes);
            return None;
        };
        let number =
            |at: &At<'_>, mistakes: &mut Mistakes| at.number(-Point::PLACE_MOST, Point::PLACE_MOST, mistakes);
        Some((number(x, mistakes)?, number(y, mistakes)?))
    };
    let found: Vec<Place> = places.iter().filter_map(|one| place(one, mistakes)).collect();
    (found.len() == places.len()).then_some(found)
}
