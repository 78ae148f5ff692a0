//! What answers say of the cards: an invented matrix of 12 people and 8 items, worked in Python (pingouin 0.7.0, scipy 1.17.1).

mod support;

use stepboard::learn::items::{Flag, Scores, Taken, flags, items, option_uses, reliability};
use support::near;
use support::table::table;

/// One unit of the last printed digit.
const SIXTH: f64 = 1e-6;
/// Luck at a card with four options.
const LUCK: f64 = 0.25;
/// Right answers that pass, of the cut that the table tells.
const CUT: f64 = 5.0;

fn matrix() -> Scores {
    let columns = ["i1", "i2", "i3", "i4", "i5", "i6", "i7", "i8"];
    let rows = table("item_matrix.csv");
    assert_eq!(rows.len(), 12);
    let row = |row: &support::table::Row| {
        let answers: Vec<_> = columns.iter().map(|column| Some(row.number(column) == 1.0)).collect();
        let right = answers.iter().filter(|right| **right == Some(true)).count();
        assert_eq!(right.to_string(), row.text("total"));
        row.checked("items");
        answers
    };
    Scores::new(rows.iter().map(row).collect()).expect("rows of one length")
}

#[test]
fn items_come_out_as_computed() {
    let scores = matrix();
    let found = items(&scores);
    let whole = reliability(&scores, CUT).expect("a set");
    let rows = table("item_check.csv");
    assert_eq!(rows.len(), found.len());
    for (place, row) in rows.iter().enumerate() {
        let item = found[place].as_ref().expect("asked");
        near(item.difficulty, row.number("difficulty_p"), SIXTH, "item");
        near(item.difficulty * (1.0 - item.difficulty), row.number("p_times_q"), SIXTH, "item");
        near(item.with_all.expect("spreads"), row.number("r_pointbiserial_total"), SIXTH, "item");
        near(item.with_rest.expect("spreads"), row.number("r_pointbiserial_corrected"), SIXTH, "item");
        near(item.upper_less_lower, row.number("D_upper_lower_27pct"), SIXTH, "item");
        near(whole.without[place].expect("spreads"), row.number("alpha_if_dropped"), SIXTH, "item");
        near(item.known(LUCK).expect("under 1"), row.number("p_corrected_for_guessing_4opt"), SIXTH, "item");
        // The sixth is keyed wrongly on purpose.
        assert_eq!(flags(item, &[]).contains(&Flag::GoesNot), place == 5, "item {}", place + 1);
        row.checked("items");
    }
}

#[test]
fn a_set_comes_out_as_computed() {
    let scores = matrix();
    let found = reliability(&scores, CUT).expect("a set");
    let each = items(&scores);
    let each: Vec<_> = each.iter().flatten().collect();
    let mean = |of: &dyn Fn(&stepboard::learn::items::Item) -> f64| {
        each.iter().map(|item| of(item)).sum::<f64>() / 8.0
    };
    let people = 12.0;
    for row in &table("item_statistics.csv") {
        let value = match row.text("statistic") {
            "persons" => people,
            "items" => 8.0,
            "mean_total" => found.mean,
            "variance_total_population" => found.variance,
            "variance_total_sample" => found.variance * people / (people - 1.0),
            "sd_total_population" => found.variance.sqrt(),
            "sum_pq" => each.iter().map(|item| item.difficulty * (1.0 - item.difficulty)).sum(),
            "KR20" | "cronbach_alpha_pingouin" => found.kr20.expect("spreads"),
            "KR21" => found.kr21.expect("spreads"),
            "SEM_population_sd" => found.standard_error.expect("spreads"),
            "split_half_r_odd_even" => found.odd_even.expect("spreads"),
            "spearman_brown" => found.split_half.expect("spreads"),
            "lengthening_factor_to_reach_0.80" => found.lengthen.expect("above 0"),
            "livingston_k2_cut5of8" => found.livingston.expect("spreads"),
            "brennan_phi_lambda_cut5of8" => found.brennan.expect("spreads"),
            "mean_item_p" => mean(&|item| item.difficulty),
            "mean_corrected_pointbiserial" => mean(&|item| item.with_rest.expect("spreads")),
            // The range of alpha and values with the other divisor are not told.
            "group_size_27pct" | "sd_total_sample" | "alpha_ci95_low" | "alpha_ci95_high"
            | "SEM_sample_sd" => {
                row.left_out("items");
                continue;
            }
            other => panic!("a statistic that nobody knows: {other}"),
        };
        near(value, row.number("value"), SIXTH, row.text("statistic"));
        row.checked("items");
    }
}

