//! The legitimate variants: departures from the base line that are right when their condition holds.

use crate::terms;

terms! {
    /// A legitimate variant. Its slug is the id of its row in the published table. Text: `variant.<slug>`.
    Variant {
        /// Stain, washcoat, coloured filler, seal.
        StainWashcoatFill = "sv-01",
        /// Fill, sand to the wood, then stain.
        FillSandStain = "sv-02",
        /// Tinted filler as stain.
        TintedFillerAsStain = "sv-03",
        /// Filled with finish only.
        FilledWithFinish = "sv-04",
        /// Burst dyed on the bare wood.
        BurstOnBareWood = "sv-05",
        /// Trim scraped after shading.
        TrimAfterShading = "sv-06",
        /// The first thin coats of the lacquer seal.
        SelfSealing = "sv-07",
        /// Several coats in one day.
        CoatsInOneDay = "sv-08",
        /// Mask left to the end on glue seats and bare parts.
        MaskToTheEnd = "sv-09",
        /// No filler on closed pores, or where open pores are ordered.
        NoFillerNeeded = "sv-10",
        /// No washcoat on coarse woods.
        NoWashcoatOnCoarse = "sv-11",
        /// Levelled early, buffed late.
        LevelledEarlyBuffedLate = "sv-12",
        /// Stain, filler, seal, with no washcoat.
        StainFillSeal = "sv-13",
        /// Recoated in the open window with no scuff.
        RecoatInOpenWindow = "sv-14",
        /// Colour mask pulled while the coat is soft.
        MaskPulledSoft = "sv-15",
        /// Cuts after the finish.
        CutsAfterFinish = "sv-16",
        /// Left off the gun.
        OffTheGun = "sv-17",
        /// Steps that the ticket does not order.
        NotOrdered = "sv-18",
        /// Flattened between build coats.
        FlattenedBetweenCoats = "sv-19",
        /// Second filling.
        SecondFilling = "sv-20",
        /// Opaque colour scuffed lightly before clear.
        OpaqueColourScuffed = "sv-21",
        /// Dye, sand back, dye again.
        DyeSandDye = "sv-22",
        /// Colour, protective clear, scrape, inspect, clear coats.
        ProtectiveClearFirst = "sv-23",
        /// Colour straight on filled or stained wood, sealed over.
        ColourSealedOver = "sv-24",
        /// Seal, fill, seal.
        SealFillSeal = "sv-25",
    }
}
