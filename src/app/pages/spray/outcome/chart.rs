//! A small chart of strokes in the order of time: each a bar as long as it was sprayed, at the height of its value.

use yew::prelude::*;

/// Size of the drawing; the foot of the bars, and the room above the highest.
const WIDE: f64 = 480.0;
const HIGH: f64 = 132.0;
const FOOT: f64 = 120.0;
const ROOM: f64 = 1.15;
/// Room at the left for the figures, and of a bar's edge.
const LEFT: f64 = 84.0;
const EDGE: f64 = 2.0;

/// A bar: how long it lasts, s, and its value; none is a gap.
pub(super) type Bar = (f64, Option<f64>);

/// `wanted` are the least and the greatest value that are wanted, drawn as a band; `figure` tells a value.
pub(super) fn chart(
    title: &AttrValue,
    bars: &[Bar],
    wanted: (f64, f64),
    figure: impl Fn(f64) -> String,
) -> Html {
    let time: f64 = bars.iter().map(|(time, _)| time).sum();
    let values = || bars.iter().filter_map(|(_, value)| *value);
    let most = values().fold(wanted.1, f64::max).max(f64::MIN_POSITIVE) * ROOM;
    let across = |time_at: f64| LEFT + time_at / time.max(f64::MIN_POSITIVE) * (WIDE - LEFT);
    let up = |value: f64| FOOT - value.clamp(0.0, most) / most * FOOT;
    let mut at = 0.0;
    let bar = |(nth, (lasts, value)): (usize, &Bar)| {
        let from = across(at);
        at += lasts;
        let wide = (across(at) - from - EDGE).max(1.0);
        let Some(value) = value else { return Html::default() };
        let top = up(*value);
        html! { <rect key={nth} class="bar" x={format!("{from:.1}")} y={format!("{top:.1}")} width={format!("{wide:.1}")} height={format!("{:.1}", FOOT - top)} /> }
    };
    let bars: Vec<Html> = bars.iter().enumerate().map(bar).collect();
    let (top, bottom) = (up(wanted.1), up(wanted.0));
    let tick = |value: f64| html! { <text x={(LEFT - 8.0).to_string()} y={format!("{:.1}", up(value) + 6.0)}>{ figure(value) }</text> };
    let same = (bottom - top).abs() < 20.0;
    html! {
        <figure class="spray-chart">
            <figcaption>{ title }</figcaption>
            <svg viewBox={format!("0 0 {WIDE} {HIGH}")} aria-hidden="true" focusable="false">
                <g key="bars">{ for bars }</g>
                <rect key="wanted" class="wanted" x={LEFT.to_string()} y={format!("{top:.1}")} width={(WIDE - LEFT).to_string()} height={format!("{:.1}", (bottom - top).max(EDGE))} />
                <path key="axis" class="axis" d={format!("M{LEFT} 0V{FOOT}H{WIDE}")} />
                { tick(wanted.1) }
                { if same { Html::default() } else { tick(wanted.0) } }
            </svg>
        </figure>
    }
}
