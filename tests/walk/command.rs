//! `stepboard walk`: a kept walk reported, gone on with, and refused with what, where and what is allowed.

use crate::steps::{begin, does};
use crate::support::binary::{answer, refused};
use crate::support::content;
use stepboard::rules::sequence::operation::Operation as Op;

#[test]
fn a_kept_walk_is_gone_on_with_and_reported() {
    let content = content();
    let mut walk = begin(&content, "plain-plate");
    does(&mut walk, &content, Op::Sand);
    let kept = serde_json::to_string(&walk.saved()).expect("plain data");
    let open = answer(&["walk", "-"], &kept);
    assert_eq!((&open["over"], &open["in_time"]), (&false.into(), &serde_json::Value::Null));
    // Sanded with no mask.
    assert_eq!(open["lapses"][0]["rule"], "hazard.dust-kept-out");
    let whole = answer(&["walk", "--right"], &kept).to_string();
    let told = answer(&["walk"], &whole);
    assert_eq!((&told["over"], &told["in_time"]), (&true.into(), &true.into()));
    assert_eq!(told["faults"].as_array().map(Vec::len), Some(0));
    assert!(told["spent"]["total_h"].as_f64() >= told["shortest"]["total_h"].as_f64());
    let other = kept.replacen("plain-plate", "no-such", 1);
    let known: Vec<&str> = content.walks.iter().map(|walk| walk.slug.as_str()).collect();
    refused(&["walk"], &other, &["walk", &known.join(", ")]);
    refused(&["walk"], &kept.replacen("\"mode\"", "\"mood\"", 1), &["unknown field `mood`", "`mode`"]);
}
