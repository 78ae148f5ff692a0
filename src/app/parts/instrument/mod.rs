//! The work drawn part by part as it now looks, to be touched; leader lines to the labels at its right.

mod easel;
mod layout;

use crate::picture::instrument::{Acts, Part, PartKind, PartLook, PartWood, View};
use easel::Easel;
use layout::{HEIGHT, LABELS, Layout, WIDTH};
use std::rc::Rc;
use yew::prelude::*;

/// The work as it is drawn: its views, the wood of their parts, and the part of the ticket that each is of.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Piece {
    pub(in crate::app) views: Vec<View>,
    pub(in crate::app) woods: Vec<PartWood>,
    pub(in crate::app) parts: Vec<(PartKind, usize)>,
}

impl Piece {
    fn part(&self, kind: PartKind) -> Option<usize> {
        self.parts.iter().find(|(one, _)| *one == kind).map(|(_, part)| *part)
    }
}

#[derive(Properties, PartialEq)]
pub(in crate::app) struct InstrumentProps {
    pub(in crate::app) piece: Rc<Piece>,
    pub(in crate::app) looks: Rc<Vec<PartLook>>,
    /// Parts of the ticket that are picked, and how many there are; rows of labels, one for each and maybe more below.
    pub(in crate::app) picked: Vec<usize>,
    pub(in crate::app) count: usize,
    pub(in crate::app) rows: usize,
    /// Where what is picked will act.
    #[prop_or_default]
    pub(in crate::app) acts: Option<Acts>,
    /// Told which part was touched.
    pub(in crate::app) on_part: Callback<usize>,
    /// What the picture shows, for those who do not see it.
    pub(in crate::app) alt: AttrValue,
    /// Labels of the parts, in their order.
    pub(in crate::app) children: Html,
}

#[component]
pub(in crate::app) fn Instrument(props: &InstrumentProps) -> Html {
    let place = use_node_ref();
    let easel =
        use_memo(Rc::clone(&props.piece), |piece| Easel::new(place.clone(), &piece.views, &piece.woods));
    use_effect_with(Rc::clone(&easel), |easel| {
        let easel = Rc::clone(easel);
        move || easel.stop()
    });
    use_effect_with((Rc::clone(&props.looks), Rc::clone(&easel)), |(looks, easel)| easel.paint(looks));
    let layout = use_memo(Rc::clone(&props.piece), |piece| Layout::of(&piece.views));
    let lines = use_memo((Rc::clone(&props.piece), props.count, props.rows), |(piece, count, rows)| {
        (0..*count).map(|part| leader(piece, &layout, part, *rows)).collect::<Vec<_>>()
    });
    let known = (Rc::clone(&props.piece), props.picked.clone(), props.acts.map(Acting));
    let dotted = use_memo(known, |(piece, picked, acts)| {
        acts.map(|acts| dotted(piece, &layout, picked, acts.0)).unwrap_or_default()
    });
    let touch = |view: usize, part: &Part| {
        let of = props.piece.part(part.kind);
        let onclick = props.on_part.clone();
        let onclick = Callback::from(move |_: MouseEvent| of.iter().for_each(|part| onclick.emit(*part)));
        let picked = of.is_some_and(|of| props.picked.contains(&of));
        html! { <path key={format!("{view}-{}", part.kind.slug())} class={classes!("touch", picked.then_some("picked"))} d={layout.path(view, &part.paths)} {onclick} /> }
    };
    let views = props.piece.views.iter().enumerate();
    html! {
        <div class="instrument">
            <div key="place" class="instrument-place">
                <canvas ref={place} role="img" aria-label={props.alt.clone()} />
                <svg viewBox={format!("0 0 {WIDTH} {HEIGHT}")} aria-hidden="true" focusable="false">
                    <g key="touch">{ for views.flat_map(|(nth, view)| view.parts.iter().map(move |part| (nth, part))).map(|(nth, part)| touch(nth, part)) }</g>
                    <path key="acts-under" class="acts under" d={(*dotted).clone()} />
                    <path key="acts" class="acts" d={(*dotted).clone()} />
                    <g key="lines" class="leaders">{ for lines.iter().cloned() }</g>
                </svg>
            </div>
            <div key="labels" class="instrument-labels">{ props.children.clone() }</div>
        </div>
    }
}

/// What an operation acts on, compared.
#[derive(Clone, Copy, PartialEq)]
struct Acting(Acts);

/// The line from a part to its label.
fn leader(piece: &Piece, layout: &Layout, part: usize, rows: usize) -> Html {
    let views = || piece.views.iter().enumerate();
    let is = |(_, of): &(usize, &Part)| piece.part(of.kind) == Some(part);
    // The part that a view is there for tells most of it.
    let mut first = views().filter_map(|(nth, view)| Some((nth, view.parts.first()?)));
    let mut all = views().flat_map(|(nth, view)| view.parts.iter().map(move |of| (nth, of)));
    let Some((view, of)) = first.find(is).or_else(|| all.find(is)) else { return Html::default() };
    let (x, y) = layout.at(view, of.anchor());
    let share = |nth: usize| f32::from(u16::try_from(nth).unwrap_or(u16::MAX));
    let row = (share(part) + 0.5) / share(rows).max(1.0) * HEIGHT;
    html! {
        <g key={part}>
            <path class="under" d={format!("M{x:.1} {y:.1}L{LABELS} {row:.1}")} />
            <path d={format!("M{x:.1} {y:.1}L{LABELS} {row:.1}")} />
            <circle cx={format!("{x:.1}")} cy={format!("{y:.1}")} r="4.5" />
        </g>
    }
}

/// The lines along which something acts on the parts that are picked.
fn dotted(piece: &Piece, layout: &Layout, picked: &[usize], acts: Acts) -> String {
    let views = piece.views.iter().enumerate();
    let all = views.flat_map(|(nth, view)| view.parts.iter().map(move |part| (nth, part)));
    let those = all.filter(|(_, part)| piece.part(part.kind).is_some_and(|of| picked.contains(&of)));
    those.map(|(view, part)| layout.path(view, &part.acts(acts))).collect()
}
