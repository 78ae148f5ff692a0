//! Spray tasks: one thing is asked of a face that is there, with a gun that sprays.

use super::Reader;
use super::check::sheet_of;
use crate::content::{Content, EvenFilm, ShadedEdge, SprayTask};
use crate::quantity::Millimetres;

const LIST: &str = "spray";

/// Reports what does not fit in the spray tasks.
pub(super) fn check(content: &Content, reader: &mut Reader) {
    for (index, one) in content.sprays.iter().enumerate() {
        task(content, index, one, reader);
    }
}

/// Reports what does not fit in one.
pub(super) fn task(content: &Content, index: usize, task: &SprayTask, reader: &mut Reader) {
    sheet_of(LIST, index, &task.sheet, content, reader);
    if !(1..=SprayTask::HARDEST).contains(&task.difficulty) {
        let message = format!("`difficulty` is {}; 1 to {} is allowed", task.difficulty, SprayTask::HARDEST);
        reader.at(LIST, index, "difficulty", message);
    }
    match (task.film, task.shade) {
        (Some(film), None) => even(index, film, reader),
        (None, Some(shade)) => shaded(index, shade, task.work.mirrored, reader),
        _ => {
            let message = "one of [film] and [shade] is needed, and no more".to_owned();
            reader.at(LIST, index, "film", message);
        }
    }
    if task.repair.is_some() && task.film.is_none() {
        let message = "a repaired place gets an even [film]".to_owned();
        reader.at(LIST, index, "repair", message);
    }
    gun(index, task, reader);
    work(index, task, reader);
}

fn even(index: usize, film: EvenFilm, reader: &mut Reader) {
    layers(index, "film.layers", film.layers, reader);
    if !(film.from > 0.0 && film.from < film.to && film.to <= SprayTask::COATS_MOST) {
        let message = format!(
            "`from` {} and `to` {} must rise from over 0 to {} wet coats",
            film.from,
            film.to,
            SprayTask::COATS_MOST
        );
        reader.at(LIST, index, "film.from", message);
    }
}

fn shaded(index: usize, shade: ShadedEdge, mirrored: bool, reader: &mut Reader) {
    layers(index, "shade.coats", shade.coats, reader);
    if !(shade.depth > 0.0 && shade.depth <= SprayTask::COATS_MOST) {
        let message =
            format!("`depth` is {}; over 0 to {} wet coats is allowed", shade.depth, SprayTask::COATS_MOST);
        reader.at(LIST, index, "shade.depth", message);
    }
    if shade.coat_absorbance.get() <= 0.0 {
        let message = "`coat_absorbance` is 0; over 0 is allowed".to_owned();
        reader.at(LIST, index, "shade.coat_absorbance", message);
    }
    if !mirrored {
        let message = "a face that is shaded has a `mirrored` outline: both sides are compared".to_owned();
        reader.at(LIST, index, "work.mirrored", message);
    }
}

fn layers(index: usize, key: &str, layers: u32, reader: &mut Reader) {
    if !(1..=SprayTask::LAYERS_MOST).contains(&layers) {
        let message = format!("{layers} layers; 1 to {} are allowed", SprayTask::LAYERS_MOST);
        reader.at(LIST, index, key, message);
    }
}

fn gun(index: usize, task: &SprayTask, reader: &mut Reader) {
    let gun = &task.gun;
    let least = [
        ("gun.flow_ml_min", gun.flow_ml_min.get(), 1.0),
        ("gun.fan_mm", gun.fan_mm.get(), SprayTask::SPOT_LEAST_MM),
        ("gun.thin_mm", gun.thin_mm.get(), SprayTask::SPOT_LEAST_MM),
        ("gun.at_mm", gun.at_mm.get(), SprayTask::SPOT_LEAST_MM),
        ("gun.landing", gun.landing.get(), 0.01),
        ("flash_s", task.flash_s.get(), 1.0),
    ];
    for (key, value, least) in least {
        if value < least {
            reader.at(LIST, index, key, format!("{value} is too little; {least} and more is allowed"));
        }
    }
    let (narrowest, set) = (gun.thin_mm.get(), gun.fan_mm.get());
    let (least, most) = (set * SprayTask::FANS.0, set * SprayTask::FANS.1);
    let widest = gun.widest_mm.map_or(set, Millimetres::get);
    if widest < set || widest > most {
        let message = format!("{widest} is no widest fan; `fan_mm` {set} to {most} is allowed");
        reader.at(LIST, index, "gun.widest_mm", message);
    }
    if !(least..=set).contains(&narrowest) {
        let message = format!("{narrowest} is wider than the fan; {least} to `fan_mm` {set} is allowed");
        reader.at(LIST, index, "gun.thin_mm", message);
    }
}

fn work(index: usize, task: &SprayTask, reader: &mut Reader) {
    let points = &task.work.points_mm;
    let (fewest, most) = SprayTask::POINTS;
    if !(fewest..=most).contains(&points.len()) {
        let message = format!("{} points; {fewest} to {most} are allowed", points.len());
        reader.at(LIST, index, "work.points_mm", message);
    }
    let reach = SprayTask::REACH_MM;
    if let Some([x, y]) =
        points.iter().find(|point| point.iter().any(|value| !(-reach..=reach).contains(value)))
    {
        let message = format!("[{x}, {y}] lies outside; {} to {reach} mm is allowed", -reach);
        reader.at(LIST, index, "work.points_mm", message);
    }
    if task.work.mirrored && points.iter().any(|[x, _]| *x < 0.0) {
        let message = "of a mirrored outline the right side is told: x is 0 or more".to_owned();
        reader.at(LIST, index, "work.points_mm", message);
    }
}
