//! Facts of the trade that must come out right. Common practice, no source, unless a line names one.

use crate::work::{Work, coloured, found, h, job, nitro};
use stepboard::content::World;
use stepboard::rules::sequence::check::{accepts, accepts_here};
use stepboard::rules::sequence::job::Job;
use stepboard::rules::sequence::operation::Operation as Op;
use stepboard::rules::sequence::plan::{Detail, Plan, Step};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{Binding, ColourPlan, Filler, Look, WorkClass};

const FILLING: [Op; 3] = [Op::Fill, Op::WipeFiller, Op::SandFiller];

fn bound() -> Job {
    Job { binding: Binding::Wood, ..coloured(&["mahogany"], ColourPlan::Transparent) }
}

fn accepted(job: &Job, order: &[Op]) -> bool {
    accepts(job, &Plan::order(order), &nitro()).expect("told").answer
}

fn accepted_here(job: &Job, order: &[Op]) -> bool {
    accepts_here(job, &Plan::order(order), &nitro()).expect("told").answer
}

/// Open-grained mahogany wants filler on every sprayed face for a level gloss (FPL-GTR-190 ch. 16; threshold:
/// NAVEDTRA 14044, pores larger than those of birch).
#[test]
fn mahogany_is_filled_on_every_sprayed_face() {
    let work = Work::of(job(&["mahogany", "mahogany"]));
    let fills = work.plan.steps.iter().filter(|step| step.operation == Op::Fill).count();
    assert_eq!(fills, 2, "one filling for each face");
    let mut one = work.clone();
    one.plan.steps.retain(|step| !(FILLING.contains(&step.operation) && step.part == Some(1)));
    assert_eq!(found(&one.check()), ["se-34"]);
    assert!(work.check().findings.is_empty());
}

/// Closed-grained maple takes none (FPL-GTR-190 ch. 16).
#[test]
fn maple_takes_no_filler() {
    let maple = job(&["hard-maple"]);
    assert!(!route::asks_for(&maple, &nitro(), Op::Fill));
    assert!(route::fills_for_nothing(&maple, 0) && !route::fills_for_nothing(&job(&["mahogany"]), 0));
    assert!(Work::of(maple).check().findings.is_empty());
    let mixed = Work::of(job(&["hard-maple", "mahogany"]));
    let on: Vec<_> =
        mixed.plan.steps.iter().filter(|step| step.operation == Op::Fill).map(|s| s.part).collect();
    assert_eq!(on, [Some(1)], "only the open-grained body");
}

/// About 8 hours for a fast solvent filler, 24 h at the least for oil-based paste (NAVEDTRA 14044).
#[test]
fn filled_work_waits_by_its_filler() {
    let after = |filler: Filler, hours: f64| {
        let mut work = Work::of(Job { filler, ..job(&["mahogany"]) });
        for (op, wait) in [(Op::SandFiller, hours), (Op::Seal, 0.0), (Op::SolventWipe, 0.0)] {
            for step in work.plan.steps.iter_mut().filter(|step| step.operation == op) {
                step.after = stepboard::rules::sequence::plan::Told::Is(h(wait));
            }
        }
        found(&work.check())
    };
    assert_eq!(after(Filler::FastSolvent, 7.0), ["se-09"]);
    assert_eq!(after(Filler::FastSolvent, 8.0), [""; 0]);
    assert_eq!(after(Filler::OilPaste, 8.0), ["se-09"]);
    assert_eq!(after(Filler::OilPaste, 48.0), [""; 0]);
}

/// Colour, a thin protective clear, then scraping, inspection and only then the clear build.
#[test]
fn the_usual_order_on_bound_work_and_what_breaks_it() {
    let usual = [Op::Seal, Op::Colour, Op::Protect, Op::Scrape, Op::Inspect, Op::Clear];
    assert!(accepted_here(&bound(), &usual));
    for (a, b) in [(0, 1), (1, 2), (3, 5), (4, 5), (3, 4), (1, 3)] {
        let mut other = usual;
        other.swap(a, b);
        assert!(!accepted_here(&bound(), &other), "{other:?}");
    }
    assert_eq!(
        route::order(&bound(), &nitro()).iter().filter(|op| usual.contains(op)).copied().collect::<Vec<_>>(),
        usual
    );
}

/// Other orders are valid too; the shop sheet names the one in use.
#[test]
fn the_sheet_names_the_order_in_use() {
    let stained = coloured(&["mahogany"], ColourPlan::Stained);
    let stain_first = [Op::Stain, Op::Washcoat, Op::Fill, Op::Seal, Op::Clear];
    let fill_first = [Op::Fill, Op::SandFiller, Op::Stain, Op::Seal, Op::Clear];
    assert!(accepted_here(&stained, &stain_first) && !accepted_here(&stained, &fill_first));
    let sheet = nitro().with(Setting::StainFirst, 0.0).expect("a switch");
    let here = |order: &[Op]| accepts_here(&stained, &Plan::order(order), &sheet).expect("told").answer;
    assert!(here(&fill_first) && !here(&stain_first));
    assert!(accepted(&stained, &stain_first), "no error of the trade");
    let open = [Op::Seal, Op::Colour, Op::Scrape, Op::Clear];
    let plastic = Job { binding: Binding::Plastic, ..bound() };
    let no_protective = nitro().with(Setting::ProtectiveClear, 0.0).expect("a switch");
    let mut plan = Plan::order(&open);
    plan.detail = Detail::Main;
    plan.steps.insert(0, Step::of(Op::Fill));
    plan.steps.extend([Step::of(Op::Level), Step::of(Op::Buff)]);
    assert!(accepts(&plastic, &plan, &nitro()).expect("told").answer);
    assert!(accepts_here(&plastic, &plan, &no_protective).expect("told").answer);
}

