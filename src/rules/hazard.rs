//! Hazards of the room: rags and residues, unlike coatings in one booth, what must be in place before the gun, the
//! order of fan and gun, pouring.
//!
//! Training only: local code, the data sheet and licensed practice overrule every answer. Where something is not
//! known, the answer is the cautious one or that it cannot be judged, never that it may go on.

use super::term::Term;
use super::verdict::{CannotJudge, Judged, Ruling};
use crate::terms;

terms! {
    /// What a rag, a filter or a scraping carries.
    Residue {
        /// Oil stain.
        OilStain = "oil-stain-rag",
        /// Oil-based paste filler.
        OilFiller = "oil-filler-rag",
        /// Oil or oil varnish finish.
        OilFinish = "oil-finish-rag",
        /// Naphtha or spirits from wiping the work.
        SolventWipe = "naphtha-cloth",
        /// Lacquer thinner from cleaning the gun.
        ThinnerWipe = "thinner-cloth",
        /// Nitrocellulose sanding dust or scrapings.
        NitroDust = "nitro-dust",
        /// Loaded filters from spraying nitrocellulose.
        NitroFilter = "nitro-filter",
    }
    /// Where a residue goes.
    Place {
        /// Into the closed metal can at once, the can emptied daily.
        MetalCan = "closed-metal-can",
        /// Kept wet in its own closed container, apart from every other residue, out daily.
        WetApart = "wet-apart",
    }
    /// Coatings as a booth's residue knows them.
    Sprayed {
        /// Nitrocellulose lacquer.
        Nitrocellulose = "nitrocellulose",
        /// Oil varnish or alkyd.
        OilVarnish = "oil-varnish",
        /// Water-borne lacquer.
        WaterBorne = "water-borne",
        /// Shellac.
        Shellac = "shellac",
        /// Two-part finish with a peroxide or acid catalyst.
        Catalysed = "catalysed",
    }
    /// What was cleared since the last coating.
    BoothState {
        /// Nothing.
        AsLeft = "as-left",
        /// New filters only.
        NewFilters = "new-filters",
        /// Booth scraped; duct as it was.
        BoothScraped = "booth-scraped",
        /// Booth, duct and filters.
        AllCleared = "all-cleared",
    }
    /// Whether the next coating may be sprayed in a booth.
    BoothMove {
        /// It may.
        Spray = "spray-on",
        /// Booth, duct and filters are cleared first.
        ClearAll = "clear-all-first",
    }
    /// The filter gauge.
    Gauge {
        /// Under the mark.
        UnderMark = "under-mark",
        /// Past the mark.
        PastMark = "past-mark",
    }
    /// What the sprayer wears.
    Mask {
        /// Nothing.
        None = "no-mask",
        /// A dust mask.
        Dust = "dust-mask",
        /// A respirator without fit test or medical clearance.
        Unfitted = "borrowed-respirator",
        /// The programme's respirator, fit-tested, by a medically cleared wearer.
        Fitted = "fitted-respirator",
    }
    /// How the cartridges stand.
    Cartridge {
        /// Within the change plan.
        InPlan = "within-plan",
        /// Past the change plan, no smell yet.
        Overdue = "past-plan",
        /// Solvent is smelt through the mask.
        Smell = "smell-through",
    }
    /// What comes before the gun.
    GunMove {
        /// Spraying may begin.
        Start = "start",
        /// Breathing protection first.
        MaskFirst = "mask-first",
        /// Filters first.
        FiltersFirst = "filters-first",
        /// Both first.
        BothFirst = "mask-and-filters",
    }
    /// Steps of a spell of spraying.
    SpellStep {
        /// Suit and respirator on.
        MaskOn = "mask-on",
        /// Fan on.
        FanOn = "fan-on",
        /// Filter gauge read.
        GaugeRead = "gauge-read",
        /// Bond both containers and fill the cup, in the fan's draw.
        FillCup = "fill-cup",
        /// Spray.
        Spray = "spray",
        /// Gun cleaned in the booth.
        GunCleaned = "gun-cleaned",
        /// Work and residue have stopped giving off vapour.
        VapourGone = "vapour-gone",
        /// Fan off.
        FanOff = "fan-off",
        /// Respirator off, outside.
        MaskOff = "mask-off",
    }
    /// Whether the cup of the gun is filled when the spell begins.
    CupState {
        /// Full and closed.
        Full = "cup-full",
        /// Still to be filled.
        Empty = "cup-empty",
    }
    /// What a container is made of.
    Vessel {
        /// Metal.
        Metal = "metal",
        /// Plastic.
        Plastic = "plastic",
        /// Glass.
        Glass = "glass",
    }
    /// How two containers are joined to each other and to earth.
    Bonding {
        /// Neither.
        None = "no-wires",
        /// Grounded, not bonded to each other.
        GroundOnly = "ground-only",
        /// Bonded to each other, not grounded.
        BondOnly = "bond-only",
        /// Both.
        Both = "bonded-and-grounded",
    }
    /// What comes before pouring.
    PourMove {
        /// Pour, in the fan's draw.
        Pour = "pour",
        /// Take a metal container.
        MetalFirst = "metal-first",
        /// Bond the two containers.
        BondFirst = "bond-first",
        /// Ground them.
        GroundFirst = "ground-first",
        /// Bond and ground.
        BondAndGround = "bond-and-ground",
    }
    /// What to put right at a buffing wheel.
    WheelFix {
        /// Move below the centre, to the half that runs away.
        LowerHalf = "go-lower",
        /// Turn the work so that its edge trails.
        TrailEdge = "trail-edge",
        /// Take off or tie back what is loose.
        TieBack = "tie-back",
        /// Stop and let the film cool.
        LetCool = "let-cool",
        /// Check wheel, nut and rated speed.
        CheckNut = "check-nut",
    }
    /// How the wheel was mounted.
    WheelNut {
        /// Nut and rated speed checked.
        Checked = "nut-checked",
        /// Changed, not checked.
        Unchecked = "nut-unchecked",
    }
    /// Where the work meets the wheel.
    WheelHalf {
        /// Above the centre.
        Upper = "above-centre",
        /// Below the centre.
        Lower = "below-centre",
    }
    /// How the work's edge meets the wheel.
    WheelEdge {
        /// The wheel runs onto the edge.
        Leading = "edge-leading",
        /// The wheel runs off the edge.
        Trailing = "edge-trailing",
    }
    /// What the buffer wears.
    Worn {
        /// Loose sleeve, lanyard or long hair.
        Loose = "something-loose",
        /// Nothing loose.
        Close = "nothing-loose",
    }
    /// How the film feels.
    FilmFeel {
        /// Cool.
        Cool = "film-cool",
        /// Warm.
        Warm = "film-warm",
    }
}

