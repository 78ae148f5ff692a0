//! The errors of order and timing: what each makes, where it is made and first shows, what mends it, which variants belong
//! to it.
//!
//! `se-01` to `se-40` are the published rows; `contamination.` and `colouring.` are rows of the published faults; the `order.` entries are the base line from which they depart (a guitar repair handbook's basic
//! schedule; wood preparation to rubbing out), and the `shop.` entries are departures from the order that the sheet names.

use super::variant::Variant;
use crate::rules::term::{Severity, Stage};
use crate::terms;

terms! {
    /// An error of order or timing. Its slug is the id of its rule: the id of its row in the published table.
    OrderError {
        /// Grits skipped, or the last grit across the grain.
        ScratchesUnderStain = "se-01",
        /// Stained before a wet check for glue.
        GlueUnchecked = "se-02",
        /// Trim not levelled on bare wood, or scraped over open colour.
        TrimOverOpenColour = "se-03",
        /// Binding scraped only after the clear build began.
        TrimAfterClear = "se-04",
        /// Water dye on wood that was not damped and re-sanded.
        GrainNotRaised = "se-05",
        /// Filled first, then stained.
        FilledBeforeStain = "se-06",
        /// Coloured filler over raw stained flats.
        FillerOverRawStain = "se-07",
        /// Filler wiped too early or too late.
        FillerWipedOffTime = "se-08",
        /// Coated over filler that is not dry.
        FillerNotDry = "se-09",
        /// Coated over stain that is not dry.
        StainNotDry = "se-10",
        /// Stained wood sanded with nothing over it.
        StainSandedBare = "se-11",
        /// Colour sprayed with no seal under it.
        ColourUnsealed = "se-12",
        /// Wet first coat over a dye that dissolves in it.
        DyeFlooded = "se-13",
        /// Many or heavy coats of stearated sealer.
        SealerTooThick = "se-14",
        /// Recoated before the coat below had its wait.
        RecoatTooSoon = "se-15",
        /// Recoated while the window is closed.
        RecoatWindowClosed = "se-16",
        /// Coat on a hard film that does not melt, with no scuff.
        HardFilmUnscuffed = "se-17",
        /// Waxy cloth just before a coat.
        WaxyTackCloth = "se-18",
        /// Sprayed outside the climate window.
        AirOutsideWindow = "se-19",
        /// Cold work or heat at a wet coat.
        ColdWork = "se-20",
        /// Colour mask left on through the clear.
        MaskLeftOn = "se-21",
        /// Mask pulled from a wet coat.
        MaskPulledWet = "se-22",
        /// Levelled, buffed or mended before the wait is over.
        LevelledTooSoon = "se-23",
        /// Levelled with too little film.
        LevelledTooThin = "se-24",
        /// Transparent colour scuffed.
        TransparentColourScuffed = "se-25",
        /// Too coarse a paper before compound.
        CoarseBeforeCompound = "se-26",
        /// One wheel for several compounds.
        OneWheel = "se-27",
        /// Polish under a coat.
        PolishUnderCoat = "se-28",
        /// Holes and parts fitted after the finish.
        FittedAfterFinish = "se-29",
        /// Packed before cure.
        PackedTooSoon = "se-30",
        /// Mix past its pot life, or boosted.
        PotLifePast = "se-31",
        /// Bare wood sanded too fine.
        SandedTooFine = "se-32",
        /// Pigment stain on a blotching wood with no washcoat.
        BlotchWithoutWashcoat = "se-33",
        /// No filler under a level gloss on large pores.
        PoresUnfilled = "se-34",
        /// Oily wood not wiped or not sealed.
        OilyWoodUnsealed = "se-35",
        /// Wood outside the moisture band.
        MoistureOutsideBand = "se-36",
        /// Levelled through coats that do not melt together.
        LevelledThroughCoats = "se-37",
        /// Wet sanding with open holes.
        OpenHolesWet = "se-38",
        /// Colour of one wood carried to its neighbour.
        ColourCarriedOver = "se-39",
        /// Wiped colour over a full seal coat.
        WipedColourOverSeal = "se-40",
        /// Silicone under the first coat.
        SiliconeUnderCoat = "contamination.silicone-washed-off",
        /// An old oil finish under the first coat.
        OldOilUnderCoat = "contamination.old-oil-washed-off",
        /// Light colour over a bleeding wood with no barrier between.
        BleedsThroughColour = "colouring.barrier-under-light",
        /// Bare-wood work over a film.
        Wood = "order.wood",
        /// Filling out of its place: over a film, or wiped and sanded before it is laid.
        Fill = "order.fill",
        /// Colour that was ordered is missing, or lies over the clear or over the shading.
        Colour = "order.colour",
        /// The clear build began before colour was done and judged.
        Clear = "order.clear",
        /// Levelling and buffing out of their place, or left out of gloss work.
        Finish = "order.finish",
        /// Stain and filler the other way round than on the shop sheet.
        ShopStain = "shop.stain-first",
        /// No washcoat between stain and filler where the shop sheet asks for one.
        ShopWashcoat = "shop.washcoat",
        /// No protective clear between colour and scraping where the shop sheet asks for one.
        ShopProtective = "shop.protective-clear",
    }
    /// What mends an error. Text: `term.<slug>`.
    Mend {
        /// Wait longer.
        Wait = "wait-longer",
        /// Change the order.
        Reorder = "change-order",
        /// Add a step.
        AddStep = "add-step",
        /// Leave a step out.
        LeaveOut = "leave-out-step",
        /// Do the step another way.
        Redo = "other-way",
    }
}

