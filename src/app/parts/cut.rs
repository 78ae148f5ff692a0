//! A cut through wood and film with the fault in the place where it sits. Not to scale across, to scale in nothing: the
//! words beside it carry everything.

use crate::app::state::Shop;
use yew::prelude::*;

/// A sound film is this flat on top.
const FLAT: &str = "M0 34H240";

/// The top of the lacquer, and what is drawn into the cut, as a path with its class.
type Scene = (&'static str, &'static [(&'static str, &'static str)]);

/// What a fault looks like in the cut; `None` where a cut shows nothing of it.
fn scene(fault: &str) -> Option<Scene> {
    Some(match fault {
        "grain-sink" | "pore-telegraph" => (
            "M0 34H26Q36 34 40 42T54 34H80Q92 34 97 42T112 34H138Q150 34 154 42T168 34H194Q206 34 211 42T224 34H240",
            &[],
        ),
        "pore-pinhole" | "solvent-pop" => ("M0 34H93L97 60 101 34H207L211 60 215 34H240", &[]),
        "dust-nib" => (
            "M0 34H52Q60 24 68 34H132Q139 26 146 34H196Q202 27 208 34H240",
            &[("dark", "M58 30h4M137 31h4M200 31h4")],
        ),
        "fish-eye" => ("M0 34H60Q74 26 82 40T104 58H120Q132 58 140 40T162 34H240", &[]),
        "blush" | "moisture-haze" => (
            FLAT,
            &[(
                "pale dots",
                "M20 40h.1M34 46h.1M48 39h.1M62 50h.1M78 42h.1M92 47h.1M108 40h.1M124 49h.1M138 42h.1M152 47h.1M168 40h.1M184 48h.1M198 42h.1M214 46h.1M228 40h.1",
            )],
        ),
        "grey-pore" | "filler-haze" => (
            FLAT,
            &[(
                "pale fill",
                "M34 80h14q-1 20-7 24-6-4-7-24zM90 80h14q-1 20-7 24-6-4-7-24zM147 80h14q-1 20-7 24-6-4-7-24zM204 80h14q-1 20-7 24-6-4-7-24z",
            )],
        ),
        "run-sag" => ("M0 36H70C100 36 104 14 130 12S164 34 180 36H240", &[]),
        "sand-through" => ("M0 34H70C100 34 104 76 124 77S150 34 176 34H240", &[]),
        "sanding-scratch" => {
            (FLAT, &[("dark", "M12 78l4 8 4-8M62 78l4 9 4-9M116 78l4 8 4-8M174 78l4 9 4-9M226 78l4 8 4-8")])
        }
        "stain-blotch" => {
            (FLAT, &[("stain fill", "M52 80H128Q120 106 92 108T52 80zM168 80H224Q216 98 196 98T168 80z")])
        }
        "glue-spot" => (FLAT, &[("pale fill", "M70 80H168Q160 94 118 95T70 80z")]),
        "dye-bleed" | "extractive-bleed" => (
            FLAT,
            &[(
                "bleed",
                "M40 66q6-10 0-18M72 66q-6-12 2-22M104 66q6-8 0-16M140 66q-6-14 2-24M176 66q6-10 0-18M210 66q-6-12 2-20",
            )],
        ),
        "colour-off" | "lap-stripe" | "dark-edge" => {
            (FLAT, &[("stain fill", "M0 66H240V74H0zM0 60q60 6 120 0t120 0V66H0z")])
        }
        "soft-film" | "solvent-trap" => (
            "M0 34H84Q98 34 104 46T124 50 142 40 156 34H240",
            &[("pale dots", "M20 58h.1M48 60h.1M76 57h.1M104 60h.1M132 58h.1M160 60h.1M188 57h.1M216 60h.1")],
        ),
        "tape-bridge" => ("M0 34H150Q164 34 168 18L172 34V78H176V60H240", &[]),
        "wrinkle-lift" | "crows-foot" => (
            "M0 34Q10 22 20 36T40 34 60 38 80 32 100 38 120 32 140 38 160 32 180 38 200 32 220 36 240 34",
            &[],
        ),
        "dry-spray" => (
            "M0 34l8-5 6 6 9-7 7 8 8-6 9 5 7-7 9 8 8-6 9 6 8-8 8 7 9-5 8 6 9-8 7 7 9-6 8 6 9-7 8 7 8-5 9 6 8-7 9 6 8-5 9 5 8-4",
            &[],
        ),
        "substrate-crack" => {
            ("M0 34H116L120 48 124 34H240", &[("dark", "M120 40l-4 14 7 12-5 14 6 14-3 16")])
        }
        "buff-swirl" => ("M0 34H30l3 5 3-5H66l3 6 3-6h28l3 4 3-4h34l3 6 3-6h30l3 5 3-5h24l3 4 3-4H240", &[]),
        "peeling" => ("M0 34H96Q130 34 150 14 158 8 164 14 150 30 150 66H240", &[]),
        _ => return None,
    })
}

/// The cut of a fault by its slug; nothing is drawn for one that a cut does not show.
pub(super) fn cut(shop: &Shop, fault: &str) -> Html {
    let found = scene(fault);
    let hidden = found.is_none();
    let (top, marks) = found.unwrap_or((FLAT, &[]));
    let label = |y: &'static str, key: &str| html! { <text x="6" {y}>{ shop.say(key) }</text> };
    let mark = |(class, d): &(&'static str, &'static str)| html! { <path key={*d} class={*class} d={*d} /> };
    html! {
        <figure class="cut-place" {hidden}>
        <figcaption>{ shop.say("verdict.cut") }</figcaption>
        <svg class="cut" viewBox="0 0 240 130" aria-hidden="true" focusable="false">
            <path class="wood" d="M0 80H240V130H0z" />
            <path class="grain" d="M0 112q60 5 120 0t120 0M0 122q60-5 120 0t120 0" />
            <path class="pores" d="M34 80h14q-1 20-7 24-6-4-7-24zM90 80h14q-1 20-7 24-6-4-7-24zM147 80h14q-1 20-7 24-6-4-7-24zM204 80h14q-1 20-7 24-6-4-7-24z" />
            <path class="sealer" d="M0 74H240V80H0z" />
            <path class="colour" d="M0 66H240V74H0z" />
            <path class="lacquer" d={format!("{top}V66H0z")} />
            <g class="marks">{ for marks.iter().map(mark) }</g>
            <path class="skin" d={top} />
            { label("61", "verdict.lacquer") }
            { label("125", "verdict.wood") }
        </svg>
        </figure>
    }
}
