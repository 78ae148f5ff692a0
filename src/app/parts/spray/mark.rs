//! The edge of the spot where the gun aims, drawn over the face.

use crate::spraying::hand::Aim;
use web_sys::Element;
use yew::prelude::*;

/// Its classes, away and seen.
const CLASSES: [&str; 2] = ["spray-gun", "spray-gun seen"];

pub(super) struct Mark {
    node: NodeRef,
    seen: bool,
}

impl Mark {
    pub(super) const fn of(node: NodeRef) -> Self {
        Self { node, seen: false }
    }

    /// Shows it, as wide as the spot: half its widths along the fan and across it, mm.
    pub(super) fn at(&mut self, Aim { x, y, fan, .. }: Aim, (a, b): (f64, f64)) {
        self.set("transform", &format!("translate({x:.1} {y:.1}) rotate({fan:.1}) scale({a:.1} {b:.1})"));
        self.show(true);
    }

    /// Hides it.
    pub(super) fn away(&mut self) {
        self.show(false);
    }

    fn show(&mut self, seen: bool) {
        if self.seen != seen {
            self.seen = seen;
            let [away, shown] = CLASSES;
            self.set("class", if seen { shown } else { away });
        }
    }

    fn set(&self, name: &str, value: &str) {
        if let Some(gun) = self.node.cast::<Element>() {
            // Plain attributes of our own: they take any text.
            let _ = gun.set_attribute(name, value);
        }
    }
}
