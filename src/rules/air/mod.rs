//! Air: dew point, wet bulb, humidity ratio, and whether the work may be sprayed in it.

mod gate;
mod vapour;
mod wet_bulb;

pub use gate::{
    Action, Gate, Limit, SURFACE_NEAR_DEW_K, SprayVerdict, Thinner, may_spray, next_action,
    settled_by_one_reading, spray_gate, stopping_limits, surface_gap, warm_enough,
};
pub use vapour::{SEA_LEVEL_PA, dew_point, humidity_from_dew_point, humidity_ratio, saturation_pressure};
pub use wet_bulb::wet_bulb;
