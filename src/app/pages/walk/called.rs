//! What faults of a walk are called, and where on the work they lie.

use super::words::inline_part;
use crate::app::state::Shop;
use crate::process::defect::Defect;
use crate::walk::Walk;
use crate::walk::marks::Mark;
use yew::prelude::*;

/// What a defect is called: its likeliest fault, or the rule where it makes none.
pub(super) fn fault(shop: &Shop, defect: &Defect) -> AttrValue {
    fault_of(shop, defect.faults(), defect.rule().0)
}

pub(super) fn fault_of(shop: &Shop, faults: &[&str], rule: &str) -> AttrValue {
    if let Some(called) = shop.texts().find(&format!("app.walk.called.{rule}")) {
        return called.to_owned().into();
    }
    let known = faults.iter().find(|id| shop.content().fault(id).is_some());
    known.map_or_else(|| shop.text(&format!("rule.{rule}")), |id| shop.text(&format!("fault.{id}")))
}

/// Shares of a part up to which something lies at its left or top, and from which at its right or bottom.
const THIRDS: (f32, f32) = (1.0 / 3.0, 2.0 / 3.0);

/// Where on its part a fault lies.
pub(super) fn place(shop: &Shop, mark: &Mark) -> AttrValue {
    let third = |share: f32, [low, middle, high]: [&'static str; 3]| match share {
        share if share < THIRDS.0 => low,
        share if share > THIRDS.1 => high,
        _ => middle,
    };
    let across = third(mark.share.0, ["left", "middle", "right"]);
    let down = third(mark.share.1, ["upper", "middle", "lower"]);
    shop.say(&format!("walk.where.{down}-{across}"))
}

/// A fault with its number, its part and its place.
pub(super) fn marked(shop: &Shop, walk: &Walk, mark: &Mark) -> String {
    let shown = walk.shown().get(mark.shown);
    let named = [
        ("n", (mark.shown + 1).to_string()),
        ("fault", shown.map(|shown| fault(shop, &shown.defect).to_string()).unwrap_or_default()),
        ("part", inline_part(shop, &walk.start().info, mark.part)),
        ("where", place(shop, mark).to_string()),
    ];
    shop.say_with("walk.marked", &named).to_string()
}
