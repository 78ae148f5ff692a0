//! `picture`: a computed panel as a PNG file.

use crate::Output;
use crate::args::Args;
use crate::instrument;
use serde_json::json;
use std::fs::File;
use std::io::BufWriter;
use std::str::FromStr;
use stepboard::card::scene::PANEL_MM;
use stepboard::content::{Content, Dress, Look};
use stepboard::picture::{Fault, Finish, Grid, Lamp, LampKind, Panel, Probe, Recipe, Severity};

/// The panel, mm.
const WIDTH: f32 = PANEL_MM.0;
const HEIGHT: f32 = PANEL_MM.1;
/// Millimetres a pixel unless told, and what is allowed.
const SCALE: f32 = 0.25;
const SCALES: (f32, f32) = (0.05, 1.0);
/// Builds of stain and of film colour.
const BUILDS: (f32, f32) = (0.0, 2.0);

/// Answers to what is there or not.
const NO_YES: [bool; 2] = [false, true];

const fn no_yes(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

pub(crate) fn run(content: &Content, mut args: Args) -> Output {
    if args.switches.iter().any(|switch| switch == "list") {
        return Ok(list(content));
    }
    if args.switches.iter().any(|switch| switch == "visible") {
        return Ok(visible(content));
    }
    if args.values.contains_key("shape") {
        return instrument::run(content, args);
    }
    let recipe = recipe(content, &mut args)?;
    let kind = one_of(&mut args, "lamp", &LampKind::ALL, LampKind::slug)?.unwrap_or(LampKind::Tubes);
    let turn = if kind == LampKind::Raking { Lamp::RAKING.turn } else { Lamp::OVERHEAD.turn };
    let lamp = Lamp {
        kind,
        x: number(&mut args, "lamp_x", Lamp::OVERHEAD.x, (-WIDTH, 2.0 * WIDTH))?,
        y: number(&mut args, "lamp_y", Lamp::OVERHEAD.y, (-HEIGHT, 2.0 * HEIGHT))?,
        turn: number(&mut args, "lamp_turn", turn, (-360.0, 360.0))?,
    };
    let scale = number(&mut args, "scale", SCALE, SCALES)?;
    let mask = one_of(&mut args, "mask", &NO_YES, no_yes)?.unwrap_or(false);
    let out = args.take("out").ok_or_else(|| vec!["`out` is needed: the PNG file to write".to_owned()])?;
    args.nothing_left(&[
        "wood",
        "seed",
        "finish",
        "fault",
        "severity",
        "filler",
        "stain",
        "amber",
        "opaque",
        "shaded",
        "probe",
        "lamp",
        "lamp_x",
        "lamp_y",
        "lamp_turn",
        "scale",
        "mask",
        "out",
    ])?;
    let grid = Grid::covering(WIDTH, HEIGHT, scale);
    let panel = Panel::draw(recipe, grid);
    let mut pixels = Vec::new();
    if mask {
        pixels.extend(
            panel.mask().iter().flat_map(|share| [grey(*share), grey(*share), grey(*share), u8::MAX]),
        );
    } else {
        panel.light(lamp, &mut pixels);
    }
    write(&out, (grid.columns, grid.rows), &pixels).map_err(|error| vec![format!("{out}: {error}")])?;
    Ok(json!({ "out": out, "width_px": grid.columns, "height_px": grid.rows, "mm_per_px": grid.scale })
        .to_string())
}

fn list(content: &Content) -> String {
    let shown = content.panels.iter().map(|panel| {
        let dress = panel.dresses.first().and_then(|slug| content.dress(slug));
        let looks = panel.looks.iter().filter_map(|slug| content.look(slug)).map(|look| {
            let finish = panel.finishes.first().copied().unwrap_or(Finish::Bare);
            json!({ "look": look.slug, "words": words(look, finish, dress) })
        });
        json!({ "fault": panel.fault, "looks": looks.collect::<Vec<_>>() })
    });
    json!({
        "wood": content.looks.iter().map(|look| look.slug.as_str()).collect::<Vec<_>>(),
        "fault": Fault::ALL.iter().map(|fault| fault.slug()).collect::<Vec<_>>(),
        "shown": shown.collect::<Vec<_>>(),
        "finish": json!(Finish::ALL.map(Finish::slug)),
        "severity": json!(Severity::ALL.map(Severity::slug)),
        "probe": json!(Probe::ALL.map(Probe::slug)),
        "lamp": json!(LampKind::ALL.map(LampKind::slug)),
    })
    .to_string()
}

/// The words that draw a wood in a finish and in colours.
fn words(look: &Look, finish: Finish, dress: Option<&Dress>) -> Vec<String> {
    let mut words = vec![format!("wood={}", look.slug), format!("finish={}", finish.slug())];
    let Some(dress) = dress else { return words };
    let recipe = dress.on(&look.species, finish, 0);
    let hex = |[red, green, blue]: [u8; 3]| format!("{red:02x}{green:02x}{blue:02x}");
    words.extend(recipe.filler.map(|filler| format!("filler={}", hex(filler))));
    words.extend(recipe.opaque.map(|opaque| format!("opaque={}", hex(opaque))));
    words.extend([format!("stain={}", recipe.stain), format!("amber={}", recipe.amber)]);
    words.push(format!("shaded={}", no_yes(recipe.shaded)));
    words
}

/// For each fault that is shown, the looks of woods on which a slight one can be seen whatever the piece.
fn visible(content: &Content) -> String {
    let shown = content.panels.iter().map(|panel| {
        let seen = |look: &&String| {
            let Some(look) = content.look(look) else { return false };
            let dresses = || panel.dresses.iter().filter_map(|slug| content.dress(slug));
            panel.finishes.iter().flat_map(|finish| dresses().map(move |dress| (finish, dress))).all(
                |(finish, dress)| {
                    (0..PIECES).all(|seed| {
                        let clean = dress.on(&look.species, *finish, seed);
                        let fault = Fault::from_slug(&panel.fault).map(|fault| (fault, Severity::Slight));
                        is_seen(&clean, &Recipe { fault, ..clean.clone() })
                    })
                },
            )
        };
        let looks: Vec<&String> = panel.looks.iter().filter(seen).collect();
        (panel.fault.clone(), json!(looks))
    });
    serde_json::Value::Object(shown.collect()).to_string()
}

/// Whether a fault changes enough of the face by more than the eye needs, under any lamp that can be laid over it.
fn is_seen(clean: &Recipe, spoiled: &Recipe) -> bool {
    /// Steps of a byte that an eye sees beside each other.
    const STEP: u8 = 6;
    let grid = Grid::covering(WIDTH, HEIGHT, SEEN_AT);
    let (clean, spoiled) = (Panel::draw(clean.clone(), grid), Panel::draw(spoiled.clone(), grid));
    let (mut before, mut after) = (Vec::new(), Vec::new());
    let all = u32::try_from(grid.columns * grid.rows).unwrap_or(u32::MAX);
    let above = |kind: LampKind| [0.5, 0.25, 0.75].map(|x| Lamp { kind, x: x * WIDTH, ..Lamp::OVERHEAD });
    let low = SIDES.map(|turn| Lamp { turn, ..Lamp::RAKING });
    above(LampKind::Tubes).into_iter().chain(low).chain(above(LampKind::Point)).any(|lamp| {
        clean.light(lamp, &mut before);
        spoiled.light(lamp, &mut after);
        let differ = before
            .chunks(4)
            .zip(after.chunks(4))
            .filter(|(before, after)| before.iter().zip(*after).any(|(a, b)| a.abs_diff(*b) > STEP));
        let count = u32::try_from(differ.count()).unwrap_or(u32::MAX);
        f64::from(count) / f64::from(all) >= SEEN_SHARE
    })
}

/// Sides from which a low lamp rakes over the panel, degrees.
const SIDES: [f32; 4] = [0.0, 90.0, 180.0, 270.0];
/// Pieces of wood that are tried.
const PIECES: u32 = 6;
/// Share of the face that must change for a fault to be seen (by eye: about 500 pixels of 480 by 360).
const SEEN_SHARE: f64 = 0.003;
/// Millimetres a pixel at which that is measured.
const SEEN_AT: f32 = 0.5;

fn recipe(content: &Content, args: &mut Args) -> Result<Recipe, Vec<String>> {
    let look = wood(content, args)?;
    let fault = args.take("fault").map(|slug| {
        let allowed = || Fault::ALL.iter().map(|fault| fault.slug()).collect::<Vec<_>>().join(", ");
        Fault::from_slug(&slug).ok_or_else(|| vec![format!("`fault` is `{slug}`; allowed: {}", allowed())])
    });
    let severity = one_of(args, "severity", &Severity::ALL, Severity::slug)?.unwrap_or(Severity::Plain);
    Ok(Recipe {
        seed: args.take_count("seed", 0, u32::MAX)?,
        finish: one_of(args, "finish", &Finish::ALL, Finish::slug)?.unwrap_or(Finish::Bare),
        filler: colour(args, "filler")?,
        stain: number(args, "stain", 0.0, BUILDS)?,
        amber: number(args, "amber", 0.0, BUILDS)?,
        opaque: colour(args, "opaque")?,
        shaded: one_of(args, "shaded", &NO_YES, no_yes)?.unwrap_or(false),
        fault: fault.transpose()?.map(|fault| (fault, severity)),
        probe: one_of(args, "probe", &Probe::ALL, Probe::slug)?.unwrap_or_default(),
        ..Recipe::bare(look.species.clone(), 0)
    })
}

/// The look of the wood, which must be told.
pub(crate) fn wood<'a>(content: &'a Content, args: &mut Args) -> Result<&'a Look, Vec<String>> {
    look(content, args, "wood")?.ok_or_else(|| vec![format!("`wood` is needed; allowed: {}", slugs(content))])
}

