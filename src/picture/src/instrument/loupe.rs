//! A fault on the work: where on a part it lies, and the panel that shows it near.

use super::blank::PartWood;
use super::field::{Field, bounds};
use super::look::{Paint, PartLook};
use super::part::Part;
use super::path::{Path, Point};
use super::states::{Filled, Sheen};
use crate::fault::Fault;
use crate::noise::Chance;
use crate::panel::{Dyes, Finish, Recipe, Severity};
use crate::pause::at_once;
use crate::wood::layer;

/// Tries for a place.
const TRIES: usize = 400;
/// What lies in the field stays so far from every line, mm, where there is room.
const IN_FIELD: f32 = 22.0;
/// What lies at the edge: from and to, mm from the binding, or from the edge where there is none.
const AT_EDGE: (f32, f32) = (1.0, 7.0);
/// What follows tape lies so near to its line, mm.
const AT_TAPE: f32 = 2.0;

/// Which places of a part a fault prefers.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Prefers {
    Field,
    Edge,
    Tape,
}

impl Fault {
    /// Faults of edges, and those that tape leaves, lie there; the others anywhere.
    const fn prefers(self) -> Prefers {
        match self {
            Self::FatEdge | Self::EdgePullback | Self::DarkEdge | Self::SandThrough | Self::DyeBleed => {
                Prefers::Edge
            }
            Self::TapeBleed | Self::TapeBridge | Self::GlueSpot => Prefers::Tape,
            _ => Prefers::Field,
        }
    }
}

impl Part {
    /// Where a fault lies on it, mm: the same for the same seed.
    #[must_use]
    pub fn fault_at(&self, fault: Fault, seed: u32) -> Point {
        let field = |paths: &[Path]| at_once(Field::of(paths));
        let (own, edge) = (field(&self.paths), field(&self.edge));
        let seat = self.seat.as_ref().map(|seat| field(core::slice::from_ref(seat)));
        let deep = own.at(own.deepest());
        let bound = self.binding.unwrap_or(0.0);
        let from_seat = |at: Point| seat.as_ref().map_or(f32::INFINITY, |seat| -seat.at(at));
        let fits = |at: Point| match fault.prefers() {
            Prefers::Field => {
                own.at(at) > IN_FIELD.min(0.5 * deep) && from_seat(at) > IN_FIELD.min(0.5 * deep)
            }
            Prefers::Edge => {
                own.at(at) > AT_EDGE.0 && (bound + AT_EDGE.0..bound + AT_EDGE.1).contains(&edge.at(at))
            }
            Prefers::Tape => {
                let line = if seat.is_some() { from_seat(at) } else { edge.at(at) - bound };
                own.at(at) > AT_EDGE.0 && line.abs() < AT_TAPE
            }
        };
        let ((left, top), (right, bottom)) = match (&self.seat, fault.prefers()) {
            (Some(seat), Prefers::Tape) => {
                let (least, most) = seat.bounds();
                ((least.0 - AT_TAPE, least.1 - AT_TAPE), (most.0 + AT_TAPE, most.1 + AT_TAPE))
            }
            _ => bounds(&self.paths),
        };
        let mut chance = Chance::new(layer(seed, self.kind.number()));
        let mut place = || (chance.between(left, right), chance.between(top, bottom));
        (0..TRIES).map(|_| place()).find(|at| fits(*at)).unwrap_or_else(|| own.deepest())
    }
}

impl PartLook {
    /// The panel that shows its wood and its film near, clean or with a fault: what a panel does not know is left out.
    #[must_use]
    pub fn near(&self, wood: &PartWood, fault: Option<(Fault, Severity)>) -> Recipe {
        let finish = match self.sheen {
            _ if self.film_um() <= 0.0 => Finish::Bare,
            Sheen::Buffed => Finish::Buffed,
            Sheen::Levelled | Sheen::Scuffed => Finish::Rubbed,
            Sheen::Sprayed if self.clear_um > 0.0 => Finish::Cleared,
            Sheen::Sprayed if self.colour.is_some() => Finish::Coloured,
            Sheen::Sprayed => Finish::Sealed,
        };
        let colour = self.colour.map(|colour| (colour.paint, colour.build));
        Recipe {
            face: wood.face,
            finish,
            filler: self.filler.filter(|filler| filler.state == Filled::Wiped).map(|filler| filler.colour),
            stain: self.stain.map_or(0.0, |stain| stain.build),
            amber: match colour {
                Some((Paint::Clear(_), build)) => build.min(1.0),
                _ => 0.0,
            },
            opaque: match colour {
                Some((Paint::Solid(paint), _)) => Some(paint),
                _ => None,
            },
            dyes: Dyes {
                stain: self.stain.map_or(Dyes::USUAL.stain, |stain| stain.dye),
                film: match colour {
                    Some((Paint::Clear(dye), _)) => dye,
                    _ => Dyes::USUAL.film,
                },
                shade: self.shade.map_or(Dyes::USUAL.shade, |shade| shade.dye),
            },
            shaded: self.shade.is_some(),
            fault,
            ..Recipe::bare(wood.species.clone(), wood.seed)
        }
    }
}
