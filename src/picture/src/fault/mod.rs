//! Faults: each changes the maps of a panel and marks where it is. Lengths in mm, heights in micrometres.
//!
//! Heights and strengths serve the picture (by eye, common practice, no source) where no other source is named.

mod bloom_haze;
mod blush;
mod buff_burn;
mod buff_swirl;
mod came;
mod chatter_mark;
mod cold_check;
mod crack;
mod crows_foot;
mod dark_edge;
mod dry_spray;
mod dust_nib;
mod dye_bleed;
mod edge_pullback;
mod extractive_bleed;
mod fat_edge;
mod field;
mod filler_haze;
mod fish_eye;
mod glue_print;
mod glue_spot;
mod grain_sink;
mod grey_pore;
mod lap_stripe;
mod milk;
mod nail;
mod orange_peel;
mod pale_pore;
mod peeling;
mod pore_pinhole;
mod raised_grain;
mod run_sag;
mod sand_through;
mod sanding_scratch;
mod scatter;
mod soft_film;
mod solvent_pop;
mod speck;
mod stain_blotch;
mod strip;
mod substrate_crack;
mod tape_bleed;
mod tape_bridge;
mod thick;
mod uptake;
mod water_spot;
mod white_filler_pore;
mod wipe;
mod witness_line;
mod worn;
mod wrinkle_lift;

use crate::map::Grid;
use crate::panel::{Layers, Probe, Recipe, Severity};

macro_rules! faults {
    ($($(#[doc = $doc:expr])* $name:ident = $slug:literal in $module:ident),* $(,)?) => {
        /// A fault that can be drawn.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Fault {
            $($(#[doc = $doc])* $name,)*
        }

        impl Fault {
            /// Every fault that can be drawn.
            pub const ALL: &'static [Self] = &[$(Self::$name,)*];

            /// Its slug, as content names it.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self { $(Self::$name => $slug,)* }
            }

            /// Draws it on a panel, in turns, whenever it came.
            async fn spoil(self, layers: &mut Layers, recipe: &Recipe, severity: Severity) {
                match self { $(Self::$name => $module::spoil(layers, recipe, severity).await,)* }
            }
        }
    };
}

faults! {
    /// Bowls that opened in the wet coat.
    FishEye = "fish-eye" in fish_eye,
    /// Tiny blisters and burst pits where the film is thick.
    SolventPop = "solvent-pop" in solvent_pop,
    /// Small holes along open pores.
    PorePinhole = "pore-pinhole" in pore_pinhole,
    /// Specks and fibres that stand up out of the film.
    DustNib = "dust-nib" in dust_nib,
    /// Shallow bumps all over, each with its gloss.
    OrangePeel = "orange-peel" in orange_peel,
    /// Dull grit and powder over an area.
    DrySpray = "dry-spray" in dry_spray,
    /// Prints of a cloth and of thumbnails in film that has not hardened.
    SoftFilm = "soft-film" in soft_film,
    /// Lines and curls that a coarse grit left.
    SandingScratch = "sanding-scratch" in sanding_scratch,
    /// Even bars across the face, in the wood.
    ChatterMark = "chatter-mark" in chatter_mark,
    /// Bands of colour as far apart as the fan is wide.
    LapStripe = "lap-stripe" in lap_stripe,
    /// Closed dips over the pores, weeks after buffing.
    GrainSink = "grain-sink" in grain_sink,
    /// Stain that went in unevenly.
    StainBlotch = "stain-blotch" in stain_blotch,
    /// Hairlines across the grain, or a net of them.
    ColdCheck = "cold-check" in cold_check,
    /// Film that comes off in flakes.
    Peeling = "peeling" in peeling,
    /// Small stars of three cracks.
    CrowsFoot = "crows-foot" in crows_foot,
    /// A bead of film along an edge.
    FatEdge = "fat-edge" in fat_edge,
    /// Film that drew back from an edge.
    EdgePullback = "edge-pullback" in edge_pullback,
    /// Tears and curtains that hang down a face.
    RunSag = "run-sag" in run_sag,
    /// Splits that run with the grain or a joint.
    SubstrateCrack = "substrate-crack" in substrate_crack,
    /// Skin that shrivelled into folds.
    WrinkleLift = "wrinkle-lift" in wrinkle_lift,
    /// A milky cloud in the film.
    Blush = "blush" in blush,
    /// A veil on the film that wipes off.
    BloomHaze = "bloom-haze" in bloom_haze,
    /// A patch where the colour was rubbed away.
    SandThrough = "sand-through" in sand_through,
    /// Outlines where levelling cut into the coat below.
    WitnessLine = "witness-line" in witness_line,
    /// Air in the pores, silver from one side.
    GreyPore = "grey-pore" in grey_pore,
    /// Filler in the pores that is pale from everywhere.
    WhiteFillerPore = "white-filler-pore" in white_filler_pore,
    /// Rings and spots where drops stood.
    WaterSpot = "water-spot" in water_spot,
    /// A muddy film of filler between the pores.
    FillerHaze = "filler-haze" in filler_haze,
    /// A melted, torn streak where the wheel dragged.
    BuffBurn = "buff-burn" in buff_burn,
    /// A mass of fine arcs that goes with the lamp.
    BuffSwirl = "buff-swirl" in buff_swirl,
    /// Pale patches with a hard edge, at a joint or as prints.
    GlueSpot = "glue-spot" in glue_spot,
    /// Colour that was drawn under the tape.
    TapeBleed = "tape-bleed" in tape_bleed,
    /// Film that tore along the tape.
    TapeBridge = "tape-bridge" in tape_bridge,
    /// Dye that the first wet coat took up.
    DyeBleed = "dye-bleed" in dye_bleed,
    /// Fibres that stand up along the grain.
    RaisedGrain = "raised-grain" in raised_grain,
    /// A shaded edge too dark and with a line.
    DarkEdge = "dark-edge" in dark_edge,
    /// Colour of a dark wood on the pale wood beside it.
    ExtractiveBleed = "extractive-bleed" in extractive_bleed,
}

impl Fault {
    /// The fault of a slug.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|fault| fault.slug() == slug)
    }
}

/// Where a test tries the film, mm, whether or not it leaves a mark there; none of a test that goes by what lies on it.
pub(crate) fn tried_at(probe: Probe, grid: Grid) -> Option<(f32, f32)> {
    match probe {
        Probe::Pressed => Some(nail::Nail::beside_the_middle(grid).at),
        Probe::Cloth => Some(soft_film::tried_at(grid)),
        Probe::None | Probe::Wiped | Probe::Wetted | Probe::Aged => None,
    }
}
