//! Whether the work was handed over by the day and without faults, and whether what was promised holds.

use crate::app::parts::{SignKind, sign};
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::walk::report::Report;
use crate::walk::undone::Undone;
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
        (Some(_), false, true) if promise.is_late() => "walk.promise.offered-late",
        (Some(_), false, true) => "walk.promise.offered-right",
        (Some(_), false, false) => "walk.promise.offered-early",
    };
    let lacks = |one: &Undone| {
        let named = [("done", one.done.to_string()), ("ordered", one.ordered.to_string())];
        let what = shop.text(&format!("term.{}", one.operation.slug()));
        let so_far = (one.ordered > 1).then(|| shop.say_with("walk.promise.so-many", &named));
        so_far.map_or_else(|| what.to_string(), |so_far| format!("{what} {so_far}"))
    };
    // Whoever says that the day cannot be met hands nothing over.
    let lacking: Vec<String> = report.undone.iter().filter(|_| report.in_time.is_some()).map(lacks).collect();
    let good = lacking.is_empty() && report.in_time != Some(false) && promise.holds();
    let open = report.found.iter().filter(|one| one.mended.is_none()).count();
    let kind = match (good, promise.is_late() || open > 0) {
        (true, false) => SignKind::Right,
        (true, true) => SignKind::Partly,
        (false, _) => SignKind::Wrong,
    };
    html! {
        <div class="walk-promise">
            { sign(kind) }
            <p class="lead">{ shop.say_with(delivered, &named) }{ " " }{ shop.say_with(said, &named) }
                if open > 0 { { " " }{ shop.say_with("walk.promise.faults", &[("n", open.to_string())]) } }
                if !lacking.is_empty() { { " " }{ shop.say_with("walk.promise.undone", &[("what", lacking.join(", "))]) } }
            </p>
        </div>
    }
}
