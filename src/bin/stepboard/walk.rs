//! `walk`: a kept walk, walked again, and its report.

use crate::Output;
use crate::args::Args;
use serde_json::{Value, json};
use stepboard::content::Content;
use stepboard::exchange::{Refused, WalkFile, not_kept};
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::term::{Stage, Term};
use stepboard::walk::clock::moment;
use stepboard::walk::evidence::evidence;
use stepboard::walk::report::{Found, Report, Spent, report};
use stepboard::walk::{Saved, Walk, When, right};

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE", "-", "--right"])?;
    let text = args.text()?;
    let mut walk = read(content, &text).map_err(|refused| vec![format!("no walk: {refused}")])?;
    if args.switches.iter().any(|given| given == "right") {
        let on =
            right::rest(&walk, content).ok_or_else(|| vec!["no right way on in this room".to_owned()])?;
        for decision in on {
            walk.decide(decision, content).map_err(|no| vec![format!("{:?}", no.why)])?;
        }
        return Ok(json!(walk.saved()).to_string());
    }
    Ok(told(&walk, &report(&walk, content), content).to_string())
}

/// A walk out of its file, or as a tablet keeps it.
fn read(content: &Content, text: &str) -> Result<Walk, Refused> {
    let says =
        |text: &str| serde_json::from_str::<Value>(text).is_ok_and(|file| file.get("format").is_some());
    if says(text) {
        return WalkFile::read(text.as_bytes(), content)?.walked(content);
    }
    let saved: Saved = serde_json::from_str(text)?;
    saved.replay(content).map_err(|not| not_kept(&not, content))
}

fn told(walk: &Walk, report: &Report, content: &Content) -> Value {
    let turns = walk.turns().iter().map(|turn| {
        let at = moment(turn.begun);
        json!({ "day": at.day, "hour": at.hour, "hours": turn.ended - turn.begun, "decision": turn.decision })
    });
    let lapses = report.lapses.iter().map(|left| {
        json!({ "turn": left.turn, "lapse": left.lapse.slug(), "rule": left.lapse.rule(),
                "severity": left.lapse.severity(), "caution": left.lapse.caution() })
    });
    let undone = report.undone.iter();
    let undone =
        undone.map(|one| json!({ "operation": one.operation, "done": one.done, "ordered": one.ordered }));
    let material = report
        .material
        .iter()
        .map(|laid| json!({ "operation": laid.operation, "coats": laid.coats, "ml": laid.volume.get() }));
    let said = evidence(walk, content).into_iter();
    let said = said.map(
        |one| json!({ "turn": one.turn, "family": one.family, "right": one.is_right(), "broke": one.broke }),
    );
    json!({
        "format": "stepboard-walk-report", "format_version": 1,
        "walk": walk.start().info.slug, "mode": walk.mode(), "over": walk.is_over(),
        "lapses": lapses.collect::<Vec<_>>(), "undone": undone.collect::<Vec<_>>(),
        "faults": report.found.iter().map(|one| found(one, walk)).collect::<Vec<_>>(),
        "spent": spent(report.spent), "shortest": report.shortest.map(spent), "lost_h": report.lost_h(),
        "material": material.collect::<Vec<_>>(), "in_time": report.in_time,
        "day_asked": report.promise.asked, "day_earliest": report.promise.earliest,
        "day_offered": report.promise.offered, "said_right_of_the_day": report.promise.holds(),
        "evidence": said.collect::<Vec<_>>(), "turns": turns.collect::<Vec<_>>(),
    })
}

fn spent(spent: Spent) -> Value {
    json!({ "total_h": spent.total_h, "bench_h": spent.bench_h, "waiting_h": spent.waiting_h(), "day": spent.day })
}

fn found(found: &Found, walk: &Walk) -> Value {
    let (operation, line) = found.made;
    let when = match found.when {
        When::AtWork => "at-work",
        When::HandOver => "hand-over",
        When::After => "after",
    };
    let left: Vec<&str> = found.left.iter().map(|step| step.map_or("strip", Operation::slug)).collect();
    json!({
        "rule": found.rule, "severity": found.severity, "faults": found.faults, "parts": found.parts,
        "operation": operation, "made_in_turn": walk.lines().get(line).map(|line| line.turn),
        "made": found.made_in, "shows": found.shows_in.map_or("later", Stage::slug), "when": when,
        "shown_in_turn": found.turn, "rework_h": found.cost.rework_h, "wait_h": found.cost.wait_h,
        "mended_in_turn": found.mended, "left_to_mend": left,
    })
}
