//! Closed lists of trade terms. Each term has a slug that files, the command and messages share.

use serde::{Deserialize, Serialize};

/// A closed list of terms with slugs.
pub trait Term: Sized + Copy + 'static {
    /// Every term of the list.
    const ALL: &'static [Self];
    /// The slug: kebab-case, stable, the key of its text.
    fn slug(self) -> &'static str;
    /// The term with that slug.
    #[must_use]
    fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|term| term.slug() == slug)
    }
}

/// Declares a closed list: `terms! { /// doc  Name { /// doc  Variant = "slug", } }`.
#[macro_export]
macro_rules! terms {
    ($($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $slug:literal,)+ })+) => {$(
        $(#[$doc])*
        #[allow(unreachable_pub, reason = "some lists stay inside a private module")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
        pub enum $name {
            $($(#[$vdoc])* #[serde(rename = $slug)] $variant,)+
        }
        impl $crate::rules::term::Term for $name {
            const ALL: &'static [Self] = &[$(Self::$variant,)+];
            fn slug(self) -> &'static str {
                match self { $(Self::$variant => $slug,)+ }
            }
        }
    )+};
}

terms! {
    /// Bands of the step board. `Room` is the rail above the ten bands of the work.
    Stage {
        /// Entry, booth, air, mixing, waste, records.
        Room = "room",
        /// Reading the wood and sanding it.
        Sand = "sand",
        /// Colour into the wood.
        Stain = "stain",
        /// Pore filling and its wait.
        Fill = "fill",
        /// Washcoat and sealer.
        Seal = "seal",
        /// Colour coats.
        Colour = "colour",
        /// The shaded edge.
        Shade = "shade",
        /// Scraping the binding and inspecting.
        Scrape = "scrape",
        /// Clear coats.
        Clear = "clear",
        /// The long wait.
        Cure = "cure",
        /// Levelling and buffing.
        Buff = "buff",
    }
    /// What a rule guards.
    Severity {
        /// People.
        Safety = "safety",
        /// The instrument.
        Work = "work",
        /// Hours.
        Time = "time",
    }
    /// What a rule rests on.
    RuleKind {
        /// A law of nature, computed.
        Physics = "physics",
        /// A published standard, handbook or regulation.
        Standard = "standard",
        /// Common practice of the trade, no source.
        CommonPractice = "common-practice",
        /// A value of the shop's own sheet.
        ShopSheet = "shop-sheet",
    }
    /// What a surface is to look like when done.
    Look {
        /// Flat as glass: no pore shows.
        LevelGloss = "level-gloss",
        /// Pores left open to see and feel.
        OpenPore = "open-pore",
    }
    /// Kinds of pore filler, told apart by how they dry.
    Filler {
        /// Oil-based paste filler.
        OilPaste = "oil-paste",
        /// Filler in a fast solvent.
        FastSolvent = "fast-solvent",
        /// Water-borne filler.
        WaterBorne = "water-borne",
        /// Two-part filler that cures.
        TwoPart = "two-part",
    }
    /// Classes of work, told apart by how long they are left before buffing.
    WorkClass {
        /// Full-gloss instruments.
        InstrumentGloss = "instrument-gloss",
        /// Satin rubbed film and cabinet work.
        Satin = "satin",
        /// Small turned work with a thin film.
        Turned = "turned",
    }
    /// Where the colour goes.
    ColourPlan {
        /// No colour at all.
        Natural = "natural",
        /// Stain or dye in the wood.
        Stained = "stained",
        /// Opaque colour in the film.
        Solid = "solid",
        /// Transparent colour in the film.
        Transparent = "transparent",
    }
    /// Binding round the edges.
    Binding {
        /// None.
        None = "none",
        /// Plastic binding.
        Plastic = "plastic",
        /// Pale wooden binding.
        Wood = "wood",
    }
    /// What the film is made of.
    Coating {
        /// Nitrocellulose lacquer: dries by solvent release, coats melt together.
        Nitrocellulose = "nitrocellulose",
        /// Water-borne lacquer: coats do not melt together once cured.
        WaterBorne = "water-borne",
        /// Shellac: dries by solvent release, coats melt together.
        Shellac = "shellac",
    }
}

impl Look {
    /// Whether the clear of such work is levelled and buffed; open pores and satin are left off the gun. Common practice,
    /// no source.
    #[must_use]
    pub fn is_rubbed_out(self, class: WorkClass) -> bool {
        self == Self::LevelGloss && class != WorkClass::Satin
    }
}

/// Where a text or a value comes from, as the reference data mark it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Provenance {
    /// Read in a published source.
    Fetched,
    /// Computed from published values.
    Computed,
    /// Common practice, no source.
    Practice,
    /// From memory, unconfirmed: a changeable default, never a check.
    Memory,
}

impl Provenance {
    /// Its name in files and texts.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        match self {
            Self::Fetched => "fetched",
            Self::Computed => "computed",
            Self::Practice => "practice",
            Self::Memory => "memory",
        }
    }
}
