//! A small chart of lines over one axis.

use yew::prelude::*;

/// Size of the drawing, and where its axes run: room for figures at the left and for words below.
const WIDE: f64 = 480.0;
const HIGH: f64 = 190.0;
const LEFT: f64 = 48.0;
const FOOT: f64 = 160.0;
/// Room at the right for half a word.
const RIGHT: f64 = 460.0;
/// Where words stand beside the axes.
const BESIDE: f64 = 8.0;
const BELOW: f64 = 22.0;
const UNDER: f64 = 6.0;

/// A line: its class in the styles, and its places across and up, from the left.
pub(super) struct Line {
    pub(super) class: &'static str,
    pub(super) places: Vec<(f64, f64)>,
}

/// An axis: its least and greatest value, and what is written at which.
pub(super) struct Axis {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) words: Vec<(f64, String)>,
}

impl Axis {
    /// How far a value lies along it, as a share.
    fn share(&self, value: f64) -> f64 {
        ((value - self.from) / (self.to - self.from).max(f64::MIN_POSITIVE)).clamp(0.0, 1.0)
    }
}

pub(super) fn lines(title: &AttrValue, across: &Axis, up: &Axis, lines: &[Line]) -> Html {
    let x = |value: f64| LEFT + across.share(value) * (RIGHT - LEFT);
    let y = |value: f64| FOOT - up.share(value) * FOOT;
    let line = |line: &Line| {
        let step = |(nth, (at, value)): (usize, &(f64, f64))| {
            format!("{}{:.1} {:.1}", if nth == 0 { 'M' } else { 'L' }, x(*at), y(*value))
        };
        let d: String = line.places.iter().enumerate().map(step).collect();
        html! { <path key={line.class} class={classes!("line", line.class)} {d} /> }
    };
    let below = |(value, word): &(f64, String)| {
        html! { <text class="below" x={format!("{:.1}", x(*value))} y={(FOOT + BELOW).to_string()}>{ word }</text> }
    };
    let beside = |(value, word): &(f64, String)| {
        html! { <text x={(LEFT - BESIDE).to_string()} y={format!("{:.1}", (y(*value) + UNDER).max(2.0 * UNDER))}>{ word }</text> }
    };
    html! {
        <figure class="spray-chart">
            <figcaption>{ title }</figcaption>
            <svg viewBox={format!("0 0 {WIDE} {HIGH}")} aria-hidden="true" focusable="false">
                <g key="lines">{ for lines.iter().map(line) }</g>
                <path key="axis" class="axis" d={format!("M{LEFT} 0V{FOOT}H{WIDE}")} />
                <g key="below">{ for across.words.iter().map(below) }</g>
                <g key="beside">{ for up.words.iter().map(beside) }</g>
            </svg>
        </figure>
    }
}
