//! A plain job.

use super::content;
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};

/// A job on those woods: full gloss, oil-based filler, no colour, no binding.
pub(crate) fn job(woods: &[&str]) -> Job {
    let content = content();
    let wood = |slug: &&str| Part::of(content.wood(slug).unwrap_or_else(|| panic!("no wood {slug}")));
    Job {
        parts: woods.iter().map(wood).collect(),
        look: Look::LevelGloss,
        class: WorkClass::InstrumentGloss,
        colour: ColourPlan::Natural,
        water_dye: false,
        shaded: false,
        binding: Binding::None,
        filler: Filler::OilPaste,
        coating: Coating::Nitrocellulose,
        melts: true,
    }
}