/// Where a rag, filter or scraping goes, at once and not at the end of the day.
///
/// Oil-wet rags heat up by themselves: closed metal can, emptied daily (29 CFR 1910.107(g)(3)). A flammable wipe goes
/// the same way. Nitrocellulose dust and filters are kept wet and apart from all other residues (1910.107(g)(3), (g)(6)
/// and a nitrocellulose safety page): next to something that heats up by itself they burn fastest.
#[must_use]
pub fn place_for(residue: Residue) -> Ruling<Place> {
    match residue {
        Residue::OilStain | Residue::OilFiller | Residue::OilFinish => {
            Ruling::by("hazard.oily-rag", Place::MetalCan)
        }
        Residue::SolventWipe | Residue::ThinnerWipe => Ruling::by("hazard.flammable-wipe", Place::MetalCan),
        Residue::NitroDust | Residue::NitroFilter => Ruling::by("hazard.nitro-residue", Place::WetApart),
    }
}

/// Whether a coating may be sprayed where another was: the same one may; an unlike one only after booth, duct and
/// filters are clear (29 CFR 1910.107(g)(6)).
///
/// # Errors
/// [`CannotJudge`] when what was sprayed before, or what was cleared since, decides and is not known.
pub fn booth_change(before: Option<Sprayed>, state: Option<BoothState>, next: Sprayed) -> Judged<BoothMove> {
    let ruled = |answer| Ok(Ruling::by("hazard.one-booth-one-chemistry", answer));
    match (before, state) {
        (_, Some(BoothState::AllCleared)) => ruled(BoothMove::Spray),
        (Some(before), _) if before == next => ruled(BoothMove::Spray),
        (Some(_), Some(_)) => ruled(BoothMove::ClearAll),
        (None, _) => Err(CannotJudge::without("sprayed_before")),
        (Some(_), None) => Err(CannotJudge::without("booth_state")),
    }
}

/// What comes before the gun. Good draw never stands in for breathing protection: face velocity was set against fire
/// (OSHA STD 01-05-010), so it is not asked for here. A respirator counts only fit-tested, by a cleared wearer, with
/// cartridges within the change plan; smell is no change plan (29 CFR 1910.134(d)(3)(iii)(B)).
#[must_use]
pub fn before_gun(gauge: Gauge, mask: Mask, cartridge: Cartridge) -> Ruling<GunMove> {
    let breathing = mask == Mask::Fitted && cartridge == Cartridge::InPlan;
    let answer = match (breathing, gauge) {
        (true, Gauge::UnderMark) => GunMove::Start,
        (true, Gauge::PastMark) => GunMove::FiltersFirst,
        (false, Gauge::UnderMark) => GunMove::MaskFirst,
        (false, Gauge::PastMark) => GunMove::BothFirst,
    };
    Ruling::by("hazard.draw-is-no-respirator", answer)
        .and("hazard.respirator-programme")
        .and("hazard.filter-gauge")
}

