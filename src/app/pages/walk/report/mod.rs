//! What a walk came to: duties left undone first, then faults by cause, hours, material, the day; and its time line.

mod counts;
mod faults;
mod hours;
mod material;
mod promise;

use super::pins::Pins;
use super::scrub::Scrub;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shared, Shop, use_shop};
use crate::device::page;
use crate::rules::term::{Severity, Term};
use crate::walk::report::{Left, Report as Told, report};
use crate::walk::{Lapse, Walk};
use yew::prelude::*;

/// The heading that takes the focus.
const TOP: &str = "walk-report";

#[derive(Properties, PartialEq)]
pub(super) struct ReportProps {
    pub(super) walk: Shared<Walk>,
    /// Says that the last decision is not stored.
    pub(super) strip: Html,
    /// Whether it goes on from an earlier walk.
    pub(super) taken_over: bool,
    /// Begins another try from what a walk is.
    pub(super) again: Callback<Shared<Walk>>,
    /// The way to handing it out.
    pub(super) out: Html,
}

#[component]
pub(super) fn Report(props: &ReportProps) -> Html {
    let shop = use_shop();
    let walk = &props.walk;
    let told = use_memo((shop.clone(), walk.clone()), |(shop, walk)| report(walk, shop.content()));
    use_effect_with((), |()| page::focus(TOP));
    let mode = shop.text(&format!("walk.mode.{}", walk.mode().slug()));
    html! {
        <Frame class="sheet walk-report" title={shop.text(&format!("walk.name.{}", walk.start().info.slug))} note={mode} back={Some(Route::Walks)} cautions={shop.cautions_for(&[])}>
            { props.strip.clone() }
            { sections(&shop, walk, &told) }
            { counts::counts(&shop, walk.mode(), props.taken_over) }
            <Scrub key="scrub" walk={walk.clone()} first={walk.turns().len()} pins={Pins::All} again={props.again.clone()} />
            { props.out.clone() }
        </Frame>
    }
}

/// What a walk came to; of one that is not over, what it came to so far.
pub(super) fn sections(shop: &Shop, walk: &Walk, told: &Told) -> Html {
    html! {
        <>
            <section key="came" hidden={!walk.is_over()}>
                <h2 id={TOP} tabindex="-1">{ shop.say("walk.report") }</h2>
                { promise::promise(shop, told) }
            </section>
            { lapses(shop, walk, &told.lapses) }
            { faults::faults(shop, walk, &told.found) }
            { hours::hours(shop, told) }
            { material::material(shop, &told.material) }
        </>
    }
}

/// Duties left undone, those about people first; each once, with how often.
fn lapses(shop: &Shop, walk: &Walk, all: &[Left]) -> Html {
    let kinds = Lapse::ALL.iter().filter(|kind| all.iter().any(|left| left.lapse == **kind));
    let safety = |kind: &&Lapse| kind.severity() == Severity::Safety;
    let (first, then): (Vec<&Lapse>, Vec<&Lapse>) = kinds.partition(safety);
    let one = |kind: &&Lapse| {
        let of: Vec<&Left> = all.iter().filter(|left| left.lapse == **kind).collect();
        let begun = of.first().and_then(|left| walk.turns().get(left.turn)).map_or(0.0, |turn| turn.begun);
        let named = [("n", of.len().to_string()), ("at", super::words::at(shop, begun).to_string())];
        html! {
            <li key={kind.slug()} class={classes!("walk-lapse", safety(kind).then_some("safety"))}>
                <p><b>{ shop.text(&format!("walk.lapse.{}", kind.slug())) }</b></p>
                <p class="note">{ shop.say_with("walk.times", &named) }{ " " }{ shop.text(&format!("rule.{}", kind.rule().0)) }</p>
                <p class="note" hidden={!safety(kind)}>{ shop.text(&format!("caution.{}", kind.caution())) }</p>
            </li>
        }
    };
    html! {
        <section key="lapses">
            <h2>{ shop.say("walk.lapses") }</h2>
            <p key="none" hidden={!all.is_empty()}>{ shop.say("walk.lapses-none") }</p>
            <ul class="rows walk-lapses" hidden={all.is_empty()}>{ for first.iter().chain(&then).map(one) }</ul>
        </section>
    }
}
