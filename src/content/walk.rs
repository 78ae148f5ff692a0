//! Walks: what a job begins with that is worked from beginning to end on the model.

use super::Ticket;
use crate::quantity::{Celsius, MoistureContent, RelativeHumidity, SquareMetres};
use crate::rules::sequence::job::Condition;
use crate::rules::sequence::manner::Manner;
use crate::terms;
use serde::{Deserialize, Serialize};

terms! {
    /// The outline that the work is drawn on: shapes of our own. Text: `walk.outline.<slug>`.
    Outline {
        /// A flat plate.
        Plate = "plate",
        /// A box.
        Box = "box",
        /// A body with top, back and sides, lute-like.
        Lute = "lute",
        /// A frame with a soundboard, lyre-like.
        Lyre = "lyre",
    }
}

/// A walk, one file each under `content/walks/`. Texts: `walk.name.<slug>` and, of its ticket, `ticket.<slug>`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WalkInfo {
    /// Slug of the walk.
    pub slug: String,
    /// How hard it is: 1 to [`WalkInfo::HARDEST`].
    pub difficulty: u32,
    /// What it is drawn on.
    pub outline: Outline,
    /// The stain or dye that the order names, where it is stained.
    #[serde(default)]
    pub stain: Option<Manner>,
    /// The job ticket. `days` is the day of the job, from 1, by whose end it is to be delivered.
    pub ticket: Ticket,
    /// What is so of each part, in the order of the ticket.
    #[serde(rename = "part")]
    pub parts: Vec<WalkPart>,
    /// Air of the room, each reading until the next.
    #[serde(rename = "air")]
    pub air: Vec<RoomAir>,
}

/// What is so of a part and does not stand on the ticket: it has to be found out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WalkPart {
    /// Slug of the part on the ticket.
    pub slug: String,
    /// Area that is coated.
    pub area_m2: SquareMetres,
    /// What the moisture meter reads; without it the wood lies in the band of the sheet.
    #[serde(default)]
    pub moisture: Option<MoistureContent>,
    /// What lies on it before the work begins, or is to come over it.
    #[serde(default)]
    pub conditions: Vec<Condition>,
}

/// Air of the room from an hour of a day on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RoomAir {
    /// Day of the job, from 1.
    pub day: u32,
    /// Hour of that day, 0 to under 24.
    pub hour: f64,
    /// Air temperature.
    pub air_c: Celsius,
    /// Surface of the work.
    pub work_c: Celsius,
    /// Humidity.
    pub rh: RelativeHumidity,
}

impl WalkInfo {
    /// The hardest there is.
    pub const HARDEST: u32 = 3;
    /// Stains and dyes that an order may name.
    pub const STAINS: [Manner; 4] = [Manner::Dye, Manner::WaterDye, Manner::OilStain, Manner::Pigment];
}