/// Where an error first shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shows {
    /// In that band of the work.
    At(Stage),
    /// At the step itself.
    AtOnce,
    /// At the next coat.
    NextCoat,
    /// After the work has left the finish room.
    Later,
}

/// What is known of an error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Known {
    /// Slugs of the faults it makes.
    pub faults: &'static [&'static str],
    /// Band where it is made; `None`: that of the step.
    pub made: Option<Stage>,
    /// Where it first shows.
    pub shows: Shows,
    /// What it endangers.
    pub severity: Severity,
    /// What mends it.
    pub mend: Mend,
    /// The variants that make it no error.
    pub variants: &'static [Variant],
}

const fn known(faults: &'static [&'static str], shows: Shows, mend: Mend) -> Known {
    Known { faults, made: None, shows, severity: Severity::Work, mend, variants: &[] }
}

impl Known {
    const fn made(mut self, stage: Stage) -> Self {
        self.made = Some(stage);
        self
    }

    const fn unless(mut self, variants: &'static [Variant]) -> Self {
        self.variants = variants;
        self
    }

    const fn costs_time(mut self) -> Self {
        self.severity = Severity::Time;
        self
    }
}

impl OrderError {
    /// What is known of it.
    #[must_use]
    pub const fn known(self) -> Known {
        use Mend::{AddStep, LeaveOut, Redo, Reorder, Wait};
        use Shows::{At, AtOnce, Later, NextCoat};
        match self {
            Self::ScratchesUnderStain => known(&["sanding-scratch"], At(Stage::Stain), Redo),
            Self::GlueUnchecked => known(&["glue-spot"], At(Stage::Stain), AddStep).made(Stage::Sand),
            Self::TrimOverOpenColour => known(&["glue-spot", "sand-through"], At(Stage::Seal), Reorder)
                .unless(&[Variant::TrimAfterShading, Variant::ProtectiveClearFirst]),
            Self::TrimAfterClear => known(&["tape-bridge", "sand-through"], At(Stage::Buff), Reorder)
                .unless(&[Variant::ProtectiveClearFirst]),
            Self::GrainNotRaised => {
                known(&["raised-grain", "sand-through"], At(Stage::Seal), AddStep).made(Stage::Sand)
            }
            Self::FilledBeforeStain => {
                known(&["white-filler-pore", "stain-blotch"], At(Stage::Stain), Reorder)
                    .unless(&[Variant::FillSandStain, Variant::TintedFillerAsStain])
            }
            Self::FillerOverRawStain => known(&["filler-haze", "stain-blotch"], At(Stage::Fill), AddStep)
                .unless(&[Variant::StainWashcoatFill, Variant::TintedFillerAsStain, Variant::StainFillSeal]),
            Self::FillerWipedOffTime => known(&["pore-pinhole", "filler-haze"], At(Stage::Seal), Redo),
            Self::FillerNotDry => {
                known(&["grey-pore", "grain-sink", "peeling"], Later, Wait).unless(&[Variant::SecondFilling])
            }
            Self::StainNotDry => {
                known(&["solvent-pop", "wrinkle-lift", "peeling", "grey-pore"], At(Stage::Seal), Wait)
            }
            Self::StainSandedBare => {
                known(&["sand-through"], NextCoat, Reorder).unless(&[Variant::DyeSandDye])
            }
            Self::ColourUnsealed => {
                known(&["dark-edge", "stain-blotch"], At(Stage::Shade), AddStep).unless(&[
                    Variant::BurstOnBareWood,
                    Variant::SelfSealing,
                    Variant::ProtectiveClearFirst,
                    Variant::ColourSealedOver,
                ])
            }
            Self::DyeFlooded => known(&["dye-bleed"], At(Stage::Clear), Redo).unless(&[Variant::SelfSealing]),
            Self::SealerTooThick => known(&["peeling", "crows-foot", "soft-film"], Later, Redo),
            Self::RecoatTooSoon => {
                known(&["solvent-pop", "grain-sink", "wrinkle-lift"], At(Stage::Buff), Wait)
                    .unless(&[Variant::CoatsInOneDay])
            }
            Self::RecoatWindowClosed => known(&["wrinkle-lift"], AtOnce, Wait),
            Self::HardFilmUnscuffed => {
                known(&["peeling"], Later, AddStep).unless(&[Variant::RecoatInOpenWindow])
            }
            Self::WaxyTackCloth => known(&["fish-eye", "peeling"], NextCoat, Redo),
            Self::AirOutsideWindow => known(&["blush", "soft-film", "run-sag"], AtOnce, Wait),
            Self::ColdWork => known(&["pore-pinhole", "solvent-pop", "blush"], AtOnce, Wait),
            Self::MaskLeftOn => {
                known(&["tape-bridge"], At(Stage::Scrape), Reorder).unless(&[Variant::MaskToTheEnd])
            }
            Self::MaskPulledWet => {
                known(&["run-sag", "tape-bleed"], AtOnce, Wait).unless(&[Variant::MaskPulledSoft])
            }
            Self::LevelledTooSoon => known(&["grain-sink", "soft-film", "buff-burn"], Later, Wait)
                .unless(&[Variant::LevelledEarlyBuffedLate, Variant::FlattenedBetweenCoats]),
            Self::LevelledTooThin => known(&["sand-through"], At(Stage::Buff), AddStep),
            Self::TransparentColourScuffed => known(&["sand-through", "dark-edge"], NextCoat, LeaveOut)
                .unless(&[Variant::OpaqueColourScuffed]),
            Self::CoarseBeforeCompound => known(&["sanding-scratch", "buff-swirl"], At(Stage::Buff), AddStep),
            Self::OneWheel => known(&["buff-swirl"], At(Stage::Buff), Redo),
            Self::PolishUnderCoat => known(&["fish-eye", "peeling"], NextCoat, Reorder),
            Self::FittedAfterFinish => {
                known(&["peeling", "tape-bridge"], Later, Reorder).unless(&[Variant::CutsAfterFinish])
            }
            Self::PackedTooSoon => known(&["soft-film", "bloom-haze"], Later, Wait),
            Self::PotLifePast => known(&["catalyst-bloom", "wrinkle-lift", "cold-check"], Later, Redo),
            Self::SandedTooFine => known(&["peeling", "colour-off"], At(Stage::Stain), Redo),
            Self::BlotchWithoutWashcoat => {
                known(&["stain-blotch"], At(Stage::Stain), AddStep).unless(&[Variant::NoWashcoatOnCoarse])
            }
            Self::PoresUnfilled => known(&["grain-sink", "pore-pinhole"], At(Stage::Seal), AddStep)
                .made(Stage::Fill)
                .unless(&[Variant::FilledWithFinish, Variant::NoFillerNeeded]),
            Self::OilyWoodUnsealed => {
                known(&["peeling", "soft-film", "extractive-bleed"], At(Stage::Cure), AddStep)
                    .made(Stage::Sand)
            }
            Self::MoistureOutsideBand => {
                known(&["substrate-crack", "grain-sink"], Later, Wait).made(Stage::Sand)
            }
            Self::LevelledThroughCoats => known(&["witness-line"], At(Stage::Buff), Redo),
            Self::OpenHolesWet => known(&["water-spot"], AtOnce, AddStep),
            Self::ColourCarriedOver => known(&["extractive-bleed"], AtOnce, Redo),
            Self::WipedColourOverSeal => {
                known(&["colour-off", "lap-stripe"], At(Stage::Stain), Reorder).unless(&[Variant::NotOrdered])
            }
            Self::SiliconeUnderCoat => known(&["fish-eye"], At(Stage::Seal), AddStep).made(Stage::Sand),
            Self::OldOilUnderCoat => known(&["peeling", "soft-film"], Later, AddStep).made(Stage::Sand),
            Self::BleedsThroughColour => known(&["extractive-bleed"], AtOnce, AddStep).made(Stage::Seal),
            Self::Wood => known(&[], NextCoat, Reorder),
            Self::Fill => known(&["grain-sink"], NextCoat, Reorder).unless(&[Variant::SealFillSeal]),
            Self::Colour => known(&["colour-off"], At(Stage::Scrape), AddStep)
                .unless(&[Variant::NotOrdered, Variant::TintedFillerAsStain]),
            Self::Clear => known(&["colour-off"], At(Stage::Scrape), Reorder),
            Self::Finish => known(&["orange-peel"], Later, Reorder).unless(&[Variant::OffTheGun]),
            Self::ShopStain => known(&[], NextCoat, Reorder).costs_time(),
            Self::ShopWashcoat => known(&[], NextCoat, AddStep).costs_time(),
            Self::ShopProtective => known(&[], NextCoat, AddStep).costs_time(),
        }
    }
}