/// Where wood is stained, coloured and shaded, no colour is missing; where nothing of it is done, it is.
#[test]
fn colour_is_missing_only_where_it_is_left_out() {
    let shaded = || Work::of(Job { shaded: true, ..coloured(&["hard-maple"], ColourPlan::Transparent) });
    let stained = shaded().before(Op::Seal, Step::of(Op::Stain));
    let has = |op| stained.plan.steps.iter().any(|step| step.operation == op);
    assert!(has(Op::Stain) && has(Op::Colour) && has(Op::Shade));
    let missing = |work: &Work| found(&work.check()).contains(&"order.colour");
    assert!(!missing(&stained), "{:?}", found(&stained.check()));
    assert!(missing(&shaded().without(&[Op::Colour, Op::Shade])));
}

/// Four to six clear coats, judged by the film that levelling leaves: 16 µm dry a coat on the base sheet.
#[test]
fn four_to_six_clear_coats_by_the_film_that_is_left() {
    let sheet = nitro();
    assert!(
        (4.0..=6.0).contains(&sheet.get(Setting::ClearCoatsFrom)) && sheet.get(Setting::ClearCoatsTo) == 6.0
    );
    let levelled =
        |coats| found(&Work::of(job(&["hard-maple"])).with(Op::Clear, |clear| clear.coats(coats)).check());
    assert_eq!(levelled(3), ["se-24"]);
    assert_eq!(levelled(6), [""; 0]);
    // The coat that protects the colour is one of them.
    let over_colour = |coats| {
        let work =
            Work::of(Job { binding: Binding::Plastic, ..coloured(&["hard-maple"], ColourPlan::Transparent) });
        assert!(work.plan.steps.iter().any(|step| step.operation == Op::Protect));
        found(&work.with(Op::Clear, |clear| clear.coats(coats)).check())
    };
    for coats in 1..=6 {
        assert_eq!(over_colour(coats), levelled(coats + 1), "{coats} over the colour");
    }
}

/// At least three days before buffing as the floor; full-gloss instruments are given longer.
#[test]
fn three_days_are_the_floor_before_buffing() {
    let levelled = |class, hours: f64| {
        let mut work = Work::of(Job { class, ..job(&["hard-maple"]) }).without(&[Op::Level, Op::Buff]);
        work.plan.steps.push(Step::of(Op::Level).after(h(hours)));
        found(&work.check())
    };
    assert_eq!(levelled(WorkClass::Satin, 71.0), ["se-23"]);
    assert_eq!(levelled(WorkClass::Satin, 72.0), [""; 0]);
    assert_eq!(levelled(WorkClass::InstrumentGloss, 72.0), ["se-23"]);
    let undercut = |value: f64| nitro().with(Setting::BuffWaitInstrument, value);
    assert!(undercut(71.0).is_err() && undercut(72.0).is_ok());
}

/// Whatever a sheet holds, its floor counts.
#[test]
fn a_sheet_below_its_floor_does_not_lower_the_floor() {
    let mut work = Work::of(job(&["hard-maple"])).with(Op::Level, |level| level.after(h(48.0)));
    work.sheet = work.sheet.tried(Setting::BuffWaitInstrument, 24.0);
    assert_eq!(found(&work.check()), ["se-23"]);
}

/// The steps of every shipped ticket, in the order of its sheet, are accepted there.
#[test]
fn the_route_of_every_ticket_is_accepted() {
    let content = crate::support::content();
    for ticket in &content.tickets {
        let sheet = content.sheet(&ticket.sheet).expect("ships");
        let job = World { content: &content, sheet }.job(ticket).expect("its woods are known");
        let plan = route::plan(&job, sheet);
        let ruling = accepts_here(&job, &plan, sheet).expect("everything is told");
        assert!(ruling.answer, "{}: {:?}", ticket.slug, ruling.rules);
        if ticket.look == Look::OpenPore {
            assert!(plan.steps.iter().all(|step| step.operation != Op::Fill));
        }
    }
}

/// What an order card may ask about: the steps whose places are fixed against each other.
const FIXED: [Op; 12] = [
    Op::Stain,
    Op::Washcoat,
    Op::Fill,
    Op::Seal,
    Op::Colour,
    Op::Shade,
    Op::Protect,
    Op::Scrape,
    Op::Inspect,
    Op::Clear,
    Op::Level,
    Op::Buff,
];

/// Any two main steps of a ticket, turned round, are refused on its sheet; transparent colour and shading may change
/// places.
#[test]
fn two_steps_turned_round_are_refused() {
    let content = crate::support::content();
    for ticket in &content.tickets {
        for sheet in &content.sheets {
            for stain_first in [0.0, 1.0] {
                let sheet = sheet.with(Setting::StainFirst, stain_first).expect("a switch");
                let job = World { content: &content, sheet: &sheet }.job(ticket).expect("known woods");
                let route: Vec<Op> =
                    route::order(&job, &sheet).into_iter().filter(|op| FIXED.contains(op)).collect();
                for (at, first) in route.iter().enumerate() {
                    for second in &route[at + 1..] {
                        let free =
                            job.colour != ColourPlan::Solid && [Op::Colour, Op::Shade].contains(second);
                        let free = free && [Op::Colour, Op::Shade].contains(first);
                        let here = |order: &[Op]| {
                            accepts_here(&job, &Plan::order(order), &sheet).expect("all is told").answer
                        };
                        assert!(here(&[*first, *second]), "{}: {first:?} {second:?}", ticket.slug);
                        assert_eq!(here(&[*second, *first]), free, "{}: {second:?} {first:?}", ticket.slug);
                    }
                }
            }
        }
    }
}
