//! The lamp over a panel: which one, where it hangs, how it is turned, and how that is said.

use super::place::{HEIGHT, MIDDLE, Place, WIDTH, percent};
use super::rail::{MILLIMETRES, Way};
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::picture::{Lamp, LampKind};
use yew::prelude::*;

/// The lamps, and the word of each.
const KINDS: [(LampKind, &str); 3] =
    [(LampKind::Tubes, "overhead"), (LampKind::Raking, "raking"), (LampKind::Point, "small")];

/// A whole turn, and a step of it, degrees.
pub(super) const ROUND: f32 = 360.0;
pub(super) const TURN: f32 = 15.0;

/// Which lamp, where it hangs over the panel, mm, how the tubes are turned and on which side the raking lamp lies, degrees
/// as the picture takes them. Each lamp is found again as it was left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LampAt {
    pub(super) kind: LampKind,
    pub(super) x: f32,
    pub(super) y: f32,
    turn: f32,
    side: f32,
}

impl Default for LampAt {
    fn default() -> Self {
        let Lamp { kind, x, y, turn } = Lamp::OVERHEAD;
        Self { kind, x, y, turn, side: Lamp::RAKING.turn }
    }
}

impl LampAt {
    /// Another lamp, as it was left.
    pub(super) const fn with(self, kind: LampKind) -> Self {
        Self { kind, ..self }
    }

    /// The same lamp over a place.
    pub(super) const fn over(self, place: Place) -> Self {
        Self { x: place.x, y: place.y, ..self }
    }

    /// The lamp as it shines. One that rakes lies at the edge of the panel.
    pub(super) fn shone(self) -> Lamp {
        match self.kind {
            LampKind::Raking => {
                let (sine, cosine) = self.toward();
                let (x, y) = (MIDDLE.x * (1.0 - cosine), MIDDLE.y * (1.0 - sine));
                Lamp { kind: self.kind, x, y, turn: self.side }
            }
            LampKind::Tubes | LampKind::Point => {
                Lamp { kind: self.kind, x: self.x, y: self.y, turn: self.turn }
            }
        }
    }

    fn toward(self) -> (f32, f32) {
        let side = self.side.to_radians();
        (libm::sinf(side), libm::cosf(side))
    }

    /// What a rail moves, and where it ends: a lamp that rakes goes round the panel.
    pub(super) fn on(self, way: Way) -> (f32, f32) {
        match (way, self.kind) {
            (Way::Along, LampKind::Raking) => (self.side, ROUND),
            (Way::Along, _) => (self.x, WIDTH),
            (Way::Across, _) => (self.y, HEIGHT),
        }
    }

    pub(super) const fn moved(self, way: Way, to: f32) -> Self {
        match (way, self.kind) {
            (Way::Along, LampKind::Raking) => Self { side: to, ..self },
            (Way::Along, _) => Self { x: to, ..self },
            (Way::Across, _) => Self { y: to, ..self },
        }
    }

    /// The same lamp turned by so many degrees.
    fn turned(self, by: f32) -> Self {
        /// Tubes look the same after half a turn.
        const HALF: f32 = 180.0;
        match self.kind {
            LampKind::Raking => Self { side: (self.side + by).rem_euclid(ROUND), ..self },
            _ => Self { turn: (self.turn + by).rem_euclid(HALF), ..self },
        }
    }

    /// Where it is, in words.
    pub(super) fn said(self, shop: &Shop, way: Way) -> AttrValue {
        if self.kind == LampKind::Raking {
            return self.turn_said(shop);
        }
        let (at, end) = self.on(way);
        let zones = match way {
            Way::Along => ["left-edge", "left", "middle", "right", "right-edge"],
            Way::Across => ["far-edge", "far", "middle", "near", "near-edge"],
        };
        /// Where the zones end, shares of the rail.
        const ENDS: [f32; 4] = [0.1, 0.4, 0.6, 0.9];
        let zone = ENDS.iter().filter(|share| at > **share * end).count();
        let zone = zones.get(zone).copied().unwrap_or("middle");
        shop.say_with(&format!("panel.over.{zone}"), &[("mm", at.round().to_string())])
    }

