//! How a step was done, where that is worth a word. A step with no remark was done in the ordinary careful way.

use crate::terms;

terms! {
    /// A remark on a step. Text: `term.<slug>`.
    Manner {
        // Sanding
        /// A grit of the ladder was left out.
        GritSkipped = "grit-skipped",
        /// The last strokes went across the grain.
        AcrossGrain = "across-grain",
        /// Coloured dust was wiped across its neighbour or left lying.
        DustAcross = "dust-across",
        /// Light: the shine is broken and nothing is cut through.
        Light = "light-scuff",
        /// Single specks only.
        NibsOnly = "nibs-only",
        /// Evenly, down to the bare flats.
        Evenly = "evenly-to-wood",
        /// With water.
        WithWater = "with-water",
        /// The film gives powder, not gum.
        Powder = "powder-not-gum",
        /// The cut goes through the last coat.
        ThroughCoat = "through-last-coat",
        // Colour in the wood
        /// A dye that dissolves in the coat laid over it.
        Dye = "soluble-dye",
        /// A water-borne dye or stain.
        WaterDye = "water-dye",
        /// An oil stain.
        OilStain = "oil-stain",
        /// A pigment stain, wiped.
        Pigment = "pigment-stain",
        /// Excess stain was left on.
        ExcessLeft = "excess-left",
        /// A weak dye burst laid on the bare wood.
        WeakBurst = "weak-burst",
        /// A glaze or a sprayed toner.
        Glaze = "glaze-or-toner",
        /// Stain and filler cannot dissolve each other.
        KeptApart = "stain-and-filler-apart",
        // Filler
        /// The filler is coloured.
        Coloured = "coloured-filler",
        /// The filler is meant to colour the flats too.
        ColoursFlats = "colours-flats",
        /// The filler takes stain or already has the colour of the pores.
        TakesStain = "takes-stain",
        /// A rubbed finger makes a ball.
        BallTest = "ball-test",
        /// The same wipe time everywhere.
        SameWipe = "same-wipe-time",
        /// The filler suits the coat under it.
        Compatible = "compatible-filler",
        // Coats
        /// A mist coat first.
        Mist = "mist-coat",
        /// Laid thin.
        Thin = "thin-coat",
        /// Laid wet and heavy.
        Heavy = "heavy-coat",
        /// Sanding sealer with stearate.
        Stearated = "stearated-sealer",
        /// A barrier coat of dewaxed shellac.
        Barrier = "barrier-coat",
        /// Cures by taking up oxygen, as oil and varnish do.
        OilCured = "oil-cured-coat",
        /// Every coat of the step was scuffed before the next.
        ScuffedBetween = "scuffed-between",
        /// Retarder in the mix, within the sheet's limit.
        Retarder = "with-retarder",
        /// The work was colder than the room.
        ColdWork = "cold-work",
        /// Sun or a heater on the wet coat.
        HeatedWet = "heated-wet",
        /// More catalyst was put into an old mix.
        Boosted = "boosted-mix",
        /// Coats enough to fill the pores by themselves, with a long wait.
        BuildsFill = "builds-to-fill",
        /// The colour material itself seals, or the stain must not meet a heavy coat.
        SelfSealing = "self-sealing-colour",
        /// Another material than the film below, which it can attack.
        UnlikeFilm = "unlike-film",
        /// The last coat is clean and even.
        CleanLastCoat = "clean-last-coat",
        // Cloths
        /// A tack cloth, one light pass.
        TackCloth = "tack-cloth",
        /// A waxy tack cloth, wiped heavily.
        HeavyTack = "heavy-tack",
        // Masks and trim
        /// The mask covers a glue seat or a part that stays bare.
        OverBarePart = "over-bare-part",
        /// The film was scored all round first.
        Scored = "scored-first",
        /// Past running, but soft; pulled slowly back on itself.
        PastRunning = "past-running",
        /// The trim was sealed before any colour.
        TrimSealed = "trim-sealed",
        // Finishing
        /// One wheel for several compounds.
        SharedWheel = "shared-wheel",
        /// The film is hard, edges are scored or countersunk, faces shielded.
        Guarded = "edges-guarded",
        /// The film smells, dents under the nail or gums the paper.
        DryTestFailed = "dry-test-failed",
        // How colour gets on
        /// By gun.
        SprayedOn = "sprayed-on",
        /// By cloth.
        WipedOn = "wiped-on",
        // Agreement
        /// Tried on a practice board and approved.
        Sample = "sample-approved",
    }
}
