//! Works out what results say of everybody, in slices; what was begun on other results is left.

use crate::app::state::{ContentContext, CrewView, Shared, SignedContext};
use crate::device::Slices;
use crate::device::clock;
use crate::exchange::Named;
use crate::exchange::crew::{Gathered, Looking, Person, Roll, Slips, glance, stuck};
use crate::learn::items::Redealt;
use crate::record::{Event, Voids};
use std::borrow::Cow;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Events that are put in order between two looks at the clock.
const EVENTS_AT_ONCE: usize = 2000;
/// People after whom what is known so far is shown.
const SHOWN_EACH: usize = 40;

#[hook]
pub(super) fn use_crew_view(
    gathered: &Rc<Option<Shared<Gathered>>>,
    content: &Rc<ContentContext>,
    signed: &SignedContext,
    here: &Rc<Vec<Named>>,
) -> Option<Shared<CrewView>> {
    let view = use_state(|| None::<Shared<CrewView>>);
    let latest = use_mut_ref(|| Rc::new(Cell::new(false)));
    let book = signed.book().cloned();
    let known =
        (Rc::clone(gathered), Rc::clone(content), signed.stored.clone(), Rc::clone(here), clock::today());
    use_effect_with(known, {
        let view = view.setter();
        move |(gathered, content, _, here, _)| {
            // What is under way is over.
            latest.borrow().set(true);
            let over = Rc::new(Cell::new(false));
            *latest.borrow_mut() = Rc::clone(&over);
            if let Some(gathered) = (**gathered).clone() {
                let (content, here) = (Rc::clone(content), Rc::clone(here));
                spawn_local(async move {
                    let mut slices = Slices::begin();
                    let people = everybody(&gathered, &here, &mut slices).await;
                    let from = Some(gathered.clone());
                    let mut known = CrewView { gathered: from, people, ..CrewView::default() };
                    view.set(Some(Shared::new(known.clone())));
                    let Some(now) = clock::when() else { return };
                    let looking = Looking { content: &content.0, book: book.as_deref(), now: &now };
                    for nth in 0..known.people.len() {
                        let Some(person) = known.people.get(nth) else { break };
                        let events = theirs(&gathered, person);
                        let events: Vec<&Event> = events.iter().map(|event| &**event).collect();
                        let one = glance(&looking, person, &events);
                        known.glances.push(one);
                        slices.rest().await;
                        if over.get() {
                            return;
                        }
                        if nth % SHOWN_EACH == SHOWN_EACH - 1 {
                            view.set(Some(Shared::new(known.clone())));
                        }
                    }
                    view.set(Some(Shared::new(known.clone())));
                    let (mut all, mut redealt) = (Vec::new(), Redealt::new(&content.0));
                    let voids = Voids::of(gathered.voided());
                    for person in &known.people {
                        let mut slips = Slips::new(&person.key, &person.name);
                        for event in person.as_written(&gathered) {
                            match event {
                                Event::Answered(entry) if voids.touches(entry).is_none() => {
                                    slips.take(&mut redealt, entry);
                                }
                                Event::Walked(walked) => {
                                    if let Some(decided) = walked.decided() {
                                        slips.take_decided(walked, decided, &voids);
                                    }
                                }
                                _ => continue,
                            }
                            slices.rest().await;
                            if over.get() {
                                return;
                            }
                        }
                        all.extend(slips.told());
                    }
                    known.stuck = Some(stuck(all));
                    view.set(Some(Shared::new(known)));
                });
            }
        }
    });
    (*view).clone()
}

async fn everybody(gathered: &Gathered, here: &[Named], slices: &mut Slices) -> Vec<Person> {
    let mut roll = Roll::begin(gathered);
    while roll.take_some(EVENTS_AT_ONCE) {
        slices.rest().await;
    }
    roll.people(here)
}

/// The events of a person, and what voids something.
pub(in crate::app) fn theirs<'a>(gathered: &'a Gathered, person: &Person) -> Vec<Cow<'a, Event>> {
    let mut events = person.events(gathered, &person.key);
    events.extend(gathered.voided().map(Cow::Borrowed));
    events
}
