//! The errors of order and timing: what each makes, where it is made and first shows, what mends it, which variants belong
//! to it.
//!
//! `se-01` to `se-40` are the published rows; the `order.` entries are the base line from which they depart (a guitar repair handbook's basic
//! schedule; wood preparation to rubbing out), and the `shop.` entries are departures from the order that the sheet names.

use super::variant::Variant;
use crate::rules::term::{Severity, Stage};
use crate::terms;

terms! {
    /// An error of order or timing. Its slug is the id of its rule.
    OrderError {
        /// Grits skipped, or the last grit across the grain.
        Se01 = "se-01",
        /// Stained before a wet check for glue.
        Se02 = "se-02",
        /// Trim not levelled on bare wood, or scraped over open colour.
        Se03 = "se-03",
        /// Binding scraped only after the clear build began.
        Se04 = "se-04",
        /// Water dye on wood that was not damped and re-sanded.
        Se05 = "se-05",
        /// Filled first, then stained.
        Se06 = "se-06",
        /// Coloured filler over raw stained flats.
        Se07 = "se-07",
        /// Filler wiped too early or too late.
        Se08 = "se-08",
        /// Coated over filler that is not dry.
        Se09 = "se-09",
        /// Coated over stain that is not dry.
        Se10 = "se-10",
        /// Stained wood sanded with nothing over it.
        Se11 = "se-11",
        /// Colour sprayed with no seal under it.
        Se12 = "se-12",
        /// Wet first coat over a dye that dissolves in it.
        Se13 = "se-13",
        /// Many or heavy coats of stearated sealer.
        Se14 = "se-14",
        /// Recoated before the coat below had its wait.
        Se15 = "se-15",
        /// Recoated while the window is closed.
        Se16 = "se-16",
        /// Coat on a hard film that does not melt, with no scuff.
        Se17 = "se-17",
        /// Waxy cloth just before a coat.
        Se18 = "se-18",
        /// Sprayed outside the climate window.
        Se19 = "se-19",
        /// Cold work or heat at a wet coat.
        Se20 = "se-20",
        /// Colour mask left on through the clear.
        Se21 = "se-21",
        /// Mask pulled from a wet coat.
        Se22 = "se-22",
        /// Levelled, buffed or mended before the wait is over.
        Se23 = "se-23",
        /// Levelled with too little film.
        Se24 = "se-24",
        /// Transparent colour scuffed.
        Se25 = "se-25",
        /// Too coarse a paper before compound.
        Se26 = "se-26",
        /// One wheel for several compounds.
        Se27 = "se-27",
        /// Polish under a coat.
        Se28 = "se-28",
        /// Holes and parts fitted after the finish.
        Se29 = "se-29",
        /// Packed before cure.
        Se30 = "se-30",
        /// Mix past its pot life, or boosted.
        Se31 = "se-31",
        /// Bare wood sanded too fine.
        Se32 = "se-32",
        /// Pigment stain on a blotching wood with no washcoat.
        Se33 = "se-33",
        /// No filler under a level gloss on large pores.
        Se34 = "se-34",
        /// Oily wood not wiped or not sealed.
        Se35 = "se-35",
        /// Wood outside the moisture band.
        Se36 = "se-36",
        /// Levelled through coats that do not melt together.
        Se37 = "se-37",
        /// Wet sanding with open holes.
        Se38 = "se-38",
        /// Colour of one wood carried to its neighbour.
        Se39 = "se-39",
        /// Wiped colour over a full seal coat.
        Se40 = "se-40",
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
            Self::Se01 => known(&["sanding-scratch"], At(Stage::Stain), Redo),
            Self::Se02 => known(&["glue-spot"], At(Stage::Stain), AddStep).made(Stage::Sand),
            Self::Se03 => known(&["glue-spot", "sand-through"], At(Stage::Seal), Reorder)
                .unless(&[Variant::Sv06, Variant::Sv23]),
            Self::Se04 => {
                known(&["tape-bridge", "sand-through"], At(Stage::Buff), Reorder).unless(&[Variant::Sv23])
            }
            Self::Se05 => {
                known(&["raised-grain", "sand-through"], At(Stage::Seal), AddStep).made(Stage::Sand)
            }
            Self::Se06 => known(&["white-filler-pore", "stain-blotch"], At(Stage::Stain), Reorder)
                .unless(&[Variant::Sv02, Variant::Sv03]),
            Self::Se07 => known(&["filler-haze", "stain-blotch"], At(Stage::Fill), AddStep).unless(&[
                Variant::Sv01,
                Variant::Sv03,
                Variant::Sv13,
            ]),
            Self::Se08 => known(&["pore-pinhole", "filler-haze"], At(Stage::Seal), Redo),
            Self::Se09 => {
                known(&["grey-pore", "grain-sink", "peeling"], Later, Wait).unless(&[Variant::Sv20])
            }
            Self::Se10 => {
                known(&["solvent-pop", "wrinkle-lift", "peeling", "grey-pore"], At(Stage::Seal), Wait)
            }
            Self::Se11 => known(&["sand-through"], NextCoat, Reorder).unless(&[Variant::Sv22]),
            Self::Se12 => known(&["dark-edge", "stain-blotch"], At(Stage::Shade), AddStep).unless(&[
                Variant::Sv05,
                Variant::Sv07,
                Variant::Sv23,
                Variant::Sv24,
            ]),
            Self::Se13 => known(&["dye-bleed"], At(Stage::Clear), Redo).unless(&[Variant::Sv07]),
            Self::Se14 => known(&["peeling", "crows-foot", "soft-film"], Later, Redo),
            Self::Se15 => known(&["solvent-pop", "grain-sink", "wrinkle-lift"], At(Stage::Buff), Wait)
                .unless(&[Variant::Sv08]),
            Self::Se16 => known(&["wrinkle-lift"], AtOnce, Wait),
            Self::Se17 => known(&["peeling"], Later, AddStep).unless(&[Variant::Sv14]),
            Self::Se18 => known(&["fish-eye", "peeling"], NextCoat, Redo),
            Self::Se19 => known(&["blush", "soft-film", "run-sag"], AtOnce, Wait),
            Self::Se20 => known(&["pore-pinhole", "solvent-pop", "blush"], AtOnce, Wait),
            Self::Se21 => known(&["tape-bridge"], At(Stage::Scrape), Reorder).unless(&[Variant::Sv09]),
            Self::Se22 => known(&["run-sag", "tape-bleed"], AtOnce, Wait).unless(&[Variant::Sv15]),
            Self::Se23 => known(&["grain-sink", "soft-film", "buff-burn"], Later, Wait)
                .unless(&[Variant::Sv12, Variant::Sv19]),
            Self::Se24 => known(&["sand-through"], At(Stage::Buff), AddStep),
            Self::Se25 => known(&["sand-through", "dark-edge"], NextCoat, LeaveOut).unless(&[Variant::Sv21]),
            Self::Se26 => known(&["sanding-scratch", "buff-swirl"], At(Stage::Buff), AddStep),
            Self::Se27 => known(&["buff-swirl"], At(Stage::Buff), Redo),
            Self::Se28 => known(&["fish-eye", "peeling"], NextCoat, Reorder),
            Self::Se29 => known(&["peeling", "tape-bridge"], Later, Reorder).unless(&[Variant::Sv16]),
            Self::Se30 => known(&["soft-film", "bloom-haze"], Later, Wait),
            Self::Se31 => known(&["catalyst-bloom", "wrinkle-lift", "cold-check"], Later, Redo),
            Self::Se32 => known(&["peeling", "colour-off"], At(Stage::Stain), Redo),
            Self::Se33 => known(&["stain-blotch"], At(Stage::Stain), AddStep).unless(&[Variant::Sv11]),
            Self::Se34 => known(&["grain-sink", "pore-pinhole"], At(Stage::Seal), AddStep)
                .made(Stage::Fill)
                .unless(&[Variant::Sv04, Variant::Sv10]),
            Self::Se35 => known(&["peeling", "soft-film", "extractive-bleed"], At(Stage::Cure), AddStep)
                .made(Stage::Sand),
            Self::Se36 => known(&["substrate-crack", "grain-sink"], Later, Wait).made(Stage::Sand),
            Self::Se37 => known(&["witness-line"], At(Stage::Buff), Redo),
            Self::Se38 => known(&["water-spot"], AtOnce, AddStep),
            Self::Se39 => known(&["extractive-bleed"], AtOnce, Redo),
            Self::Se40 => {
                known(&["colour-off", "lap-stripe"], At(Stage::Stain), Reorder).unless(&[Variant::Sv18])
            }
            Self::Wood => known(&[], NextCoat, Reorder),
            Self::Fill => known(&["grain-sink"], NextCoat, Reorder).unless(&[Variant::Sv25]),
            Self::Colour => {
                known(&["colour-off"], At(Stage::Scrape), AddStep).unless(&[Variant::Sv18, Variant::Sv03])
            }
            Self::Clear => known(&["colour-off"], At(Stage::Scrape), Reorder),
            Self::Finish => known(&["orange-peel"], Later, Reorder).unless(&[Variant::Sv17]),
            Self::ShopStain => known(&[], NextCoat, Reorder).costs_time(),
            Self::ShopWashcoat => known(&[], NextCoat, AddStep).costs_time(),
            Self::ShopProtective => known(&[], NextCoat, AddStep).costs_time(),
        }
    }
}
