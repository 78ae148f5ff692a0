//! Tells a tap that was meant for the screen before.

use crate::device::clock;
use yew::prelude::*;

/// A tap so soon after the screen came up was meant for the one before.
const SECOND_TAP_MS: f64 = 400.0;

/// When a screen came up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::app) struct SecondTap(f64);

impl SecondTap {
    /// Whether a tap that comes now is the second of a double tap: nobody has read the screen yet.
    pub(in crate::app) fn now(self) -> bool {
        clock::ticks() - self.0 < SECOND_TAP_MS
    }
}

/// When the screen that asks came up.
#[hook]
pub(in crate::app) fn use_second_tap() -> SecondTap {
    SecondTap(*use_memo((), |()| clock::ticks()))
}