/// The look of the wood that a word names; `None` where it is not said.
pub(crate) fn look<'a>(
    content: &'a Content,
    args: &mut Args,
    key: &str,
) -> Result<Option<&'a Look>, Vec<String>> {
    let Some(told) = args.take(key) else { return Ok(None) };
    let look = content.look(&told).map(Some);
    look.ok_or_else(|| vec![format!("`{key}` is `{told}`; allowed: {}", slugs(content))])
}

fn slugs(content: &Content) -> String {
    content.looks.iter().map(|look| look.slug.as_str()).collect::<Vec<_>>().join(", ")
}

pub(crate) fn one_of<T: Copy>(
    args: &mut Args,
    key: &str,
    allowed: &[T],
    slug: fn(T) -> &'static str,
) -> Result<Option<T>, Vec<String>> {
    let Some(told) = args.take(key) else { return Ok(None) };
    let found = allowed.iter().copied().find(|value| slug(*value) == told);
    let names = || allowed.iter().map(|value| slug(*value)).collect::<Vec<_>>().join(", ");
    found.map(Some).ok_or_else(|| vec![format!("`{key}` is `{told}`; allowed: {}", names())])
}

pub(crate) fn number(
    args: &mut Args,
    key: &str,
    usual: f32,
    (from, to): (f32, f32),
) -> Result<f32, Vec<String>> {
    let Some(told) = args.take(key) else { return Ok(usual) };
    let value = f32::from_str(&told).ok().filter(|value| (from..=to).contains(value));
    value.ok_or_else(|| vec![format!("`{key}` is `{told}`; a number from {from} to {to} is allowed")])
}

