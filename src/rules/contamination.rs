//! Contamination: who and what enters the finish room, what each stray substance makes in a film, how the work is
//! cleaned off, and what to do about fish-eyes.

use super::term::Coating;
use super::verdict::{CannotJudge, Judged, Ruling};
use super::wood::{Wood, WoodTrouble};
use crate::terms;

terms! {
    /// Things that get onto the work or into the coat.
    Stray {
        /// Silicone polish.
        Silicone = "silicone-polish",
        /// Hand cream.
        HandCream = "hand-cream",
        /// A waxed polishing cloth.
        WaxCloth = "waxed-cloth",
        /// Oil in the compressed air.
        LineOil = "line-oil",
        /// Water in the compressed air.
        LineWater = "line-water",
        /// Lint from street clothes.
        Lint = "lint",
        /// Sanding dust left on the work or in joints.
        Dust = "sanding-dust",
        /// Material poured in unstrained.
        Unstrained = "unstrained-mix",
        /// Dry overspray on the ceiling of the booth.
        CeilingDust = "ceiling-dust",
    }
    /// What a stray thing makes in the film.
    Mark {
        /// Hollows that open in the wet coat.
        FishEye = "fish-eye",
        /// Specks that stand up.
        DustNib = "dust-nib",
    }
    /// Who stands at the door.
    Entrant {
        /// One of the finish crew.
        Crew = "crew",
        /// A visitor.
        Visitor = "visitor",
    }
    /// How the clean suit is worn.
    Suit {
        /// Low-lint suit and hood, closed.
        Closed = "suit-closed",
        /// Street clothes.
        Street = "street-clothes",
        /// The suit that was worn at the sanding bench.
        Sanding = "sanding-suit",
    }
    /// What is on the hands.
    Hands {
        /// Washed, nothing on them.
        Washed = "hands-washed",
        /// Hand cream.
        Cream = "cream-on",
        /// Polish or wax from another job.
        Polish = "polish-on",
    }
    /// What happens at the door.
    DoorMove {
        /// Come in.
        Enter = "come-in",
        /// Clean suit first.
        SuitFirst = "suit-first",
        /// Wash first.
        WashFirst = "wash-first",
        /// Wash, then the clean suit.
        WashAndSuit = "wash-and-suit",
        /// Stay outside.
        StayOut = "stay-out",
    }
    /// How far a coat with fish-eyes has gone.
    CoatState {
        /// Wet.
        Wet = "coat-wet",
        /// Dry.
        Dry = "coat-dry",
    }
    /// What lies under the coat.
    Under {
        /// Bare or filled wood without colour.
        BareWood = "under-bare",
        /// Colour, or an earlier coat of finish.
        ColourOrFinish = "under-colour",
    }
    /// What to do about fish-eyes.
    FishEyeMove {
        /// Wipe the whole face off with thinner at once.
        WipeOff = "wipe-off",
        /// Leave it, let it dry, mend it then.
        LetDry = "let-dry",
        /// Level, wash, barrier coat, go on.
        LevelWashBarrier = "level-wash-barrier",
    }
    /// How work is cleaned off before a coat.
    CleanOff {
        /// Vacuum, then a clean tack cloth, lightly.
        VacuumTack = "vacuum-tack",
        /// Vacuum, then a lint-free cloth barely damp with water.
        VacuumDamp = "vacuum-damp",
        /// Vacuum, then a solvent wipe just before the coat.
        SolventWipe = "solvent-wipe",
    }
    /// The edge of a mark that a wetting test shows on bare wood.
    MarkEdge {
        /// Pale with a sharp edge.
        Sharp = "sharp-pale",
        /// Uneven, with soft edges.
        Soft = "soft-uneven",
        /// Fine lines.
        Lines = "fine-lines",
    }
    /// What to do about a mark on bare wood before stain.
    BareMove {
        /// Glue: scrape to clean wood, then the same last grit.
        Scrape = "scrape-glue",
        /// Uneven take-up: washcoat or sample board before stain.
        Washcoat = "washcoat-sample",
        /// Scratches: back to the grit that takes them out, then all grits after it.
        BackToGrit = "back-to-grit",
    }
}

