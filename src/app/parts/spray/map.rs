//! The film map: what lies where.

use super::scale::{self, Marks, Pixels};
use crate::device::canvas;
use crate::spraying::Sprayer;
use std::rc::Rc;
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

fn show(canvas: &NodeRef, (wide, high, pixels): &Pixels) {
    let size = u32::try_from(*wide).ok().zip(u32::try_from(*high).ok());
    if let (Some((wide, high)), Some(canvas)) = (size, canvas.cast::<HtmlCanvasElement>()) {
        canvas::show(&canvas, wide, high, pixels);
    }
}

#[derive(Properties)]
pub(in crate::app) struct FilmMapProps {
    pub(in crate::app) sprayer: Rc<Sprayer>,
    /// What the map shows, in words.
    pub(in crate::app) alt: AttrValue,
    /// Lines and figures over it, in mm of the work.
    pub(in crate::app) children: Html,
}

impl PartialEq for FilmMapProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.sprayer, &other.sprayer) && self.alt == other.alt && self.children == other.children
    }
}

#[component]
pub(in crate::app) fn FilmMap(props: &FilmMapProps) -> Html {
    let canvas = use_node_ref();
    let setup = props.sprayer.setup();
    use_effect_with((), {
        let (canvas, sprayer) = (canvas.clone(), Rc::clone(&props.sprayer));
        move |()| show(&canvas, &scale::map(&sprayer, &Marks::of(sprayer.setup())))
    });
    let (view, turned) = super::Turn::default().drawn(props.sprayer.film().grid());
    html! {
        <div class="spray-map">
            <canvas key="map" ref={canvas} role="img" aria-label={props.alt.clone()}></canvas>
            <svg key="over" viewBox={view} aria-hidden="true" focusable="false">
                <g transform={turned}>
                    <path key="outline" class="spray-outline" d={super::outline(setup)} />
                    { props.children.clone() }
                </g>
            </svg>
        </div>
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct FilmScaleProps {
    pub(in crate::app) marks: Marks,
}

/// The strip of the scale alone; figures and words stand beside it.
#[component]
pub(in crate::app) fn FilmScale(props: &FilmScaleProps) -> Html {
    let canvas = use_node_ref();
    use_effect_with(props.marks.clone(), {
        let canvas = canvas.clone();
        move |marks| show(&canvas, &scale::strip(marks))
    });
    html! { <canvas key="strip" class="spray-strip" ref={canvas} aria-hidden="true"></canvas> }
}
