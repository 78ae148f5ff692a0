//! Steps of a schedule that was written by hand, done on a walk: with values chosen by hand, dressed and with all duties seen to.

use crate::schedule::Do;
use crate::steps::{go, ready_for_the_gun, wait};
use stepboard::content::{Ask, Content};
use stepboard::rules::sequence::operation::{COATS, Operation as Op};
use stepboard::walk::at_hand::asked;
use stepboard::walk::decision::{Decision, Wait, Work};
use stepboard::walk::{RoomAct, Walk, Why, right};

/// What is chosen wherever it is asked for, by hand.
fn choice(walk: &Walk, key: &str, bare: bool) -> &'static str {
    let job = &walk.start().job;
    let wants_barrier = job.parts.iter().any(|part| part.is_oily() || part.wants_barrier());
    match key {
        "ladder" => "every-grit",
        "strokes" => "with-the-grain",
        "sanding-dust" => "vacuumed",
        "blade" => "angle-changed",
        "cloth" => "vacuum-only",
        "stain" if walk.start().info.slug == "cherry-box" => "pigment-stain",
        "stain" => "spirit-dye",
        "laid" => "by-cloth",
        "excess" => "wiped-off",
        "filler-colour" => "neutral",
        "wiped-when" => "finger-ball",
        "scuffed" => "light",
        "lubricant" => "dry",
        "depth" => "within-last-coat",
        "washcoat" => "thin",
        "mix" if walk.air().is_some_and(|air| air.humidity.get() > SPREAD_RH) => "retarder",
        "mix" => "as-the-sheet",
        "held" => "lying-flat",
        "edges" => "edge-once",
        "warmth" => "left-alone",
        "sealer" if bare && wants_barrier => "dewaxed-shellac",
        "sealer" => "plain-sealer",
        "pores" => "as-they-lie",
        "wheels" => "one-a-compound",
        "sample" => "tried-and-agreed",
        other => panic!("nobody has chosen {other}"),
    }
}

/// What is set wherever it is asked for, by hand: wood to P220 (se-32), film to P2000 before compound (se-26), wet film of the
/// sheet, distance of a body pass and of a shading one in millimetres (settings of `coating/spray.md`), half an overlap.
fn number(walk: &Walk, ask: Ask, op: Op) -> f64 {
    match (ask, op, walk.start().info.ticket.sheet.as_str()) {
        (Ask::LastGrit, Op::Level, _) => 2000.0,
        (Ask::LastGrit, ..) => 220.0,
        (Ask::Coats | Ask::Between, ..) => 1.0,
        (Ask::WetFilm, _, "nitrocellulose") => 100.0,
        (Ask::WetFilm, _, "water-borne") => 90.0,
        (Ask::WetFilm, ..) => 75.0,
        (Ask::Distance, Op::Shade, _) => 380.0,
        (Ask::Distance, ..) => 230.0,
        (Ask::Overlap, ..) => 0.5,
        (Ask::MixAge, ..) => 0.0,
    }
}

fn values(walk: &Walk, content: &Content, step: Do) -> Work {
    let at_hand = asked(content, &walk.start().sheet, step.op);
    let all = 0..walk.start().parts();
    let parts = if step.parts.is_empty() { all.collect() } else { step.parts.to_vec() };
    let numbers = at_hand.numbers.iter().map(|one| (one.ask, number(walk, one.ask, step.op)));
    let bare = walk.part(0).is_some_and(|part| !part.is_coated());
    let picks = at_hand.choices.iter().map(|one| (one.key.clone(), choice(walk, &one.key, bare).to_owned()));
    Work { operation: step.op, parts, numbers: numbers.collect(), picks: picks.collect() }
}

/// Away for some hours, tidied up: cloths into the can, the gun cleaned.
pub(crate) fn away(walk: &mut Walk, content: &Content, away: Decision) {
    let room = walk.room();
    let tidy = [(room.rags_about(), RoomAct::RagsAway), (room.gun_dirty(), RoomAct::GunCleaned)];
    let duties: Vec<RoomAct> = tidy.into_iter().filter(|(lies, _)| *lies).map(|(_, duty)| duty).collect();
    if !duties.is_empty() {
        go(walk, [Decision::Wear(right::FOR_THE_GUN), Decision::Room(duties)], content);
    }
    go(walk, [away], content);
}

/// Does a step: its wait, dressed for it, all duties before a coat and at the wheel, in the morning where the day is over, and
/// on a day whose air is fit.
pub(crate) fn take(walk: &mut Walk, content: &Content, step: Do) {
    if step.after_h > 0.0 {
        away(walk, content, wait(step.after_h));
    }
    loop {
        let sprayed = COATS.contains(&step.op) || step.op == Op::Washcoat;
        let tried = walk.clone().decide(Decision::Work(values(walk, content, step)), content).map(|_| ());
        match tried {
            Err(no) if matches!(no.why, Why::Closed | Why::DayTooShort) => {}
            Err(no) => panic!("{} {:?}: {:?}", walk.start().info.slug, step.op, no.why),
            Ok(()) if sprayed && !fit(walk) => {}
            Ok(()) if sprayed => {
                go(walk, ready_for_the_gun(), content);
                return go(
                    walk,
                    [Decision::Room(vec![RoomAct::FiltersChanged]), worked(walk, content, step)],
                    content,
                );
            }
            Ok(()) => {
                go(walk, [Decision::Wear(right::FOR_THE_BENCH)], content);
                let wheel = (step.op == Op::Buff).then(|| Decision::Room(vec![RoomAct::WheelChecked]));
                let work = worked(walk, content, step);
                go(walk, wheel.into_iter().chain([work]), content);
                return;
            }
        }
        let opens = until_it_opens(walk);
        away(walk, content, opens);
    }
}

fn worked(walk: &Walk, content: &Content, step: Do) -> Decision {
    Decision::Work(values(walk, content, step))
}

/// C4 of `faults/README.md`: about here the dew point comes within 11.1 C of the air, which C3 lets pass with retarder alone.
const SPREAD_RH: f64 = 46.0;

/// Air that C3 lets pass with room, and a room that is warm.
fn fit(walk: &Walk) -> bool {
    walk.air().is_some_and(|air| air.humidity.get() <= 62.0 && air.air.get() >= 18.0)
}

/// Until the shop opens: this morning, or tomorrow.
fn until_it_opens(walk: &Walk) -> Decision {
    let (hour, opens) = (walk.clock() % 24.0, walk.start().day.opens().get());
    if hour < opens { wait(opens - hour) } else { Decision::Wait(Wait::Morning) }
}
