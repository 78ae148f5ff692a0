//! `picture shape=...`: the work drawn as it looks in a state, as a PNG file.

use crate::Output;
use crate::args::Args;
use crate::picture::{colour, look, number, one_of, wood, write};
use serde_json::json;
use stepboard::content::{Content, Look};
use stepboard::picture::instrument::{
    Binding, Colour, Cover, Drawing, Dye, Filled, Filler, Paint, PartKind, PartLook, PartWood, Prepared,
    Seat, Shade, Shape, Sheen, Side, Stain, View,
};

/// Millimetres a pixel unless told, and what is allowed.
const SCALE: f32 = 1.0;
const SCALES: (f32, f32) = (0.2, 4.0);
/// Builds, and the usual one of stain.
const BUILDS: (f32, f32) = (0.0, 2.0);
const STAIN: f32 = 0.6;
/// Dry films, micrometres: what is allowed, and that of a film of colour unless told.
const FILMS_UM: (f32, f32) = (0.0, 1_000.0);
const COLOUR_UM: f32 = 20.0;
/// How far a shade reaches unless told, and what is allowed, mm.
const REACH_MM: f32 = 56.0;
const REACHES_MM: (f32, f32) = (1.0, 300.0);

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    let shape = one_of(&mut args, "shape", &Shape::ALL, Shape::slug)?
        .ok_or_else(|| vec!["`shape` is needed".to_owned()])?;
    let side = one_of(&mut args, "side", &Side::ALL, Side::slug)?.unwrap_or(Side::Front);
    let sides = Side::ALL.into_iter().filter(|side| View::of(shape, *side).is_some()).map(Side::slug);
    let (told, sides) = (side.slug(), sides.collect::<Vec<_>>().join(", "));
    let view = View::of(shape, side)
        .ok_or_else(|| vec![format!("`side` is `{told}`; of a {} {sides} are allowed", shape.slug())])?;
    let wood = wood(content, &mut args)?;
    let top = look(content, &mut args, "top")?.unwrap_or(wood);
    let seed = args.take_count("seed", 0, u32::MAX)?;
    let scale = number(&mut args, "scale", SCALE, SCALES)?;
    let state = state(&mut args)?;
    let out = args.take("out").ok_or_else(|| vec!["`out` is needed: the PNG file to write".to_owned()])?;
    args.nothing_left(&KEYS)?;
    let kinds: Vec<PartKind> = view.parts.iter().map(|part| part.kind).collect();
    let woods = kinds.iter().map(|part| grown(if *part == PartKind::Top { top } else { wood }, *part, seed));
    let looks = kinds.iter().map(|part| PartLook { part: *part, ..state }).collect();
    let drawing = Drawing::begin(view, woods.collect(), scale).finish().paint(looks).finish();
    let (width, height) = drawing.size();
    write(&out, (width, height), drawing.pixels()).map_err(|error| vec![format!("{out}: {error}")])?;
    Ok(json!({ "out": out, "width_px": width, "height_px": height, "mm_per_px": scale }).to_string())
}

/// Every word that may be said.
const KEYS: [&str; 24] = [
    "shape",
    "side",
    "wood",
    "top",
    "seed",
    "scale",
    "prepared",
    "stain",
    "stain_build",
    "filler",
    "filled",
    "seal_um",
    "colour",
    "opaque",
    "build",
    "colour_um",
    "shade",
    "shade_mm",
    "clear_um",
    "sheen",
    "binding",
    "seat",
    "cover",
    "out",
];

fn grown(look: &Look, part: PartKind, seed: u32) -> PartWood {
    PartWood { part, face: look.species.face, species: look.species.clone(), seed }
}

/// The state that is told, the same for every part.
fn state(args: &mut Args) -> Result<PartLook, Vec<String>> {
    let stain_build = number(args, "stain_build", STAIN, BUILDS)?;
    let filled = one_of(args, "filled", &Filled::ALL, Filled::slug)?.unwrap_or(Filled::Wiped);
    let dye = one_of(args, "colour", &Dye::ALL, Dye::slug)?;
    let opaque = colour(args, "opaque")?;
    if dye.is_some() && opaque.is_some() {
        return Err(vec!["`colour` and `opaque` are both told; one of them is allowed".to_owned()]);
    }
    let paint = dye.map(Paint::Clear).or_else(|| opaque.map(Paint::Solid));
    let (build, um) = (number(args, "build", 1.0, BUILDS)?, number(args, "colour_um", COLOUR_UM, FILMS_UM)?);
    let reach = number(args, "shade_mm", REACH_MM, REACHES_MM)?;
    Ok(PartLook {
        prepared: one_of(args, "prepared", &Prepared::ALL, Prepared::slug)?.unwrap_or_default(),
        stain: one_of(args, "stain", &Dye::ALL, Dye::slug)?.map(|dye| Stain { dye, build: stain_build }),
        filler: colour(args, "filler")?.map(|colour| Filler { colour, state: filled }),
        seal_um: number(args, "seal_um", 0.0, FILMS_UM)?,
        colour: paint.map(|paint| Colour { paint, build, um }),
        shade: one_of(args, "shade", &Dye::ALL, Dye::slug)?.map(|dye| Shade { dye, build: 1.0, reach }),
        clear_um: number(args, "clear_um", 0.0, FILMS_UM)?,
        sheen: one_of(args, "sheen", &Sheen::ALL, Sheen::slug)?.unwrap_or_default(),
        binding: one_of(args, "binding", &Binding::ALL, Binding::slug)?.unwrap_or_default(),
        seat: one_of(args, "seat", &Seat::ALL, Seat::slug)?.unwrap_or_default(),
        cover: one_of(args, "cover", &Cover::ALL, Cover::slug)?.unwrap_or_default(),
        ..PartLook::bare(PartKind::Plate)
    })
}
