//! A test that is done on the panels: each begins with its own lamp, over its own mark, and what an earlier one left open
//! is closed.

use super::lamp::LampAt;
use super::place::{MIDDLE, Place};
use super::told::Told;
use crate::content::View;
use crate::picture::LampKind;
use std::rc::Rc;
use yew::prelude::*;

/// A test, and how it is seen on a panel, where it is.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Tried {
    pub(in crate::app) test: AttrValue,
    pub(in crate::app) view: Option<View>,
}

/// Lays lamp and loupe as the test wants them, whenever another test is done, and again once its mark is drawn.
#[hook]
pub(super) fn use_tried(
    tried: Option<&Tried>,
    told: Option<Rc<Told>>,
    lamp: &UseStateHandle<LampAt>,
    eye: &UseStateHandle<Option<Place>>,
) {
    let (lamp, eye) = (lamp.setter(), eye.setter());
    let drawn = told.as_ref().map(|told| told.mark);
    use_effect_with((tried.cloned(), drawn), move |(tried, _)| {
        let Some(tried) = tried else { return };
        let told = told.as_deref();
        eye.set(tried.view.and_then(|view| eye_for(view, told)));
        if let Some(view) = tried.view {
            lamp.set(lamp_for(view, told));
        }
    });
}

/// The loupe lies on the fault, or in the middle of a panel without one.
fn eye_for(view: View, told: Option<&Told>) -> Option<Place> {
    (view == View::Loupe).then(|| told.and_then(|told| told.nearest).unwrap_or(MIDDLE))
}

/// The lamp of a test, over the mark that the test leaves.
fn lamp_for(view: View, told: Option<&Told>) -> LampAt {
    let first = LampAt::default();
    let over = |place: Option<Place>| place.map_or(first, |place| first.over(place));
    let mark = told.and_then(|told| told.mark);
    match view {
        View::Raking => first.with(LampKind::Raking),
        View::MovedLamp => over(told.and_then(|told| told.nearest)).with(LampKind::Point),
        View::Pressed | View::Cloth => over(mark),
        // What a cloth has left is looked at under a small lamp.
        View::Wiped => over(mark).with(LampKind::Point),
        View::Wetted | View::Aged | View::Loupe => first,
    }
}
