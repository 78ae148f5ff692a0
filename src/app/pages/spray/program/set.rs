//! A set of passes that was added, in words.

use super::fields::Along;
use crate::app::pages::spray::words;
use crate::app::state::Shop;
use crate::rules::term::Term;
use crate::spraying::setup::AS_SET;
use crate::spraying::{Passes, Setup};
use yew::prelude::*;

/// Passes that were added together.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Set {
    pub(super) goes: Along,
    pub(super) passes: Vec<Passes>,
}

/// What a set goes along, by its key.
pub(super) fn key(goes: Along) -> &'static str {
    match goes {
        Along::Line => "line",
        Along::Edge(None) => "edge",
        Along::Edge(Some(side)) => side.slug(),
    }
}

/// A set in a line or two.
pub(super) fn told(shop: &Shop, setup: &Setup, set: &Set) -> AttrValue {
    let Some(first) = set.passes.first() else { return AttrValue::default() };
    let place = |place: Option<&(f64, f64)>| {
        let (x, y) = place.copied().unwrap_or_default();
        format!("{}, {}", words::length(shop, x), words::length(shop, y))
    };
    let named = [
        ("from", place(first.line.first())),
        ("to", place(first.line.last())),
        ("wide", words::length(shop, first.wide)),
        ("distance", words::length(shop, first.distance)),
        ("speed", words::speed(shop, first.speed)),
        ("overlap", words::share(shop, first.overlap)),
        ("lead", words::length(shop, first.lead)),
        ("lag", words::length(shop, first.lag)),
        ("wait", words::seconds(shop, first.wait)),
        ("n", set.passes.len().to_string()),
    ];
    let told = shop.say_with(&format!("spray.program.told.{}", key(set.goes)), &named);
    let lie = first.lie(setup).filter(|_| set.goes == Along::Line).map(|(count, overlap)| {
        let lie = [("n", shop.figure(count, 0)), ("overlap", words::share(shop, overlap))];
        shop.say_with("spray.program.told-lie", &lie)
    });
    let fan = (first.fan != AS_SET)
        .then(|| shop.say_with("spray.program.told-fan", &[("fan", words::share(shop, first.fan))]));
    let parts: Vec<AttrValue> = [Some(told), lie, fan].into_iter().flatten().collect();
    AttrValue::from(parts.join(" "))
}
