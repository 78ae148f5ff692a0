//! The operations of the finish room and what each does to the work.

use crate::rules::term::Stage;
use crate::terms;

terms! {
    /// What can be done to a part. Text: `term.<slug>`.
    Operation {
        /// Sanding bare wood.
        Sand = "sand-wood",
        /// Damping the wood, letting it dry and sanding off the raised grain.
        Damp = "raise-grain",
        /// Wetting the bare wood to find glue.
        GlueCheck = "glue-check",
        /// Scraping and levelling binding and purfling while the wood is bare.
        Trim = "trim-binding",
        /// Fitting parts, drilling holes, dressing frets before the finish.
        Prefit = "pre-fit",
        /// Wiping the wood with a fast solvent.
        SolventWipe = "solvent-wipe",
        /// Taking dust off.
        CleanOff = "clean-off",
        /// Masking.
        Mask = "mask-off",
        /// Pulling a mask.
        Unmask = "pull-mask",
        /// Colour into the wood: dye or stain, wiped or sprayed.
        Stain = "stain-wood",
        /// Sanding stained wood.
        SandBack = "sand-back",
        /// A washcoat: sealer thinned to a few per cent of solids.
        Washcoat = "washcoat",
        /// Laying pore filler.
        Fill = "fill-pores",
        /// Wiping the filler off.
        WipeFiller = "wipe-filler",
        /// Sanding dry filler off the flats.
        SandFiller = "sand-filler",
        /// A seal coat.
        Seal = "seal-coat",
        /// Scuffing a film between coats.
        Scuff = "scuff-film",
        /// Colour coats in the film.
        Colour = "colour-coats",
        /// Shading the edge.
        Shade = "shade-edge",
        /// The thin protective clear over the colour.
        Protect = "protective-clear",
        /// Scraping colour off the binding.
        Scrape = "scrape-binding",
        /// Inspecting colour and scraped edge.
        Inspect = "inspect-work",
        /// Clear coats.
        Clear = "clear-coats",
        /// Levelling the film flat.
        Level = "level-film",
        /// Buffing with compound.
        Buff = "buff-gloss",
        /// Wax, polish or another dressing.
        Polish = "polish-wax",
        /// Plugging or waxing holes before wet sanding.
        PlugHoles = "plug-holes",
        /// Drilling, reaming, gluing or dressing on the finished work.
        FitParts = "fit-parts",
        /// Cutting back a run or mending a place.
        Rework = "rework-place",
        /// Casing, wrapping or stacking.
        Pack = "pack-work",
        /// Putting oily rags into the closed metal can.
        RagsAway = "rags-away",
    }
}

/// Operations that leave a film on the work.
pub const COATS: &[Operation] =
    &[Operation::Seal, Operation::Colour, Operation::Shade, Operation::Protect, Operation::Clear];
/// Operations that lay anything wet on the work.
pub const LAID: &[Operation] = &[
    Operation::Stain,
    Operation::Washcoat,
    Operation::Fill,
    Operation::Seal,
    Operation::Colour,
    Operation::Shade,
    Operation::Protect,
    Operation::Clear,
];
/// Colour in the film.
pub const FILM_COLOUR: &[Operation] = &[Operation::Colour, Operation::Shade];
/// Clear over the colour.
pub const CLEARS: &[Operation] = &[Operation::Protect, Operation::Clear];
/// Operations that roughen or flatten a film.
pub const ABRADES: &[Operation] = &[Operation::Scuff, Operation::Level];
/// Operations that need bare wood.
pub const BARE_WOOD: &[Operation] = &[Operation::Sand, Operation::Damp, Operation::GlueCheck];

impl Operation {
    /// The band of the board it belongs to.
    #[must_use]
    pub const fn stage(self) -> Stage {
        match self {
            Self::Sand
            | Self::Damp
            | Self::GlueCheck
            | Self::Trim
            | Self::Prefit
            | Self::SolventWipe
            | Self::CleanOff => Stage::Sand,
            Self::Stain | Self::SandBack => Stage::Stain,
            Self::Fill | Self::WipeFiller | Self::SandFiller => Stage::Fill,
            Self::Washcoat | Self::Seal => Stage::Seal,
            Self::Mask | Self::Colour => Stage::Colour,
            Self::Shade => Stage::Shade,
            Self::Unmask | Self::Scrape | Self::Inspect => Stage::Scrape,
            Self::Scuff | Self::Protect | Self::Clear | Self::Rework => Stage::Clear,
            Self::Pack => Stage::Cure,
            Self::RagsAway => Stage::Room,
            Self::Level | Self::Buff | Self::Polish | Self::PlugHoles | Self::FitParts => Stage::Buff,
        }
    }

    /// Whether it is one of the main steps that even a short schedule names; the others are often left out of print.
    #[must_use]
    pub const fn is_main(self) -> bool {
        matches!(
            self,
            Self::Stain
                | Self::Washcoat
                | Self::Fill
                | Self::Seal
                | Self::Colour
                | Self::Shade
                | Self::Clear
                | Self::Level
                | Self::Buff
        )
    }
}
