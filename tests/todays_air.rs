//! Today's air: its age, what it tells the bench, and figures as people type them.

mod support;

use stepboard::content::Units;
use stepboard::record::{AIR_OLD_HOURS, MeasuredAir, Moment, WORKSHOP_C};
use support::{content, near};

fn air() -> MeasuredAir {
    MeasuredAir { air_c: 21.0, rh: 72.0, work_c: 20.0, at: "2026-03-02T08:00:00.000Z".to_owned() }
}

fn moment(at: &str) -> Moment {
    Moment::of(at).expect("a moment")
}

#[test]
fn air_is_gone_by_until_it_is_old() {
    let air = air();
    let hours = |at| air.hours(moment(at));
    assert_eq!(hours("2026-03-02T08:00:00Z"), Some(0.0));
    assert_eq!(hours("2026-03-02T09:30:00Z"), Some(1.5));
    let old = |at| air.is_old(moment(at));
    assert!(!old("2026-03-02T11:59:59Z") && old("2026-03-02T12:00:00Z"), "{AIR_OLD_HOURS} h");
    // Measured in the future by the clock of the tablet: nobody knows how old it is.
    assert!(old("2026-03-02T07:59:00Z"));
    assert_eq!(hours("2026-03-02T07:59:00Z"), None);
    assert!(MeasuredAir { at: "noon".to_owned(), ..air.clone() }.is_old(moment("2026-03-02T08:00:00Z")));
    // Over a year of days it is old and does not wrap.
    assert!(old("2126-03-02T08:00:00Z"));
}

/// 72 °F is 22.2 °C: who types 72 where °C is shown is asked.
#[test]
fn air_that_no_workshop_has_is_doubted() {
    assert!(air().is_of_a_workshop());
    assert!(!MeasuredAir { air_c: 72.0, ..air() }.is_of_a_workshop());
    assert!(!MeasuredAir { work_c: 72.0, ..air() }.is_of_a_workshop());
    assert!(!MeasuredAir { air_c: WORKSHOP_C.start() - 0.1, ..air() }.is_of_a_workshop());
}

#[test]
fn the_bench_is_told_all_three() {
    let facts = air().facts();
    let told = ["air_c", "rh", "work_c"].map(|key| facts.maybe_number(key));
    assert_eq!(told, [Some(21.0), Some(72.0), Some(20.0)]);
}

/// 70 °F is 21.1 °C and 50 °F is 10 °C by definition of the scales.
#[test]
fn a_figure_is_read_in_the_unit_shown_or_with_its_own() {
    let content = content();
    let info = content.fact("air_c").expect("a fact");
    near(info.read(Units::US, "70").expect("read"), 21.1, 0.05, "70 in °F");
    near(info.read(Units::METRIC, "50 F").expect("read"), 10.0, 1e-9, "50 °F where °C is shown");
    assert_eq!(info.read(Units::METRIC, "21,5"), Some(21.5));
    for bad in ["", "warm", "94", "-21", "20 %"] {
        assert_eq!(info.read(Units::METRIC, bad), None, "{bad}");
    }
}
