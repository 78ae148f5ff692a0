//! Whether the work was handed over by the day, and whether what was promised holds.

use crate::app::parts::{SignKind, sign};
use crate::app::state::Shop;
use crate::walk::report::Report;
use yew::prelude::*;

pub(super) fn promise(shop: &Shop, report: &Report) -> Html {
    let promise = report.promise;
    let named = [
        ("asked", promise.asked.to_string()),
        ("offered", promise.offered.unwrap_or_default().to_string()),
        ("earliest", promise.earliest.unwrap_or_default().to_string()),
        ("day", report.spent.day.to_string()),
    ];
    let delivered = match report.in_time {
        None => "walk.promise.nothing",
        Some(true) => "walk.promise.in-time",
        Some(false) => "walk.promise.late",
    };
    let said = match (promise.offered, promise.can_be_met(), promise.holds()) {
        (None, true, _) => "walk.promise.could",
        (None, false, _) if promise.earliest.is_none() => "walk.promise.never",
        (None, false, _) => "walk.promise.could-not",
        (Some(_), true, _) => "walk.promise.offered-needless",
        (Some(_), false, true) => "walk.promise.offered-right",
        (Some(_), false, false) => "walk.promise.offered-early",
    };
    let good = report.in_time != Some(false) && promise.holds();
    html! {
        <div class="walk-promise">
            { sign(if good { SignKind::Right } else { SignKind::Wrong }) }
            <p class="lead">{ shop.say_with(delivered, &named) }{ " " }{ shop.say_with(said, &named) }</p>
        </div>
    }
}
