//! The order that a shop sheet names, and time that counts between two steps.

use crate::support::{base, content};
use stepboard::quantity::Hours;
use stepboard::rules::sequence::check::{check, check_here};
use stepboard::rules::sequence::error::OrderError;
use stepboard::rules::sequence::job::{Job, Part};
use stepboard::rules::sequence::manner::Manner;
use stepboard::rules::sequence::operation::Operation;
use stepboard::rules::sequence::plan::{Plan, Step, Told};
use stepboard::rules::sequence::route;
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::{Binding, Coating, ColourPlan, Filler, Look, WorkClass};
use stepboard::rules::wood::WoodTrouble;

fn job() -> Job {
    Job {
        parts: vec![Part::of(content().wood("hard-maple").expect("a wood"))],
        look: Look::LevelGloss,
        class: WorkClass::InstrumentGloss,
        colour: ColourPlan::Transparent,
        water_dye: false,
        shaded: false,
        binding: Binding::Plastic,
        filler: Filler::OilPaste,
        coating: Coating::Nitrocellulose,
        melts: true,
    }
}

fn place(plan: &Plan, operation: Operation) -> usize {
    plan.steps.iter().position(|step| step.operation == operation).expect("in the plan")
}

/// Common practice, no source: the protective clear lies between colour and scraping where the sheet asks for one. A
/// departure from the shop's order is found at the scraping and is none by the trade's rules.
#[test]
fn the_shops_protective_clear_lies_between_colour_and_scraping() {
    let (job, sheet) = (job(), base());
    let whole = route::plan(&job, &sheet);
    let missed = |plan: &Plan, sheet| {
        let found = check_here(&job, plan, sheet).findings;
        let here = found.iter().filter(|finding| finding.error == OrderError::ShopProtective);
        here.map(|finding| finding.step).collect::<Vec<_>>()
    };
    assert!(missed(&whole, &sheet).is_empty());
    let mut without = whole.clone();
    without.steps.retain(|step| step.operation != Operation::Protect);
    assert_eq!(missed(&without, &sheet), [place(&without, Operation::Scrape)]);
    assert!(check(&job, &without, &sheet).findings.iter().all(|one| one.error != OrderError::ShopProtective));
    let bare = sheet.with(Setting::ProtectiveClear, 0.0).expect("a switch");
    assert!(missed(&without, &bare).is_empty(), "a sheet that lays none");
    let mut late = without.clone();
    let after = place(&late, Operation::Scrape) + 1;
    late.steps.insert(after, Step::of(Operation::Protect));
    assert_eq!(missed(&late, &sheet), [after - 1, after], "it guards nothing any more");
}

/// Hours between the coats of a step count for what comes after it and not for what came before: a first clear coat laid
/// at once on the seal is early, however long its own coats lie apart.
#[test]
fn waits_between_coats_do_not_count_for_what_lies_under_them() {
    let (job, sheet) = (job(), base());
    let hours = |value| Told::Is(Hours::new(value).expect("hours in range"));
    let early = |after, coats, between| {
        let mut plan = route::plan(&job, &sheet);
        let clear = place(&plan, Operation::Clear);
        for at in place(&plan, Operation::Protect) + 1..clear {
            plan.steps[at].after = hours(0.0);
        }
        plan.steps[clear].after = hours(after);
        plan.steps[clear].coats = Told::Is(coats);
        plan.steps[clear].between = hours(between);
        check(&job, &plan, &sheet)
            .findings
            .iter()
            .any(|one| one.step == clear && one.error == OrderError::RecoatTooSoon)
    };
    let wait = sheet.get(Setting::ClearWait).max(sheet.get(Setting::ColourWait));
    assert!(!early(wait, 2, wait));
    assert!(early(0.0, 2, wait), "at once on the coat below");
    assert!(early(0.0, 2, 10.0 * wait), "at once, however long its own coats wait");
}

/// Common practice, no source: solid colour hides what lies under it and goes under the shading; transparent colour and
/// shading may change places.
#[test]
fn solid_colour_goes_under_the_shading() {
    let sheet = base();
    let found = |colour, shade_first: bool| {
        let job = Job { colour, shaded: true, ..job() };
        let mut plan = route::plan(&job, &sheet);
        let (colour, shade) = (place(&plan, Operation::Colour), place(&plan, Operation::Shade));
        assert!(colour < shade, "the route lays colour first");
        if shade_first {
            plan.steps.swap(colour, shade);
        }
        let findings = check(&job, &plan, &sheet).findings;
        let wrong = findings.iter().filter(|one| one.error == OrderError::Colour);
        (wrong.map(|one| one.step).collect::<Vec<_>>(), shade)
    };
    let (none, _) = found(ColourPlan::Solid, false);
    assert!(none.is_empty());
    let (over, last) = found(ColourPlan::Solid, true);
    assert_eq!(over, [last], "the colour that hides the shading");
    assert!(found(ColourPlan::Transparent, true).0.is_empty());
}

/// Colour is carried onto a pale wood by a wood that bleeds as well as by an oily one (se-39 of the published errors), and
/// only where something pale lies beside it.
#[test]
fn bleeding_and_oily_woods_both_carry_colour() {
    let sheet = base();
    let found = |trouble: &[WoodTrouble], beside: &str, binding| {
        let mut job = Job { colour: ColourPlan::Natural, binding, ..job() };
        job.parts[0].trouble = trouble.to_vec();
        job.parts.extend(content().wood(beside).map(Part::of));
        let mut plan = route::plan(&job, &sheet);
        for step in plan.steps.iter_mut().filter(|step| step.operation == Operation::Sand) {
            step.manners.push(Manner::DustAcross);
        }
        check(&job, &plan, &sheet).findings.iter().any(|one| one.error == OrderError::ColourCarriedOver)
    };
    for trouble in [[WoodTrouble::Bleeding], [WoodTrouble::Oily]] {
        assert!(found(&trouble, "hard-maple", Binding::None), "{trouble:?} beside a pale wood");
        assert!(found(&trouble, "", Binding::Plastic), "{trouble:?} beside a binding");
        assert!(!found(&trouble, "", Binding::None), "{trouble:?} alone");
    }
    assert!(!found(&[], "hard-maple", Binding::None));
}
