//! How the parts of the work look, as the values that a picture is painted from: what lies on them and can be seen, and
//! nothing that is hidden. Colours of dye and filler are by eye: no ticket names a shade (common practice, no source).

use super::start::Start;
use super::story::Walk;
use crate::content::{Binding as Bound, ColourPlan, Content, Outline};
use crate::picture::instrument::{
    Acts, Binding, Colour, Cover, Dye, Filled, Filler, Paint, PartKind, PartLook, PartWood, Prepared, Seat,
    Shade, Shape, Sheen, Side, Stain, Trim, View,
};
use crate::picture::{Screen, Species};
use crate::process::lying::Lying;
use crate::rules::sequence::job::Condition;
use crate::rules::sequence::manner::Manner;
use crate::rules::sequence::operation::Operation;

/// Optical thickness of a stain as it is usual.
const STAIN: f32 = 0.6;
/// Dry micrometres of colour at which it is as deep as it was meant; our own choice.
const COLOUR_MEANT_UM: f32 = 20.0;
/// How far a shaded edge reaches inward, mm.
const SHADE_REACH: f32 = 42.0;
/// Filler as oil-based paste in a red-brown.
const FILLER: Screen = [74, 46, 30];
/// Solid colour: a deep green.
const SOLID: Screen = [38, 74, 62];
/// Solid colour where the ticket asks for a light one: an off-white.
const LIGHT: Screen = [236, 232, 220];

/// The shape that a walk is drawn on.
#[must_use]
pub const fn shape(outline: Outline) -> Shape {
    match outline {
        Outline::Plate => Shape::Plate,
        Outline::Box => Shape::Box,
        Outline::Lute => Shape::Lute,
        Outline::Lyre => Shape::Lyre,
    }
}

/// The part of the ticket that is seen in a part of the outline; `None`: it is not finished in this job.
#[must_use]
pub fn part_of(start: &Start, kind: PartKind) -> Option<usize> {
    let parts = &start.info.ticket.parts;
    let last = parts.len().checked_sub(1)?;
    let named = |slug: &str| parts.iter().position(|part| part.slug == slug);
    match kind {
        PartKind::Fingerboard => named(kind.slug()),
        PartKind::Top => Some(named("top").or_else(|| named("soundboard")).unwrap_or(0)),
        PartKind::Plate => Some(0),
        PartKind::Neck => Some(named("neck").or_else(|| named("sides")).unwrap_or(last)),
        PartKind::Arms | PartKind::Yoke => Some(named("arms").or_else(|| named("frame")).unwrap_or(last)),
        PartKind::Back | PartKind::Sides => Some(named(kind.slug()).unwrap_or(last)),
    }
}

/// The views that show every part of a job, the front first.
#[must_use]
pub fn views(start: &Start) -> Vec<View> {
    let shape = shape(start.info.outline);
    let mut seen: Vec<usize> = Vec::new();
    let mut found = Vec::new();
    for view in [Side::Front, Side::Back, Side::Edge].into_iter().filter_map(|side| View::of(shape, side)) {
        // What is shown from another side as well is shown once: a view brings the part that it is there for.
        let main = view.parts.first().and_then(|part| part_of(start, part.kind));
        if let Some(main) = main.filter(|main| !seen.contains(main)) {
            seen.push(main);
            found.push(view);
        }
    }
    found
}

/// The wood of each part of the outline.
#[must_use]
pub fn woods(start: &Start, seed: u32, content: &Content) -> Vec<PartWood> {
    let one = |(place, kind): (u32, &PartKind)| {
        let part = part_of(start, *kind);
        let ticket = start.info.ticket.parts.get(part.unwrap_or(0));
        let look = ticket.and_then(|part| content.look_of(&part.wood));
        let species = look.map_or_else(Species::plain, |look| look.species.clone());
        PartWood { part: *kind, face: species.face, species, seed: seed.wrapping_add(place) }
    };
    (0..).zip(&PartKind::ALL).map(one).collect()
}

