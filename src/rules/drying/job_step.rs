//! The operations of a time plan, and how long each keeps the hands busy.

use crate::quantity::Hours;
use crate::rules::sheet::{Setting, Sheet};
use crate::terms;

terms! {
    /// Operations of a job, as the time plan counts them.
    JobStep {
        /// Sanding and cleaning one part.
        Prepare = "prepare",
        /// Staining one part.
        Stain = "stain",
        /// Washcoat on one part.
        Washcoat = "washcoat",
        /// Filling one part and wiping it off.
        Fill = "fill",
        /// Seal coat on one part.
        Seal = "seal",
        /// One pass of colour.
        Colour = "colour",
        /// Shading the edge.
        Shade = "shade",
        /// Thin clear over the colour.
        Protect = "protect",
        /// Scraping the binding.
        Scrape = "scrape",
        /// Inspecting.
        Inspect = "inspect",
        /// One clear coat.
        Clear = "clear",
        /// Scuff sanding before the coats of another day.
        Scuff = "scuff",
        /// Levelling.
        Level = "level",
        /// Buffing.
        Buff = "buff",
    }
}

impl JobStep {
    /// Hours at the bench or in the booth, by the shop sheet.
    #[must_use]
    pub fn work(self, sheet: &Sheet) -> Hours {
        sheet.hours(match self {
            Self::Prepare => Setting::WorkPrepare,
            Self::Fill => Setting::WorkFill,
            Self::Stain | Self::Washcoat | Self::Seal | Self::Colour | Self::Protect | Self::Clear => {
                Setting::WorkCoat
            }
            Self::Shade => Setting::WorkShade,
            Self::Scrape => Setting::WorkScrape,
            Self::Inspect => Setting::WorkInspect,
            Self::Scuff => Setting::WorkScuff,
            Self::Level => Setting::WorkLevel,
            Self::Buff => Setting::WorkBuff,
        })
    }
}
