//! Remarks that follow from the values of an operation and from the work, and that nobody is asked for.

use super::decision::Work;
use super::state::State;
use crate::process::technique::Pass;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::{CLEARS, COATS, Operation};
use crate::rules::sheet::{Setting, Sheet};

/// Share of the sheet's wet film under which a coat counts as a mist coat, and as thin: common practice, no source.
const MIST_UP_TO: f64 = 0.4;
const THIN_UP_TO: f64 = 0.65;

/// The remarks on an operation on parts.
pub(super) fn follows(
    state: &State,
    work: &Work,
    parts: &[usize],
    pass: &Pass,
    sheet: &Sheet,
) -> Vec<Manner> {
    let mut found = Vec::new();
    if COATS.contains(&work.operation)
        && let Some(wet) = pass.wet_um
    {
        let usual = sheet.get(Setting::ClearWet);
        if wet.get() >= sheet.get(Setting::WetWarn) {
            found.push(Manner::Heavy);
        } else if wet.get() <= usual * MIST_UP_TO {
            found.extend([Manner::Mist, Manner::Thin]);
        } else if wet.get() <= usual * THIN_UP_TO {
            found.push(Manner::Thin);
        }
    }
    if CLEARS.contains(&work.operation) && pass.fumbles(work.operation, sheet).is_empty() {
        found.push(Manner::CleanLastCoat);
    }
    // A film that had its night gives powder under the paper and not gum.
    let rested = |part: &usize| {
        let film = state.run.lying(*part).and_then(|lying| lying.film().map(|film| film.age.get()));
        film.is_some_and(|age| age >= sheet.wait(Setting::ScuffWait))
    };
    if work.operation == Operation::Level && parts.iter().all(rested) {
        found.push(Manner::Powder);
    }
    found
}
