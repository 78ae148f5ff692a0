//! What a shop may ask for more before somebody is signed off: more always, less never. Common practice, no source; the
//! bounds of the content are those of `content/competencies.toml`.

use stepboard::content::{Content, NotStricter, OWN_CRITERIA_MOST, OwnCriterion, Stricter};

fn content() -> Content {
    Content::embedded().expect("content")
}

fn own(text: &str) -> OwnCriterion {
    OwnCriterion { text: text.to_owned(), critical: true }
}

#[test]
fn a_shop_may_ask_for_more_of_every_competency_and_never_for_less() {
    let content = content();
    for shipped in &content.competencies {
        let as_it_is = Stricter::of(shipped);
        assert_eq!(as_it_is.applied(shipped).as_ref(), Ok(shipped), "{}", shipped.slug);
        let refused = |change: fn(&mut Stricter), why| {
            let mut one = as_it_is.clone();
            change(&mut one);
            assert_eq!(one.applied(shipped), Err(why), "{}", shipped.slug);
        };
        refused(|one| one.demonstrations -= 1, NotStricter::Demonstrations);
        refused(|one| one.demonstrations = 11, NotStricter::Demonstrations);
        refused(|one| one.days -= 1, NotStricter::Days);
        refused(|one| one.days = one.demonstrations + 1, NotStricter::Days);
        refused(|one| one.expires_months += 1, NotStricter::Months);
        refused(|one| one.expires_months = 0, NotStricter::Months);
        refused(|one| one.competency.push('x'), NotStricter::Unknown);
        for unfit in ["", " led", "a\u{7}b", &"m".repeat(161)] {
            let one = Stricter { criteria: vec![own(unfit)], ..as_it_is.clone() };
            assert_eq!(one.applied(shipped), Err(NotStricter::Criteria), "{unfit:?}");
        }
        let twice = Stricter { criteria: vec![own("Gloves on"), own("Gloves on")], ..as_it_is.clone() };
        assert_eq!(twice.applied(shipped), Err(NotStricter::Criteria));
        let many = (0..=OWN_CRITERIA_MOST).map(|n| own(&format!("Gloves {n}"))).collect();
        let many = Stricter { criteria: many, ..as_it_is.clone() };
        assert_eq!(many.applied(shipped), Err(NotStricter::Criteria));
    }
}

#[test]
fn what_a_shop_asks_stands_beside_what_came_and_the_last_word_counts() {
    let content = content();
    let shipped = content.competency("room-safe").expect("a competency").clone();
    let first = Stricter { expires_months: 6, ..Stricter::of(&shipped) };
    let second = Stricter {
        demonstrations: shipped.demonstrations + 1,
        criteria: vec![own("Shuts the compressor off")],
        ..Stricter::of(&shipped)
    };
    let asked = content.asked_by_shop(&[first, second]);
    let now = asked.competency("room-safe").expect("still there");
    assert_eq!(
        (now.demonstrations, now.expires_months),
        (shipped.demonstrations + 1, shipped.expires_months)
    );
    let added = now.criteria.last().expect("one more");
    assert_eq!(now.criteria.len(), shipped.criteria.len() + 1);
    assert!(added.id.starts_with("room-safe-own-") && added.critical, "{added:?}");
    assert_eq!(asked.texts("en").get(&format!("criterion.{}", added.id)), "Shuts the compressor off");
    assert!(asked.shipped() == content.competencies, "signed files are held to what came");
    // Asked anew, nothing is left of what was asked before.
    assert!(asked.asked_by_shop(&[]).competencies == content.competencies);
    // Another text is another criterion: what was seen of the first says nothing of it.
    let other = Stricter { criteria: vec![own("Shuts the compressor off first")], ..Stricter::of(&shipped) };
    let other = content.asked_by_shop(&[other]);
    let other = other.competency("room-safe").and_then(|one| one.criteria.last()).expect("one more");
    assert_ne!(other.id, added.id);
}

#[test]
fn what_no_longer_fits_is_left_out() {
    let content = content();
    let mut lax = Stricter::of(content.competency("room-safe").expect("a competency"));
    lax.days = 0;
    let gone = Stricter { competency: "no-such".to_owned(), ..lax.clone() };
    assert!(content.asked_by_shop(&[lax, gone]).competencies == content.competencies);
}
