//! Abrasives: the two gradings, how far the next grit may jump, the last grit before what follows, scratches, scuffing,
//! levelling, buffing.

mod bare_wood;
mod buffing;
mod grades;
mod ladder;
mod last_grit;
mod levelling;
mod scratch;
mod scuff;

pub use bare_wood::{Strokes, WoodReady, ready_for_stain};
pub use buffing::{BuffMove, Compound, FineLines, LampSign, buff_move, fine_lines};
pub use grades::{Grade, P_SERIES, US_SERIES, on_sheet, p_neighbour, us_neighbour};
pub use ladder::{Abrading, ladder, next_grade, sheets_left, skips, spot_next};
pub use last_grit::{Before, last_grade};
pub use levelling::{LevelMove, Shine, level_move};
pub use scratch::{scratch_allowance, scratch_depth};
pub use scuff::{Grading, ScuffSheet, scuff_sheet};
