//! `walk`: a kept walk, walked again, and its report.

use crate::Output;
use crate::args::Args;
use serde_json::{Value, json};
use std::io::Read;
use stepboard::content::Content;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::term::{Stage, Term};
use stepboard::walk::clock::moment;
use stepboard::walk::evidence::evidence;
use stepboard::walk::report::{Found, Report, Spent, report};
use stepboard::walk::saved::NotKept;
use stepboard::walk::{Saved, Walk, When, right};

pub(crate) fn run(content: &Content, args: Args) -> Output {
    args.nothing_left(&["FILE", "-", "--right"])?;
    let text = match args.names.as_slice() {
        [] => piped()?,
        [dash] if dash == "-" => piped()?,
        [file] => std::fs::read_to_string(file).map_err(|error| vec![format!("{file}: {error}")])?,
        _ => return Err(vec!["one file, or - for standard input".to_owned()]),
    };
    let saved: Saved = serde_json::from_str(&text).map_err(|error| vec![format!("no walk: {error}")])?;
    let mut walk = saved.replay(content).map_err(|not| vec![refused(content, &not)])?;
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

fn piped() -> Output {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).map_err(|error| vec![error.to_string()])?;
    Ok(text)
}

/// What is wrong with a kept walk, where, and what is allowed.
fn refused(content: &Content, not: &NotKept) -> String {
    let texts = content.texts("en");
    let say = |key: String| texts.find(&key).unwrap_or_default().to_owned();
    let what = say(format!("walk.refused.{}", not.slug()));
    let more = match not {
        NotKept::Walk(_, known) | NotKept::Sheet(_, known) => format!(" Known: {}.", known.join(", ")),
        NotKept::Decision(_, no) => {
            let slug = no.why.slug();
            format!(" {} {}", say(format!("walk.why.{slug}")), say(format!("walk.now.{slug}")))
        }
        NotKept::Wood | NotKept::TooLong(_) => String::new(),
    };
    format!("{}: {what}{more}", not.place())
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
