//! One step of a description.

use super::document::{At, Fields, Mistakes};
use crate::content::Content;
use crate::process::technique::Pass;
use crate::quantity::{Celsius, Hours, RelativeHumidity};
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::plan::{Climate, Step, Told};
use crate::rules::term::Term;

/// Most coats of one step.
const COATS_MOST: u32 = 40;
/// Coarsest and finest grit, P grade (ISO 6344 and the papers beyond it).
const GRITS: (u32, u32) = (12, 10_000);
/// Keys of a step.
const KEYS: [&str; 11] = [
    "operation",
    "part",
    "after_h",
    "coats",
    "between_h",
    "grit",
    "mix_age_h",
    "air",
    "how",
    "untold",
    "pass",
];
/// What may be untold of a step besides its remarks.
const VALUES: [&str; 6] = ["after_h", "coats", "between_h", "grit", "mix_age_h", "air"];

/// Reads a step.
pub(super) fn read(
    at: &At<'_>,
    parts: &[String],
    content: &Content,
    mistakes: &mut Mistakes,
) -> Option<(Step, Pass)> {
    let fields = at.fields(&KEYS, mistakes)?;
    let untold = untold(&fields, mistakes);
    let mut step = Step::of(fields.need_term("operation", mistakes)?);
    let names: Vec<&str> = parts.iter().map(String::as_str).collect();
    step.part = fields.get("part").and_then(|at| at.among(&names, mistakes));
    step.after = value(&fields, "after_h", &untold, mistakes, hours);
    step.between = value(&fields, "between_h", &untold, mistakes, hours);
    step.mix_age = value(&fields, "mix_age_h", &untold, mistakes, hours);
    step.coats = value(&fields, "coats", &untold, mistakes, |at, mistakes| at.count(1, COATS_MOST, mistakes));
    step.grit =
        value(&fields, "grit", &untold, mistakes, |at, mistakes| at.count(GRITS.0, GRITS.1, mistakes));
    step.climate = value(&fields, "air", &untold, mistakes, |at, mistakes| {
        climate(&at.fields(&["air_c", "rh", "work_c"], mistakes)?, content, mistakes)
    });
    step.manners = remarks(&fields, mistakes);
    step.unknown = untold.iter().filter_map(|slug| Manner::from_slug(slug)).collect();
    if let Some(both) = step.manners.iter().find(|manner| step.unknown.contains(manner)) {
        mistakes.0.push(format!("`{}` holds and is untold: `{}`", at.path(), both.slug()));
    }
    let pass = fields.get("pass").and_then(|at| at.parsed(mistakes)).unwrap_or_default();
    Some((step, pass))
}

/// A value that is told, untold, or left as the sheet asks; never told and untold.
fn value<T>(
    fields: &Fields<'_>,
    key: &str,
    untold: &[String],
    mistakes: &mut Mistakes,
    read: impl Fn(&At<'_>, &mut Mistakes) -> Option<T>,
) -> Told<T> {
    let unknown = untold.iter().any(|one| one == key);
    match fields.get(key) {
        Some(at) if unknown => {
            at.refuse("a value, or its key under `untold`, not both", mistakes);
            Told::Untold
        }
        Some(at) => read(&at, mistakes).map_or(Told::Kept, Told::Is),
        None if unknown => Told::Untold,
        None => Told::Kept,
    }
}

fn hours(at: &At<'_>, mistakes: &mut Mistakes) -> Option<Hours> {
    at.number(Hours::MIN, Hours::MAX, mistakes).map(Hours::saturating)
}

/// Air, humidity and the surface of the work, which has the warmth of the air unless told.
pub(super) fn climate(fields: &Fields<'_>, content: &Content, mistakes: &mut Mistakes) -> Option<Climate> {
    let air = fields.need("air_c", mistakes).and_then(|at| at.fact(content, "air_c", mistakes));
    let humidity = fields.need("rh", mistakes).and_then(|at| at.fact(content, "rh", mistakes));
    let work = match fields.get("work_c") {
        Some(at) => at.fact(content, "work_c", mistakes),
        None => air,
    };
    Some(Climate {
        air: Celsius::saturating(air?),
        work: Celsius::saturating(work?),
        humidity: RelativeHumidity::saturating(humidity?),
    })
}

fn remarks(fields: &Fields<'_>, mistakes: &mut Mistakes) -> Vec<Manner> {
    let list = fields.get("how").map(|at| at.list(mistakes)).unwrap_or_default();
    list.iter().filter_map(|at| at.term(mistakes)).collect()
}

/// Keys and remarks of which nothing is known.
fn untold(fields: &Fields<'_>, mistakes: &mut Mistakes) -> Vec<String> {
    let list = fields.get("untold").map(|at| at.list(mistakes)).unwrap_or_default();
    let allowed: Vec<&str> =
        VALUES.into_iter().chain(Manner::ALL.iter().map(|manner| manner.slug())).collect();
    let named = list.iter().filter_map(|at| at.among(&allowed, mistakes));
    named.filter_map(|place| allowed.get(place)).map(|slug| (*slug).to_owned()).collect()
}
