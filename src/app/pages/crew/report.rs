//! The report on the cards, worked out a family at a time.

use super::called::use_called;
use crate::app::state::{ContentContext, CrewView, Shared};
use crate::device::Slices;
use crate::exchange::crew::{Practised, practised};
use crate::learn::items::{FamilyReport, Plan, Report};
use crate::record::Event;
use std::borrow::Cow;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What answers say of the cards, and kinds that nobody was asked in a check.
#[derive(Debug, PartialEq)]
pub(super) struct Told {
    pub(super) report: Report,
    pub(super) practised: Vec<Practised>,
}

#[hook]
pub(super) fn use_report(view: Option<Shared<CrewView>>, content: ContentContext) -> Option<Rc<Told>> {
    let told = use_state(|| None::<Rc<Told>>);
    let set = told.setter();
    let called = use_called(view);
    use_effect_with((called, content), move |(called, content)| {
        if called.is_some() {
            let (called, content) = (Rc::clone(called), content.clone());
            spawn_local(async move {
                let Some((gathered, people)) = &*called else { return };
                let mut slices = Slices::begin();
                let mut events: Vec<Cow<'_, Event>> = gathered.voided().map(Cow::Borrowed).collect();
                for person in people {
                    events.extend(person.events(gathered, &person.key));
                    slices.rest().await;
                }
                let plan = Plan::of(events.iter().map(|event| &**event));
                slices.rest().await;
                let practised = practised(events.iter().map(|event| &**event));
                slices.rest().await;
                let mut families = Vec::new();
                for nth in 0..plan.families() {
                    families.extend(plan.family(&content.0, nth));
                    slices.rest().await;
                }
                set.set(Some(Rc::new(Told { report: plan.report(families), practised })));
            });
        }
    });
    (*told).clone()
}

/// What is shown of a report: while somebody voids things, each kind and each set keeps its place, and what is void stays where
/// it was. `before` is the report as it was when they began.
pub(super) fn shown(before: Option<&Report>, now: &Report) -> Report {
    let Some(before) = before else { return now.clone() };
    let same = |one: &FamilyReport| {
        let now = now.families.iter().find(|now| (&now.family, now.version) == (&one.family, one.version));
        // In its place it is as it was: to be looked at, or not.
        now.map_or_else(|| one.clone(), |now| FamilyReport { flags: one.flags.clone(), ..now.clone() })
    };
    let set = |one: &crate::learn::items::SetReport| {
        now.sets.iter().find(|now| now.set == one.set).unwrap_or(one).clone()
    };
    Report {
        families: before.families.iter().map(same).collect(),
        sets: before.sets.iter().map(set).collect(),
        ..now.clone()
    }
}
