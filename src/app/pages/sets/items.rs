//! The cards of a set as items for other programs, by an open standard.

use crate::app::parts::{Picture, icon};
use crate::app::state::{KeptSet, Shop, use_shop};
use crate::content::{Units, World};
use crate::device::files;
use crate::exchange::paper::PaperCode;
use crate::exchange::{Items, items_of_set, save_name, zip};
use crate::rules::term::Term;
use yew::prelude::*;

/// What the file is, in its name.
const ITEMS: &str = "stepboard-cards";

#[derive(Properties, PartialEq)]
pub(super) struct AsItemsProps {
    pub(super) kept: KeptSet,
}

#[component]
pub(super) fn AsItems(props: &AsItemsProps) -> Html {
    let shop = use_shop();
    let said = use_state(Vec::<AttrValue>::new);
    let onclick = {
        let (shop, kept, said) = (shop.clone(), props.kept.clone(), said.setter());
        Callback::from(move |_: MouseEvent| said.set(saved(&shop, &kept)))
    };
    let line = |line: &AttrValue| html! { <p key={line.to_string()}>{ line.clone() }</p> };
    html! {
        <section class="paper form">
            <h2>{ shop.say("programs.qti") }</h2>
            <p>{ shop.say("programs.qti-why") }</p>
            <div class="people"><button type="button" class="control" {onclick}>{ icon(Picture::Save) }{ shop.say("programs.qti-save") }</button></div>
            <div role="status">{ for said.iter().map(line) }</div>
        </section>
    }
}

/// Saves the file; what there is to say of it, line by line. Its cards are those of the first worksheet without a name.
fn saved(shop: &Shop, kept: &KeptSet) -> Vec<AttrValue> {
    let Ok(sheet) = kept.set.sheet_of(shop.content()) else {
        return [shop.say_with("worksheet.gone", &[("id", kept.id.clone())])].to_vec();
    };
    let world = World { content: shop.content(), sheet: &sheet };
    let code = PaperCode::of(&kept.id, "", 0);
    // As the command writes them: an item has one name, and says one thing under it.
    let package = items_of_set(&world, Units::METRIC, &code.cards(&kept.set, &kept.id, &world));
    let name = save_name(ITEMS, &kept.set.title, None, "zip");
    let done = zip(&package.files).is_some_and(|bytes| files::save_zip(&name, &bytes).is_ok());
    if done { told(shop, &package, &code) } else { [shop.say("programs.not-saved")].to_vec() }
}

/// How many cards the file holds, and which were left out, each with the reason.
fn told(shop: &Shop, package: &Items, code: &PaperCode) -> Vec<AttrValue> {
    // The first file is the manifest.
    let count = package.files.len().saturating_sub(1).to_string();
    let sum = shop.say_with("programs.qti-saved", &[("n", count), ("code", code.to_string())]);
    let left = package.left_out.iter().map(|(family, _, why)| {
        let named = [
            ("card", shop.family_title(family).to_string()),
            ("why", shop.say(&format!("programs.left.{}", why.slug())).to_string()),
        ];
        shop.say_with("programs.left-out", &named)
    });
    let mut lines = [sum].to_vec();
    for line in left {
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}
