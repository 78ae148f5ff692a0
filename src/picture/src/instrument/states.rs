//! Closed lists of what a state of the work may be.

use crate::named::named;

named! {
    /// How bare wood was left.
    #[derive(Default)]
    Prepared {
        /// As it came from plane and saw.
        Rough = "rough",
        /// Sanded.
        #[default]
        Sanded = "sanded",
        /// Damped to raise the grain: dark and fuzzy until it is dry.
        Damped = "damped",
    }
}

named! {
    /// What became of filler that was laid on.
    Filled {
        /// Not wiped off yet: a muddy paste over pores and flats.
        Laid = "laid",
        /// Wiped off too late or too little: a pale haze on the flats.
        Hazed = "hazed",
        /// Wiped: it stands in the pores alone.
        Wiped = "wiped",
    }
}

named! {
    /// How the uppermost film was left.
    #[derive(Default)]
    Sheen {
        /// As it left the gun.
        #[default]
        Sprayed = "sprayed",
        /// Scuffed, so that the next coat holds: dull, with scratches one way.
        Scuffed = "scuffed",
        /// Levelled: flat, grey, with fine scratches.
        Levelled = "levelled",
        /// Buffed: a mirror.
        Buffed = "buffed",
    }
}

named! {
    /// How a binding is.
    #[derive(Default)]
    Binding {
        /// There is none.
        None = "none",
        /// As it was let in, and under all that was laid over the part.
        #[default]
        Covered = "covered",
        /// Under tape.
        Taped = "taped",
        /// Scraped clean of colour.
        Scraped = "scraped",
    }
}

named! {
    /// What a binding is made of.
    #[derive(Default)]
    Trim {
        /// Plastic, as ivory.
        #[default]
        Plastic = "plastic",
        /// Pale wood.
        Wood = "wood",
    }
}

named! {
    /// How the place is that stays bare for glue.
    #[derive(Default)]
    Seat {
        /// Nothing is there: it is finished as the rest.
        #[default]
        None = "none",
        /// Under tape.
        Taped = "taped",
        /// Bare wood.
        Bare = "bare",
    }
}

named! {
    /// What covers a whole part.
    #[derive(Default)]
    Cover {
        /// Nothing.
        #[default]
        None = "none",
        /// Tape, strip beside strip.
        Tape = "tape",
        /// Paper, taped down along its edge.
        Paper = "paper",
    }
}
