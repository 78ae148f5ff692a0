//! Abrasives: the two gradings, how far the next grit may jump, where a ladder ends, when levelling goes on, buffing.

mod bare_wood;
mod buffing;
mod grades;
mod ladder;
mod levelling;

pub use bare_wood::{Strokes, WoodReady, ready_for_stain};
pub use buffing::{BuffMove, Compound, FineLines, LampSign, buff_move, fine_lines};
pub use grades::{Grade, P_SERIES, US_SERIES, on_sheet, p_neighbour, us_neighbour};
pub use ladder::{Abrading, ladder, next_grade, skips};
pub use levelling::{LevelMove, Shine, level_move};
