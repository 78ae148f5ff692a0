//! What published rows say of where something shows, read as a band of the work.

use stepboard::rules::sequence::operation::{COATS, Operation};
use stepboard::rules::term::Stage;
use stepboard::walk::report::Found;
use stepboard::walk::{Walk, When};

/// Where something shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Shows {
    /// While the work is done that makes it, or before the next is.
    There,
    /// When the next coat is laid.
    NextCoat,
    /// When the mask is pulled.
    Unmasked,
    /// In that band.
    In(Stage),
    /// In that band at the earliest, and at the latest weeks after: it is seen when the work is looked over.
    From(Stage),
    /// After the work has left.
    Later,
}

/// The words of the rows (`sequence-errors.csv`, `shows_at_step`; `faults.csv`, `stage_where_it_shows`), each as it stands
/// there.
const WORDS: &[(&str, Shows)] = &[
    ("stain, and again in gloss", Shows::In(Stage::Stain)),
    ("stain, scrape test", Shows::In(Stage::Stain)),
    ("stain", Shows::In(Stage::Stain)),
    ("filler wipe", Shows::In(Stage::Fill)),
    ("the first wet coat", Shows::In(Stage::Seal)),
    ("first seal coat", Shows::In(Stage::Seal)),
    ("first coats to months", Shows::In(Stage::Seal)),
    ("seal coat", Shows::In(Stage::Seal)),
    ("seconds after the wet coat lands", Shows::In(Stage::Seal)),
    ("first clear", Shows::In(Stage::Clear)),
    ("tape test", Shows::In(Stage::Cure)),
    ("levelling and buffing", Shows::In(Stage::Buff)),
    ("levelling, weeks later", Shows::In(Stage::Buff)),
    ("levelling", Shows::In(Stage::Buff)),
    ("buffing", Shows::In(Stage::Buff)),
    ("first coats; weeks after buffing", Shows::From(Stage::Seal)),
    ("next coat", Shows::NextCoat),
    ("unmasking", Shows::Unmasked),
    ("first coat", Shows::There),
    ("sanding or first wet coat", Shows::There),
    ("at once", Shows::There),
    ("minutes", Shows::There),
    ("minutes to days", Shows::There),
    ("seconds to minutes after the coat", Shows::There),
    ("as the coat flashes", Shows::There),
    ("as the colour builds", Shows::There),
    ("as it dries", Shows::There),
    ("at touch-dry", Shows::There),
    ("hours to a day", Shows::There),
    ("days to weeks", Shows::Later),
    ("weeks after delivery", Shows::Later),
    ("months; impact", Shows::Later),
    ("tape, impact", Shows::Later),
    ("assembly", Shows::Later),
    ("unpacking", Shows::Later),
    ("in use", Shows::Later),
];

impl Shows {
    /// What words of a row say.
    pub(crate) fn read(words: &str) -> Self {
        let found = WORDS.iter().find(|(known, _)| *known == words);
        found.unwrap_or_else(|| panic!("nobody has read `{words}` yet")).1
    }

    /// The band in which a fault of a walk shows by these words; `None`: after the work has left.
    pub(crate) fn band(self, walk: &Walk, found: &Found) -> Option<Stage> {
        match self {
            Self::There => Some(found.made.0.stage()),
            Self::NextCoat | Self::Unmasked => self.at(walk, found).map(Operation::stage),
            Self::In(band) | Self::From(band) => Some(band),
            Self::Later => None,
        }
    }

    /// When an apprentice sees it by these words: at the work as soon as it gets so far, else when it is looked over.
    pub(crate) fn when(self, walk: &Walk, found: &Found) -> When {
        match self {
            Self::Later => When::After,
            _ if self.at(walk, found).is_some() => When::AtWork,
            _ => When::HandOver,
        }
    }

    /// The operation at which it shows, where the work gets so far.
    pub(crate) fn at(self, walk: &Walk, found: &Found) -> Option<Operation> {
        let on = walk.lines().iter().skip(found.made.1).map(|line| line.operation);
        match self {
            Self::There => Some(found.made.0),
            Self::NextCoat => on.skip(1).find(|operation| COATS.contains(operation)),
            Self::Unmasked => on.into_iter().find(|operation| *operation == Operation::Unmask),
            Self::In(band) => on.into_iter().find(|operation| operation.stage() >= band),
            Self::From(_) | Self::Later => None,
        }
    }
}
