//! The shop sheet: the shop's own process values, for everything on which sources disagree.
//!
//! A [`Setting`] names a value; its unit, default, floor, source and the disagreement behind it stand in
//! `content/settings.toml`. A [`Sheet`] holds one value for each. Switches are 0 or 1.

mod asked;
mod values;

pub use values::{Held, Sheet};

use crate::terms;

terms! {
    /// Names of the values on a shop sheet.
    Setting {
        // Waits, hours at the reference temperature
        /// Oil-based paste filler to the next coat.
        FillerOilWait = "filler-oil-wait",
        /// Fast solvent filler to the next coat.
        FillerFastWait = "filler-fast-wait",
        /// Water-borne filler to the next coat.
        FillerWaterWait = "filler-water-wait",
        /// Two-part filler to the next coat.
        FillerTwoPartWait = "filler-two-part-wait",
        /// Earliest wiping of the filler, minutes.
        FillerWipeFrom = "filler-wipe-from",
        /// Latest wiping of the filler, minutes.
        FillerWipeTo = "filler-wipe-to",
        /// Fast dye or lacquer stain to the next coat.
        StainDyeWait = "stain-dye-wait",
        /// Oil stain to the next coat.
        StainOilWait = "stain-oil-wait",
        /// Washcoat to the next operation.
        WashcoatWait = "washcoat-wait",
        /// Seal coat to the next coat.
        SealWait = "seal-wait",
        /// Colour coat to the next coat.
        ColourWait = "colour-wait",
        /// Clear coat to clear coat.
        ClearWait = "clear-wait",
        /// Last coat of the day to scuff sanding.
        ScuffWait = "scuff-wait",
        /// Last clear coat to levelling, full-gloss instruments.
        BuffWaitInstrument = "buff-wait-instrument",
        /// Last clear coat to rubbing, satin and cabinet work.
        BuffWaitSatin = "buff-wait-satin",
        /// Last clear coat to levelling, small turned work.
        BuffWaitTurned = "buff-wait-turned",
        /// A run or drip to levelling it.
        RunWait = "run-wait",
        /// Recoat window closes after so many hours; 0: it never closes.
        RecoatCloses = "recoat-closes",
        /// Recoat window opens again after so many hours; 0: it never does.
        RecoatOpensAgain = "recoat-opens-again",
        // How waits scale
        /// Temperature at which the waits are stated.
        WaitReference = "wait-reference",
        /// Factor by which 10 degrees of cold lengthen a wait.
        ColdFactor = "cold-factor",
        /// Whether warmth shortens a stated wait (0 or 1).
        WarmCredit = "warm-credit",
        /// Below this air temperature waits cannot be estimated.
        WaitModelFrom = "wait-model-from",
        /// Above this air temperature waits cannot be estimated.
        WaitModelTo = "wait-model-to",
        /// Dry film of one clear coat at which its wait is stated.
        CoatReference = "coat-reference",
        /// Dry build of clear at which the last wait is stated.
        BuildReference = "build-reference",
        // Air
        /// Work surface to dew point: from here on, spray.
        GapSpray = "gap-spray",
        /// Work surface to dew point: from here on, only with retarder; under it, stop.
        GapRetarder = "gap-retarder",
        /// Highest relative humidity for spraying.
        HumidityLimit = "humidity-limit",
        /// Air or work colder than this: stop.
        ColdStop = "cold-stop",
        /// How far a wet film with fast thinner may cool below the work.
        CoolingFast = "cooling-fast",
        /// How far a wet film with retarder may cool below the work.
        CoolingRetarded = "cooling-retarded",
        /// Least average speed of the air over a booth's open face.
        FaceSpeed = "face-speed",
        /// Greatest share of the lower explosive limit in exhausted air, per cent.
        VapourShare = "vapour-share",
        // Wood
        /// Least moisture content for finishing.
        MoistureFrom = "moisture-from",
        /// Greatest moisture content for finishing.
        MoistureTo = "moisture-to",
        /// Moisture content from which wood is refused.
        MoistureReject = "moisture-reject",
        // Mixing
        /// Volume solids of the clear as supplied, per cent.
        ClearSolids = "clear-solids",
        /// Thinner added to the clear, per cent of the unthinned material.
        ClearThinner = "clear-thinner",
        /// Volume solids of the sealer as supplied, per cent.
        SealerSolids = "sealer-solids",
        /// Least solids of a washcoat, per cent.
        WashcoatFrom = "washcoat-from",
        /// Greatest solids of a washcoat, per cent.
        WashcoatTo = "washcoat-to",
        /// Greatest share of retarder, per cent of the mix.
        RetarderMost = "retarder-most",
        /// Hours a two-part or catalysed mix may be used; 0: no pot life.
        PotLife = "pot-life",
        /// Mesh of the strainer, micrometres.
        StrainerMesh = "strainer-mesh",
        /// How far a part may be off its measure, per cent of it.
        MeasureSlack = "measure-slack",
        /// How far a liquid may be off the temperature of the cup.
        CupTemperatureSlack = "cup-temperature-slack",
        /// Most VHAP for each kilogram of solids, averaged over all finishing materials.
        HapMost = "hap-most",
        // Film
        /// Wet film of a clear coat.
        ClearWet = "clear-wet",
        /// Wet film of a colour pass.
        ColourWet = "colour-wet",
        /// Most thin coats of a sealer with stearate.
        SealerCoats = "sealer-coats",
        /// Wet film from which a standing face is near running.
        WetWarn = "wet-warn",
        /// Wet film that sags on a standing face.
        WetSag = "wet-sag",
        /// Least number of clear coats.
        ClearCoatsFrom = "clear-coats-from",
        /// Greatest number of clear coats.
        ClearCoatsTo = "clear-coats-to",
        /// Most clear coats in one day.
        CoatsADay = "coats-a-day",
        /// Dry build of clear wanted before levelling.
        BuildTarget = "build-target",
        /// Film that levelling and buffing take off.
        LevelTakeOff = "level-take-off",
        /// Film that must stay over the colour.
        FilmReserve = "film-reserve",
        /// Film that buffing alone takes off.
        BuffTakeOff = "buff-take-off",
        /// Share of the margin that counts at an edge.
        EdgeMargin = "edge-margin",
        // Abrasives
        /// Last grit on bare wood before stain or seal.
        LastGrit = "last-grit",
        /// Grit for scuffing between coats.
        ScuffGrit = "scuff-grit",
        /// First grit of the final levelling.
        LevelGrit = "level-grit",
        /// Last grit before compound.
        CompoundGrit = "compound-grit",
        /// Least ratio of the next particle size to the last.
        GritStep = "grit-step",
        /// Depth of a scratch over the particle size.
        ScratchShare = "scratch-share",
        // Gun distances
        /// Nearest gun distance for body coats.
        BodyDistanceFrom = "body-distance-from",
        /// Farthest gun distance for body coats.
        BodyDistanceTo = "body-distance-to",
        /// Nearest gun distance for shading and light seal passes.
        ShadeDistanceFrom = "shade-distance-from",
        /// Farthest gun distance for shading and light seal passes.
        ShadeDistanceTo = "shade-distance-to",
        /// Nearest distance of an HVLP gun for body coats.
        HvlpDistanceFrom = "hvlp-distance-from",
        /// Farthest distance of an HVLP gun for body coats.
        HvlpDistanceTo = "hvlp-distance-to",
        // Pass
        /// How strongly the film of a pass tapers to its edge: β of a beta section.
        FanTaper = "fan-taper",
        /// Greatest unevenness of overlapping passes, per cent of the mean film.
        StripesMost = "stripes-most",
        // Look
        /// Refractive index of the clear.
        ClearIndex = "clear-index",
        /// Gloss at 60 degrees that a full-gloss rub-out has to read.
        GlossPass = "gloss-pass",
        /// Gloss at 60 degrees under which 85 degrees is read.
        GlossLow = "gloss-low",
        /// Gloss at 60 degrees over which 20 degrees is read.
        GlossHigh = "gloss-high",
        /// Colour difference from which two colours are told apart.
        DifferenceNoticed = "difference-noticed",
        /// Colour difference over which two colours plainly differ.
        DifferencePlain = "difference-plain",
        /// Greatest colour difference that passes against the sample.
        ColourBand = "colour-band",
        /// Contrast from which a solid colour hides its ground, per cent.
        HidingLeast = "hiding-least",
        // Order in use
        /// Whether stain comes before filler (1) or after (0).
        StainFirst = "stain-first",
        /// Whether a washcoat goes between stain and filler.
        WashcoatBeforeFill = "washcoat-before-fill",
        /// Whether a protective clear follows the colour before the binding is scraped.
        ProtectiveClear = "protective-clear",
        // The day
        /// Hour at which work begins.
        DayFrom = "day-from",
        /// Hour at which work ends.
        DayTo = "day-to",
        // Hours at the bench or in the booth
        /// Sanding and cleaning one part.
        WorkPrepare = "work-prepare",
        /// Filling one part and wiping it off.
        WorkFill = "work-fill",
        /// One coat: stain, washcoat, seal, colour or clear.
        WorkCoat = "work-coat",
        /// Shading the edge.
        WorkShade = "work-shade",
        /// Scraping the binding.
        WorkScrape = "work-scrape",
        /// Inspecting.
        WorkInspect = "work-inspect",
        /// Scuff sanding.
        WorkScuff = "work-scuff",
        /// Levelling.
        WorkLevel = "work-level",
        /// Buffing.
        WorkBuff = "work-buff",
    }
}