/// What a stray thing makes: grease, silicone, wax and line oil or water open fish-eyes (MIL-HDBK-1110 11.4.2.1;
/// Woodshop News, four methods to prevent fish eye); solid specks stand up as nibs (BS 2015, bittiness).
#[must_use]
pub fn makes(stray: Stray) -> Ruling<Mark> {
    match stray {
        Stray::Silicone | Stray::HandCream | Stray::WaxCloth => {
            Ruling::by("contamination.grease-opens-the-coat", Mark::FishEye)
        }
        Stray::LineOil | Stray::LineWater => Ruling::by("contamination.dirty-air", Mark::FishEye),
        Stray::Lint | Stray::Dust | Stray::Unstrained | Stray::CeilingDust => {
            Ruling::by("contamination.specks-stand-up", Mark::DustNib)
        }
    }
}

/// What happens at the door of the finish room: crew only, washed hands, clean suit (common practice, no source).
///
/// # Errors
/// [`CannotJudge`] when the suit or the hands decide and are not known.
pub fn at_the_door(who: Entrant, suit: Option<Suit>, hands: Option<Hands>) -> Judged<DoorMove> {
    if who == Entrant::Visitor {
        return Ok(Ruling::by("contamination.crew-only", DoorMove::StayOut));
    }
    let suit = suit.ok_or_else(|| CannotJudge::without("suit"))?;
    let hands = hands.ok_or_else(|| CannotJudge::without("hands"))?;
    let answer = match (suit == Suit::Closed, hands == Hands::Washed) {
        (true, true) => DoorMove::Enter,
        (false, true) => DoorMove::SuitFirst,
        (true, false) => DoorMove::WashFirst,
        (false, false) => DoorMove::WashAndSuit,
    };
    Ok(Ruling::by("contamination.clean-suit", answer).and("contamination.clean-hands"))
}

/// What to do about fish-eyes. While the coat is wet over uncoloured bare wood, the whole face can be wiped off; over
/// colour or finish thinner would drag it, so it dries and is mended then (fault table: Woodshop News and trade
/// articles; no wiping over colour: common practice, no source).
///
/// # Errors
/// [`CannotJudge`] when the coat is wet and what lies under it is not known.
pub fn fish_eye_move(state: CoatState, under: Option<Under>) -> Judged<FishEyeMove> {
    if state == CoatState::Dry {
        return Ok(Ruling::by("contamination.barrier-coat", FishEyeMove::LevelWashBarrier));
    }
    let answer = match under.ok_or_else(|| CannotJudge::without("coat_of"))? {
        Under::BareWood => FishEyeMove::WipeOff,
        Under::ColourOrFinish => FishEyeMove::LetDry,
    };
    Ok(Ruling::by("contamination.wipe-only-bare", answer))
}

/// How bare wood is cleaned off before a coat. An oily wood gets a solvent wipe just before it (S. Marino, Finishing
/// Oily Woods); under a water-borne coat no waxy tack cloth (common practice, no source).
#[must_use]
pub fn clean_off(wood: &Wood, coating: Coating) -> Ruling<CleanOff> {
    if wood.trouble.contains(&WoodTrouble::Oily) {
        return Ruling::by("contamination.oily-wood-wipe", CleanOff::SolventWipe);
    }
    match coating {
        Coating::WaterBorne => Ruling::by("contamination.no-wax-under-water", CleanOff::VacuumDamp),
        Coating::Nitrocellulose | Coating::Shellac => {
            Ruling::by("contamination.vacuum-then-tack", CleanOff::VacuumTack)
        }
    }
}

/// What to do about a mark that a wetting test shows before stain: a sharp pale patch is glue, soft unevenness is the
/// wood's own, fine lines are scratches (B. Flexner, Popular Woodworking no. 122, June 2001; the fault table).
#[must_use]
pub fn bare_move(edge: MarkEdge) -> Ruling<BareMove> {
    match edge {
        MarkEdge::Sharp => Ruling::by("contamination.glue-blocks-stain", BareMove::Scrape),
        MarkEdge::Soft => Ruling::by("contamination.wood-takes-unevenly", BareMove::Washcoat),
        MarkEdge::Lines => Ruling::by("abrasive.along-grain", BareMove::BackToGrit),
    }
}
