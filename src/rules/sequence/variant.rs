//! The legitimate variants: departures from the base line that are right when their condition holds.

use crate::terms;

terms! {
    /// A legitimate variant, a row of the published table. Text: `variant.<slug>`.
    Variant {
        /// Stain, washcoat, coloured filler, seal.
        Sv01 = "sv-01",
        /// Fill, sand to the wood, then stain.
        Sv02 = "sv-02",
        /// Tinted filler as stain.
        Sv03 = "sv-03",
        /// Filled with finish only.
        Sv04 = "sv-04",
        /// Burst dyed on the bare wood.
        Sv05 = "sv-05",
        /// Trim scraped after shading.
        Sv06 = "sv-06",
        /// The first thin coats of the lacquer seal.
        Sv07 = "sv-07",
        /// Several coats in one day.
        Sv08 = "sv-08",
        /// Mask left to the end on glue seats and bare parts.
        Sv09 = "sv-09",
        /// No filler on closed pores, or where open pores are ordered.
        Sv10 = "sv-10",
        /// No washcoat on coarse woods.
        Sv11 = "sv-11",
        /// Levelled early, buffed late.
        Sv12 = "sv-12",
        /// Stain, filler, seal, with no washcoat.
        Sv13 = "sv-13",
        /// Recoated in the open window with no scuff.
        Sv14 = "sv-14",
        /// Colour mask pulled while the coat is soft.
        Sv15 = "sv-15",
        /// Cuts after the finish.
        Sv16 = "sv-16",
        /// Left off the gun.
        Sv17 = "sv-17",
        /// Steps that the ticket does not order.
        Sv18 = "sv-18",
        /// Flattened between build coats.
        Sv19 = "sv-19",
        /// Second filling.
        Sv20 = "sv-20",
        /// Opaque colour scuffed lightly before clear.
        Sv21 = "sv-21",
        /// Dye, sand back, dye again.
        Sv22 = "sv-22",
        /// Colour, protective clear, scrape, inspect, clear coats.
        Sv23 = "sv-23",
        /// Colour straight on filled or stained wood, sealed over.
        Sv24 = "sv-24",
        /// Seal, fill, seal.
        Sv25 = "sv-25",
    }
}
