//! The work drawn part by part as it now looks, to be touched. A leader line goes to the label at its right; where there
//! are several parts, lines would cross views and a letter stands on each part instead.

mod easel;
mod layout;

use crate::picture::instrument::{Acts, Part, PartKind, PartLook, PartWood, Point, View};
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

/// A ring round something on the work, with the number that it is told by.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Ring {
    pub(in crate::app) view: usize,
    /// Its middle, mm of the view.
    pub(in crate::app) at: Point,
    pub(in crate::app) number: usize,
}

/// Radius of a ring, and how far below its middle its number begins.
const RING: f32 = 14.0;
const NUMBER_LOW: f32 = 6.0;

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
    #[prop_or_default]
    pub(in crate::app) rings: Vec<Ring>,
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
        (0..*count).map(|part| leader(piece, &layout, part, (*count, *rows))).collect::<Vec<_>>()
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
                    <g key="rings" class="rings">{ for props.rings.iter().map(|one| ring(&layout, one)) }</g>
                </svg>
            </div>
            <div key="labels" class="instrument-labels">{ props.children.clone() }</div>
        </div>
    }
}

fn ring(layout: &Layout, ring: &Ring) -> Html {
    let (x, y) = layout.at(ring.view, ring.at);
    let (cx, cy, r) = (format!("{x:.1}"), format!("{y:.1}"), RING.to_string());
    let low = format!("{:.1}", y + NUMBER_LOW);
    html! {
        <g key={ring.number}>
            <circle class="under" cx={cx.clone()} cy={cy.clone()} r={r.clone()} />
            <circle cx={cx.clone()} {cy} {r} />
            <text x={cx} y={low}>{ ring.number }</text>
        </g>
    }
}

/// What an operation acts on, compared.
#[derive(Clone, Copy, PartialEq)]
struct Acting(Acts);

/// The letter of a part, from 0.
pub(in crate::app) fn letter(part: usize) -> char {
    u8::try_from(part).map_or(' ', |part| char::from(b'A'.saturating_add(part)))
}

/// Radius of a letter's ground, and how far below its middle a letter begins.
const LETTER: f32 = 11.0;
const LETTER_LOW: f32 = 5.5;

/// The line from a part to its label, or its letter where there are several.
fn leader(piece: &Piece, layout: &Layout, part: usize, (count, rows): (usize, usize)) -> Html {
    let views = || piece.views.iter().enumerate();
    let is = |(_, of): &(usize, &Part)| piece.part(of.kind) == Some(part);
    // The part that a view is there for tells most of it.
    let mut first = views().filter_map(|(nth, view)| Some((nth, view.parts.first()?)));
    let mut all = views().flat_map(|(nth, view)| view.parts.iter().map(move |of| (nth, of)));
    let Some((view, of)) = first.find(is).or_else(|| all.find(is)) else { return Html::default() };
    let (x, y) = layout.at(view, of.anchor());
    if count > 1 {
        let (cx, cy) = (format!("{x:.1}"), format!("{y:.1}"));
        return html! {
            <g key={part} class="letter">
                <circle cx={cx.clone()} {cy} r={LETTER.to_string()} />
                <text x={cx} y={format!("{:.1}", y + LETTER_LOW)}>{ letter(part) }</text>
            </g>
        };
    }
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
