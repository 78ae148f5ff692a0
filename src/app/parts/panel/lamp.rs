//! The lamp over a panel: which one, where it hangs, how that is said.

use super::place::{HEIGHT, WIDTH};
use super::rail::{STEP, Way};
use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::picture::{Lamp, LampKind};
use yew::prelude::*;

/// The lamps, and the word of each.
const KINDS: [(LampKind, &str); 3] =
    [(LampKind::Tubes, "overhead"), (LampKind::Raking, "raking"), (LampKind::Point, "small")];

/// Which lamp, and where it hangs over the panel, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LampAt {
    pub(super) kind: LampKind,
    pub(super) x: f32,
    pub(super) y: f32,
}

impl Default for LampAt {
    fn default() -> Self {
        let Lamp { kind, x, y, .. } = Lamp::OVERHEAD;
        Self { kind, x, y }
    }
}

impl LampAt {
    /// The lamp as it shines. One that rakes lies at the left, whatever hung there before.
    pub(super) const fn shone(self) -> Lamp {
        let x = if matches!(self.kind, LampKind::Raking) { 0.0 } else { self.x };
        Lamp { kind: self.kind, x, y: self.y, turn: Lamp::OVERHEAD.turn }
    }

    pub(super) const fn moved(self, way: Way, to: f32) -> Self {
        match way {
            Way::Along => Self { x: to, ..self },
            Way::Across => Self { y: to, ..self },
        }
    }

    /// Where it is, in words.
    pub(super) fn said(self, shop: &Shop, way: Way) -> AttrValue {
        if self.kind == LampKind::Raking {
            return shop.say("panel.lamp-low");
        }
        let (at, end, zones) = match way {
            Way::Along => (self.x, WIDTH, ["left-edge", "left", "middle", "right", "right-edge"]),
            Way::Across => (self.y, HEIGHT, ["far-edge", "far", "middle", "near", "near-edge"]),
        };
        /// Where the zones end, shares of the rail.
        const ENDS: [f32; 4] = [0.1, 0.4, 0.6, 0.9];
        let zone = ENDS.iter().filter(|share| at > **share * end).count();
        let zone = zones.get(zone).copied().unwrap_or("middle");
        shop.say_with(&format!("panel.over.{zone}"), &[("mm", at.round().to_string())])
    }
}

/// The three lamps.
pub(super) fn lamp_choice(shop: &Shop, panel: u32, at: LampAt, on_lamp: &Callback<LampAt>) -> Html {
    let one = |(kind, word): (LampKind, &str)| {
        let picked = at.kind == kind;
        let onchange = on_lamp.reform(move |_: Event| LampAt { kind, ..at });
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

/// Buttons that move the lamp by steps: whatever is dragged can be tapped as well.
pub(super) fn steps(shop: &Shop, at: LampAt, on_lamp: &Callback<LampAt>) -> Html {
    let one = |(way, by, picture, word): (Way, f32, Picture, &'static str)| {
        let onclick = on_lamp.reform(move |_: MouseEvent| match way {
            Way::Along => LampAt { x: (at.x + by).clamp(0.0, WIDTH), ..at },
            Way::Across => LampAt { y: (at.y + by).clamp(0.0, HEIGHT), ..at },
        });
        let disabled = at.kind == LampKind::Raking;
        html! {
            <button key={word} type="button" class="control square" {disabled} {onclick} aria-label={shop.say(word)}>{ icon(picture) }</button>
        }
    };
    let all = [
        (Way::Along, -STEP, Picture::Back, "panel.step-left"),
        (Way::Along, STEP, Picture::Go, "panel.step-right"),
        (Way::Across, -STEP, Picture::Up, "panel.step-away"),
        (Way::Across, STEP, Picture::Down, "panel.step-near"),
    ];
    html! { <div key="steps" class="panel-steps" role="group" aria-label={shop.say("panel.steps")}>{ for all.into_iter().map(one) }</div> }
}
