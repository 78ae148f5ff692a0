//! One criterion as large buttons: yes, not yet, not seen. A critical one is marked by a word and a shape.

use crate::app::parts::{Picture, icon};
use crate::app::state::Shop;
use crate::content::Criterion;
use crate::record::Judged;
use crate::rules::term::Term;
use yew::prelude::*;

pub(super) fn criterion_field(
    shop: &Shop,
    nth: usize,
    criterion: &Criterion,
    now: Option<Judged>,
    on_judge: &Callback<(String, Judged)>,
) -> Html {
    let button = |judged: &Judged| {
        let (judged, picked) = (*judged, now == Some(*judged));
        let id = criterion.id.clone();
        let onchange = on_judge.reform(move |_: Event| (id.clone(), judged));
        let picture = match judged {
            Judged::Met => Picture::Tick,
            Judged::NotYet => Picture::Cross,
            Judged::NotSeen => Picture::Dash,
        };
        html! {
            <label key={judged.slug()} class={classes!("judge", format!("judged-{}", judged.slug()), picked.then_some("picked"))}>
                <input type="radio" name={criterion.id.clone()} checked={picked} {onchange} />
                { icon(picture) }<span>{ shop.say(&format!("assess.judged.{}", judged.slug())) }</span>
            </label>
        }
    };
    let mark = criterion.critical.then(|| {
        html! { <strong class="critical-mark">{ icon(Picture::Caution) }{ shop.say("assess.critical") }</strong> }
    });
    html! {
        <fieldset key={criterion.id.clone()} class={classes!("criterion", criterion.critical.then_some("critical"))}>
            <legend><span>{ format!("{nth}. ") }{ shop.text(&format!("criterion.{}", criterion.id)) }</span>{ for mark }</legend>
            <div class="judges">{ for Judged::ALL.iter().map(button) }</div>
        </fieldset>
    }
}
