//! When a fault came: on the day of the last coat, or later.

use super::{Fault, sanding_scratch, strip};
use crate::panel::{Layers, Probe, Recipe, Severity};
use crate::pause::pause;

impl Fault {
    /// Draws it on a panel, in turns. Looked at as it was on the day of its last coat, a panel has no fault that came later:
    /// only where it will be is marked.
    pub(crate) async fn lay(self, layers: &mut Layers, recipe: &Recipe, severity: Severity) {
        if recipe.probe != Probe::Aged || !self.came_later(recipe) {
            return self.spoil(layers, recipe, severity).await;
        }
        let mut before = layers.clone();
        pause().await;
        // What lies beside the wood was there before tape came off it.
        if matches!(self, Self::TapeBleed | Self::TapeBridge) {
            strip::taped(&mut before, recipe).await;
        }
        self.spoil(layers, recipe, severity).await;
        core::mem::swap(&mut before.mask, &mut layers.mask);
        *layers = before;
    }

    /// Whether it came after the day of the last coat: as the film aged, as it was rubbed, or as tape came off. Of a fault that
    /// can come sooner or later the panel shows one that came late. What is in the wood was there before any coat.
    /// (`came` in `content/faults.toml`, with its sources.)
    fn came_later(self, recipe: &Recipe) -> bool {
        match self {
            Self::SolventPop
            | Self::PorePinhole
            | Self::SoftFilm
            | Self::GrainSink
            | Self::ColdCheck
            | Self::Peeling
            | Self::CrowsFoot
            | Self::SubstrateCrack
            | Self::BloomHaze
            | Self::SandThrough
            | Self::WitnessLine
            | Self::GreyPore
            | Self::WaterSpot
            | Self::BuffBurn
            | Self::BuffSwirl
            | Self::TapeBleed
            | Self::TapeBridge => true,
            Self::SandingScratch => sanding_scratch::lies_in_film(recipe),
            Self::FishEye
            | Self::DustNib
            | Self::OrangePeel
            | Self::DrySpray
            | Self::ChatterMark
            | Self::LapStripe
            | Self::StainBlotch
            | Self::FatEdge
            | Self::EdgePullback
            | Self::RunSag
            | Self::WrinkleLift
            | Self::Blush
            | Self::WhiteFillerPore
            | Self::FillerHaze
            | Self::GlueSpot
            | Self::DyeBleed
            | Self::RaisedGrain
            | Self::DarkEdge
            | Self::ExtractiveBleed => false,
        }
    }
}