/// Pairs of steps whose first must come before the second: fan before gauge and gun, mask from before the gun until
/// the gun is clean, fan on until nothing gives off vapour (29 CFR 1910.107(d)(2), (b)(5)(i), (g)(5)). The cup is filled
/// under mask and fan: common practice, no source.
const SPELL: [(SpellStep, SpellStep); 23] = [
    (SpellStep::MaskOn, SpellStep::FillCup),
    (SpellStep::FanOn, SpellStep::FillCup),
    (SpellStep::FillCup, SpellStep::Spray),
    (SpellStep::FillCup, SpellStep::GunCleaned),
    (SpellStep::FillCup, SpellStep::VapourGone),
    (SpellStep::FillCup, SpellStep::FanOff),
    (SpellStep::FillCup, SpellStep::MaskOff),
    (SpellStep::MaskOn, SpellStep::Spray),
    (SpellStep::MaskOn, SpellStep::GunCleaned),
    (SpellStep::MaskOn, SpellStep::MaskOff),
    (SpellStep::FanOn, SpellStep::GaugeRead),
    (SpellStep::FanOn, SpellStep::Spray),
    (SpellStep::FanOn, SpellStep::GunCleaned),
    (SpellStep::FanOn, SpellStep::FanOff),
    (SpellStep::GaugeRead, SpellStep::Spray),
    (SpellStep::Spray, SpellStep::GunCleaned),
    (SpellStep::Spray, SpellStep::VapourGone),
    (SpellStep::Spray, SpellStep::FanOff),
    (SpellStep::Spray, SpellStep::MaskOff),
    (SpellStep::GunCleaned, SpellStep::VapourGone),
    (SpellStep::GunCleaned, SpellStep::FanOff),
    (SpellStep::GunCleaned, SpellStep::MaskOff),
    (SpellStep::VapourGone, SpellStep::FanOff),
];

/// The steps of a spell of spraying: a cup that is full is not filled again.
#[must_use]
pub fn spell_steps(cup: CupState) -> Vec<SpellStep> {
    let fills = cup == CupState::Empty;
    SpellStep::ALL.iter().copied().filter(|step| fills || *step != SpellStep::FillCup).collect()
}

/// Whether the steps of a spell of spraying stand in a safe order.
#[must_use]
pub fn spell_order(steps: &[SpellStep]) -> Ruling<bool> {
    let place = |step| steps.iter().position(|one| *one == step);
    let kept = |(first, then): &(SpellStep, SpellStep)| match (place(*first), place(*then)) {
        (Some(first), Some(then)) => first < then,
        _ => true,
    };
    let ruling = Ruling::by("hazard.fan-round-the-gun", SPELL.iter().all(kept)).and("hazard.filter-gauge");
    if steps.contains(&SpellStep::FillCup) { ruling.and("hazard.cup-filled-in-draw") } else { ruling }
}

/// What comes before pouring a flammable liquid: a container that can be grounded, bonded to the other and both
/// grounded (29 CFR 1910.107(e)(2)-(3), (e)(9)).
///
/// # Errors
/// [`CannotJudge`] when the container is metal and its wires are not known.
pub fn before_pour(into: Vessel, bonding: Option<Bonding>) -> Judged<PourMove> {
    let answer = if into == Vessel::Metal {
        match bonding.ok_or_else(|| CannotJudge::without("bonding"))? {
            Bonding::None => PourMove::BondAndGround,
            Bonding::GroundOnly => PourMove::BondFirst,
            Bonding::BondOnly => PourMove::GroundFirst,
            Bonding::Both => PourMove::Pour,
        }
    } else {
        PourMove::MetalFirst
    };
    Ok(Ruling::by("hazard.bond-before-pour", answer))
}

/// What is known of the work at a buffing wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct AtWheel {
    /// Where the work meets the wheel.
    pub half: Option<WheelHalf>,
    /// How its edge meets the wheel.
    pub edge: Option<WheelEdge>,
    /// What the buffer wears.
    pub worn: Option<Worn>,
    /// How the film feels.
    pub film: Option<FilmFeel>,
    /// How the wheel was mounted.
    pub nut: Option<WheelNut>,
}

/// Whether a thing has to be put right at the wheel: work below centre with the edge trailing, nothing loose, the wheel
/// checked (29 CFR 1910.94(b), 1910.212), and never on warm film: fresh nitrocellulose must not be buffed hot.
///
/// # Errors
/// [`CannotJudge`] when the fact that decides is not known.
pub fn wheel_fix(fix: WheelFix, at: AtWheel) -> Judged<bool> {
    let known = |key| move || CannotJudge::without(key);
    let (rule, wrong) = match fix {
        WheelFix::LowerHalf => {
            ("hazard.wheel-grabs", at.half.ok_or_else(known("wheel_half"))? == WheelHalf::Upper)
        }
        WheelFix::TrailEdge => {
            ("hazard.wheel-grabs", at.edge.ok_or_else(known("wheel_edge"))? == WheelEdge::Leading)
        }
        WheelFix::TieBack => ("hazard.nothing-loose", at.worn.ok_or_else(known("worn"))? == Worn::Loose),
        WheelFix::LetCool => {
            ("hazard.no-hot-buffing", at.film.ok_or_else(known("film_feel"))? == FilmFeel::Warm)
        }
        WheelFix::CheckNut => {
            ("hazard.wheel-checked", at.nut.ok_or_else(known("wheel_nut"))? == WheelNut::Unchecked)
        }
    };
    Ok(Ruling::by(rule, wrong))
}