    /// How it is turned, in words; nothing of a lamp without direction.
    pub(super) fn turn_said(self, shop: &Shop) -> AttrValue {
        /// Sides in the order in which the raking lamp comes to them, and how the tubes may lie.
        const SIDES: [&str; 8] =
            ["left", "far-left", "far", "far-right", "right", "near-right", "near", "near-left"];
        const LIES: [&str; 4] = ["along", "falling", "across", "rising"];
        /// The eighth part of a turn, degrees.
        const EIGHTH: f32 = 45.0;
        // An eighth reaches half an eighth to either side.
        let eighth = |turn: f32| {
            (0_u8..).map(f32::from).take_while(|n| (n + 0.5) * EIGHTH <= turn.rem_euclid(ROUND)).count()
        };
        let (word, turn) = match self.kind {
            LampKind::Raking => ("low", self.side.rem_euclid(ROUND)),
            LampKind::Tubes => ("lie", self.turn),
            LampKind::Point => return AttrValue::default(),
        };
        let names: &[&str] = if self.kind == LampKind::Raking { &SIDES } else { &LIES };
        let name = names.get(eighth(turn) % names.len()).copied().unwrap_or_default();
        shop.say_with(&format!("panel.{word}.{name}"), &[("turn", turn.round().to_string())])
    }
}

/// The three lamps.
pub(super) fn lamp_choice(shop: &Shop, panel: u32, at: LampAt, on_lamp: &Callback<LampAt>) -> Html {
    let one = |(kind, word): (LampKind, &str)| {
        let picked = at.kind == kind;
        let onchange = on_lamp.reform(move |_: Event| at.with(kind));
        html! {
            <label key={word.to_owned()} class={classes!("unit", picked.then_some("picked"))}>
                <input type="radio" name={format!("lamp-{panel}")} checked={picked} {onchange} /><span>{ shop.say(&format!("panel.{word}")) }</span>
            </label>
        }
    };
    html! {
        <div key="lamps" class="panel-lamps" role="radiogroup" aria-label={shop.say("panel.which-lamp")}>
            { for KINDS.into_iter().map(one) }
        </div>
    }
}

/// Buttons that move and turn the lamp by steps: whatever is dragged can be tapped as well. A lamp that rakes is laid on the
/// side that the arrow shows.
pub(super) fn steps(shop: &Shop, at: LampAt, on_lamp: &Callback<LampAt>) -> Html {
    let step = MILLIMETRES.step;
    let (left, right) = ((at.x - step).max(0.0), (at.x + step).min(WIDTH));
    let (away, near) = ((at.y - step).max(0.0), (at.y + step).min(HEIGHT));
    let rakes = at.kind == LampKind::Raking;
    let one = |(picture, name, to): (Picture, &'static str, LampAt)| {
        let onclick = on_lamp.reform(move |_: MouseEvent| to);
        let word = shop.say(&format!("panel.{}-{name}", if rakes { "from" } else { "step" }));
        html! {
            <button key={name} type="button" class="control square" {onclick} aria-label={word.clone()} title={word}>{ icon(picture) }</button>
        }
    };
    let moves = [
        (Picture::Back, "left", LampAt { x: left, ..at }, 0.0),
        (Picture::Go, "right", LampAt { x: right, ..at }, 180.0),
        (Picture::Up, "away", LampAt { y: away, ..at }, 90.0),
        (Picture::Down, "near", LampAt { y: near, ..at }, 270.0),
    ];
    let moves = moves
        .into_iter()
        .map(|(picture, name, to, side)| (picture, name, if rakes { LampAt { side, ..at } } else { to }));
    let turns =
        [(Picture::TurnLeft, "panel.turn-left", -TURN), (Picture::TurnRight, "panel.turn-right", TURN)];
    let turn = |(picture, word, by): (Picture, &'static str, f32)| {
        let onclick = on_lamp.reform(move |_: MouseEvent| at.turned(by));
        let disabled = at.kind == LampKind::Point;
        html! {
            <button key={word} type="button" class="control square" {disabled} {onclick} aria-label={shop.say(word)} title={shop.say(word)}>{ icon(picture) }</button>
        }
    };
    html! {
        <div key="steps" class="panel-steps" role="group" aria-label={shop.say("panel.steps")}>
            { for moves.map(one) }
            { for turns.into_iter().map(turn) }
            <span key="turned" class="spoken" role="status">{ at.turn_said(shop) }</span>
        </div>
    }
}

/// The raking lamp where it lies at the edge of the picture.
pub(super) fn low(at: LampAt) -> Html {
    let (sine, cosine) = at.toward();
    // From the middle to the edge.
    let reach = (MIDDLE.x / cosine.abs()).min(MIDDLE.y / sine.abs());
    let (x, y) = (MIDDLE.x - reach * cosine, MIDDLE.y - reach * sine);
    let turn = format!("rotate({})", at.side - 90.0);
    html! {
        <svg key="low" class="panel-low" aria-hidden="true" focusable="false" hidden={at.kind != LampKind::Raking}>
            <svg x={percent(x, WIDTH)} y={percent(y, HEIGHT)} class="at">
                <g transform={turn}><path class="under" d="M-46 0h92" /><path class="over" d="M-44 0h88" /></g>
            </svg>
        </svg>
    }
}