/// A screen colour as six hexadecimal digits; `none` and nothing told are no colour.
pub(crate) fn colour(args: &mut Args, key: &str) -> Result<Option<[u8; 3]>, Vec<String>> {
    let Some(told) = args.take(key).filter(|told| told != "none") else { return Ok(None) };
    let part = |at: usize| told.get(at..at + 2).and_then(|digits| u8::from_str_radix(digits, 16).ok());
    match (told.len(), part(0), part(2), part(4)) {
        (6, Some(red), Some(green), Some(blue)) => Ok(Some([red, green, blue])),
        _ => Err(vec![format!("`{key}` is `{told}`; `none` or six hexadecimal digits are allowed")]),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within a byte before the cast"
)]
fn grey(share: f32) -> u8 {
    (share.clamp(0.0, 1.0) * f32::from(u8::MAX)) as u8
}

/// Writes rows of red, green, blue and alpha bytes, so many pixels wide and high.
pub(crate) fn write(
    out: &str,
    (columns, rows): (usize, usize),
    pixels: &[u8],
) -> Result<(), Box<dyn std::error::Error>> {
    let (width, height) = (u32::try_from(columns)?, u32::try_from(rows)?);
    let mut encoder = png::Encoder::new(BufWriter::new(File::create(out)?), width, height);
    encoder.set_color(png::ColorType::Rgba);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.write_header()?.write_image_data(pixels)?;
    Ok(())
}
