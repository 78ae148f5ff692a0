//! The work drawn part by part as it now looks: outlines of our own, their wood, and what was done to each part.
//!
//! A [`View`] tells the parts of a shape from a side, with lines in mm for labels and for touch. A [`Drawing`] grows their
//! wood once and paints them in their [`PartLook`], again whenever one changes. Colours and strengths are by eye (common
//! practice, no source) where no other source is named.

mod acts;
mod blank;
mod drawing;
mod dyes;
mod field;
mod gloss;
mod ground;
mod inlay;
mod lie;
mod look;
mod loupe;
mod masking;
mod over;
mod paint;
mod part;
mod path;
mod shape;
mod states;

pub use crate::dye::Dye;
pub use acts::Acts;
pub use blank::PartWood;
pub use drawing::Drawing;
pub use look::{Colour, Filler, Paint, PartLook, Shade, Stain};
pub use part::{Grain, Part, PartKind, Rosette};
pub use path::{Path, Point};
pub use shape::{Shape, Side, View};
pub use states::{Binding, Cover, Filled, Prepared, Seat, Sheen, Trim};
