//! What is decided about a fault found on the clear: the cure by the published table of faults, the film by the sheet;
//! half the film at an arris is common practice, no source.

use crate::support::{base, content};
use stepboard::quantity::Micrometres;
use stepboard::rules::fault::{Cure, Fault, Rework};
use stepboard::rules::inspection::{Decision, EDGE_SHARE, Zone, decide};
use stepboard::rules::sheet::Setting;

fn um(value: f64) -> Option<Micrometres> {
    Some(Micrometres::new(value).expect("a thickness"))
}

fn fault(cure: Option<Cure>, severity: Rework, lies: Option<Zone>) -> Fault {
    let content = content();
    Fault { cure, severity, lies, ..content.faults.into_iter().next().expect("faults ship") }
}

fn found(
    fault: &Fault,
    zone: Option<Zone>,
    film: Option<Micrometres>,
) -> Result<(Decision, &'static str), Vec<String>> {
    let ruling = decide(fault, zone, film, &base());
    ruling.map(|ruling| (ruling.answer, ruling.rules[0].0)).map_err(|cannot| cannot.missing)
}

#[test]
fn what_lies_under_or_in_the_layer_is_decided_without_zone_or_film() {
    let decided = |cure| found(&fault(Some(cure), Rework::Strip, None), None, None);
    assert_eq!(decided(Cure::Layer), Ok((Decision::Strip, "inspection.unsound-is-stripped")));
    assert_eq!(decided(Cure::Time), Ok((Decision::Wait, "inspection.soft-wants-time")));
    assert_eq!(decided(Cure::Wood), Ok((Decision::MendWood, "inspection.wood-before-finish")));
    let none = fault(None, Rework::Rub, None);
    assert_eq!(found(&none, Some(Zone::Show), um(200.0)), Err(vec!["fault".to_owned()]));
}

#[test]
fn a_hidden_place_is_left_and_the_fault_may_say_itself_where_it_lies() {
    for cure in [Cure::Abrasive, Cure::Spot, Cure::Face] {
        let anywhere = fault(Some(cure), Rework::Local, None);
        let accepted = Ok((Decision::Accept, "inspection.hidden-small-accepted"));
        assert_eq!(found(&anywhere, Some(Zone::Hidden), None), accepted, "{cure:?}");
        assert_eq!(found(&anywhere, None, um(200.0)), Err(vec!["zone".to_owned()]), "{cure:?}");
        let hidden = fault(Some(cure), Rework::Local, Some(Zone::Hidden));
        assert_eq!(found(&hidden, Some(Zone::Show), None), accepted, "{cure:?}: its own place counts");
    }
    let spot = fault(Some(Cure::Spot), Rework::Local, None);
    assert_eq!(
        found(&spot, Some(Zone::Show), None),
        Ok((Decision::LevelLocally, "inspection.spot-is-opened"))
    );
    let face = fault(Some(Cure::Face), Rework::Local, None);
    assert_eq!(
        found(&face, Some(Zone::Edge), None),
        Ok((Decision::RecoatFace, "inspection.face-is-recoated"))
    );
}

/// The sheet's reserve and what levelling takes off are the boundary, on both sides of it.
#[test]
fn the_film_decides_whether_an_abrasive_may_be_taken_to_it() {
    let sheet = base();
    let reserve = sheet.get(Setting::FilmReserve);
    let enough = reserve + sheet.get(Setting::LevelTakeOff);
    let (smallest, first) = ("inspection.smallest-cure", "inspection.film-before-abrasive");
    let nib = fault(Some(Cure::Abrasive), Rework::Rub, None);
    let run = fault(Some(Cure::Abrasive), Rework::Local, None);
    let show = Some(Zone::Show);
    assert_eq!(found(&run, show, um(enough)), Ok((Decision::LevelOut, smallest)));
    assert_eq!(found(&run, show, um(enough - 0.1)), Ok((Decision::ClearFirst, first)));
    assert_eq!(found(&nib, show, um(enough)), Ok((Decision::RubOut, smallest)));
    assert_eq!(found(&nib, show, um(enough - 0.1)), Ok((Decision::RubOut, smallest)));
    assert_eq!(found(&nib, show, um(reserve - 0.1)), Ok((Decision::ClearFirst, first)));
    assert_eq!(found(&run, show, None), Err(vec!["build_um".to_owned()]));
    let edge = Some(Zone::Edge);
    assert_eq!(found(&run, edge, um(enough / EDGE_SHARE)), Ok((Decision::LevelOut, smallest)));
    assert_eq!(found(&run, edge, um(enough / EDGE_SHARE - 0.2)), Ok((Decision::ClearFirst, first)));
    let at = |zone| decide(&run, Some(zone), um(300.0), &sheet).expect("told");
    assert!(at(Zone::Edge).rules.iter().any(|rule| rule.0 == "inspection.edge-counts-half"));
    assert!(!at(Zone::Show).rules.iter().any(|rule| rule.0 == "inspection.edge-counts-half"));
}