/// How each part of the outline looks now.
#[must_use]
pub fn looks(walk: &Walk) -> Vec<PartLook> {
    let one = |kind: &PartKind| {
        let lying = part_of(walk.start(), *kind).and_then(|part| walk.part(part));
        lying.map_or_else(
            || PartLook { cover: Cover::Tape, ..PartLook::bare(*kind) },
            |lying| look(walk.start(), *kind, &lying),
        )
    };
    PartKind::ALL.iter().map(one).collect()
}

fn look(start: &Start, kind: PartKind, lying: &Lying) -> PartLook {
    let ticket = &start.info.ticket;
    let um = |of: &[Operation]| {
        let laid = lying.laid.iter().filter(|laid| of.contains(&laid.operation));
        #[allow(clippy::cast_possible_truncation, reason = "a picture needs no more")]
        let sum = laid.map(|laid| laid.dry.get()).sum::<f64>() as f32;
        sum
    };
    let (colour_um, shade_um) = (um(&[Operation::Colour]), um(&[Operation::Shade]));
    let light = start.job.parts.iter().any(|part| part.lies(Condition::LightColour));
    let paint = match ticket.colour {
        ColourPlan::Solid => Paint::Solid(if light { LIGHT } else { SOLID }),
        _ => Paint::Clear(Dye::Amber),
    };
    let stained = lying.last(Operation::Stain);
    let filled = lying.last(Operation::Fill);
    let masked = lying.masks > 0;
    let scraped = lying.scraped && lying.done.contains(&Operation::Scrape);
    PartLook {
        prepared: prepared(lying),
        stain: stained.map(|stain| Stain { dye: dye(&stain.manners), build: STAIN }),
        filler: filled.map(|fill| Filler {
            colour: FILLER,
            state: if fill.wiped || fill.sanded { Filled::Wiped } else { Filled::Laid },
        }),
        seal_um: um(&[Operation::Washcoat, Operation::Seal]),
        colour: (colour_um > 0.0).then(|| Colour {
            paint,
            build: (colour_um / COLOUR_MEANT_UM).min(2.0),
            um: colour_um,
        }),
        shade: (shade_um > 0.0).then(|| Shade {
            dye: Dye::Tobacco,
            build: (shade_um / COLOUR_MEANT_UM).min(2.0),
            reach: SHADE_REACH,
        }),
        #[allow(clippy::cast_possible_truncation, reason = "a picture needs no more")]
        clear_um: lying.clear.get() as f32,
        sheen: sheen(lying),
        binding: match ticket.binding {
            Bound::None => Binding::None,
            _ if masked => Binding::Taped,
            _ if scraped => Binding::Scraped,
            _ => Binding::Covered,
        },
        trim: if ticket.binding == Bound::Wood { Trim::Wood } else { Trim::Plastic },
        seat: if masked { Seat::Taped } else { Seat::None },
        ..PartLook::bare(kind)
    }
}

/// Wood is damp for the eye until something else is done to it.
fn prepared(lying: &Lying) -> Prepared {
    let sanded = lying.done.iter().any(|done| matches!(done, Operation::Sand | Operation::Damp));
    match lying.done.last() {
        Some(Operation::GlueCheck) => Prepared::Damped,
        _ if sanded => Prepared::Sanded,
        _ => Prepared::Rough,
    }
}

fn dye(manners: &[Manner]) -> Dye {
    if manners.contains(&Manner::Pigment) || manners.contains(&Manner::OilStain) {
        Dye::Tobacco
    } else {
        Dye::Cherry
    }
}

fn sheen(lying: &Lying) -> Sheen {
    match lying.film() {
        Some(_) if lying.buffed => Sheen::Buffed,
        Some(_) if lying.levelled => Sheen::Levelled,
        Some(film) if film.abraded => Sheen::Scuffed,
        _ => Sheen::Sprayed,
    }
}

/// Where an operation acts, for the line that shows it.
#[must_use]
pub fn acts(operation: Operation, start: &Start) -> Acts {
    match operation {
        Operation::Shade => Acts::Edge(SHADE_REACH),
        Operation::Trim | Operation::Scrape => Acts::Binding,
        Operation::Mask | Operation::Unmask if start.job.is_bound() => Acts::Binding,
        Operation::Mask | Operation::Unmask => Acts::Seat,
        _ => Acts::Face,
    }
}
