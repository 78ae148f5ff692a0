//! Faults: each changes the maps of a panel and marks where it is. Lengths in mm, heights in micrometres.
//!
//! Heights and strengths serve the picture (by eye, common practice, no source) where no other source is named.

mod fish_eye;

use crate::panel::{Layers, Recipe, Severity};

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

            /// Spoils a panel.
            pub(crate) fn spoil(self, layers: &mut Layers, recipe: &Recipe, severity: Severity) {
                match self { $(Self::$name => $module::spoil(layers, recipe, severity),)* }
            }
        }
    };
}

faults! {
    /// Bowls that opened in the wet coat.
    FishEye = "fish-eye" in fish_eye,
}

impl Fault {
    /// The fault of a slug.
    #[must_use]
    pub fn from_slug(slug: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|fault| fault.slug() == slug)
    }
}
