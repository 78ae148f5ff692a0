//! The second control: how far the gun is held, how wide its fan is set and how it lies, the work turned, waiting. It stands beside the hand
//! that does not spray and works while the other one does.

use super::words;
use crate::app::parts::{GunHeld, Picture, Turn, icon};
use crate::app::state::Shop;
use crate::quantity::PERCENT_A_WHOLE;
use crate::spraying::Setup;
use crate::spraying::setup::AS_SET;
use std::cell::Cell;
use std::rc::Rc;
use yew::prelude::*;

/// A step of the distance, and how near and far a hand holds a gun, mm (settings of the screen).
const DISTANCE_STEP: f64 = 20.0;
const DISTANCES: (f64, f64) = (60.0, 500.0);
/// A step of the fan's direction, and a turn after which it lies as before, degrees.
const FAN_STEP: f64 = 15.0;
const HALF_TURN: f64 = 180.0;
/// The knob of the fan goes from its narrowest to its widest in so many steps, and its width counts in per cent.
const KNOB_STEPS: f64 = 8.0;
/// A wait, s.
pub(super) const WAIT: f64 = 60.0;

/// How the gun is held before anything is set: as its fan was measured, the fan upright and as the task
/// sets it.
pub(super) fn first(setup: &Setup) -> GunHeld {
    GunHeld { distance: setup.task.gun.at_mm.get(), fan: HALF_TURN / 2.0, wide: AS_SET }
}

/// A press that acts at once, since browsers make no click of a second finger, and a click that came by a key.
type Press = (Callback<PointerEvent>, Callback<MouseEvent>);

fn press(pressed: &Rc<Cell<bool>>, act: Callback<()>) -> Press {
    let down = {
        let (pressed, act) = (Rc::clone(pressed), act.clone());
        Callback::from(move |event: PointerEvent| {
            if event.button() == 0 {
                pressed.set(true);
                act.emit(());
            }
        })
    };
    let pressed = Rc::clone(pressed);
    let click = Callback::from(move |event: MouseEvent| {
        // A key makes a click without a press, and tells no count of it.
        if !pressed.replace(false) || event.detail() == 0 {
            act.emit(());
        }
    });
    (down, click)
}

pub(super) struct Gun<'a> {
    pub(super) shop: &'a Shop,
    pub(super) setup: &'a Setup,
    pub(super) held: GunHeld,
    pub(super) turn: Turn,
    /// Whether the trigger is pulled: nothing is turned or waited for then.
    pub(super) spraying: bool,
    pub(super) pressed: Rc<Cell<bool>>,
    pub(super) on_held: Callback<GunHeld>,
    pub(super) on_turn: Callback<Turn>,
    pub(super) on_wait: Callback<()>,
}

impl Gun<'_> {
    pub(super) fn draw(&self) -> Html {
        let Self { shop, setup, held, turn, .. } = self;
        let spot = setup.opened(held.distance, 0.0, held.wide);
        let wide = [("wide", words::length(shop, 2.0 * spot.half_fan))];
        let to = |held: GunHeld| self.on_held.reform(move |()| held);
        let off =
            |by: f64| to(GunHeld { distance: (held.distance + by).clamp(DISTANCES.0, DISTANCES.1), ..*held });
        let fan = |by: f64| to(GunHeld { fan: (held.fan + by).rem_euclid(HALF_TURN), ..*held });
        let (narrowest, widest) = setup.fans();
        let knob = |by: f64| {
            // In whole per cent, as a run keeps it.
            let turned = held.wide + by * (widest - narrowest) / KNOB_STEPS;
            let wide = ((turned * PERCENT_A_WHOLE).round() / PERCENT_A_WHOLE).clamp(narrowest, widest);
            // It catches where the task sets it.
            let crosses = (held.wide - AS_SET) * (wide - AS_SET) < 0.0;
            let wide = if crosses { AS_SET } else { wide };
            to(GunHeld { wide, ..*held })
        };
        let turned = self.on_turn.reform({
            let next = turn.on();
            move |_: MouseEvent| next
        });
        let wait = self.on_wait.reform(|_: MouseEvent| ());
        let waits = [("time", words::whole_seconds(shop, WAIT))];
        html! {
            <div key="gun" class="spray-hand" role="group" aria-label={shop.say("spray.held")}>
                { self.stepper("distance", words::length(shop, held.distance), shop.say_with("spray.fan-wide", &wide),
                    (off(-DISTANCE_STEP), held.distance <= DISTANCES.0), (off(DISTANCE_STEP), held.distance >= DISTANCES.1)) }
                { self.stepper("wide", words::share(shop, held.wide), self.open(),
                    (knob(-1.0), held.wide <= narrowest), (knob(1.0), held.wide >= widest)) }
                { self.stepper("fan", words::degrees(shop, held.fan), self.lies(), (fan(-FAN_STEP), false), (fan(FAN_STEP), false)) }
                <div key="more" class="spray-more">
                    <button key="turn" type="button" class="control" disabled={self.spraying} onclick={turned}>{ icon(Picture::TurnRight) }{ shop.say("spray.turn") }</button>
                    <button key="wait" type="button" class="control" disabled={self.spraying} onclick={wait}>{ shop.say_with("spray.wait", &waits) }</button>
                </div>
            </div>
        }
    }

    /// How far the fan is opened, in words.
    fn open(&self) -> AttrValue {
        let (narrowest, widest) = self.setup.fans();
        let key = match self.held.wide {
            wide if wide == AS_SET => "as-set",
            wide if wide <= narrowest => "round",
            wide if wide >= widest => "open",
            wide if wide < AS_SET => "narrower",
            _ => "wider",
        };
        self.shop.say(&format!("spray.wide-{key}"))
    }

    /// How the fan lies, in words.
    fn lies(&self) -> AttrValue {
        let fan = self.held.fan;
        let key = if fan == 0.0 {
            "level"
        } else if fan == HALF_TURN / 2.0 {
            "upright"
        } else {
            "slanted"
        };
        self.shop.say(&format!("spray.fan-lies.{key}"))
    }

    fn stepper(
        &self,
        key: &'static str,
        value: String,
        note: AttrValue,
        less: (Callback<()>, bool),
        more: (Callback<()>, bool),
    ) -> Html {
        let shop = self.shop;
        let button = |way: &'static str, picture: Picture, (act, end): (Callback<()>, bool)| {
            let (onpointerdown, onclick) = press(&self.pressed, act);
            html! {
                <button key={way} type="button" class="control square" aria-label={shop.say(&format!("spray.{key}-{way}"))}
                    disabled={end} {onpointerdown} {onclick}>{ icon(picture) }</button>
            }
        };
        let (down, up) = if key == "fan" {
            (Picture::TurnLeft, Picture::TurnRight)
        } else {
            (Picture::Dash, Picture::Plus)
        };
        html! {
            <div {key} class="spray-step" role="group" aria-label={shop.say(&format!("spray.{key}"))}>
                <p class="note">{ shop.say(&format!("spray.{key}")) }</p>
                <div class="stepper">
                    { button("less", down, less) }
                    <output class="count" aria-live="polite">{ value }</output>
                    { button("more", up, more) }
                </div>
                <p class="note">{ note }</p>
            </div>
        }
    }
}
