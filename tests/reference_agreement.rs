//! How far two judges agree: tables worked in Python (statsmodels for kappa and its error, scikit-learn for weights).

mod support;

use stepboard::learn::agreement::{Agreement, Table, Weight};
use support::near;
use support::table::table;

/// One unit of the last printed digit.
const SIXTH: f64 = 1e-6;

/// A table as its cell prints it: rows parted by `/`.
fn counts(cell: &str) -> Table {
    let row = |row: &str| row.split(',').map(|count| count.parse().expect("a count")).collect();
    Table::new(cell.split('/').map(row).collect()).expect("a square table")
}

#[test]
fn kappa_comes_out_as_computed() {
    let rows = table("kappa.csv");
    assert_eq!(rows.len(), 16, "rows of the table");
    let mut case = String::new();
    let mut found = None;
    for row in &rows {
        let (name, quantity) = row.text("quantity").split_once(' ').expect("a case and a quantity");
        if name != case {
            // The first row of a case is its table.
            name.clone_into(&mut case);
            found = Some(Agreement::of(counts(row.text("value"))));
            if quantity.contains("table") {
                row.checked("agreement");
                continue;
            }
        }
        let found = found.as_ref().expect("a table");
        let kappa = found.kappa.expect("both gave more than one grade");
        let value = match quantity {
            "observed agreement" => found.observed,
            "chance agreement" => found.chance,
            "kappa" | "unweighted" => kappa.value,
            "standard error" => kappa.error,
            "95% low" => kappa.low,
            "95% high" => kappa.high,
            "kappa max" => kappa.largest,
            "linear weighted" => found.table.weighted(Weight::Linear).expect("defined"),
            "quadratic weighted" => found.table.weighted(Weight::Quadratic).expect("defined"),
            "prevalence-adjusted (2*po-1)" => found.prevalence_adjusted(),
            other => panic!("nothing is known of `{other}`"),
        };
        near(value, row.number("value"), SIXTH, row.text("quantity"));
        row.checked("agreement");
    }
}

/// Where both always say the same, chance explains all of it (pe = 1) and there is no kappa; where they never agree it is
/// -1 at the worst. The range never leaves what kappa can be.
#[test]
fn edges_show_nothing_rather_than_a_number() {
    let of = |rows: [[u32; 2]; 2]| Agreement::of(Table::new(rows.map(Vec::from).to_vec()).expect("square"));
    for rows in [[[7, 0], [0, 0]], [[0, 0], [0, 3]]] {
        let same = of(rows);
        assert_eq!((same.kappa, same.observed, same.chance), (None, 1.0, 1.0));
        assert_eq!(same.table.weighted(Weight::Linear), None);
    }
    // Each always says one thing, and another: chance agrees never, and neither do they.
    let apart = of([[0, 5], [0, 0]]).kappa.expect("defined");
    assert_eq!((apart.value, apart.largest), (0.0, 0.0));
    let all = of([[5, 0], [0, 5]]).kappa.expect("defined");
    assert_eq!((all.value, all.error, all.low, all.high, all.largest), (1.0, 0.0, 1.0, 1.0, 1.0));
    let never = of([[0, 5], [5, 0]]).kappa.expect("defined");
    assert_eq!((never.value, never.low, never.largest), (-1.0, -1.0, 1.0));
    let few = of([[3, 0], [1, 1]]).kappa.expect("defined");
    assert!(few.low >= -1.0 && few.high == 1.0, "{few:?}");
    assert_eq!(Table::new(vec![vec![0, 0], vec![0, 0]]), None, "nothing was judged");
    assert_eq!(Table::new(vec![vec![1, 2], vec![3]]), None, "not square");
    assert_eq!(Table::new(vec![vec![4]]), None, "one grade alone");
}

/// For two grades weights change nothing (J. Cohen 1968), and turning the table round neither.
#[test]
fn two_grades_have_one_kappa() {
    let mut dice = stepboard::card::Dice::new("agreement");
    for _ in 0..support::inputs(support::any::USUAL) {
        let [a, b, c, d] = [(); 4].map(|()| dice.below(30));
        let Some(table) = Table::new(vec![vec![a, b], vec![c, d]]) else { continue };
        let turned = Agreement::of(Table::new(vec![vec![a, c], vec![b, d]]).expect("square"));
        let found = Agreement::of(table);
        let Some(kappa) = found.kappa else { continue };
        let turned = turned.kappa.expect("defined as well");
        for weight in [Weight::Linear, Weight::Quadratic] {
            let weighted = found.table.weighted(weight).expect("defined");
            assert!((weighted - kappa.value).abs() < 1e-9, "{found:?}: {weighted}");
        }
        assert!((turned.value - kappa.value).abs() < 1e-9 && (turned.error - kappa.error).abs() < 1e-9);
        assert!(kappa.value <= kappa.largest + 1e-9 && kappa.low <= kappa.value && kappa.value <= kappa.high);
    }
}