#[test]
fn options_come_out_as_computed() {
    // The seventh item, with what each of the twelve took in the order of the matrix.
    let took = |options: &'static [&'static str]| {
        let offered: Vec<String> = options.iter().map(ToString::to_string).collect();
        let one = |letter: char| Some(Taken { took: letter.to_string(), offered: offered.clone() });
        "bbbbcbbacdda".chars().map(one).collect::<Vec<_>>()
    };
    let four: &[&str] = &["a", "b", "c", "d"];
    let chosen = took(four);
    let found = option_uses(&matrix(), 6, &chosen, four, "b");
    for (row, option) in table("item_options.csv").iter().zip(&found) {
        assert_eq!(row.text("option"), option.option);
        assert_eq!(row.text("role") == "key", option.right);
        let count = |column: &str| row.number(column);
        near(option.chosen as f64, count("n_chosen"), SIXTH, "item");
        near(option.chosen as f64 / 12.0, count("share"), SIXTH, "item");
        near(option.upper as f64, count("n_upper"), SIXTH, "item");
        near(option.lower as f64, count("n_lower"), SIXTH, "item");
        near(option.with_rest.expect("spreads"), count("r_with_rest_of_test"), SIXTH, "item");
        row.checked("items");
    }
    let item = items(&matrix())[6].clone().expect("asked");
    assert_eq!(flags(&item, &found), []);
    // A fifth option that nobody takes, and a key that stands on a wrong one.
    let dead = option_uses(&matrix(), 6, &took(&["a", "b", "c", "d", "e"]), &["a", "b", "c", "d", "e"], "b");
    assert_eq!(flags(&item, &dead), [Flag::DeadOption]);
    let miskeyed = option_uses(&matrix(), 6, &chosen, four, "a");
    assert_eq!(flags(&item, &miskeyed), [Flag::WrongGoes, Flag::UpperTakesWrong]);
    // Of what hardly anybody was offered nothing is told.
    let few: Vec<_> = chosen.iter().take(3).cloned().collect();
    let told = option_uses(&matrix(), 6, &few, four, "a");
    assert_eq!((told[1].offered, flags(&item, &told)), (3, vec![]));
}

#[test]
fn where_nothing_can_be_told_nothing_is() {
    let all_right = Scores::new(vec![vec![Some(true); 4]; 6]).expect("of one length");
    let found = reliability(&all_right, 3.0).expect("a set");
    assert_eq!((found.kr20, found.kr21, found.odd_even, found.standard_error), (None, None, None, None));
    let item = items(&all_right)[0].clone().expect("asked");
    assert_eq!((item.difficulty, item.with_rest, item.range), (1.0, None, None));
    assert_eq!(flags(&item, &[]), []);
    let nobody = Scores::new(vec![vec![None, Some(true)], vec![None, Some(false)]]).expect("of one length");
    assert_eq!(items(&nobody)[0], None);
    assert_eq!(reliability(&nobody, 1.0), None);
    assert!(Scores::new(vec![vec![Some(true)], vec![]]).is_err());
    assert_eq!(items(&Scores::new(vec![]).expect("nobody")), []);
    // Half-widths told for this kind of range: about 0.65 of 12 people, 0.38 of 30 and 0.20 of 100, on Fisher's scale.
    let item = items(&matrix())[0].clone().expect("asked");
    let range = item.range.expect("twelve people");
    near((range.to.atanh() - range.from.atanh()) / 2.0, 1.959_963_985 / 3.0, 1e-9, "range");
}
