//! A run played again over its film map, a good one beside it at the same time.

use crate::app::pages::spray::words;
use crate::app::parts::FilmMap;
use crate::app::state::use_shop;
use crate::device::{NextFrame, clock};
use crate::quantity::MS_A_SECOND;
use crate::spraying::Outcome;
use crate::spraying::replay::Replay;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// A step of the time line, s.
const STEP: f64 = 0.1;

#[derive(Properties)]
pub(super) struct ReplayedProps {
    pub(super) run: Rc<Outcome>,
    /// The good run, once there is one.
    pub(super) good: Option<Rc<Outcome>>,
    pub(super) alt: AttrValue,
    /// Lines and figures over the map.
    pub(super) children: Html,
}

impl PartialEq for ReplayedProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.run, &other.run)
            && self.good.as_ref().map(Rc::as_ptr) == other.good.as_ref().map(Rc::as_ptr)
            && (&self.alt, &self.children) == (&other.alt, &other.children)
    }
}

#[component]
pub(super) fn Replayed(props: &ReplayedProps) -> Html {
    let shop = use_shop();
    let (at, playing) = (use_state_eq(|| 0.0_f64), use_state_eq(|| false));
    // Counts the frames that are shown: each asks for the next, also where the clock has not moved on.
    let frame = use_state_eq(|| 0_u32);
    let own = use_memo((), |()| Replay::of(&props.run.path));
    let good = use_memo(props.good.is_some(), |_| props.good.as_ref().map(|good| Replay::of(&good.path)));
    let lasts = (*good).as_ref().map_or(0.0, Replay::lasts).max(own.lasts());
    // When it would have begun, by the clock, had it been played from its beginning.
    let began = use_mut_ref(|| 0.0_f64);
    use_effect_with((*playing, *frame, lasts), {
        let (set, stop, shown, began) = (at.setter(), playing.setter(), frame.setter(), Rc::clone(&began));
        move |(playing, frame, lasts)| {
            let (frame, lasts) = (*frame, *lasts);
            let next = playing.then(|| {
                NextFrame::ask(move || {
                    let now = (clock::ticks() - *began.borrow()) / MS_A_SECOND;
                    set.set(now.clamp(0.0, lasts));
                    stop.set(now < lasts);
                    shown.set(frame.wrapping_add(1));
                })
            });
            move || drop(next)
        }
    });
    let play = {
        let (set, at, playing, began) = (playing.setter(), at.clone(), *playing, Rc::clone(&began));
        Callback::from(move |_: MouseEvent| {
            let from = if *at < lasts { *at } else { 0.0 };
            if !playing {
                began.replace(clock::ticks() - from * MS_A_SECOND);
                at.set(from);
            }
            set.set(!playing);
        })
    };
    let oninput = {
        let (at, playing) = (at.setter(), playing.setter());
        Callback::from(move |event: InputEvent| {
            let input = event.target().and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            if let Some(value) = input.and_then(|input| input.value().parse::<f64>().ok()) {
                playing.set(false);
                at.set(value);
            }
        })
    };
    let mark = |run: &Outcome, replay: &Replay, class: &'static str| {
        let Some(point) = replay.at(*at).filter(|_| *at > 0.0) else { return Html::default() };
        let held = run.setup().opened(point.distance, point.tilt, point.wide);
        let transform = format!(
            "translate({:.1} {:.1}) rotate({:.1}) scale({:.1} {:.1})",
            point.x, point.y, point.fan, held.half_fan, held.half_thin
        );
        let open = (point.trigger > 0.0).then_some("open");
        html! { <circle key={class} class={classes!("spray-spot", class, open)} {transform} r="1" /> }
    };
    let ghost = props.good.as_ref().zip((*good).as_ref()).map(|(run, replay)| mark(run, replay, "ghost"));
    let key = if *playing { "spray.replay.stop" } else { "spray.replay.play" };
    html! {
        <>
            <FilmMap key="map" sprayer={Rc::clone(&props.run.sprayer)} alt={props.alt.clone()}>
                { props.children.clone() }{ ghost.unwrap_or_default() }{ mark(&props.run, &own, "own") }
            </FilmMap>
            <div key="time" class="spray-replay">
                <button key="play" type="button" class="control" onclick={play}>{ shop.say(key) }</button>
                <span key="at">{ words::seconds(&shop, *at) }</span>
                <input key="range" type="range" min="0" max={format!("{lasts:.1}")} step={STEP.to_string()} value={format!("{:.1}", *at)} {oninput}
                    aria-label={shop.say("spray.replay.time")} aria-valuetext={words::seconds(&shop, *at)} />
            </div>
        </>
    }
}
