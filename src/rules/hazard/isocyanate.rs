//! What stands ready before a two-part material is worked, with isocyanate in its hardener or without.

use crate::rules::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What the hardener is, by its safety data sheet.
    Hardener {
        /// It holds isocyanate.
        Isocyanate = "isocyanate",
        /// It holds none, by its safety data sheet.
        NoIsocyanate = "no-isocyanate",
    }
    /// What somebody wants to have before a two-part material with isocyanate is worked.
    HardenerGuard {
        /// The safety data sheets of both parts, read.
        SheetsRead = "guard-sheets-read",
        /// Supplied air under the employer's respirator programme.
        SuppliedAir = "guard-supplied-air",
        /// The employer's medical programme that covers the hardener.
        Medical = "guard-medical",
        /// Everybody without such protection out of the area.
        BystandersOut = "guard-bystanders-out",
        /// Skin covered: gloves and suit that the sheet names.
        SkinCovered = "guard-skin-covered",
        /// A fresh cartridge instead of supplied air.
        FreshCartridge = "guard-fresh-cartridge",
        /// A strong draw instead of breathing protection.
        StrongDraw = "guard-strong-draw",
        /// Going by the smell.
        NoSmell = "guard-no-smell",
        /// Being done quickly.
        ShortJob = "guard-short-job",
    }
}

/// Whether that must stand ready before a two-part material with this hardener is mixed, sprayed, or sanded or heated
/// part-cured. With no isocyanate in it the data sheets come first and say what is worn. The data sheet, local code and
/// the employer's programme decide beyond it.
///
/// # Errors
/// [`CannotJudge`] when what the hardener is decides and is not known.
pub fn guards(hardener: Option<Hardener>, guard: HardenerGuard) -> Judged<bool> {
    let isocyanate = || {
        let hardener = hardener.ok_or_else(|| CannotJudge::without("hardener"));
        hardener.map(|hardener| hardener == Hardener::Isocyanate)
    };
    let (rule, needed) = match guard {
        HardenerGuard::SheetsRead => ("hazard.hardener-sheet-first", true),
        HardenerGuard::SkinCovered if !isocyanate()? => ("hazard.hardener-sheet-first", true),
        HardenerGuard::SuppliedAir | HardenerGuard::BystandersOut => {
            ("hazard.isocyanate-supplied-air", isocyanate()?)
        }
        HardenerGuard::Medical | HardenerGuard::SkinCovered => {
            ("hazard.isocyanate-sensitises", isocyanate()?)
        }
        HardenerGuard::FreshCartridge | HardenerGuard::NoSmell | HardenerGuard::ShortJob => {
            ("hazard.isocyanate-supplied-air", false)
        }
        HardenerGuard::StrongDraw => ("hazard.draw-is-no-respirator", false),
    };
    Ok(Ruling::by(rule, needed))
}
